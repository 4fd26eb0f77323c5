"""What mixed-load asks."""

from __future__ import annotations

from dataclasses import dataclass

from calculators.cure import _cure_plan_inputs as part
from calculators.cure import _oven_fields, _schedule
from calculators.kit.fields import Choice, Limits, Quantity, Rows, Text, ask
from calculators.kit.result import Clash

MOST_PARTS = 12

# The example's benches: two iron ends and the straps between them, in one load.
EXAMPLE_LOAD = """iron ends, cast-iron, both-sides, 5/8 in
steel straps, carbon-steel, both-sides, 1/8 in"""


@dataclass(frozen=True)
class LoadRow:
    name: str = ask(Text(label="Name", hint="What you call this part", may_be_empty=True))
    metal: str = ask(Choice(label="Metal", options=part.metal_options(), default="cast-iron"))
    shape: str = ask(
        Choice(
            label="Heaviest section",
            options=part.shape_options(),
            default="both-sides",
        )
    )
    thickness_m: float = ask(
        Quantity(
            label="Thickness",
            hint="Of this part's heaviest section",
            units=("in", "mm", "cm"),
            limits=Limits("0.01 in", "12 in", "foil to a forging"),
            example="5/8 in",
        )
    )
    schedule_temperature_degC: float | None = ask(
        Quantity(
            label="Own schedule temperature",
            hint="Only where this part's powder differs",
            units=("degF", "degC"),
            limits=Limits("200 F", "550 F", "no coating powder cures outside this"),
            may_be_empty=True,
            example="350 F",
        )
    )
    schedule_time_min: float | None = ask(
        Quantity(
            label="Own schedule time",
            hint="Minutes at that metal temperature",
            units=("min", "h", "s"),
            limits=Limits("0.5 min", "240 min", "no coating powder's schedule lies outside this"),
            may_be_empty=True,
            example="15 min",
        )
    )


@dataclass(frozen=True)
class Inputs:
    load: tuple[LoadRow, ...] = ask(
        Rows(
            group="The load",
            label="Parts in the load",
            hint="A part a line: name, metal, shape, thickness; then its own schedule where its powder differs",
            row=LoadRow,
            default=EXAMPLE_LOAD,
            at_most=MOST_PARTS,
        )
    )
    schedule_temperature_degC: float = ask(_schedule.schedule_temperature())
    schedule_time_min: float = ask(_schedule.schedule_time())
    second_temperature_degC: float | None = ask(_schedule.second_temperature())
    second_time_min: float | None = ask(_schedule.second_time())
    longest_time_min: float | None = ask(_schedule.longest_time())
    oven_degC: float = ask(part.oven())
    airflow: str = ask(_oven_fields.airflow())
    oven_coefficient_W_m2K: float = ask(_oven_fields.oven_coefficient())
    oven_doubt_percent: float = ask(_oven_fields.oven_doubt())
    shading: str = ask(_oven_fields.shading())
    door_dC: float = ask(
        Quantity(
            label="Air lost each time the door opens",
            hint="How far the oven's reading falls when you take a part out",
            units=("dF", "dC"),
            default="50",
            limits=Limits("0 F", "400 F", "an oven that was open"),
        )
    )
    recovery_min: float = ask(
        _oven_fields.recovery("5", "Minutes until the air reads the setting again, after each opening")
    )
    dip_dC: float = ask(_oven_fields.dip())
    start_degC: float = ask(_oven_fields.start())


def schedules_asked(asked: Inputs) -> tuple[_schedule.Schedule, tuple[_schedule.Schedule, ...]]:
    """The load's schedule, and the schedule of each row. Raises Clash where inputs do not fit each other."""
    common = _schedule.schedule_asked(asked)
    clashes = _oven_fields.clashes(asked.start_degC, asked.oven_degC, asked.dip_dC, asked.recovery_min)
    own = []
    for line, row in enumerate(asked.load, 1):
        temperature, time = row.schedule_temperature_degC, row.schedule_time_min
        if (temperature is None) != (time is None):
            clashes.append(
                ("load", f"Line {line}: enter both the own schedule temperature and time, or neither")
            )
        if temperature is None or time is None:
            own.append(common)
        else:
            own.append(_schedule.schedule_of(temperature, time, None, None, None))
    if clashes:
        raise Clash(*clashes)
    return common, tuple(own)
