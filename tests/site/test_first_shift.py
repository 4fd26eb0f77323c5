"""The first shift: each rule it shows leads to the page that explains it, and its questions are sound."""

from __future__ import annotations

import re
import sys
from pathlib import Path

import pytest

from calculators.tables import table

ROOT = Path(__file__).resolve().parents[2]
sys.path.append(str(ROOT / "scripts"))

from safety_rules import chosen, filled  # noqa: E402

DOCS = ROOT / "docs"
BODY = (DOCS / "start" / "first-shift.md").read_text("utf-8")
QUESTIONS = table("first_shift")


def drawn(page: Path) -> set[str]:
    """The rules that a page shows."""
    words = " ".join(re.findall(r"<!-- rules?: ([^>]*?) -->", page.read_text("utf-8"))).split()
    return set(chosen(words)) if words else set()


def items() -> list[str]:
    """Each list item or paragraph as one line."""
    return [re.sub(r"\s+", " ", one) for one in re.split(r"\n\s*(?:- |\d+\. |\n)", BODY)]


@pytest.mark.property
def test_each_rule_leads_to_a_page_that_shows_it() -> None:
    lost = []
    for item in items():
        pages = [DOCS / "safety" / f"{name}.md" for name in re.findall(r"\]\(\.\./safety/([\w-]+)\.md", item)]
        for key in re.findall(r"<!-- rule: ([\w-]+) -->", item):
            if not any(key in drawn(page) for page in pages):
                lost.append(key)
    assert lost == []


@pytest.mark.property
def test_the_rules_whose_place_is_dangerous_on_a_first_day_are_there() -> None:
    """What can kill in each place of the shop: hood, its air, jet, ground, flame, hollows, gas, bridged safeties, hot metal."""
    needed = {
        "blast-hood", "breathing-air", "dead-man", "never-point", "test-paint", "ground-part", "no-insulating-gloves",
        "no-flame", "dust-vacuum", "nothing-closed", "nothing-wet", "gas-smell", "no-bridging", "lock-out",
        "hot-parts", "door-from-inside", "implants", "no-blowing-off",
    }  # fmt: skip
    assert needed - drawn(DOCS / "start" / "first-shift.md") == set()


@pytest.mark.property
def test_there_are_five_things_never_to_do() -> None:
    never = BODY.partition("Five things never to do")[2].partition("\n## ")[0]
    assert len(re.findall(r"\n    \d\. \*\*Never ", never)) == 5


@pytest.mark.property
def test_there_are_twelve_questions_and_the_right_place_is_no_pattern() -> None:
    assert len(QUESTIONS) == 12
    right = [row["right"] for row in QUESTIONS.values()]
    assert all(3 <= right.count(place) <= 5 for place in (1, 2, 3)), right
    assert max(len(run[0]) for run in re.finditer(r"(\d)\1*", "".join(map(str, right)))) <= 2


@pytest.mark.property
@pytest.mark.parametrize("key", QUESTIONS)
def test_a_question_stands_on_rules_and_a_page(key: str) -> None:
    row = QUESTIONS[key]
    assert 1 <= row["right"] <= len(row["options"]) == 3
    page = DOCS / f"{row['page']}.md"
    assert page.is_file()
    shown = set().union(*(drawn(one) for one in (DOCS / "safety").glob("*.md")))
    assert set(row["rules"]) <= shown
    if row["rules"] and page.stem != "if-something-goes-wrong":
        assert set(row["rules"]) & drawn(page), "the page behind Why shows one of its rules"
    assert "{" not in filled(row["why"])
