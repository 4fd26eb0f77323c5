"""An outcome as HTML: strict, and whatever text is in it comes out escaped."""

from __future__ import annotations

from dataclasses import replace

import pytest

from calculators import run
from calculators.kit.chart import Axis, Chart, Mark, Series
from calculators.kit.form import calculator_html
from calculators.kit.result import Carry, Caution, Table
from calculators.kit.steps import Step

BAD = "<img src=x onerror=alert(1)>\"'&"


def test_every_text_of_an_outcome_is_escaped() -> None:
    outcome = run("powder-needed", {})
    answers = {
        key: replace(one, text=BAD, label=BAD, meaning=BAD, lines=(BAD, BAD))
        for key, one in dict(outcome.answers).items()
    }
    chart = Chart(
        BAD,
        BAD,
        Axis(BAD),
        Axis(BAD),
        (Series(BAD, (0, 1), (0, 1)), Series(BAD, (0, 1), (1, 0))),
        (Mark(BAD, 0.5),),
    )
    bad = replace(
        outcome,
        answers=answers,
        cautions=(Caution("stop", BAD), Caution("note", BAD)),
        notes=(BAD,),
        steps=(Step(BAD, BAD, BAD, BAD, BAD, BAD),),
        tables=(Table(BAD, (BAD, BAD), ((BAD, BAD),)),),
        drawings=(chart,),
        carries=(Carry("powder-needed", BAD, {"film": BAD}),),
    )
    assert "<img" not in bad.html
    assert bad.html.count("&lt;img") > 20


@pytest.mark.parametrize(
    "words", ["style=", "<style", "<script", "javascript:", " onclick", " onload", "http:", "https:"]
)
def test_a_form_is_strict(words: str) -> None:
    assert words not in calculator_html("powder-needed", "../../", "../../assets/engine/0/")


def test_an_answer_that_is_a_range_without_a_best_figure_says_how_to_act_on_it() -> None:
    outcome = run("powder-needed", {})
    powder = outcome.answers["powder"]
    assert (
        powder.meaning
        in replace(outcome, answers={**outcome.answers, "powder": replace(powder, value=None, low=1.0)}).html
    )
    assert (
        powder.meaning
        not in replace(outcome, answers={**outcome.answers, "powder": replace(powder, value=None)}).html
    )


def test_the_answers_of_two_forms_on_a_page_are_told_apart_by_name() -> None:
    forms = [
        calculator_html(slug, "../../", "../../assets/engine/0/") for slug in ("powder-needed", "coverage")
    ]
    assert 'aria-label="Answer: Powder needed"' in forms[0]
    assert 'aria-label="Answer: Coverage"' in forms[1]


def test_a_bare_fraction_has_no_percent_sign_beside_it() -> None:
    """A field of ratio and percent is read as a fraction: 0.5 with a sign printed after it would read as 0.5 %."""
    from calculators.kit.form import calculator_html

    form = calculator_html("comb-to-cured", "../", "engine/")
    field = form.split('data-field="reduction"')[1].split("</div>")[0]
    assert 'value="0.5"' in field
    assert "%" not in field.split("<input")[1]


def test_a_form_says_where_no_script_runs_that_its_fields_do_nothing() -> None:
    html = calculator_html("powder-needed", "", "engine/")
    (words,) = html.split("<noscript>")[1].split("</noscript>")[:1]
    assert "runs no scripts" in words
    assert html.index("<noscript>") < html.index("<fieldset")
