"""cure-plan through the door: every time against scipy, the order of the pulls, stops, and what the trade expects.

The referee integrates the equations of the model as stated, with its own metal figures and its own search for each
pull; it shares no code with what it judges. 0.5 % is demanded: the doubt of a real bake is 20 to 40 %.
"""

from __future__ import annotations

from fractions import Fraction
from functools import cache
from math import ceil, cos, exp, inf, log, tan
from random import Random

import numpy as np
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from scipy.integrate import cumulative_simpson, solve_ivp
from scipy.optimize import brentq
from scipy.special import j0, j1

from calculators import run
from calculators.kit.run import Outcome
from calculators.tables import table

SLUG = "cure-plan"
TIMES = ("safe-pull", "sheet-pull", "over-bake", "no-credit-pull", "pull-time", "metal-at-pull", "in-oven")
TIMES += ("after-pull", "reach-flow", "reach-schedule", "hot-after", "touch-after")
ONE_POINT = {"second-temperature": "", "second-time": ""}


def answer(texts: dict[str, str]) -> Outcome:
    outcome = run(SLUG, texts)
    assert outcome.ok, outcome.errors
    return outcome


def value(outcome: Outcome, key: str) -> float:
    number = outcome.answers[key].value
    assert isinstance(number, float), (key, number)
    return number


def errors(texts: dict[str, str]) -> list[tuple[str, str]]:
    outcome = run(SLUG, texts)
    assert not outcome.ok
    return [(one.key, one.message) for one in outcome.errors]


def celsius(temperature_degF: float) -> float:
    return (temperature_degF - 32.0) / 1.8


# ------------------------------------------------------------------ against scipy

METALS = {  # density, coefficients of specific heat: EN 1993-1-2, EN 1999-1-2 and handbook means
    "carbon-steel": (7850.0, (425.0, 0.773, -1.69e-3, 2.22e-6)),
    "galvanised": (7850.0, (425.0, 0.773, -1.69e-3, 2.22e-6)),
    "cast-iron": (7200.0, (515.0,)),
    "aluminium": (2700.0, (903.0, 0.41)),
    "stainless": (7900.0, (450.0, 0.28, -2.91e-4, 1.34e-7)),
    "zinc-die-cast": (6600.0, (425.0,)),
    "copper-brass": (8530.0, (393.0,)),
}
PARTS_OF_THICKNESS = {"both-sides": 2, "one-side": 1, "round-bar": 4, "square-bar": 4, "heat-path": 1}
CONVECTION = {"gentle": 10.0, "fan": 20.0, "strong": 25.0}
SEEN_SHARE = {"open": 1.0, "racked": 0.5, "packed": 0.25}
SIGMA, GAS, ZERO = 5.670374e-8, 8.314462618, 273.15
IN, LB, FT2 = 0.0254, 0.45359237, 0.09290304
GRID = 4_001


def bakes() -> list:
    """84 bakes: every metal with every shape twice, the rest drawn with a fixed seed."""
    draw = Random(20260301)
    sheets = [  # temperature F, minutes, the second point, the coolest point F
        ("375", "20", "400", "12", 375),
        ("375", "20", "", "", 375),
        ("400", "12", "375", "20", 375),
        ("356", "15", "392", "5", 356),
        ("392", "10", "356", "22", 356),
    ]
    cases = []
    for metal in METALS:
        for shape in (*PARTS_OF_THICKNESS, "weighed"):
            for _ in range(2):
                first, minutes, second, second_minutes, coolest = draw.choice(sheets)
                thickness = draw.choice(["1/32", "1/16", "1/8", "1/4", "1/2", "5/8", "1"])
                dip = draw.choice(["0", "0", "40", "100"])
                case = {
                    "metal": metal,
                    "shape": shape,
                    "thickness": f"{thickness} in",
                    "mass": draw.choice(["8", "40"]),
                    "area": draw.choice(["3", "6"]),
                    "thinnest": draw.choice(["", "1/16 in", "1/8 in"]),
                    "schedule-temperature": first,
                    "schedule-time": minutes,
                    "second-temperature": second,
                    "second-time": second_minutes,
                    "longest-time": draw.choice(["", "30"]),
                    "oven": str(coolest + draw.choice([6, 15, 25, 45])),
                    "airflow": draw.choice([*CONVECTION, "measured"]),
                    "oven-coefficient": "14",
                    "shading": draw.choice(list(SEEN_SHARE)),
                    "dip": dip,
                    "recovery": draw.choice(["4", "20"]) if dip != "0" else "0",
                    "start": draw.choice(["40", "70", "100"]),
                    "shop": draw.choice(["40", "70", "90"]),
                    "bake": draw.choice(["single", "single", "primer-to-gel"]),
                    "primer-share": "40",
                }
                name = f"{metal}-{shape}-{thickness}in-{case['oven']}F-{case['airflow']}-{case['shading']}-dip{dip}"
                cases.append(pytest.param(case, id=f"{name}-{len(cases)}"))
    return cases


class Heated:
    """One section in one airflow by scipy, with the cure that it makes at any activation energy."""

    def __init__(self, referee: Referee, path_m: float, convection: float) -> None:
        self.referee = referee
        storage = referee.density * path_m / 60.0
        longest = 25.0 * storage * 1000.0 / convection + 3.0 * referee.recovery_min + 60.0

        def slope(minute: float, state: np.ndarray) -> list[float]:
            dip = referee.dip_K * exp(-3.0 * minute / referee.recovery_min) if referee.dip_K else 0.0
            return [referee.slope(state[0], referee.oven_degC - dip, convection, storage)]

        self.metal = solve_ivp(
            slope, (0.0, longest), [referee.start_degC], "LSODA", rtol=1e-8, atol=1e-8, dense_output=True
        ).sol
        self.minutes = longest * np.linspace(0.0, 1.0, GRID) ** 2
        self.metal_degC = self.metal(self.minutes)[0]
        self.made: dict[float, np.ndarray] = {}

    def at(self, minute: float) -> float:
        return float(self.metal(min(minute, self.minutes[-1]))[0])

    def reach_min(self, metal_degC: float) -> float:
        """First minute at a temperature, or inf. No bake here cools on its way."""
        if self.metal_degC[0] >= metal_degC:
            return 0.0
        # metal nears the oven's own temperature for ever
        if self.metal_degC[-1] < metal_degC or metal_degC >= self.referee.oven_degC - 1e-9:
            return inf
        return brentq(lambda minute: self.at(minute) - metal_degC, 0.0, self.minutes[-1], xtol=1e-9)

    def made_by(self, minute: float, activation: float) -> float:
        if activation not in self.made:
            rate = self.referee.rate(self.metal_degC, activation)
            self.made[activation] = cumulative_simpson(rate, x=self.minutes, initial=0.0)
        if minute > self.minutes[-1]:
            extra = float(self.referee.rate(self.metal_degC[-1:], activation)[0])
            return self.made[activation][-1] + extra * (minute - self.minutes[-1])
        return float(np.interp(minute, self.minutes, self.made[activation]))

    def when_made(self, needed: float, activation: float, since: float = 0.0) -> float:
        before = self.made_by(since, activation)
        return brentq(lambda minute: self.made_by(minute, activation) - before - needed, since, 1e5)

    def pull_min(self, activation: float) -> float:
        """Minutes count only within 15 C (27 F) of the sheet's coolest point, and the metal must come to it."""
        credit_from = self.reach_min(self.referee.coolest_degC - 15.0)
        made = self.when_made(self.referee.needed_min, activation, credit_from)
        return max(made, self.reach_min(self.referee.coolest_degC))

    def earliest_min(self, activation: float) -> float:
        """Oven and cooling together make the schedule."""

        def missing(minute: float) -> float:
            after = self.referee.after_min(self.at(minute), activation)
            return self.made_by(minute, activation) + after - self.referee.needed_min

        return brentq(missing, 0.0, 1e5, xtol=1e-7)


class Referee:
    """The same bake by scipy: its figures in SI, and what its sheet says of the powder."""

    def __init__(self, case: dict[str, str]) -> None:
        self.density, self.coefficients = METALS[case["metal"]]
        self.oven_degC, self.start_degC = celsius(float(case["oven"])), celsius(float(case["start"]))
        self.shop_degC = celsius(float(case["shop"]))
        self.dip_K, self.recovery_min = float(case["dip"]) / 1.8, float(case["recovery"])
        self.seen = 0.90 * SEEN_SHARE[case["shading"]]
        self.convection = CONVECTION.get(case["airflow"], float(case["oven-coefficient"]))
        if case["shape"] == "weighed":
            volume = float(case["mass"]) * LB / self.density
            self.path_m = volume / (float(case["area"]) * FT2)
        else:
            thick = float(Fraction(case["thickness"].removesuffix(" in"))) * IN
            self.path_m = thick / PARTS_OF_THICKNESS[case["shape"]]
        self.thin_path_m = self.path_m
        if case["thinnest"]:
            thin = float(Fraction(case["thinnest"].removesuffix(" in"))) * IN
            # the thinnest place of a bar or casting is a web or a wall, with air on both sides
            by_one_face = case["shape"] in ("one-side", "heat-path")
            self.thin_path_m = min(self.path_m, thin if by_one_face else thin / 2.0)
        self.schedule_degC = celsius(float(case["schedule-temperature"]))
        minutes = float(case["schedule-time"])
        self.needed_min = minutes * (0.4 if case["bake"] == "primer-to-gel" else 1.0)
        self.longest_min = float(case["longest-time"] or 2 * minutes)
        self.coolest_degC = self.hottest_degC = self.schedule_degC
        self.activations = (80.0, 60.0, 120.0)
        if case["second-time"]:
            second = celsius(float(case["second-temperature"]))
            self.coolest_degC, self.hottest_degC = sorted((self.schedule_degC, second))
            span = 1.0 / (second + ZERO) - 1.0 / (self.schedule_degC + ZERO)
            both = GAS * log(float(case["second-time"]) / minutes) / span / 1000.0
            self.activations = (both, both - 25.0, both + 25.0)
        self.heated = cache(lambda path_m, factor: Heated(self, path_m, factor * self.convection))
        self.cool = self.cooled(self.oven_degC, 1.0)
        self.cool_made: dict[float, np.ndarray] = {}

    def slope(self, metal_degC: float, air_degC: float, convection: float, storage: float) -> float:
        heat = convection * (air_degC - metal_degC)
        heat += self.seen * SIGMA * ((air_degC + ZERO) ** 4 - (metal_degC + ZERO) ** 4)
        specific_heat = sum(c * metal_degC**power for power, c in enumerate(self.coefficients))
        return heat / (storage * specific_heat)

    def rate(self, metal_degC: np.ndarray, activation: float) -> np.ndarray:
        held_K = np.minimum(metal_degC, self.hottest_degC) + ZERO
        return np.exp(activation * 1000.0 / GAS * (1.0 / (self.schedule_degC + ZERO) - 1.0 / held_K))

    def cooled(self, from_degC: float, factor: float) -> tuple[np.ndarray, np.ndarray]:
        """Minutes and metal in still air, h 6, dense where it is hot."""
        storage = self.density * self.path_m / 60.0
        longest = 40.0 * storage * 1000.0 / 6.0

        def slope(_minute: float, state: np.ndarray) -> list[float]:
            return [self.slope(state[0], self.shop_degC, factor * 6.0, storage)]

        minutes = longest * np.linspace(0.0, 1.0, GRID) ** 2
        metal = solve_ivp(
            slope, (0.0, longest), [from_degC], "LSODA", rtol=1e-8, atol=1e-8, dense_output=True
        ).sol
        return minutes, metal(minutes)[0]

    def cool_min(self, metal_degC: float) -> float:
        minutes, metal = self.cool
        return float(np.interp(-metal_degC, -metal, minutes))

    def after_min(self, pull_degC: float, activation: float) -> float:
        """Equivalent minutes from the pull down to 60 C, below which none count."""
        minutes, metal = self.cool
        if activation not in self.cool_made:
            rate = self.rate(metal, activation)
            self.cool_made[activation] = cumulative_simpson(rate, x=minutes, initial=0.0)
        ends = [self.cool_min(pull_degC), max(self.cool_min(60.0), self.cool_min(pull_degC))]
        pulled, ended = np.interp(ends, minutes, self.cool_made[activation])
        return float(ended - pulled)


def close(outcome: Outcome, key: str, expected: float, tiny: float = 0.02) -> None:
    if expected == inf:
        assert outcome.answers[key].value is None, key
    else:
        assert value(outcome, key) == pytest.approx(expected, rel=0.005, abs=tiny), key


@pytest.mark.derived
@pytest.mark.parametrize("case", bakes())
def test_plan_against_scipy(case: dict[str, str]) -> None:
    """Each time of the plan by scipy's LSODA, Simpson's rule and Brent's root finder, from the model's equations."""
    outcome, referee = answer(case), Referee(case)
    best, low, high = referee.activations
    part, slow = referee.heated(referee.path_m, 1.0), referee.heated(referee.path_m, 0.75)
    fast, fast_thin = referee.heated(referee.path_m, 1.25), referee.heated(referee.thin_path_m, 1.25)

    reach = part.reach_min(referee.schedule_degC)
    close(outcome, "reach-flow", part.reach_min(celsius(300)))
    close(outcome, "reach-schedule", reach)
    close(outcome, "sheet-pull", reach + referee.needed_min)

    no_credit = part.pull_min(best)
    close(outcome, "no-credit-pull", no_credit)
    worst = max(no_credit, *(slow.pull_min(activation) for activation in referee.activations))
    off = abs(value(outcome, "safe-pull") - ceil(worst))
    assert off == 0 or (off == 1 and abs(worst - round(worst)) < 0.001 * worst), worst

    earliest = part.earliest_min(best)
    close(outcome, "pull-time", earliest)
    ends = [section.earliest_min(activation) for section in (fast, slow) for activation in (low, high)]
    band = outcome.answers["pull-time"]
    assert band.low == pytest.approx(min(earliest, *ends), rel=0.005, abs=0.02)
    assert band.high == pytest.approx(max(earliest, *ends), rel=0.005, abs=0.02)

    metal_degC = part.at(earliest)
    assert value(outcome, "metal-at-pull") == pytest.approx(metal_degC * 1.8 + 32.0, abs=0.5)
    close(outcome, "in-oven", part.made_by(earliest, best))
    close(outcome, "after-pull", referee.after_min(metal_degC, best))
    hot = referee.cool_min(celsius(300)) - referee.cool_min(metal_degC)
    close(outcome, "hot-after", max(0.0, hot))

    over = min(fast_thin.when_made(referee.longest_min, activation) for activation in referee.activations)
    close(outcome, "over-bake", over)
    minutes, metal = referee.cooled(part.at(worst), 0.75)
    close(outcome, "touch-after", float(np.interp(-celsius(110), -metal, minutes)))


# ------------------------------------------------------------------ which doubt matters most

FORM = {
    "metal": "cast-iron", "shape": "both-sides", "thickness": "5/8 in", "mass": "40", "area": "6", "thinnest": "",
    "schedule-temperature": "375", "schedule-time": "20", "second-temperature": "400", "second-time": "12",
    "longest-time": "", "oven": "400", "airflow": "fan", "oven-coefficient": "20", "shading": "open", "dip": "0",
    "recovery": "0", "start": "70", "shop": "70", "bake": "single",
}  # fmt: skip
DOUBTED = [
    FORM,
    FORM | {"metal": "aluminium", "thickness": "1/16 in", "second-temperature": "", "second-time": ""},
    FORM
    | {"metal": "carbon-steel", "shape": "one-side", "oven": "388", "shading": "racked", "airflow": "gentle"},
    FORM | {"metal": "stainless", "thickness": "1/4 in", "dip": "60", "recovery": "10", "oven": "420"},
]


def alone(case: dict[str, str]) -> dict[str, float]:
    """By scipy: the pull with one thing worse and all else as entered."""
    best, low, high = Referee(case).activations

    def pull(referee: Referee, factor: float = 1.0, activation: float = best) -> float:
        return referee.heated(referee.path_m, factor).pull_min(activation)

    hidden = Referee(case)
    hidden.seen *= 0.75
    dip = {"dip": "50", "recovery": "5"} if case["dip"] == "0" else {"dip": f"{1.5 * float(case['dip'])}"}
    cooler = Referee(case | {"oven": f"{float(case['oven']) - 10}"})
    return {
        "Nothing": pull(Referee(case)),
        "Airflow": pull(Referee(case), 0.75),
        "Cure speed": max(pull(Referee(case), 1.0, one) for one in (best, low, high)),
        "Oven": pull(cooler),
        "A quarter": pull(hidden),
        "Air": pull(Referee(case | dip)),
    }


@pytest.mark.derived
@pytest.mark.parametrize("case", DOUBTED, ids=["demo", "one-point-sheet", "tight-oven", "dip-entered"])
def test_each_doubt_alone_against_scipy(case: dict[str, str]) -> None:
    """Airflow 25 % weaker, the worse end of the cure speed, 10 F less oven, a quarter less radiation, a dip of 50 F for 5 min
    (or half as deep again): the table's pulls, and the one that is named, by the referee."""
    outcome, expected = answer(case), alone(case)
    (shown,) = [one for one in outcome.tables if one.title.startswith("What moves the pull")]
    words = {}
    for tried, pull, _ in shown.rows:
        name = next(one for one in sorted(expected, key=len, reverse=True) if tried.startswith(one))
        words[name] = pull
    assert set(words) == set(expected)
    for name, minutes in expected.items():
        assert float(words[name].split(" min")[0].replace(",", "")) == pytest.approx(
            minutes, abs=0.55, rel=0.006
        ), name
        if name != "Nothing":
            later = float(words[name].split(", ")[1])
            assert later == pytest.approx(minutes - expected["Nothing"], abs=0.06 + 0.004 * minutes), name
    slugs = {
        "Airflow": "airflow",
        "Cure speed": "cure-speed",
        "Oven": "oven-reading",
        "A quarter": "shading",
        "Air": "cold-load",
    }
    largest = max(minutes for name, minutes in expected.items() if name != "Nothing")
    near = {slug for name, slug in slugs.items() if expected[name] > largest - 0.1}
    assert outcome.answers["biggest-doubt"].value in near


@pytest.mark.derived
def test_a_doubt_that_leaves_no_pull_is_named_first() -> None:
    """An oven of 384 F that reads 10 F high is at 374 F, under the sheet's coolest point of 375 F: never."""
    outcome = answer({"oven": "384"})
    assert outcome.answers["biggest-doubt"].value == "oven-reading"
    assert outcome.tables[0].rows[1][1] == "never"


def meaning(key: str) -> str:
    return answer({}).answers[key].meaning


@pytest.mark.derived
def test_the_pull_claims_no_more_than_it_counts() -> None:
    """By scipy: at the slow end of airflow and cure speed 48.6 min, and 54.1 if the oven is 10 F cooler than it reads, too.
    So the pull may be named after the two and must say that the third is not in it. Nor is the sheet's pull at the slow end:
    that takes 59 min, not 54."""

    def slow_end(oven: str) -> tuple[float, float]:
        referee = Referee(FORM | {"oven": oven})
        slow = referee.heated(referee.path_m, 0.75)
        pull = max(slow.pull_min(one) for one in referee.activations)
        return pull, slow.reach_min(referee.schedule_degC) + referee.needed_min

    outcome = answer({})
    assert value(outcome, "safe-pull") == ceil(slow_end("400")[0]) < slow_end("390")[0]
    counted = [row[0].split(" (")[1] for row in outcome.tables[0].rows[1:] if row[0].startswith("Oven")]
    assert counted == ["not counted)"]
    assert "at the slow end of airflow and cure speed" in meaning("safe-pull")
    assert "The oven's own error is not counted" in meaning("safe-pull")
    assert "probe" in meaning("safe-pull")
    assert "at the fast end of airflow and cure speed" in meaning("over-bake")
    assert value(outcome, "sheet-pull") + 4 < slow_end("400")[1]
    assert "airflow as entered" in meaning("sheet-pull")
    assert "probe in the heaviest section" in meaning("sheet-pull")


@pytest.mark.derived
@pytest.mark.parametrize(
    "sheet",
    [
        {},
        {"second-temperature": "410", "second-time": "11"},
        {
            "schedule-temperature": "180 C",
            "schedule-time": "15",
            "second-temperature": "200 C",
            "second-time": "8",
        },
        {"schedule-temperature": "392", "second-temperature": "374", "second-time": "33"},
    ],
)
def test_a_line_of_working_goes_on_with_the_figure_of_the_line_before(sheet: dict[str, str]) -> None:
    """Activation energy as the first line prints it, as the rate takes it, and by hand from the sheet's two points."""
    case = FORM | {"oven": "410"} | sheet
    lines = {one.words: one for one in answer(case).steps}
    printed = lines["Activation energy from the sheet's two points, in F"].result
    taken = lines["Cure rate at the oven's temperature, against the schedule's"].numbers
    assert round(float(taken.split("exp(")[1].split(" ")[0]), 2) == float(printed)

    def kelvin(key: str) -> float:
        number, _, unit = case[key].partition(" ")
        return float(number) + ZERO if unit == "C" else celsius(float(number)) + ZERO

    span = 1 / kelvin("schedule-temperature") - 1 / kelvin("second-temperature")
    by_hand = GAS / 1000 * log(float(case["schedule-time"]) / float(case["second-time"])) / span
    assert float(printed) == pytest.approx(by_hand, abs=0.006)


@pytest.mark.property
def test_the_sheet_s_second_point_is_asked_for_where_it_is_missing() -> None:
    rows = answer(ONE_POINT).tables[0].rows
    (asked,) = [what for tried, _, what in rows if tried.startswith("Cure speed")]
    assert asked == "Enter the second point of the powder's sheet."
    (asked,) = [what for tried, _, what in answer({}).tables[0].rows if tried.startswith("Cure speed")]
    assert "rub test" in asked


@pytest.mark.property
def test_a_surer_oven_narrows_the_pull() -> None:
    """Measured at the same figure, the pull comes nearer to the one without doubt, and over-bake moves away from it."""
    measured = {"airflow": "measured", "oven-coefficient": "20"}
    pulls = [value(answer(measured | {"oven-doubt": one}), "safe-pull") for one in ("40", "25", "15", "5")]
    overs = [value(answer(measured | {"oven-doubt": one}), "over-bake") for one in ("40", "25", "15", "5")]
    assert pulls == sorted(pulls, reverse=True)
    assert overs == sorted(overs)
    assert pulls[1] == value(answer({}), "safe-pull")
    assert pulls[3] < pulls[1]


@pytest.mark.property
def test_what_is_carried_on_is_taken() -> None:
    """The links to the log, to cooling and to the mixed load open forms that answer."""
    plan = answer({"thinnest": "1/8 in", "airflow": "measured", "oven-coefficient": "18"})
    found = {}
    for carry in plan.carries:
        outcome = run(carry.slug, carry.texts)
        assert outcome.ok, (carry.slug, outcome.errors)
        assert set(carry.texts) <= set(outcome.typed) | {"oven-coefficient", "oven-doubt"}
        found[carry.slug] = outcome
    assert set(found) == {"bake-log", "cool-down", "mixed-load"}
    load = found["mixed-load"].answers["windows"].value
    assert load[1].startswith("thin section: ")  # type: ignore[index]
    assert load[1].endswith(f"{int(value(plan, 'over-bake'))} min")  # type: ignore[index]
    assert [one.slug for one in answer({"shape": "weighed"}).carries] == ["bake-log"]


# ------------------------------------------------------------------ laws that hold for any bake


@st.composite
def forms(draw: st.DrawFn) -> dict[str, str]:
    """A form that a person could fill in, with an oven over the sheet's coolest point."""
    first_degF = draw(st.integers(300, 430))
    minutes = draw(st.integers(5, 40))
    coolest_degF, second = first_degF, ONE_POINT
    if draw(st.booleans()):
        second_degF = first_degF + draw(st.sampled_from([-30, -15, 15, 30]))
        activation = draw(st.floats(31, 179))
        span = 1 / (celsius(second_degF) + ZERO) - 1 / (celsius(first_degF) + ZERO)
        second_min = minutes * exp(activation * 1000 / GAS * span)
        assume(0.5 <= second_min <= 240)
        second = {"second-temperature": str(second_degF), "second-time": f"{second_min:.6f}"}
        coolest_degF = min(first_degF, second_degF)
    airflow = draw(st.sampled_from(["gentle", "fan", "strong", "measured"]))
    dip = draw(st.sampled_from([0, 0, 30, 90]))
    return {
        "metal": draw(st.sampled_from(list(METALS))),
        "shape": draw(st.sampled_from([*PARTS_OF_THICKNESS, "weighed"])),
        "thickness": f"{draw(st.floats(0.02, 4)):.4f} in",
        "mass": f"{draw(st.floats(1, 500)):.3f} lb",
        "area": f"{draw(st.floats(1, 100)):.3f} ft2",
        "thinnest": draw(st.sampled_from(["", "1/16 in", "1 in"])),
        "schedule-temperature": f"{first_degF} F",
        "schedule-time": f"{minutes} min",
        **second,
        "oven": f"{coolest_degF + draw(st.integers(1, 80))} F",
        "airflow": airflow,
        "oven-coefficient": f"{draw(st.floats(4, 80)):.3f}",
        "shading": draw(st.sampled_from(list(SEEN_SHARE))),
        "dip": str(dip),
        "recovery": str(draw(st.integers(1, 60)) if dip else 0),
        "start": str(draw(st.integers(-20, 250))),
        "shop": str(draw(st.integers(-20, 120))),
        "bake": draw(st.sampled_from(["single", "primer-to-gel", "topcoat-over-primer"])),
        "primer-share": str(draw(st.integers(5, 100))),
        "primer-had": str(draw(st.integers(0, 100))),
    }


@pytest.mark.property
@settings(deadline=None, max_examples=120)
@given(forms())
def test_order_of_the_pulls(form: dict[str, str]) -> None:
    """safe-pull >= no-credit-pull >= pull-time; the band holds its own figure; the sheet to the letter is never first."""
    outcome = answer(form)
    safe, no_credit = value(outcome, "safe-pull"), value(outcome, "no-credit-pull")
    earliest = outcome.answers["pull-time"]
    assert safe == int(safe)
    # rounding up forgives a billionth of a minute
    assert safe >= no_credit - 1e-8
    assert no_credit >= value(outcome, "pull-time")
    assert earliest.low <= earliest.value <= earliest.high  # type: ignore[operator]
    sheet = outcome.answers["sheet-pull"].value
    assert sheet is None or sheet >= no_credit - 1e-3 * no_credit  # type: ignore[operator]


@pytest.mark.property
@pytest.mark.parametrize("metal", ["carbon-steel", "aluminium"])
@pytest.mark.parametrize("key", ["sheet-pull", "no-credit-pull", "safe-pull"])
def test_thicker_is_later_and_hotter_is_sooner(metal: str, key: str) -> None:
    """More metal on the same area heats later, and a hotter oven heats it sooner; a whole minute may stay the same."""
    for texts in (
        [{"thickness": one} for one in ("1/16", "1/8", "1/4", "3/8", "1/2", "3/4", "1", "2")],
        [{"oven": one} for one in ("430", "420", "410", "400", "395", "390", "385")],
        [{"airflow": "measured", "oven-coefficient": one} for one in ("60", "30", "20", "12", "8")],
        [{"shading": one} for one in ("open", "racked", "packed")],
        [{"dip": one, "recovery": "10"} for one in ("0", "20", "50", "100")],
        [{"start": one} for one in ("200", "100", "70", "30", "-20")],
    ):
        times = [value(answer({"metal": metal, **one}), key) for one in texts]
        assert times == sorted(times), (texts, times)
        assert times[0] < times[-1]


@pytest.mark.property
def test_us_and_metric_input_give_the_same() -> None:
    """356 F is 180 C, 392 F is 200 C, 68 F is 20 C; an inch is 25.4 mm and 1 Btu/h ft2 F is 5.678263 W/m2K."""
    us = answer(
        {
            "thickness": "1/2 in",
            "thinnest": "1/8 in",
            "oven": "392 F",
            "schedule-temperature": "356 F",
            "second-temperature": "374 F",
            "start": "68 F",
            "shop": "68 F",
            "dip": "36 F",
            "recovery": "10 min",
            "airflow": "measured",
            "oven-coefficient": "4 Btu/h ft2 F",
        }
    )
    metric = answer(
        {
            "thickness": "12.7 mm",
            "thinnest": "0.3175 cm",
            "oven": "200 C",
            "schedule-temperature": "180 C",
            "second-temperature": "190 C",
            "start": "20 C",
            "shop": "20 C",
            "dip": "20 C",
            "recovery": "600 s",
            "airflow": "measured",
            "oven-coefficient": "22.713053 W/m2K",
        }
    )
    for key in TIMES:
        assert value(us, key) == pytest.approx(value(metric, key), rel=1e-6), key
    by_pound = answer({"shape": "weighed", "mass": "22.0462262 lb", "area": "10.7639104 ft2"})
    by_kilogram = answer({"shape": "weighed", "mass": "10 kg", "area": "1 m2"})
    for key in TIMES:
        assert value(by_pound, key) == pytest.approx(value(by_kilogram, key), rel=1e-6), key


@pytest.mark.derived
def test_a_weighed_plate_is_the_plate() -> None:
    """1 m2 of 10 mm iron: 72 kg with 2 m2 of faces, so by weight it heats as it does by thickness."""
    plate = answer({"thickness": "10 mm"})
    weighed = answer({"shape": "weighed", "mass": "72 kg", "area": "2 m2"})
    for key in TIMES:
        assert value(weighed, key) == pytest.approx(value(plate, key), rel=1e-6), key


# ------------------------------------------------------------------ metal that is at one temperature


FOIL = {"metal": "aluminium", "thickness": "0.01 in", "start": "300", "airflow": "measured"}
FOIL |= {"oven-coefficient": "150"}


@pytest.mark.derived
def test_foil_at_schedule_temperature_makes_a_minute_a_minute() -> None:
    """Foil comes to an oven 0.5 F over the schedule in seconds (time constant rho c L/h about 2 s), and then t_eq = t:
    20 min make 20 min, by the oven alone and by the sheet."""
    outcome = answer(FOIL | ONE_POINT | {"oven": "375.5"})
    assert value(outcome, "no-credit-pull") == pytest.approx(20, abs=0.2)
    assert value(outcome, "sheet-pull") == pytest.approx(20, abs=0.2)
    assert value(outcome, "sheet-pull") - value(outcome, "reach-schedule") == pytest.approx(20, abs=1e-9)
    assert value(outcome, "in-oven") == pytest.approx(value(outcome, "pull-time"), abs=0.1)


@pytest.mark.derived
@pytest.mark.parametrize(("oven", "minutes"), [("400", 12), ("415", 12), ("387.5", 20 * (12 / 20) ** 0.5)])
def test_foil_gives_the_sheet_its_own_points_back(oven: str, minutes: float) -> None:
    """A sheet of 20 min at 375 F and 12 min at 400 F: foil held at 400 F needs 12 min. Over the hottest point the rate is
    held, so 415 F needs 12 min too. Half way, on a nearly straight line of log t over 1/T, it is the geometric mean."""
    assert value(answer(FOIL | {"oven": oven}), "no-credit-pull") == pytest.approx(minutes, rel=0.02)


# ------------------------------------------------------------------ printed elsewhere


@pytest.mark.published
def test_panel_cure__incropera_example_5_3() -> None:
    """Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, Ex. 5.3: a 3 mm aluminium panel coated on both sides,
    25 C, in a 175 C oven with h 40, cured 300 s from 150 C on.

    Data as set in a university assignment of 2009 (seen: second-hand); printed answers from memory: 150 C at 124 s, end of
    the cure at 424 s. The form takes its own aluminium (rho c 2.54 against the book's 2.42 MJ/m3K, 5 % more) and 0.90 for
    the book's emissivity of 0.8 (3 % more heat), so as entered the heating agrees to 4 %. With the path scaled by rho c and
    the coefficient less 0.1 of black radiation from 175 C walls to metal at 90 C, 1.5 W/m2K, the two panels are one. The
    book's own numbers are put to the formulas in tests/physics/test_heat.py; its cooling with h 10 the form does not ask.
    """
    panel = ONE_POINT | {"metal": "aluminium", "start": "25 C", "oven": "175 C", "airflow": "measured"}
    panel |= {"schedule-temperature": "150 C", "schedule-time": "300 s"}
    as_entered = answer(panel | {"thickness": "3 mm", "oven-coefficient": "40 W/m2K"})
    assert 60 * value(as_entered, "reach-schedule") == pytest.approx(124, rel=0.04)
    path_mm = 1.5 * (2770 * 875) / (2700 * (903 + 0.41 * 90))
    same = answer(
        panel | {"shape": "heat-path", "thickness": f"{path_mm:.4f} mm", "oven-coefficient": "38.5 W/m2K"}
    )
    assert 60 * value(same, "reach-schedule") == pytest.approx(124, rel=0.015)
    assert 60 * value(same, "sheet-pull") == pytest.approx(424, rel=0.005)


@pytest.mark.published
def test_specific_heat_of_steel__en_1993_1_2() -> None:
    """EN 1993-1-2:2005, 3.4.1.2: c = 425 + 0.773 T - 1.69e-3 T^2 + 2.22e-6 T^3 (seen: second-hand, quoted alike by
    several public fire-engineering programs)."""
    assert table("metals")["carbon-steel"]["specific_heat_J_kgK"] == [425, 0.773, -1.69e-3, 2.22e-6]
    assert table("metals")["galvanised"]["specific_heat_J_kgK"] == [425, 0.773, -1.69e-3, 2.22e-6]


@pytest.mark.published
@pytest.mark.parametrize(("kelvin", "printed"), [(300, 434), (400, 487), (600, 559)])
def test_specific_heat_of_steel__incropera_table_a1(kelvin: float, printed: float) -> None:
    """Incropera and DeWitt, Table A.1, AISI 1010: 434, 487 and 559 J/kgK (300 K seen: second-hand, rest from memory).

    Another mild steel in another book: the two differ by up to 3 %, and so may a bake."""
    coefficients = table("metals")["carbon-steel"]["specific_heat_J_kgK"]
    found = sum(one * (kelvin - ZERO) ** power for power, one in enumerate(coefficients))
    assert found == pytest.approx(printed, rel=0.035)


# ------------------------------------------------------------------ what the trade expects


@pytest.mark.published
@pytest.mark.parametrize("thickness", ["1/16", "1/8", "1/4", "1/2", "3/4", "1"])
def test_metal_is_at_375_F_for_15_to_20_min(thickness: str) -> None:
    """Common practice, no source: metal at about 375 F for 15 to 20 min.

    A 400 F oven, 20 min at 375 F or 12 min at 400 F: from 375 F on, the pull is 15 to 17 min away (the metal goes on to
    rise, and the minutes are rounded up) and the sheet to the letter exactly 20."""
    outcome = answer({"metal": "carbon-steel", "thickness": thickness})
    reach = value(outcome, "reach-schedule")
    assert 15 <= value(outcome, "safe-pull") - reach <= 20
    assert value(outcome, "sheet-pull") - reach == pytest.approx(20)


@pytest.mark.published
def test_an_inch_of_steel_stays_hot_after_the_pull() -> None:
    """Common practice, no source: 1 in steel pulled at about 390 F stays over 300 F for 15 to 20 min."""
    outcome = answer(
        ONE_POINT
        | {
            "metal": "carbon-steel",
            "thickness": "1 in",
            "oven": "410",
            "schedule-temperature": "390",
            "schedule-time": "25",
        }
    )
    assert value(outcome, "metal-at-pull") == pytest.approx(390, abs=2)
    assert 15 <= value(outcome, "hot-after") <= 20


def said(outcome: Outcome, key: str, level: str = "caution") -> list[str]:
    return [one.text for one in outcome.cautions if one.key == key and one.level == level]


@pytest.mark.published
@pytest.mark.parametrize(("oven", "warned"), [("376", True), ("389", True), ("390", False), ("400", False)])
def test_the_oven_is_set_above_the_target(oven: str, warned: bool) -> None:
    """Common practice, no source: the oven is set above the metal temperature wanted, here by 15 F at least."""
    outcome = answer({"oven": oven})
    warnings = [one for one in said(outcome, "oven") if one.startswith("The oven is set less than 15 F over")]
    assert len(warnings) == warned
    if warned:
        assert "375 F (191 C)" in warnings[0]


@pytest.mark.derived
@pytest.mark.parametrize("oven", ["375", "374", "300", "190.5 C"])
@pytest.mark.parametrize(
    "sheet",
    [
        {},
        ONE_POINT,
        {
            "schedule-temperature": "400",
            "schedule-time": "12",
            "second-temperature": "375",
            "second-time": "20",
        },
    ],
    ids=["cooler-first", "one-point", "hotter-first"],
)
def test_an_oven_too_cool_for_the_sheet_gives_no_time(oven: str, sheet: dict[str, str]) -> None:
    """Metal never passes the air, so with air at or below the sheet's coolest point, 375 F, nothing is vouched for."""
    outcome = answer({"oven": oven, **sheet})
    assert {key: one.value for key, one in outcome.answers.items()} == dict.fromkeys(outcome.answers)
    assert all((one.low, one.high) == (None, None) for one in outcome.answers.values())
    (stop,) = (one for one in outcome.cautions if one.level == "stop")
    assert stop.key == "oven"
    assert stop.text.startswith("The oven setting is not above 375 F, the coolest point of this data sheet")
    assert not outcome.charts
    assert outcome.headline == "No pull time: the oven is too cool"


@pytest.mark.derived
def test_an_oven_between_the_points_has_a_pull_but_none_by_the_letter() -> None:
    """390 F never brings metal to 400 F, but it does to the sheet's other point, 375 F."""
    outcome = answer(
        {
            "oven": "390",
            "schedule-temperature": "400",
            "schedule-time": "12",
            "second-temperature": "375",
            "second-time": "20",
        }
    )
    assert outcome.answers["sheet-pull"].value is None
    assert outcome.answers["reach-schedule"].text == "never"
    by_the_other = answer({"oven": "390"})
    # the same two points in the other order are the same powder; the band of its cure speed turns about the first point
    for key in ("no-credit-pull", "pull-time", "metal-at-pull", "hot-after"):
        assert value(outcome, key) == pytest.approx(value(by_the_other, key), rel=1e-6), key


# ------------------------------------------------------------------ sections too thick for one lump


def lag_said(outcome: Outcome) -> tuple[float, float]:
    (text,) = (one for one in said(outcome, "thickness") if "Biot number" in one)
    return float(text.split("Biot number ")[1].split(",")[0]), float(text.split("about ")[1].split(" min")[0])


def stainless(shape: str, thickness: str = "6 in") -> tuple[Outcome, float, float, float]:
    """The plan; the coefficient with radiation at the pull; conductivity and diffusivity at 150 C (EN 1993-1-2, Annex C,
    from memory)."""
    case = {"metal": "stainless", "thickness": thickness, "shape": shape}
    outcome = answer(case)
    form = {"mass": "40", "area": "6", "thinnest": "", "longest-time": "", "oven": "400", "airflow": "fan"}
    form |= {"oven-coefficient": "20", "shading": "open", "dip": "0", "recovery": "0", "start": "70"}
    form |= {"shop": "70", "bake": "single", "schedule-temperature": "375", "schedule-time": "20"}
    form |= {"second-temperature": "400", "second-time": "12"}
    referee = Referee(form | case)
    metal_K = referee.heated(referee.path_m, 1.0).at(value(outcome, "safe-pull")) + ZERO
    air_K = referee.oven_degC + ZERO
    coefficient = 20.0 + 0.9 * SIGMA * (metal_K + air_K) * (metal_K**2 + air_K**2)
    conductivity = 14.6 + 0.0127 * 150.0
    heat = 7900.0 * sum(one * 150.0**power for power, one in enumerate(METALS["stainless"][1]))
    return outcome, coefficient, conductivity, conductivity / heat


@pytest.mark.derived
@pytest.mark.parametrize(("shape", "core_m"), [("both-sides", 3 * IN), ("one-side", 6 * IN)])
def test_core_of_a_slab_lags_by_the_one_term_solution(shape: str, core_m: float) -> None:
    """Slab, one term: zeta tan zeta = Bi; skin over core is cos zeta; both fall as exp(-zeta^2 Fo), so the core is
    ln(1/cos zeta)/zeta^2 of L^2/alpha behind its skin (Incropera and DeWitt, 5.5; seen: memory)."""
    outcome, coefficient, conductivity, diffusivity = stainless(shape)
    biot = coefficient * core_m / conductivity
    zeta = brentq(lambda root: root * tan(root) - biot, 1e-6, 1.57)
    lag_min = core_m**2 / diffusivity * log(1 / cos(zeta)) / zeta**2 / 60
    # said as the next whole minute
    assert lag_said(outcome) == (pytest.approx(biot, abs=0.006), ceil(lag_min))


@pytest.mark.derived
def test_axis_of_a_round_bar_lags_by_the_one_term_solution() -> None:
    """Cylinder of radius R, one term: zeta J1/J0 = h R/k; skin over axis is J0(zeta), so the axis is ln(1/J0)/zeta^2 of
    R^2/alpha behind its skin (Incropera and DeWitt, 5.6; seen: memory). Half the lag of a slab R deep is what the form
    takes for a bar, good to 4 % here. Bi in the sentence is by volume over area, R/2."""
    outcome, coefficient, conductivity, diffusivity = stainless("round-bar", "8 in")
    radius_m = 4 * IN
    biot = coefficient * radius_m / conductivity
    zeta = brentq(lambda root: root * j1(root) - biot * j0(root), 1e-6, 2.4)
    lag_min = radius_m**2 / diffusivity * log(1 / j0(zeta)) / zeta**2 / 60
    said_biot, said_min = lag_said(outcome)
    assert said_biot == pytest.approx(biot / 2, abs=0.006)
    assert 0.96 * lag_min <= said_min <= 1.04 * lag_min + 1


@pytest.mark.derived
def test_middle_of_a_square_bar_lags_half_a_slab() -> None:
    """A square bar is the product of two slabs: both fall by zeta^2 Fo, and the middle of a face is cos zeta of the core, so
    the lag is half of the slab's of the same half width."""
    bar, slab = stainless("square-bar", "8 in")[0], stainless("both-sides", "8 in")[0]
    # the coefficients differ a little with the metal's heat at the pull, and both are said in whole minutes
    assert lag_said(bar)[1] == pytest.approx(lag_said(slab)[1] / 2, abs=1)


@pytest.mark.derived
@pytest.mark.parametrize("texts", [{}, {"metal": "stainless", "thickness": "1 in"}])
def test_no_lag_is_told_of_a_thin_section(texts: dict[str, str]) -> None:
    """Biot number 42 W/m2K x 0.0127 m / 16.5 W/mK = 0.03 for 1 in of stainless, less for the demo's iron: under 0.1."""
    assert said(answer(texts), "thickness") == []


# ------------------------------------------------------------------ no single pull


@pytest.mark.derived
def test_thick_and_thin_in_one_hot_oven() -> None:
    """A 2 in casting with a 1/16 in fin at 430 F: the fin has used up its longest time long before the casting is done."""
    outcome = answer({"thickness": "2 in", "thinnest": "1/16 in", "oven": "430"})
    assert value(outcome, "over-bake") < value(outcome, "safe-pull")
    (text,) = said(outcome, "thinnest")
    assert "no single pull serves both sections" in text
    assert "Lower the oven, split the load, or ask for a powder with a wider window." in text


@pytest.mark.derived
@pytest.mark.parametrize(
    ("oven", "advice"),
    [
        ("400", "Lower the oven, split the load, or ask for a powder with a wider window."),
        # under 15 F over the schedule the oven is to be raised, so that nobody is told to lower it as well
        ("380", "Split the load, or ask for a powder with a wider window."),
    ],
)
def test_two_sections_are_told_one_way_to_turn_the_oven(oven: str, advice: str) -> None:
    """Common practice, no source: the oven is set 15 F over the target at least, so 380 F for 375 F is to be raised."""
    outcome = answer({"thickness": "2 in", "thinnest": "1/16 in", "oven": oven})
    (text,) = said(outcome, "thinnest")
    assert text.endswith(f"serves both sections. {advice}")
    assert any("Set it 15 to 25 F over" in one for one in said(outcome, "oven")) == (oven == "380")


@pytest.mark.derived
@pytest.mark.parametrize(
    ("thickness", "oven"), [("3 in", "400"), ("2 in", "380"), ("2 in", "450"), ("5/8 in", "378")]
)
def test_one_section_whose_doubt_is_wider_than_its_window(thickness: str, oven: str) -> None:
    """With no thinner section entered there are no two sections to serve: what clashes is the slow and the fast end."""
    outcome = answer({"thickness": thickness, "oven": oven})
    assert value(outcome, "over-bake") < value(outcome, "safe-pull")
    assert said(outcome, "thinnest") == []
    (text,) = said(outcome, "airflow")
    assert "both sections" not in text
    assert f"{value(outcome, 'safe-pull'):.0f} min" in text
    assert "measured" in text


@pytest.mark.derived
@pytest.mark.parametrize("case", [{"thickness": "2 in"}, {"oven": "378"}])
def test_a_cooler_oven_does_not_widen_the_window_of_one_section(case: dict[str, str]) -> None:
    """By the referee: 20 F less, or 2 F where the oven is near the schedule, takes the slow end's pull further past the fast
    end's over-bake. So one section is not told to lower the oven."""

    def gap(oven: float) -> float:
        referee = Referee(FORM | case | {"oven": f"{oven}"})
        slow, fast = referee.heated(referee.path_m, 0.75), referee.heated(referee.path_m, 1.25)
        over = min(fast.when_made(referee.longest_min, one) for one in referee.activations)
        return max(slow.pull_min(one) for one in referee.activations) - over

    oven = float(case.get("oven", "400"))
    assert gap(oven - (20 if oven == 400 else 2)) > gap(oven) > 0
    (text,) = said(answer(case), "airflow")
    assert "ower the oven" not in text
    assert "aise the oven" not in text


@pytest.mark.property
def test_a_measured_oven_is_not_asked_to_be_measured() -> None:
    measured = {"airflow": "measured", "oven-coefficient": "20", "thickness": "3 in"}
    (text,) = said(answer(measured), "airflow")
    assert "Log another bake and enter less doubt if the two agree" in text


@pytest.mark.property
@pytest.mark.parametrize(
    ("texts", "words", "headline"),
    [
        ({}, "{pull} min", "Pull at {pull} min, counted from the closed door"),
        (
            {"thickness": "2 in", "thinnest": "1/16 in"},
            "{pull} min, thin section over-baked from {over}",
            "No single pull: heavy section needs {pull} min, thin one over-baked from {over}",
        ),
        (
            {"thickness": "2 in"},
            "{pull} min, may be over-baked from {over}",
            "Pull at {pull} min from the closed door, may be over-baked from {over}",
        ),
    ],
)
def test_the_answer_itself_says_where_no_pull_works(texts: dict[str, str], words: str, headline: str) -> None:
    """A phone's plate shows nothing else. The number stays what it was."""
    outcome = answer(texts)
    minutes = {"pull": f"{value(outcome, 'safe-pull'):.0f}", "over": int(value(outcome, "over-bake"))}
    assert outcome.answers["safe-pull"].text == words.format(**minutes)
    assert outcome.headline == headline.format(**minutes)
    assert len(outcome.answers["safe-pull"].text) <= 44
    (gift,) = [one for one in outcome.gifts if one.meaning == "oven-time"]
    assert gift.text == f"{minutes['pull']} min"


@pytest.mark.derived
@pytest.mark.parametrize(
    ("texts", "sheet", "over"),
    [
        ({}, "54", "50"),
        ({"longest-time": "60"}, "", ""),
    ],
)
def test_the_sheet_s_pull_past_over_bake_is_said(texts: dict[str, str], sheet: str, over: str) -> None:
    """By the referee: the sheet to the letter is at 53.25 min; the fast end's over-bake at 50.67 min, with 60 min as the longest
    time at 61.18."""
    referee = Referee(FORM | texts)
    fast = referee.heated(referee.path_m, 1.25)
    late = min(fast.when_made(referee.longest_min, one) for one in referee.activations)
    asked = referee.heated(referee.path_m, 1.0).reach_min(referee.schedule_degC) + 20
    assert (ceil(asked) > late) == bool(sheet)
    outcome = answer(texts)
    assert (value(outcome, "sheet-pull") > value(outcome, "over-bake")) == bool(sheet)
    expected = (
        [
            f"By the sheet, to the letter, the pull is at {sheet} min, and over-bake may begin at {over} min: the two do not "
            "fit at this setting. A probe in the heaviest section and the maker's own longest time decide."
        ]
        if sheet
        else []
    )
    assert said(outcome, "longest-time") == expected


@pytest.mark.property
def test_nothing_decides_between_two_sections_that_no_pull_serves() -> None:
    outcome = answer({"thickness": "2 in", "thinnest": "1/16 in"})
    assert value(outcome, "sheet-pull") > value(outcome, "over-bake")
    assert said(outcome, "longest-time") == []


@pytest.mark.derived
@pytest.mark.parametrize(("oven", "warned"), [("420", False), ("450", True)])
def test_metal_far_over_the_hottest_point(oven: str, warned: bool) -> None:
    """400 F is the sheet's hottest point: more than 27 F over it, the rate is held and the reader is told."""
    texts = said(answer({"oven": oven, "thickness": "1/16"}), "oven")
    assert any("goes more than 27 F over 400 F (204 C)" in one for one in texts) == warned


# ------------------------------------------------------------------ inputs that do not fit each other

HOTTER = (
    "Second point, time does not fit: the hotter point of a data sheet must take less time than the cooler"
)
NO_POWDER = (
    "Second point, time does not fit: the hotter point takes {} time than any coating powder's would. "
    "Check that both points are of the same powder and are metal temperatures"
)


@pytest.mark.derived
@pytest.mark.parametrize(
    ("texts", "key", "sentence"),
    [
        pytest.param(
            {"second-temperature": "375"},
            "second-temperature",
            "Second point, temperature must differ from schedule temperature",
            id="equal-temperatures",
        ),
        pytest.param({"second-time": "25"}, "second-time", HOTTER, id="hotter-takes-longer"),
        pytest.param({"second-time": "20"}, "second-time", HOTTER, id="hotter-takes-as-long"),
        pytest.param(
            {"second-temperature": "350", "second-time": "12"}, "second-time", HOTTER, id="cooler-is-shorter"
        ),
        # Ea = R ln(20/t2)/(1/463.71 K - 1/477.59 K), 132.6 kJ/mol times the logarithm
        pytest.param({"second-time": "19.5"}, "second-time", NO_POWDER.format("hardly less"), id="Ea-3"),
        pytest.param({"second-time": "4"}, "second-time", NO_POWDER.format("far less"), id="Ea-213"),
        pytest.param(
            {"dip": "50"},
            "recovery",
            "Enter the time to come back to setting: the air starts below it",
            id="dip-without-recovery",
        ),
        pytest.param(
            {"start": "290", "oven": "250"},
            "start",
            "Metal when it goes in must be cooler than oven setting",
            id="start-hotter-than-oven",
        ),
        pytest.param(
            {"start": "250", "oven": "250"},
            "start",
            "Metal when it goes in must be cooler than oven setting",
            id="start-at-the-oven",
        ),
        pytest.param(
            {"second-time": ""},
            "second-time",
            "Enter the second point, time, or leave both empty",
            id="no-second-time",
        ),
        pytest.param(
            {"second-temperature": ""},
            "second-temperature",
            "Enter the second point, temperature, or leave both empty",
            id="no-second-temperature",
        ),
        pytest.param(
            {"bake": "primer-to-gel"},
            "primer-share",
            "Enter the share of the schedule that gels the primer",
            id="primer-to-gel-without-share",
        ),
        pytest.param(
            {"bake": "topcoat-over-primer"},
            "primer-had",
            "Enter the share of its schedule that the primer has had",
            id="topcoat-without-primer-share",
        ),
        pytest.param(
            {"longest-time": "10"},
            "longest-time",
            "Longest time at schedule temperature must be no shorter than schedule time",
            id="longest-shorter",
        ),
    ],
)
def test_a_clash_has_its_own_sentence(texts: dict[str, str], key: str, sentence: str) -> None:
    """The sentences of the form, each beside the field that it names."""
    assert errors(texts) == [(key, sentence)]


@pytest.mark.derived
@pytest.mark.parametrize(("activation", "fits"), [(29.5, False), (30.5, True), (179.5, True), (180.5, False)])
def test_cure_speed_is_refused_outside_30_to_180_kJ_mol(activation: float, fits: bool) -> None:
    """Second time from t2 = 20 exp[(Ea/R)(1/T2 - 1/T1)], T 375 and 400 F."""
    span = 1 / (celsius(400) + ZERO) - 1 / (celsius(375) + ZERO)
    assert run(SLUG, {"second-time": f"{20 * exp(activation * 1000 / GAS * span):.6f}"}).ok == fits


# ------------------------------------------------------------------ primer and topcoat


@pytest.mark.derived
def test_primer_to_gel_needs_its_share_only() -> None:
    """40 % of 20 min is the same bake as a schedule of 8 min, with the sheet's points in the same proportion."""
    share = answer({"bake": "primer-to-gel", "primer-share": "40"})
    short = answer({"schedule-time": "8", "second-time": "4.8", "longest-time": "40"})
    for key in TIMES:
        assert value(share, key) == pytest.approx(value(short, key), rel=1e-6), key


@pytest.mark.derived
def test_primer_under_a_topcoat_adds_up() -> None:
    """Foil at the sheet's 400 F for the safe pull: the primer, of the same sheet, gains safe-pull/12 of its schedule on top
    of the 30 % that it had. In an oven at the hottest point every minute is worth 20/12 min of the schedule."""
    outcome = answer(FOIL | {"oven": "400", "bake": "topcoat-over-primer", "primer-had": "30"})
    # JSON's pull is rounded up; the primer's sum stops at the unrounded one, at most a minute before
    most = 30 + 100 * value(outcome, "safe-pull") / 12
    assert most - 100 / 12 - 1 <= value(outcome, "primer-total") <= most + 0.01


@pytest.mark.property
def test_minutes_are_rounded_to_the_side_that_harms_nothing() -> None:
    """A pull by the sheet and a time to check never come early by a rounding, and over-bake never late."""
    for texts in (
        {},
        {"metal": "carbon-steel", "thickness": "1/8"},
        {"metal": "aluminium", "thickness": "3/8"},
    ):
        outcome = answer(texts)
        for key in ("sheet-pull", "reach-schedule", "touch-after"):
            assert outcome.answers[key].text == f"{ceil(value(outcome, key))} min"
        assert outcome.answers["over-bake"].text == f"{int(value(outcome, 'over-bake'))} min"


@pytest.mark.property
def test_the_window_is_said_in_the_same_minutes() -> None:
    outcome = answer({"oven": "380"})  # 61.5 min for the fast end, 62 for the slow one
    (said,) = (one.text for one in outcome.cautions if one.key == "airflow")
    assert f"from {int(value(outcome, 'over-bake'))} min" in said


def test_a_thinnest_section_that_heats_slower_is_stopped() -> None:
    def stopped(**texts: str) -> list[str]:
        return [one.key for one in answer(texts).cautions if one.level == "stop"]

    assert stopped(thinnest="1 in") == ["thinnest"]
    assert stopped(thinnest="5/8 in") == []
    assert stopped(shape="round-bar", thickness="1 in", thinnest="1/2 in") == []
    assert stopped(shape="round-bar", thickness="1 in", thinnest="3/4 in") == ["thinnest"]


def test_a_weight_that_no_section_of_that_area_has_is_stopped() -> None:
    """40 lb of iron (18.14 kg / 7200 = 2.52e-3 m3) on 0.05 ft2 is 0.54 m deep, a plate of 43 in from both sides."""
    outcome = answer({"shape": "weighed", "mass": "40", "area": "0.05"})
    (said_of_area,) = (one for one in outcome.cautions if one.key == "area")
    assert said_of_area.level == "stop"
    assert "43 in thick" in said_of_area.text
    assert [
        one for one in answer({"shape": "weighed", "mass": "40", "area": "6"}).cautions if one.key == "area"
    ] == []
