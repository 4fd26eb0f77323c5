"""The sums of mixed-load: each part's window, and the pulls that keep every part inside its own."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property
from math import inf

from calculators.cure._cure_plan_sums import part_of
from calculators.cure._schedule import Schedule
from calculators.cure._window import over_bake_min, slow_pull_min, whole_up
from calculators.physics.curve import Curve
from calculators.physics.heat import Part, Surroundings, heat_path_m, temperature_curve
from calculators.physics.openings import opened_curve


@dataclass(frozen=True)
class Oven:
    """The air round the load, and what an opened door does to it. doubt: share by which the airflow may be off."""

    setting_degC: float
    convection_W_m2K: float
    exposure: float
    dip_K: float
    recovery_min: float
    door_K: float
    start_degC: float
    doubt: float

    def around(self, factor: float) -> Surroundings:
        """The air at a share of the airflow."""
        return Surroundings(
            self.setting_degC,
            factor * self.convection_W_m2K,
            self.exposure,
            self.dip_K,
            self.recovery_min,
        )


@dataclass(frozen=True)
class Section:
    """A part of the load in an oven, as its heaviest section."""

    name: str
    metal: str
    shape: str
    part: Part
    schedule: Schedule
    oven: Oven

    @cached_property
    def slow(self) -> Curve:
        """How it heats at the slow end, the door kept shut."""
        return temperature_curve(self.part, self.oven.around(1 - self.oven.doubt), self.oven.start_degC)

    @cached_property
    def fast(self) -> Curve:
        """How it heats at the fast end, the door kept shut."""
        return temperature_curve(self.part, self.oven.around(1 + self.oven.doubt), self.oven.start_degC)

    @cached_property
    def earliest_min(self) -> float | None:
        """First pull that is cured at the slow end, the door kept shut; None = never."""
        return slow_pull_min(self.slow, self.schedule, self.schedule.schedule_min)

    @cached_property
    def latest_min(self) -> float:
        """Over-baked from here at the fast end; infinite = never. An opened door is not counted: it may cost less than said."""
        latest = over_bake_min(self.fast, self.schedule)
        return inf if latest is None else latest

    def earliest_after(self, openings_min: Sequence[float]) -> float | None:
        """First pull that is cured at the slow end where the door was opened at these minutes, each at its full loss."""
        if not openings_min or self.oven.door_K == 0:
            return self.earliest_min
        oven = self.oven
        around = oven.around(1 - oven.doubt)
        curve = opened_curve(self.part, around, oven.start_degC, openings_min, oven.door_K)
        return slow_pull_min(curve, self.schedule, self.schedule.schedule_min)

    @property
    def has_window(self) -> bool:
        """Whether some whole minute serves it, were it baked alone."""
        return self.earliest_min is not None and whole_up(self.earliest_min) <= self.latest_min


@dataclass(frozen=True, slots=True)
class Pull:
    """One opening of the door: the minute, and places in the load of what comes out, with the first minute of each."""

    minute: int
    places: tuple[int, ...]
    earliest_min: tuple[float, ...]


def load_of(rows: Sequence[tuple[str, str, str, float, Schedule]], oven: Oven) -> tuple[Section, ...]:
    """Each row's name, metal, shape, thickness in m and schedule, as sections in an oven."""
    return tuple(
        Section(name, metal, shape, part_of(metal, heat_path_m(shape, thickness_m)), schedule, oven)
        for name, metal, shape, thickness_m, schedule in rows
    )


def pulls_of(load: Sequence[Section]) -> tuple[Pull, ...] | None:
    """The pulls with the fewest openings that keep every part in its window; None where no order does.

    At each opening everything comes out that is cured before the first of what is left would be over-baked. Every
    opening is then counted against what stays in.
    """
    left = dict(enumerate(load))
    openings: list[float] = []
    pulls: list[Pull] = []
    while left:
        first_over = min(section.latest_min for section in left.values())
        ready = {}
        for place, section in left.items():
            # openings only delay a part, so one that is too late with the door shut need not be followed through them
            if section.earliest_min is None or whole_up(section.earliest_min) > first_over:
                continue
            minute = section.earliest_after(openings)
            if minute is not None and whole_up(minute) <= first_over:
                ready[place] = minute
        if any(section.latest_min == first_over and place not in ready for place, section in left.items()):
            return None
        opened = whole_up(max(ready.values()))
        pulls.append(Pull(opened, tuple(ready), tuple(ready.values())))
        openings.append(float(opened))
        left = {place: section for place, section in left.items() if place not in ready}
    return tuple(pulls)


def loads_apart(load: Sequence[Section]) -> list[list[int]]:
    """The fewest loads that each have one pull for all of their parts. A part with no window of its own is in none."""
    left = {place: section for place, section in enumerate(load) if section.has_window}
    groups: list[list[int]] = []
    while left:
        first_over = min(section.latest_min for section in left.values())
        group = [
            place for place, section in left.items() if whole_up(section.earliest_min or inf) <= first_over
        ]
        groups.append(group)
        left = {place: section for place, section in left.items() if place not in group}
    return groups


def common_window(load: Sequence[Section]) -> tuple[float, float] | None:
    """From the last part cured to the first over-baked; None where no whole minute lies between."""
    earliest = [section.earliest_min for section in load]
    if None in earliest:
        return None
    low = max(one for one in earliest if one is not None)
    high = min(section.latest_min for section in load)
    return (low, high) if whole_up(low) <= high else None
