"""Fields that the bakes share: how air reaches the part, how the oven comes back, where the metal starts and cools."""

from __future__ import annotations

from calculators.kit.fields import Choice, Limits, Option, Quantity, When
from calculators.tables import table

# How far the air of a shop may be off what is taken, either way: our own estimate.
SHOP_AIR_DOUBT = 0.25


def airflow() -> Choice:
    """The field for how well the oven's air reaches the part; `measured` asks for the oven's own figure."""
    rows = table("airflow").items()
    return Choice(
        label="Airflow on the part",
        hint="What moves the air past the metal",
        options=(
            *(Option(slug, row["name"]) for slug, row in rows if row["place"] == "oven"),
            Option("measured", "Measured, from a logged bake"),
        ),
        default="fan",
        meaning="airflow",
    )


def oven_coefficient() -> Quantity:
    """The field for an oven's own figure."""
    return Quantity(
        label="Oven coefficient",
        hint="From the bake log",
        units=("W_m2K", "Btu_hft2F"),
        default="20",
        limits=Limits("2 W/m2K", "150 W/m2K", "still air to hard jets"),
        when=When("airflow", ("measured",)),
        meaning="oven-coefficient",
    )


def oven_doubt() -> Quantity:
    """The field for how far a measured figure can be off."""
    return Quantity(
        label="Doubt of the oven coefficient",
        hint="Either way. 25 % until several logged bakes agree better than that",
        units=("percent",),
        default="25",
        limits=Limits("5 %", "60 %", "loads differ by more than a few per cent"),
        when=When("airflow", ("measured",)),
    )


def shading() -> Choice:
    """The field for how much of the oven's walls a part sees."""
    return Choice(
        label="How the parts hang",
        hint="How much of the oven's walls the part sees",
        options=tuple(Option(slug, row["name"]) for slug, row in table("shading").items()),
        default="open",
        meaning="shading",
    )


def dip() -> Quantity:
    """The field for how far the air has fallen when the door closes on the load."""
    return Quantity(
        label="Air below setting when the door closes",
        hint="0 if you have not watched it",
        units=("dF", "dC"),
        default="0",
        limits=Limits("0 F", "400 F", "an oven that was open"),
        meaning="dip",
    )


def recovery(default: str = "0", hint: str = "Minutes until the air reads the setting again") -> Quantity:
    """The field for how long the air takes to come back."""
    return Quantity(
        label="Time to come back to setting",
        hint=hint,
        units=("min", "s", "h"),
        default=default,
        limits=Limits("0 min", "120 min", "longer is an oven that cannot carry the load"),
        meaning="recovery",
    )


def start() -> Quantity:
    """The field for the metal's temperature before the oven."""
    return Quantity(
        label="Metal when it goes in",
        units=("degF", "degC"),
        default="70",
        limits=Limits("-40 F", "300 F", "a yard in winter to a part still warm"),
    )


def shop() -> Quantity:
    """The field for the air in which a part cools."""
    return Quantity(
        label="Shop temperature",
        units=("degF", "degC"),
        default="70",
        limits=Limits("-40 F", "130 F", "where people work"),
        meaning="shop-temperature",
    )


def clashes(start_degC: float, oven_degC: float, dip_dC: float, recovery_min: float) -> list[tuple[str, str]]:
    """What does not fit among these, as pairs of a field's key and its sentence."""
    found = []
    if start_degC >= oven_degC:
        found.append(("start", "Metal when it goes in must be cooler than oven setting"))
    if dip_dC > 0 and recovery_min == 0:
        found.append(("recovery", "Enter the time to come back to setting: the air starts below it"))
    return found


def convection_W_m2K(airflow_slug: str, measured_W_m2K: float) -> float:
    """The convection that the oven gives a part, nominal."""
    if airflow_slug == "measured":
        return measured_W_m2K
    return float(table("airflow")[airflow_slug]["convection_W_m2K"])
