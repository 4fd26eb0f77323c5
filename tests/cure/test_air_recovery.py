"""air-recovery through the door: logs made from known numbers, scipy as referee, and what each bad log is told."""

from __future__ import annotations

import random
from math import exp

import numpy
import pytest
from scipy.optimize import curve_fit
from scipy.stats import t

from calculators import run
from calculators.cure._air_recovery_inputs import EXAMPLE_LOG
from calculators.kit.run import Outcome
from tests.asking import number

EVERY_MINUTE = [float(minute) for minute in range(16)]


def log_of(
    dip_degF: float, recovery_min: float, setting: float = 400.0, scatter_degF: float = 0.0, seed: int = 0
) -> str:
    """From the definition: 5 %, which is exp(-3), of the dip is left at the recovery time."""
    chance = random.Random(seed)
    return "\n".join(
        f"{at:g}, {setting - dip_degF * exp(-3 * at / recovery_min) + (chance.gauss(0, scatter_degF) if scatter_degF else 0):.2f}"
        for at in EVERY_MINUTE
    )


def recovered(log: str, **texts: str) -> Outcome:
    outcome = run(
        "air-recovery", {"air-log": log, **{key.replace("_", "-"): text for key, text in texts.items()}}
    )
    assert outcome.ok, outcome.errors
    return outcome


def cautioned(outcome: Outcome, words: str) -> bool:
    return any(words in caution.text for caution in outcome.cautions)


@pytest.mark.derived
@pytest.mark.parametrize(("dip", "recovery"), [(20.0, 3.0), (90.0, 8.0), (150.0, 14.0), (250.0, 25.0)])
def test_a_known_recovery_is_found_again(dip: float, recovery: float) -> None:
    """Logs made from the definition with known numbers give them back within 2 %."""
    made = recovered(log_of(dip, recovery))
    assert number(made, "dip") == pytest.approx(dip, rel=0.02)
    assert number(made, "recovery") == pytest.approx(recovery, rel=0.02)


@pytest.mark.published
@pytest.mark.parametrize("seed", range(6))
def test_values_and_ranges_against_scipy(seed: int) -> None:
    """scipy.optimize.curve_fit and scipy.stats.t on the same readings; scatter of 5 F, well over the least of 2 F."""
    log = log_of(90, 8, scatter_degF=5, seed=seed)
    pairs = [tuple(map(float, line.split(","))) for line in log.splitlines()]
    # the door is said to have closed at 0, so that a low reading in the scatter is not taken for it
    made = recovered(log, closed_at="0")

    def model(at: numpy.ndarray, dip: float, recovery: float) -> numpy.ndarray:
        return 400 - dip * numpy.exp(-3 * at / recovery)

    values, covariance = curve_fit(model, *zip(*pairs, strict=True), p0=(60, 6))
    reach = t.ppf(0.975, len(pairs) - 2)
    for key, value, variance in zip(("dip", "recovery"), values, numpy.diag(covariance), strict=True):
        answer = made.answers[key]
        assert answer.value == pytest.approx(value, rel=1e-4)
        assert answer.high == pytest.approx(value + reach * variance**0.5, rel=1e-3)
        assert answer.low == pytest.approx(value - reach * variance**0.5, rel=1e-3)


@pytest.mark.derived
def test_the_range_holds_the_truth() -> None:
    """60 logs with 3 F of scatter around a known recovery: the 95 % range holds it in at least 53 of them."""
    held = 0
    for seed in range(60):
        answer = recovered(log_of(90, 8, scatter_degF=3, seed=seed), closed_at="0").answers["recovery"]
        assert answer.low is not None and answer.high is not None
        held += answer.low <= 8 <= answer.high
    assert held >= 53


@pytest.mark.property
def test_celsius_and_clock_times_give_the_same() -> None:
    pairs = [line.split(",") for line in EXAMPLE_LOG.splitlines()]
    celsius = "\n".join(f"{at}, {(float(air) - 32) / 1.8:.6f}" for at, air in pairs)
    clock = "\n".join(
        f"23:{55 + int(at)}, {air}" if int(at) < 5 else f"0:{int(at) - 5:02}, {air}" for at, air in pairs
    )
    best = recovered(EXAMPLE_LOG)
    for made in (
        recovered(celsius, air_log_unit="C"),
        recovered(clock),
        recovered("time (min),air (F)\n" + EXAMPLE_LOG),
    ):
        for key in ("dip", "recovery", "settles-at"):
            assert number(made, key) == pytest.approx(number(best, key), rel=1e-6)


@pytest.mark.property
def test_a_log_that_starts_before_the_door_opened() -> None:
    before = "-3, 400\n-2, 399\n-1, 350\n"
    made = recovered(before + EXAMPLE_LOG)
    best = recovered(EXAMPLE_LOG)
    assert number(made, "recovery") == pytest.approx(number(best, "recovery"))
    assert cautioned(made, "taken to have closed at 0 min")
    late = recovered(EXAMPLE_LOG, closed_at="1")
    # the same curve from a minute later on: less dip, the same way back
    assert number(late, "dip") == pytest.approx(
        number(best, "dip") * exp(-3 / number(best, "recovery")), rel=0.03
    )
    assert number(late, "recovery") == pytest.approx(number(best, "recovery"), rel=0.05)


@pytest.mark.property
def test_both_numbers_go_over_into_the_plan_and_lengthen_it() -> None:
    carry = recovered(log_of(90, 8)).carries[0]
    assert carry.slug == "cure-plan"
    assert carry.texts == {"dip": "90 F", "recovery": "8 min", "oven": "400 F"}
    plan, still = run("cure-plan", dict(carry.texts)), run("cure-plan", {"oven": "400 F"})
    assert plan.ok, plan.errors
    assert number(plan, "safe-pull") > number(still, "safe-pull")


@pytest.mark.property
def test_what_the_air_does_otherwise_is_said() -> None:
    low = recovered(log_of(90, 5, setting=391))
    assert cautioned(low, "settles at 391 F")
    assert number(low, "settles-at") == pytest.approx(391, abs=1)
    assert not cautioned(recovered(log_of(90, 5, setting=391), setting="391"), "settles at")
    over = EXAMPLE_LOG.replace("10, 397", "10, 415")
    assert cautioned(recovered(over), "15 F over the setting")
    stepped = "0,310\n1,325\n2,375\n3,358\n4,396\n5,374\n6,384\n8,403\n10,394\n12,401"
    assert cautioned(recovered(stepped, closed_at="0"), "The curve misses the readings by")
    assert (
        recovered(log_of(90, 200)).answers["recovery"].value is None or not recovered(log_of(90, 200)).carries
    )


@pytest.mark.derived
@pytest.mark.parametrize(
    ("log", "words"),
    [
        ("0,400\n1,400\n2,400\n3,400", "never reads clearly below the setting"),
        ("0,310\n1,310\n2,310\n3,310", "how fast the air comes back"),
        ("0,310\n1,325\n2,312\n3,330", "scatter too much, or end before the air is back"),
    ],
)
def test_air_that_cannot_tell_gives_no_number(log: str, words: str) -> None:
    """Logs made by hand that hold no recovery: a sentence instead of a number, and nothing to carry."""
    made = recovered(log, closed_at="0")
    for key in ("dip", "recovery"):
        assert made.answers[key].value is None
        assert words in made.answers[key].text
    assert not made.carries
    assert words in made.headline


@pytest.mark.derived
@pytest.mark.parametrize(
    ("log", "texts", "key", "words"),
    [
        ("0,310\n1,340\n2,350", {}, "air-log", "must have at least 4 lines"),
        (
            "0,310\n2,340\n1,350\n4,370",
            {},
            "air-log",
            "reading 3 (1 min) does not come after reading 2 (2 min)",
        ),
        ("0,310\n1,340\n1,350\n4,370", {}, "air-log", "write the seconds if the clock is coarse"),
        (EXAMPLE_LOG, {"closed-at": "20"}, "closed-at", "must lie within the log, 0 to 15 min"),
    ],
)
def test_a_log_that_cannot_be_read(log: str, texts: dict[str, str], key: str, words: str) -> None:
    """Logs spoiled by hand, one way each: the sentence names what is wrong."""
    outcome = run("air-recovery", {"air-log": log, **texts})
    assert not outcome.ok
    assert outcome.errors[0].key == key
    assert words in outcome.errors[0].message
