"""The theme's own script comes after an answer that is on its way, and at once to whoever touches the page."""

from __future__ import annotations

from collections.abc import Callable

from playwright.sync_api import expect

from tests.browser.calculator_page import START_ms
from tests.browser.conftest import Visit
from tests.browser.serving import Served, Trouble

CAME = "performance.getEntriesByType('resource').filter(one => /bundle.*js$/.test(one.name)).map(one => one.startTime)"
ANSWERED = "performance.getEntriesByName('calc:answer').map(one => one.startTime)"
AT_WORK = "document.documentElement.hasAttribute('data-js-focus-visible')"
LIKE_THAT_LATER_ms = 1000


def works(at: Visit) -> None:
    """What only that script does: it finds pages, and it switches the colours."""
    at.page.locator(".md-search__input").click()
    at.page.wait_for_function(AT_WORK)
    at.page.locator(".md-search__input").fill("respirator")
    # the index is read in a worker of the theme's, which takes its time on a busy machine
    expect(at.page.locator(".md-search-result__link").first).to_be_visible(timeout=30_000)
    at.page.keyboard.press("Escape")
    scheme = at.page.locator("body").get_attribute("data-md-color-scheme")
    at.page.locator('.md-header__option label:not([hidden])[for^="__palette"]').click()
    expect(at.page.locator("body")).not_to_have_attribute("data-md-color-scheme", scheme or "")


def test_an_answer_that_a_link_asks_for_goes_first(visit: Callable[..., Visit]) -> None:
    at = visit()
    at.goes("cure/cure-plan/?thickness=1+in&v=1")
    at.calculator("cure-plan").reaches("live")
    works(at)
    (came,) = at.page.evaluate(CAME)
    assert came > at.page.evaluate(ANSWERED)[0]
    assert at.errors == []


def test_a_page_that_asks_nothing_waits_for_nothing(
    visit: Callable[..., Visit], resting_engine: None
) -> None:
    at = visit()
    at.goes("cure/cure-plan/")
    works(at)
    assert at.page.evaluate(ANSWERED) == []
    assert at.errors == []


def test_whoever_touches_the_page_before_its_answer_need_not_wait(
    visit: Callable[..., Visit], served: Served
) -> None:
    served.troubles["pyodide.asm.wasm"] = Trouble(delay_s=60)
    at = visit()
    at.goes("cure/cure-plan/?thickness=1+in&v=1")
    at.page.wait_for_timeout(LIKE_THAT_LATER_ms)
    assert not at.page.evaluate(AT_WORK)
    at.page.locator(".md-search__input").click()
    at.page.wait_for_function(AT_WORK, timeout=LIKE_THAT_LATER_ms)
    works(at)
    assert at.page.evaluate(ANSWERED) == []


def test_an_answer_that_never_comes_is_not_waited_for(visit: Callable[..., Visit], served: Served) -> None:
    served.troubles["pyodide.asm.wasm"] = Trouble(delay_s=60)
    at = visit()
    at.goes("cure/cure-plan/?thickness=1+in&v=1")
    at.page.wait_for_function(AT_WORK, timeout=START_ms)
    assert at.page.evaluate(ANSWERED) == []
