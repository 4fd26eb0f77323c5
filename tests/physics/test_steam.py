"""Steam in a closed space, against the check values of IF97 and two steam libraries."""

from __future__ import annotations

import CoolProp.CoolProp as coolprop
import pytest
from iapws import IAPWS97

from calculators.physics.steam import (
    liquid_share,
    saturated_liquid_kg_m3,
    saturated_vapour_kg_m3,
    saturation_pressure_kPa,
    vapour_density_kg_m3,
    vapour_pressure_kPa,
)

OVEN = [60.0, 93.0, 100.0, 121.0, 150.0, 177.0, 190.6, 200.0, 204.4, 232.0, 260.0, 290.0, 315.0]


@pytest.mark.published
@pytest.mark.parametrize(("kelvin", "MPa"), [(300, 0.353658941e-2), (500, 2.63889776), (600, 12.3443146)])
def test_saturation_by_the_check_values_of_the_release(kelvin: float, MPa: float) -> None:
    """IAPWS-IF97, Table 35 (from memory; the iapws library prints the same in its docstring)."""
    assert saturation_pressure_kPa(kelvin - 273.15) == pytest.approx(MPa * 1000, rel=2e-8)


@pytest.mark.published
@pytest.mark.parametrize(
    ("kelvin", "MPa", "m3_kg"),
    [(300, 0.0035, 39.4913866), (700, 0.0035, 92.3015898), (700, 30.0, 0.542946619e-2)],
)
def test_volume_by_the_check_values_of_the_release(kelvin: float, MPa: float, m3_kg: float) -> None:
    """IAPWS-IF97, Table 15, region 2 (the third seen in the iapws library's docstring, the others from memory)."""
    assert 1 / vapour_density_kg_m3(kelvin - 273.15, MPa * 1000) == pytest.approx(m3_kg, rel=2e-8)


@pytest.mark.derived
@pytest.mark.parametrize("temperature_degC", OVEN)
def test_saturation_by_two_libraries(temperature_degC: float) -> None:
    """iapws (IF97) to a millionth, and CoolProp (IAPWS-95, another formulation) within 0.1 %."""
    other = IAPWS97(T=temperature_degC + 273.15, x=1)
    pressure, vapour = saturation_pressure_kPa(temperature_degC), saturated_vapour_kg_m3(temperature_degC)
    assert pressure == pytest.approx(other.P * 1000, rel=1e-6)
    assert vapour == pytest.approx(1 / other.v, rel=1e-6)
    kelvin = temperature_degC + 273.15
    assert pressure == pytest.approx(coolprop.PropsSI("P", "T", kelvin, "Q", 1, "Water") / 1000, rel=1e-3)
    assert vapour == pytest.approx(coolprop.PropsSI("D", "T", kelvin, "Q", 1, "Water"), rel=1e-3)
    assert saturated_liquid_kg_m3(temperature_degC) == pytest.approx(
        coolprop.PropsSI("D", "T", kelvin, "Q", 0, "Water"), rel=1e-3
    )


@pytest.mark.derived
@pytest.mark.parametrize("temperature_degC", OVEN)
@pytest.mark.parametrize("share", [0.01, 0.2, 0.5, 0.8, 0.99])
def test_vapour_that_is_not_saturated_by_a_library(temperature_degC: float, share: float) -> None:
    """CoolProp (IAPWS-95): pressure of steam at a density under saturation, within 0.1 %."""
    density = share * saturated_vapour_kg_m3(temperature_degC)
    pressure = coolprop.PropsSI("P", "T", temperature_degC + 273.15, "D", density, "Water") / 1000
    assert vapour_pressure_kPa(temperature_degC, density * 0.004, 0.004) == pytest.approx(pressure, rel=1e-3)


@pytest.mark.property
@pytest.mark.parametrize("temperature_degC", OVEN)
def test_pressure_rises_with_water_to_saturation_and_no_further(temperature_degC: float) -> None:
    full = saturated_vapour_kg_m3(temperature_degC)
    pressures = [vapour_pressure_kPa(temperature_degC, full * tenth / 10, 1.0) for tenth in range(31)]
    assert pressures[0] == 0.0
    assert pressures == sorted(pressures)
    assert pressures[10:] == pytest.approx([saturation_pressure_kPa(temperature_degC)] * 21)
    assert pressures[9] < pressures[10]


@pytest.mark.property
def test_liquid_and_vapour_add_up_to_the_water() -> None:
    for temperature_degC in OVEN:
        for mass_kg in (0.001, 0.1, 0.5):
            share = liquid_share(temperature_degC, mass_kg, 0.001)
            held = share * saturated_liquid_kg_m3(temperature_degC)
            held += (1 - share) * saturated_vapour_kg_m3(temperature_degC)
            if share > 0:
                assert held * 0.001 == pytest.approx(mass_kg)
            else:
                assert held * 0.001 >= mass_kg * (1 - 1e-12)
