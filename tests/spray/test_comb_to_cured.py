"""comb-to-cured through the door: a span times a factor, and a verdict only where the whole span agrees."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.spray.film_support import answer, cautions, number, refused

SLUG = "comb-to-cured"
MIL = 25.4
WANTED = {"low": "2 mil", "high": "4 mil"}


def span_um(key: str = "cured", **texts: str) -> tuple[float, float]:
    found = answer(SLUG, **texts).answers[key]
    assert found.low is not None
    assert found.high is not None
    return found.low * MIL, found.high * MIL


@pytest.mark.published
def test_a_comb_seller_s_example() -> None:
    """A comb seller's note (second-hand): teeth of 150 and 225 um at a factor of 0.5 cure to 75 to 112 um."""
    assert span_um(marked="150 um", clear="225 um", reduction="0.5") == (
        pytest.approx(75),
        pytest.approx(112, abs=0.6),
    )


@pytest.mark.derived
def test_a_layer_s_packing_gives_the_factor() -> None:
    """A raw layer of 700 kg/m3, of grains of 1500 kg/m3, weighs 140 g on 1 m2 at 200 um; melted without a pore the same 140 g is
    140 / 1.5 = 93.33 um thick: a factor of 0.467. The layer's 700 kg/m3 is a round figure, no source.
    """
    grams = 200 * 700 / 1000
    cured = grams / 1.5
    outcome = answer(SLUG, raw_known="200 um", cured_known=f"{cured!r} um")
    assert number(outcome, "reduction-used") == pytest.approx(700 / 1500)
    assert ("note", "raw-known") in cautions(outcome)


@pytest.mark.derived
def test_teeth_to_aim_for() -> None:
    """60 to 90 um wanted at 0.5: raw 120 to 180 um."""
    assert span_um("teeth-to-aim-for", low="60 um", high="90 um", reduction="0.5") == (
        pytest.approx(120),
        pytest.approx(180),
    )


@pytest.mark.derived
@pytest.mark.parametrize(
    ("marked", "clear", "verdict"),
    [
        ("2", "4", "spray-more"),  # cures to 1 to 2 and did not touch 2
        ("3", "6", "unsure"),  # 1.5 to 3
        ("4", "8", "right"),  # 2 to 4
        ("5", "7", "right"),
        ("6", "9", "unsure"),  # 3 to 4.5
        ("1", "20", "unsure"),
        ("8", "9", "unsure"),  # 4 to 4.5: four is still in the range
        ("9", "12", "wipe-off"),
    ],
)
def test_interval_arithmetic(marked: str, clear: str, verdict: str) -> None:
    """Half of each tooth against 2 to 4 mil, by hand: the comments give the span."""
    outcome = answer(SLUG, marked=f"{marked} mil", clear=f"{clear} mil", reduction="0.5", **WANTED)
    assert outcome.answers["verdict"].value == verdict


@pytest.mark.property
@settings(max_examples=60, deadline=None, derandomize=True)
@given(marked=st.floats(0.3, 40), step=st.floats(0.1, 20), reduction=st.floats(0.2, 0.9), raw=st.floats(0, 1))
def test_whatever_lies_between_the_teeth_lies_in_the_span(
    marked: float, step: float, reduction: float, raw: float
) -> None:
    outcome = answer(
        SLUG, marked=f"{marked!r}", clear=f"{marked + step!r}", reduction=f"{reduction!r}", **WANTED
    )
    low, high = span_um(marked=f"{marked!r}", clear=f"{marked + step!r}", reduction=f"{reduction!r}")
    film = (marked + raw * step) * reduction * MIL
    assert low * (1 - 1e-9) <= film <= high * (1 + 1e-9)
    mils = film / MIL
    match outcome.answers["verdict"].value:
        case "right":
            assert 2 * (1 - 1e-9) <= mils <= 4 * (1 + 1e-9)
        case "spray-more":
            assert mils <= 2 * (1 + 1e-9)
        case "wipe-off":
            assert mils > 4 * (1 - 1e-9)


def test_half_a_pair_and_teeth_the_wrong_way_round_are_refused() -> None:
    assert set(refused(SLUG, raw_known="6 mil")) == {"cured-known"}
    assert set(refused(SLUG, cured_known="3 mil")) == {"raw-known"}
    assert set(refused(SLUG, raw_known="3 mil", cured_known="6 mil")) == {"cured-known"}
    assert set(refused(SLUG, marked="7", clear="6")) == {"clear"}
    assert set(refused(SLUG, low="4 mil")) == {"high"}


def test_the_rule_of_thumb_is_called_one_and_a_thick_layer_warned_of() -> None:
    assert ("note", "reduction") in cautions(answer(SLUG))
    assert ("caution", "clear") in cautions(answer(SLUG, marked="20 mil", clear="24 mil"))


def test_a_thick_layer_is_said_in_plain_figures() -> None:
    outcome = answer(SLUG, marked="40 mil", clear="100 mil")
    assert outcome.headline == f"Wipe off, spray again: cures to {outcome.answers['cured'].text}"
    assert "1,270 um" in outcome.headline
