"""An outcome as HTML, the same at build time and in the browser. No style, no script, no handler: a strict policy holds."""

from __future__ import annotations

from collections.abc import Iterable
from html import escape
from typing import TYPE_CHECKING
from urllib.parse import urlencode

from calculators.kit import find
from calculators.kit.chart import Chart, Series
from calculators.kit.chart_svg import chart_svg
from calculators.kit.chart_table import chart_table
from calculators.kit.result import Answer, Carry, Caution, Table
from calculators.kit.sources import source

if TYPE_CHECKING:
    from calculators.kit.run import Outcome

_LONG_ANSWER = 26  # characters: more do not stand in one line beside the form
LEVEL_WORDS = {"stop": "Stop.", "caution": "Caution.", "note": "Note."}


def outcome_html(outcome: Outcome, drawn: bool = True) -> str:
    """The inside of the outcome region. drawn: with its charts, or else with their places."""
    calculator = find.load(outcome.slug)
    answers = dict(outcome.answers)
    main = answers[calculator.main.key]
    beside = [answers[out.key] for out in calculator.answers if out.beside]
    rest = [answers[out.key] for out in calculator.answers if not (out.beside or out.main)]
    return "".join(
        (
            _plate(main),
            *(_notes(outcome.notes)),
            _cautions(outcome.cautions),
            *(_carry(one) for one in outcome.carries),
            _answers(beside, "calc-beside"),
            *(figures_html(outcome) if drawn else [_TO_COME] * len(outcome.drawings)),
            _answers(rest, "calc-rest"),
            *(
                table_html(table, f"{outcome.slug}-table-{place}")
                for place, table in enumerate(outcome.tables, 1)
            ),
            _steps(outcome),
        )
    )


# of the same class as the chart that comes
_TO_COME = '<figure class="calc-chart" aria-busy="true"></figure>'


def figures_html(outcome: Outcome) -> Iterable[str]:
    """Each chart with its legend and the numbers behind it."""
    return (_figure(chart, f"{outcome.slug}-chart-{place}") for place, chart in enumerate(outcome.charts, 1))


def _plate(main: Answer) -> str:
    kind = "calc-main" if isinstance(main.value, float) else "calc-main calc-main-words"
    if len(main.text) > _LONG_ANSWER:
        kind += " calc-main-long"
    # how to act on an answer says nothing where there is none
    is_there = main.value is not None or main.low is not None
    meaning = f'<p class="calc-meaning">{escape(main.meaning)}</p>' if is_there else ""
    return (
        f'<div class="calc-plate"><p class="calc-state" data-said></p><p class="{kind}">'
        f'<span class="calc-label">{escape(main.label)}</span> {_answer(main, "strong")}</p>{meaning}</div>'
    )


def _answer(one: Answer, tag: str = "span") -> str:
    return f'<{tag} data-answer="{one.key}">{escape(one.text)}</{tag}>'


def _notes(notes: tuple[str, ...]) -> Iterable[str]:
    if notes:
        yield f'<p class="calc-read">{escape(" ".join(notes))}</p>'


def _cautions(cautions: tuple[Caution, ...]) -> str:
    if not cautions:
        return ""
    return f'<div class="calc-cautions">{"".join(map(caution_html, cautions))}</div>'


def caution_html(one: Caution) -> str:
    """One caution. A stop is announced at once; the others are read in their turn."""
    role = ' role="alert"' if one.level == "stop" else ""
    named = f' <cite class="calc-cite">{escape(source(one.source).title)}</cite>' if one.source else ""
    return (
        f'<p class="calc-caution calc-caution-{one.level}" data-caution="{one.level}"{role}>'
        f"<strong>{LEVEL_WORDS[one.level]}</strong> {escape(one.text)}{named}</p>"
    )


def _carry(one: Carry) -> str:
    link = f"~/{find.stage(one.slug)}/{one.slug}/?{urlencode(dict(one.texts))}"
    return f'<p class="calc-carry"><a class="md-button" href="{escape(link)}" data-carry="{one.slug}">{escape(one.words)}</a></p>'


def _answers(answers: list[Answer], name: str) -> str:
    if not answers:
        return ""
    rows = "".join(
        f'<div data-row="{one.key}"><dt>{escape(one.label)}</dt><dd>{_listed(one)}'
        f'<span class="calc-meaning">{escape(one.meaning)}</span></dd></div>'
        for one in answers
    )
    return f'<dl class="calc-answers {name}">{rows}</dl>'


def _listed(one: Answer) -> str:
    if len(one.lines) < 2:
        return _answer(one)
    # the separators stay in the text, so that what is read equals the answer's text word for word
    spans = "; ".join(f'<span class="calc-item">{escape(line)}</span>' for line in one.lines)
    return f'<span class="calc-list" data-answer="{one.key}">{spans}</span>'


def _figure(chart: Chart, name: str) -> str:
    lines = [
        f'<li><svg class="calc-key" viewBox="0 0 22 10" aria-hidden="true">'
        f"{_key(place, one)}</svg> {escape(one.name)}</li>"
        for place, one in enumerate(chart.series, 1)
        if one.name
    ]
    legend = f'<ul class="calc-legend">{"".join(lines)}</ul>' if len(lines) > 1 else ""
    numbers = chart_table(chart)
    return (
        f'<figure class="calc-chart"><p class="calc-chart-title">{escape(chart.title)}</p>{chart_svg(chart, name)}{legend}'
        f"<figcaption>{escape(chart.says)}</figcaption>"
        f'<details id="{name}-numbers"><summary>Numbers behind this chart</summary>'
        f"{table_html(numbers, name + '-table')}</details></figure>"
    )


def _key(place: int, one: Series) -> str:
    """What stands for one series in the legend, drawn as it is in the chart."""
    if one.upper:
        return f'<path class="calc-area calc-area-{place}" d="M1 2H21V8H1Z"/>'
    if one.dots:
        return f'<circle class="calc-dot calc-dot-{place}" cx="11" cy="5" r="3"/>'
    return f'<path class="calc-line calc-line-{place}" d="M1 5H21"/>'


def table_html(table: Table, name: str) -> str:
    """A table in its own scrolling box, so that the page never scrolls sideways."""
    head = "".join(f'<th scope="col">{escape(cell)}</th>' for cell in table.head)
    rows = "".join(
        f'<tr><th scope="row">{escape(row[0])}</th>{"".join(f"<td>{escape(cell)}</td>" for cell in row[1:])}</tr>'
        for row in table.rows
    )
    return (
        f'<div class="calc-scroll" role="region" tabindex="0" aria-label="{escape(table.title)}">'
        f'<table id="{name}" class="calc-table">'
        f"<caption>{escape(table.title)}</caption><thead><tr>{head}</tr></thead><tbody>{rows}</tbody></table></div>"
    )


def _steps(outcome: Outcome) -> str:
    if not outcome.steps:
        return ""
    items = "".join(
        f'<li>{escape(one.words)}<br><code class="calc-step">{escape(str(one).removeprefix(one.words + ": "))}</code></li>'
        for one in outcome.steps
    )
    return (
        f'<details id="{outcome.slug}-working" class="calc-working"><summary>Show the working</summary>'
        f"<ol>{items}</ol></details>"
    )
