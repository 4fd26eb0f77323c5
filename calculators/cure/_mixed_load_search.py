"""Is there an oven setting at which one pull serves the whole load?"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import cached_property
from math import ceil, floor, inf

from calculators.cure._bake_cautions import FAR_OVER_DC, MARGIN_DC
from calculators.cure._mixed_load_sums import Section, common_window
from calculators.cure._window import pull_min, whole_up
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


def _degC(degF: float) -> float:
    return (degF - 32.0) / 1.8


class _Setting:
    """The load at another setting of its oven, and two bounds that settle most settings.

    last, first: places of the part that is cured last and of the one that may be over-baked first where the load is
    now. Of one part and one cure speed the pull cannot come earlier, nor over-baking later.
    """

    def __init__(self, load: Sequence[Section], setting_degF: int, last: int, first: int) -> None:
        self.degF = setting_degF
        self._now, self._last, self._first = load, last, first

    @cached_property
    def load(self) -> list[Section]:
        """The load's sections in the oven so set."""
        oven = replace(self._now[0].oven, setting_degC=_degC(self.degF))
        return [replace(section, oven=oven) for section in self._now]

    @cached_property
    def at_least_min(self) -> float:
        """No pull for all comes before this; infinite = no pull."""
        last = self.load[self._last]
        schedule = last.schedule
        kinetics = schedule.kinetics(schedule.activation_high)
        pull = pull_min(last.slow, kinetics, schedule, schedule.schedule_min)
        return inf if pull is None else whole_up(pull)

    @cached_property
    def at_most_min(self) -> float:
        """No pull for all comes after this; infinite = nothing is over-baked."""
        first = self.load[self._first]
        schedule = first.schedule
        end = Dose(first.fast, schedule.kinetics(schedule.activation_high)).time_to(schedule.longest_min)
        return inf if end is None else end


def _may_open(settings: Sequence[_Setting]) -> Sequence[_Setting]:
    """Of settings, coolest first, those that the bounds do not rule out.

    In a hotter oven every part is cured earlier and over-baked earlier. So where the hottest of them cures too late for
    what the coolest allows, every one between does.
    """
    if not settings or settings[-1].at_least_min > settings[0].at_most_min:
        return []
    if len(settings) == 1:
        return settings
    half = len(settings) // 2
    return [*_may_open(settings[:half]), *_may_open(settings[half:])]


def search(load: Sequence[Section], asked_degC: float) -> Search:
    """The nearest setting, in steps of 5 F, from 15 F over the schedules to 27 F over their hottest points."""
    low = ceil(_degF(max(one.schedule.schedule_degC for one in load) + MARGIN_DC) / STEP_DEGF - 1e-6)
    high = floor(_degF(min(one.schedule.hottest_degC for one in load) + FAR_OVER_DC) / STEP_DEGF + 1e-6)
    tried = Search(None, low * STEP_DEGF, high * STEP_DEGF)
    if common_window(load) is not None:
        return replace(tried, setting_degC=asked_degC)
    places = range(len(load))
    last = max(places, key=lambda place: load[place].earliest_min or inf)
    first = min(places, key=lambda place: load[place].latest_min)
    settings = [
        _Setting(load, step * STEP_DEGF, last, first)
        for step in range(low, high + 1)
        if _degC(step * STEP_DEGF) > load[0].oven.start_degC
    ]
    for setting in sorted(_may_open(settings), key=lambda one: abs(one.degF - _degF(asked_degC))):
        if common_window(setting.load) is not None:
            return replace(tried, setting_degC=_degC(setting.degF))
    return tried
