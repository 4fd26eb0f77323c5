"""What the command line says of itself: the list, one calculator's fields, and the catalogue for other programs."""

from __future__ import annotations

import textwrap
from typing import Any

from calculators.kit import find
from calculators.kit.fields import Asked, Choice, Quantity, Readings, Rows, Text, Whole, asked
from calculators.kit.units import UNITS


def listing() -> str:
    """Every calculator, by stage, one line each."""
    lines: list[str] = []
    wide = max(map(len, find.slugs()), default=0)
    for stage in find.STAGES:
        slugs = [slug for slug in find.slugs() if find.stage(slug) == stage]
        if slugs:
            lines += ["", stage.capitalize()]
            lines += [f"  {slug:<{wide}}  {find.load(slug).question}" for slug in slugs]
    return "\n".join([*lines[1:], "", "python -m calculators NAME --help says what each asks."])


def kind_of(one: Asked) -> str:
    """What a field takes, in words."""
    field = one.field
    match field:
        case Quantity() | Readings():
            shown = (
                " or ".join(dict.fromkeys(UNITS[slug].shown for slug in field.units if UNITS[slug].shown))
                or "a number"
            )
            return f"a list in {shown}" if isinstance(field, Readings) else shown
        case Whole():
            return "a whole number"
        case Choice():
            return "one of " + ", ".join(field.slugs)
        case Text():
            return "words"
        case Rows():
            return "rows of " + ", ".join(column.key for column in asked(field.row))


def limits_of(one: Asked) -> str:
    """A field's hard ends, in words."""
    field = one.field
    match field:
        case Quantity() | Readings():
            low, high = field.limits.low, field.limits.high
            return (
                " to ".join(end for end in (low, high) if end)
                if low and high
                else f"{low} or more"
                if low
                else f"{high} or less"
            )
        case Whole():
            return f"{field.low:,} to {field.high:,}"
        case Text():
            return f"up to {field.longest} characters"
        case _:
            return ""


def help_of(slug: str) -> str:
    """The fields of one calculator with units, limits and defaults, and its answers."""
    calculator = find.load(slug)
    lines = [
        f"{calculator.title}: {calculator.question}",
        "",
        f"python -m calculators {slug} [--KEY VALUE ...]",
        "",
    ]
    for one in calculator.fields:
        if one.field.group:
            lines += [one.field.group]
        default = one.field.default.replace("\n", " | ")
        default = default if len(default) < 60 else default[:57] + "..."
        asked_when = (
            f"; asked when {one.field.when.key} is {' or '.join(one.field.when.values)}"
            if one.field.when
            else ""
        )
        limits = limits_of(one)
        takes = ", ".join(filter(None, (kind_of(one), limits)))
        words = (
            f"{one.field.label}: {takes}; {f'example {default}' if default else 'may be empty'}{asked_when}"
        )
        lines += textwrap.wrap(
            f"  --{one.key:<20} {words}", 100, subsequent_indent=" " * 25, break_on_hyphens=False
        )
    lines += ["", "Answers"]
    for out in calculator.answers:
        unit = " or ".join(UNITS[one].shown for one in (out.shown or ((out.unit,) if out.unit else ())))
        lines += textwrap.wrap(
            f"  {out.key:<22} {out.label}{f', {unit}' if unit else ''}", 100, subsequent_indent=" " * 25
        )
    return "\n".join(lines)


def catalogue() -> dict[str, Any]:
    """Slugs, fields, units, limits and answers of every calculator."""
    return {slug: _entry(slug) for slug in find.slugs()}


def _entry(slug: str) -> dict[str, Any]:
    calculator = find.load(slug)
    return {
        "title": calculator.title,
        "question": calculator.question,
        "stage": find.stage(slug),
        "version": calculator.version,
        "fields": {one.key: _field(one) for one in calculator.fields},
        "answers": {
            out.key: {
                "label": out.label,
                "unit": UNITS[(out.shown or (out.unit,))[0]].shown if out.unit else "",
                "quantity": out.quantity,
                "main": out.main,
                "options": dict(out.options),
                "meaning": out.meaning,
            }
            for out in calculator.answers
        },
    }


def _field(one: Asked) -> dict[str, Any]:
    field = one.field
    entry: dict[str, Any] = {
        "label": field.label,
        "kind": type(field).__name__.lower(),
        "default": field.default,
        "meaning": field.meaning,
    }
    match field:
        case Quantity() | Readings():
            entry |= {
                "units": [UNITS[slug].shown for slug in field.units],
                "low": field.limits.low,
                "high": field.limits.high,
                "may_be_empty": field.may_be_empty,
            }
        case Whole():
            entry |= {"low": field.low, "high": field.high}
        case Choice():
            entry |= {"options": {option.slug: option.label for option in field.options}}
        case Text():
            entry |= {"longest": field.longest, "may_be_empty": field.may_be_empty}
        case Rows():
            entry |= {
                "columns": {column.key: _field(column) for column in asked(field.row)},
                "may_be_empty": field.may_be_empty,
            }
    if field.when:
        entry["when"] = {field.when.key: list(field.when.values)}
    return entry
