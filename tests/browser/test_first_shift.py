"""The first shift's questions: by hand, by keyboard, kept on the device, without scripts, and on paper."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from playwright.sync_api import Page, expect

from calculators.tables import table
from tests.browser.conftest import Visit
from tests.browser.test_wall_sheets import PAPERS

PAGE = "start/first-shift/"
QUESTIONS = table("first_shift")
KEPT = "localStorage.getItem('first-shift-check')"


def choose(page: Page, key: str, place: int) -> None:
    page.locator(f'[data-question="{key}"] input[value="{place}"]').check()


def wrong(key: str) -> int:
    return QUESTIONS[key]["right"] % len(QUESTIONS[key]["options"]) + 1


@pytest.mark.property
def test_each_choice_is_judged_at_once_and_explained(visit: Callable[..., Visit]) -> None:
    here = visit(width=390, height=800)
    here.goes(PAGE)
    key = next(iter(QUESTIONS))
    one = here.page.locator(f'[data-question="{key}"]')
    expect(one.locator("details")).not_to_have_attribute("open", "")
    choose(here.page, key, wrong(key))
    expect(one.locator(".self-check-verdict")).to_have_text("Not this one. Read why.")
    expect(one.locator("details p")).to_be_visible()
    choose(here.page, key, QUESTIONS[key]["right"])
    expect(one.locator(".self-check-verdict")).to_have_text("Right.")
    assert here.errors == []
    assert here.leaving() == []


@pytest.mark.property
def test_the_count_and_the_choices_outlive_the_page(visit: Callable[..., Visit]) -> None:
    here = visit()
    here.goes(PAGE)
    missed = list(QUESTIONS)[3]
    for key, row in QUESTIONS.items():
        choose(here.page, key, wrong(key) if key == missed else row["right"])
    score = here.page.locator(".self-check-score")
    told = f"{len(QUESTIONS) - 1} of {len(QUESTIONS)} right."
    expect(score).to_contain_text(told)
    here.page.reload()
    expect(score).to_contain_text(told)
    expect(here.page.locator(f'[data-question="{missed}"]')).to_have_attribute("data-state", "wrong")
    here.page.get_by_role("button", name="Answer again from the start").click()
    expect(score).to_be_empty()
    assert here.page.locator(".self-check input:checked").count() == 0
    assert here.page.evaluate(KEPT) is None


@pytest.mark.property
@pytest.mark.parametrize("damaged", ["{", "[]", "7", '{"closed-leg": 99}'])
def test_something_unreadable_on_the_device_does_no_harm(visit: Callable[..., Visit], damaged: str) -> None:
    here = visit()
    here.goes(PAGE)
    here.page.evaluate("text => localStorage.setItem('first-shift-check', text)", damaged)
    here.page.reload()
    key = next(iter(QUESTIONS))
    choose(here.page, key, QUESTIONS[key]["right"])
    expect(here.page.locator(".self-check-score")).to_have_text(f"1 of {len(QUESTIONS)} answered.")
    assert here.errors == []


@pytest.mark.property
def test_the_keyboard_is_enough(visit: Callable[..., Visit]) -> None:
    here = visit()
    here.goes(PAGE)
    key = next(iter(QUESTIONS))
    first = here.page.locator(f'[data-question="{key}"] input').first
    first.focus()
    here.page.keyboard.press("ArrowDown")
    expect(here.page.locator(f'[data-question="{key}"] input[value="2"]')).to_be_checked()
    here.page.keyboard.press("Enter")
    expect(here.page.locator(f'[data-question="{key}"] input[value="2"]')).to_be_checked()


@pytest.mark.property
def test_without_scripts_every_answer_can_be_opened(visit: Callable[..., Visit]) -> None:
    here = visit(java_script_enabled=False)
    here.goes(PAGE)
    answers = here.page.locator(".self-check details")
    assert answers.count() == len(QUESTIONS)
    answers.first.locator("summary").click()
    expect(answers.first.locator("p")).to_be_visible()
    expect(here.page.locator(".self-check button")).to_have_count(2)
    expect(here.page.locator(".self-check button:visible")).to_have_count(0)


@pytest.mark.property
def test_paper_shows_the_choices_and_a_line_for_the_trainer_and_no_answers(
    visit: Callable[..., Visit],
) -> None:
    here = visit()
    here.goes(PAGE)
    key = next(iter(QUESTIONS))
    choose(here.page, key, 1)
    here.page.emulate_media(media="print")
    expect(here.page.locator(f'[data-question="{key}"] details')).to_be_hidden()
    expect(here.page.locator(f'[data-question="{key}"] input[value="1"]')).to_be_checked()
    expect(here.page.get_by_text("Trainer's signature")).to_be_visible()


@pytest.mark.property
@pytest.mark.parametrize("paper", PAPERS)
def test_the_button_prints_the_check_alone_on_one_sheet(visit: Callable[..., Visit], paper: str) -> None:
    here = visit()
    here.context.add_init_script("window.print = () => { window.asked = true; }")
    width, height = PAPERS[paper]
    here.page.set_viewport_size({"width": int(width), "height": int(height)})
    here.goes(PAGE)
    for key, row in QUESTIONS.items():
        choose(here.page, key, row["right"])
    here.page.get_by_role("button", name="Print for the trainer").click()
    assert here.page.evaluate("window.asked")
    here.page.emulate_media(media="print")
    expect(here.page.locator("#before-you-come")).to_be_hidden()
    assert here.page.evaluate("document.querySelector('.md-content').offsetHeight") <= height
    here.page.evaluate("window.dispatchEvent(new Event('afterprint'))")
    expect(here.page.locator("#before-you-come")).to_be_visible()
