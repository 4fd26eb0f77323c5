"""The pictures of a logged bake: how hot the metal was, how the cure grew, and where each probe ended."""

from __future__ import annotations

from collections.abc import Iterator

from calculators.cure._bake_log_forecast import Doubts, Forecast, Source
from calculators.cure._bake_log_readings import Log
from calculators.cure._bake_log_sums import Bake, Probe, credit_degC
from calculators.cure._schedule import Schedule
from calculators.kit.chart import Axis, Band, Bar, Chart, Mark, Series, Tone
from calculators.kit.numbers import shop_number, whole

MOST_POINTS = 60
MOST_PROBES = 4
TONES: dict[str, Tone] = {
    "under": "bad",
    "likely": "near",
    "in": "good",
    "over": "near",
    "outside-sheet": "bad",
}
SHORT = {
    "under": "under",
    "likely": "likely",
    "in": "in the window",
    "over": "over",
    "outside-sheet": "outside the sheet",
}


DOUBTS: dict[Source, str] = {
    "readings": "the readings",
    "cure-speed": "the powder's cure speed",
    "oven-fit": "the oven's fit",
}


def charts(
    schedule: Schedule, log: Log, bake: Bake, forecast: Forecast, doubts: Doubts, said: str
) -> tuple[Chart, ...]:
    """Readings and fitted curve; the share of the schedule; a bar a probe; a bar a doubt. said: the verdict as a sentence."""
    # Not the means of the readings: the picture must show what was typed.
    step = -(-len(log.times_min) // MOST_POINTS)
    places = sorted({*range(0, len(log.times_min), step), log.pull, len(log.times_min) - 1})
    times = tuple(log.times_min[place] for place in places)
    return (
        _temperatures(schedule, log, bake, forecast, places, times),
        _shares(schedule, log, bake, places, times),
        _bars(schedule, bake, said),
        *_doubts(doubts),
    )


def _f(degC: float) -> float:
    return degC * 1.8 + 32


def _shown(bake: Bake) -> tuple[Probe, ...]:
    """The slowest probe, the one with the most cure, and a few between them."""
    others = [one for one in bake.probes if one is not bake.least and one is not bake.most]
    ends = [bake.least] if bake.most is bake.least else [bake.least, bake.most]
    return tuple([*ends, *others][:MOST_PROBES])


def _pull_mark(log: Log) -> tuple[Mark, ...]:
    return (Mark("pulled", log.pulled_min),) if log.pulled else ()


def _temperatures(
    schedule: Schedule, log: Log, bake: Bake, forecast: Forecast, places: list[int], times: tuple[float, ...]
) -> Chart:
    series = [
        Series(one.name, times, tuple(_f(one.metal_degC[place]) for place in places)) for one in _shown(bake)
    ]
    words = "The metal"
    if bake.oven.curve is not None:
        first, last = bake.oven.from_min, log.times_min[log.pull]
        clock = tuple(first + (last - first) * place / MOST_POINTS for place in range(MOST_POINTS + 1))
        series.append(
            Series("fitted curve", clock, tuple(_f(bake.oven.curve.at(at - first)) for at in clock))
        )
        words = "The fitted curve is what this oven does to this section; the metal"
    marks = [*_pull_mark(log)]
    if forecast.ahead is not None and forecast.minutes is not None:
        last = log.times_min[-1]
        wait = forecast.minutes if forecast.high is None else forecast.high
        clock = tuple(wait * place / MOST_POINTS for place in range(MOST_POINTS + 1))
        series.append(
            Series(
                "from the last reading on",
                tuple(last + at for at in clock),
                tuple(_f(forecast.ahead.at(at)) for at in clock),
            )
        )
        marks.append(Mark("pull", last + wait))
    return Chart(
        title="What the metal did",
        says=f"{words} came to {whole(_f(bake.hottest_degC))} F at the hottest. Minutes count as safe credit above "
        f"{whole(_f(credit_degC(schedule)))} F.",
        x=Axis("minutes on the log's clock"),
        y=Axis("metal, F"),
        series=tuple(series),
        marks=(
            *marks,
            Mark("schedule", y=_f(schedule.schedule_degC)),
            Mark("safe credit from here", y=_f(credit_degC(schedule))),
        ),
    )


def _shares(schedule: Schedule, log: Log, bake: Bake, places: list[int], times: tuple[float, ...]) -> Chart:
    least, need = bake.least, schedule.schedule_min / 100
    of = "" if len(bake.probes) == 1 else f" by {least.name}, the slowest,"
    return Chart(
        title="Share of the schedule made",
        says=f"Safe minutes{of} came to {shop_number(least.safe.best / need)} % of the schedule; with every minute counted, "
        f"{shop_number(least.all_minutes.best / need)} %.",
        x=Axis("minutes on the log's clock"),
        y=Axis("share of the schedule, %", 0),
        series=(
            Series("safe minutes", times, tuple(least.safe_totals_min[place] / need for place in places)),
            Series("every minute", times, tuple(least.totals_min[place] / need for place in places)),
        ),
        marks=(*_pull_mark(log), Mark("schedule made", y=100.0)),
    )


def _bars(schedule: Schedule, bake: Bake, said: str) -> Chart:
    need = schedule.schedule_min / 100
    over = schedule.longest_min / need
    bars = tuple(
        Bar(
            one.name,
            0.0,
            one.all_minutes.best / need,
            TONES[one.verdict],
            f"{SHORT[one.verdict]}, {shop_number(one.all_minutes.best / need)} %",
        )
        for one in bake.probes
    )
    top = max(1.2 * over, *(bar.high for bar in bars))
    return Chart(
        title="From nothing to over-baked",
        says=said,
        x=Axis("every minute counted, % of the schedule", 0, top),
        y=Axis("probe", names=tuple(one.name for one in bake.probes)),
        bars=bars,
        bands=(Band("in the window", 100.0, over, "good", "x"), Band("over", over, None, "near", "x")),
    )


def _doubts(doubts: Doubts) -> Iterator[Chart]:
    """How far each doubt alone moves the answer, the widest first. An end that is never reached cannot be drawn."""
    drawn = [(one, one.high) for one in doubts.each if one.high is not None]
    if doubts.biggest is None or not drawn:
        return
    drawn.sort(key=lambda pair: -pair[0].width)
    bars = tuple(
        Bar(
            DOUBTS[one.source],
            one.low,
            high,
            "near",
            f"{shop_number(one.low, 3)} to {shop_number(high, 3)} min",
        )
        for one, high in drawn
    )
    what = "Minutes from the last reading to the pull" if doubts.of_pull else "Safe minutes made"
    yield Chart(
        title="Which doubt matters most",
        says=f"{what}, {shop_number(doubts.best, 3)} at best guess, moved by one doubt at a time.",
        x=Axis("minutes to the pull" if doubts.of_pull else "safe minutes made"),
        y=Axis("doubt", names=tuple(bar.name for bar in bars)),
        bars=bars,
        marks=(Mark("best guess", doubts.best),),
    )
