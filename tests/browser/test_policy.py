"""The content security policy of each page holds in the browser, and lets everything of ours run."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from playwright.sync_api import expect

from tests.browser.conftest import Visit
from tests.browser.serving import Served, Trouble
from tests.browser.test_every_page import REFUSED, WATCH


@pytest.mark.parametrize("path", ["", "cure/cure-plan/?oven=390+F", "job/job-sheet/", "no/such/"])
def test_everything_runs_under_the_policy(visit: Callable[..., Visit], path: str) -> None:
    """The live calculator, the theme's switch and the search, with nothing bypassed."""
    here = visit(bypass_csp=False)
    here.context.add_init_script(WATCH)
    here.goes(path)
    if "cure-plan" in path:
        here.calculator("cure-plan").reaches("live")
    search = here.page.locator(".md-search__input")
    search.focus()
    search.fill("bake")
    found = here.page.locator(".md-search-result__link").first
    for _ in range(20):
        # the search listens to keys, and hears none before its index has come
        search.press("End")
        here.page.wait_for_timeout(500)
        if found.is_visible():
            break
    expect(found).to_be_visible()
    assert here.page.evaluate(REFUSED) == []


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
    here = visit(bypass_csp=False)
    here.context.add_init_script(WATCH)
    # on the page itself, as an attacker's text would be: what a test evaluates from outside is not held by the policy
    here.context.add_init_script(f"addEventListener('load', () => setTimeout(() => {{ {attempt} }}, 0));")
    here.goes("cure/cure-plan/")
    here.page.wait_for_timeout(1_000)
    assert any(one.startswith(directive) for one in here.page.evaluate(REFUSED))
    assert here.page.evaluate("window.__ran === undefined")


def test_the_worker_takes_its_policy_from_its_own_response(
    visit: Callable[..., Visit], served: Served
) -> None:
    """The headers file lets WebAssembly be compiled there; with a host's word against it, it is not, and the page says so."""
    here = visit(bypass_csp=False)
    served.troubles["engine.worker.mjs"] = Trouble(
        policy="default-src 'none'; script-src 'self'; connect-src 'self'"
    )
    here.goes("cure/cure-plan/?oven=390+F")
    here.calculator("cure-plan").reaches("unavailable")
    served.troubles.clear()
    here.goes("cure/cure-plan/?oven=391+F")
    here.calculator("cure-plan").reaches("live")


@pytest.mark.parametrize(
    "attempt",
    ["fetch('https://example.org/')", "import('data:text/javascript,1')", "new Function('return 1')()"],
)
def test_what_the_worker_may_not_do_is_refused(
    visit: Callable[..., Visit], served: Served, attempt: str
) -> None:
    here = visit(bypass_csp=False)
    said: list[str] = []
    here.context.on("console", lambda message: said.append(message.text))
    served.troubles["engine.worker.mjs"] = Trouble(
        before="self.addEventListener('securitypolicyviolation', (event) => console.info('refused', event.violatedDirective));"
        f"Promise.resolve().then(async () => {{ await {attempt}; console.info('let through'); }}).catch(() => {{}});\n"
    )
    here.goes("cure/cure-plan/?oven=390+F")
    here.calculator("cure-plan").reaches("live")
    assert any(line.startswith("refused") for line in said), said
    assert "let through" not in said
