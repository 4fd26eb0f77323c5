"""Charts as data: what is drawn, and the sentence that says what it shows. `chart_svg.py` draws them."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

type Tone = Literal["good", "near", "bad", "plain"]


@dataclass(frozen=True, slots=True)
class Axis:
    """label: with its unit. low, high: forced ends, or None to fit the data. names: for bars, one a row."""

    label: str
    low: float | None = None
    high: float | None = None
    names: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Series:
    """One line, its points, or a band between `ys` and `upper`."""

    name: str
    xs: tuple[float, ...]
    ys: tuple[float, ...]
    upper: tuple[float, ...] = ()
    dots: bool = False
    step: bool = False


@dataclass(frozen=True, slots=True)
class Mark:
    """A line across the chart at one value of x or y, or a point where both are given."""

    text: str
    x: float | None = None
    y: float | None = None


@dataclass(frozen=True, slots=True)
class Band:
    """A zone of x or y from low to high (None: to the edge)."""

    text: str
    low: float | None
    high: float | None
    tone: Tone = "plain"
    along: Literal["x", "y"] = "y"


@dataclass(frozen=True, slots=True)
class Bar:
    """A horizontal bar from low to high on the x axis, one a name of the y axis."""

    name: str
    low: float
    high: float
    tone: Tone = "plain"
    text: str = ""


@dataclass(frozen=True, slots=True)
class Chart:
    """title, and says: one sentence that tells what the picture shows. unit_digits: digits of the numbers in its table."""

    title: str
    says: str
    x: Axis
    y: Axis
    series: tuple[Series, ...] = ()
    marks: tuple[Mark, ...] = ()
    bands: tuple[Band, ...] = ()
    bars: tuple[Bar, ...] = ()
