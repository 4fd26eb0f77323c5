"""What a reader of a logged bake must not miss."""

from __future__ import annotations

from collections.abc import Iterator

from calculators.cure._bake_log_forecast import Forecast
from calculators.cure._bake_log_inputs import Inputs
from calculators.cure._bake_log_readings import Log, doubt_dC
from calculators.cure._bake_log_sums import Bake, credit_degC
from calculators.cure._schedule import Schedule, f_and_c
from calculators.kit.numbers import shop_number, whole
from calculators.kit.result import Caution
from calculators.physics.logged import LONGEST_FALLING_GAP_MIN

LONG_GAP_MIN = 10.0
SHORT_GAP_MIN = 0.5
POOR_FIT_DC = 15 / 1.8


def cautions(
    asked: Inputs, schedule: Schedule, log: Log, bake: Bake, forecast: Forecast
) -> tuple[Caution, ...]:
    """Every caution that this log deserves."""
    return (
        *log.cautions,
        *_verdict(schedule, log, bake),
        *_undecided(asked, schedule, bake),
        *_readings(schedule, log, bake),
        *_oven(asked, bake, forecast),
        *_powder(schedule),
    )


def _verdict(schedule: Schedule, log: Log, bake: Bake) -> Iterator[Caution]:
    several = len(bake.probes) > 1
    if bake.verdict == "outside-sheet" and bake.hottest_degC > schedule.hottest_degC:
        yield Caution(
            "caution",
            f"The metal went to {f_and_c(bake.hottest_degC)}, more than 27 F over {f_and_c(schedule.hottest_degC)}, the hottest "
            "point of the sheet. Nothing on the sheet says what the film is like after that. Compare colour and gloss, test "
            "the film, and ask the powder's maker.",
            "log",
        )
    elif bake.verdict == "outside-sheet":
        yield Caution(
            "caution",
            f"The metal never came within 27 F of {f_and_c(schedule.coolest_degC)}, the coolest point of the sheet. Nothing "
            "on the sheet vouches for a cure so cool, however long. Bake again at the sheet's temperature.",
            "log",
        )
    elif bake.verdict == "under" and log.pulled:
        yield Caution(
            "caution",
            "Under-cured film looks finished and fails in use. Bake it again before it goes out; ask the powder's maker whether "
            "a second bake is allowed.",
            "log",
            "common-practice",
        )
    if several and bake.most.verdict != bake.verdict and bake.most.all_minutes.best > schedule.longest_min:
        yield Caution(
            "caution",
            f"{bake.most.name.capitalize()} made {whole(bake.most.all_minutes.best)} min, more than the longest time of "
            f"{whole(schedule.longest_min)} min, while {bake.least.name} made {whole(bake.least.safe.best)} min of safe credit. "
            "One pull does not serve both: split the load or lower the oven.",
            "log",
        )


def _undecided(asked: Inputs, schedule: Schedule, bake: Bake) -> Iterator[Caution]:
    need, longest = schedule.schedule_min, schedule.longest_min
    doubt = shop_number(doubt_dC(asked) * 1.8, 2)
    why = f"the readings may be off by {doubt} F, and the powder's cure speed has its own doubt"
    if bake.verdict in ("in", "over") and bake.least.safe.low < need:
        yield Caution(
            "caution",
            f"This log cannot decide whether the schedule was made: {why}, so the cure may be as little as "
            f"{shop_number(bake.least.safe.low, 2)} min of {shop_number(need)}. Bake on, or test the film.",
            "instrument",
            "shop-estimate",
        )
    if bake.verdict in ("under", "likely") and bake.least.all_minutes.high >= need:
        yield Caution(
            "caution",
            f"This log cannot decide for certain: {why}, and at the far end of both the schedule was made. Treat it as not "
            "made until a test of the film says otherwise.",
            "instrument",
            "shop-estimate",
        )
    if bake.verdict == "in" and bake.most.all_minutes.high > longest:
        yield Caution(
            "note",
            f"At the far end of the doubt the film had up to {whole(bake.most.all_minutes.high)} min, over the longest time of "
            f"{whole(longest)} min. Compare colour and gloss with a good panel.",
            "longest-time",
        )


def _readings(schedule: Schedule, log: Log, bake: Bake) -> Iterator[Caution]:
    times, metal, credit = log.times_min, bake.least.metal_degC, credit_degC(schedule)
    gaps = [(times[place] - times[place - 1], place) for place in range(1, len(times))]
    hidden = [
        place
        for gap, place in gaps
        if gap > LONGEST_FALLING_GAP_MIN and metal[place] < metal[place - 1] and metal[place - 1] >= credit
    ]
    if log.pulled_min > times[-1] + SHORT_GAP_MIN:
        yield Caution(
            "note" if log.pulled_min <= times[-1] + LONG_GAP_MIN else "caution",
            f"The last reading is {shop_number(log.pulled_min - times[-1], 2)} min before the pull. What was made in between "
            "is not counted: read the metal once more at the pull.",
            "pulled-at",
        )
    if hidden:
        place = hidden[0]
        yield Caution(
            "caution",
            f"Between {shop_number(times[place - 1], 4)} and {shop_number(times[place], 4)} min the metal fell unread: "
            "a gap of more than 5 min in which it falls earns no safe credit. Read it every 2 min after the pull.",
            "log",
        )
    longest, place = max(gaps, default=(0.0, 0))
    if longest > LONG_GAP_MIN and place not in hidden:
        yield Caution(
            "note",
            f"There is no reading between {shop_number(times[place - 1], 4)} and {shop_number(times[place], 4)} min; a straight "
            "line is taken across. Read every 5 min, every 2 near the target.",
            "log",
        )
    if metal[0] >= credit:
        yield Caution(
            "note",
            f"The log starts with the metal at {f_and_c(metal[0])} already. What it made before that is not counted.",
            "log",
        )
    if log.pulled and metal[-1] >= credit:
        yield Caution(
            "note",
            f"The log ends with the metal still at {f_and_c(metal[-1])}. What it makes after that is not counted.",
            "log",
        )


def _oven(asked: Inputs, bake: Bake, forecast: Forecast) -> Iterator[Caution]:
    if bake.oven.fit is not None and bake.oven.fit.residual_K > POOR_FIT_DC:
        yield Caution(
            "caution",
            f"The fitted curve misses the readings by {whole(bake.oven.fit.residual_K * 1.8)} F. Check the metal, the thickness "
            "and the oven setting; until they fit, do not plan with this oven coefficient.",
            "thickness",
        )
    if forecast.minutes is not None and forecast.high is None and not forecast.words:
        yield Caution(
            "caution",
            "At the slow end of the doubt the metal does not come to the sheet at this setting. Raise the oven, as far as the "
            "sheet allows, and read again.",
            "oven",
        )
    if forecast.steady:
        yield Caution(
            "note",
            "The time left is counted with the metal held as hot as the last reading, because the log cannot give the oven's "
            "own number. If the metal cools, it is longer.",
            "log",
        )
    if asked.instrument == "infrared" and asked.reading_doubt_dC is None:
        yield Caution(
            "note",
            "Infrared is taken to be within 15 F on cured powder film: our estimate. On bare metal or raw powder it can be "
            "off by far more, and no answer here would hold. A probe settles it.",
            "instrument",
            "shop-estimate",
        )


def _powder(schedule: Schedule) -> Iterator[Caution]:
    if not schedule.two_points:
        yield Caution(
            "note",
            "With one point of the sheet the powder's cure speed is a guess (80 kJ/mol, 60 to 120). A second point narrows "
            "the answer.",
            "second-temperature",
            "ea-default",
        )
    if schedule.longest_is_guess:
        yield Caution(
            "note",
            "Over-bake is counted from twice the schedule time. That is a guess until the sheet says more.",
            "longest-time",
        )
