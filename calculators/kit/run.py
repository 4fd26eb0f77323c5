"""The only door: text in, an Outcome out, for the page, the command line, the tests and the browser alike."""

from __future__ import annotations

import sys
import traceback
import zlib
from collections.abc import Mapping
from dataclasses import dataclass, replace
from functools import cached_property
from typing import Any
from urllib.parse import urlencode

from calculators.kit import find, messages
from calculators.kit.calculator import Calculator, Out
from calculators.kit.chart import Chart
from calculators.kit.fields import Quantity, Readings, Rows
from calculators.kit.handover import Gift, gifts
from calculators.kit.numbers import money, shop_number, whole
from calculators.kit.read import FieldError, Reading, limit_value, quoted_limit, read_form, unit_typed
from calculators.kit.result import (
    Answer,
    Carry,
    Caution,
    Clash,
    Drawing,
    Given,
    Result,
    Table,
    Value,
    Verdict,
)
from calculators.kit.sources import source
from calculators.kit.steps import Step
from calculators.kit.units import UNITS, convert

LONGEST_QUERY = 2_000


@dataclass(frozen=True)
class Outcome:
    """What a calculation came to. Where ok is false, only errors and query say anything.

    headline: the main answer as a sentence. answers: by key, in declared order. assumed: keys that took their default.
    query: the fields as a link holds them, without a question mark. typed: the fields that were asked, each text with its unit.
    """

    ok: bool
    slug: str
    version: int
    headline: str = ""
    answers: Mapping[str, Answer] = ()  # type: ignore[assignment]
    cautions: tuple[Caution, ...] = ()
    errors: tuple[FieldError, ...] = ()
    steps: tuple[Step, ...] = ()
    tables: tuple[Table, ...] = ()
    drawings: tuple[Drawing, ...] = ()
    carries: tuple[Carry, ...] = ()
    assumed: tuple[str, ...] = ()
    notes: tuple[str, ...] = ()
    query: str = ""
    long: tuple[str, ...] = ()
    typed: Mapping[str, str] = ()  # type: ignore[assignment]

    @cached_property
    def gifts(self) -> tuple[Gift, ...]:
        """What this calculation has to hand over to others; nothing where the values were refused."""
        return gifts(find.load(self.slug), self.answers, self.typed) if self.ok else ()

    @cached_property
    def charts(self) -> tuple[Chart, ...]:
        """The charts, worked out when they are first asked for."""
        return tuple(one if isinstance(one, Chart) else one() for one in self.drawings)

    @cached_property
    def html(self) -> str:
        """What stands in the page's outcome region; empty where the values were refused."""
        from calculators.kit.html import outcome_html

        return outcome_html(self) if self.ok else ""

    @cached_property
    def text(self) -> str:
        """The outcome as a terminal, a message or a clipboard shows it."""
        from calculators.kit.text import outcome_text

        return outcome_text(self)

    def to_json(self) -> dict[str, Any]:
        """The outcome as the command line's --json prints it."""
        return {
            "ok": self.ok,
            "slug": self.slug,
            "version": self.version,
            "headline": self.headline,
            "answers": {
                key: {
                    "label": one.label,
                    "value": one.value,
                    "unit": one.unit,
                    "low": one.low,
                    "high": one.high,
                    "text": one.text,
                    "main": one.main,
                }
                for key, one in dict(self.answers).items()
            },
            "cautions": [{"level": one.level, "text": one.text, "key": one.key} for one in self.cautions],
            "errors": [{"key": one.key, "message": one.message} for one in self.errors],
            "steps": [str(one) for one in self.steps],
            "assumed": list(self.assumed),
            "query": self.query,
        }


def run(slug: str, texts: Mapping[str, str]) -> Outcome:
    """Calculate. Keys that the calculator does not have are ignored; a key left out takes its default.

    Never raises for what was typed. Raises KeyError for a slug that is not there.
    """
    calculator = find.load(slug)
    empty = Outcome(False, slug, calculator.version, answers={}, typed={})
    try:
        texts = {key: _whole_signs(text) for key, text in texts.items()}
        typed = _typed(calculator, texts)
        query, long = _query(calculator, typed)
        empty = replace(empty, query=query, long=long, typed=typed)
        reading = read_form(calculator.inputs, texts)
        if reading.errors:
            return replace(empty, errors=tuple(reading.errors))
        inputs = calculator.inputs(**reading.values)
        try:
            result = calculator.solve(inputs)
        except Clash as clash:
            return replace(empty, errors=tuple(FieldError(key, sentence) for key, sentence in clash.pairs))
        return _outcome(calculator, reading, result, empty)
    except Exception as error:  # a defect of ours must not lose what was typed
        return replace(empty, errors=(FieldError("", messages.crashed(_report(error))),))


def _whole_signs(text: str) -> str:
    """The text with a replacement sign for each half of a sign, which no link, page or terminal can hold."""
    try:
        text.encode()
    except UnicodeEncodeError:
        return text.encode("utf-16", "surrogatepass").decode("utf-16", "replace")
    return text


def _report(error: Exception) -> str:
    """A short code for the place of a defect; the whole of it goes to the error stream."""
    frames = traceback.extract_tb(error.__traceback__)
    place = ";".join(f"{frame.name}:{frame.lineno}" for frame in frames) + type(error).__name__
    code = f"{zlib.crc32(place.encode()):08X}"
    print(f"code {code}", *traceback.format_exception(error), sep="\n", file=sys.stderr)
    return code


def _outcome(calculator: Calculator, reading: Reading, result: Result, empty: Outcome) -> Outcome:
    unknown = set(result.answers) - {out.key for out in calculator.answers}
    missing = {out.key for out in calculator.answers} - set(result.answers)
    if unknown or missing:
        raise ValueError(f"solve gave {sorted(unknown)} that are not declared, and not {sorted(missing)}")
    answers = {out.key: _answer(out, result.answers[out.key]) for out in calculator.answers}
    main = answers[calculator.main.key]
    cautions = (*result.cautions, *_beyond_sources(calculator, reading), *calculator.standing)
    ranked = tuple(sorted(cautions, key=lambda one: ("stop", "caution", "note").index(one.level)))
    return replace(
        empty,
        ok=True,
        headline=result.headline or f"{main.label} {main.text}",
        answers=answers,
        cautions=ranked,
        steps=result.steps,
        tables=result.tables,
        drawings=result.charts,
        carries=result.carries,
        assumed=tuple(reading.assumed),
        notes=tuple(reading.notes),
        typed={key: text for key, text in empty.typed.items() if key not in reading.hidden},
    )


def _beyond_sources(calculator: Calculator, reading: Reading) -> list[Caution]:
    found = []
    for one in calculator.fields:
        field = one.field
        value = reading.values.get(one.attribute)
        if (
            not isinstance(field, Quantity)
            or field.validity is None
            or value is None
            or one.key in reading.hidden
        ):
            continue
        validity = field.validity
        for end, limit in (("low", validity.low), ("high", validity.high)):
            edge = limit_value(limit, field.units, one.unit)
            if edge is None:
                continue
            slack = 1e-12 * abs(edge)  # of its size: an edge may lie below zero
            if value >= edge - slack if end == "low" else value <= edge + slack:
                continue
            quoted = quoted_limit(limit, field.units, field.units[0], end == "low") or ""
            words = messages.beyond_source(
                field.label, end, quoted, source(validity.source).title, validity.beyond
            )
            found.append(Caution("caution", words, one.key, validity.source))
    return found


def _answer(out: Out, given: Given) -> Answer:
    if isinstance(given, Verdict):
        if given.slug not in out.options:
            raise ValueError(f"{out.key}: {given.slug!r} is not one of its options {tuple(out.options)}")
        return Answer(out.key, out.label, given.slug, "", None, None, given.words, out.main, out.meaning)
    if isinstance(given, str):
        text = out.options[given] if out.options else given
        return Answer(out.key, out.label, given, "", None, None, text, out.main, out.meaning)
    if isinstance(given, int | float):
        given = Value(float(given))
    if given is None:
        given = Value(words="none")
    if isinstance(given, Value):
        return _number(out, given)
    lines = tuple(out.options.get(one, one) for one in given)
    text = "; ".join(lines) if lines else "none"
    return Answer(out.key, out.label, list(given), "", None, None, text, out.main, out.meaning, lines)


def _number(out: Out, given: Value) -> Answer:
    units = out.shown or ((out.unit,) if out.unit else ())
    first = units[0] if units else ""
    number, low, high = (
        None if one is None else convert(one, out.unit, first)
        for one in (given.number, given.low, given.high)
    )
    unit = UNITS[first].shown if first else ""
    texts = []
    for slug in units or ("",):
        shown = [
            None if one is None else convert(one, out.unit, slug)
            for one in (given.number, given.low, given.high)
        ]
        texts.append(_shown(out, shown, UNITS[slug].shown if slug else ""))
    text = given.words or (texts[0] if len(texts) == 1 else f"{texts[0]} ({texts[1]})")
    return Answer(out.key, out.label, number, unit, low, high, text, out.main, out.meaning)


def _shown(out: Out, numbers: list[float | None], unit: str) -> str:
    def said(one: float) -> str:
        if out.unit == "money":
            return money(one)
        return shop_number(one, out.digits) if out.digits else whole(one)

    number, low, high = (None if one is None else said(one) for one in numbers)
    unit = f" {unit}" if unit not in ("", "%") else unit
    span = "" if low is None or high is None else low if low == high else f"{low} to {high}"
    if number is None:
        return f"{span}{unit}" if span else "none"
    return f"{number}{unit}, {span}{unit}" if span and span != number else f"{number}{unit}"


def _typed(calculator: Calculator, texts: Mapping[str, str]) -> dict[str, str]:
    """Every field's text in declared order, with its unit."""
    typed = {}
    for one in calculator.fields:
        unit = texts.get(f"{one.key}-unit", "")
        typed[one.key] = unit_typed(one, texts.get(one.key, one.field.default), unit)
        if unit and isinstance(one.field, Rows | Readings):
            typed[f"{one.key}-unit"] = unit
    return typed


def _query(calculator: Calculator, typed: Mapping[str, str]) -> tuple[str, tuple[str, ...]]:
    pairs = [*typed.items(), ("v", str(calculator.version))]
    long: list[str] = []
    while True:
        longest, text = max(pairs, key=lambda pair: len(pair[1]))
        # a text of megabytes is not worth writing as a link to see that it is too long for one
        if len(text) <= LONGEST_QUERY and len(query := urlencode(pairs)) <= LONGEST_QUERY:
            return query, tuple(long)
        long.append(longest)
        pairs = [pair for pair in pairs if pair[0] not in (longest, f"{longest}-unit")]
