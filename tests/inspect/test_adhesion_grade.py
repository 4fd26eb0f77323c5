"""adhesion-grade through the door: both scales at every boundary, and what to cut for which film."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calculators import run
from calculators.kit.run import Outcome

SLUG = "adhesion-grade"


def answer(**texts: str) -> Outcome:
    outcome = run(SLUG, texts)
    assert outcome.ok, outcome.errors
    return outcome


def grades(affected: str, squares: str = "100") -> tuple[object, object]:
    answers = answer(affected=affected, squares=squares).answers
    return answers["cut-grade"].value, answers["us-cut-grade"].value


@pytest.mark.published
@pytest.mark.parametrize(
    ("lost", "iso", "us"),
    [
        ("0", "iso-0", "5b"),
        ("0.1", "iso-1", "4b"),
        ("4.9", "iso-1", "4b"),
        ("5", "iso-1", "3b"),
        ("5.1", "iso-2", "3b"),
        ("15", "iso-2", "3b"),
        ("15.1", "iso-3", "2b"),
        ("35", "iso-3", "2b"),
        ("35.1", "iso-4", "1b"),
        ("65", "iso-4", "1b"),
        ("65.1", "iso-5", "0b"),
        ("100", "iso-5", "0b"),
    ],
)
def test_every_boundary(lost: str, iso: str, us: str) -> None:
    """ISO 2409 classes (a tool's manual quoting it: 1 is not over 5 %, 2 over 5 and not over 15, 3 to 35, 4 to 65); ASTM D3359 B
    (a teaching page quoting it: 4B under 5 %, 3B 5 to 15, 2B 15 to 35, 1B 35 to 65, 0B over 65; 15, 35 and 65 stand in two rows
    there, and the better is taken).
    """
    assert grades(lost) == (iso, us)


@pytest.mark.published
@pytest.mark.parametrize(
    ("film", "substrate", "iso", "us"),
    [
        ("60", "hard", (1, 6), (2, 6)),
        ("60", "soft", (2, 6), (2, 6)),
        ("50", "hard", (1, 6), (1, 11)),
        ("51", "hard", (1, 6), (2, 6)),
        ("61", "hard", (2, 6), (2, 6)),
        ("61", "soft", (2, 6), (2, 6)),
        ("120", "hard", (2, 6), (2, 6)),
        ("121", "hard", (3, 6), (2, 6)),
        ("125", "soft", (3, 6), (2, 6)),
        ("126", "hard", (3, 6), None),
        ("250", "hard", (3, 6), None),
        ("251", "hard", None, None),
    ],
)
def test_what_to_cut(
    film: str, substrate: str, iso: tuple[int, int] | None, us: tuple[int, int] | None
) -> None:
    """ISO 2409 spacing (an instrument maker's page): 1 mm to 60 um on hard, 2 on soft, 2 to 120, 3 to 250, six cuts; ASTM D3359 B
    (table and manual, second-hand): 1 mm and 11 cuts to 50 um, 2 mm and 6 cuts to 125, beyond it the X-cut.
    """
    outcome = answer(film=f"{film} um", substrate=substrate)
    for prefix, cut in (("", iso), ("us-", us)):
        found = [outcome.answers[f"{prefix}{key}"].value for key in ("spacing", "cuts")]
        assert found == ([None, None] if cut is None else list(cut))


def test_the_x_cut_is_named_where_it_is_wanted() -> None:
    assert [one.key for one in answer(film="126 um").cautions if one.level == "caution"] == ["film"]
    assert "X-cut" in answer(film="126 um").answers["us-spacing"].text
    beyond = [one.text for one in answer(film="251 um").cautions if one.source == "iso-2409"]
    assert any("X-cut" in text for text in beyond)


@pytest.mark.derived
def test_fractions_of_squares() -> None:
    """1 1/4 of 25 squares is 5 %: ISO class 1, and no longer 4B; 15 1/4 of 100 is over 15 %."""
    assert grades("1 1/4", "25") == ("iso-1", "3b")
    assert grades("15 1/4") == ("iso-3", "2b")
    assert ("note", "affected") in [
        (one.level, one.key) for one in answer(affected="1 1/4", squares="25").cautions
    ]


@pytest.mark.property
@settings(max_examples=80, deadline=None, derandomize=True)
@given(st.integers(1, 400), st.floats(0, 1), st.floats(0, 1))
def test_the_scales_run_opposite_ways_and_more_lost_is_never_better(
    squares: int, one: float, other: float
) -> None:
    less, more = sorted((one, other))
    (iso_less, us_less), (iso_more, us_more) = (
        grades(f"{share * squares:.9f}", str(squares)) for share in (less, more)
    )
    assert str(iso_less) <= str(iso_more)
    assert str(us_less) >= str(us_more)


def test_a_lattice_for_another_film_is_noted_and_too_many_squares_refused() -> None:
    assert ("note", "squares") in [(one.level, one.key) for one in answer(squares="36").cautions]
    assert answer().cautions == ()
    outcome = run(SLUG, {"affected": "26"})
    assert [error.key for error in outcome.errors] == ["affected"]


def test_a_film_too_thick_for_method_b_has_no_us_grade() -> None:
    """ASTM D3359: over 125 um the X-cut, method A. The answer must not say 4B beside a headline that says there is none."""
    thick, thin = (run(SLUG, {"film": film, "affected": "1"}) for film in ("126 um", "125 um"))
    assert thick.answers["us-cut-grade"].text == "none for this film: X-cut"
    assert thick.answers["us-cut-grade"].value is None
    assert thick.answers["cut-grade"].value == "iso-1"
    assert thin.answers["us-cut-grade"].value == "4b"
