"""What site-corrosivity asks."""

from __future__ import annotations

from dataclasses import dataclass

from calculators.kit.fields import Choice, Limits, Option, Quantity, Validity, When, ask
from calculators.tables import table

MEASURED = When("place", ("measured",))


def _places() -> tuple[Option, ...]:
    rows = table("places")
    return tuple(Option(slug, row["name"], tuple(row["also"])) for slug, row in rows.items())


@dataclass(frozen=True)
class Inputs:
    place: str = ask(
        Choice(
            group="The place",
            label="Place",
            hint="Described, for a first guess; or by its measured air",
            options=(Option("measured", "By its measured air", ("values", "measured")), *_places()),
            default="measured",
        )
    )
    temperature_degC: float = ask(
        Quantity(
            label="Mean temperature of the year",
            hint="Of the air, from a weather station near by",
            units=("degF", "degC"),
            default="50",
            limits=Limits("-40 F", "110 F", "yearly means on Earth"),
            validity=Validity("-17.1 C", "28.7 C", "iso-9223", "The formula was not fitted there."),
            when=MEASURED,
        )
    )
    humidity_percent: float = ask(
        Quantity(
            label="Mean humidity of the year",
            hint="Relative, from the same station",
            units=("percent",),
            default="75",
            limits=Limits("5 %", "100 %", "relative humidity"),
            validity=Validity("34 %", "93 %", "iso-9223", "The formula was not fitted there."),
            when=MEASURED,
        )
    )
    sulfur_dioxide_mg_m2d: float = ask(
        Quantity(
            label="Sulfur dioxide, deposited",
            hint="Clean country about 1, towns today often 2 to 10; your environment agency has it",
            units=("mg_m2d",),
            default="5",
            limits=Limits("0", "1000", "from clean air to beside a smelter"),
            validity=Validity("0.7", "150.4", "iso-9223", "The formula was not fitted there."),
            when=MEASURED,
        )
    )
    chloride_mg_m2d: float = ask(
        Quantity(
            label="Chloride, deposited",
            hint="Inland under 3, salted road or coast from tens to hundreds; it must be measured",
            units=("mg_m2d",),
            default="60",
            limits=Limits("0", "5000", "from inland to the surf"),
            validity=Validity("0.4", "760.5", "iso-9223", "The formula was not fitted there."),
            when=MEASURED,
        )
    )
    years_year: float = ask(
        Quantity(
            group="How long",
            label="Years",
            hint="That it should last: for the loss of bare metal by then, and for the advice",
            units=("year",),
            default="10",
            limits=Limits("1 year", "100 years", "the first year is the shortest that is known"),
        )
    )
