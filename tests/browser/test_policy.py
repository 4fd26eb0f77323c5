"""The content security policy of each page holds in the browser, and lets everything of ours run."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from tests.browser.conftest import Visit

WATCH = """
  window.__refused = [];
  addEventListener("securitypolicyviolation", (event) => window.__refused.push(`${event.violatedDirective} ${event.blockedURI}`));
"""


@pytest.mark.parametrize(
    "path",
    [
        "",
        "cure/cure-plan/?oven=390+F",
        "cure/bake-log/",
        "job/job-sheet/",
        "inspect/what-went-wrong/",
        "no/such/",
    ],
)
def test_nothing_of_ours_is_refused(visit: Callable[..., Visit], path: str) -> None:
    here = visit()
    here.context.add_init_script(WATCH)
    here.goes(path)
    if "cure-plan" in path:
        here.calculator("cure-plan").reaches("live")
    here.page.locator('label[for="__palette_1"]').first.click(force=True)
    here.page.locator('label[for="__search"]').first.click()
    here.page.locator(".md-search__input").fill("bake")
    here.page.wait_for_selector(".md-search-result__link")
    assert here.page.evaluate("window.__refused") == []


@pytest.mark.parametrize(
    ("attempt", "directive"),
    [
        (
            "document.head.append(Object.assign(document.createElement('script'), { textContent: 'window.__ran = 1' }))",
            "script-src",
        ),
        (
            "document.body.insertAdjacentHTML('beforeend', '<img src=x onerror=\"window.__ran = 1\">')",
            "script-src",
        ),
        ("document.body.insertAdjacentHTML('beforeend', '<p style=\"color: red\">x</p>')", "style-src"),
        ("fetch('https://example.org/').catch(() => {})", "connect-src"),
        (
            "document.body.append(Object.assign(document.createElement('img'), { src: 'https://example.org/x.png' }))",
            "img-src",
        ),
        ("try { eval('window.__ran = 1') } catch {}", "script-src"),
    ],
)
def test_what_is_not_ours_is_refused(visit: Callable[..., Visit], attempt: str, directive: str) -> None:
    here = visit()
    here.context.add_init_script(WATCH)
    here.goes("cure/cure-plan/")
    here.page.evaluate(f"() => {{ {attempt} }}")
    here.page.wait_for_function("window.__refused.length > 0")
    assert here.page.evaluate("window.__refused[0]").startswith(directive)
    assert here.page.evaluate("window.__ran === undefined")
