"""The questions at the end of the first shift: native radios, each followed by its answer, which serves without scripts."""

from __future__ import annotations

from collections.abc import Mapping
from html import escape
from typing import Any

from safety_rules import filled

from calculators.tables import table

LINES = ("Name", "Date", "Shown round by", "Trainer's signature")


def self_check_html() -> str:
    """The form. Answers stand closed under each question; the page's module opens and counts them."""
    questions = table("first_shift")
    fields = "".join(
        _question(number, key, row) for number, (key, row) in enumerate(questions.items(), start=1)
    )
    lines = "".join(f"<li>{words}</li>" for words in LINES)
    return (
        f'<form class="self-check" id="self-check" method="dialog" data-questions="{len(questions)}">{fields}'
        '<p class="self-check-score" role="status"></p>'
        '<p class="self-check-tools"><button type="button" data-again hidden>Answer again from the start</button> '
        '<button type="button" data-print hidden>Print for the trainer</button></p>'
        f'<ul class="self-check-lines">{lines}</ul></form>'
    )


def _question(number: int, key: str, row: Mapping[str, Any]) -> str:
    options = "".join(
        f'<label><input type="radio" name="{key}" value="{place}"> <span>{escape(filled(text))}</span></label>'
        for place, text in enumerate(row["options"], start=1)
    )
    right = escape(filled(row["options"][row["right"] - 1]))
    return (
        f'<fieldset data-question="{key}" data-right="{row["right"]}"><legend>{number}. {escape(row["question"])}</legend>'
        f'{options}<p class="self-check-verdict" role="status"></p>'
        f"<details><summary>Answer to question {number}</summary>"
        f'<p><strong>{right}</strong> {escape(filled(row["why"]))} <a href="~/{row["page"]}/">Why</a></p></details></fieldset>'
    )
