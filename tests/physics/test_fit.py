"""The oven coefficient from a log: scipy makes the log, so the fit is judged by another solver."""

from random import Random

import pytest
from scipy.integrate import solve_ivp

from calculators.physics.fit import fit_oven
from calculators.physics.heat import Part, Surroundings

SIGMA = 5.670374e-8
STEEL = Part(7850.0, (425.0, 0.773, -1.69e-3, 2.22e-6), 0.00635, 0.9)
IRON = Part(7200.0, (515.0,), 0.0079, 0.64)
ALUMINIUM = Part(2700.0, (903.0, 0.41), 0.003, 0.9)


def log_of(part: Part, oven: Surroundings, start_degC: float, minutes: list[float]) -> list[float]:
    """Metal temperatures by scipy.integrate.solve_ivp, Radau, rtol 1e-9."""

    def slope(minute: float, state: list[float]) -> list[float]:
        air = oven.air_degC(minute)
        heat = oven.convection_W_m2K * (air - state[0])
        heat += part.emissivity * oven.exposure * SIGMA * ((air + 273.15) ** 4 - (state[0] + 273.15) ** 4)
        specific_heat = sum(c * state[0] ** power for power, c in enumerate(part.specific_heat_J_kgK))
        return [60.0 * heat / (part.density_kg_m3 * part.heat_path_m * specific_heat)]

    solved = solve_ivp(slope, (0.0, minutes[-1]), [start_degC], "Radau", minutes, rtol=1e-9, atol=1e-9)
    return list(solved.y[0])


@pytest.mark.derived
@pytest.mark.parametrize("convection", [4.0, 10.0, 20.0, 45.0])
@pytest.mark.parametrize("part", [STEEL, IRON, ALUMINIUM], ids=["steel", "iron", "aluminium"])
@pytest.mark.parametrize("dip_K", [0.0, 30.0])
def test_coefficient_comes_back(part, convection, dip_K):
    """Within 2 % from a clean log."""
    oven = Surroundings(204.4, convection, 0.5, dip_K, 8.0 if dip_K else 0.0)
    minutes = [float(minute) for minute in range(0, 31, 2)]
    fit = fit_oven(
        minutes, log_of(part, oven, 21.0, minutes), part, Surroundings(204.4, 99.0, 0.5, dip_K, 8.0)
    )
    assert fit.convection_W_m2K == pytest.approx(convection, rel=0.02)
    assert fit.start_degC == pytest.approx(21.0, abs=0.2)
    assert fit.spread_W_m2K < 0.05 * convection


@pytest.mark.derived
@pytest.mark.parametrize("seed", range(12))
def test_with_noise(seed):
    """Readings with a scatter of 3 F (one standard deviation) give it within 10 %, and a spread that says so."""
    draw = Random(seed)
    oven = Surroundings(204.4, 20.0)
    minutes = [float(minute) for minute in range(0, 31, 2)]
    noisy = [metal + draw.gauss(0.0, 3.0 / 1.8) for metal in log_of(STEEL, oven, 21.0, minutes)]
    fit = fit_oven(minutes, noisy, STEEL, oven)
    assert fit.convection_W_m2K == pytest.approx(20.0, rel=0.10)
    assert abs(fit.convection_W_m2K - 20.0) < 4.0 * fit.spread_W_m2K
    assert 0.4 < fit.residual_K / (3.0 / 1.8) < 1.7


@pytest.mark.derived
def test_spread_is_the_scatter_of_many_fits():
    """Mean of the stated standard errors against the true scatter of 60 fits."""
    draw = Random(7)
    oven = Surroundings(204.4, 20.0)
    minutes = [float(minute) for minute in range(0, 31, 3)]
    clean = log_of(STEEL, oven, 21.0, minutes)
    fits = [
        fit_oven(minutes, [metal + draw.gauss(0.0, 1.67) for metal in clean], STEEL, oven) for _ in range(60)
    ]
    mean = sum(fit.convection_W_m2K for fit in fits) / 60
    scatter = (sum((fit.convection_W_m2K - mean) ** 2 for fit in fits) / 59) ** 0.5
    stated = sum(fit.spread_W_m2K for fit in fits) / 60
    assert stated == pytest.approx(scatter, rel=0.35)


@pytest.mark.derived
def test_log_that_starts_late_and_with_one_bad_start():
    """First reading 6 min after the door closed, and 8 K wrong: the start is fitted, not believed."""
    oven = Surroundings(204.4, 20.0, 1.0, 40.0, 10.0)
    minutes = [0.0, *[float(minute) for minute in range(6, 37, 2)]]
    readings = log_of(STEEL, oven, 21.0, minutes)[1:]
    fit = fit_oven(minutes[1:], readings, STEEL, oven)
    assert fit.convection_W_m2K == pytest.approx(20.0, rel=0.02)
    readings[0] += 8.0
    assert fit_oven(minutes[1:], readings, STEEL, oven).convection_W_m2K == pytest.approx(20.0, rel=0.10)


@pytest.mark.parametrize(
    ("minutes", "readings", "cause"),
    [
        pytest.param([0, 5, 10], [20, 60, 100], "at least four", id="few"),
        pytest.param([0, 5, 5, 10], [20, 60, 60, 100], "must rise", id="same-minute"),
        pytest.param([0, 5, 10, 15], [200, 201, 202, 202], "hardly changed", id="flat"),
        pytest.param([0, 5, 10, 15], [120, 90, 60, 40], "no oven coefficient fits", id="falling"),
        pytest.param([0, 0.01, 0.02, 0.03], [20, 199, 200, 201], "no oven coefficient fits", id="jump"),
    ],
)
def test_logs_that_cannot_tell(minutes, readings, cause):
    with pytest.raises(ValueError, match=cause):
        fit_oven(minutes, readings, STEEL, Surroundings(204.4, 20.0))


@pytest.mark.derived
def test_a_known_scatter_stands_in_where_the_readings_show_none():
    """A clean log with the scatter given: its spread is the true scatter of 60 fits to noisy logs."""
    draw = Random(3)
    oven = Surroundings(204.4, 20.0)
    minutes = [0.0, 3.0, 6.0, 9.0, 12.0]
    clean = log_of(STEEL, oven, 21.0, minutes)
    stated = fit_oven(minutes, clean, STEEL, oven, 1.11).spread_W_m2K
    fits = [
        fit_oven(minutes, [metal + draw.gauss(0.0, 1.11) for metal in clean], STEEL, oven) for _ in range(60)
    ]
    mean = sum(fit.convection_W_m2K for fit in fits) / 60
    assert stated == pytest.approx(
        (sum((fit.convection_W_m2K - mean) ** 2 for fit in fits) / 59) ** 0.5, rel=0.25
    )
