"""Sayings, checked: each has a verdict in so many words, and what is called true or false follows from the calculators."""

from __future__ import annotations

import re
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]
sys.path.append(str(ROOT / "scripts"))

from worked import answers, worked_html  # noqa: E402

BODY = (ROOT / "docs" / "reference" / "sayings-checked.md").read_text("utf-8")
SAYINGS = dict(re.findall(r"\n### ([^\n]+)\n\n(.*?)(?=\n##|\n\*Also)", BODY, re.S))
VERDICT = re.compile(r"\*\*(?:True|False|Partly|Nobody|It depends)\b[^*]*\*\*")
NUMBERS = (
    "twenty",
    "twenty-one",
    "twenty-two",
    "twenty-three",
    "twenty-four",
    "twenty-five",
    "twenty-six",
    "twenty-seven",
)


@pytest.mark.property
def test_there_are_as_many_as_the_page_says_and_fifteen_at_least() -> None:
    assert len(SAYINGS) >= 15
    assert f"Here are {NUMBERS[len(SAYINGS) - 20]}" in BODY


@pytest.mark.property
@pytest.mark.parametrize("saying", SAYINGS)
def test_a_saying_opens_with_its_verdict_and_leads_to_evidence(saying: str) -> None:
    assert VERDICT.match(SAYINGS[saying])
    assert re.search(r"<!-- worked: |\]\(\.\./", SAYINGS[saying])


@pytest.mark.property
def test_an_answer_in_prose_is_the_calculators_own_and_leads_back_to_it() -> None:
    html = worked_html("powder-needed", "powder", "film=5+mil")
    assert answers("powder-needed", {"film": "5 mil"})["powder"].text in html
    assert 'href="~/spray/powder-needed/?film=5+mil&amp;v=' in html


@pytest.mark.property
@pytest.mark.parametrize(
    ("slug", "key", "pair"),
    [("powder-needed", "powder", "film=much"), ("powder-needed", "powder", "flim=5+mil"), ("powder-needed", "pwder", "film=5")],
)  # fmt: skip
def test_a_word_that_a_calculator_does_not_take_stops_the_build(slug: str, key: str, pair: str) -> None:
    with pytest.raises(KeyError):
        worked_html(slug, key, pair)


def number(slug: str, key: str, **texts: str) -> float:
    value = answers(slug, {name.replace("_", "-"): text for name, text in texts.items()})[key].value
    assert isinstance(value, float | int)
    return float(value)


@pytest.mark.derived
def test_the_verdicts_follow_from_the_numbers() -> None:
    """Mass is area times film: twice the film, twice the powder. A film on both flanks moves a thread by 2 t / sin 30 = 4 t,
    a hole by 2 t. Heat per area goes with thickness, and what takes it up stays: twice the thickness, near twice the time. A tank
    of twice the volume holds twice the air, and in the long run none."""
    assert number("powder-needed", "powder", film="5 mil") == pytest.approx(
        2 * number("powder-needed", "powder", film="2.5 mil")
    )
    assert number(
        "fit-after-film", "change", kind="thread-60", size="1/2", pitch="1/13", film="3", coats="1"
    ) == pytest.approx(12)
    assert number("fit-after-film", "change", kind="hole", size="0.5", film="3", coats="1") == pytest.approx(
        6
    )
    thin, thick = (
        number("cure-plan", "reach-schedule", metal="carbon-steel", thickness=f"1/{n} in") for n in (4, 2)
    )
    assert thick / thin == pytest.approx(2, rel=0.05)
    small, large = (
        {key: number("blast-plan", key, nozzle="2", compressor="10 cfm", tank=f"{gal} gal", helmet_air="0", pressure="90 psi")
         for key in ("tank-time", "open-share")}
        for gal in (60, 120)
    )  # fmt: skip
    assert large["tank-time"] == pytest.approx(2 * small["tank-time"], rel=0.02)
    assert large["open-share"] == small["open-share"] == pytest.approx(10 / 18.5 * 100, rel=0.01)
