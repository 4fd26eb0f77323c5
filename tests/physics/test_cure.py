"""Cure speed and equivalent minutes, against a table worked outside this project and worked profiles."""

from itertools import pairwise
from math import inf

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.integrate import quad

from calculators.physics.cure import Kinetics, activation_energy_kJ_mol, cure_rate, minutes_needed
from calculators.physics.logged import (
    LONGEST_FALLING_GAP_MIN,
    logged_equivalents_min,
    straight_equivalent_min,
)

# Multiply the minutes at 200 C by this at 190, 180, 170, 160 C; divide by the last at 210 C. Worked with a
# calculator from the Arrhenius relation, R = 8.314462618 J/(mol K); printed to four figures.
RATIOS = {
    60: (1.390, 1.960, 2.808, 4.090, 1.371),
    70: (1.468, 2.193, 3.335, 5.172, 1.445),
    80: (1.551, 2.454, 3.962, 6.540, 1.523),
    90: (1.639, 2.745, 4.706, 8.270, 1.606),
    100: (1.731, 3.071, 5.589, 10.46, 1.692),
    120: (1.932, 3.843, 7.885, 16.72, 1.880),
}

# A worked bake, minutes and C, straight between points.
PROFILE_min = (0, 5, 8, 10, 12, 15, 20, 24, 26, 30)
PROFILE_degC = (20, 120, 160, 180, 190, 195, 198, 198, 150, 80)


@pytest.mark.derived
@pytest.mark.parametrize("activation_kJ_mol", RATIOS)
def test_table_of_ratios(activation_kJ_mol):
    """Arrhenius ratios worked outside this project (table above)."""
    powder = Kinetics(200.0, float(activation_kJ_mol))
    *slower, faster = RATIOS[activation_kJ_mol]
    for metal_degC, ratio in zip((190.0, 180.0, 170.0, 160.0), slower, strict=True):
        assert minutes_needed(powder, 1.0, metal_degC) == pytest.approx(ratio, rel=5e-4)
    assert cure_rate(powder, 210.0) == pytest.approx(faster, rel=5e-4)


@pytest.mark.derived
@pytest.mark.parametrize(
    ("first", "second", "expected_kJ_mol"),
    [
        pytest.param((200, 10), (190, 15), 73.9, id="polyester-short"),
        pytest.param((200, 10), (190, 20), 126.3, id="polyester-long"),
        pytest.param(((400 - 32) / 1.8, 10), ((375 - 32) / 1.8, 15), 53.8, id="urethane"),
        pytest.param((200, 10), (180, 20), 61.8, id="10-at-200-20-at-180"),
        pytest.param((200, 10), (170, 30), 63.8, id="10-at-200-30-at-170"),
    ],
)
def test_activation_energy(first, second, expected_kJ_mol):
    """Schedules seen on data sheets (excerpt) or supplier data quoted by others; the energies were worked
    from them outside this project."""
    assert activation_energy_kJ_mol(*first, *second) == pytest.approx(expected_kJ_mol, abs=0.06)
    assert activation_energy_kJ_mol(*second, *first) == pytest.approx(expected_kJ_mol, abs=0.06)


@pytest.mark.parametrize(
    ("points", "cause"),
    [
        pytest.param((190, 20, 190, 10), "same temperature", id="equal"),
        pytest.param((190, 10, 204, 12), "hotter schedule point must take less", id="longer-when-hotter"),
        pytest.param((190, 10, 204, 10), "hotter schedule point must take less", id="same-time"),
        pytest.param((190, 0, 204, 10), "more than zero", id="no-time"),
    ],
)
def test_activation_energy_refuses(points, cause):
    with pytest.raises(ValueError, match=cause):
        activation_energy_kJ_mol(*points)


@pytest.mark.derived
@pytest.mark.parametrize(("activation_kJ_mol", "expected_min"), [(80.0, 12.72), (100.0, 11.75)])
def test_worked_profile(activation_kJ_mol, expected_min):
    """The bake above at 200 C: 12.72 min for 80 kJ/mol, 11.75 for 100, integrated outside this project."""
    totals = logged_equivalents_min(PROFILE_min, PROFILE_degC, Kinetics(200.0, activation_kJ_mol))
    assert totals[-1] == pytest.approx(expected_min, abs=0.005)
    assert totals[0] == 0.0


@pytest.mark.derived
@settings(deadline=None, max_examples=80)
@given(
    start_degC=st.floats(15, 240),
    end_degC=st.floats(15, 240),
    minutes=st.floats(0.1, 60),
    activation_kJ_mol=st.floats(30, 180),
    credit_degC=st.one_of(st.just(-inf), st.floats(150, 200)),
)
def test_straight_line__scipy_quad(start_degC, end_degC, minutes, activation_kJ_mol, credit_degC):
    """scipy.integrate.quad as referee, cuts given to it, to 1e-6."""
    powder = Kinetics(190.0, activation_kJ_mol, 204.0)

    def rate(share: float) -> float:
        metal_degC = start_degC + (end_degC - start_degC) * share
        return cure_rate(powder, metal_degC) if metal_degC >= credit_degC else 0.0

    span = end_degC - start_degC
    cuts = sorted(
        share for level in (204.0, credit_degC) if span and 0 < (share := (level - start_degC) / span) < 1
    )
    edges = [0.0, *cuts, 1.0]
    exact = minutes * sum(quad(rate, low, high, epsrel=1e-10, epsabs=0)[0] for low, high in pairwise(edges))
    total = logged_equivalents_min((0.0, minutes), (start_degC, end_degC), powder, credit_degC)[-1]
    assert total == pytest.approx(exact, rel=2e-6, abs=1e-9)


@pytest.mark.property
@given(metal_degC=st.floats(100, 230), minutes=st.floats(0.5, 90), activation_kJ_mol=st.floats(30, 180))
@settings(deadline=None, max_examples=50)
def test_steady_metal_at_the_schedule_makes_its_own_minutes(metal_degC, minutes, activation_kJ_mol):
    """Constant temperature T_s gives t_eq = t."""
    powder = Kinetics(metal_degC, activation_kJ_mol)
    assert straight_equivalent_min(powder, minutes, metal_degC, metal_degC) == pytest.approx(minutes)
    assert logged_equivalents_min((0, minutes), (metal_degC,) * 2, powder)[-1] == pytest.approx(minutes)


@pytest.mark.property
@given(st.lists(st.tuples(st.floats(0.1, 9), st.floats(15, 240)), min_size=2, max_size=12))
@settings(deadline=None, max_examples=60)
def test_safe_minutes_never_exceed_all_minutes_and_totals_never_fall(steps):
    times, clock = [], 0.0
    for gap, _ in steps:
        clock += gap
        times.append(clock)
    readings = [metal for _, metal in steps]
    powder = Kinetics(190.0, 80.0, 204.0)
    every = logged_equivalents_min(times, readings, powder)
    safe = logged_equivalents_min(times, readings, powder, 175.0, LONGEST_FALLING_GAP_MIN)
    assert all(later >= earlier for earlier, later in pairwise(every))
    assert all(later >= earlier for earlier, later in pairwise(safe))
    assert all(some <= whole + 1e-9 for some, whole in zip(safe, every, strict=True))


@pytest.mark.property
def test_more_readings_on_the_same_lines_change_nothing():
    powder = Kinetics(200.0, 80.0)
    times, readings = [], []
    for place in range(len(PROFILE_min) - 1):
        for tenth in range(10):
            share = tenth / 10
            times.append(PROFILE_min[place] + share * (PROFILE_min[place + 1] - PROFILE_min[place]))
            readings.append(PROFILE_degC[place] + share * (PROFILE_degC[place + 1] - PROFILE_degC[place]))
    times.append(PROFILE_min[-1])
    readings.append(PROFILE_degC[-1])
    coarse = logged_equivalents_min(PROFILE_min, PROFILE_degC, powder)[-1]
    assert logged_equivalents_min(times, readings, powder)[-1] == pytest.approx(coarse, rel=1e-6)


@pytest.mark.derived
def test_rate_is_held_above_the_hottest_point():
    """10 min at 220 C with a sheet that ends at 204.4 C are worth 10 min at 204.4 C."""
    powder = Kinetics(190.6, 80.0, 204.4)
    held = logged_equivalents_min((0, 10), (220, 220), powder)[-1]
    assert held == pytest.approx(10 * cure_rate(powder, 204.4))
    assert held < logged_equivalents_min((0, 10), (220, 220), Kinetics(190.6, 80.0))[-1]


@pytest.mark.derived
def test_a_long_falling_gap_earns_no_safe_credit():
    """At 190 C steady, 10 min count; then a fall to 185 C in 6 min counts nothing, in 5 min it counts."""
    powder = Kinetics(190.0, 80.0)
    long_gap = logged_equivalents_min((0, 10, 16), (190, 190, 185), powder, 175.0, LONGEST_FALLING_GAP_MIN)
    short_gap = logged_equivalents_min((0, 10, 15), (190, 190, 185), powder, 175.0, LONGEST_FALLING_GAP_MIN)
    rising = logged_equivalents_min((0, 10, 16), (190, 190, 195), powder, 175.0, LONGEST_FALLING_GAP_MIN)
    assert long_gap == pytest.approx([0, 10, 10])
    assert short_gap[-1] > 14
    assert rising[-1] > 16


def test_times_must_rise():
    with pytest.raises(ValueError, match="must rise"):
        logged_equivalents_min((0, 5, 4), (190, 190, 190), Kinetics(190, 80))
