"""Where the words of a chart stand: apart from one another, and off its lines wherever there is room.

Widths are reckoned, not measured, because the browser's font is not known here. A coarse grid of bits answers what a place
would cover, since this runs with every answer.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Literal

type Anchor = Literal["start", "middle", "end"]

CHARACTER = 6.6  # width of a character of the charts' text, bold and as large as a phone shows it
_ASCENT, _DESCENT = 10, 3
LINE_HEIGHT = 15
_CELL = 8
_GAP = 9.0
_SLOT = 3.0  # room that a line takes between two labels
_NEAR = 30.0  # a leader that goes further aside is hard to follow


@dataclass(frozen=True, slots=True)
class Place:
    """Where words would stand: x of their anchor, y of the first line's foot."""

    x: float
    y: float
    anchor: Anchor


def wide(words: str) -> float:
    return len(words) * CHARACTER


class _Bits:
    """What is taken, as columns of bits: a bit a pixel of height."""

    def __init__(self, width: float) -> None:
        self.columns = [0] * (int(width) // _CELL + 2)

    def add(self, left: float, top: float, right: float, bottom: float) -> None:
        bits = _bits(top, bottom)
        for column in self._across(left, right):
            self.columns[column] |= bits

    def fill(self, column: int, top: float, bottom: float) -> None:
        if 0 <= column < len(self.columns):
            self.columns[column] |= _bits(top, bottom)

    def hits(self, left: float, top: float, right: float, bottom: float) -> int:
        bits = _bits(top, bottom)
        return sum(1 for column in self._across(left, right) if self.columns[column] & bits)

    def _across(self, left: float, right: float) -> range:
        last = len(self.columns) - 1
        return range(min(max(int(left) // _CELL, 0), last), min(max(int(right) // _CELL, 0), last) + 1)


def _bits(top: float, bottom: float) -> int:
    first = max(int(top), 0)
    return (1 << max(int(bottom) + 1, first + 1)) - (1 << first)


class Room:
    """The room of one chart. low_x to high_x and low_y to high_y is where words may stand."""

    def __init__(self, width: float, low_x: float, high_x: float, low_y: float, high_y: float) -> None:
        self.low_x, self.high_x, self.low_y, self.high_y = low_x, high_x, low_y, high_y
        # words are worst to cover, then a curve, then a straight line across
        self._words, self._curves, self._lines = _Bits(width), _Bits(width), _Bits(width)

    def curve(self, points: Sequence[tuple[float, float]]) -> None:
        """A curve drawn from left to right: what it takes of each column is gathered first, because curves have many points."""
        if not points:
            return
        x, y = points[0]
        column, least, most = int(x) // _CELL, y, y
        for to_x, to_y in points:
            to_column = int(to_x) // _CELL
            while column < to_column:
                edge = (column + 1) * _CELL
                level = y + (to_y - y) * (edge - x) / (to_x - x)
                self._curves.fill(column, min(least, level) - 1, max(most, level) + 1)
                column, least, most = column + 1, level, level
            if to_y < least:
                least = to_y
            elif to_y > most:
                most = to_y
            x, y = to_x, to_y
        self._curves.fill(column, least - 1, most + 1)

    def dot(self, x: float, y: float, radius: float) -> None:
        self._curves.add(x - radius, y - radius, x + radius, y + radius)

    def point(self, x: float, y: float, radius: float) -> None:
        self._words.add(x - radius, y - radius, x + radius, y + radius)

    def line(self, left: float, top: float, right: float, bottom: float) -> None:
        self._lines.add(left, top, right, bottom)

    def stand(self, lines: Sequence[str], places: Iterable[Place]) -> Place:
        """The first of these places that covers nothing, or else the one that covers least; from then on it is taken."""
        best: tuple[int, Place] | None = None
        for place in places:
            box = _box(lines, place)
            left, top, right, bottom = box
            if left < self.low_x or right > self.high_x or top < self.low_y or bottom > self.high_y:
                continue
            cost = 100 * self._words.hits(*box) + 10 * self._curves.hits(*box) + 3 * self._lines.hits(*box)
            if best is None or cost < best[0]:
                best = cost, place
            if not cost:
                break
        # words longer than the chart: they start at its edge
        chosen = best[1] if best else Place(self.low_x, self.low_y + _ASCENT, "start")
        self._words.add(*_box(lines, chosen))
        return chosen


def _box(lines: Sequence[str], place: Place) -> tuple[float, float, float, float]:
    width = max(map(wide, lines))
    left = place.x - {"start": 0.0, "middle": width / 2, "end": width}[place.anchor]
    return left, place.y - _ASCENT, left + width, place.y + _DESCENT + LINE_HEIGHT * (len(lines) - 1)


def fold(words: str, room: float) -> list[str]:
    """The words in as few lines as this room takes; a word that is longer than it stays whole."""
    lines: list[str] = []
    for word in words.split():
        if lines and wide(f"{lines[-1]} {word}") <= room:
            lines[-1] += f" {word}"
        else:
            lines.append(word)
    return lines


def by_a_point(x: float, y: float) -> Iterable[Place]:
    """Round a point, close by first."""
    sides: tuple[tuple[int, Anchor], ...] = ((-1, "end"), (1, "start"))
    yield Place(x, y - 10, "middle")
    for away in (8, 12, 16):
        for side, anchor in sides:
            yield Place(x + side * away, y - away + 2, anchor)
            yield Place(x + side * away, y + away + 8, anchor)
            yield Place(x + side * (away + 2), y + 4, anchor)
        yield Place(x, y + away + 12, "middle")
        yield Place(x, y - away - 6, "middle")


def along(left: float, right: float, words: str, feet: Sequence[float], begin: Anchor) -> Iterable[Place]:
    """Along a level line or a zone: at the end where it begins, at the other, then anywhere between.

    feet: the heights that words may stand at, the best first.
    """
    ends: list[Place] = [Place(left, feet[0], "start"), Place(right, feet[0], "end")]
    if begin == "end":
        ends.reverse()
    for foot in feet:
        yield from (Place(end.x, foot, end.anchor) for end in ends)
    first, last = left + wide(words) / 2, right - wide(words) / 2
    steps = max(int(last - first) // 12, 0)
    for foot in feet:
        for step in range(1, steps):
            at = first + 12 * step
            yield Place(at if begin == "start" else first + last - at, foot, "middle")


def spread(wanted: Sequence[float], widths: Sequence[float], low: float, high: float) -> list[float]:
    """Middles as near as can be to those wanted, in their order, with a gap between, from low to high.

    >>> spread([20, 70, 72], [20, 20, 20], 0, 200)
    [20.0, 56.5, 85.5]
    """
    needed = [0.0]
    for one, two in pairwise(widths):
        needed.append(needed[-1] + (one + two) / 2 + _GAP)
    # without the gaps they only have to keep their order: those that do not are pooled at their mean
    pools: list[tuple[float, int]] = []
    for want, before in zip(wanted, needed, strict=True):
        mean, count = want - before, 1
        while pools and pools[-1][0] > mean:
            other, others = pools.pop()
            mean = (mean * count + other * others) / (count + others)
            count += others
        pools.append((mean, count))
    most = high - widths[-1] / 2 - needed[-1]
    least = low + widths[0] / 2
    shifts = [max(min(mean, most), least) for mean, count in pools for _ in range(count)]
    return [shift + before for shift, before in zip(shifts, needed, strict=True)]


@dataclass(frozen=True, slots=True)
class Rows:
    """Rows of labels over upright lines, the lowest first: where each line passes a row, or has its label in it.

    Line i has its label in row i % rows; in the rows under that it takes a gap between two labels. The order never changes,
    so that no leader crosses a label or another leader.
    """

    middles: list[list[float]]

    def own(self, place: int) -> int:
        return place % len(self.middles)


def over_lines(places: Sequence[float], words: Sequence[str], low: float, high: float) -> Rows:
    """As few rows as keep every label near its line. places: the lines from left to right."""
    best: tuple[float, list[list[float]]] = (0.0, [])
    for count in range(1, len(places) + 1):
        rows: list[list[float]] = []
        targets = list(places)
        worst = 0.0
        for row in range(count):
            kept = [place for place in range(len(places)) if place % count >= row]
            widths = [wide(words[place]) if place % count == row else _SLOT for place in kept]
            if sum(widths) + _GAP * (len(widths) - 1) > high - low:
                worst = high
            middles = spread([targets[place] for place in kept], widths, low, high)
            for place, width, at in zip(kept, widths, middles, strict=True):
                worst = max(worst, abs(targets[place] - under(at, width, targets[place])))
                targets[place] = at
            rows.append(list(targets))
        if count == 1 or worst < best[0]:
            best = worst, rows
        if best[0] <= _NEAR:
            break
    return Rows(best[1])


def under(middle: float, width: float, toward: float) -> float:
    """Where a leader leaves a label: under its words, as near to where it goes as can be."""
    half = max(width / 2 - 5, 0.0)
    return min(max(toward, middle - half), middle + half)
