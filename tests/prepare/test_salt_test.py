"""salt-test through the door: the worked case, molar conductivity, and what scatter does to a verdict."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calculators import run
from tests.asking import asker, number

SLUG = "salt-test"
answer = asker(SLUG)


@pytest.mark.derived
def test_worked_case() -> None:
    """Blank 2, reading 10 uS/cm, 15 mL, 12.5 cm2: 5 kg/(m2 S) x 15e-6 m3 x 8e-4 S/m / 12.5e-4 m2 = 48 mg/m2 = 4.8 ug/cm2."""
    outcome = answer(blank="2", reading="10", water="15 mL", patch_area="12.5 cm2")
    assert number(outcome, "salt") == pytest.approx(48)
    assert "4.8 ug/cm2" in outcome.answers["salt"].text


@pytest.mark.published
@pytest.mark.parametrize(("water", "factor"), [("15 mL", 6), ("10 mL", 4), ("3 mL", 1.2)])
def test_factor_of_the_patch__iso_8502_9(water: str, factor: float) -> None:
    """ISO 8502-9, c = 5 kg/(m2 S) (from memory): 6, 4 and 1.2 mg/m2 for each uS/cm with 15, 10 and 3 mL on 12.5 cm2."""
    assert number(answer(water=water), "worth") == pytest.approx(factor)


@pytest.mark.published
def test_as_chloride__molar_conductivity_of_sodium_chloride() -> None:
    """CRC handbook, molar conductivity of NaCl at 25 C, 126.4 S cm2/mol (from memory), and molar mass of Cl, 35.45 g/mol.

    8e-4 S/m is 8e-4 / 126.4e-4 = 0.0633 mol/m3; x 35.45 g/mol x 15e-6 m3 / 12.5e-4 m2 = 26.9 mg/m2.
    """
    by_hand = 8e-4 / 126.4e-4 * 35.45 * 15e-6 / 12.5e-4 * 1000
    assert number(answer(), "as-chloride") == pytest.approx(by_hand, rel=1e-3)


@pytest.mark.published
@pytest.mark.parametrize(
    ("reading", "verdict"),
    [("8.8", "under"), ("9.1", "unsure"), ("9.5", "unsure"), ("11.5", "unsure"), ("11.9", "over")],
)
def test_forty_five_is_not_surely_under_fifty__nace_sp0508(reading: str, verdict: str) -> None:
    """SP0508-2008, 1.1.3: one result is good to 8.2 mg/m2 either way between 30 and 80 (preview text).

    50 - 8.2 = 41.8 mg/m2 is a rise of 6.97 uS/cm; 50 + 8.2 = 58.2 is 9.7.
    """
    outcome = answer(reading=reading, limit="50")
    assert outcome.answers["verdict"].value == verdict
    assert ("caution", "reading") in [(one.level, one.key) for one in outcome.cautions] or verdict != "over"


@pytest.mark.property
@settings(max_examples=40, deadline=None, derandomize=True)
@given(blank=st.floats(0, 100), rise=st.floats(0, 500), water=st.floats(0.5, 1000), area=st.floats(1, 10000))
def test_salt_goes_with_rise_and_water_and_against_area(
    blank: float, rise: float, water: float, area: float
) -> None:
    texts = {
        "blank": f"{blank!r}",
        "reading": f"{blank + rise!r}",
        "water": f"{water!r}",
        "patch_area": f"{area!r}",
    }
    outcome = answer(**texts)
    salt = number(outcome, "salt")
    assert salt == pytest.approx(0.5 * rise * water / area * 10, rel=1e-6, abs=1e-7)
    assert outcome.answers["salt"].low <= salt <= outcome.answers["salt"].high  # type: ignore[operator]
    if number(outcome, "reading-at-limit") <= 2000:
        at = answer(**(texts | {"reading": f"{number(outcome, 'reading-at-limit')!r}"}))
        assert number(at, "salt") == pytest.approx(50, rel=1e-6)


@pytest.mark.property
def test_a_limit_of_your_own_and_a_kit_without_scatter() -> None:
    assert answer(limit="other", other_limit="100 mg/m2").answers["verdict"].value == "under"
    assert answer(limit="other", other_limit="4.7 ug/cm2", scatter="0.01").answers["verdict"].value == "over"
    assert answer(limit="20").answers["verdict"].value == "over"


@pytest.mark.property
def test_a_reading_under_the_blank_is_refused_and_a_poor_blank_noted() -> None:
    outcome = run(SLUG, {"reading": "1"})
    assert [one.key for one in outcome.errors] == ["reading"]
    assert ("note", "blank") in [(one.level, one.key) for one in answer(blank="6", reading="20").cautions]


@pytest.mark.property
def test_a_large_result_reads_as_a_shop_reads_it() -> None:
    """5 x 15e-6 x 398e-4 / 12.5e-4 = 2,388 mg/m2; its scatter is the same share of it as 8.2 of 80, 245."""
    assert answer(reading="400").headline == "Over the limit: 2,390 mg/m2, give or take 240"
    assert answer().headline.endswith("48 mg/m2, give or take 8.2")


@pytest.mark.property
def test_a_patch_in_square_millimetres_and_a_limit_left_empty() -> None:
    assert number(answer(patch_area="1250 mm2"), "salt") == pytest.approx(48)
    (error,) = run(SLUG, {"limit": "other", "other-limit": ""}).errors
    assert error.message == "Enter the limit of your own"
