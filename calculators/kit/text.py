"""An outcome as a terminal, a message or a clipboard shows it."""

from __future__ import annotations

import json
import textwrap
from typing import TYPE_CHECKING, Any

from calculators.kit import find
from calculators.kit.html import LEVEL_WORDS

if TYPE_CHECKING:
    from calculators.kit.run import Outcome

WIDTH = 100


def outcome_text(outcome: Outcome, steps: bool = False) -> str:
    """Headline, answers, cautions; with the steps of the working if asked for."""
    if not outcome.ok:
        return "\n".join(one.message for one in outcome.errors)
    calculator = find.load(outcome.slug)
    lines = [f"{calculator.title}: {outcome.headline}", ""]
    wide = max(len(one.label) for one in dict(outcome.answers).values())
    for one in dict(outcome.answers).values():
        lines += wrapped(f"{one.label:<{wide}}  {one.text}", wide + 2)
    for caution in outcome.cautions:
        lines += ["", *wrapped(f"{LEVEL_WORDS[caution.level]} {caution.text}", 2)]
    for note in outcome.notes:
        lines += ["", *wrapped(note, 2)]
    if outcome.assumed:
        lines += ["", *wrapped(f"From the example: {', '.join(outcome.assumed)}", 2)]
    if steps:
        lines += ["", "Working", *(f"  {line}" for step in outcome.steps for line in wrapped(str(step), 2))]
        for table in outcome.tables:
            lines += ["", table.title, *table_lines(table.head, table.rows)]
    return "\n".join(lines)


def json_text(value: Any) -> str:
    """JSON for another program, in which a sign that a terminal would obey is written by its number."""
    shown = json.dumps(value, indent=2, ensure_ascii=False)
    return "".join(
        sign if sign.isprintable() or sign == "\n" else json.dumps(sign).strip('"') for sign in shown
    )


def wrapped(text: str, indent: int) -> list[str]:
    return textwrap.wrap(
        text, WIDTH, subsequent_indent=" " * indent, break_long_words=False, break_on_hyphens=False
    )


def table_lines(head: tuple[str, ...], rows: tuple[tuple[str, ...], ...]) -> list[str]:
    """A table in columns of text."""
    widths = [max(len(row[place]) for row in (head, *rows)) for place in range(len(head))]
    return [
        "  " + "  ".join(f"{cell:<{wide}}" for cell, wide in zip(row, widths, strict=True)).rstrip()
        for row in (head, *rows)
    ]
