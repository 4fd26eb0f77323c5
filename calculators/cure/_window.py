"""The window of one section: from the pull at which it is cured to the minute at which it may be over-baked.

Each end is taken where airflow and cure speed are worst: the early end in an airflow weaker than said, the late end in one
stronger, both at whichever of the powder's possible cure speeds is the worse. No other doubt is counted: not the oven's own
reading, nor shading, nor a cold load.
"""

from __future__ import annotations

from math import ceil

from calculators.cure._schedule import Schedule
from calculators.physics.bake import SAFE_CREDIT_UNDER_COOLEST_K, credit_pull_min
from calculators.physics.cure import Kinetics
from calculators.physics.curve import Curve
from calculators.physics.dose import Dose


def whole_up(minutes: float) -> int:
    """A pull as it is done: the next whole minute, a billionth forgiven."""
    return ceil(minutes - 1e-9)


def whole_down(minutes: float) -> int:
    """Over-bake as it is said: the last whole minute before it, a billionth forgiven."""
    return int(minutes + 1e-9)


def pull_min(curve: Curve, kinetics: Kinetics, schedule: Schedule, needed_min: float) -> float | None:
    """First pull at which the oven alone has made the minutes needed, safe minutes only; None = never."""
    credit = Dose(curve, kinetics, schedule.coolest_degC - SAFE_CREDIT_UNDER_COOLEST_K)
    return credit_pull_min(curve, credit, schedule.coolest_degC, needed_min)


def slow_pull_min(slow: Curve, schedule: Schedule, needed_min: float) -> float | None:
    """The early end: the latest of the pulls that the powder's possible cure speeds ask for; None = never."""
    pulls = [pull_min(slow, kinetics, schedule, needed_min) for kinetics in schedule.all_kinetics]
    return None if None in pulls else max(one for one in pulls if one is not None)


def over_bake_min(fast: Curve, schedule: Schedule) -> float | None:
    """The late end: the first minute at which the longest time may be used up; None = never."""
    ends = [Dose(fast, kinetics).time_to(schedule.longest_min) for kinetics in schedule.all_kinetics]
    return min((one for one in ends if one is not None), default=None)
