"""Thick sections: the slab's roots, and a pipe wall worked in a textbook."""

from math import cos, exp, pi, sin, tan

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.optimize import brentq

from calculators.physics.biot import (
    biot_number,
    core_lag_min,
    core_lag_share,
    slab_core_share,
    slab_factor,
    slab_root,
)


@pytest.mark.published
@pytest.mark.parametrize(
    ("biot", "zeta", "factor"), [(0.1, 0.3111, 1.0161), (0.3, 0.5218, 1.0450), (1.0, 0.8603, 1.1191)]
)
def test_slab__incropera_table_5_1(biot, zeta, factor):
    """Incropera and DeWitt, Table 5.1, plane wall (from memory; each value also worked outside this project)."""
    assert slab_root(biot) == pytest.approx(zeta, abs=6e-5)
    assert slab_factor(slab_root(biot)) == pytest.approx(factor, abs=6e-5)


@pytest.mark.derived
@given(st.floats(1e-6, 200))
def test_root__scipy_brentq(biot):
    """scipy.optimize.brentq as referee on zeta tan zeta = Bi."""
    exact = brentq(lambda zeta: zeta * sin(zeta) - biot * cos(zeta), 0.0, pi / 2, xtol=1e-14)
    assert slab_root(biot) == pytest.approx(exact, rel=1e-9)
    if biot < 50:
        assert slab_root(biot) * tan(slab_root(biot)) == pytest.approx(biot, rel=1e-6)


@pytest.mark.published
def test_pipe_wall__incropera_pipeline():
    """Incropera and DeWitt, the pipeline example: AISI 1010 wall, 40 mm, insulated outside, from -20 C, oil at
    60 C with h 500, after 480 s (rho 7832, c 434, k 63.9). Data seen in a university assignment
    (second-hand); printed answers 42.9 and 45.2 C and -7400 W/m2 from memory, read off coarse tables. Exact
    one-term values worked outside this project: 43.02, 45.36 C, -7319 W/m2, 2.725e7 J/m (pipe of 1 m)."""
    conductivity, density, heat, wall_m, oil_W_m2K = 63.9, 7832.0, 434.0, 0.040, 500.0
    biot = biot_number(oil_W_m2K, wall_m, conductivity)
    fourier = conductivity / (density * heat) * 480.0 / wall_m**2
    assert biot == pytest.approx(0.313, abs=5e-4)
    assert fourier == pytest.approx(5.64, abs=5e-3)
    zeta = slab_root(biot)
    assert zeta == pytest.approx(0.53189, abs=2e-5)
    assert slab_factor(zeta) == pytest.approx(1.04679, abs=2e-5)
    left = slab_core_share(biot, fourier)
    outside_degC = 60.0 - 80.0 * left
    inside_degC = 60.0 - 80.0 * left * cos(zeta)
    assert outside_degC == pytest.approx(43.02, abs=0.01)
    assert inside_degC == pytest.approx(45.36, abs=0.01)
    assert outside_degC == pytest.approx(42.9, abs=0.2)
    assert inside_degC == pytest.approx(45.2, abs=0.2)
    assert oil_W_m2K * (inside_degC - 60.0) == pytest.approx(-7319, abs=2)
    stored = 1.0 - sin(zeta) / zeta * left
    assert density * heat * pi * 1.0 * wall_m * 80.0 * stored == pytest.approx(2.725e7, rel=1e-3)
    # The lag is the time between the two faces' passing of one temperature.
    lag_s = 60.0 * core_lag_min(biot, wall_m, conductivity / (density * heat))
    later = slab_core_share(biot, fourier + lag_s * conductivity / (density * heat) / wall_m**2)
    assert later == pytest.approx(left * cos(zeta), rel=1e-9)
    assert core_lag_share(biot) == pytest.approx(
        (inside_degC - outside_degC) / (60.0 - outside_degC), rel=1e-9
    )


@pytest.mark.property
def test_small_biot_is_a_lump():
    """As Bi goes to 0 the slab becomes a lump: zeta^2 = Bi, C1 = 1, lag = L^2/(2 alpha), share = Bi/2."""
    assert slab_root(1e-5) ** 2 == pytest.approx(1e-5, rel=1e-4)
    assert slab_factor(slab_root(1e-5)) == pytest.approx(1.0, abs=1e-5)
    assert core_lag_min(1e-5, 0.01, 1e-5) == pytest.approx(0.01**2 / 1e-5 / 2 / 60, rel=1e-3)
    assert core_lag_min(1e-9, 0.01, 1e-5) == pytest.approx(0.01**2 / 1e-5 / 2 / 60, rel=1e-3)
    assert core_lag_share(1e-4) == pytest.approx(5e-5, rel=1e-3)
    assert slab_core_share(1e-4, 2000.0) == pytest.approx(exp(-0.2), rel=1e-3)
    assert slab_root(0.0) == 0.0
