"""What a gun for 8 to 14 um sees, against numerical integration of Planck's law by scipy."""

from __future__ import annotations

from math import exp

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy import constants
from scipy.integrate import quad
from scipy.optimize import brentq

from calculators.physics.radiation import (
    _between,
    band_radiance_W_m2sr,
    gun_reading_degC,
    metal_behind_reading_degC,
    temperature_of_radiance_degC,
)


def by_quadrature(temperature_degC: float, low_um: float = 8.0, high_um: float = 14.0) -> float:
    """Planck's law with scipy's own constants, integrated over wavelength."""
    kelvin = temperature_degC + 273.15

    def spectral(wavelength_m: float) -> float:
        x = constants.h * constants.c / (wavelength_m * constants.k * kelvin)
        return 2 * constants.h * constants.c**2 / wavelength_m**5 / (exp(x) - 1)

    return float(quad(spectral, low_um * 1e-6, high_um * 1e-6, epsrel=1e-12)[0])


@pytest.mark.derived
@pytest.mark.parametrize(
    "temperature_degC", [-60, -18, 0, 20, 25, 50, 80, 100, 150, 180, 200, 260, 315, 400, 900]
)
def test_radiance_by_numerical_quadrature(temperature_degC: float) -> None:
    """scipy.integrate.quad over Planck's law with scipy.constants; the code sums a series instead."""
    assert band_radiance_W_m2sr(temperature_degC) == pytest.approx(by_quadrature(temperature_degC), rel=1e-8)


@pytest.mark.published
def test_a_wide_band_comes_to_stefan_boltzmann() -> None:
    """Stefan-Boltzmann law, sigma T^4 / pi with sigma = 5.670374419e-8 (CODATA 2018, from scipy.constants)."""
    for temperature_degC in (20.0, 200.0):
        whole = constants.sigma * (temperature_degC + 273.15) ** 4 / constants.pi
        # what lies over 20 mm and under 0.3 um is less than a millionth; 200 terms of the series leave a little more
        assert _between(0.3, 20_000.0, temperature_degC + 273.15) == pytest.approx(whole, rel=1e-4)


def reading_by_quadrature(true: float, emissivity: float, mirrored: float, setting: float) -> float:
    signal = emissivity * by_quadrature(true) + (1 - emissivity) * by_quadrature(mirrored)
    wanted = (signal - (1 - setting) * by_quadrature(mirrored)) / setting
    return float(brentq(lambda t: by_quadrature(t) - wanted, -90, 600, xtol=1e-9))


CASES = [  # true metal, emissivity, surroundings, setting: what the gun reads, C, to 0.1
    (200, 0.95, 20, 1.00, 193.6),
    (200, 0.90, 20, 0.95, 193.3),
    (200, 0.46, 20, 0.95, 126.4),
    (200, 0.30, 20, 0.95, 96.6),
    (180, 0.10, 20, 0.95, 46.3),
    (150, 0.30, 200, 0.95, 185.1),
]


@pytest.mark.derived
@pytest.mark.parametrize(("true", "emissivity", "mirrored", "setting", "reads"), CASES)
def test_what_the_gun_reads(
    true: float, emissivity: float, mirrored: float, setting: float, reads: float
) -> None:
    """Worked outside the project from S = eps f(T) + (1 - eps) f(Tr) with Planck's law over 8 to 14 um, and again here by
    scipy's quad and brentq. The fourth power would give 194.9, 194.6, 136.2, 107.0, 51.0 and 185.9."""
    assert reading_by_quadrature(true, emissivity, mirrored, setting) == pytest.approx(reads, abs=0.06)
    assert gun_reading_degC(true, emissivity, mirrored, setting) == pytest.approx(reads, abs=0.06)
    assert gun_reading_degC(true, emissivity, mirrored, setting) == pytest.approx(
        reading_by_quadrature(true, emissivity, mirrored, setting), abs=1e-4
    )


@pytest.mark.derived
@pytest.mark.parametrize(
    ("reading", "emissivity", "metal"),
    [(150, 0.80, 166.8), (120, 0.46, 187.7)],
    ids=["paint", "blasted-aluminium"],
)
def test_the_metal_behind_a_reading(reading: float, emissivity: float, metal: float) -> None:
    """Gun at 0.95, surroundings 25 C, worked outside the project by Planck's law over 8 to 14 um."""
    assert metal_behind_reading_degC(reading, 0.95, emissivity, 25.0) == pytest.approx(metal, abs=0.06)


@pytest.mark.derived
def test_the_exponent_of_the_band() -> None:
    """d ln f / d ln T by central difference of the quadrature: 3.81 at 100 C and 3.15 at 200 C, not 4."""
    for temperature, exponent in ((100.0, 3.81), (200.0, 3.15)):
        ratio = band_radiance_W_m2sr(temperature + 0.01) / band_radiance_W_m2sr(temperature - 0.01) - 1
        assert ratio / 0.02 * (temperature + 273.15) == pytest.approx(exponent, abs=0.006)


@pytest.mark.property
@settings(max_examples=80, deadline=None, derandomize=True)
@given(
    metal=st.floats(-20, 480), emissivity=st.floats(0.05, 1), mirrored=st.floats(-40, 315), setting=st.floats(0.1, 1),
    assumed=st.floats(-40, 315),
)  # fmt: skip
def test_there_and_back(
    metal: float, emissivity: float, mirrored: float, setting: float, assumed: float
) -> None:
    reading = gun_reading_degC(metal, emissivity, mirrored, setting, assumed)
    if reading is None or reading < -60:
        return
    back = metal_behind_reading_degC(reading, setting, emissivity, mirrored, assumed)
    assert back == pytest.approx(metal, abs=0.02)


@pytest.mark.property
def test_hotter_sends_out_more_and_the_temperature_comes_back() -> None:
    radiances = [band_radiance_W_m2sr(temperature) for temperature in range(-100, 1000, 7)]
    assert radiances == sorted(radiances)
    for temperature in range(-95, 600, 11):
        back = temperature_of_radiance_degC(band_radiance_W_m2sr(temperature))
        assert back == pytest.approx(temperature, abs=1e-3)


def test_no_temperature_sends_out_less_than_nothing() -> None:
    assert temperature_of_radiance_degC(-1.0) is None
    assert temperature_of_radiance_degC(1e9) is None
    # shiny metal at room heat in a hot oven: what it mirrors is already more than the gun was shown
    assert metal_behind_reading_degC(100.0, 0.95, 0.1, 200.0) is None
