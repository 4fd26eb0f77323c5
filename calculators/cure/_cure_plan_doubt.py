"""Which doubt matters most for this part? Each thing that may be worse than entered, one at a time, and what would shrink it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from math import inf

from calculators.cure._cure_plan_inputs import Inputs
from calculators.cure._schedule import Schedule
from calculators.cure._window import pull_min
from calculators.kit.numbers import whole
from calculators.kit.result import Table
from calculators.physics.curve import Curve
from calculators.physics.heat import Surroundings

# How much worse than entered each is tried: our own choices, all of them about what a careful shop meets.
READING_ERROR_DC = 10 / 1.8
SHADING_DOUBT = 0.25
COLD_LOAD_DC, COLD_LOAD_MIN = 50 / 1.8, 5.0
DEEPER_DIP = 1.5

NAMES = {
    "airflow": "the airflow on the part",
    "cure-speed": "the powder's cure speed",
    "oven-reading": "the oven's own reading",
    "shading": "how much the part is shaded",
    "cold-load": "the air's fall under the load",
}
COUNTED = ("airflow", "cure-speed")


@dataclass(frozen=True, slots=True)
class Doubt:
    """One thing made worse, all else as entered. alone_min: the pull by then; infinite = never."""

    slug: str
    tried: str
    alone_min: float
    shrinks: str


def doubts(
    asked: Inputs,
    schedule: Schedule,
    needed_min: float,
    around: Surroundings,
    curve: Curve,
    slow: Curve,
    heated: Callable[[Surroundings], Curve],
) -> tuple[Doubt, ...]:
    """Each doubt with the pull that it alone would ask for, largest first.

    around, curve: the oven as entered. slow: in the weaker airflow. heated: the heaviest section in another oven.
    """
    best, low, high = schedule.all_kinetics

    def pull(along: Curve) -> float:
        found = pull_min(along, best, schedule, needed_min)
        return inf if found is None else found

    def oven(**changed: float) -> float:
        as_entered = {
            "temperature_degC": around.temperature_degC,
            "convection_W_m2K": around.convection_W_m2K,
            "exposure": around.exposure,
            "dip_K": around.dip_K,
            "recovery_min": around.recovery_min,
        }
        return pull(heated(Surroundings(**(as_entered | changed))))

    ends = [pull_min(curve, kinetics, schedule, needed_min) for kinetics in (best, low, high)]
    air_degC = around.temperature_degC - READING_ERROR_DC
    dips = around.dip_K > 0
    found = [
        Doubt("airflow", f"Airflow {whole(asked.oven_doubt_percent)} % weaker", pull(slow), _airflow(asked)),
        Doubt(
            "cure-speed",
            "Cure speed at its worse end",
            max(inf if one is None else one for one in ends),
            "Ask the maker for another point of its cure curve, or prove this pull with a rub test."
            if schedule.two_points
            else "Enter the second point of the powder's sheet.",
        ),
        Doubt(
            "oven-reading",
            "Oven 10 F cooler than it reads",
            oven(temperature_degC=air_degC) if air_degC > schedule.coolest_degC else inf,
            "Hang a second thermometer beside the part, or put a probe in the metal.",
        ),
        Doubt(
            "shading",
            f"A quarter less of the walls seen than {_hangs(asked)}",
            oven(exposure=(1 - SHADING_DOUBT) * around.exposure),
            "Put the probe on the part that hangs most hidden.",
        ),
        Doubt(
            "cold-load",
            "Air's dip half as deep again" if dips else "Air 50 F down at first, back in 5 min",
            oven(dip_K=DEEPER_DIP * around.dip_K)
            if dips
            else oven(dip_K=COLD_LOAD_DC, recovery_min=COLD_LOAD_MIN),
            "Watch the oven's air after the door closes, and enter its dip.",
        ),
    ]
    return tuple(sorted(found, key=lambda one: -one.alone_min))


def _airflow(asked: Inputs) -> str:
    if asked.airflow == "measured":
        return "Log one more bake: the spread of two says how far the oven's figure can be trusted."
    return "Log one bake with a probe in the heaviest section, and enter the oven's own coefficient."


def _hangs(asked: Inputs) -> str:
    return {"open": "hanging free", "racked": "racked", "packed": "packed"}[asked.shading]


def doubt_table(no_credit_min: float, found: tuple[Doubt, ...]) -> Table:
    """The table that shows how far each moves the pull."""
    rows = [("Nothing: all as entered", f"{whole(no_credit_min)} min", "")]
    for one in found:
        later = (
            "never"
            if one.alone_min == inf
            else f"{one.alone_min:,.0f} min, {one.alone_min - no_credit_min:+.1f}"
        )
        counted = " (counted in Pull at)" if one.slug in COUNTED else " (not counted)"
        rows.append((one.tried + counted, later, one.shrinks))
    return Table(
        "What moves the pull, one doubt at a time",
        ("Worse than entered", "The pull would be", "What shrinks it"),
        tuple(rows),
    )
