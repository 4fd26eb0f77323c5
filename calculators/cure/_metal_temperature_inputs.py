"""What metal-temperature asks."""

from __future__ import annotations

from dataclasses import dataclass

from calculators.kit.fields import Choice, Limits, Option, Quantity, When, ask
from calculators.tables import table

SURFACES = {  # option: row of finishes.toml
    "cured-powder": "coated",
    "blasted-steel": "blasted-steel",
    "blasted-aluminium": "blasted-aluminium",
    "bare-aluminium": "bare-aluminium",
    "bright-galvanised": "bright-galvanised",
    "cast-iron": "cast-iron",
}
_LABELS = {"cured-powder": "Cured powder or paint", "cast-iron": "Bare cast iron, dark and oxidised"}


def _surface(slug: str, row: str) -> Option:
    found = table("finishes")[row]
    return Option(slug, _LABELS.get(slug, found["name"]), tuple(found["aliases"]))


@dataclass(frozen=True)
class Inputs:
    reading_degC: float = ask(
        Quantity(
            group="The reading",
            label="Reading",
            hint="What the infrared gun shows",
            units=("degF", "degC"),
            default="365",
            limits=Limits("0 F", "900 F", "work round a cure oven"),
        )
    )
    gun_emissivity_ratio: float = ask(
        Quantity(
            label="Emissivity set in the gun",
            hint="In its menu; a gun without one is usually fixed at 0.95",
            units=("ratio",),
            default="0.95",
            limits=Limits("0.1", "1", "what guns can be set to"),
        )
    )
    surface: str = ask(
        Choice(
            group="What it was aimed at",
            label="Surface",
            options=(
                *(_surface(slug, row) for slug, row in SURFACES.items()),
                Option("raw-powder", "Raw powder, not yet melted"),
                Option("other", "Other, emissivity known"),
            ),
            default="cured-powder",
        )
    )
    emissivity_ratio: float = ask(
        Quantity(
            label="Emissivity of the surface",
            hint="From a table or a test of your own",
            units=("ratio",),
            default="0.9",
            limits=Limits("0.02", "1", "a mirror to black"),
            when=When("surface", ("other",)),
        )
    )
    emissivity_doubt_ratio: float | None = ask(
        Quantity(
            label="Doubt of that emissivity",
            hint="Either way; a figure from a table is seldom nearer than 0.05. Empty takes it as exact",
            units=("ratio",),
            limits=Limits("0", "0.5", "wider tells nothing"),
            may_be_empty=True,
            example="0.05",
            when=When("surface", ("other",)),
        )
    )
    surroundings: str = ask(
        Choice(
            label="Surroundings",
            hint="What lies all round the part and is mirrored in it",
            options=(
                Option("shop", "The shop: the part is out of the oven"),
                Option("oven", "The hot oven: the part is inside"),
            ),
            default="shop",
            few=True,
        )
    )
    shop_degC: float = ask(
        Quantity(
            label="Shop temperature",
            hint="Where the gun is",
            units=("degF", "degC"),
            default="70",
            limits=Limits("-40 F", "130 F", "where people work"),
            meaning="shop-temperature",
        )
    )
    oven_degC: float = ask(
        Quantity(
            label="Oven temperature",
            hint="Its walls; take the setting if you know no better",
            units=("degF", "degC"),
            default="400",
            limits=Limits("150 F", "600 F", "a cure oven, not a burn-off oven"),
            when=When("surroundings", ("oven",)),
            meaning="oven-setting",
        )
    )
    distance_m: float = ask(
        Quantity(
            group="The spot",
            label="Distance to the part",
            units=("in", "ft", "cm", "m", "mm"),
            default="12",
            limits=Limits("1 in", "50 ft", "a hand's breadth to across the shop"),
        )
    )
    spot_ratio_ratio: float = ask(
        Quantity(
            label="Distance for one of spot",
            hint="On the gun's label, as 12:1; enter 12",
            units=("ratio",),
            default="12",
            limits=Limits("1", "200", "guns from 1:1 to 200:1"),
        )
    )
    part_width_m: float = ask(
        Quantity(
            label="Width of the part at the spot",
            hint="The narrow way",
            units=("in", "ft", "mm", "cm", "m"),
            default="2",
            limits=Limits("0.05 in", "20 ft", "a wire to a wide panel"),
        )
    )
