"""waste-screen through the door: the federal list, the line of 20, and what was not measured."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calculators import run
from calculators.kit.run import Outcome
from calculators.tables import table

SLUG = "waste-screen"
# 40 CFR 261.24, Table 1: mg/L and waste number
LIST = {
    "arsenic": (5.0, "D004"),
    "barium": (100.0, "D005"),
    "cadmium": (1.0, "D006"),
    "chromium": (5.0, "D007"),
    "lead": (5.0, "D008"),
    "mercury": (0.2, "D009"),
    "selenium": (1.0, "D010"),
    "silver": (5.0, "D011"),
}


def answer(metals: str) -> Outcome:
    outcome = run(SLUG, {"metals": metals})
    assert outcome.ok, outcome.errors
    return outcome


def all_eight(**totals: float) -> str:
    return "\n".join(f"{name}, {totals.get(name, 0)}" for name in LIST)


@pytest.mark.published
@pytest.mark.parametrize("name", LIST)
def test_the_federal_list(name: str) -> None:
    """40 CFR 261.24, Table 1, read in copies (arsenic, barium, cadmium, chromium) and in 22 CCR 66261.24, which prints the

    same list (lead, mercury, selenium, silver). Waste numbers D004 to D011: in two published lists.
    """
    row = table("waste_limits")[name]
    assert (row["leached_mg_L"], row["code"]) == LIST[name]


@pytest.mark.published
@pytest.mark.parametrize(("name", "limit"), [(name, limit) for name, (limit, _) in LIST.items()])
def test_the_line_is_twenty_times_the_limit(name: str, limit: float) -> None:
    """SW-846 method 1311 (quoted by two waste consultants): the waste is leached in 20 times its mass of liquid.

    So 100 mg/kg of lead, or 20 of cadmium, can reach the limit; equal to it is hazardous (40 CFR 261.24, "equal to or greater").
    """
    at = answer(all_eight(**{name: 20 * limit}))
    assert at.answers["verdict"].value == "must-leach-test"
    assert at.answers["worst-share"].value == pytest.approx(1)
    under = answer(all_eight(**{name: 19.99 * limit}))
    assert under.answers["verdict"].value == "cannot-fail-these"
    assert under.answers["worst-share"].value == pytest.approx(0.9995)


@pytest.mark.derived
def test_the_demo_waste() -> None:
    """Lead 640 mg/kg / 20 = 32 mg/L, over 5 is 6.4; chromium 85 / 20 / 5 = 0.85; the rest is lower."""
    outcome = run(SLUG, {})
    assert outcome.answers["verdict"].value == "must-leach-test"
    assert outcome.answers["worst-share"].value == pytest.approx(6.4)
    assert outcome.answers["test-for"].value == ["Lead (D008)"]


def test_what_is_not_measured_passes_nothing() -> None:
    assert answer("lead, 10").answers["verdict"].value == "not-all-measured"
    assert answer("lead, ").answers["verdict"].value == "not-all-measured"
    assert answer("lead, ").answers["worst-share"].value is None
    seven = "\n".join(line for line in all_eight().splitlines() if not line.startswith("silver"))
    assert answer(seven).answers["not-measured"].value == ["Silver"]
    # one metal over the line decides, whatever is missing
    assert answer("lead, 500").answers["verdict"].value == "must-leach-test"


def test_of_two_samples_the_higher_counts() -> None:
    outcome = answer(all_eight(lead=90) + "\nlead, 200\nlead, ")
    assert outcome.answers["worst-share"].value == pytest.approx(2)


def test_other_words_for_a_metal() -> None:
    assert answer("Pb, 200").answers["worst-share"].value == pytest.approx(2)
    assert answer("lead, 0.02 %").answers["worst-share"].value == pytest.approx(2)


@pytest.mark.property
@settings(max_examples=40, deadline=None, derandomize=True)
@given(st.dictionaries(st.sampled_from(sorted(LIST)), st.floats(0, 5000), min_size=1))
def test_the_verdict_is_the_worst_metal_s(totals: dict[str, float]) -> None:
    outcome = answer("\n".join(f"{name}, {total!r}" for name, total in totals.items()))
    worst = max(total / 20 / LIST[name][0] for name, total in totals.items())
    assert outcome.answers["worst-share"].value == pytest.approx(worst)
    expected = (
        "must-leach-test" if worst >= 1 else "cannot-fail-these" if len(totals) == 8 else "not-all-measured"
    )
    assert outcome.answers["verdict"].value == expected


def test_a_bad_line_is_named_and_nothing_is_lost() -> None:
    outcome = run(SLUG, {"metals": "lead, 640\nunobtainium, 3"})
    assert [one.key for one in outcome.errors] == ["metals"]
    assert outcome.errors[0].message.startswith("Line 2")
    assert "unobtainium" in outcome.query


def test_a_share_just_under_the_limit_is_not_rounded_up_to_it() -> None:
    told = answer(all_eight(barium=1999))
    assert told.answers["verdict"].value == "cannot-fail-these"
    assert told.answers["worst-share"].text == "just under 1"
    assert answer(all_eight(lead=100)).answers["worst-share"].text == "1"


def test_local_codes_decide() -> None:
    assert "local codes and a qualified person decide" in run(SLUG, {}).cautions[-1].text
