"""What respirator-check asks."""

from __future__ import annotations

from dataclasses import dataclass

from calculators.kit.fields import Choice, Limits, Option, Quantity, Rows, When, ask
from calculators.tables import table

DUSTS = table("exposure_limits")
RESPIRATORS = table("protection_factors")
BLASTING = ("blast-open", "blast-room")  # nozzle and operator in the same air
HOODS = tuple(slug for slug, row in RESPIRATORS.items() if row["seal"] == "hood")
TIGHT = tuple(slug for slug, row in RESPIRATORS.items() if row["seal"] == "tight")

_ALSO = {
    "half-air-purifying": ("n95", "half-mask", "dust-mask", "filtering-facepiece"),
    "full-air-purifying": ("full-face",),
    "hood-powered": ("papr", "papr-hood"),
    "hood-supplied-continuous": ("blast-hood", "blast-helmet", "type-ce"),
    "full-self-contained-pressure": ("scba",),
}

# An invented sampling of the park benches' old paint, blasted in the room.
EXAMPLE = """lead, 2.6
iron-oxide, 20
silica, 0.03"""


@dataclass(frozen=True)
class DustRow:
    agent: str = ask(
        Choice(
            label="Dust",
            options=(
                *(Option(slug, row["name"], tuple(row["aliases"])) for slug, row in DUSTS.items()),
                Option("other", "Another, with its limit"),
            ),
            default="lead",
        )
    )
    concentration_mg_m3: float | None = ask(
        Quantity(
            label="Measured",
            hint="At the face. For less than 0.01 write 0.01; empty if not measured",
            units=("mg_m3", "ug_m3", "g_m3"),
            limits=Limits("0 mg/m3", "100000 mg/m3", "thicker is a cloud that burns, not air to work in"),
            may_be_empty=True,
            example="2.6 mg/m3",
        )
    )
    limit_mg_m3: float | None = ask(
        Quantity(
            label="Limit",
            hint="Of another dust, or one stricter than the law's",
            units=("mg_m3", "ug_m3"),
            limits=Limits("0.000001 mg/m3", "1000 mg/m3", "no dust's limit lies outside"),
            may_be_empty=True,
            example="5 mg/m3",
        )
    )


@dataclass(frozen=True)
class Inputs:
    task: str = ask(
        Choice(
            group="The work",
            label="Task",
            options=(
                Option("blast-open", "Blasting in the open", ("open", "outdoors")),
                Option("blast-room", "Blasting inside a blast room", ("room",)),
                Option("blast-cabinet", "Blasting at a closed cabinet", ("cabinet", "glove-box")),
                Option("clean-up", "Cleaning up, changing filters", ("cleanup", "sweeping")),
                Option("spraying", "Spraying powder", ("powder", "coating")),
            ),
            default="blast-room",
        )
    )
    hours_h: float = ask(
        Quantity(
            label="Shift",
            hint="Hours in this air. Over 8 the limits shrink; under 8 nothing is given back",
            units=("h", "min"),
            default="8",
            limits=Limits("0.1 h", "24 h", "one day"),
        )
    )
    agents: tuple[DustRow, ...] = ask(
        Rows(
            group="The air outside the respirator",
            label="Dusts",
            hint=f"A dust a line: its name, then mg/m3 from a sampling at the face; for less than 0.01 write 0.01, "
            f"and nothing after the name if not measured. "
            f"Names: {', '.join(DUSTS)}. Or: other, mg/m3, its limit",
            row=DustRow,
            default=EXAMPLE,
            at_most=50,
            unit_of="concentration",
        )
    )
    respirator: str = ask(
        Choice(
            group="The respirator",
            label="Respirator",
            options=tuple(
                Option(slug, row["name"], _ALSO.get(slug, ())) for slug, row in RESPIRATORS.items()
            ),
            default="hood-supplied-continuous",
        )
    )
    blasting_approved: str = ask(
        Choice(
            label="Approved for blasting",
            hint="The approval label names abrasive blasting (type CE)",
            options=(Option("yes", "Yes, on its label"), Option("no", "No or not sure", ("not-sure",))),
            default="yes",
            few=True,
            when=When("task", BLASTING),
        )
    )
    proof_1000: str = ask(
        Choice(
            label="Maker's proof of 1000",
            hint="On paper, in your file, for this model",
            options=(Option("yes", "Yes, in the file"), Option("no", "No or not sure", ("not-sure",))),
            default="no",
            few=True,
            when=When("respirator", HOODS),
        )
    )
    fit: str = ask(
        Choice(
            label="Fit test of this wearer",
            hint="This model and size, within the year, face shaved where it seals",
            options=(
                Option("instrument", "Passed, by instrument", ("quantitative",)),
                Option("taste", "Passed, by taste or smell", ("qualitative",)),
                Option("none", "None, or a beard at the seal", ("no", "beard")),
            ),
            default="instrument",
            when=When("respirator", TIGHT),
        )
    )
