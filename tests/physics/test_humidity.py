"""Dew point against a psychrometrics library, and turned round."""

from __future__ import annotations

import psychrolib
import pytest

from calculators.physics.humidity import air_at_dew_point_degC, dew_point_degC, humidity_at_dew_point_percent


@pytest.mark.published
@pytest.mark.parametrize("air", range(0, 41, 2))
def test_dew_point_by_a_psychrometrics_library(air: int) -> None:
    """psychrolib, GetTDewPointFromRelHum (ASHRAE Handbook, Fundamentals 2017, ch. 1, eqs 5 and 6), 20 to 95 %, within 0.2 C."""
    psychrolib.SetUnitSystem(psychrolib.SI)
    for humidity in range(20, 96, 3):
        library = psychrolib.GetTDewPointFromRelHum(float(air), humidity / 100)
        assert dew_point_degC(air, humidity) == pytest.approx(library, abs=0.2)


@pytest.mark.property
@pytest.mark.parametrize("air", [-20.0, 0.0, 5.0, 20.0, 35.0, 60.0])
@pytest.mark.parametrize("humidity", [1.0, 20.0, 55.0, 95.0, 100.0])
def test_there_and_back(air: float, humidity: float) -> None:
    dew = dew_point_degC(air, humidity)
    assert humidity_at_dew_point_percent(air, dew) == pytest.approx(humidity)
    assert air_at_dew_point_degC(dew, humidity) == pytest.approx(air, abs=1e-9)
    if air >= 0:
        assert dew <= air + 1e-12


@pytest.mark.property
def test_saturated_air_is_at_its_dew_point_and_drier_air_above_it() -> None:
    assert dew_point_degC(20, 100) == pytest.approx(20)
    rising = [dew_point_degC(20, humidity) for humidity in range(1, 101)]
    assert rising == sorted(rising)
