"""The pulls of a bake: order, limits, and what the trade expects. Figures against scipy: test_referee.py."""

from dataclasses import replace
from itertools import pairwise

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from calculators.physics.bake import (
    SAFE_CREDIT_UNDER_COOLEST_K,
    AfterPull,
    credit_pull_min,
    earliest_pull_min,
    sheet_pull_min,
)
from calculators.physics.cure import Kinetics, cure_rate
from calculators.physics.curve import Curve
from calculators.physics.dose import Dose
from calculators.physics.heat import Part, Surroundings, temperature_curve
from calculators.tables import table

SHOP = Surroundings(21.0, 6.0)


def fahrenheit(temperature_degF: float) -> float:
    return (temperature_degF - 32.0) / 1.8


def coated(metal: str, heat_path_m: float) -> Part:
    row = table("metals")[metal]
    return Part(row["density_kg_m3"], row["specific_heat_J_kgK"], heat_path_m, 0.9)


@pytest.mark.published
def test_inch_steel_stays_over_300_F():
    """Common practice, no source: 1 in steel pulled at about 390 F stays over 300 F for 15 to 20 min."""
    after = AfterPull(temperature_curve(coated("carbon-steel", 0.0127), SHOP, 205.0), Kinetics(190, 80))
    assert 15 < after.minutes_to(fahrenheit(300), fahrenheit(390)) < 20


@pytest.mark.published
def test_oven_setting_must_be_above_the_target():
    """Common practice, no source: the oven must be set above the metal temperature wanted."""
    curve = temperature_curve(coated("carbon-steel", 0.003), Surroundings(fahrenheit(375), 20.0), 21.0)
    assert sheet_pull_min(curve, fahrenheit(375) + 0.1, 20.0) is None
    assert credit_pull_min(curve, Dose(curve, Kinetics(190.6, 80)), fahrenheit(375) + 0.1, 20.0) is None


@pytest.mark.derived
def test_part_already_at_the_oven_needs_exactly_the_schedule():
    """Metal at T_s from the first minute: t_eq = t, so 20 min make 20 min, and reach it at minute 0."""
    part, oven = coated("carbon-steel", 0.003), Surroundings(190.0, 20.0)
    curve = temperature_curve(part, oven, 190.0)
    dose = Dose(curve, Kinetics(190.0, 80.0, 200.0), 175.0)
    assert dose.time_to(20.0) == pytest.approx(20.0)
    assert sheet_pull_min(curve, 190.0, 20.0) == pytest.approx(20.0)
    assert credit_pull_min(curve, dose, 190.0, 20.0) == pytest.approx(20.0)


@pytest.mark.derived
def test_hotter_oven_settles_at_its_own_rate():
    """Long after the metal is at 200 C, each minute is worth the Arrhenius ratio of 200 to 190 C."""
    curve = temperature_curve(coated("carbon-steel", 0.003), Surroundings(200.0, 20.0), 21.0)
    dose = Dose(curve, Kinetics(190.0, 80.0))
    gained = dose.at(curve.end_min + 100.0) - dose.at(curve.end_min)
    assert gained == pytest.approx(100.0 * cure_rate(Kinetics(190.0, 80.0), 200.0), rel=3e-4)
    capped = Dose(curve, Kinetics(190.0, 80.0, 195.0))
    assert capped.final_rate == pytest.approx(cure_rate(Kinetics(190.0, 80.0), 195.0))


@pytest.mark.derived
def test_no_credit_under_the_threshold():
    """An oven at 170 C never comes to 175 C, so nothing is credited however long."""
    curve = temperature_curve(coated("carbon-steel", 0.003), Surroundings(170.0, 20.0), 21.0)
    dose = Dose(curve, Kinetics(190.0, 80.0), 175.0)
    assert dose.at(500.0) == 0.0
    assert dose.time_to(1.0) is None


@pytest.mark.derived
def test_hot_thing_in_a_dipped_oven_falls_and_comes_back():
    """A part put in at 180 C while the air is at 150 C cools first; counted minutes stop and start again."""
    oven = Surroundings(200.0, 20.0, 1.0, dip_K=50.0, recovery_min=30.0)
    curve = temperature_curve(coated("carbon-steel", 0.001), oven, 180.0)
    assert min(curve.temperatures_degC) < 172.0
    dose = Dose(curve, Kinetics(190.0, 80.0, 204.0), 175.0)
    below = curve.first_at_or_below(175.0)
    assert below is not None
    lowest = curve.times_min[curve.temperatures_degC.index(min(curve.temperatures_degC))]
    assert dose.at(lowest) == pytest.approx(dose.at(below), abs=1e-6)
    assert dose.at(60.0) > dose.at(lowest) + 20.0


@pytest.mark.derived
def test_dose_on_straight_steps_by_hand():
    """Ten minutes at 190 C, schedule 190 C: half way is 5 min, and the end goes on at the same rate."""
    dose = Dose(Curve((0.0, 10.0), (190.0, 190.0), (0.0, 0.0)), Kinetics(190.0, 80.0))
    assert dose.at(5.0) == pytest.approx(5.0)
    assert dose.at(25.0) == pytest.approx(25.0)
    assert dose.time_to(7.0) == pytest.approx(7.0)
    assert dose.time_to(0.0) == 0.0


BAKES = st.fixed_dictionaries(
    {
        "metal": st.sampled_from(["carbon-steel", "cast-iron", "aluminium", "stainless"]),
        "heat_path_m": st.floats(0.0005, 0.02),
        "exposure": st.sampled_from([1.0, 0.5, 0.25]),
        "oven_degC": st.floats(178, 235),
        "convection_W_m2K": st.floats(6, 40),
        "dip_K": st.floats(0, 60),
        "recovery_min": st.floats(0, 30),
        "schedule_degC": st.floats(165, 205),
        "schedule_min": st.floats(5, 40),
        "coolest_under_K": st.floats(0, 15),
        "activation_kJ_mol": st.floats(30, 180),
    }
)


@pytest.mark.property
@settings(deadline=None, max_examples=150)
@given(BAKES)
def test_order_of_the_pulls(bake):
    """Earliest pull <= credit pull, for any bake that both exist in; more airflow never makes it later."""
    coolest_degC = bake["schedule_degC"] - bake["coolest_under_K"]
    assume(bake["oven_degC"] > coolest_degC + 0.5)
    part = coated(bake["metal"], bake["heat_path_m"])
    powder = Kinetics(bake["schedule_degC"], bake["activation_kJ_mol"], bake["schedule_degC"] + 10.0)
    oven = Surroundings(
        bake["oven_degC"], bake["convection_W_m2K"], bake["exposure"], bake["dip_K"], bake["recovery_min"]
    )

    def pulls(around: Surroundings) -> tuple[float, float]:
        curve = temperature_curve(part, around, 21.0)
        after = AfterPull(
            temperature_curve(part, replace(SHOP, exposure=around.exposure), curve.peak_degC), powder
        )
        safe = Dose(curve, powder, coolest_degC - SAFE_CREDIT_UNDER_COOLEST_K)
        credit = credit_pull_min(curve, safe, coolest_degC, bake["schedule_min"])
        earliest = earliest_pull_min(curve, Dose(curve, powder), after, bake["schedule_min"])
        assert credit is not None
        assert earliest <= credit + 1e-9
        assert curve.at(credit) >= coolest_degC - 1e-6
        return earliest, credit

    earliest, credit = pulls(oven)
    slow_earliest, slow_credit = pulls(replace(oven, convection_W_m2K=0.75 * oven.convection_W_m2K))
    assert slow_earliest >= earliest - 0.002
    assert slow_credit >= credit - 0.002


@pytest.mark.property
@settings(deadline=None, max_examples=60)
@given(BAKES, st.floats(0.05, 3))
def test_dose_reads_both_ways_and_never_falls(bake, share):
    curve = temperature_curve(
        coated(bake["metal"], bake["heat_path_m"]),
        Surroundings(bake["oven_degC"], bake["convection_W_m2K"], 1.0, bake["dip_K"], bake["recovery_min"]),
        21.0,
    )
    powder = Kinetics(bake["schedule_degC"], bake["activation_kJ_mol"], bake["schedule_degC"] + 10.0)
    every, safe = Dose(curve, powder), Dose(curve, powder, bake["schedule_degC"] - 15.0)
    wanted = share * bake["schedule_min"]
    minute = every.time_to(wanted)
    assert minute is not None
    assert every.at(minute) == pytest.approx(wanted, rel=1e-5)
    totals = [every.at(minute * place / 50) for place in range(51)]
    assert all(later >= earlier - 1e-9 for earlier, later in pairwise(totals))
    assert safe.at(minute) <= every.at(minute) + 1e-5 * wanted


@pytest.mark.property
@settings(deadline=None, max_examples=40)
@given(BAKES, st.floats(100, 220), st.floats(1, 20))
def test_hotter_pull_gains_more_and_stays_hot_longer(bake, pull_degC, hotter_K):
    part = coated(bake["metal"], bake["heat_path_m"])
    powder = Kinetics(bake["schedule_degC"], bake["activation_kJ_mol"])
    after = AfterPull(temperature_curve(part, SHOP, 241.0), powder)
    assert after.cure_min(pull_degC + hotter_K) > after.cure_min(pull_degC)
    assert after.cure_min(30.0) == 0.0
    assert after.minutes_to(43.3, pull_degC + hotter_K) > after.minutes_to(43.3, pull_degC)
    assert after.minutes_to(pull_degC + 1.0, pull_degC) == 0.0
    assert after.minutes_to(20.0, pull_degC) is None  # the shop is at 21 C
