"""Cost, price and what rework does to them, against sums worked by hand."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators import run

NOTHING = {
    f"{step}-time": "0" for step in ("strip", "blast", "clean", "mask", "hang", "prebake", "spray", "oven")
}
NOTHING |= dict.fromkeys(("powder", "abrasive", "consumables", "colour-changes"), "0")
NOTHING |= dict.fromkeys(("overhead", "rework", "margin", "minimum-charge"), "0")


def answers(**texts: str) -> dict[str, float]:
    outcome = run("job-price", NOTHING | {key.replace("_", "-"): text for key, text in texts.items()})
    assert outcome.ok, outcome.errors
    return {key: one.value for key, one in outcome.answers.items()}  # type: ignore[misc]


@pytest.mark.published
def test_margin_is_a_share_of_the_price() -> None:
    """Price = cost / (1 - margin), as cost accounting defines gross margin (any textbook; from memory): 25 % on 75 is 100."""
    found = answers(strip_time="60", labour_rate="75", margin="25")
    assert found["price"] == pytest.approx(100)
    assert found["profit"] == pytest.approx(25)


@pytest.mark.derived
def test_the_bench_job__worked_by_hand() -> None:
    """Work 230 min at 30 = 115; change 15 min = 7.50; powder 1.5 x 9 = 13.50; abrasive 40 x 0.6 = 24; 8; oven 50 min at 12 = 10.

    Together 178; overhead 25 % = 222.50; rework 1 + 2.5 x 0.05 / 0.95 = 1.131579, so 251.776; over 0.7 = 359.68.
    """
    outcome = run("job-price", {})
    assert outcome.answers["cost"].value == pytest.approx(251.776, abs=1e-3)
    assert outcome.answers["price"].value == pytest.approx(359.680, abs=1e-3)
    assert outcome.answers["price-per-part"].value == pytest.approx(89.920, abs=1e-3)
    assert outcome.answers["rework-cost"].value == pytest.approx(29.276, abs=1e-3)
    assert outcome.answers["colour-change-cost"].value == pytest.approx(7.5 * 1.25 * 1.131579, abs=1e-3)
    # 100 over 89.92 is 1.11, so one part alone is charged the minimum and two are not
    assert outcome.answers["break-even-parts"].value == 2


@pytest.mark.property
@pytest.mark.parametrize("share", ["0", "5", "20", "50"])
def test_endless_redoing_at_the_same_cost(share: str) -> None:
    """1 + r + r2 + ... = 1 / (1 - r): one in r of the redone fails again."""
    found = answers(strip_time="60", labour_rate="60", rework=share, rework_factor="1")
    assert found["cost"] == pytest.approx(60 / (1 - float(share) / 100))


@pytest.mark.property
@given(st.floats(0, 90), st.floats(1, 1e4))
def test_no_margin_is_no_profit_and_a_margin_is_kept(margin: float, rate: float) -> None:
    typed = f"{margin:.6f}"
    found = answers(strip_time="60", labour_rate=f"{rate:.4f}", margin=typed)
    assert found["profit"] == pytest.approx(found["price"] * float(typed) / 100, rel=1e-6, abs=1e-6)
    assert answers(strip_time="60", labour_rate=f"{rate:.4f}")["price"] == pytest.approx(float(f"{rate:.4f}"))


def test_the_minimum_charge_rules_a_small_job() -> None:
    found = answers(strip_time="60", labour_rate="60", minimum_charge="100", parts="1")
    assert (found["price"], found["profit"]) == (100, pytest.approx(40))
    assert found["break-even-parts"] == 2


def test_powder_by_the_pound_or_the_kilogram() -> None:
    by_lb = answers(powder="10 lb", powder_price="9 a lb")["cost"]
    assert by_lb == pytest.approx(90)
    assert answers(powder="10 lb", powder_price="19.8416 a kg")["cost"] == pytest.approx(90, rel=1e-5)


def test_a_job_of_nothing_says_so() -> None:
    outcome = run("job-price", NOTHING)
    assert outcome.ok and outcome.answers["break-even-parts"].text == "none: a part costs nothing"
    assert ("caution", "labour-rate") in {(one.level, one.key) for one in outcome.cautions}


def test_money_is_shown_to_the_cent() -> None:
    shown = {key: one.text for key, one in run("job-price", {}).answers.items()}
    assert (shown["profit"], shown["rework-cost"]) == ("107.90", "29.28")
    assert run("job-price", {"minimum-charge": "12500"}).answers["price"].text == "12,500.00"
    assert run("powder-needed", {"price": "9"}).answers["powder-cost"].text == "12.06"


def test_the_share_of_the_load_is_a_fraction() -> None:
    """An hour of oven at 20 for half a load is 10, whether half is written as a fraction or in percent."""
    for half in ("0.5", "1/2", "50 %"):
        assert answers(oven_time="60", oven_running_cost="20", oven_share=half)["cost"] == pytest.approx(10)
    refused = run("job-price", {"oven-share": "50"})
    assert [error.key for error in refused.errors] == ["oven-share"]


def test_where_the_minimum_charge_stops_is_named_for_what_it_is() -> None:
    """At this batch the minimum no longer rules: 40 of material a part against a minimum of 100 is three parts."""
    texts = NOTHING | {"consumables": "120", "parts": "3", "minimum-charge": "100"}
    outcome = run("job-price", texts)
    assert outcome.answers["break-even-parts"].value == 3
    assert "minimum-charge" not in {one.key for one in outcome.cautions}
    assert outcome.answers["break-even-parts"].text == "3 parts"
    assert outcome.answers["break-even-parts"].label == "Minimum charge no longer rules from"
