"""What air-recovery asks."""

from __future__ import annotations

from dataclasses import dataclass

from calculators.kit.fields import Limits, Quantity, Rows, ask
from calculators.physics.recovery import FEWEST_AIR_READINGS

# An invented oven at 400 F that took in a cold load: about 90 F lost, back in about 8 min, read to a degree or two.
EXAMPLE_LOG = """0, 311
1, 337
2, 359
3, 370
4, 381
6, 390
8, 397
10, 397
12, 400
15, 399"""


@dataclass(frozen=True)
class AirRow:
    minute_min: float = ask(
        Quantity(
            label="Time",
            units=("min", "s", "h"),
            limits=Limits("-100000 min", "100000 min", "an oven comes back within hours"),
            example="5 min",
        )
    )
    air_degC: float = ask(
        Quantity(
            label="Air temperature",
            units=("degF", "degC"),
            limits=Limits("-60 F", "1000 F", "a cold yard to over any cure oven"),
            example="350 F",
        )
    )


@dataclass(frozen=True)
class Inputs:
    air_log: tuple[AirRow, ...] = ask(
        Rows(
            group="The oven's air",
            label="Air log",
            hint="A reading a line: minute, then the air's temperature, from the door's closing on",
            row=AirRow,
            default=EXAMPLE_LOG,
            at_least=FEWEST_AIR_READINGS,
            at_most=5_000,
            takes_file=True,
            clock="minute",
            unit_of="air",
        )
    )
    setting_degC: float = ask(
        Quantity(
            label="Oven setting",
            hint="What the air comes back to",
            units=("degF", "degC"),
            default="400",
            limits=Limits("150 F", "700 F", "a cure oven"),
            meaning="oven-setting",
        )
    )
    closed_at_min: float | None = ask(
        Quantity(
            label="Door closed at",
            hint="Minute on the log's clock; empty takes the coolest reading",
            units=("min", "s", "h"),
            limits=Limits("0 min", "100000 min", "a minute of the log"),
            may_be_empty=True,
            example="0 min",
        )
    )
