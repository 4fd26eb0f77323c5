"""The answer on the page: there without scripts, and word for word the command line's once the engine runs."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any

import pytest
from playwright.sync_api import Browser, expect

from calculators import slugs
from calculators.kit.find import stage
from tests.browser.calculator_page import CalculatorOnPage, one_line
from tests.browser.conftest import Visit, launch
from tests.browser.serving import Served

CHANGED: list[tuple[str, dict[str, str]]] = [
    ("cure-plan", {"thickness": "1 1/4", "oven": "425"}),
    ("cure-plan", {"thickness": "16", "thickness-unit": "mm", "metal": "aluminium", "airflow": "gentle"}),
    ("powder-needed", {"area": "12.5", "parts": "7"}),
]


def address(slug: str) -> str:
    return f"{stage(slug)}/{slug}/"


def texts_of(answer: Mapping[str, Any]) -> dict[str, str]:
    return {key: one_line(one["text"]) for key, one in answer["answers"].items()}


def differences(shown: Mapping[str, str], expected: Mapping[str, str]) -> list[str]:
    wrong = [
        f"{key}: shown {shown.get(key)!r}, expected {text!r}"
        for key, text in expected.items()
        if text not in shown.get(key, "")
    ]
    return wrong + [f"{key}: shown, and not an answer" for key in shown.keys() - expected.keys()]


@pytest.mark.parametrize("slug", slugs())
def test_every_calculator_answers_as_the_command_line_does(
    passed_on: Callable[..., Visit], command_line: Callable[..., dict[str, Any]], slug: str
) -> None:
    """Before the engine runs the built-in answer, and after Calculate the engine's, are the command line's."""
    at = passed_on()
    at.goes(address(slug))
    calculator = at.calculator(slug)
    expected = texts_of(command_line(slug))
    assert expected
    assert not differences(calculator.answers(), expected)
    calculator.calculate()
    calculator.reaches("live")
    assert not differences(calculator.answers(), expected)
    assert not at.errors
    assert not at.leaving()


@pytest.mark.parametrize(("slug", "texts"), CHANGED)
def test_changed_fields_are_answered_as_on_the_command_line(
    visit: Callable[..., Visit],
    command_line: Callable[..., dict[str, Any]],
    slug: str,
    texts: dict[str, str],
) -> None:
    at = visit()
    at.goes(address(slug))
    calculator = at.calculator(slug)
    before = calculator.answers()
    calculator.put_all(texts)
    calculator.reaches("live")
    expected = texts_of(command_line(slug, **texts))
    assert not differences(calculator.answers(), expected)
    assert calculator.answers() != before
    at.page.wait_for_timeout(700)  # the status line is held back for screen readers
    assert command_line(slug, **texts)["headline"] in calculator.status.inner_text()


def test_a_changed_answer_takes_the_place_of_the_old_without_disturbing_the_reader(
    visit: Callable[..., Visit],
) -> None:
    """What was unfolded stays so, the focus stays in the field, and the time it took is on record."""
    at = visit()
    at.goes("cure/cure-plan/")
    calculator = at.calculator("cure-plan")
    working = calculator.outcome.locator("details").last
    working.locator("summary").click()
    before = working.inner_text()
    oven = calculator.field("oven")
    oven.focus()
    oven.fill("430")
    calculator.reaches("live")
    expect(working).to_have_attribute("open", "")
    assert working.inner_text() != before
    assert oven.evaluate("(one) => document.activeElement === one")
    took = "performance.getEntriesByName('calc:answer-time').length"
    assert at.page.evaluate(took) == 1


def test_answers_stay_right_while_the_browser_makes_its_code_fast(
    chromium: Browser, served: Served, command_line: Callable[..., dict[str, Any]]
) -> None:
    """With all that the other tests leave out: the engine warms up, and the browser compiles it a second time meanwhile."""
    ovens = ("395", "410", "430")
    expected = {oven: texts_of(command_line("cure-plan", oven=oven)) for oven in ovens}
    browser = launch(chromium.browser_type)
    page = browser.new_page(service_workers="block", bypass_csp=True)
    page.goto(f"{served.address}/{address('cure-plan')}")
    calculator = CalculatorOnPage(page, "cure-plan")
    calculator.calculate()
    for oven in ovens * 10:
        calculator.put("oven", oven)
        calculator.reaches("live")
        assert not differences(calculator.answers(), expected[oven])
        page.wait_for_timeout(300)  # in which it warms up
    browser.close()


@pytest.mark.parametrize("slug", slugs())
def test_the_built_in_answer_is_there_with_scripts_off(
    passed_on: Callable[..., Visit], command_line: Callable[..., dict[str, Any]], slug: str
) -> None:
    at = passed_on(java_script_enabled=False)
    at.goes(address(slug))
    expected = texts_of(command_line(slug))
    for key, text in expected.items():
        place = at.calculator(slug).outcome.locator(f'[data-answer="{key}"]')
        expect(place).to_be_visible()
        assert text in one_line(place.inner_text())
    # to be found by text, an element must not stand in this one
    said = at.calculator(slug).box.locator("noscript p")
    expect(said).to_be_visible()
    assert "runs no scripts here" in said.inner_text()
    # A button that does nothing must not be offered.
    expect(at.calculator(slug).box.locator('button[type="submit"]')).to_be_hidden()


def test_blast_or_not_changes_its_verdict_with_a_choice(
    visit: Callable[..., Visit], command_line: Callable[..., dict[str, Any]]
) -> None:
    at = visit()
    at.goes("prepare/blast-or-not/")
    calculator = at.calculator("blast-or-not")
    choices = calculator.field("metal").locator("option")
    values = choices.evaluate_all("(all) => all.map((one) => one.value)")
    verdicts = set()
    for value in values[:4]:
        calculator.put("metal", value)
        calculator.reaches("live")
        expected = texts_of(command_line("blast-or-not", metal=value))
        assert not differences(calculator.answers(), expected)
        verdicts.add(str(expected))
    assert len(verdicts) > 1
