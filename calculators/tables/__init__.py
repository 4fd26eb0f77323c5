"""Tables that a tradesperson might check or correct, read once and kept: the browser's image has no files."""

from __future__ import annotations

import tomllib
from functools import cache
from importlib import resources
from typing import Any


@cache
def table(name: str) -> dict[str, Any]:
    """The table tables/<name>.toml as a dictionary. Raises FileNotFoundError for a name that is not there."""
    return tomllib.loads(resources.files(__package__).joinpath(f"{name}.toml").read_text("utf-8"))


def names() -> tuple[str, ...]:
    """The names of all tables, in order."""
    found = (entry.name for entry in resources.files(__package__).iterdir())
    return tuple(sorted(name.removesuffix(".toml") for name in found if name.endswith(".toml")))
