"""Dip and recovery from readings of the air: scipy's own least squares is the referee."""

from math import exp
from random import Random

import numpy
import pytest
from scipy.optimize import curve_fit

from calculators.physics.heat import Surroundings
from calculators.physics.recovery import fit_recovery, recovering_air_degC

MINUTES = [0.0, 1.0, 2.0, 3.0, 4.0, 6.0, 8.0, 10.0, 12.0, 15.0]


def air(setting, dip, recovery, minutes=MINUTES, scatter=0.0, seed=0):
    """Written out here again from the definition: 5 % (e to the power -3) of the dip is left at the recovery time."""
    draw = Random(seed)
    return [
        setting - dip * exp(-3 * at / recovery) + (draw.gauss(0.0, scatter) if scatter else 0.0)
        for at in minutes
    ]


@pytest.mark.derived
@pytest.mark.parametrize("dip", [5.0, 30.0, 120.0])
@pytest.mark.parametrize("recovery", [2.0, 8.0, 25.0])
def test_a_clean_log_gives_its_values_back(dip, recovery):
    """Readings made from the definition with known numbers: both within 0.1 %."""
    fit = fit_recovery(MINUTES, air(204.4, dip, recovery), 204.4)
    assert fit.dip_K == pytest.approx(dip, rel=1e-3)
    assert fit.recovery_min == pytest.approx(recovery, rel=1e-3)


@pytest.mark.derived
@pytest.mark.parametrize("seed", range(10))
def test_against_scipy(seed):
    """scipy.optimize.curve_fit on the same noisy readings: values and standard errors."""
    readings = air(204.4, 45.0, 8.0, scatter=1.5, seed=seed)
    fit = fit_recovery(MINUTES, readings, 204.4)

    def model(at, dip, recovery):
        return 204.4 - dip * numpy.exp(-3 * at / recovery)

    values, covariance = curve_fit(model, MINUTES, readings, p0=(30.0, 6.0))
    assert (fit.dip_K, fit.recovery_min) == pytest.approx(tuple(values), rel=1e-4)
    assert (fit.dip_spread_K, fit.recovery_spread_min) == pytest.approx(
        (covariance[0, 0] ** 0.5, covariance[1, 1] ** 0.5), rel=1e-3
    )


@pytest.mark.property
def test_the_air_is_the_one_that_bakes_are_planned_with():
    """The plan's oven and the fit must mean the same by dip and recovery."""
    oven = Surroundings(204.4, 20.0, 1.0, 45.0, 8.0)
    for at in MINUTES:
        assert recovering_air_degC(204.4, 45.0, 8.0, at) == pytest.approx(oven.air_degC(at), rel=1e-12)


@pytest.mark.property
def test_a_known_scatter_is_the_least_that_is_claimed():
    clean = air(204.4, 45.0, 8.0)
    assert fit_recovery(MINUTES, clean, 204.4).recovery_spread_min < 1e-3
    one, two = (fit_recovery(MINUTES, clean, 204.4, scatter) for scatter in (1.0, 2.0))
    assert 0.05 < one.recovery_spread_min == pytest.approx(two.recovery_spread_min / 2)


@pytest.mark.parametrize(
    ("minutes", "readings", "cause"),
    [
        pytest.param([0, 1, 2], [150, 160, 170], "at least four", id="few"),
        pytest.param([0, 1, 1, 2], [150, 160, 160, 170], "must rise", id="same-minute"),
        pytest.param([-1, 1, 2, 3], [150, 160, 160, 170], "must rise", id="before-the-door-closed"),
        pytest.param([0, 1, 2, 3], [204.4, 204.4, 204.4, 204.4], "never reads clearly below", id="no-dip"),
        pytest.param([0, 1, 2, 3], [210, 211, 209, 210], "never reads clearly below", id="above"),
        pytest.param([0, 1, 2, 3], [150, 150, 150, 150], "how fast the air comes back", id="flat"),
        pytest.param(
            [0, 5, 10, 15], [150, 204.4, 204.4, 204.4], "how fast the air comes back", id="too-coarse"
        ),
    ],
)
def test_readings_that_cannot_tell(minutes, readings, cause):
    with pytest.raises(ValueError, match=cause):
        fit_recovery(minutes, readings, 204.4)
