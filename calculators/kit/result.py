"""What `solve` gives back, and what the door makes of it."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field
from typing import Literal

from calculators.kit.chart import Chart
from calculators.kit.steps import Step

type Level = Literal["note", "caution", "stop"]


@dataclass(frozen=True, slots=True)
class Caution:
    """A sentence that the reader must not miss. key: the field that it is about. source: a key of tables/sources.toml."""

    level: Level
    text: str
    key: str = ""
    source: str = ""


@dataclass(frozen=True, slots=True)
class Value:
    """An answer with a range of doubt, or in words where no number can be given (`never`).

    number, low, high: in the answer's fixed unit. words: shown in place of the number.
    """

    number: float | None = None
    low: float | None = None
    high: float | None = None
    words: str = ""


@dataclass(frozen=True, slots=True)
class Verdict:
    """A verdict that says more than its option's own words: its slug, and what is shown in place of them."""

    slug: str
    words: str


type Given = float | str | Sequence[str] | Value | Verdict | None


@dataclass(frozen=True, slots=True)
class Table:
    """A small table of text. The first column names the row."""

    title: str
    head: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]


@dataclass(frozen=True, slots=True)
class Carry:
    """A link that takes answers of this calculation into another calculator: its slug, texts by key, and the link's words."""

    slug: str
    words: str
    texts: Mapping[str, str]


# A chart, or what works it out where that takes time: the numbers need not wait for it.
type Drawing = Chart | Callable[[], Chart]


@dataclass(frozen=True, slots=True)
class Result:
    """Answers by key in their fixed units, and what stands round them. headline: replaces `<main label> <main answer>`."""

    answers: Mapping[str, Given]
    cautions: tuple[Caution, ...] = ()
    steps: tuple[Step, ...] = ()
    charts: tuple[Drawing, ...] = ()
    tables: tuple[Table, ...] = ()
    carries: tuple[Carry, ...] = ()
    headline: str = ""


class Clash(Exception):
    """Inputs that are each fine and together are not. Pairs of a field's key and the sentence shown beside it."""

    def __init__(self, *pairs: tuple[str, str]) -> None:
        super().__init__(pairs)
        self.pairs = pairs


@dataclass(frozen=True, slots=True)
class Answer:
    """One answer as it is shown: numbers in the shop unit, and the text with the other unit in brackets."""

    key: str
    label: str
    value: float | str | list[str] | None
    unit: str
    low: float | None
    high: float | None
    text: str
    main: bool
    meaning: str = ""
    lines: tuple[str, ...] = field(default=())
