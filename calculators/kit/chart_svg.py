"""Charts drawn as SVG with classes only, so that a strict policy and both colour schemes hold."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable
from html import escape

from calculators.kit.chart import Bar, Chart, Mark, Series
from calculators.kit.numbers import shop_number

WIDTH, HEIGHT = 420, 300
LEFT, RIGHT, BOTTOM = 50, 12, 46
_MARK_ROW = 17
_CHARACTER = 6.6  # width of a character of the charts' text, near enough to keep labels apart


def chart_svg(chart: Chart, name: str) -> str:
    """The picture of a chart. name: starts every id in it."""
    return _Drawing(chart, name).svg()


class _Drawing:
    def __init__(self, chart: Chart, name: str) -> None:
        self.chart, self.name = chart, name
        xs = [x for one in chart.series for x in one.xs] + [
            end for bar in chart.bars for end in (bar.low, bar.high)
        ]
        ys = [y for one in chart.series for y in (*one.ys, *one.upper)]
        xs += [mark.x for mark in chart.marks if mark.x is not None]
        ys += [mark.y for mark in chart.marks if mark.y is not None]
        for band in chart.bands:
            (xs if band.along == "x" else ys).extend(end for end in (band.low, band.high) if end is not None)
        self.x_ticks = ticks(*_ends(xs, chart.x.low, chart.x.high))
        self.y_ticks = ticks(*_ends(ys, chart.y.low, chart.y.high)) if not chart.bars else []
        self.x_low, self.x_high = _span(xs, chart.x.low, chart.x.high, self.x_ticks)
        self.y_low, self.y_high = (
            _span(ys, chart.y.low, chart.y.high, self.y_ticks) if not chart.bars else (0.0, 1.0)
        )
        marks = [mark for mark in chart.marks if mark.x is not None and mark.y is None]
        self.rows = _rows_for(marks, self.x)
        self.top = 14 + _MARK_ROW * (max((row for _, row in self.rows), default=-1) + 1)
        if chart.bars and any(band.text for band in chart.bands):
            self.top += _MARK_ROW  # a bar's words need the room where a zone's name would stand
        self.height = self.top + BOTTOM + (40 * len(chart.bars) if chart.bars else HEIGHT - BOTTOM - 14)

    def x(self, value: float) -> float:
        return LEFT + (value - self.x_low) / (self.x_high - self.x_low) * (WIDTH - LEFT - RIGHT)

    def y(self, value: float) -> float:
        return (
            self.height
            - BOTTOM
            - (value - self.y_low) / (self.y_high - self.y_low) * (self.height - BOTTOM - self.top)
        )

    def svg(self) -> str:
        chart, name = self.chart, self.name
        body = "".join(
            (
                *self._bands(),
                *self._grid(),
                *(self._series(place, one) for place, one in enumerate(chart.series, 1)),
                *(self._bar(place, bar) for place, bar in enumerate(chart.bars)),
                *self._marks(),
            )
        )
        return (
            f'<svg class="calc-svg" viewBox="0 0 {WIDTH} {_c(self.height)}" role="img" '
            f'aria-labelledby="{name}-title {name}-says"><title id="{name}-title">{escape(chart.title)}</title>'
            f'<desc id="{name}-says">{escape(chart.says)}</desc>{body}</svg>'
        )

    def _bands(self) -> Iterable[str]:
        for band in self.chart.bands:
            along_x = band.along == "x"
            low = (self.x_low if along_x else self.y_low) if band.low is None else band.low
            high = (self.x_high if along_x else self.y_high) if band.high is None else band.high
            x: float
            y: float
            wide: float
            tall: float
            if along_x:
                x, y, wide, tall = (
                    self.x(low),
                    self.top,
                    self.x(high) - self.x(low),
                    self.height - BOTTOM - self.top,
                )
                at = (x + 4, self.top - 5.0 if self.chart.bars else self.top + 14.0)
            else:
                x, y, wide, tall = LEFT, self.y(high), WIDTH - LEFT - RIGHT, self.y(low) - self.y(high)
                at = (LEFT + 6.0, self.y(high) + 14)
            yield _rect(f"calc-band calc-band-{band.tone}", x, y, wide, tall)
            if band.text and tall >= 16:
                yield _text("calc-band-text", at[0], at[1], band.text, "start")

    def _grid(self) -> Iterable[str]:
        floor = self.height - BOTTOM
        for value in self.x_ticks:
            if self.x_low <= value <= self.x_high * (1 + 1e-9):
                at = _c(self.x(value))
                yield f'<path class="calc-grid" d="M{at} {_c(self.top)}V{_c(floor)}"/>'
                yield _text("calc-tick", self.x(value), floor + 16, shop_number(value, 6), "middle")
        for value in self.y_ticks:
            level = self.y(value)
            yield f'<path class="calc-grid" d="M{LEFT} {_c(level)}H{WIDTH - RIGHT}"/>'
            yield _text("calc-tick", LEFT - 6, level + 4, shop_number(value, 6), "end")
        # the names of bars stand where an upright axis would cross them
        upright = "" if self.chart.bars else f"{_c(self.top)}V"
        yield f'<path class="calc-axis" d="M{LEFT} {upright}{_c(floor)}H{WIDTH - RIGHT}"/>'
        middle = (LEFT + WIDTH - RIGHT) / 2
        yield _text("calc-tick", middle, self.height - 8, self.chart.x.label, "middle")
        if self.chart.y.label and not self.chart.bars:
            centre = (self.top + floor) / 2
            yield (
                f'<text class="calc-tick" transform="translate(12 {_c(centre)}) rotate(-90)" text-anchor="middle">'
                f"{escape(self.chart.y.label)}</text>"
            )

    def _series(self, place: int, one: Series) -> str:
        points = [
            (self.x(x), self.y(min(max(y, self.y_low), self.y_high)))
            for x, y in zip(one.xs, one.ys, strict=True)
        ]
        parts = []
        if one.upper:
            top = [(self.x(x), self.y(min(y, self.y_high))) for x, y in zip(one.xs, one.upper, strict=True)]
            around = " ".join(f"{_c(x)},{_c(y)}" for x, y in [*points, *reversed(top)])
            parts.append(f'<polygon class="calc-area calc-area-{place}" points="{around}"/>')
        elif one.dots:
            parts += [
                f'<circle class="calc-dot calc-dot-{place}" cx="{_c(x)}" cy="{_c(y)}" r="3"/>'
                for x, y in points[:400]
            ]
        else:
            parts.append(
                f'<path class="calc-line calc-line-{place}" d="M{"L".join(f"{_c(x)} {_c(y)}" for x, y in points)}"/>'
            )
        return "".join(parts)

    def _bar(self, place: int, bar: Bar) -> str:
        top = self.top + 6 + 40 * place
        left, right = self.x(bar.low), self.x(bar.high)
        return (
            _text("calc-bar-name", LEFT - 44, top + 10, bar.name, "start")
            + _rect(f"calc-bar calc-band-{bar.tone}", left, top + 14, max(right - left, 1), 14)
            + _text("calc-bar-text", WIDTH - RIGHT, top + 10, bar.text, "end")
        )

    def _marks(self) -> Iterable[str]:
        floor = self.height - BOTTOM
        for mark in self.chart.marks:
            if mark.x is not None and mark.y is not None:
                yield f'<circle class="calc-point" cx="{_c(self.x(mark.x))}" cy="{_c(self.y(mark.y))}" r="5"/>'
                yield self._label(mark.text, self.x(mark.x), self.y(mark.y) - 9)
            elif mark.y is not None:
                at = self.y(mark.y)
                yield f'<path class="calc-mark calc-mark-level" d="M{LEFT} {_c(at)}H{WIDTH - RIGHT}"/>'
                yield _text("calc-mark-text", WIDTH - RIGHT - 2, at - 4, mark.text, "end")

        for mark, row in self.rows:
            at, high = self.x(mark.x or 0.0), 12 + _MARK_ROW * row
            yield f'<path class="calc-mark" d="M{_c(at)} {_c(high - 9)}V{_c(floor)}"/>'
            if at - _wide(mark.text) < 4:
                yield _text("calc-mark-text", at + 4, high, mark.text, "start")
            else:
                yield _text("calc-mark-text", at - 4, high, mark.text, "end")

    def _label(self, text: str, x: float, y: float) -> str:
        half = len(text) * _CHARACTER / 2
        anchor, at = "middle", x
        if x + half > WIDTH - 2:
            anchor, at = "end", WIDTH - 2.0
        elif x - half < 2:
            anchor, at = "start", 2.0
        return _text("calc-mark-text", at, y, text, anchor)


def _rows_for(marks: list[Mark], place: Callable[[float], float]) -> list[tuple[Mark, int]]:
    """Which row each label stands in. A label ends at its own line, and the rightmost line starts highest, so that no line
    runs through a label and no label covers another.
    """
    rows: list[tuple[Mark, int]] = []
    for mark in sorted(marks, key=lambda one: -(one.x or 0.0)):
        at = place(mark.x or 0.0)
        under = [row for other, row in rows if place(other.x or 0.0) - _wide(other.text) - 8 < at]
        rows.append((mark, max(under, default=-1) + 1))
    return rows


def _wide(words: str) -> float:
    return len(words) * _CHARACTER


def _text(name: str, x: float, y: float, words: str, anchor: str) -> str:
    return f'<text class="{name}" x="{_c(x)}" y="{_c(y)}" text-anchor="{anchor}">{escape(words)}</text>'


def _rect(name: str, x: float, y: float, wide: float, tall: float) -> str:
    return f'<rect class="{name}" x="{_c(x)}" y="{_c(y)}" width="{_c(wide)}" height="{_c(tall)}"/>'


def _c(coordinate: float) -> str:
    return f"{coordinate:.1f}".removesuffix(".0")


def _ends(values: list[float], low: float | None, high: float | None) -> tuple[float, float]:
    bottom = min(values, default=0.0) if low is None else low
    top = max(values, default=1.0) if high is None else high
    return (bottom, top) if top > bottom else (bottom - 0.5, bottom + 0.5)


def _span(
    values: list[float], low: float | None, high: float | None, marks: list[float]
) -> tuple[float, float]:
    bottom, top = _ends(values, low, high)
    return (bottom if low is not None else min(bottom, marks[0])), (
        top if high is not None else max(top, marks[-1])
    )


def ticks(low: float, high: float, about: int = 6) -> list[float]:
    """Round numbers that cover the range.

    >>> ticks(0, 47)
    [0.0, 10.0, 20.0, 30.0, 40.0, 50.0]
    """
    rough = (high - low) / about
    power = 10.0 ** math.floor(math.log10(rough))
    gap = next(size * power for size in (1, 2, 2.5, 5, 10) if size * power >= rough)
    first, last = math.floor(low / gap + 1e-9), math.ceil(high / gap - 1e-9)
    return [round(place * gap, 10) for place in range(first, last + 1)]
