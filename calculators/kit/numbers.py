"""Numbers as a shop reads them: few digits, a comma over 999, a 0 before the point."""

from __future__ import annotations

import math


def shop_number(number: float, digits: int = 3) -> str:
    """The number to so many significant digits, without digits or zeros that say nothing.

    >>> shop_number(1234.5), shop_number(0.05123, 2), shop_number(12.0), shop_number(-0.0001, 2)
    ('1,230', '0.051', '12', '-0.0001')
    """
    if number == 0 or not math.isfinite(number):
        return "0" if number == 0 else str(number)
    places = digits - 1 - math.floor(math.log10(abs(number)))
    rounded = round(number, places)
    shown = f"{rounded:,.{max(places, 0)}f}"
    shown = shown.rstrip("0").rstrip(".") if "." in shown else shown
    return "0" if shown == "-0" else shown


def whole(number: float) -> str:
    """The nearest whole number.

    >>> whole(1234.5), whole(-0.2)
    ('1,234', '0')
    """
    return f"{round(number):,}"


def money(amount: float) -> str:
    """An amount to the cent, whatever the currency; what is under a cent keeps its digits.

    >>> money(107.904), money(12500), money(0), money(0.0031)
    ('107.90', '12,500.00', '0.00', '0.0031')
    """
    return shop_number(amount, 2) if 0 < abs(amount) < 0.005 else f"{amount:,.2f}"


def rounded_inward(number: float, is_low: bool, digits: int = 3) -> str:
    """A limit rounded so that typing the quoted number back is inside it.

    >>> rounded_inward(0.0511811, True), rounded_inward(0.0511811, False)
    ('0.0512', '0.0511')
    """
    if number == 0:
        return "0"
    step = 10.0 ** (math.floor(math.log10(abs(number))) - digits + 1)
    steps = number / step
    nearest = round(steps)
    if not math.isclose(steps, nearest, rel_tol=1e-9):
        nearest = math.ceil(steps) if is_low else math.floor(steps)
    return shop_number(nearest * step, digits)
