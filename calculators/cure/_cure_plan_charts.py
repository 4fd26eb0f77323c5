"""The two pictures of a cure plan: how hot the metal is, and how much of the schedule is made."""

from __future__ import annotations

from functools import partial

from calculators.cure._cure_plan_sums import FLOW_DEGC, Plan
from calculators.cure._schedule import Schedule
from calculators.kit.chart import Axis, Chart, Mark, Series
from calculators.kit.result import Drawing
from calculators.physics.curve import Curve

POINTS = 40


def _f(degC: float) -> float:
    return degC * 1.8 + 32


def charts(schedule: Schedule, made: Plan) -> tuple[Drawing, ...]:
    """Temperature against time with the pulls, and the share of the schedule with its band."""
    ends = [made.safe_min, made.sheet_min or 0.0]
    if made.over_bake_min is not None and made.over_bake_min < 2 * made.safe_min:
        ends.append(made.over_bake_min)
    end = max(ends) * 1.12
    times = tuple(end * place / POINTS for place in range(POINTS + 1))
    return partial(_temperatures, schedule, made, times), partial(_shares, schedule, made, times)


def _series(name: str, curve: Curve, times: tuple[float, ...]) -> Series:
    return Series(name, times, tuple(_f(curve.at(time)) for time in times))


def _marks(made: Plan) -> tuple[Mark, ...]:
    marks = [Mark("earliest", made.earliest_min), Mark("pull", made.safe_min)]
    if made.sheet_min is not None:
        marks.append(Mark("by the sheet", made.sheet_min))
    if made.over_bake_min is not None and made.over_bake_min < 2 * made.safe_min:
        marks.append(Mark("over-bake", made.over_bake_min))
    return tuple(marks)


def _temperatures(schedule: Schedule, made: Plan, times: tuple[float, ...]) -> Chart:
    series = [
        _series("heaviest section", made.curve, times),
        _series("the same, slow end", made.slow_curve, times),
    ]
    if not made.one_section:
        series.append(_series("thinnest section", made.thin_curve, times))
    start = made.cooling.first_at_or_below(made.metal_at_safe_degC) or 0.0
    cooling = tuple(time for time in times if time >= made.safe_min)
    if len(cooling) > 1:
        cooled = tuple(_f(made.cooling.at(start + time - made.safe_min)) for time in cooling)
        series.append(Series("heaviest section, pulled", cooling, cooled))
    reach = made.reach_schedule_min
    when = "never reaches" if reach is None else f"takes {reach:.0f} min to reach"
    return Chart(
        title="Metal temperature in the oven",
        says=f"The heaviest section {when} the schedule temperature; the air is there long before.",
        x=Axis("minutes from the closed door", 0),
        y=Axis("metal, F"),
        series=tuple(series),
        marks=(
            *_marks(made),
            Mark("schedule", y=_f(schedule.schedule_degC)),
            Mark("powder flows", y=_f(FLOW_DEGC)),
        ),
    )


def _shares(schedule: Schedule, made: Plan, times: tuple[float, ...]) -> Chart:
    best, slow, fast = made.doses
    needed = made.needed_share * schedule.schedule_min / 100

    def share(at: float) -> float:
        return min(at / needed, 400.0)

    made_by = [tuple(share(dose.at(time)) for time in times) for dose in (best, slow, fast)]
    lows, highs = (tuple(map(end, *made_by)) for end in (min, max))
    at_safe = best.at(made.safe_min) / needed
    return Chart(
        title="Share of the schedule made in the oven",
        says=f"At the pull the heaviest section has made about {at_safe:.0f} % of the schedule if all is as entered; "
        "the band shows the doubt of airflow and powder.",
        x=Axis("minutes from the closed door", 0),
        y=Axis("share of the schedule, %", 0),
        series=(
            Series("doubt", times, lows, highs),
            Series("as entered", times, made_by[0]),
        ),
        marks=(*_marks(made), Mark("schedule made", y=100.0)),
    )
