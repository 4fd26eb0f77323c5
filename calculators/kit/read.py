"""From the text of a form, a link, a command line or a file to the values that `solve` gets, or to sentences that say why not."""

from __future__ import annotations

import unicodedata
from collections.abc import Mapping
from dataclasses import dataclass, field
from difflib import get_close_matches
from functools import lru_cache
from typing import Any

from calculators.kit import messages
from calculators.kit.fields import Asked, Choice, Limits, Quantity, Readings, Rows, Text, Whole, asked
from calculators.kit.grammar import (
    LONGEST,
    NotANumber,
    NotAUnit,
    SmallDigit,
    UnclearComma,
    printable,
    read_measure,
    tidy,
    unit_named,
)
from calculators.kit.numbers import rounded_inward, shop_number
from calculators.kit.readings_text import readings_of
from calculators.kit.table_text import Unreadable, table_of
from calculators.kit.units import UNITS


@dataclass(frozen=True, slots=True)
class FieldError:
    """Why an input was refused: the field's key (empty for the whole form) and the sentence."""

    key: str
    message: str


@dataclass(slots=True)
class Reading:
    """What was read: values by attribute, errors, which fields took their default, and notes on how a file was taken."""

    values: dict[str, Any] = field(default_factory=dict)
    errors: list[FieldError] = field(default_factory=list)
    assumed: list[str] = field(default_factory=list)
    hidden: set[str] = field(default_factory=set)
    notes: list[str] = field(default_factory=list)


class Refused(Exception):
    """One field's text was refused; the message is the sentence."""


def read_form(inputs: type[Any], texts: Mapping[str, str]) -> Reading:
    """Read every field of a form that is asked. A field that is not asked, or not given, takes its default."""
    done = Reading()
    by_key = {one.key: one for one in asked(inputs)}
    for one in by_key.values():
        if not _is_asked(one, by_key, texts):
            done.hidden.add(one.key)
            done.values[one.attribute] = _default_value(one)
            continue
        text = texts.get(one.key)
        if text is None:
            done.assumed.append(one.key)
            done.values[one.attribute] = _default_value(one, texts.get(f"{one.key}-unit"), done)
            continue
        try:
            done.values[one.attribute] = read_field(one, text, texts.get(f"{one.key}-unit", ""), done.notes)
        except Refused as refused:
            done.errors.append(FieldError(one.key, str(refused)))
    return done


def _is_asked(one: Asked, by_key: Mapping[str, Asked], texts: Mapping[str, str]) -> bool:
    when = one.field.when
    if when is None:
        return True
    other = by_key[when.key]
    if not _is_asked(other, by_key, texts):
        return False
    default = other.field.default
    given = tidy(texts.get(when.key, default)[:LONGEST]).casefold()
    if isinstance(other.field, Choice):
        given = _option(other.field, given) or given
    return given in when.values


def _default_value(one: Asked, unit: str | None = None, done: Reading | None = None) -> Any:
    try:
        return read_field(one, one.field.default, unit or "", [])
    except Refused as refused:
        if done is not None:
            done.errors.append(FieldError(one.key, str(refused)))
        return None


def read_field(one: Asked, text: str, unit_text: str, notes: list[str]) -> Any:
    """One field's value in its fixed unit. Raises Refused with the sentence.

    text: as typed. unit_text: the unit chosen beside the field; empty for the shop's. notes: gains what a reader should
    know of how a table was read.
    """
    field_ = one.field
    match field_:
        case Quantity():
            return _quantity(field_, one.unit, text, _bare(field_.label, field_.units, unit_text))
        case Whole():
            return _whole(field_, text)
        case Choice():
            return _choice(field_, text)
        case Text():
            return _text(field_, text)
        case Readings():
            return _readings(field_, one.unit, text, _bare(field_.label, field_.units, unit_text), notes)
        case Rows():
            return _rows(field_, text, unit_text, notes)


def _bare(label: str, units: tuple[str, ...], unit_text: str) -> str:
    if not unit_text.strip():
        return units[0]
    unit = unit_named(unit_text, units)
    if unit is None:
        raise Refused(messages.wrong_unit(label, _shown(units)))
    return unit


def _shown(units: tuple[str, ...]) -> list[str]:
    return list(dict.fromkeys(UNITS[slug].shown for slug in units if UNITS[slug].shown))


def _quantity(field_: Quantity, target: str, text: str, bare: str) -> float | None:
    if not tidy(text[: LONGEST + 1]):
        if field_.may_be_empty:
            return None
        raise Refused(messages.empty(field_.label))
    for word, stands_for in field_.words:
        if tidy(text[: LONGEST + 1]).casefold() == word.casefold():
            return stands_for
    value, typed_in = _measured(field_, text, bare, target)
    _hold(field_.label, field_.limits, field_.units, value, target, typed_in)
    return value


def _measured(field_: Quantity | Readings, text: str, bare: str, target: str) -> tuple[float, str]:
    try:
        return read_measure(text, field_.units, bare, target)
    except SmallDigit:
        raise Refused(messages.small_digit(field_.label, _example(field_))) from None
    except NotANumber:
        raise Refused(messages.not_a_number(field_.label, _example(field_))) from None
    except UnclearComma:
        raise Refused(messages.unclear_comma(field_.label, _example(field_))) from None
    except NotAUnit:
        raise Refused(messages.wrong_unit(field_.label, _shown(field_.units))) from None


def _example(field_: Quantity | Readings) -> str:
    text = getattr(field_, "example", "") or field_.default or field_.limits.low or "1"
    text = text.split()[0] if isinstance(field_, Readings) and field_.default else text
    return (
        text
        if any(sign.isalpha() or sign in "%\"'" for sign in text)
        else f"{text} {UNITS[field_.units[0]].shown}".strip()
    )


def _hold(
    label: str, limits: Limits, units: tuple[str, ...], value: float, target: str, typed_in: str
) -> None:
    low, high = (limit_value(end, units, target) for end in (limits.low, limits.high))
    # a limit typed back in another unit may differ in its last bit
    slack = 1e-9 * max(abs(value), 1e-3)
    if (low is None or value >= low - slack) and (high is None or value <= high + slack):
        return
    quoted = (
        quoted_limit(end, units, typed_in, is_low)
        for end, is_low in ((limits.low, True), (limits.high, False))
    )
    raise Refused(messages.outside(label, *quoted))


@lru_cache(maxsize=1024)
def limit_value(end: str | None, units: tuple[str, ...], target: str) -> float | None:
    """A declared limit (text with its unit) as a number in the target unit."""
    return None if end is None else read_measure(end, units, units[0], target)[0]


def quoted_limit(end: str | None, units: tuple[str, ...], unit: str, is_low: bool) -> str | None:
    """A limit as a sentence quotes it, in the unit that was typed, rounded so that it is accepted when typed back."""
    if end is None:
        return None
    _, declared = read_measure(end, units, units[0], units[0])
    if declared == unit:
        number, _ = read_measure(end, units, units[0], unit)
        return f"{shop_number(number, 6)} {UNITS[unit].shown}".strip()
    number, _ = read_measure(end, units, units[0], unit)
    return f"{rounded_inward(number, is_low)} {UNITS[unit].shown}".strip()


def _whole(field_: Whole, text: str) -> int:
    words = tidy(text[: LONGEST + 1])
    if not words:
        raise Refused(messages.empty(field_.label))
    try:
        number, _ = read_measure(words, ("ratio",), "ratio", "ratio")
    except SmallDigit:
        raise Refused(messages.small_digit(field_.label, field_.default)) from None
    except (NotANumber, NotAUnit, UnclearComma):
        raise Refused(messages.not_whole(field_.label, field_.default)) from None
    if number != int(number):
        raise Refused(messages.not_whole(field_.label, field_.default))
    if not field_.low <= number <= field_.high:
        raise Refused(messages.outside(field_.label, f"{field_.low:,}", f"{field_.high:,}"))
    return int(number)


def _option(field_: Choice, words: str) -> str | None:
    words = unicodedata.normalize("NFKC", words).casefold()  # a name, where a small digit is a digit
    hyphened = words.replace(" ", "-").replace("_", "-")
    for option in field_.options:
        known = (option.slug, option.label.casefold(), *(other.casefold() for other in option.also))
        if words in known or hyphened in known:
            return option.slug
    return None


def _nearest(field_: Choice, words: str) -> list[str]:
    """The options most like these words, the likest first."""
    known = {
        spelling: option.slug
        for option in field_.options
        for spelling in (
            *(other.casefold() for other in option.also),
            option.label.casefold(),
            option.slug,
        )
    }
    near = get_close_matches(words.casefold().replace(" ", "-"), known, n=6, cutoff=0.5)
    return list(dict.fromkeys(known[spelling] for spelling in near))[:3]


def _choice(field_: Choice, text: str) -> str:
    words = tidy(text[: LONGEST + 1])
    if not words:
        raise Refused(messages.no_choice(field_.label))
    slug = _option(field_, words)
    if slug is None:
        raise Refused(messages.unknown_choice(field_.label, list(field_.slugs), _nearest(field_, words)))
    return slug


def _text(field_: Text, text: str) -> str:
    words = printable(tidy(text[:LONGEST])).strip()
    if not words and not field_.may_be_empty:
        raise Refused(messages.empty(field_.label))
    if len(words) > field_.longest:
        raise Refused(messages.too_long(field_.label, field_.longest))
    return words


def _readings(field_: Readings, target: str, text: str, bare: str, notes: list[str]) -> tuple[float, ...]:
    words, taken = readings_of(text, field_.units, field_.label)
    notes.extend(taken)
    if not words:
        if field_.may_be_empty:
            return ()
        raise Refused(messages.empty(field_.label))
    if len(words) > field_.at_most:
        raise Refused(messages.too_many(field_.label, field_.at_most))
    if len(words) < field_.at_least:
        raise Refused(messages.too_few(field_.label, field_.at_least))
    # a unit after the last number holds for all that have none
    try:
        _, last = read_measure(words[-1], field_.units, bare, target)
    except (NotANumber, NotAUnit, UnclearComma):
        last = bare
    values = []
    for place, word in enumerate(words, 1):
        try:
            value, typed_in = _measured(field_, word, last, target)
            _hold(field_.label, field_.limits, field_.units, value, target, typed_in)
        except Refused as refused:
            raise Refused(
                f"Reading {place}: {messages.lower_first(str(refused))}" if len(words) > 1 else str(refused)
            ) from None
        values.append(value)
    return tuple(values)


def _rows(field_: Rows, text: str, unit_text: str, notes: list[str]) -> tuple[Any, ...]:
    columns = asked(field_.row)
    bare = {}
    for column in columns:
        if column.key == field_.unit_of and isinstance(column.field, Quantity):
            bare[column.key] = _bare(column.field.label, column.field.units, unit_text)
    if not text.strip("\ufeff \t\r\n"):
        if field_.may_be_empty:
            return ()
        raise Refused(messages.empty(field_.label))
    try:
        table = table_of(text, field_, columns)
    except Unreadable as unreadable:
        raise Refused(str(unreadable)) from None
    notes.extend(table.notes)
    if len(table.lines) > field_.at_most:
        raise Refused(messages.too_many(field_.label, field_.at_most))
    if len(table.lines) < field_.at_least:
        raise Refused(messages.too_few(field_.label, field_.at_least))
    bare.update(table.units)
    return tuple(_row(field_, columns, cells, line, bare) for line, cells in table.lines)


def _row(
    field_: Rows, columns: tuple[Asked, ...], cells: list[str], line: int, bare: Mapping[str, str]
) -> Any:
    values: dict[str, Any] = {}
    try:
        for place, column in enumerate(columns):
            unit = UNITS[bare[column.key]].shown if column.key in bare else ""
            if column.key == field_.repeats:
                parts = cells[place:] or [""]
                values[column.attribute] = tuple(read_field(column, cell, unit, []) for cell in parts)
            else:
                cell = cells[place] if place < len(cells) else ""
                if not cell.strip() and isinstance(column.field, Choice | Whole):
                    cell = column.field.default
                values[column.attribute] = read_field(column, cell, unit, [])
    except Refused as refused:
        raise Refused(messages.in_line(line, str(refused))) from None
    if not field_.repeats and len(cells) > len(columns):
        raise Refused(
            messages.in_line(line, f"there are {len(cells)} columns where {len(columns)} are asked")
        )
    return field_.row(**values)


def unit_typed(one: Asked, text: str, unit_text: str) -> str:
    """The text with a unit, as a link or a message repeats it."""
    if isinstance(one.field, Quantity) and text.strip() and len(text) <= LONGEST:
        bare = unit_named(unit_text, one.field.units) if unit_text.strip() else one.field.units[0]
        shown = UNITS[bare or one.field.units[0]].shown
        words = tidy(text)
        try:
            read_measure(words, (), "ratio", "ratio")
        except (NotANumber, NotAUnit, UnclearComma):
            return words
        return f"{words} {shown}".strip()
    return text
