"""Loss of bare steel and zinc in a place's air, the category that it gives, and the advice that goes with it."""

from __future__ import annotations

from typing import Any

from calculators.inspect._site_corrosivity_inputs import Inputs
from calculators.kit.result import Value
from calculators.physics.corrosion import DoseResponse, loss_after_um, loss_terms_um
from calculators.tables import table

METALS = ("steel", "zinc")
SLACK = 1e-9
INLAND_mg_m2d = 3.0  # chloride up to here is salt-free air (class S0 of ISO 9223, from memory)
LONG_LIFE_year = 15.0  # where "high" durability starts in ISO 12944-1 (from memory)


def category_of(metal: str, loss_um: float) -> str:
    """The first category whose upper end is not passed; beyond the last, the last."""
    rows = table("corrosivity")
    return next((slug for slug, row in rows.items() if loss_um <= row[f"{metal}_um"] * (1 + SLACK)), "cx")


def rank_of(category: str) -> int:
    return tuple(table("corrosivity")).index(category)


def system_of(asked: Inputs, category: str) -> str:
    """The advice of the category; where it has a plainer one, that one as long as no salt comes and no long life is asked."""
    row = table("corrosivity")[category]
    if asked.place == "measured":
        salty = asked.chloride_mg_m2d > INLAND_mg_m2d
    else:
        salty = bool(table("places")[asked.place].get("salty", False))
    if salty or asked.years_year > LONG_LIFE_year:
        return str(row["system"])
    return str(row.get("system_without_salt", row["system"]))


def metal_row(metal: str) -> dict[str, Any]:
    row: dict[str, Any] = table("corrosion_metals")[metal]
    return row


def terms_um(asked: Inputs, metal: str) -> tuple[float, float]:
    return loss_terms_um(
        DoseResponse(*metal_row(metal)["dose_response"]),
        asked.temperature_degC,
        asked.humidity_percent,
        asked.sulfur_dioxide_mg_m2d,
        asked.chloride_mg_m2d,
    )


def first_year(asked: Inputs, metal: str) -> Value:
    row = metal_row(metal)
    if asked.place == "measured":
        loss = sum(terms_um(asked, metal))
        return Value(loss, row["low"] * loss, row["high"] * loss)
    rank = rank_of(table("places")[asked.place]["category"])
    ends = [0.0, *(one[f"{metal}_um"] for one in table("corrosivity").values())]
    return Value(None, float(ends[rank]), float(ends[rank + 1]))


def later_years(first: Value, metal: str, years: float) -> Value:
    row = metal_row(metal)
    low = loss_after_um(first.low or 0.0, row["exponent"], years)
    high = loss_after_um(first.high or 0.0, row["cautious_exponent"], years)
    if first.number is None:
        return Value(None, low, high)
    return Value(loss_after_um(first.number, row["exponent"], years), low, high)


def reach_of(first: dict[str, Value]) -> tuple[str, str]:
    """The mildest and the hardest category that the doubt of the formula leaves open."""
    lows = [category_of(metal, first[metal].low or 0.0) for metal in METALS]
    highs = [category_of(metal, first[metal].high or 0.0) for metal in METALS]
    return max(lows, key=rank_of), max(highs, key=rank_of)
