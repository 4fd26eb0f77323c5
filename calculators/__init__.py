"""Calculators for people who blast and powder-coat custom parts: `run(slug, texts)` answers, `slugs()` lists them."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from calculators.kit.find import slugs
    from calculators.kit.run import Outcome, run

__all__ = ["Outcome", "run", "slugs"]


def __getattr__(name: str) -> Any:
    # imported on first use, so that reading one table or formula loads nothing else
    if name in ("run", "Outcome"):
        from calculators.kit import run as door

        return getattr(door, name)
    if name == "slugs":
        from calculators.kit.find import slugs

        return slugs
    raise AttributeError(f"module 'calculators' has no attribute {name!r}")
