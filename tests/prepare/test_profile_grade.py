"""profile-grade through the door: the comparators' printed segments, and the film over the peaks."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calculators import run
from tests.asking import asker, number

SLUG = "profile-grade"
ORDER = ["finer-than-fine", "fine", "medium", "coarse", "coarser-than-coarse"]
answer = asker(SLUG)


@pytest.mark.published
@pytest.mark.parametrize(
    ("shape", "um", "grade"),
    [
        ("grit", 24.9, "finer-than-fine"),
        ("grit", 25, "fine"),
        ("grit", 59, "fine"),
        ("grit", 60, "medium"),
        ("grit", 75, "medium"),
        ("grit", 100, "coarse"),
        ("grit", 149, "coarse"),
        ("grit", 150, "coarser-than-coarse"),
        ("shot", 24, "finer-than-fine"),
        ("shot", 25, "fine"),
        ("shot", 40, "medium"),
        ("shot", 65, "medium"),
        ("shot", 75, "coarse"),
        ("shot", 100, "coarser-than-coarse"),
    ],
)
def test_grades_by_the_segments_of_the_comparators(shape: str, um: float, grade: str) -> None:
    """ISO 8503-1 and -2: segments G 25, 60, 100, 150 and S 25, 40, 70, 100 um; each grade from its segment up to but not
    including the next (a comparator seller's sheet and manual, second-hand).
    """
    outcome = answer(abrasive_shape=shape, peak=f"{um} um", film="10 mil")
    assert outcome.answers["profile-grade"].value == grade


@pytest.mark.published
@pytest.mark.parametrize(("um", "off"), [(30, 10), (80, 25), (120, 40)])
def test_what_to_take_off_a_gauge_set_on_smooth_steel(um: float, off: float) -> None:
    """ISO 19840: 25 um for a medium profile (second-hand), 10 for fine and 40 for coarse (from memory)."""
    assert number(answer(peak=f"{um} um"), "gauge-correction") * 25.4 == pytest.approx(off)
    assert answer(peak="200 um").answers["gauge-correction"].value is None


@pytest.mark.derived
def test_film_over_the_peaks_by_hand() -> None:
    """Peaks 1.5, 2.0 and 2.5 mil: mean 2.0, spread 1.0. Film 3 mil: 1.0 over the mean, 0.5 over the highest, 1.5 the lowest."""
    outcome = answer(peak="1.5 2.0 2.5", film="3")
    assert number(outcome, "mean-peak") == pytest.approx(2.0)
    assert number(outcome, "spread") == pytest.approx(1.0)
    over = outcome.answers["film-over-peaks"]
    assert (over.low, over.value, over.high) == pytest.approx((0.5, 1.0, 1.5))
    assert outcome.answers["film-verdict"].value == "close"
    assert [(one.level, one.key) for one in outcome.cautions] == [("caution", "film")]


@pytest.mark.property
@settings(max_examples=40, deadline=None, derandomize=True)
@given(st.lists(st.floats(0.05, 19), min_size=1, max_size=8), st.floats(0.2, 90))
def test_order_does_not_matter_and_more_film_only_helps(peaks: list[float], film: float) -> None:
    texts = [f"{one!r}" for one in peaks]
    one = answer(peak=" ".join(texts), film=f"{film!r}")
    back = answer(peak=" ".join(reversed(texts)), film=f"{film!r}")
    assert one.answers["profile-grade"] == back.answers["profile-grade"]
    assert number(one, "mean-peak") == pytest.approx(number(back, "mean-peak"))
    verdicts = ["through", "close", "deep", "covered"]
    more = answer(peak=" ".join(texts), film=f"{min(film + 1, 100)!r}")
    assert verdicts.index(str(more.answers["film-verdict"].value)) >= verdicts.index(
        str(one.answers["film-verdict"].value)
    )
    assert one.answers["mean-peak"].low <= number(one, "mean-peak") * (1 + 1e-9)  # type: ignore[operator]


@pytest.mark.property
def test_a_deeper_profile_is_never_a_finer_grade() -> None:
    for shape in ("grit", "shot"):
        grades = [
            ORDER.index(str(answer(abrasive_shape=shape, peak=f"{um} um").answers["profile-grade"].value))
            for um in range(5, 200, 5)
        ]
        assert grades == sorted(grades)


@pytest.mark.property
def test_peaks_as_high_as_the_film_come_through() -> None:
    outcome = answer(peak="3 3", film="3")
    assert outcome.answers["film-verdict"].value == "through"
    assert "rusts" in outcome.cautions[0].text


@pytest.mark.derived
@pytest.mark.parametrize(
    ("peak", "film", "verdict"),
    [
        ("75 um", "4 mil", "deep"),  # 101.6 - 75 = 26.6 um over them, and 75 / 101.6 = 74 % in the profile
        ("2", "4", "covered"),  # half of it, and 2 mil over the highest
        ("2.01", "4", "deep"),
        ("1 2.9", "4", "covered"),  # the mean is 1.95 mil, under half; 1.1 mil over the highest
        ("1 3.1", "4", "close"),  # 0.9 mil over the highest
        ("2.5", "3", "close"),
    ],
)
def test_more_than_half_of_the_film_in_the_profile_is_not_called_well_covered(
    peak: str, film: str, verdict: str
) -> None:
    """The lines are ours: 1 mil over the highest peak, half of the film over the mean one. Common practice, no source."""
    outcome = answer(peak=peak, film=film)
    assert outcome.answers["film-verdict"].value == verdict
    assert "well" not in outcome.headline
    told = [one for one in outcome.cautions if one.key == "film"]
    assert [one.level for one in told] == ([] if verdict == "covered" else ["caution"])
    assert all("no source" in one.text and one.source == "common-practice" for one in told)


@pytest.mark.property
@pytest.mark.parametrize("film", ["0.005 in", "0.127 mm", "127 um"])
def test_the_film_may_be_typed_as_a_drawing_has_it(film: str) -> None:
    shown = [[one.text for one in answer(film=each).answers.values()] for each in (film, "5 mil")]
    assert shown[0] == shown[1]


@pytest.mark.property
def test_few_or_smooth_readings_and_beads_are_noted() -> None:
    assert ("note", "peak") in [(one.level, one.key) for one in answer(peak="1.5").cautions]
    assert ("caution", "peak") in [(one.level, one.key) for one in answer(peak="0.5 0.6 0.4").cautions]
    assert ("note", "abrasive-shape") in [
        (one.level, one.key) for one in answer(abrasive_shape="shot").cautions
    ]
    assert run(SLUG, {}).cautions == ()
