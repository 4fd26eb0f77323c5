"""The sums of bake-log: what each probe's readings came to, and what they say of the oven."""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import lru_cache
from typing import Literal

from calculators.cure._bake_log_inputs import Inputs
from calculators.cure._bake_log_readings import Log, doubt_dC
from calculators.cure._cure_plan_sums import part_of
from calculators.cure._schedule import Schedule
from calculators.physics.bake import SAFE_CREDIT_UNDER_COOLEST_K
from calculators.physics.confidence import student_t_95
from calculators.physics.cure import Kinetics
from calculators.physics.curve import Curve
from calculators.physics.fit import FEWEST_READINGS, OvenFit, fit_oven
from calculators.physics.heat import Part, Surroundings, heat_path_m, temperature_curve
from calculators.physics.logged import LONGEST_FALLING_GAP_MIN, logged_equivalents_min

type Verdict = Literal["under", "likely", "in", "over", "outside-sheet"]

FAR_OVER_SHEET_DC = 15.0  # 27 F
MOST_FITTED = 30
# With a standard error over this share of it, a coefficient is not worth carrying.
LOOSEST_FIT = 0.25


@dataclass(frozen=True, slots=True)
class Span:
    """A best value with the low and the high end of its doubt."""

    best: float
    low: float
    high: float


@dataclass(frozen=True, slots=True)
class Probe:
    """One probe's bake: running totals of all minutes and of safe ones, their ends with doubt, and its verdict."""

    name: str
    metal_degC: list[float]
    totals_min: list[float]
    safe_totals_min: list[float]
    all_minutes: Span
    safe: Span
    hottest_degC: float
    verdict: Verdict


@dataclass(frozen=True, slots=True)
class Oven:
    """What the slowest probe says of the oven. fit is None where it cannot say, and why holds the reason.

    soon: only readings are missing. reach_W_m2K: how far the coefficient may be off, with 95 % confidence.
    """

    fit: OvenFit | None
    why: str
    part: Part | None = None
    curve: Curve | None = None
    from_min: float = 0.0
    reach_W_m2K: float = 0.0
    soon: bool = False

    @property
    def unknown(self) -> str:
        """Why there is no number, as an answer says it."""
        return f"cannot be told{' yet' * self.soon}: {self.why}"


@dataclass(frozen=True, slots=True)
class Bake:
    """What a logged bake came to. least, most: the probes with the least safe cure and with the most of all minutes."""

    probes: tuple[Probe, ...]
    least: Probe
    most: Probe
    verdict: Verdict
    hottest_degC: float
    oven: Oven


def bake_of(asked: Inputs, schedule: Schedule, log: Log) -> Bake:
    """Sum every probe, and fit the oven to the slowest."""
    doubt = doubt_dC(asked)
    several = len(log.probes) > 1
    probes = tuple(
        _probe(f"probe {place}" if several else "the metal", log.times_min, metal, schedule, doubt)
        for place, metal in enumerate(log.probes, 1)
    )
    least = min(probes, key=lambda one: (one.safe.best, one.all_minutes.best))
    most = max(probes, key=lambda one: one.all_minutes.best)
    oven = _oven(asked, log, least, doubt)
    return Bake(
        probes,
        least,
        most,
        _together(one.verdict for one in probes),
        max(one.hottest_degC for one in probes),
        oven,
    )


def credit_degC(schedule: Schedule) -> float:
    """Metal temperature under which no minute is safe credit."""
    return schedule.coolest_degC - SAFE_CREDIT_UNDER_COOLEST_K


def _probe(name: str, times: list[float], metal: list[float], schedule: Schedule, doubt: float) -> Probe:
    credit = credit_degC(schedule)

    def safe_totals(kinetics: Kinetics, readings: list[float]) -> list[float]:
        return logged_equivalents_min(times, readings, kinetics, credit, LONGEST_FALLING_GAP_MIN)

    best, *ends = schedule.all_kinetics
    totals, safe = logged_equivalents_min(times, metal, best), safe_totals(best, metal)
    all_ends, safe_ends = [totals[-1]], [safe[-1]]
    for shift in (-doubt, doubt):
        moved = [one + shift for one in metal]
        for kinetics in ends:
            all_ends.append(logged_equivalents_min(times, moved, kinetics)[-1])
            safe_ends.append(safe_totals(kinetics, moved)[-1])
    hottest = max(metal)
    all_span = Span(totals[-1], min(all_ends), max(all_ends))
    safe_span = Span(safe[-1], min(safe_ends), max(safe_ends))
    return Probe(
        name,
        metal,
        totals,
        safe,
        all_span,
        safe_span,
        hottest,
        verdict_of(schedule, totals[-1], safe[-1], hottest),
    )


def verdict_of(schedule: Schedule, all_min: float, safe_min: float, hottest_degC: float) -> Verdict:
    """The verdict on one probe.

    Metal far over the sheet comes first: no minute up there is vouched for. Too little cure even with every minute
    counted is under, however cool the metal stayed.
    """
    if hottest_degC > schedule.hottest_degC + FAR_OVER_SHEET_DC + 1e-9:
        return "outside-sheet"
    if all_min < schedule.schedule_min:
        return "under"
    if hottest_degC < credit_degC(schedule):
        return "outside-sheet"
    if safe_min < schedule.schedule_min:
        return "likely"
    return "over" if all_min > schedule.longest_min else "in"


def _together(verdicts: object) -> Verdict:
    """The verdict on a load: the one that asks most of the reader."""
    held = set(verdicts)  # type: ignore[call-overload]
    order: tuple[Verdict, ...] = ("outside-sheet", "under", "likely", "over", "in")
    return next(one for one in order if one in held)


def more_readings(missing: int) -> str:
    """What is asked of whoever stands at the oven."""
    return f"take {missing} more reading{'s' * (missing > 1)}, about 3 min apart"


def _oven(asked: Inputs, log: Log, probe: Probe, doubt: float) -> Oven:
    if asked.oven_degC is None or asked.thickness_m is None:
        return Oven(None, "oven setting and thickness are needed for it")
    times, metal = log.times_min[: log.pull + 1], probe.metal_degC[: log.pull + 1]
    if len(times) < FEWEST_READINGS:
        return Oven(None, more_readings(FEWEST_READINGS - len(times)), soon=not log.pulled)
    if max(metal) > asked.oven_degC + doubt:
        return Oven(None, "the metal read hotter than the oven setting")
    times, metal = _thinned(times, metal)
    path_m = heat_path_m(asked.shape, asked.thickness_m)
    part = part_of(asked.metal, path_m)
    try:
        oven = Surroundings(asked.oven_degC, 0.0, 1.0, asked.dip_dC, asked.recovery_min)
        fit = _fit(tuple(times), tuple(metal), asked.metal, path_m, oven, doubt / 2)
    except ValueError as reason:
        return Oven(None, str(reason))
    if fit.spread_W_m2K > LOOSEST_FIT * fit.convection_W_m2K:
        return Oven(None, "the readings scatter too much, or the metal had hardly any way left to climb")
    curve = temperature_curve(part, oven_from(asked, times[0], fit.convection_W_m2K), fit.start_degC)
    return Oven(fit, "", part, curve, times[0], student_t_95(len(times) - 2) * fit.spread_W_m2K)


def oven_from(asked: Inputs, minute_min: float, convection_W_m2K: float) -> Surroundings:
    """The oven as it is from a minute of the log on: what is left of its dip is what it still has to make up."""
    assert asked.oven_degC is not None
    oven = Surroundings(asked.oven_degC, convection_W_m2K, 1.0, asked.dip_dC, asked.recovery_min)
    return replace(oven, dip_K=asked.oven_degC - oven.air_degC(minute_min))


@lru_cache(maxsize=8)
def _fit(
    times: tuple[float, ...],
    metal_degC: tuple[float, ...],
    metal: str,
    path_m: float,
    oven: Surroundings,
    scatter_K: float,
) -> OvenFit:
    """The fit is most of the work, and stays while only the schedule or the instrument changes."""
    return fit_oven(times, metal_degC, part_of(metal, path_m), oven, scatter_K)


def _thinned(times: list[float], metal: list[float]) -> tuple[list[float], list[float]]:
    """A long log as means of even runs of readings: the fit needs the shape, not every second of it."""
    run = -(-len(times) // MOST_FITTED)
    firsts = range(0, len(times) - run + 1, run)
    pairs = [(sum(times[at : at + run]) / run, sum(metal[at : at + run]) / run) for at in firsts]
    rising = [pair for place, pair in enumerate(pairs) if place == 0 or pair[0] > pairs[place - 1][0]]
    return [pair[0] for pair in rising], [pair[1] for pair in rising]
