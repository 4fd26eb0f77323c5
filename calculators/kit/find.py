"""Which calculators there are: found by where their file lies, never registered."""

from __future__ import annotations

import importlib
import pkgutil
from functools import cache

import calculators
from calculators.kit.calculator import Calculator

STAGES = ("part", "prepare", "spray", "cure", "inspect", "safety", "job")


@cache
def _homes() -> dict[str, str]:
    """Slug to module name, by stage in shop order."""
    homes: dict[str, str] = {}
    root = list(calculators.__path__)
    for stage in STAGES:
        for module in sorted(one.name for one in pkgutil.iter_modules([f"{path}/{stage}" for path in root])):
            if not module.startswith("_"):
                homes[module.replace("_", "-")] = f"calculators.{stage}.{module}"
    return homes


def slugs() -> tuple[str, ...]:
    """The slugs of all calculators, in shop order."""
    return tuple(_homes())


def stage(slug: str) -> str:
    """The stage (folder) that a calculator belongs to. Raises KeyError for a slug that is not there."""
    return _homes()[slug].split(".")[1]


def load(slug: str) -> Calculator:
    """The declaration of a calculator. Raises KeyError for a slug that is not there."""
    found = importlib.import_module(_homes()[slug]).CALCULATOR
    assert isinstance(found, Calculator)
    return found


def warm() -> None:
    """Import and run everything once, so that a memory image holds all that an answer can need."""
    from calculators import tables
    from calculators.kit.browser import run_json
    from calculators.kit.units import UNITS, convert

    for name in tables.names():
        tables.table(name)
    for one in UNITS.values():
        for other in UNITS.values():
            if one.kind == other.kind:
                convert(1.0, one.slug, other.slug)
    for slug in slugs():
        run_json(f'{{"slug": "{slug}", "texts": {{}}}}')
