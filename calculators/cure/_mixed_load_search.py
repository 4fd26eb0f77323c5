"""Is there an oven setting at which one pull serves the whole load?"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from math import ceil, floor, inf

from calculators.cure._bake_cautions import FAR_OVER_DC, MARGIN_DC
from calculators.cure._mixed_load_sums import Section, common_window, whole_up
from calculators.cure._window import pull_min
from calculators.physics.dose import Dose

STEP_DEGF = 5


@dataclass(frozen=True, slots=True)
class Search:
    """setting_degC: the setting found nearest to the asked one, or None. low_degF, high_degF: what was tried."""

    setting_degC: float | None
    low_degF: int
    high_degF: int


def _degF(degC: float) -> float:
    return degC * 1.8 + 32.0


def search(load: Sequence[Section], asked_degC: float) -> Search:
    """Try every setting in steps of 5 F, nearest first: from 15 F over the schedules to 27 F over their hottest points."""
    low = ceil(_degF(max(one.schedule.schedule_degC for one in load) + MARGIN_DC) / STEP_DEGF - 1e-6)
    high = floor(_degF(min(one.schedule.hottest_degC for one in load) + FAR_OVER_DC) / STEP_DEGF + 1e-6)
    tried = Search(None, low * STEP_DEGF, high * STEP_DEGF)
    if common_window(load) is not None:
        return replace(tried, setting_degC=asked_degC)
    settings = sorted(
        (place * STEP_DEGF for place in range(low, high + 1)), key=lambda one: abs(one - _degF(asked_degC))
    )
    for setting in settings:
        degC = (setting - 32) / 1.8
        if degC > load[0].oven.start_degC and _opens(load, degC):
            return replace(tried, setting_degC=degC)
    return tried


def _opens(load: Sequence[Section], setting_degC: float) -> bool:
    oven = replace(load[0].oven, setting_degC=setting_degC)
    there = [replace(section, oven=oven) for section in load]
    # two parts and one cure speed settle most settings: the pull cannot be earlier, nor over-bake later, than these
    last = max(zip(load, there, strict=True), key=lambda pair: pair[0].earliest_min or inf)[1]
    first = min(zip(load, there, strict=True), key=lambda pair: pair[0].latest_min)[1]
    schedule = last.schedule
    at_least = pull_min(
        last.slow, schedule.kinetics(schedule.activation_high), schedule, schedule.schedule_min
    )
    if at_least is None:
        return False
    kinetics = first.schedule.kinetics(first.schedule.activation_high)
    at_most = Dose(first.fast, kinetics).time_to(first.schedule.longest_min)
    if at_most is not None and whole_up(at_least) > at_most:
        return False
    return common_window(there) is not None
