"""One row of a table as native controls: what a page needs to offer rows to fill in, beside the text that is the field.

The markup waits in a `<template>`. Its controls have no names, because the text is the field; a script that knows no
calculator copies them for each line, writes what they hold into the text and follows it when it changes otherwise.
"""

from __future__ import annotations

from html import escape

from calculators.kit import messages
from calculators.kit.fields import Asked, Choice, Quantity, Rows, Whole, asked
from calculators.kit.form_controls import keypad, selected, unit_options, units_shown
from calculators.kit.table_text import SEPARATORS

_MOST_IN_A_LINE = 2


def row_template(field: Rows) -> str:
    """Empty where a table comes from an instrument: its lines are too many, or have no fixed columns."""
    if field.takes_file or field.repeats or field.clock:
        return ""
    columns = asked(field.row)
    first = columns[0]
    cells = "".join(_cell(column, field, column is first) for column in columns)
    line = "" if len(columns) > _MOST_IN_A_LINE else " calc-row-line"
    separators = escape("".join(SEPARATORS)).replace("\t", "&#9;")
    return (
        f'<template data-row data-separators="{separators}" data-at-most="{field.at_most}" data-line="{messages.LINE}">'
        f'<div class="calc-row{line}" role="group"><span class="calc-row-name" data-row-name></span>{cells}'
        '<button type="button" class="calc-row-remove" data-remove>Remove</button>'
        '<span class="calc-error" data-row-error hidden></span></div></template>'
    )


def _cell(column: Asked, rows: Rows, leads: bool) -> str:
    field = column.field
    when = ""
    if field.when:
        when = f' data-asked-by="{field.when.key}" data-asked-for="{" ".join(field.when.values)}"'
    # how to spell a choice is no matter where it is a list
    hint = (
        ""
        if isinstance(field, Choice) or not field.hint
        else f'<span class="calc-hint">{escape(field.hint)}</span>'
    )
    wide = " calc-cell-wide" if isinstance(field, Choice) and _long(field) else ""
    begins = escape("|".join(messages.beginnings(field.label)))
    return (
        f'<span class="calc-cell{wide}" data-column="{column.key}"{when} data-begins="{begins}">'
        f'<label>{escape(field.label)}</label>{hint}<span class="calc-entry">{_control(column, rows, leads)}</span></span>'
    )


def _control(column: Asked, rows: Rows, leads: bool) -> str:
    field = column.field
    match field:
        case Choice():
            # a new row says nothing until its first choice is made
            blank = '<option value="" disabled>Choose</option>' if leads else ""
            options = "".join(_option(field, place) for place in range(len(field.options)))
            return f'<select data-cell data-default="{field.default}">{blank}{options}</select>'
        case Quantity():
            unit = _unit(column, field, column.key == rows.unit_of)
            return f'<input type="text" data-cell{keypad(field)} autocomplete="off" size="6">{unit}'
        case Whole():
            return (
                f'<input type="text" data-cell inputmode="numeric" autocomplete="off" data-default="{escape(field.default)}" '
                'size="4">'
            )
        case _:
            return '<input type="text" data-cell autocomplete="off" size="12">'


def _option(field: Choice, place: int) -> str:
    option = field.options[place]
    also = dict.fromkeys((option.slug.replace("-", " "), *option.also))
    drawing = f' data-shows="{escape(option.drawing)}"' if option.drawing else ""
    return (
        f'<option value="{option.slug}" data-also="{escape("|".join(also))}"{drawing}'
        f"{selected(option.slug == field.default)}>{escape(option.label)}</option>"
    )


def _unit(column: Asked, field: Quantity, beside_table: bool) -> str:
    shown = units_shown(field.units)
    if not shown:
        return ""
    if len(shown) == 1 or beside_table:
        follows = " data-unit-beside" if beside_table and len(shown) > 1 else ""
        return f'<span class="calc-unit"{follows}>{escape(shown[0])}</span>'
    return f'<select class="calc-unit" data-unit aria-label="Unit of {escape(field.label)}">{unit_options(shown)}</select>'


def _long(field: Choice) -> bool:
    return max(len(option.label) for option in field.options) > 20
