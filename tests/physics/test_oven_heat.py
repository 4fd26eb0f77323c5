"""Heat stored and lost by an oven, and the dip of its air: worked cases, scipy, limits and laws."""

from dataclasses import replace
from math import exp, log

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.integrate import quad, solve_ivp

from calculators.physics.oven_dip import Loaded, dip_of
from calculators.physics.oven_heat import exhaust_kW, heat_limited_min, stored_kJ, wall_kW

STEEL = (425.0, 0.773, -1.69e-3, 2.22e-6)


@pytest.mark.derived
def test_heat_balance__worked_by_hand():
    """50 kg of steel, mean c 0.49 kJ/kgK, 180 K: 4,410 kJ = 1.225 kWh. 0.1 m3/s of air, 20 to 200 C, at 1.2 kg/m3 and 1.01
    kJ/kgK: 21.8 kW. Walls of 40 m2, U 0.5, 180 K: 3.6 kW."""
    assert stored_kJ(50, (490.0,), 20.0, 200.0) == pytest.approx(4410)
    assert stored_kJ(50, STEEL, 20.0, 200.0) == pytest.approx(4410, rel=1e-3)
    assert exhaust_kW(0.1, 180.0) == pytest.approx(21.8, abs=0.05)
    assert wall_kW(40.0, 0.5, 180.0) == pytest.approx(3.6)


@pytest.mark.derived
@pytest.mark.parametrize("coefficients", [STEEL, (903.0, 0.41), (515.0,)])
def test_stored_heat__scipy_quad(coefficients):
    """scipy.integrate.quad of the polynomial."""
    exact = quad(lambda degC: sum(c * degC**n for n, c in enumerate(coefficients)), -10.0, 230.0)[0] / 1000
    assert stored_kJ(7.0, coefficients, -10.0, 230.0) == pytest.approx(7 * exact, rel=1e-9)


@pytest.mark.derived
def test_fifty_pounds_in_twenty_minutes():
    """50 lb of steel (22.68 kg), 70 to 400 F (183.3 K), c 0.49: 2,037 kJ in 1,200 s is 1.70 kW."""
    heat = stored_kJ(50 * 0.45359237, (490.0,), (70 - 32) / 1.8, (400 - 32) / 1.8)
    assert heat_limited_min(heat, 1.70, 0.0) == pytest.approx(20, rel=0.005)


@pytest.mark.property
def test_losses_as_large_as_the_input_never_warm_anything():
    assert heat_limited_min(100.0, 5.0, 5.0) is None
    assert heat_limited_min(0.0, 5.0, 9.0) == 0.0
    assert heat_limited_min(100.0, 10.0, 5.0) == 2 * heat_limited_min(100.0, 15.0, 5.0)


LOADED = Loaded(204.4, 21.1, 180.0, 21.1, 30_000.0, 75.0, 156.0, 65_000.0, 95_000.0)


def by_scipy(oven):
    """The same two lumps by scipy's LSODA, the burner at its most until the air is back; after that it holds."""

    def rates(_, state):
        air, load, _ = state
        pull = oven.load_W_K * (air - load)
        net = oven.input_W - oven.loss_W_K * (air - oven.shop_degC) - pull
        return [net / oven.oven_J_K, pull / oven.load_J_K, oven.setting_degC - air]

    def back(_, state):
        return state[0] - oven.setting_degC

    back.terminal, back.direction = True, 1
    done = solve_ivp(
        rates, (0, 1e6), [oven.air_degC, oven.load_degC, 0.0], "LSODA", events=back, rtol=1e-8, atol=1e-8,
        max_step=oven.load_J_K / oven.load_W_K / 50,
    )  # fmt: skip
    assert done.status == 1
    deepest = max(oven.setting_degC - done.y[0])
    return deepest, 3 * done.y[2][-1] / deepest / 60


@pytest.mark.derived
@pytest.mark.parametrize(
    "change",
    [
        {},
        {"air_degC": 204.4},
        {"air_degC": 21.1},
        {"load_W_K": 500.0},
        {"oven_J_K": 20_000.0},
        {"input_W": 16_000.0},
        {"load_J_K": 300_000.0, "air_degC": 150.0},
    ],
    ids=str,
)
def test_dip__scipy(change):
    """scipy.integrate.solve_ivp of the same two equations, within 1.5 % (first-order steps, 200 in a time constant)."""
    oven = replace(LOADED, **change)
    deepest, recovery = by_scipy(oven)
    found = dip_of(oven)
    assert found.dip_K == pytest.approx(deepest, rel=0.015)
    assert found.recovery_min == pytest.approx(recovery, rel=0.015)


@pytest.mark.derived
def test_dip_without_steel__closed_form():
    """No steel: G (Ta - Tm) + k (Ta - Ts) = P at once, so Ta0 = (P + k Ts + G Tm)/(k + G). Then both rise as exponentials
    with C (k + G)/(k G): the missing degrees are (set - end) + (end - Ta0) e^(-t/tau) until they are none."""
    oven = replace(LOADED, oven_J_K=0.0, input_W=20_000.0)
    both = oven.loss_W_K + oven.load_W_K
    at_first = (oven.input_W + oven.loss_W_K * 21.1 + oven.load_W_K * 21.1) / both
    end = 21.1 + oven.input_W / oven.loss_W_K
    tau = oven.load_J_K * both / (oven.loss_W_K * oven.load_W_K)
    back = tau * log((end - at_first) / (end - oven.setting_degC))
    lost = (oven.setting_degC - end) * back + (end - at_first) * tau * (1 - exp(-back / tau))
    found = dip_of(oven)
    assert found.dip_K == pytest.approx(oven.setting_degC - at_first, rel=0.01)
    assert found.recovery_min * found.dip_K / 3 * 60 == pytest.approx(lost, rel=0.02)


@pytest.mark.property
def test_an_oven_that_cannot_hold_itself_has_no_dip():
    assert dip_of(replace(LOADED, input_W=75.0 * 183.0)) is None


@pytest.mark.property
def test_a_hot_oven_without_a_load_does_not_dip():
    at_setting = replace(LOADED, air_degC=204.4)
    for change in ({"load_W_K": 0.0}, {"load_J_K": 0.0}, {"load_degC": 204.4}):
        assert dip_of(replace(at_setting, **change)).dip_K == 0.0
    assert dip_of(replace(LOADED, load_W_K=0.0, oven_J_K=0.0, loss_W_K=0.0)).dip_K == 0.0


@pytest.mark.property
@settings(deadline=None, max_examples=60, derandomize=True)
@given(
    begins=st.floats(21.1, 204.4),
    power=st.floats(15_000, 90_000),
    draw=st.floats(5, 900),
    load=st.floats(5_000, 900_000),
    shell=st.floats(0, 500_000),
)
def test_more_heat_never_makes_it_worse(begins, power, draw, load, shell):
    """More power: no deeper and no more degree-minutes lost. The air is never under load and shop."""
    oven = replace(LOADED, air_degC=begins, input_W=power, load_W_K=draw, load_J_K=load, oven_J_K=shell)
    found, stronger = dip_of(oven), dip_of(replace(oven, input_W=1.3 * power))
    if found is None:
        return
    assert stronger is not None
    assert stronger.dip_K <= found.dip_K + 0.6
    assert stronger.dip_K * stronger.recovery_min <= found.dip_K * found.recovery_min * 1.02 + 1.0
    assert 0.0 <= found.dip_K <= oven.setting_degC - oven.shop_degC + 1e-6
