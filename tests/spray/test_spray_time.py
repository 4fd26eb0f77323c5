"""spray-time through the door: the powder on the parts over what the guns give."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.spray.film_support import answer, number, refused

SLUG = "spray-time"


@pytest.mark.published
def test_pounds_an_hour_and_grams_a_minute() -> None:
    """NIST SP 811 (2008), Appendix B.9, from memory: 1 lb/h = 1.259979e-4 kg/s, so 20 lb/h is 151.197 g/min."""
    outcome = answer(SLUG, gun_output="20 lb/h")
    assert number(outcome, "powder-rate") == pytest.approx(20)
    same = answer(SLUG, catch_mass="151.197 g", catch_time="1 min")
    assert number(same, "one-gun") == pytest.approx(20, rel=1e-5)
    assert number(same, "spray-time") == pytest.approx(number(outcome, "spray-time"), rel=1e-5)


@pytest.mark.derived
def test_the_demo_job() -> None:
    """41.2 ft2 = 3.8276 m2, 63.5 um, SG 1.5: 364.6 g on the parts, / 0.6 = 607.6 g sprayed, / 150 g/min = 4.051 min.

    41.2 ft2 / 4.051 min = 10.17 ft2/min; 150 g/min = 9 kg/h = 19.84 lb/h.
    """
    outcome = answer(SLUG)
    assert number(outcome, "spray-time") == pytest.approx(4.051, abs=1e-3)
    assert number(outcome, "lay-rate") == pytest.approx(10.17, abs=0.01)
    assert number(outcome, "powder-rate") == pytest.approx(19.84, abs=0.01)
    assert outcome.headline == "Trigger on for 4.1 min"


@pytest.mark.derived
def test_a_metric_job_with_two_guns() -> None:
    """3.2 m2 x 75 um x 1.6 = 384 g, / 0.55 = 698.2 g; two guns of 100 g/min: 3.491 min; 3.2 / 3.491 = 0.9167 m2/min."""
    outcome = answer(
        SLUG, area="3.2 m2", film="75 um", specific_gravity="1.6", transfer="55",
        gun_output="100 g/min", guns="2",
    )  # fmt: skip
    assert number(outcome, "spray-time") == pytest.approx(3.491, abs=1e-3)
    assert number(outcome, "lay-rate") * 0.09290304 == pytest.approx(0.9167, abs=1e-4)


@pytest.mark.property
@settings(max_examples=50, deadline=None, derandomize=True)
@given(
    area=st.floats(0.01, 9000), film=st.floats(0.2, 60), gravity=st.floats(0.8, 4), transfer=st.floats(5, 100),
    output=st.floats(0.1, 500), guns=st.integers(1, 50),
)  # fmt: skip
def test_what_leaves_the_guns_is_what_powder_needed_counts(
    area: float, film: float, gravity: float, transfer: float, output: float, guns: int
) -> None:
    """Mass balance between the two calculators: rate x time is the powder sprayed, without spare and reclaim."""
    job = {
        "area": f"{area!r}", "film": f"{film!r}", "specific_gravity": f"{gravity!r}", "transfer": f"{transfer!r}",
    }  # fmt: skip
    time = answer(SLUG, **job, gun_output=f"{output!r}", guns=str(guns))
    powder = answer("powder-needed", **job, spare="0")
    sprayed = number(time, "powder-rate") * number(time, "spray-time") / 60
    assert sprayed == pytest.approx(number(powder, "powder"))
    assert number(time, "sprayed") == pytest.approx(number(powder, "powder"))
    assert number(time, "lay-rate") * number(time, "spray-time") == pytest.approx(area)


def test_a_known_output_takes_the_place_of_the_catch_and_says_so() -> None:
    outcome = answer(SLUG, gun_output="30 lb/h", catch_mass="1 g")
    assert number(outcome, "one-gun") == pytest.approx(30)
    assert ("note", "gun-output") in [(one.level, one.key) for one in outcome.cautions]
    assert "gun-output" not in [one.key for one in answer(SLUG).cautions]


def test_wrong_input_is_named() -> None:
    assert set(refused(SLUG, catch_mass="a cup", guns="1.5", gun_output="none")) == {
        "catch-mass",
        "guns",
        "gun-output",
    }


def test_a_catch_that_no_gun_gives_is_refused() -> None:
    """The field for a known output takes 0.1 to 500 lb/h; the catch is held to the same."""
    for mass, time in (("1 g", "60 min"), ("50 kg", "5 s")):
        assert "catch-mass" in refused(SLUG, catch_mass=mass, catch_time=time)
    assert answer(SLUG, catch_mass="1 g", catch_time="60 min", gun_output="20 lb/h").ok
