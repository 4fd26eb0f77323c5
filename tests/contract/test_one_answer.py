"""The same answer by every way in and out: page, terminal, JSON, link, US and metric, and the printed working."""

from __future__ import annotations

import json
from urllib.parse import parse_qsl

import pytest

from calculators import run
from calculators.kit import cli
from calculators.kit.browser import parts_json, run_json
from calculators.kit.fields import Asked, Quantity
from calculators.kit.find import load
from calculators.kit.grammar import read_measure
from calculators.kit.numbers import shop_number
from calculators.kit.steps import evaluate
from calculators.kit.units import UNITS
from tests.contract.support import (
    SLUGS,
    answers_in_html,
    each_choice,
    in_unit,
    name,
    own,
    plain,
    sample,
    texts_that_ask,
)


def collapsed(text: str) -> str:
    return " ".join(text.split())


@pytest.mark.parametrize("slug", SLUGS)
def test_every_choice_is_answered_or_refused_with_a_sentence(slug: str) -> None:
    for texts in each_choice(load(slug)):
        outcome = run(slug, texts)
        assert outcome.ok or all("report code" not in one.message for one in outcome.errors), texts


@pytest.mark.parametrize("slug", SLUGS)
def test_page_terminal_and_json_agree(slug: str, capsys: pytest.CaptureFixture[str]) -> None:
    for texts in each_choice(load(slug)):
        words = [f"--{key}={text}" for key, text in texts.items()]
        code = cli.main([slug, *words, "--json"])
        shown = json.loads(capsys.readouterr().out)
        response = json.loads(run_json(json.dumps({"slug": slug, "texts": texts})))
        assert (code == 0) == shown["ok"] == response["ok"]
        if not shown["ok"]:
            assert response["errors"] == shown["errors"]
            continue
        answers, levels = answers_in_html(response["html"])
        assert answers == {key: one["text"] for key, one in shown["answers"].items()}
        assert levels == [one["level"] for one in shown["cautions"]]
        assert response["stop"] == ("stop" in levels)
        assert response["headline"] == shown["headline"]
        for key, one in response["answers"].items():
            assert one == {
                name: shown["answers"][key][name] for name in ("value", "low", "high", "unit", "text")
            }
        assert cli.main([slug, *words]) == 0
        terminal = capsys.readouterr().out
        assert response["text"] in terminal
        text = collapsed(terminal)
        assert collapsed(shown["headline"]) in text
        for one in shown["answers"].values():
            assert collapsed(f"{one['label']} {one['text']}") in text
        for caution in shown["cautions"]:
            assert collapsed(caution["text"]) in text


@pytest.mark.property
@pytest.mark.parametrize("slug", SLUGS)
def test_an_answer_in_parts_comes_to_the_whole(slug: str) -> None:
    for texts in each_choice(load(slug)):
        request = json.dumps({"slug": slug, "texts": texts})
        whole = json.loads(run_json(request))
        first, *rest = map(json.loads, parts_json(request))
        assert len(rest) == first.pop("later") == whole["ok"]
        figures = [html for part in rest for html in part["figures"]]
        around = first["html"].split('<figure class="calc-chart" aria-busy="true"></figure>')
        drawn = [piece for pair in zip(around, [*figures, ""], strict=True) for piece in pair]
        text = rest[0]["text"] if rest else whole["text"]
        assert {**first, "html": "".join(drawn), "text": text} == whole


@pytest.mark.property
@pytest.mark.parametrize("slug", SLUGS)
def test_the_link_comes_back_to_the_same_answer(slug: str) -> None:
    calculator = load(slug)
    keys = [one.key for one in calculator.fields]
    for texts in each_choice(calculator):
        outcome = run(slug, texts)
        assert not outcome.long
        pairs = dict(parse_qsl(outcome.query, keep_blank_values=True, strict_parsing=True))
        assert pairs.pop("v") == str(calculator.version)
        assert [key for key in pairs if not key.endswith("-unit")] == keys
        again = run(slug, pairs)
        assert plain(again) == plain(outcome)
        assert again.query == outcome.query


@pytest.mark.property
@pytest.mark.parametrize(("slug", "one"), own(Quantity), ids=name)
def test_us_and_metric_give_the_same_answer(slug: str, one: Asked) -> None:
    field = one.field
    assert isinstance(field, Quantity)
    texts = texts_that_ask(load(slug), one.key)
    number, _ = read_measure(sample(one), field.units, field.units[0], field.units[0])
    usual = run(slug, texts | {one.key: sample(one)})
    for unit in field.units:
        typed = in_unit(number, field.units[0], unit)
        bare = typed.removesuffix(UNITS[unit].shown).strip()
        for given in ({one.key: typed}, {one.key: bare, f"{one.key}-unit": UNITS[unit].shown}):
            outcome = run(slug, texts | given)
            assert plain(outcome) == plain(usual), given
            # and the link keeps the unit that was typed
            pairs = dict(parse_qsl(outcome.query, keep_blank_values=True))
            assert plain(run(slug, pairs)) == plain(usual)
            assert pairs[one.key] == typed


@pytest.mark.property
@pytest.mark.parametrize("slug", SLUGS)
def test_the_printed_working_gives_the_printed_results(slug: str) -> None:
    assert run(slug, {}).steps, "a calculator shows its working"
    for texts in each_choice(load(slug)):
        for step in run(slug, texts).steps:
            assert shop_number(evaluate(step.numbers), 4) == step.result, str(step)
