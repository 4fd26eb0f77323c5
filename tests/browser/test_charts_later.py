"""The charts of an answer come after its numbers: the right ones, and never the ones before as if they were new."""

from __future__ import annotations

import re
from collections.abc import Callable

import pytest
from playwright.sync_api import expect

from calculators import run
from tests.browser.calculator_page import CalculatorOnPage
from tests.browser.conftest import Visit
from tests.browser.serving import Trouble

READY = "const { run_json, parts_json } ="
# In the worker: the numbers for an oven at 425 come as ever, and the charts do not.
SPOILT = """
python.runPython(`
from calculators.kit import browser
drawn = browser.figures_html
def figures_html(outcome):
    if outcome.typed["oven"].startswith("425"):
        %s
    return drawn(outcome)
browser.figures_html = figures_html
`);
"""
LINES = (
    "(outcome) => [...outcome.querySelectorAll('.calc-svg .calc-line')].map((one) => one.getAttribute('d'))"
)
DID_NOT_COME = "This chart did not come. Reload the page"


def lines_of(oven: str) -> list[str]:
    """The curves of both charts as Python draws them here."""
    drawn = run("cure-plan", {"oven": oven}).html
    return re.findall(
        r'<path class="calc-line calc-line-\d" d="([^"]+)"/>', re.sub(r"<ul.*?</ul>", "", drawn)
    )


def opened(visit: Callable[..., Visit], how: str = "pass") -> tuple[Visit, CalculatorOnPage]:
    at = visit()
    at.served.troubles["engine.worker.mjs"] = Trouble(instead=(READY, SPOILT % how + READY))
    at.page.clock.install()
    at.goes("cure/cure-plan/")
    calculator = at.calculator("cure-plan")
    calculator.put("oven", "410")
    has_charts_of(calculator, "410")
    return at, calculator


def has_charts_of(calculator: CalculatorOnPage, oven: str) -> None:
    calculator.reaches("live")
    expect(calculator.outcome.locator("figure")).to_have_count(2)
    expect(calculator.outcome.locator("figure[aria-busy]")).to_have_count(0)
    assert calculator.outcome.evaluate(LINES) == lines_of(oven)


def test_the_charts_are_of_the_answer_that_they_stand_in(visit: Callable[..., Visit]) -> None:
    _, calculator = opened(visit)
    numbers = calculator.outcome.locator("figure details").first
    numbers.locator("summary").click()
    for oven in ("395", "425", "430"):
        calculator.put("oven", oven)
        has_charts_of(calculator, oven)
    expect(numbers).to_have_attribute("open", "")


def test_charts_that_cannot_be_drawn_are_not_the_ones_before(visit: Callable[..., Visit]) -> None:
    _, calculator = opened(visit, "raise ZeroDivisionError")
    before = calculator.answers()
    calculator.put("oven", "425")
    calculator.reaches("live")
    assert calculator.answers() != before
    for place in range(2):
        expect(calculator.outcome.locator("figure").nth(place)).to_contain_text(DID_NOT_COME)
    expect(calculator.outcome.locator("figure[aria-busy]")).to_have_count(0)
    assert calculator.outcome.evaluate(LINES) == []
    for act, said in (("copy-answer", "Nothing copied"), ("add-to-job", "Not added")):
        calculator.act(act)
        expect(calculator.status).to_contain_text(
            f"{said}: a part of the answer did not come. Reload the page"
        )
    calculator.put("oven", "430")
    has_charts_of(calculator, "430")


def test_a_refused_entry_leaves_the_charts_of_the_answer_that_is_shown(visit: Callable[..., Visit]) -> None:
    _, calculator = opened(visit)
    calculator.put("oven", "425")
    calculator.put("oven", "warm")
    calculator.calculate()
    calculator.reaches("errors")
    expect(calculator.outcome.locator("figure[aria-busy]")).to_have_count(0)
    shown = calculator.outcome.evaluate(LINES)
    assert shown in (lines_of("410"), lines_of("425"))
    pull = calculator.answers()["safe-pull"]
    assert (
        pull
        == run("cure-plan", {"oven": "425" if shown == lines_of("425") else "410"}).answers["safe-pull"].text
    )


@pytest.mark.parametrize("asks_on", [False, True])
def test_a_worker_that_stops_between_numbers_and_charts(visit: Callable[..., Visit], asks_on: bool) -> None:
    at, calculator = opened(visit, "while True: pass")
    before = calculator.answers()
    calculator.put("oven", "425")
    calculator.reaches("live")
    numbers = calculator.answers()
    assert numbers != before
    expect(calculator.outcome.locator("figure[aria-busy]")).to_have_count(2)
    if asks_on:
        calculator.put("oven", "430")
        calculator.reaches("stale")
    at.page.clock.run_for(31_000)
    calculator.reaches("unavailable" if asks_on else "live")
    expect(calculator.outcome.locator("figure").first).to_contain_text(DID_NOT_COME)
    assert calculator.outcome.evaluate(LINES) == []
    assert calculator.answers() == numbers
    at.page.clock.run_for(11_000)
    calculator.put("oven", "395")
    has_charts_of(calculator, "395")
