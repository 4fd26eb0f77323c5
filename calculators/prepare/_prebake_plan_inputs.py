"""What prebake-plan asks."""

from __future__ import annotations

from dataclasses import dataclass

from calculators.kit.fields import Choice, Limits, Option, Quantity, When, ask
from calculators.tables import table

USUAL = "as-usual"
# Bare surfaces that each metal can have; another one is answered with a caution.
FINISHES = {
    "cast-iron": ("cast-iron", "blasted-steel"),
    "aluminium-cast": ("bare-aluminium", "blasted-aluminium"),
    "galvanised": ("bright-galvanised",),
    "zinc-die-cast": ("bright-galvanised", "bare-aluminium", "blasted-aluminium"),
}
BARE = ("cast-iron", "blasted-steel", "bare-aluminium", "blasted-aluminium", "bright-galvanised")
_IN_OVEN = [(slug, row) for slug, row in table("airflow").items() if row["place"] == "oven"]


@dataclass(frozen=True)
class Inputs:
    metal: str = ask(
        Choice(
            group="The part, bare",
            label="Metal",
            options=tuple(
                Option(slug, row["name"], tuple(row["aliases"])) for slug, row in table("prebake").items()
            ),
            default="cast-iron",
            meaning="metal",
        )
    )
    finish: str = ask(
        Choice(
            label="Surface now",
            hint="Bare metal takes up less heat than a coated part",
            options=(
                Option(USUAL, "As this metal usually comes", ("usual",)),
                *(
                    Option(slug, table("finishes")[slug]["name"], tuple(table("finishes")[slug]["aliases"]))
                    for slug in BARE
                ),
            ),
            default=USUAL,
            meaning="finish",
        )
    )
    shape: str = ask(
        Choice(
            label="Heaviest section",
            options=(
                Option("both-sides", "Plate or casting wall, hot air on both sides"),
                Option("one-side", "Closed on one side, or back against something"),
                Option("round-bar", "Round bar"),
                Option("square-bar", "Square bar"),
                Option("heat-path", "Heat path, worked out already"),
            ),
            default="both-sides",
            meaning="section-shape",
        )
    )
    thickness_m: float = ask(
        Quantity(
            label="Thickness of the heaviest section",
            hint="Wall thickness, or a bar's width; measure the thickest place",
            units=("in", "mm", "cm"),
            default="5/8",
            limits=Limits("0.01 in", "12 in", "foil to a forging"),
            example="5/8 in",
            meaning="thickest-section",
        )
    )
    oily: str = ask(
        Choice(
            label="Oil in the metal",
            hint="Engine, gearbox or pump parts, or stains that come back after cleaning",
            options=(Option("no", "No"), Option("yes", "Yes, or it may be")),
            default="no",
            few=True,
        )
    )
    cure_temperature_degC: float = ask(
        Quantity(
            group="The powder to come",
            label="Cure temperature",
            hint="Metal temperature on its data sheet",
            units=("degF", "degC"),
            default="375",
            limits=Limits("200 F", "550 F", "no coating powder cures outside this"),
            meaning="schedule-temperature",
        )
    )
    hold_min: float = ask(
        Quantity(
            label="Hold",
            hint="At least as long as the cure",
            units=("min", "h", "s"),
            default="20",
            limits=Limits("0 min", "480 min", "a prebake is over within hours"),
        )
    )
    oven_degC: float = ask(
        Quantity(
            group="The oven",
            label="Oven setting",
            hint="For this bake; hotter than for the cure",
            units=("degF", "degC"),
            default="440",
            limits=Limits("150 F", "600 F", "a cure oven, not a burn-off oven"),
        )
    )
    airflow: str = ask(
        Choice(
            label="Airflow on the part",
            hint="What moves the air past the metal",
            options=(
                *(Option(slug, row["name"]) for slug, row in _IN_OVEN),
                Option("measured", "Measured, from a logged bake"),
            ),
            default="fan",
            meaning="airflow",
        )
    )
    oven_coefficient_W_m2K: float = ask(
        Quantity(
            label="Oven coefficient",
            hint="From the bake log",
            units=("W_m2K", "Btu_hft2F"),
            default="20",
            limits=Limits("2 W/m2K", "150 W/m2K", "still air to hard jets"),
            when=When("airflow", ("measured",)),
            meaning="oven-coefficient",
        )
    )
    racked: str = ask(
        Choice(
            label="How the parts hang",
            hint="How much of the oven's walls the part sees",
            options=(
                Option("open", table("shading")["open"]["name"], ("no",)),
                Option("racked", table("shading")["racked"]["name"], ("yes",)),
                Option("packed", table("shading")["packed"]["name"]),
            ),
            default="open",
            meaning="shading",
        )
    )
    shop_degC: float = ask(
        Quantity(
            label="Shop temperature",
            hint="The part starts and cools in it",
            units=("degF", "degC"),
            default="70",
            limits=Limits("-40 F", "130 F", "where people work"),
            meaning="shop-temperature",
        )
    )
