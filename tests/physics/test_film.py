"""The mass balance of a film, turned round, and how far a raw layer sinks."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calculators.physics.film import (
    coverage_m2_kg,
    film_from_mass_um,
    film_mass_kg,
)


@pytest.mark.derived
def test_one_micrometre_on_a_square_metre_at_specific_gravity_one_is_a_gram() -> None:
    """1e-6 m x 1 m2 x 1000 kg/m3 = 0.001 kg."""
    assert film_mass_kg(1, 1, 1) == pytest.approx(1e-6 * 1000)
    assert film_from_mass_um(0.001, 1, 1) == pytest.approx(1)


@pytest.mark.property
@settings(max_examples=100, deadline=None, derandomize=True)
@given(area=st.floats(1e-3, 1e4), film=st.floats(5, 1500), gravity=st.floats(0.8, 4))
def test_weight_and_film_are_each_other_s_inverse(area: float, film: float, gravity: float) -> None:
    assert film_from_mass_um(film_mass_kg(area, film, gravity), area, gravity) == pytest.approx(film)
    assert film_mass_kg(area, film, gravity) * coverage_m2_kg(film, gravity, 1) == pytest.approx(area)
