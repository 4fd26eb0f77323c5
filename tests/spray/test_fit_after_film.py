"""fit-after-film through the door: geometry by hand, and threads against a printed table."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calculators import run
from calculators.kit.run import Outcome
from tests.asking import asker, number

SLUG = "fit-after-film"
answer = asker(SLUG)


@pytest.mark.derived
@pytest.mark.parametrize(("kind", "after"), [("hole", 0.494), ("slot", 0.494), ("shaft", 0.506)])
def test_two_films_across(kind: str, after: float) -> None:
    """1/2 in with 3 mil on both faces: 6 mil less in a hole or slot, 6 mil more on a shaft."""
    outcome = answer(kind=kind, size="1/2", film="3", coats="1", mating_size="")
    assert number(outcome, "size-after") == pytest.approx(after)
    assert number(outcome, "change") == pytest.approx(6)
    assert outcome.answers["verdict"].value == "not-asked"


@pytest.mark.derived
def test_four_films_on_a_thread() -> None:
    """1/2-13: pitch diameter 0.5 - 0.649519 / 13 = 0.45004 in. 3 mil on each flank: 12 mil, to 0.43804 in a nut."""
    nut = answer(kind="thread-60", size="1/2", film="3", coats="1", side="nut")
    bolt = answer(kind="thread-60", size="1/2", film="3", coats="1", side="bolt")
    assert number(nut, "change") == pytest.approx(12)
    assert number(nut, "size-after") == pytest.approx(0.43804, abs=1e-5)
    assert number(bolt, "size-after") == pytest.approx(0.46204, abs=1e-5)


@pytest.mark.published
@pytest.mark.parametrize(
    ("size", "pitch", "mil"), [("1/2", "1/13", 1.5), ("1/4", "1/20", 1.1), ("1", "1/8", 2.0)]
)
def test_no_film_fits_a_common_thread__asme_b1_1(size: str, pitch: str, mil: float) -> None:
    """ASME B1.1, allowance of class 2A UNC threads 1/2-13, 1/4-20 and 1-8 (from memory): 0.0015, 0.0011 and 0.0020 in."""
    outcome = answer(kind="thread-60", size=size, pitch=pitch, film="1", coats="1")
    assert number(outcome, "room") == pytest.approx(mil, abs=0.1)
    assert outcome.answers["verdict"].value == "binds"
    assert outcome.answers["plug"].value == "thread-plug"


@pytest.mark.derived
def test_room_between_two_parts() -> None:
    """Hole 0.510, pin 0.500: 10 mil of room. Two coats of 2.4 mil take 9.6 (tight), 2.6 take 10.4 (binds), 1 take 4 (fits)."""
    for film, verdict, left in (("2.4", "tight", 0.4), ("2.6", "binds", -0.4), ("1", "fits", 6.0)):
        outcome = answer(kind="hole", size="0.51", mating_size="0.5", film=film, coats="2")
        assert outcome.answers["verdict"].value == verdict
        assert number(outcome, "room-after") == pytest.approx(left)
        assert number(outcome, "most-film") == pytest.approx(5)
    shaft = answer(kind="shaft", size="0.5", mating_size="0.51", film="2.4", coats="2")
    assert shaft.answers["verdict"].value == "tight"


@pytest.mark.property
@settings(max_examples=40, deadline=None, derandomize=True)
@given(size=st.floats(0.05, 90), film=st.floats(0.1, 12), coats=st.integers(1, 10))
def test_a_hole_loses_what_a_shaft_gains_and_a_thread_moves_twice_as_far(
    size: float, film: float, coats: int
) -> None:
    def of(kind: str) -> Outcome:
        return answer(kind=kind, size=f"{size!r}", film=f"{film!r}", coats=str(coats), mating_size="")

    hole, shaft, slot = of("hole"), of("shaft"), of("slot")
    assert number(hole, "change") == number(shaft, "change") == number(slot, "change")
    assert number(hole, "change") == pytest.approx(2 * film * coats)
    assert number(shaft, "size-after") - size == pytest.approx(number(hole, "change") / 1000)
    if isinstance(hole.answers["size-after"].value, float):
        assert number(hole, "size-after") + number(shaft, "size-after") == pytest.approx(2 * size)
    thread = answer(kind="thread-60", size="1", film=f"{film!r}", coats=str(coats))
    assert number(thread, "change") == pytest.approx(2 * number(hole, "change"))


@pytest.mark.property
def test_a_hole_that_the_film_fills_is_said_to_be_closed() -> None:
    outcome = answer(kind="hole", size="0.02 in", film="10", coats="2", mating_size="")
    assert outcome.answers["size-after"].value is None
    assert outcome.answers["verdict"].value == "binds"


@pytest.mark.property
@pytest.mark.parametrize(
    ("texts", "key"),
    [
        ({"kind": "hole", "size": "0.5", "mating-size": "0.6"}, "mating-size"),
        ({"kind": "shaft", "size": "0.5", "mating-size": "0.4"}, "mating-size"),
        ({"kind": "thread-60", "size": "0.05", "pitch": "0.5"}, "pitch"),
    ],
)
def test_what_does_not_fit_bare_is_refused(texts: dict[str, str], key: str) -> None:
    outcome = run(SLUG, texts)
    assert [one.key for one in outcome.errors] == [key]


@pytest.mark.parametrize("kind", ["hole", "shaft", "slot"])
def test_the_advice_fits_a_hole_and_a_shaft_alike(kind: str) -> None:
    """A hole is made larger and a shaft smaller, so the advice speaks of room."""
    words = " ".join(one.text for one in answer(kind=kind, size="1/2", mating_size="1/2").cautions)
    assert "make room" in words
    assert "larger" not in words


def test_a_place_that_closes_is_said_in_a_sentence() -> None:
    outcome = answer(kind="slot", size="0.02", film="20", coats="1", mating_size="")
    assert outcome.headline == "Will not fit: mask it. The film closes it: 40 mil over both faces"
