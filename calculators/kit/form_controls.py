"""What the controls of a form have in common, whether they stand for a field or for a cell of a row."""

from __future__ import annotations

from html import escape

from calculators.kit.fields import Quantity
from calculators.kit.units import UNITS


def keypad(field: Quantity) -> str:
    """A phone's decimal pad has no minus sign and no slash for fractions of an inch, which nobody gives a film in."""
    low = (field.limits.low or "-").lstrip()
    in_fractions = "in" in field.units and field.units[0] != "mil"
    return "" if low.startswith("-") or in_fractions else ' inputmode="decimal"'


def units_shown(units: tuple[str, ...]) -> list[str]:
    """The signs to choose from, the shop's first; none for a number without a unit."""
    return list(dict.fromkeys(UNITS[slug].shown for slug in units if UNITS[slug].shown))


def unit_options(shown: list[str]) -> str:
    return "".join(
        f'<option value="{escape(one)}"{selected(one == shown[0])}>{escape(one)}</option>' for one in shown
    )


def selected(yes: bool) -> str:
    return " selected" if yes else ""
