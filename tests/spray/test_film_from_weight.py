"""film-from-weight through the door: the mass balance the other way round, and what the scale can tell."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.spray.film_support import answer, cautions, number, refused

SLUG = "film-from-weight"
MIL = 25.4


@pytest.mark.published
def test_a_gram_a_square_metre_is_a_micrometre_of_water() -> None:
    """The unit itself (SI: 1 g/m2 over 1000 kg/m3 is 1e-6 m): 20 g on 1 m2 is 20 um, 0.787 mil at 25.4 um exactly."""
    outcome = answer(
        SLUG, before="1000 g", after="1020 g", division="1 g", area="1 m2", specific_gravity="1",
        target="20 um", either_side="5 um",
    )  # fmt: skip
    assert number(outcome, "film") == pytest.approx(20 / MIL)
    assert number(outcome, "scale-error") == pytest.approx(1 / MIL)
    film = outcome.answers["film"]
    assert (film.low, film.high) == (pytest.approx(19 / MIL), pytest.approx(21 / MIL))
    assert outcome.answers["verdict"].value == "right"


@pytest.mark.derived
def test_the_demo_strap() -> None:
    """0.030 lb = 13.608 g on 1.35 ft2 = 0.12542 m2 at 1.5: 72.33 um = 2.848 mil; 0.002 lb is 4.822 um = 0.190 mil."""
    outcome = answer(SLUG)
    assert number(outcome, "film") == pytest.approx(2.848, abs=1e-3)
    assert number(outcome, "scale-error") == pytest.approx(0.1898, abs=1e-4)
    assert cautions(outcome) == []


@pytest.mark.property
@settings(max_examples=50, deadline=None, derandomize=True)
@given(area=st.floats(0.5, 500), film=st.floats(1, 20), gravity=st.floats(0.9, 3))
def test_it_undoes_powder_needed(area: float, film: float, gravity: float) -> None:
    """What powder-needed lays on the part, put on the scale, gives the film back."""
    laid = answer(
        "powder-needed", area=f"{area!r}", film=f"{film!r}", specific_gravity=f"{gravity!r}", parts="1"
    )
    after = 10 + number(laid, "on-part")
    outcome = answer(
        SLUG, before="10 lb", after=f"{after!r} lb", area=f"{area!r}", specific_gravity=f"{gravity!r}"
    )
    assert number(outcome, "film") == pytest.approx(film, rel=1e-6)


@pytest.mark.property
@pytest.mark.parametrize(
    ("after", "verdict"), [("3.21", "thin"), ("3.22", "right"), ("3.23", "right"), ("3.24", "thick")]
)
def test_the_verdict_follows_the_film(after: str, verdict: str) -> None:
    outcome = answer(SLUG, after=after, target="3.3 mil", either_side="0.6 mil", division="0.001 lb")
    film = number(outcome, "film")
    assert verdict == ("thin" if film < 2.7 else "thick" if film > 3.9 else "right")
    assert outcome.answers["verdict"].value == verdict
    assert outcome.headline.startswith(verdict.capitalize())


def test_a_coarse_scale_and_an_impossible_film_are_said() -> None:
    assert ("caution", "division") in cautions(answer(SLUG, division="0.01 lb"))
    assert ("note", "division") in cautions(answer(SLUG, target="2.4 mil", either_side="0.5 mil"))
    assert ("caution", "area") in cautions(answer(SLUG, area="0.3 ft2"))


def test_a_part_that_gained_nothing_is_refused() -> None:
    assert refused(SLUG, after="3.19") == {"after": "Weight after must be more than the weight before"}
    assert set(refused(SLUG, target="1 mil", either_side="1 mil")) == {"either-side"}


def test_a_film_that_no_coat_has_is_refused() -> None:
    """60 mil is the most that any field here takes for one coat; a bracket that gains 5 lb was weighed in another unit."""
    assert "after" in refused(SLUG, before="3.19 lb", after="8.22 lb")
    assert answer(SLUG, before="1000 g", after="1060 g", area="0.06 m2", specific_gravity="1").ok


def test_a_verdict_within_the_scale_s_doubt_says_so() -> None:
    assert answer(SLUG, division="0.05 lb").headline == "Right, but too close to be sure: 2.85 mil (72.3 um)"
    assert answer(SLUG).headline == "Right: 2.85 mil (72.3 um)"
