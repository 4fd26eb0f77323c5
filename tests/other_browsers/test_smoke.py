"""The site in browsers of other makers: the built-in answer, a live one, and a link, against the command line."""

from __future__ import annotations

import json
import time
from collections.abc import Iterator
from typing import Any

import pytest

from tests.browser.conftest import SITE, on_command_line
from tests.browser.keeping import KEPT, KEPT_IMAGE, kept_file
from tests.browser.serving import Server
from tests.other_browsers import firefox, webkit

STATE = "document.querySelector('[data-outcome]').dataset.state"
START_s = 90


MODE = "performance.getEntriesByName('calc:engine-ready')[0].detail.mode"
# What is promised cannot be waited for in each of these browsers, so it is asked for and looked at again and again.
ALL_KEPT = f"""(window.allKept ??= Promise.all([{KEPT}, ({KEPT_IMAGE})(), ({kept_file("pyodide.asm.wasm")})()])
  .then((found) => {{ window.allKept = found.every(Boolean) || null; }})) === true"""


@pytest.fixture(scope="module")
def address() -> Iterator[str]:
    if not (SITE / "index.html").is_file():
        pytest.fail("The site is not built: run python3 scripts/check.py --only browsers.", False)
    server = Server(SITE)
    yield server.served.address
    server.shutdown()


@pytest.fixture(scope="module", params=[(firefox, "Firefox"), (webkit, "WebKit")], ids=["firefox", "webkit"])
def browser(request: pytest.FixtureRequest) -> Iterator[Any]:
    module, name = request.param
    if reason := module.why_not():
        pytest.skip(f"{module.NAME} not run: {reason}")
    started = getattr(module, name)()
    print(f"\n{started.version}")
    yield started
    started.close()


def shown(browser: Any, key: str) -> str:
    """An answer as a reader sees it, in one line."""
    text: str = browser.ask(f"document.querySelector('[data-answer={json.dumps(key)}]').innerText")
    return " ".join(text.split())


def said(slug: str, key: str, **texts: str) -> str:
    """The same answer on the command line."""
    return " ".join(on_command_line(slug, **texts)["answers"][key]["text"].split())


def until(browser: Any, script: str) -> None:
    end = time.monotonic() + START_s
    while not browser.ask(script):
        assert time.monotonic() < end, browser.ask("document.querySelector('[data-status]').innerText")
        time.sleep(0.2)


def until_live(browser: Any) -> None:
    until(browser, f"{STATE} === 'live'")


def type_in(browser: Any, name: str, text: str) -> None:
    browser.ask(
        f"""(() => {{
          const field = document.querySelector('[name={json.dumps(name)}]');
          field.focus();
          field.value = {json.dumps(text)};
          for (const kind of ["input", "change"]) field.dispatchEvent(new Event(kind, {{ bubbles: true }}));
          return true;
        }})()"""
    )


def test_the_built_in_answer_a_live_one_and_a_link(browser: Any, address: str) -> None:
    browser.goes(f"{address}/spray/powder-needed/")
    assert browser.ask(STATE) == "example"
    assert shown(browser, "powder") == said("powder-needed", "powder")

    type_in(browser, "film", "3.5")
    until_live(browser)
    live = shown(browser, "powder")
    assert live == said("powder-needed", "powder", film="3.5")
    assert live != said("powder-needed", "powder")
    assert "film=3.5" in browser.ask("location.search")
    assert browser.ask(MODE) == "image"

    browser.goes(f"{address}/cure/cure-plan/?thickness=1+in&oven=425+F&v=1")
    until_live(browser)
    assert shown(browser, "safe-pull") == said("cure-plan", "safe-pull", thickness="1 in", oven="425 F")
    assert browser.ask("document.querySelector('[name=oven]').value") == "425"


def test_a_kept_site_answers_when_its_host_is_gone(browser: Any) -> None:
    server = Server(SITE)
    page = f"{server.served.address}/cure/cure-plan/"
    browser.goes(f"{page}?thickness=1+in&oven=425+F&v=1")
    until_live(browser)
    until(browser, ALL_KEPT)
    server.shutdown()

    browser.goes(f"{page}?thickness=0.5+in&oven=400+F&v=1")
    until_live(browser)
    assert browser.ask(MODE) == "image"
    assert shown(browser, "safe-pull") == said("cure-plan", "safe-pull", thickness="0.5 in", oven="400 F")
