"""A calculator's form as HTML, with its built-in answer: what a page holds before any script runs."""

from __future__ import annotations

from html import escape

from calculators.kit import find
from calculators.kit.calculator import Calculator
from calculators.kit.fields import Asked, Choice, Field, Quantity, Readings, Rows, Text, Whole, asked
from calculators.kit.form_controls import keypad, selected, unit_options, units_shown
from calculators.kit.form_rows import row_template
from calculators.kit.run import run
from calculators.kit.units import UNITS

_USUAL_DIGITS = 5
_IN_HALF_A_PHONE = 9  # characters, of the number and the longest unit together, on a screen 360 px wide


def calculator_html(slug: str, base: str, engine: str) -> str:
    """The element for a page. base: the way from the page to the site's root. engine: the engine's folder, from the page."""
    calculator = find.load(slug)
    outcome = run(slug, {})
    if not outcome.ok:
        raise ValueError(f"{slug}: the example is refused: {[one.message for one in outcome.errors]}")
    return (
        f'<calc-form slug="{slug}" data-version="{calculator.version}" data-base="{escape(base)}" data-engine="{escape(engine)}"'
        f' data-address="~/{find.stage(slug)}/{slug}/" data-search-exclude>'
        f"{_form(slug, calculator)}"
        f'<section data-outcome data-state="example" aria-label="Answer: {escape(calculator.title)}">'
        f"{outcome.html}</section></calc-form>"
    )


def _form(slug: str, calculator: Calculator) -> str:
    groups: list[tuple[str, list[str]]] = []
    shown = _shown_by_default(calculator)
    for one in calculator.fields:
        if one.field.group or not groups:
            groups.append((one.field.group, []))
        groups[-1][1].append(_field(slug, one, one.key in shown))
    body = "".join(
        f'<fieldset class="calc-group"><legend>{escape(words or "What to enter")}</legend>{"".join(fields)}</fieldset>'
        for words, fields in groups
    )
    return (
        f'<form class="calc-fields" novalidate autocomplete="off" aria-label="{escape(calculator.title)}">'
        f'<div class="calc-summary" data-summary role="group" aria-label="What to put right" tabindex="-1" hidden></div>'
        '<noscript><p class="calc-status">This browser runs no scripts here, so the fields do nothing. The answer shown is for '
        f"the example values.</p></noscript>{body}"
        '<p class="calc-actions"><button type="submit" class="md-button md-button--primary">Calculate</button>'
        '<button type="button" class="md-button" data-act="reset">Back to the example</button>'
        '<button type="button" class="md-button" data-act="copy-link">Copy link</button>'
        '<button type="button" class="md-button" data-act="copy-answer">Copy answer</button>'
        '<button type="button" class="md-button" data-act="add-to-job">Add to job sheet</button></p>'
        '<p class="calc-privacy">What you type stays on this device. A copied link holds the values: opening it sends them to '
        "this site's own host and to nobody else.</p>"
        '<p class="calc-status" role="status" data-status></p></form>'
    )


def _shown_by_default(calculator: Calculator) -> set[str]:
    from calculators.kit.read import read_form

    return {one.key for one in calculator.fields} - read_form(calculator.inputs, {}).hidden


def _field(slug: str, one: Asked, shown: bool) -> str:
    field, name = one.field, f"{slug}-{one.key}"
    described = f"{name}-hint {name}-error" if field.hint else f"{name}-error"
    when = ""
    if field.when:
        when = f' data-when-key="{field.when.key}" data-when-values="{" ".join(field.when.values)}"'
    wide = " calc-wide" if isinstance(field, Rows | Readings) or _long_choice(field) else ""
    if isinstance(field, Quantity) and _long_with_unit(field):
        wide = " calc-long"
    hint = f'<span class="calc-hint" id="{name}-hint">{escape(field.hint)}</span>' if field.hint else ""
    error = f'<span class="calc-error" id="{name}-error" data-error="{one.key}" hidden></span>'
    means = f' data-meaning="{field.meaning}"' if field.meaning else ""
    holder = f'class="calc-field{wide}" data-field="{one.key}"{means}{when}{"" if shown else " hidden"}'
    if isinstance(field, Choice) and field.few:
        return _radios(one.key, name, field, holder, hint, error, described)
    label = f'<label for="{name}">{escape(field.label)}</label>'
    return f"<div {holder}>{label}{hint}{error}{_control(one, name, described)}</div>"


def _radios(key: str, name: str, field: Choice, holder: str, hint: str, error: str, described: str) -> str:
    options = "".join(
        f'<label class="calc-radio" for="{name}-{option.slug}"><input type="radio" id="{name}-{option.slug}" name="{key}" '
        f'value="{option.slug}"{" checked data-default" if option.slug == field.default else ""}> {escape(option.label)}</label>'
        for option in field.options
    )
    return (
        f'<div {holder} role="radiogroup" aria-labelledby="{name}-label" aria-describedby="{described}">'
        f'<span class="calc-radio-title" id="{name}-label">{escape(field.label)}</span>{hint}{error}'
        f'<span class="calc-radios">{options}</span></div>'
    )


def _control(one: Asked, name: str, described: str) -> str:
    field = one.field
    common = f'id="{name}" name="{one.key}" aria-describedby="{described}"'
    match field:
        case Choice():
            options = "".join(
                f'<option value="{option.slug}"{selected(option.slug == field.default)}>{escape(option.label)}</option>'
                for option in field.options
            )
            return f'<span class="calc-entry"><select {common} data-default="{field.default}">{options}</select></span>'
        case Quantity():
            text = escape(field.default)
            return (
                f'<span class="calc-entry"><input type="text" {common}{keypad(field)} value="{text}" placeholder=" " '
                f'data-default="{text}" size="8">'
                f"{_unit(one.key, field.label, field.units)}</span>"
            )
        case Whole():
            text = escape(field.default)
            return (
                f'<span class="calc-entry"><input type="text" {common} inputmode="numeric" value="{text}" '
                f'data-default="{text}" size="6"></span>'
            )
        case Text():
            text = escape(field.default)
            return (
                f'<span class="calc-entry"><input type="text" {common} value="{text}" '
                f'data-default="{text}" size="20"></span>'
            )
        case Readings() | Rows():
            takes = ' data-takes-file="csv"' if field.takes_file else ""
            measured: Field | None = field
            if isinstance(field, Rows):
                measured = next((c.field for c in asked(field.row) if c.key == field.unit_of), None)
            unit = ""
            if isinstance(measured, Quantity | Readings):
                unit = _unit(one.key, measured.label, measured.units)
            rows = min(max(field.default.count("\n") + 2, 4), 12)
            text = escape(field.default)
            return (
                f'<span class="calc-entry calc-entry-table"><textarea {common} rows="{rows}" placeholder=" " spellcheck="false" '
                f'autocapitalize="off"{takes} data-default="{text}">\n{text}</textarea>'
                f"{unit}</span>"
                f"{row_template(field) if isinstance(field, Rows) else ''}"
            )


def _unit(key: str, label: str, units: tuple[str, ...]) -> str:
    shown = units_shown(units)
    # a bare fraction has no unit to print: a percent sign beside it would make 0.5 a half of one in a hundred
    if not shown or not UNITS[units[0]].shown:
        return ""
    if len(shown) == 1:
        return f'<span class="calc-unit">{escape(shown[0])}</span>'
    return (
        f'<select class="calc-unit" name="{key}-unit" aria-label="Unit of {escape(label)}" '
        f'data-default="{escape(shown[0])}">{unit_options(shown)}</select>'
    )


def _long_choice(field: Field) -> bool:
    return isinstance(field, Choice) and max(len(option.label) for option in field.options) > 20


def _long_with_unit(field: Quantity) -> bool:
    """Whether a number of a usual length and its unit need more than half of a phone's width."""
    longest = max(map(len, units_shown(field.units)), default=0)
    return max(len(field.default), _USUAL_DIGITS) + longest > _IN_HALF_A_PHONE
