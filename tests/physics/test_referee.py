"""Every time and every equivalent minute of a bake, against scipy's stiff solver on 72 bakes.

The referee is scipy.integrate.solve_ivp (Radau, rtol 1e-9) on the equations as stated, with its own metal
figures, its own integration of the cure on a fine grid, and scipy's root finder; it shares no code with
what it judges. 0.5 % is demanded of the answers; the steps themselves are shown converged to 0.1 %.
"""

from math import exp
from random import Random

import numpy as np
import pytest
from scipy.integrate import cumulative_simpson, solve_ivp
from scipy.optimize import brentq

from calculators.physics.bake import AfterPull, credit_pull_min, earliest_pull_min, sheet_pull_min
from calculators.physics.cure import Kinetics
from calculators.physics.dose import Dose
from calculators.physics.heat import Part, Surroundings, heat_path_m, temperature_curve

METALS = {  # density, coefficients of specific heat: EN 1993-1-2, EN 1999-1-2 and handbook means
    "carbon-steel": (7850.0, (425.0, 0.773, -1.69e-3, 2.22e-6)),
    "cast-iron": (7200.0, (515.0,)),
    "aluminium": (2700.0, (903.0, 0.41)),
    "stainless": (7900.0, (450.0, 0.28, -2.91e-4, 1.34e-7)),
    "zinc-die-cast": (6600.0, (425.0,)),
    "copper-brass": (8530.0, (393.0,)),
}
SHAPES = {"both-sides": 2.0, "one-side": 1.0, "round-bar": 4.0, "square-bar": 4.0}
GRID = 20_001
SIGMA = 5.670374e-8
GAS = 8.314462618


def bakes() -> list:
    """72 bakes: every metal with every shape three times, the rest drawn with a fixed seed."""
    draw = Random(20260115)
    cases = []
    for metal in METALS:
        for shape in SHAPES:
            for _ in range(3):
                oven_degC = draw.choice([195.0, 204.4, 218.3])
                case = {
                    "metal": metal,
                    "shape": shape,
                    "thickness_m": draw.choice([0.0016, 0.0032, 0.00635, 0.0127, 0.0159, 0.0254]),
                    "emissivity": draw.choice([0.9, 0.28]),
                    "oven_degC": oven_degC,
                    "convection_W_m2K": draw.choice([7.5, 10.0, 20.0, 25.0, 31.25]),
                    "exposure": draw.choice([1.0, 0.5, 0.25]),
                    "dip_K": draw.choice([0.0, 15.0, 55.0]),
                    "recovery_min": draw.choice([2.0, 6.0, 15.0, 30.0]),
                    "schedule": draw.choice([(190.6, 20.0, 60.0), (190.6, 15.0, 80.0), (180.0, 12.0, 120.0)]),
                }
                name = f"{metal}-{shape}-{case['thickness_m'] * 1000:g}mm-{oven_degC:g}C-{len(cases)}"
                cases.append(pytest.param(case, id=name))
    return cases


class Referee:
    """The same bake by scipy."""

    def __init__(self, case: dict) -> None:
        self.case = case
        density, self.coefficients = METALS[case["metal"]]
        path_m = case["thickness_m"] / SHAPES[case["shape"]]
        self.storage = density * path_m / 60.0
        self.schedule_degC, self.schedule_min, activation = case["schedule"]
        self.hottest_degC = self.schedule_degC + 14.0
        self.per_K = activation * 1000.0 / GAS
        longest = 25.0 * self.storage * 1000.0 / case["convection_W_m2K"] + 3.0 * case["recovery_min"] + 60.0
        oven = solve_ivp(
            self.in_oven, (0.0, longest), [21.0], method="Radau", rtol=1e-9, atol=1e-9, dense_output=True
        )
        self.oven = oven.sol
        self.minutes = np.linspace(0.0, longest, GRID)
        self.metal_degC = oven.sol(self.minutes)[0]
        self.made = cumulative_simpson(self.rate(self.metal_degC), x=self.minutes, initial=0.0)
        cooling_min = 40.0 * self.storage * 1000.0 / 6.0
        shop = solve_ivp(
            self.in_shop,
            (0.0, cooling_min),
            [case["oven_degC"]],
            method="Radau",
            rtol=1e-9,
            atol=1e-9,
            dense_output=True,
        )
        # Dense where it is hot, where the cure is.
        self.cool_minutes = cooling_min * np.linspace(0.0, 1.0, GRID) ** 3
        self.cool_degC = shop.sol(self.cool_minutes)[0]
        self.cool_made = cumulative_simpson(self.rate(self.cool_degC), x=self.cool_minutes, initial=0.0)

    def specific_heat(self, metal_degC: float) -> float:
        return sum(c * metal_degC**power for power, c in enumerate(self.coefficients))

    def slope(self, metal_degC: float, air_degC: float, convection: float) -> float:
        radiant = self.case["exposure"] * self.case["emissivity"] * SIGMA
        heat = convection * (air_degC - metal_degC) + radiant * (
            (air_degC + 273.15) ** 4 - (metal_degC + 273.15) ** 4
        )
        return heat / (self.storage * self.specific_heat(metal_degC))

    def in_oven(self, minute: float, state: list) -> list:
        air = self.case["oven_degC"] - self.case["dip_K"] * exp(-3.0 * minute / self.case["recovery_min"])
        return [self.slope(state[0], air, self.case["convection_W_m2K"])]

    def in_shop(self, _minute: float, state: list) -> list:
        return [self.slope(state[0], 21.0, 6.0)]

    def rate(self, metal_degC: np.ndarray) -> np.ndarray:
        held = np.minimum(metal_degC, self.hottest_degC)
        return np.exp(self.per_K * (1.0 / (self.schedule_degC + 273.15) - 1.0 / (held + 273.15)))

    def made_by(self, minute: float) -> float:
        return float(np.interp(minute, self.minutes, self.made))

    def reach_min(self, metal_degC: float) -> float:
        return brentq(lambda minute: self.oven(minute)[0] - metal_degC, 0.0, self.minutes[-1], xtol=1e-9)

    def cool_min(self, metal_degC: float) -> float:
        return float(np.interp(-metal_degC, -self.cool_degC, self.cool_minutes))

    def after_pull(self, pull_degC: float) -> float:
        """Minutes gained from the pull down to 60 C, below which none count."""
        pulled, ended = np.interp(
            [self.cool_min(pull_degC), self.cool_min(60.0)], self.cool_minutes, self.cool_made
        )
        return float(ended - pulled)

    def root(self, difference) -> float:
        return brentq(difference, 0.0, self.minutes[-1], xtol=1e-9)


@pytest.mark.derived
@pytest.mark.parametrize("case", bakes())
def test_bake_against_scipy(case):
    referee = Referee(case)
    schedule_degC, schedule_min, activation = case["schedule"]
    density, coefficients = METALS[case["metal"]]
    part = Part(density, coefficients, heat_path_m(case["shape"], case["thickness_m"]), case["emissivity"])
    oven = Surroundings(
        case["oven_degC"], case["convection_W_m2K"], case["exposure"], case["dip_K"], case["recovery_min"]
    )
    shop = Surroundings(21.0, 6.0, case["exposure"])
    powder = Kinetics(schedule_degC, activation, schedule_degC + 14.0)
    curve = temperature_curve(part, oven, 21.0)
    dose, safe = Dose(curve, powder), Dose(curve, powder, schedule_degC - 15.0)
    after = AfterPull(temperature_curve(part, shop, case["oven_degC"]), powder)

    # The curve itself, converged to 0.1 % of the oven's rise, at places not its own.
    for minute in np.linspace(0.0, curve.end_min, 41):
        if minute < referee.minutes[-1]:
            assert curve.at(minute) == pytest.approx(float(referee.oven(minute)[0]), abs=0.18)
            assert dose.at(minute) == pytest.approx(referee.made_by(minute), rel=1e-3, abs=2e-3)

    # Times to temperatures.
    for metal_degC in (100.0, 148.9, schedule_degC):
        assert curve.first_at_or_above(metal_degC) == pytest.approx(referee.reach_min(metal_degC), rel=1e-3)
    assert sheet_pull_min(curve, schedule_degC, schedule_min) == pytest.approx(
        referee.reach_min(schedule_degC) + schedule_min, rel=1e-3
    )

    # Safe credit: all minutes after the metal has passed the threshold, which it passes once.
    threshold_min = referee.reach_min(schedule_degC - 15.0)
    uncounted = referee.made_by(threshold_min)
    made = referee.root(lambda minute: referee.made_by(minute) - uncounted - schedule_min)
    expected = max(made, referee.reach_min(schedule_degC))
    credit = credit_pull_min(curve, safe, schedule_degC, schedule_min)
    assert credit == pytest.approx(expected, rel=1e-3)

    # What the part gains after pulls all the way down, and how long it stays hot.
    for pull_degC in (case["oven_degC"] - 1.0, schedule_degC, schedule_degC - 20.0, 150.0):
        gained = referee.after_pull(pull_degC)
        assert after.cure_min(pull_degC) == pytest.approx(gained, rel=1e-3, abs=1e-3)
        for level_degC in (148.9, 43.3):
            minutes = referee.cool_min(level_degC) - referee.cool_min(pull_degC)
            assert after.minutes_to(level_degC, pull_degC) == pytest.approx(
                max(0.0, minutes), rel=1e-3, abs=2e-3
            )

    # The earliest pull.
    def total(minute: float) -> float:
        return referee.made_by(minute) + referee.after_pull(float(referee.oven(minute)[0])) - schedule_min

    earliest = earliest_pull_min(curve, dose, after, schedule_min)
    assert earliest == pytest.approx(referee.root(total), rel=1e-3)
    assert earliest <= credit <= sheet_pull_min(curve, schedule_degC, schedule_min) + 1e-6
