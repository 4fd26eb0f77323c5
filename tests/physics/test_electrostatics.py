"""Charge on a badly grounded conductor, against an ODE solver and the definitions of charge and energy."""

from __future__ import annotations

from math import exp, inf

import pytest
from scipy.integrate import quad, solve_ivp

from calculators.physics.electrostatics import (
    charged_to_kV,
    discharge_ms,
    spark_energy_mJ,
    voltage_that_lights_kV,
)


@pytest.mark.derived
@pytest.mark.parametrize(("capacitance_pF", "voltage_kV"), [(10, 10), (200, 20), (300, 5.5)])
def test_energy_is_the_work_of_charging(capacitance_pF: float, voltage_kV: float) -> None:
    """Work done on each bit of charge, the integral of V dq = C V dV from 0 to V, by quadrature (scipy)."""
    work, _ = quad(lambda volts: capacitance_pF * 1e-12 * volts, 0, voltage_kV * 1000)
    assert spark_energy_mJ(capacitance_pF, voltage_kV) == pytest.approx(work * 1000)


@pytest.mark.derived
@pytest.mark.parametrize("megohm", [1, 30, 700])
def test_charging_and_discharging_by_an_ode(megohm: float) -> None:
    """C dV/dt = I - V / R solved by scipy: after 20 time constants V = I R; switched off, 1/e is left after one."""
    resistance, capacitance, current = megohm * 1e6, 200e-12, 100e-6
    tau_s = discharge_ms(resistance, 200) / 1000
    up = solve_ivp(
        lambda t, v: (current - v / resistance) / capacitance, (0, 20 * tau_s), [0.0], rtol=1e-9, atol=1e-9
    )
    assert charged_to_kV(100, resistance, 1e9) == pytest.approx(up.y[0][-1] / 1000, rel=1e-6)
    down = solve_ivp(lambda t, v: -v / resistance / capacitance, (0, tau_s), [1.0], rtol=1e-9, atol=1e-12)
    assert down.y[0][-1] == pytest.approx(exp(-1), rel=1e-6)


@pytest.mark.property
def test_no_way_to_earth_gives_the_source_s_voltage_and_no_time() -> None:
    assert charged_to_kV(100, inf, 80) == 80
    assert charged_to_kV(0, inf, 80) == 0
    assert charged_to_kV(0, 1e6, 80) == 0
    assert discharge_ms(inf, 20) == inf


@pytest.mark.property
@pytest.mark.parametrize("energy_mJ", [0.5, 3, 20])
@pytest.mark.parametrize("capacitance_pF", [10, 200])
def test_there_and_back(energy_mJ: float, capacitance_pF: float) -> None:
    assert spark_energy_mJ(
        capacitance_pF, voltage_that_lights_kV(capacitance_pF, energy_mJ)
    ) == pytest.approx(energy_mJ)
