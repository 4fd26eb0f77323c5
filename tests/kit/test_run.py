"""The only door: whatever text comes in, an Outcome goes out that every page, link and terminal can hold."""

from __future__ import annotations

import json
from urllib.parse import parse_qs, urlencode

import pytest

from calculators.kit import grammar
from calculators.kit.browser import run_json
from calculators.kit.run import LONGEST_QUERY, run

HALVES = ["\ud800", "1 in\udcff", "\udfff1", "1\ud800 in", "\udc00\ud800"]


@pytest.mark.parametrize("text", HALVES)
@pytest.mark.parametrize(
    ("slug", "key"), [("cure-plan", "thickness"), ("film-readings", "readings"), ("bake-log", "log")]
)
def test_half_a_sign_is_refused_and_all_else_holds(slug: str, key: str, text: str) -> None:
    """A browser's text may hold one half of a pair of surrogates, and a terminal's bytes that are no UTF-8 come as such."""
    outcome = run(slug, {key: text, "powder": "B7"})
    assert [one.key for one in outcome.errors] == [key]
    assert "report code" not in outcome.errors[0].message
    for shown in (outcome.query, outcome.text, str(outcome.to_json()), *outcome.typed.values()):
        shown.encode()
    assert key in parse_qs(outcome.query)
    assert run(slug, {f"{key}-unit": text}).query.encode()


def test_half_a_sign_in_words_is_shown_as_a_sign_that_was_lost() -> None:
    outcome = run("oven-survey", {"readings": "top\ud800, 500 F\nmiddle, 400 F\nbottom, 390 F"})
    assert outcome.ok
    assert "top\ufffd" in outcome.text
    outcome.html.encode()


def test_the_two_halves_of_a_sign_are_one_sign() -> None:
    assert (
        run("cure-plan", {"thickness": "\ud83d\udd25"}).query == run("cure-plan", {"thickness": "🔥"}).query
    )


def test_the_page_may_hand_over_half_a_sign() -> None:
    answer = json.loads(run_json('{"slug": "cure-plan", "texts": {"thickness": "1 in\\ud800"}}'))
    assert [one["key"] for one in answer["errors"]] == ["thickness"]


def test_a_defect_before_the_reading_loses_nothing_either(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    def broken(*_: object) -> None:
        raise RuntimeError

    monkeypatch.setattr("calculators.kit.run.unit_typed", broken)
    outcome = run("cure-plan", {"thickness": "1 in"})
    assert "report code" in outcome.errors[0].message
    assert "RuntimeError" in capsys.readouterr().err


def test_a_link_leaves_out_what_is_too_long_for_one_longest_first() -> None:
    texts = {"log": "1, 2\n" * 300, "thickness": "9" * 1990, "shape": "x" * 1000, "log-unit": "C"}
    outcome = run("bake-log", texts)
    assert len(outcome.query) <= LONGEST_QUERY
    assert outcome.long == ("thickness", "log")
    held = parse_qs(outcome.query)
    assert held["shape"] == ["x" * 1000]
    assert not {"thickness", "log", "log-unit"} & set(held)
    whole = run("bake-log", {"shape": "x" * 1000})
    assert urlencode({"shape": "x" * 1000}) in whole.query
    assert whole.long == ()


def test_what_is_too_long_to_be_read_is_not_cut_to_something_that_is() -> None:
    text = f"1 in{' ' * 300}x"
    outcome = run("cure-plan", {"thickness": text})
    assert not outcome.ok
    assert parse_qs(outcome.query)["thickness"] == [text]


@pytest.mark.parametrize(
    ("slug", "key"),
    [
        ("cure-plan", "thickness"),
        ("cure-plan", "thickness-unit"),
        ("bake-log", "log-unit"),
        ("bake-log", "shape"),
    ],
)
def test_a_text_of_any_length_is_refused_without_working_on_all_of_it(
    slug: str, key: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Tidying and quoting take a second for ten million signs, so neither gets more of them than it has use for."""
    lengths: list[int] = []
    real_tidy = grammar.tidy

    def tidy(text: str) -> str:
        lengths.append(len(text))
        return real_tidy(text)

    def quote(pairs: list[tuple[str, str]]) -> str:
        lengths.extend(len(text) for _, text in pairs)
        return urlencode(pairs)

    monkeypatch.setattr("calculators.kit.read.tidy", tidy)
    monkeypatch.setattr("calculators.kit.run.urlencode", quote)
    monkeypatch.setattr(grammar, "tidy", tidy)
    outcome = run(slug, {key: "é" * 1_000_000})
    assert max(lengths) <= LONGEST_QUERY
    assert [one.key for one in outcome.errors] == [key.removesuffix("-unit")]
    assert len(outcome.query) <= LONGEST_QUERY
