"""The numbers behind a chart, for those who cannot or will not read the picture."""

from __future__ import annotations

from calculators.kit.chart import Chart, Series
from calculators.kit.numbers import shop_number
from calculators.kit.result import Table

ROWS = 13


def chart_table(chart: Chart) -> Table:
    """A table of a chart's numbers: a row every so often along x, a column a series; or a row a bar."""
    if chart.bars:
        rows: tuple[tuple[str, ...], ...] = tuple(
            (bar.name, shop_number(bar.low), shop_number(bar.high), bar.text) for bar in chart.bars
        )
        return Table(
            chart.title, (chart.y.label or "Row", f"{chart.x.label}, from", "to", "what it says"), rows
        )
    longest = max(
        (one for one in chart.series if not one.dots),
        key=lambda one: one.xs[-1] - one.xs[0],
        default=chart.series[0],
    )
    low, high = longest.xs[0], longest.xs[-1]
    at = (
        list(longest.xs)
        if len(longest.xs) <= ROWS
        else [low + (high - low) * row / (ROWS - 1) for row in range(ROWS)]
    )
    shown = [one for one in chart.series if not one.dots]
    head = (chart.x.label, *(one.name or chart.y.label for one in shown))
    rows = tuple((shop_number(x), *(_at(one, x) for one in shown)) for x in at)
    marks = tuple(
        (shop_number(mark.x), mark.text, *("" for _ in shown[1:]))
        for mark in chart.marks
        if mark.x is not None and mark.y is None
    )
    return Table(chart.title, head, rows + (marks if shown else ()))


def _at(one: Series, x: float) -> str:
    value = _between(one.xs, one.ys, x)
    if value is None:
        return ""
    if not one.upper:
        return shop_number(value)
    upper = _between(one.xs, one.upper, x)
    return f"{shop_number(value)} to {shop_number(value if upper is None else upper)}"


def _between(xs: tuple[float, ...], ys: tuple[float, ...], x: float) -> float | None:
    if not xs or not xs[0] - 1e-9 <= x <= xs[-1] + 1e-9:
        return None
    for place in range(1, len(xs)):
        if x <= xs[place] + 1e-9:
            width = xs[place] - xs[place - 1]
            share = (x - xs[place - 1]) / width if width else 1.0
            return ys[place - 1] + share * (ys[place] - ys[place - 1])
    return ys[-1]
