"""Hard limits refuse and say so; the edges of a source answer and warn."""

from __future__ import annotations

import re

import pytest

from calculators import run
from calculators.kit.fields import Asked, Quantity, Readings, Whole
from calculators.kit.find import load
from calculators.kit.grammar import read_measure
from calculators.kit.read import Refused, read_field
from calculators.kit.units import UNITS, convert
from tests.contract.support import CRASHED, every, name, own, texts_that_ask

NUMBERS = [*every(Quantity), *every(Readings)]
SENTENCE = re.compile(r"(.+) must be (?:between (.+) and (.+)|(.+) or more|(.+) or less)")


def read(one: Asked, text: str) -> object:
    if isinstance(one.field, Readings):
        text = "\n".join([text] * one.field.at_least)
    return read_field(one, text, "", [])


def refused(one: Asked, text: str) -> tuple[str, list[str]]:
    """The label, and the limits that the sentence quotes."""
    with pytest.raises(Refused) as caught:
        read(one, text)
    sentence = re.sub(r"^Reading \d+: ", "", str(caught.value))
    found = SENTENCE.fullmatch(sentence)
    assert found, sentence
    return found[1], [quoted for quoted in found.groups()[1:] if quoted]


@pytest.mark.property
@pytest.mark.parametrize(("slug", "one"), NUMBERS, ids=name)
def test_a_limit_typed_back_is_taken_and_beyond_it_is_refused(slug: str, one: Asked) -> None:
    field = one.field
    assert isinstance(field, Quantity | Readings)
    assert field.limits.low or field.limits.high
    for end, sign in ((field.limits.low, -1), (field.limits.high, 1)):
        if end is None:
            continue
        read(one, end)
        edge, _ = read_measure(end, field.units, field.units[0], field.units[0])
        for unit in field.units:
            at = convert(edge, field.units[0], unit)
            beyond = f"{at + sign * max(abs(at) * 1e-3, 1e-6):.12f} {UNITS[unit].shown}".strip()
            label, quoted = refused(one, beyond)
            assert label.casefold() == field.label.casefold()
            assert len(quoted) == sum(limit is not None for limit in (field.limits.low, field.limits.high))
            for limit in quoted:
                read(one, limit)
                assert limit.endswith(UNITS[unit].shown)


@pytest.mark.property
@pytest.mark.parametrize(("slug", "one"), every(Whole), ids=name)
def test_a_count_s_limits(slug: str, one: Asked) -> None:
    field = one.field
    assert isinstance(field, Whole)
    assert read(one, f"{field.low:,}") == field.low
    assert read(one, f"{field.high:,}") == field.high
    for beyond in (field.low - 1, field.high + 1):
        assert refused(one, str(beyond)) == (field.label, [f"{field.low:,}", f"{field.high:,}"])


@pytest.mark.property
@pytest.mark.parametrize(("slug", "one"), own(Quantity), ids=name)
def test_an_answer_at_each_limit_or_a_sentence(slug: str, one: Asked) -> None:
    field = one.field
    assert isinstance(field, Quantity)
    for end in filter(None, (field.limits.low, field.limits.high)):
        outcome = run(slug, texts_that_ask(load(slug), one.key) | {one.key: end})
        assert outcome.ok or outcome.errors
        for error in outcome.errors:
            assert CRASHED not in error.message
            assert not SENTENCE.fullmatch(error.message) or error.key != one.key
        numbers = [n for answer in outcome.answers.values() for n in (answer.value, answer.low, answer.high)]
        for number in numbers:
            assert not isinstance(number, float) or abs(number) < float("inf"), f"{end}: {number}"


WITH_SOURCE = [(slug, one) for slug, one in own(Quantity) if getattr(one.field, "validity", None)]


@pytest.mark.property
@pytest.mark.parametrize(("slug", "one"), WITH_SOURCE, ids=name)
def test_beyond_a_source_there_is_an_answer_and_a_caution(slug: str, one: Asked) -> None:
    field = one.field
    assert isinstance(field, Quantity)
    assert field.validity
    texts = texts_that_ask(load(slug), one.key)

    def warned(text: str) -> list[str]:
        outcome = run(slug, texts | {one.key: text})
        assert outcome.ok, outcome.errors
        return [
            caution.text for caution in outcome.cautions
            if caution.key == one.key and caution.text.endswith("Treat the answer as an estimate.")
        ]  # fmt: skip

    for end, sign, word in ((field.validity.low, -1, "below"), (field.validity.high, 1, "above")):
        if end is None:
            continue
        edge, _ = read_measure(end, field.units, field.units[0], field.units[0])
        for unit in field.units:
            at = convert(edge, field.units[0], unit)
            shown = UNITS[unit].shown
            assert warned(f"{at:.15g} {shown}") == []
            (text,) = warned(f"{at + sign * max(abs(at) * 1e-4, 1e-6):.12f} {shown}")
            assert text.startswith(f"{field.label} is {word} ")
            assert field.validity.beyond in text
