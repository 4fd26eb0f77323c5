"""Words that are no option's own: a name in a row, taken as typed, and a verdict that says more than its label."""

from __future__ import annotations

from dataclasses import dataclass

import pytest

from calculators.kit.calculator import Out
from calculators.kit.fields import Asked, Choice, Limits, Option, Quantity, Rows, Text, ask
from calculators.kit.read import read_field, read_form
from calculators.kit.result import Verdict
from calculators.kit.run import _answer


@dataclass(frozen=True)
class Line:
    name: str = ask(Text(label="Name", longest=12, may_be_empty=True))
    owner: str = ask(Text(label="Owner"))
    mass_kg: float = ask(Quantity(label="Mass", units=("lb", "kg"), limits=Limits("0 lb", "9 lb", "")))


@dataclass(frozen=True)
class Form:
    load: tuple[Line, ...] = ask(Rows(label="Load", row=Line))


def read(text: str) -> list[tuple[str, str]] | list[str]:
    done = read_form(Form, {"load": text})
    return [one.message for one in done.errors] or [(one.name, one.owner) for one in done.values["load"]]


@pytest.mark.parametrize(
    ("text", "taken"),
    [
        ("bench ends,  the   town, 5", [("bench ends", "the town")]),
        (", town, 5", [("", "town")]),
        ("3 rails; town; 5", [("3 rails", "town")]),
        ("be\x00nch\x1b, town, 5", [("bench", "town")]),
        ("<b>, town, 5", [("<b>", "town")]),
        ("thirteen sign, town, 5", ["Line 1: name must have 12 characters or fewer"]),
        (f"{'x' * 5000}, town, 5", ["Line 1: name must have 12 characters or fewer"]),
        ("ends, , 5", ["Line 1: enter the owner"]),
        ("ends, town, 5 ft", ["Line 1: mass must be in lb or kg"]),
        ("Name, Owner, Mass\nends, town, 5", [("ends", "town")]),
    ],
)
def test_a_name_in_a_row(text: str, taken: object) -> None:
    assert read(text) == taken


def test_a_verdict_with_words_keeps_its_slug() -> None:
    out = Out(key="plan", label="Plan", meaning="Follow it.", options={"wait": "Wait", "go": "Go"})
    said = _answer(out, Verdict("wait", "Wait 5 min"))
    assert (said.value, said.text, said.unit) == ("wait", "Wait 5 min", "")
    with pytest.raises(ValueError, match="'stop' is not one of its options"):
        _answer(out, Verdict("stop", "Stop"))


@pytest.mark.parametrize(
    "words", ["carbon-steel", "Carbon steel, plain", "mild-steel", "Mild steel", "MILD_STEEL", "carbon steel"]
)
def test_a_choice_in_words_with_or_without_hyphens(words: str) -> None:
    field = Choice(
        label="Metal",
        options=(Option("carbon-steel", "Carbon steel, plain", ("mild-steel",)), Option("brass", "Brass")),
        default="brass",
    )
    assert read_field(Asked("metal", "metal", "", field), words, "", []) == "carbon-steel"
