"""oven-survey through the door: a survey by hand, conversions of points and spans, and what must hold for any survey."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calculators import run
from tests.asking import asker, number

SLUG = "oven-survey"
answer = asker(SLUG)


def survey(temperatures: list[float], unit: str = "F") -> str:
    return "\n".join(f"place {place}, {reading:.4f} {unit}" for place, reading in enumerate(temperatures))


@pytest.mark.derived
def test_a_survey_by_hand() -> None:
    """Nine places, 381 to 407 F, set at 400 F: spread 26, sum 3,560 over 9 = 395.6; 400 - 381 = 19 more: 419, and 426 at most."""
    outcome = run(SLUG, {})
    assert number(outcome, "spread") == pytest.approx(26)
    assert number(outcome, "mean") == pytest.approx(3560 / 9)
    assert number(outcome, "coldest") == pytest.approx(381)
    assert number(outcome, "hottest") == pytest.approx(407)
    assert number(outcome, "add") == pytest.approx(19)
    assert number(outcome, "new-setting") == pytest.approx(419)
    assert number(outcome, "hottest-then") == pytest.approx(426)
    assert outcome.answers["verdict"].value == "uneven"
    assert outcome.headline == "Uneven: 26 F from bottom door left to top back right"


@pytest.mark.derived
def test_another_target_by_hand() -> None:
    """The coldest place at 385 F wanted: 385 - 381 = 4 to add, 404 set, 411 at the hottest. At 375 F: 6 less, 394 set."""
    outcome = answer(target="385 F")
    assert [round(number(outcome, key), 6) for key in ("add", "new-setting", "hottest-then")] == [4, 404, 411]
    outcome = answer(target="375 F")
    assert [round(number(outcome, key), 6) for key in ("add", "new-setting")] == [-6, 394]
    assert [one.key for one in outcome.cautions].count("target") == 1


@pytest.mark.published
def test_points_and_spans_convert_each_in_its_own_way() -> None:
    """NIST SP 811 (2008), B.8, from memory: a point t/C = (t/F - 32)/1.8, an interval t/C = (t/F)/1.8.

    The same survey in Celsius: 381 F is 193.89 C, 407 F is 208.33 C; the spread of 26 F is 14.44 C, never (26 - 32)/1.8.
    """
    readings = [193.888889, 200.0, 208.333333]
    outcome = answer(readings=survey(readings, "C"), setting="204.444444 C", even="11.111111 C")
    assert number(outcome, "spread") == pytest.approx(26, abs=1e-3)
    assert number(outcome, "coldest") == pytest.approx(381, abs=1e-3)
    assert number(outcome, "new-setting") == pytest.approx(419, abs=1e-3)
    assert outcome.answers["spread"].text == "26 F (14 C)"


@pytest.mark.derived
@pytest.mark.parametrize(
    ("hottest", "even", "verdict"),
    [
        (400, "20", "even"),
        (401, "20", "uneven"),
        (420, "20", "uneven"),
        (421, "20", "too-uneven"),
        (401, "21", "even"),
    ],
)
def test_the_limits_of_the_verdict(hottest: int, even: str, verdict: str) -> None:
    """Coldest 380 F: a spread of 20 is even at 20, 21 is not; 40 is still uneven, 41 too uneven. Common practice, no source."""
    outcome = answer(readings=survey([380, 390, hottest]), even=even)
    assert outcome.answers["verdict"].value == verdict


def test_what_the_hottest_place_sees_is_held_against_what_is_allowed() -> None:
    assert [one.key for one in answer(hottest_allowed="425 F").cautions].count("hottest-allowed") == 1
    assert [one.key for one in answer(hottest_allowed="426 F").cautions].count("hottest-allowed") == 0


def test_a_target_far_from_the_survey_is_refused_with_a_sentence() -> None:
    assert [one.key for one in run(SLUG, {"target": "290 F"}).errors] == ["target"]
    assert run(SLUG, {"target": "300 F"}).ok


def test_a_name_of_the_reader_s_own_is_repeated_and_escaped() -> None:
    outcome = answer(readings="<b>left</b>, 390\nright, 395\nmiddle, 400")
    assert "<b>left" not in outcome.html
    assert "&lt;b&gt;left" in outcome.html


def test_two_places_are_no_survey() -> None:
    assert [one.key for one in run(SLUG, {"readings": "left, 390\nright, 395"}).errors] == ["readings"]


@pytest.mark.property
@settings(max_examples=60, deadline=None, derandomize=True)
@given(
    readings=st.lists(st.floats(320, 480), min_size=3, max_size=30), setting=st.floats(340, 460),
    off=st.floats(-90, 90), even=st.floats(1, 100),
)  # fmt: skip
def test_the_coldest_place_gets_what_was_asked(
    readings: list[float], setting: float, off: float, even: float
) -> None:
    texts = {
        "readings": survey(readings), "setting": f"{setting:.4f} F", "target": f"{setting + off:.4f} F",
        "even": f"{even:.4f} F",
    }  # fmt: skip
    outcome = answer(**texts)
    spread, add = number(outcome, "spread"), number(outcome, "add")
    assert spread >= 0
    assert number(outcome, "coldest") <= number(outcome, "mean") + 1e-6
    assert number(outcome, "mean") <= number(outcome, "hottest") + 1e-6
    assert number(outcome, "coldest") + add == pytest.approx(setting + off, abs=1e-3)
    assert number(outcome, "hottest-then") == pytest.approx(setting + off + spread, abs=1e-3)
    assert number(outcome, "new-setting") == pytest.approx(setting + add, abs=1e-3)
    # order and names do not matter; shifting every reading shifts the places and leaves the spread
    assert number(answer(**(texts | {"readings": survey(readings[::-1])})), "spread") == pytest.approx(spread)
    shifted = answer(**(texts | {"readings": survey([one + 10 for one in readings])}))
    assert number(shifted, "spread") == pytest.approx(spread, abs=1e-3)
    assert number(shifted, "add") == pytest.approx(add - 10, abs=1e-3)


def test_readings_far_from_the_setting_are_told_before_it_is_moved() -> None:
    """Mean 386 F against a setting of 440 F: 54 F. A new setting over 600 F is no cure oven's (as everywhere here)."""
    far = run("oven-survey", {"readings": "a, 390\nb, 386\nc, 382", "setting": "440"})
    (said,) = (one for one in far.cautions if one.key == "setting")
    assert said.level == "caution"
    assert "54 F under" in said.text
    assert [one for one in run("oven-survey", {}).cautions if one.key == "setting"] == []
    over = run("oven-survey", {"readings": "a, 390\nb, 386\nc, 382", "setting": "600"})
    assert over.answers["new-setting"].value is None
    assert "stop" in {one.level for one in over.cautions if one.key == "setting"}
