"""What a logged bake is told as: the answers and the headline."""

from __future__ import annotations

from math import ceil, floor

from calculators.cure._bake_log_forecast import NEVER, Doubts, Forecast
from calculators.cure._bake_log_inputs import Inputs
from calculators.cure._bake_log_readings import Log
from calculators.cure._bake_log_sums import Bake, Span
from calculators.cure._schedule import Schedule
from calculators.kit.numbers import shop_number, whole
from calculators.kit.result import Given, Value


def said_of(schedule: Schedule, log: Log, bake: Bake, wait: Forecast) -> str:
    """The headline."""
    made = f"{shop_number(bake.least.safe.best, 2)} min of cure made, {shop_number(schedule.schedule_min)} needed"
    if bake.verdict == "outside-sheet":
        return "Outside the sheet: this log cannot say that the film is right"
    if not log.pulled and bake.verdict in ("under", "likely"):
        return f"Still baking, {made}: {_pull_words(wait)}"
    words = {
        "under": f"Under-cured: {shop_number(bake.least.all_minutes.best, 2)} min of cure made with every minute counted, "
        f"{shop_number(schedule.schedule_min)} needed",
        "likely": "Likely cured, not surely: it takes minutes cooler than the sheet vouches for",
        "in": f"In the window: {made}",
        "over": f"Over-baked: {whole(bake.most.all_minutes.best)} min of cure made, {whole(schedule.longest_min)} is the longest",
    }[bake.verdict]
    return words if log.pulled else f"Still baking. {words}: {_pull_words(wait)}"


def _pull_words(wait: Forecast) -> str:
    """What to do, at the slow end of the doubt, so that nobody pulls early."""
    if wait.minutes is None:
        return wait.words if wait.soon or wait.words == NEVER else f"the time left {wait.words}"
    if wait.words:
        return "pull now"
    if wait.high is None:
        return f"pull in {_minutes(wait.minutes)} at best guess, at the slow end never"
    return f"pull in {_minutes(wait.high)}"


def _minutes(number: float) -> str:
    return f"{ceil(number - 1e-9):,} min"


def _span(span: Span, scale: float = 1.0) -> Value:
    return Value(span.best * scale, span.low * scale, span.high * scale)


def _wait_words(wait: Forecast) -> str:
    """Whole minutes, rounded so that nobody pulls early; JSON keeps the decimals."""
    best = _minutes(wait.minutes or 0.0)
    if wait.low is None:
        return best
    if wait.high is None:
        return f"{best}, from {floor(wait.low + 1e-9):,} min to never"
    return f"{best}, {floor(wait.low + 1e-9):,} to {_minutes(wait.high)}"


def _biggest(asked: Inputs, schedule: Schedule, doubts: Doubts) -> str:
    """Slug of the doubt that matters most, by what would shrink it."""
    biggest = doubts.biggest
    if biggest is None:
        return "none-yet"
    if biggest.source == "readings":
        return f"readings-{asked.instrument}"
    if biggest.source == "cure-speed":
        return "cure-speed-two-points" if schedule.two_points else "cure-speed-one-point"
    return biggest.source


def answers_of(
    asked: Inputs, schedule: Schedule, bake: Bake, wait: Forecast, doubts: Doubts
) -> dict[str, Given]:
    """Every answer by key."""
    fit, reach = bake.oven.fit, bake.oven.reach_W_m2K
    return {
        "verdict": bake.verdict,
        "safe-equivalent": _span(bake.least.safe),
        "equivalent": _span(bake.least.all_minutes),
        "share": _span(bake.least.safe, 100 / schedule.schedule_min),
        "hottest": bake.hottest_degC,
        "pull-in": Value(wait.minutes, wait.low, wait.high, wait.words or _wait_words(wait)),
        "biggest-doubt": _biggest(asked, schedule, doubts),
        "oven-coefficient": Value(words=bake.oven.unknown)
        if fit is None
        else Value(
            fit.convection_W_m2K,
            max(fit.convection_W_m2K - reach, 0.0),
            fit.convection_W_m2K + reach,
        ),
    }
