"""Fields that the film calculators share, and what they say of a thick coat."""

from __future__ import annotations

from typing import Any

from calculators.kit.fields import Limits, Quantity, Validity, When, ask
from calculators.kit.result import Caution

LB = 0.45359237  # kg
MIL = 25.4  # um
FT2 = 0.09290304  # m2
USUAL_MOST_um = 4 * MIL  # in one coat
SHEETS_END_um = 10 * MIL

FILM_UNITS = ("mil", "um", "in", "mm")  # the last two stand on drawings
AREA_UNITS = ("ft2", "in2", "m2", "cm2")
AREA_LIMITS = Limits("0.01 ft2", "100000 ft2", "from one small bracket to a hall of railings")


def area_field() -> Any:
    """The area of the whole job."""
    return ask(
        Quantity(
            group="The job",
            label="Area to coat",
            hint="All parts together, every face that gets powder",
            units=AREA_UNITS,
            default="41.2",
            limits=AREA_LIMITS,
            meaning="coated-area",
        )
    )


def film_field(group: str = "") -> Any:
    """The cured film of one coat."""
    return ask(
        Quantity(
            label="Film in one coat",
            hint="Cured thickness; the powder's data sheet gives the range",
            units=FILM_UNITS,
            default="2.5",
            limits=Limits("0.2 mil", "60 mil", "thinner does not close, thicker is not one coat of powder"),
            validity=Validity(
                "1.5 mil",
                "10 mil",
                "powder-sheets",
                "Thinner may show metal; thicker may bubble, sag or turn brittle.",
            ),
            meaning="film",
            group=group,
        )
    )


# What the note below stands on; each calculator that gives it names them.
THICK_COAT_SOURCES = ("film-ranges-note", "back-ionisation-note")


def thick_coat(film_um: float) -> tuple[Caution, ...]:
    """A note on a film thicker than most coats, up to where the caution of the field itself speaks."""
    if not USUAL_MOST_um * (1 + 1e-9) < film_um <= SHEETS_END_um * (1 + 1e-9):
        return ()
    words = (
        "Most powders go on at 2 to 4 mil (50 to 100 um) in one coat. Thicker may sag, throw powder off as you spray "
        "(back-ionisation) or bubble as it cures: ask the powder's data sheet first."
    )
    return (Caution("note", words, "film", "film-ranges-note"),)


def specific_gravity_field(group: str = "", when: When | None = None) -> Any:
    """The powder's density against water's."""
    return ask(
        Quantity(
            group=group,
            label="Specific gravity",
            hint="On the data sheet: clear about 1.2, white about 1.7",
            units=("ratio",),
            default="1.5",
            limits=Limits("0.8", "4", "no coating powder lies outside"),
            validity=Validity(
                "1.2", "1.8", "powder-sheets", "Few powders are so light or heavy: check the data sheet."
            ),
            example="1.5",
            meaning="specific-gravity",
            when=when,
        )
    )


def transfer_field(group: str = "", when: When | None = None) -> Any:
    """Share of the sprayed powder that stays on the part in one pass."""
    return ask(
        Quantity(
            label="First-pass transfer",
            hint="Share of sprayed powder that stays: flat about 70 %, wire and tube about 30 %. Weigh your own",
            units=("percent",),
            default="60",
            limits=Limits("5 %", "100 %", "a share of what is sprayed"),
            meaning="transfer",
            group=group,
            when=when,
        )
    )


def reclaim_field() -> Any:
    """Share of the overspray that is caught and sprayed again."""
    return ask(
        Quantity(
            label="Overspray sprayed again",
            hint="0 when you spray to waste",
            units=("percent",),
            default="0",
            limits=Limits("0 %", "99 %", "a share of the overspray"),
            meaning="reclaim",
        )
    )
