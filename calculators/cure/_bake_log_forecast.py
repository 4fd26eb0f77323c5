"""How long until this bake's schedule is made, and which doubt widens that most."""

from __future__ import annotations

from dataclasses import dataclass
from math import inf
from typing import Literal

from calculators.cure._bake_log_inputs import Inputs
from calculators.cure._bake_log_readings import Log, doubt_dC
from calculators.cure._bake_log_sums import Bake, Probe, Span, credit_degC, more_readings, oven_from
from calculators.cure._schedule import Schedule
from calculators.physics.bake import credit_pull_min
from calculators.physics.cure import Kinetics, cure_rate
from calculators.physics.curve import Curve
from calculators.physics.dose import Dose
from calculators.physics.fit import FEWEST_READINGS
from calculators.physics.heat import temperature_curve
from calculators.physics.logged import LONGEST_FALLING_GAP_MIN, logged_equivalents_min

type Source = Literal["readings", "cure-speed", "oven-fit"]

# A doubt that moves an answer by less than this is not worth a measurement.
WORTH_SAYING_MIN = 0.05
# Fewer do not tell whether hot metal stays as hot.
FEWEST_HELD = 3
NEVER = "never at this setting: the metal does not come to the sheet"


@dataclass(frozen=True, slots=True)
class Forecast:
    """Minutes from the last reading until the schedule is made. minutes None: words say why there are none.

    soon: only readings are missing. ahead: how the metal goes on from the last reading, where a fit tells.
    """

    minutes: float | None
    low: float | None = None
    high: float | None = None
    words: str = ""
    steady: bool = False
    soon: bool = False
    ahead: Curve | None = None


@dataclass(frozen=True, slots=True)
class Doubt:
    """What one doubt alone does to an answer: its low and high end. high None: without end."""

    source: Source
    low: float
    high: float | None

    @property
    def width(self) -> float:
        return inf if self.high is None else self.high - self.low


@dataclass(frozen=True, slots=True)
class Doubts:
    """Each doubt alone, about the minutes to the pull where there are some, else about the safe minutes made."""

    of_pull: bool
    best: float
    each: tuple[Doubt, ...]

    @property
    def biggest(self) -> Doubt | None:
        """The one that widens most; None where none matters yet."""
        widest = max(self.each, key=lambda one: one.width)
        return widest if widest.width > WORTH_SAYING_MIN else None


def forecast_of(asked: Inputs, schedule: Schedule, log: Log, bake: Bake) -> tuple[Forecast, Doubts]:
    """Look ahead from the last reading of the slowest probe, and weigh the doubts."""
    safe, alone = bake.least.safe, _alone(asked, schedule, log, bake.least)
    each = tuple(Doubt(source, span.low, span.high) for source, span in alone.items())
    made = Doubts(False, safe.best, each)
    if log.pulled:
        return Forecast(None, words="not baking: the metal has been pulled"), made
    if safe.low >= schedule.schedule_min:
        return Forecast(0.0, words="now: the schedule is made"), made
    if bake.oven.fit is not None:
        found = _along_the_fit(asked, schedule, log, bake, alone)
        return found or (Forecast(None, words=NEVER), made)
    hot = bake.least.metal_degC[-1] >= schedule.coolest_degC
    missing = (FEWEST_HELD if hot else FEWEST_READINGS) - len(log.times_min)
    if missing > 0 and (hot or bake.oven.soon):
        wanted = f"{more_readings(missing)}, before it can say when to pull"
        return Forecast(None, words=wanted, soon=True), made
    if not hot:
        return Forecast(None, words=bake.oven.unknown), made
    return _held(asked, schedule, bake, alone)


def _alone(asked: Inputs, schedule: Schedule, log: Log, probe: Probe) -> dict[Source, Span]:
    """The safe minutes with one doubt at a time."""
    doubt, (best, *ends) = doubt_dC(asked), schedule.all_kinetics
    credit, made = credit_degC(schedule), probe.safe.best

    def safe(shift: float, kinetics: Kinetics) -> float:
        moved = [one + shift for one in probe.metal_degC]
        return logged_equivalents_min(log.times_min, moved, kinetics, credit, LONGEST_FALLING_GAP_MIN)[-1]

    powder = [made, *(safe(0.0, one) for one in ends)]
    return {
        "readings": Span(made, safe(-doubt, best), safe(doubt, best)),
        "cure-speed": Span(made, min(powder), max(powder)),
    }


def _held(
    asked: Inputs, schedule: Schedule, bake: Bake, alone: dict[Source, Span]
) -> tuple[Forecast, Doubts]:
    """Metal that stays as it is makes at least this much while the oven holds."""
    safe, need, doubt = bake.least.safe, schedule.schedule_min, doubt_dC(asked)
    last, powders = bake.least.metal_degC[-1], schedule.all_kinetics
    best, *ends = powders

    def wait(made: float, kinetics: Kinetics, degC: float) -> float:
        return max(0.0, need - made) / cure_rate(kinetics, degC)

    minutes = wait(safe.best, best, last)
    # the powder that gains most under one reading may gain least under another
    low = max(0.0, need - safe.high) / max(cure_rate(one, last + doubt) for one in powders)
    high = (need - safe.low) / min(cure_rate(one, last - doubt) for one in powders)
    reading, powder = alone["readings"], alone["cure-speed"]
    waits = [minutes, *(wait(made, one, last) for made in (powder.low, powder.high) for one in ends)]
    doubts = (
        Doubt("readings", wait(reading.high, best, last + doubt), wait(reading.low, best, last - doubt)),
        Doubt("cure-speed", min(waits), max(waits)),
    )
    return Forecast(minutes, low, high, steady=True), Doubts(True, minutes, doubts)


def _along_the_fit(
    asked: Inputs, schedule: Schedule, log: Log, bake: Bake, alone: dict[Source, Span]
) -> tuple[Forecast, Doubts] | None:
    """None where the metal does not come to the sheet at this setting."""
    fit, part = bake.oven.fit, bake.oven.part
    assert fit is not None and part is not None
    safe, need, doubt, reach = bake.least.safe, schedule.schedule_min, doubt_dC(asked), bake.oven.reach_W_m2K
    last, best_h, (best, *ends) = bake.least.metal_degC[-1], fit.convection_W_m2K, schedule.all_kinetics

    def curve_from(coefficient: float, start_degC: float) -> Curve:
        return temperature_curve(part, oven_from(asked, log.times_min[-1], max(coefficient, 0.0)), start_degC)

    def wait(curve: Curve, kinetics: Kinetics, made: float) -> float | None:
        dose = Dose(curve, kinetics, credit_degC(schedule))
        return credit_pull_min(curve, dose, schedule.coolest_degC, need - made)

    ahead = curve_from(best_h, last)
    minutes = wait(ahead, best, safe.best)
    if minutes is None:
        return None

    def span(fast: list[float | None], slow: list[float | None]) -> tuple[float, float | None]:
        early = min([minutes, *(one for one in fast if one is not None)])
        return early, None if None in slow else max([minutes, *(one for one in slow if one is not None)])

    reading, powder = alone["readings"], alone["cure-speed"]
    cooler, hotter = curve_from(best_h, last - doubt), curve_from(best_h, last + doubt)
    slower, faster = curve_from(best_h - reach, last), curve_from(best_h + reach, last)
    slowest, fastest = curve_from(best_h - reach, last - doubt), curve_from(best_h + reach, last + doubt)
    by_powder = [wait(ahead, one, made) for one in ends for made in (powder.low, powder.high)]
    low, high = span(
        [wait(fastest, one, safe.high) for one in ends], [wait(slowest, one, safe.low) for one in ends]
    )
    doubts = (
        Doubt("readings", *span([wait(hotter, best, reading.high)], [wait(cooler, best, reading.low)])),
        Doubt("cure-speed", *span(by_powder, by_powder)),
        Doubt("oven-fit", *span([wait(faster, best, safe.best)], [wait(slower, best, safe.best)])),
    )
    return Forecast(minutes, low, high, ahead=ahead), Doubts(True, minutes, doubts)
