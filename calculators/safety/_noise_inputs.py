"""What noise-dose asks."""

from __future__ import annotations

from dataclasses import dataclass

from calculators.kit.fields import Choice, Limits, Option, Quantity, Rows, ask

# An invented day on the park benches: blasting, blowing down beside the compressor, spraying.
EXAMPLE_DAY = """105, 90
95, 60
84, 240"""


@dataclass(frozen=True)
class LevelRow:
    level_dBA: float = ask(
        Quantity(
            label="Level",
            hint="At the ear",
            units=("dBA",),
            limits=Limits("40 dBA", "140 dBA", "from a quiet office to a level that harms at once"),
            example="105 dBA",
        )
    )
    minutes_min: float = ask(
        Quantity(
            label="Time",
            hint="In the day",
            units=("min", "h", "s"),
            limits=Limits("0 min", "1440 min", "one day"),
            example="90 min",
        )
    )


@dataclass(frozen=True)
class Inputs:
    level: tuple[LevelRow, ...] = ask(
        Rows(
            group="The day",
            label="Noise",
            hint="A job a line: level in dBA at the ear, then minutes at it in the day. Measured, slow response",
            row=LevelRow,
            default=EXAMPLE_DAY,
            at_most=200,
            unit_of="minutes",
        )
    )
    protector_ratio: float = ask(
        Quantity(
            group="The protector",
            label="Noise reduction rating",
            hint="NRR on the packet, of the better one if two are worn; 0 for none",
            units=("ratio",),
            default="29",
            limits=Limits("0", "40", "no protector is rated higher"),
            example="29",
        )
    )
    both: str = ask(
        Choice(
            label="Plugs and muffs together",
            options=(Option("no", "No, one of them"), Option("yes", "Yes, both")),
            default="no",
            few=True,
        )
    )
