"""The declaration of a calculator: its question, what it asks, what it answers, and where its figures come from."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from typing import Any

from calculators.kit.fields import Asked, DeclarationError, asked
from calculators.kit.result import Caution, Result
from calculators.kit.units import UNITS


@dataclass(frozen=True, slots=True, kw_only=True)
class Out:
    """One declared answer.

    key, label: its name in JSON and on the page. meaning: one sentence on how to act on it. quantity: what it is, for
    hand-over between calculators (`oven-time`, `film`, `coated-area`); empty for none. unit: slug of the fixed unit in which
    `solve` gives it. shown: slugs of the units it is shown in, the shop's first. digits: significant digits; 0 for whole
    numbers. options: for a verdict or a list of slugs, the words of each slug; `value` is then the slug. beside: shown right
    under the main answer.
    """

    key: str
    label: str
    meaning: str
    main: bool = False
    quantity: str = ""
    unit: str = ""
    shown: tuple[str, ...] = ()
    digits: int = 3
    options: Mapping[str, str] = field(default_factory=dict)
    beside: bool = False


@dataclass(frozen=True, slots=True)
class Vary:
    """The built-in table that serves without the engine: the answers for a few texts of one field."""

    key: str
    texts: tuple[str, ...]
    answers: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Calculator:
    """A calculator. Declared once in its module as CALCULATOR, and found there.

    question: as someone in the shop would ask it. inputs: a frozen dataclass of declared fields. solve: from those to a
    Result, without text or unit names. sources: keys of tables/sources.toml. version: goes up when a default outcome
    changes. reviewed: the day on which it was last read against its sources. limits: what it must not be trusted for, a
    sentence each. default_cautions: level and field key of the cautions that the example truly deserves.
    """

    title: str
    question: str
    inputs: type[Any]
    solve: Callable[[Any], Result]
    answers: tuple[Out, ...]
    sources: tuple[str, ...]
    version: int
    reviewed: str
    keywords: tuple[str, ...]
    limits: tuple[str, ...]
    vary: Vary | None = None
    standing: tuple[Caution, ...] = ()
    default_cautions: tuple[tuple[str, str], ...] = ()

    def __post_init__(self) -> None:
        if sum(out.main for out in self.answers) != 1:
            raise DeclarationError(f"{self.title}: exactly one answer must be declared with main=True")
        keys = [one.key for one in self.fields]
        for out in self.answers:
            kinds = {UNITS[slug].kind for slug in (out.unit, *out.shown) if slug}
            if len(kinds) > 1:
                raise DeclarationError(
                    f"{self.title}: the answer {out.key} mixes units of different kinds: {sorted(kinds)}"
                )
        for one in self.fields:
            when = one.field.when
            if when and when.key not in keys:
                raise DeclarationError(
                    f"{self.title}: {one.key} is asked when {when.key!r} has a value, which is not a field"
                )
        if self.vary and self.vary.key not in keys:
            raise DeclarationError(
                f"{self.title}: the table varies {self.vary.key!r}, which is not a field; they are {keys}"
            )

    @property
    def fields(self) -> tuple[Asked, ...]:
        return asked(self.inputs)

    @property
    def main(self) -> Out:
        return next(out for out in self.answers if out.main)
