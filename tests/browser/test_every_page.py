"""Every page once, at a phone's size: accessible, in its width, under its policy, without an error, asking no other host."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import environment
import pytest
from playwright.sync_api import Page

from tests.browser.conftest import SITE, Visit

# What a page's policy refuses.
WATCH = """
  window.__refused = [];
  addEventListener("securitypolicyviolation", (event) => window.__refused.push(`${event.violatedDirective} ${event.blockedURI}`));
"""
REFUSED = "window.__refused"
AXE = environment.NODE_FOLDER / "node_modules/axe-core/axe.min.js"
# One page of a kind.
KINDS = [
    "index.html",
    "cure/cure-plan/index.html",
    "cure/run-a-bake/index.html",
    "reference/how-far-to-trust/index.html",
]


def pages() -> list[str]:
    """Every page, or none where the site is not built, which the fixtures report."""
    return sorted(path.relative_to(SITE).as_posix() for path in SITE.rglob("*.html")) or ["index.html"]


def findings(page: Page) -> list[str]:
    """What axe objects to, with the place."""
    if not page.evaluate("'axe' in window"):
        page.evaluate(AXE.read_text(encoding="utf-8"))
    found: dict[str, Any] = page.evaluate("axe.run(document, {resultTypes: ['violations']})")
    return [
        f"{one['id']}: {node['target']} {node['failureSummary']}"
        for one in found["violations"]
        for node in one["nodes"]
    ]


def too_wide(page: Page) -> list[str]:
    """The elements that make a page scroll sideways."""
    return page.evaluate(
        """() => document.documentElement.scrollWidth <= innerWidth ? [] :
             [...document.querySelectorAll("main *")]
               .filter((one) => one.getBoundingClientRect().right > innerWidth + 1)
               .map((one) => one.outerHTML.slice(0, 90)).slice(0, 5).concat("wider than the screen")"""
    )


@pytest.mark.usefixtures("resting_engine")
@pytest.mark.parametrize("path", pages())
def test_page_on_a_phone(passed_on: Callable[..., Visit], path: str) -> None:
    # with nothing bypassed: what the page's policy refuses is heard of
    at = passed_on(390, 844, scripts=(WATCH, AXE), color_scheme="light", bypass_csp=False)
    at.goes(path.removesuffix("index.html"))
    assert at.page.evaluate(REFUSED) == []
    assert findings(at.page) == []
    assert too_wide(at.page) == []
    at.page.set_viewport_size({"width": 360, "height": 740})
    assert too_wide(at.page) == []
    assert at.leaving() == []
    assert at.errors == []


# The schemes that anything was drawn in.
SCHEMES = """
  window.__schemes = new Set();
  (function look() {
    if (document.body?.querySelector("h1")) window.__schemes.add(document.body.dataset.mdColorScheme);
    requestAnimationFrame(look);
  })();
"""


@pytest.mark.usefixtures("resting_engine")
@pytest.mark.parametrize("path", KINDS)
def test_page_in_the_dark(passed_on: Callable[..., Visit], path: str) -> None:
    at = passed_on(1280, 900, scripts=(SCHEMES, AXE), color_scheme="dark")
    at.goes(path.removesuffix("index.html"))
    at.page.wait_for_selector("[for=__palette_0]:visible")  # it comes with the theme's own script
    assert at.page.evaluate("[...window.__schemes]") == ["slate"]
    assert findings(at.page) == []


def test_an_answer_with_a_stop_and_an_error_are_accessible(visit: Callable[..., Visit]) -> None:
    for scheme in ("light", "dark"):
        at = visit(390, 844, color_scheme=scheme)
        at.goes("cure/cure-plan/?oven=300+F&v=1")
        calculator = at.calculator("cure-plan")
        calculator.reaches("live")
        assert calculator.outcome.locator('[data-caution="stop"]').count() >= 1
        calculator.put("thickness", "thick")
        calculator.calculate()
        calculator.reaches("errors")
        assert findings(at.page) == []
        assert too_wide(at.page) == []


def test_nothing_typed_leaves_the_device(visit: Callable[..., Visit]) -> None:
    """From typing to answer the only requests are for the site's own fixed files."""
    at = visit()
    at.goes("cure/cure-plan/")
    at.page.wait_for_function("document.documentElement.dataset.engine === 'ready'", timeout=40_000)
    at.page.wait_for_load_state("networkidle")
    at.requests.clear()
    calculator = at.calculator("cure-plan")
    calculator.put("thickness", "1.2345")
    calculator.reaches("live")
    # the browser fetches the page's own icon whenever it likes
    assert [request for request in at.requests if not request.endswith("/assets/icon.svg")] == []
