"""A part in an oven whose door is opened: closed forms of the linear case, scipy, and laws."""

from itertools import pairwise
from math import exp

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.integrate import solve_ivp

from calculators.physics.curve import Curve
from calculators.physics.heat import Part, Surroundings, temperature_curve
from calculators.physics.openings import opened_curve, spliced

PLATE = Part(7850, (480.0,), 0.003, 0.0)
OVEN = Surroundings(200.0, 25.0, recovery_min=5.0)


@pytest.mark.derived
def test_one_opening__closed_form():
    """No radiation, steady c: after the opening at 10 min the metal is behind by d (e^(-k s) - e^(-s/tau))/(k tau - 1), with
    k = 3/recovery, from T' = (S - d e^(-k s) - T)/tau less the same equation without the opening."""
    tau_min, k = 7850 * 480 * 0.003 / 25 / 60, 3 / 5
    shut, opened = (opened_curve(PLATE, OVEN, 20.0, openings, 30.0) for openings in ([], [10.0]))
    for since in (0.5, 2.0, 5.0, 12.0, 30.0):
        behind = 30.0 * (exp(-since / tau_min) - exp(-k * since)) / (k * tau_min - 1)
        assert shut.at(10 + since) - opened.at(10 + since) == pytest.approx(behind, abs=0.02)


@pytest.mark.derived
def test_three_openings__scipy():
    """Radiation, c(T), a first dip and three openings, two of them before the air is back: scipy's LSODA leg by leg."""
    part = Part(7850, (425.0, 0.773, -1.69e-3, 2.22e-6), 0.004, 0.9)
    oven = Surroundings(205.0, 18.0, exposure=0.5, dip_K=35.0, recovery_min=8.0)
    openings, door = [12.0, 14.0, 31.5], 40.0
    curve = opened_curve(part, oven, 21.0, openings, door)
    metal, begin, missing = 21.0, 0.0, 35.0
    for end in (*openings, 60.0):

        def slope(minute, state, begin=begin, missing=missing):
            air = 205.0 - missing * exp(-3 * (minute - begin) / 8.0)
            heat = 18.0 * (air - state[0])
            heat += 0.45 * 5.670374e-8 * ((air + 273.15) ** 4 - (state[0] + 273.15) ** 4)
            specific = 425.0 + 0.773 * state[0] - 1.69e-3 * state[0] ** 2 + 2.22e-6 * state[0] ** 3
            return [heat / (7850 * 0.004 * specific / 60)]

        grid = np.linspace(begin, end, 40)
        done = solve_ivp(slope, (begin, end), [metal], "LSODA", rtol=1e-9, atol=1e-9, t_eval=grid)
        for minute, expected in zip(grid, done.y[0], strict=True):
            assert curve.at(float(minute)) == pytest.approx(expected, abs=0.05), minute
        metal = done.y[0][-1]
        missing = missing * exp(-3 * (end - begin) / 8.0) + door
        begin = end


@pytest.mark.property
def test_no_openings_or_none_that_costs_is_the_shut_oven():
    shut = temperature_curve(PLATE, OVEN, 20.0)
    for openings, door, oven in (
        ([], 30.0, OVEN),
        ([5.0], 0.0, OVEN),
        ([5.0], 30.0, Surroundings(200.0, 25.0)),
    ):
        assert opened_curve(PLATE, oven, 20.0, openings, door).times_min == shut.times_min


@pytest.mark.property
@settings(deadline=None, max_examples=60, derandomize=True)
@given(
    openings=st.lists(st.floats(0.5, 90), min_size=1, max_size=4, unique=True).map(sorted),
    door=st.floats(1, 120),
    path=st.floats(0.0005, 0.02),
)
def test_an_opening_only_ever_delays(openings, door, path):
    """Cooler air never makes metal hotter; before the first opening nothing differs; after a bigger loss it is cooler."""
    part = Part(7850, (480.0,), path, 0.9)
    shut, once, more = (opened_curve(part, OVEN, 20.0, openings, loss) for loss in (0.0, door, 1.5 * door))
    for minute in np.linspace(0, 120, 121):
        at = float(minute)
        assert more.at(at) <= once.at(at) + 0.02 <= shut.at(at) + 0.04
        if at <= openings[0]:
            # a curve ends within 0.005 K of its oven
            assert once.at(at) == pytest.approx(shut.at(at), abs=0.006)
    assert all(later >= earlier for earlier, later in pairwise(once.times_min))


@pytest.mark.property
@pytest.mark.parametrize("minute", [0.0, 3.3, 5.0, 9.0])
def test_a_curve_spliced_to_its_own_rest_is_itself(minute):
    """Cut a cubic anywhere and go on along it: nothing changes."""
    whole = Curve([0.0, 5.0, 8.0], [20.0, 90.0, 110.0], [20.0, 9.0, 4.0])
    tail_min = [one for one in (5.0, 8.0) if one > minute]
    slope = (whole.at(minute + 1e-5) - whole.at(minute - 1e-5)) / 2e-5 if 0 < minute < 8 else 20.0
    rest = Curve(
        [0.0, *(one - minute for one in tail_min)] if tail_min else [0.0, 1.0],
        [whole.at(minute), *(whole.at(one) for one in tail_min)] if tail_min else [110.0, 110.0],
        [slope, *({5.0: 9.0, 8.0: 4.0}[one] for one in tail_min)] if tail_min else [0.0, 0.0],
    )
    joined = spliced(whole, minute, rest)
    for at in (0.5, 2.0, 3.3, 4.1, 5.0, 6.5, 8.0):
        assert joined.at(at) == pytest.approx(whole.at(at), abs=1e-3)
