"""What every calculator declares: its example, its words, its sources, and the tests that it owes."""

from __future__ import annotations

import ast
import datetime
import re
from collections.abc import Iterator
from pathlib import Path

import pytest

from calculators import run
from calculators.kit.fields import Asked
from calculators.kit.find import load, stage
from calculators.kit.form import calculator_html
from calculators.kit.sources import source
from tests.contract.support import FIELDS, SLUGS, answers_in_html, name

TESTS = Path(__file__).resolve().parents[1]
UNWANTED = re.compile(r"\b(please|sorry|invalid|illegal|oops|simply|just|easily)\b", re.IGNORECASE)


@pytest.mark.parametrize("slug", SLUGS)
def test_the_example_is_answered_with_the_cautions_that_it_deserves(slug: str) -> None:
    outcome = run(slug, {})
    assert [one.message for one in outcome.errors] == []
    assert outcome.assumed
    shown = sorted((one.level, one.key) for one in outcome.cautions if one.level != "note")
    declared = sorted(pair for pair in load(slug).default_cautions if pair[0] != "note")
    assert shown == declared


@pytest.mark.parametrize("slug", SLUGS)
def test_every_answer_says_how_to_act_on_it(slug: str) -> None:
    for out in load(slug).answers:
        assert re.fullmatch(r"[A-Z0-9].{10,}[.]", out.meaning), f"{out.key}: {out.meaning!r} is no sentence"
        assert re.fullmatch(r"[a-z0-9]+(-[a-z0-9]+)*", out.key)


@pytest.mark.parametrize("slug", SLUGS)
def test_sources_are_in_the_table_and_the_review_has_a_day(slug: str) -> None:
    calculator = load(slug)
    assert calculator.sources
    for key in calculator.sources:
        assert source(key).title
    for one in calculator.fields:
        validity = getattr(one.field, "validity", None)
        assert validity is None or source(validity.source)
    assert datetime.date.fromisoformat(calculator.reviewed)
    assert calculator.limits
    assert calculator.question.endswith("?")


@pytest.mark.parametrize("slug", SLUGS)
def test_the_words_are_plain(slug: str) -> None:
    calculator = load(slug)
    words = [calculator.title, calculator.question, *calculator.limits]
    words += [part for out in calculator.answers for part in (out.label, out.meaning, *out.options.values())]
    words += [
        part for one in calculator.fields for part in (one.field.label, one.field.hint, one.field.group)
    ]
    words += [one.text for one in run(slug, {}).cautions]
    assert [part for part in words if UNWANTED.search(part)] == []


@pytest.mark.parametrize(("slug", "one"), FIELDS, ids=name)
def test_a_label_is_a_noun_and_a_hint_has_no_full_stop(slug: str, one: Asked) -> None:
    assert one.field.label
    assert one.field.label[0].isupper()
    assert not one.field.label.endswith((".", "?", ":"))
    assert not one.field.hint.endswith(".")


@pytest.mark.parametrize("slug", SLUGS)
def test_the_form_holds_every_field_once(slug: str) -> None:
    html = calculator_html(slug, "../../", "../../assets/engine/0/")
    assert re.findall(r'data-field="([^"]+)"', html) == [one.key for one in load(slug).fields]
    names = re.findall(r'(?<!-)\bid="([^"]+)"', html)
    assert len(names) == len(set(names)), "an id stands twice"
    for used in re.findall(r'aria-describedby="([^"]+)"', html):
        assert set(used.split()) <= set(names)
    assert "<script" not in html
    outcome = run(slug, {})
    assert set(answers_in_html(outcome.html)[0]) == set(outcome.answers)


def _marked(tree: ast.Module) -> Iterator[tuple[str, ast.FunctionDef]]:
    for node in ast.walk(tree):
        if isinstance(node, ast.FunctionDef) and node.name.startswith("test_"):
            for one in node.decorator_list:
                if found := re.match(r"pytest\.mark\.(\w+)", ast.unparse(one)):
                    yield found[1], node


@pytest.mark.parametrize("slug", SLUGS)
def test_it_is_checked_against_something_outside_the_project(slug: str) -> None:
    stem = slug.replace("-", "_")
    files = sorted((TESTS / stage(slug)).glob(f"test_{stem}*.py"))
    assert files, f"there is no tests/{stage(slug)}/test_{stem}.py"
    found = [pair for file in files for pair in _marked(ast.parse(file.read_text(encoding="utf-8")))]
    for mark in ("published", "property"):
        assert [node for kind, node in found if kind == mark], f"{slug} has no test marked {mark}"
    for kind, node in found:
        if kind in ("published", "derived"):
            assert ast.get_docstring(node), f"{node.name} is marked {kind} and names no source"
