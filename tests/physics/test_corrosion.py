"""Loss of bare metal in a place's air: rows that stand elsewhere, and the laws that the formulas must keep."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.integrate import quad

from calculators.physics.corrosion import DoseResponse, loss_after_um, loss_terms_um
from calculators.tables import table

STEEL, ZINC = (
    DoseResponse(*table("corrosion_metals")[metal]["dose_response"]) for metal in ("steel", "zinc")
)


@pytest.mark.derived
@pytest.mark.parametrize(
    ("air", "steel", "zinc"),
    [
        ((10, 75, 5, 5), 23.22, 1.012),
        ((12, 75, 10, 30), 39.71, 1.586),
        ((15, 75, 10, 60), 48.01, 1.962),
        ((5, 80, 10, 10), 20.99, 1.354),
        ((25, 80, 10, 300), 146.3, 7.661),
    ],
)
def test_first_year(air: tuple[float, float, float, float], steel: float, zinc: float) -> None:
    """ISO 9223:2012 equations 1 and 2 (second-hand), put into numbers apart from this code: 1.77 Pd^0.52 exp(0.020 RH + f)
    + 0.102 Sd^0.62 exp(0.033 RH + 0.040 T) and zinc's. The column order is T, RH, Pd, Sd.
    """
    assert sum(loss_terms_um(STEEL, *air)) == pytest.approx(steel, rel=3e-4)
    assert sum(loss_terms_um(ZINC, *air)) == pytest.approx(zinc, rel=6e-4)


@pytest.mark.derived
def test_the_formula_written_out_once_more() -> None:
    """12 C, 75 %, 10 and 30 by a calculator's keys: 1.77 x 10^0.52 x e^(1.5 - 0.108) + 0.102 x 30^0.62 x e^(2.475 + 0.48)."""
    by_hand = 1.77 * 3.311311 * math.exp(1.392) + 0.102 * 8.238 * math.exp(2.955)
    assert sum(loss_terms_um(STEEL, 12, 75, 10, 30)) == pytest.approx(by_hand, rel=1e-4)


@pytest.mark.derived
@pytest.mark.parametrize(
    ("first", "exponent", "years", "loss"),
    [
        (25, 0.523, 10, 83.4),
        (25, 0.575, 10, 94.0),
        (25, 0.523, 20, 119.8),
        (25, 0.523, 50, 213.7),
        (1, 0.813, 20, 11.42),
        (1, 0.813, 50, 25.35),
    ],
)
def test_later_years(first: float, exponent: float, years: float, loss: float) -> None:
    """ISO 9224:2012 (second-hand): r t^b, and beyond 20 years r (20^b + b 20^(b-1) (t - 20)); worked apart from this code."""
    assert loss_after_um(first, exponent, years) == pytest.approx(loss, rel=6e-4)


@pytest.mark.property
@pytest.mark.parametrize("exponent", [0.523, 0.575, 0.813, 0.873])
def test_the_rate_after_twenty_years_is_the_rate_at_twenty(exponent: float) -> None:
    """The loss is its own rate added up (scipy's quadrature), without a step at 20 years."""

    def rate(year: float) -> float:
        return exponent * min(year, 20) ** (exponent - 1)

    grown = quad(rate, 1, 20)[0] + quad(rate, 20, 60)[0]
    assert loss_after_um(1, exponent, 60) == pytest.approx(1 + grown, rel=1e-8)
    assert loss_after_um(7, exponent, 1) == 7


@pytest.mark.property
@settings(max_examples=60, deadline=None, derandomize=True)
@given(
    air=st.floats(-17, 28), damp=st.floats(34, 93), sulfur=st.floats(0.7, 150), chloride=st.floats(0.4, 760)
)
def test_damper_and_dirtier_air_costs_more(air: float, damp: float, sulfur: float, chloride: float) -> None:
    for metal in (STEEL, ZINC):
        here = sum(loss_terms_um(metal, air, damp, sulfur, chloride))
        assert here > 0
        assert sum(loss_terms_um(metal, air, damp + 1, sulfur, chloride)) > here
        assert sum(loss_terms_um(metal, air, damp, sulfur * 1.1, chloride)) > here
        assert sum(loss_terms_um(metal, air, damp, sulfur, chloride * 1.1)) > here


@pytest.mark.property
@pytest.mark.parametrize("metal", [STEEL, ZINC])
def test_there_is_no_jump_at_ten_degrees(metal: DoseResponse) -> None:
    below, above = (sum(loss_terms_um(metal, air, 75, 10, 30)) for air in (10 - 1e-9, 10 + 1e-9))
    assert below == pytest.approx(above, rel=1e-7)
