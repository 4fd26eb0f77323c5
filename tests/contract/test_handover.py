"""Hand-over between calculators: each declared on both sides, agreeing in meaning and unit, and carried without loss."""

from __future__ import annotations

import pytest

from calculators import run, slugs
from calculators.kit import find
from calculators.kit.fields import Choice, Quantity, Whole
from calculators.kit.handover import MEANINGS, misfit
from calculators.kit.read import read_field
from calculators.kit.units import convert

FIELDS = [(slug, one) for slug in slugs() for one in find.load(slug).fields if one.field.meaning]
ANSWERS = [(slug, out) for slug in slugs() for out in find.load(slug).answers if out.quantity]
PAIRS = [
    (giver, out, taker, one)
    for giver, out in ANSWERS
    for taker, one in FIELDS
    if out.quantity == one.field.meaning and giver != taker
]


@pytest.mark.parametrize("slug", slugs())
def test_every_meaning_is_known_and_fits_its_unit(slug: str) -> None:
    calculator = find.load(slug)
    sides = [(one.field.meaning, one) for one in calculator.fields if one.field.meaning]
    sides += [(out.quantity, out) for out in calculator.answers if out.quantity]  # type: ignore[misc]
    assert [wrong for meaning, side in sides if (wrong := misfit(meaning, side))] == []


@pytest.mark.parametrize("slug", slugs())
def test_a_calculator_asks_for_each_thing_once(slug: str) -> None:
    """Two fields of one meaning would both be filled with the same number, and one of them means something else."""
    meanings = [one.field.meaning for one in find.load(slug).fields if one.field.meaning]
    assert sorted(meanings) == sorted(set(meanings))


@pytest.mark.parametrize("meaning", MEANINGS)
def test_every_meaning_has_somebody_who_asks(meaning: str) -> None:
    assert any(one.field.meaning == meaning for _, one in FIELDS), f"nobody asks for {meaning}: take it out"


@pytest.mark.parametrize("meaning", sorted({out.quantity for _, out in ANSWERS}))
def test_every_answer_declared_has_a_field_to_go_to(meaning: str) -> None:
    givers = {slug for slug, out in ANSWERS if out.quantity == meaning}
    takers = {slug for slug, one in FIELDS if one.field.meaning == meaning}
    assert takers - givers or len(takers) > 1


@pytest.mark.parametrize("meaning", MEANINGS)
def test_what_belongs_together_says_so_on_both_sides(meaning: str) -> None:
    assert all(meaning in MEANINGS[other].with_ for other in MEANINGS[meaning].with_)


@pytest.mark.property
@pytest.mark.parametrize(
    ("giver", "out", "taker", "one"),
    PAIRS,
    ids=[f"{giver}.{out.key}-{taker}.{one.key}" for giver, out, taker, one in PAIRS],
)
def test_an_answer_arrives_as_it_was_given(giver, out, taker, one) -> None:  # type: ignore[no-untyped-def]
    outcome = run(giver, {})
    gift = next((gift for gift in outcome.gifts if gift.meaning == out.quantity), None)
    if gift is None:  # the example has no number for it
        assert not isinstance(outcome.answers[out.key].value, float)
        return
    if isinstance(one.field, Choice):
        assert set(out.options) & set(one.field.slugs), "no choice in common"
        return
    value = read_field(one, gift.text, "", [])
    given = outcome.answers[out.key].value
    if isinstance(one.field, Whole):
        assert value == given
    else:
        assert isinstance(one.field, Quantity)
        shop = (out.shown or (out.unit,))[0]
        # a gift is written with six digits, so half of the sixth may be lost
        assert value == pytest.approx(convert(given, shop, one.unit), rel=5e-6)
