"""Charts drawn as SVG with classes only, so that a strict policy and both colour schemes hold."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from html import escape

from calculators.kit.chart import Band, Bar, Chart, Mark, Series
from calculators.kit.chart_labels import (
    LINE_HEIGHT,
    Place,
    Room,
    along,
    by_a_point,
    fold,
    over_lines,
    under,
    wide,
)
from calculators.kit.numbers import shop_number

WIDTH, HEIGHT = 420, 300
LEFT, RIGHT, BOTTOM = 50, 12, 46
_NAME_ROW = 17
_MARK_ROW, _LEADER = 24, 9  # a label over an upright line, and under it the way to where the line stands


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
        self.upright = sorted(
            (mark for mark in chart.marks if mark.x is not None and mark.y is None),
            key=lambda mark: mark.x or 0.0,
        )
        self.rows = over_lines(
            [self.x(mark.x or 0.0) for mark in self.upright],
            [mark.text for mark in self.upright],
            4,
            WIDTH - 4,
        )
        self.top = 14 + _MARK_ROW * len(self.rows.middles) - (3 if self.upright else 0)
        if chart.bars and any(band.text for band in chart.bands):
            self.top += _NAME_ROW  # a bar's words need the room where a zone's name would stand
        # a long name and what is said of it do not share a line
        self.pitch = 40 if all(wide(bar.name + bar.text) < WIDTH - RIGHT - 16 for bar in chart.bars) else 55
        self.height = (
            self.top + BOTTOM + (self.pitch * len(chart.bars) if chart.bars else HEIGHT - BOTTOM - 14)
        )
        above = self.top - _NAME_ROW if chart.bars else self.top - 3
        self.room = Room(WIDTH, LEFT + 2, WIDTH - 2, above, self.height - BOTTOM - 1)

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
                *map(self._band, chart.bands),
                *self._grid(),
                *(self._series(place, one) for place, one in enumerate(chart.series, 1)),
                *(self._bar(place, bar) for place, bar in enumerate(chart.bars)),
                *self._marks(),
                *self._words(),
                *(self._bar_words(place, bar) for place, bar in enumerate(chart.bars)),
            )
        )
        return (
            f'<svg class="calc-svg" viewBox="0 0 {WIDTH} {_c(self.height)}" role="img" '
            f'aria-labelledby="{name}-title {name}-says"><title id="{name}-title">{escape(chart.title)}</title>'
            f'<desc id="{name}-says">{escape(chart.says)}</desc>{body}</svg>'
        )

    def _zone(self, band: Band) -> tuple[float, float, float, float]:
        """Left, top, width and height."""
        along_x = band.along == "x"
        low = (self.x_low if along_x else self.y_low) if band.low is None else band.low
        high = (self.x_high if along_x else self.y_high) if band.high is None else band.high
        if along_x:
            return self.x(low), self.top, self.x(high) - self.x(low), self.height - BOTTOM - self.top
        return LEFT, self.y(high), WIDTH - LEFT - RIGHT, self.y(low) - self.y(high)

    def _band(self, band: Band) -> str:
        return _rect(f"calc-band calc-band-{band.tone}", *self._zone(band))

    def _grid(self) -> Iterable[str]:
        floor = self.height - BOTTOM
        for value in self.x_ticks:
            if self.x_low <= value <= self.x_high * (1 + 1e-9):
                at, words = self.x(value), shop_number(value, 6)
                yield f'<path class="calc-grid" d="M{_c(at)} {_c(self.top)}V{_c(floor)}"/>'
                # the last one may be wider than the room beside the axis
                yield _text("calc-tick", min(at, WIDTH - 2 - wide(words) / 2), floor + 16, words, "middle")
        for value in self.y_ticks:
            if not self.y_low <= value <= self.y_high * (1 + 1e-9):
                continue
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
        if not one.dots:
            self.room.curve(points)
        if one.upper:
            top = [(self.x(x), self.y(min(y, self.y_high))) for x, y in zip(one.xs, one.upper, strict=True)]
            self.room.curve(top)
            around = " ".join(f"{_c(x)},{_c(y)}" for x, y in [*points, *reversed(top)])
            parts.append(f'<polygon class="calc-area calc-area-{place}" points="{around}"/>')
        elif one.dots:
            for x, y in points[:400]:
                self.room.dot(x, y, 3)
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
        left, right = self.x(bar.low), self.x(bar.high)
        top = self.top + self.pitch * (place + 1) - 20
        return _rect(f"calc-bar calc-band-{bar.tone}", left, top, max(right - left, 1), 14)

    def _bar_words(self, place: int, bar: Bar) -> str:
        foot = self.top + 16 + self.pitch * place
        return _text("calc-bar-name", LEFT - 44, foot, bar.name, "start") + _text(
            "calc-bar-text", WIDTH - RIGHT, foot + self.pitch - 40, bar.text, "end"
        )

    def _marks(self) -> Iterable[str]:
        """The lines and points; their words come after, over everything."""
        floor = self.height - BOTTOM
        for place, mark in enumerate(self.upright):
            at = self.x(mark.x or 0.0)
            self.room.line(at, self.top - _NAME_ROW, at, floor)
            yield f'<path class="calc-mark" d="{self._leader(place)}V{_c(floor)}"/>'
        for mark in self.chart.marks:
            if mark.y is not None and mark.x is None:
                level = self.y(mark.y)
                self.room.line(LEFT, level, WIDTH - RIGHT, level)
                yield f'<path class="calc-mark calc-mark-level" d="M{LEFT} {_c(level)}H{WIDTH - RIGHT}"/>'
            elif mark.y is not None and mark.x is not None:
                self.room.point(self.x(mark.x), self.y(mark.y), 5)
                yield f'<circle class="calc-point" cx="{_c(self.x(mark.x))}" cy="{_c(self.y(mark.y))}" r="5"/>'

    def _row_foot(self, row: int) -> float:
        """The foot of the words of a row over the chart, counted upward."""
        return 12.0 + _MARK_ROW * (len(self.rows.middles) - 1 - row)

    def _leader(self, place: int) -> str:
        """From under a label down past the rows below it, to where the line itself begins."""
        own, middles = self.rows.own(place), self.rows.middles
        mark = self.upright[place]
        ways = [self.x(mark.x or 0.0), *(middles[row][place] for row in range(own))]
        start = under(middles[own][place], wide(mark.text), ways[own])
        path = f"M{_c(start)} {_c(self._row_foot(own) + 3)}"
        for row in range(own, 0, -1):
            path += (
                f"L{_c(ways[row])} {_c(self._row_foot(row) + 3 + _LEADER)}V{_c(self._row_foot(row - 1) + 3)}"
            )
        return path + f"L{_c(ways[0])} {_c(self._row_foot(0) + 3 + _LEADER)}"

    def _words(self) -> Iterable[str]:
        """The least movable first."""
        for place, mark in enumerate(self.upright):
            row = self.rows.own(place)
            middle = self.rows.middles[row][place]
            yield _text("calc-mark-text", middle, self._row_foot(row), mark.text, "middle")
        marks = self.chart.marks
        for mark in marks:
            if mark.x is not None and mark.y is not None:
                yield self._word("calc-mark-text", [mark.text], by_a_point(self.x(mark.x), self.y(mark.y)))
        for mark in marks:
            if mark.y is not None and mark.x is None:
                yield self._word("calc-mark-text", [mark.text], self._by_a_level(mark))
        for band in self.chart.bands:
            if band.text:
                yield self._name(band)

    def _by_a_level(self, mark: Mark) -> Iterable[Place]:
        level = self.y(mark.y or 0.0)
        return along(LEFT + 4, WIDTH - RIGHT - 2, mark.text, (level - 4, level + 13), "end")

    def _name(self, band: Band) -> str:
        left, top, across, tall = self._zone(band)
        if band.along == "y":
            if tall < 16:
                return ""
            feet = [top + 14, *([top + tall - 5] if tall > 34 else [])]
            places = along(left + 6, left + across - 6, band.text, feet, "start")
            return self._word("calc-band-text", [band.text], places)
        if self.chart.bars:
            foot = self.top - 5
            return self._word(
                "calc-band-text", [band.text], along(left + 4, left + across - 2, band.text, [foot], "start")
            )
        lines = fold(band.text, across - 6)
        feet = [top + 14 + 12 * step for step in range(int(tall - LINE_HEIGHT * len(lines)) // 12)]
        return self._word("calc-band-text", lines, (Place(left + 4, foot, "start") for foot in feet))

    def _word(self, name: str, lines: Sequence[str], places: Iterable[Place]) -> str:
        place = self.room.stand(lines, places)
        return "".join(
            _text(name, place.x, place.y + LINE_HEIGHT * row, words, place.anchor)
            for row, words in enumerate(lines)
        )


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
