"""What bake-log asks."""

from __future__ import annotations

from dataclasses import dataclass, replace

from calculators.cure import _cure_plan_inputs as part
from calculators.cure import _oven_fields, _schedule
from calculators.kit.fields import Choice, Limits, Option, Quantity, Rows, ask
from calculators.kit.result import Clash

# An invented bake of a bench's iron end: a thermocouple in the thickest arm, read every five minutes.
EXAMPLE_LOG = """0, 70
5, 161
10, 229
15, 282
20, 317
25, 345
30, 363
35, 374
40, 383
45, 389
49, 391
52, 363
56, 329"""


@dataclass(frozen=True)
class LogRow:
    # Below zero is let through here, so that a clock that runs backwards gets its own sentence.
    minute_min: float = ask(
        Quantity(
            label="Time",
            units=("min", "s", "h"),
            limits=Limits("-100000 min", "100000 min", "a bake is over within hours"),
            example="5 min",
        )
    )
    temperature_degC: tuple[float, ...] = ask(
        Quantity(
            label="Metal temperature",
            units=("degF", "degC"),
            limits=Limits("-60 F", "1500 F", "a cold yard to far over any cure oven"),
            example="350 F",
        )
    )


@dataclass(frozen=True)
class Inputs:
    log: tuple[LogRow, ...] = ask(
        Rows(
            group="The log",
            label="Log",
            hint="A reading a line: minute, then the metal's temperature, one column a probe. Clock times do too",
            row=LogRow,
            default=EXAMPLE_LOG,
            at_least=1,
            takes_file=True,
            repeats="temperature",
            clock="minute",
            unit_of="temperature",
        )
    )
    instrument: str = ask(
        Choice(
            label="Read with",
            options=(
                Option("probe", "Probe on or in the metal", ("thermocouple", "contact")),
                Option("infrared", "Infrared gun on the coated part", ("ir", "gun")),
            ),
            default="probe",
            few=True,
        )
    )
    reading_doubt_dC: float | None = ask(
        Quantity(
            label="Readings are within",
            hint="If you checked the instrument; empty takes 4 F for a probe, 15 F for infrared",
            units=("dF", "dC"),
            limits=Limits("0.5 F", "60 F", "a calibrated probe to a gun that cannot see the metal"),
            may_be_empty=True,
            example="2 F",
        )
    )
    pulled_at_min: float | None = ask(
        Quantity(
            label="Pulled at",
            hint="Minute on the log's clock; empty while it still bakes, or if the log shows it falling",
            units=("min", "s", "h"),
            limits=Limits("0 min", "100000 min", "a minute of the log"),
            may_be_empty=True,
            example="49 min",
        )
    )
    schedule_temperature_degC: float = ask(_schedule.schedule_temperature())
    schedule_time_min: float = ask(_schedule.schedule_time())
    second_temperature_degC: float | None = ask(_schedule.second_temperature())
    second_time_min: float | None = ask(_schedule.second_time())
    longest_time_min: float | None = ask(_schedule.longest_time())
    oven_degC: float | None = ask(
        replace(
            part.oven(),
            group="For the forecast and the oven's own number",
            hint="What the air is held at; empty if not known",
            may_be_empty=True,
            example="400 F",
        )
    )
    dip_dC: float = ask(
        replace(
            _oven_fields.dip(), hint="From the air recovery; the log's minute 0 is then when the door closed"
        )
    )
    recovery_min: float = ask(_oven_fields.recovery())
    metal: str = ask(replace(part.metal(), group=""))
    shape: str = ask(
        replace(
            part.shape(),
            label="Section that was read",
            options=part.shape_options(),
        )
    )
    thickness_m: float | None = ask(
        replace(
            part.thickness(),
            label="Thickness of that section",
            hint="Plate thickness, or a bar's width; empty if not known",
            when=None,
            may_be_empty=True,
        )
    )


def schedule_asked(asked: Inputs) -> _schedule.Schedule:
    """The schedule of these inputs. Raises Clash where inputs do not fit each other."""
    if asked.dip_dC > 0 and asked.recovery_min == 0:
        raise Clash(("recovery", "Enter the time to come back to setting: the air starts below it"))
    if asked.dip_dC > 0 and asked.log[0].minute_min < 0:
        raise Clash(("log", "Log must start at minute 0 or later, where the air starts below its setting"))
    return _schedule.schedule_asked(asked)
