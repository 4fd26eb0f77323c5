"""The built site, served, and a browser to look at it with."""

from __future__ import annotations

import io
import json
import shutil
import sys
from collections.abc import Callable, Iterator
from contextlib import redirect_stdout
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import (
    Browser,
    BrowserContext,
    BrowserType,
    ConsoleMessage,
    Page,
    Request,
    sync_playwright,
)

from calculators.kit.cli import main
from tests.browser.calculator_page import CalculatorOnPage
from tests.browser.serving import Served, Server, Trouble

ROOT = Path(__file__).resolve().parents[2]
SITE = ROOT / "site"
sys.path.insert(0, str(ROOT / "scripts"))

import environment  # noqa: E402


@pytest.fixture(scope="session")
def site_folder() -> Path:
    if not (SITE / "index.html").is_file():
        pytest.fail(
            "The site is not built: run python3 scripts/check.py --only browser, which builds it.", False
        )
    return SITE


@pytest.fixture(scope="session")
def server(site_folder: Path) -> Iterator[Server]:
    server = Server(site_folder)
    yield server
    server.shutdown()


@pytest.fixture
def served(server: Server) -> Iterator[Served]:
    server.served.troubles.clear()
    server.served.asked.clear()
    yield server.served
    server.served.troubles.clear()


@pytest.fixture
def resting_engine(served: Served) -> None:
    """For tests of looks and keys: a calculator's page starts its engine when idle, which is seconds of both processors."""
    # An empty worker never says anything. One that is late would hold a connection, and a browser has six of them for a host.
    served.troubles["engine.worker.mjs"] = Trouble(body=b"")


# The browser's second compiler and the engine's own warming up make later answers quicker and change none; together they are
# a third of what these tests would cost. test_answers.py tries both.
QUICK_TO_START = "--js-flags=--liftoff-only"
NOT_WARMED_UP = Trouble(instead=("FIRST_ROUNDS = 3", "FIRST_ROUNDS = 0"))


def launch(browsers: BrowserType, *words: str) -> Browser:
    # Without its sandbox Chromium also starts as root, as continuous integration often is.
    return browsers.launch(executable_path=environment.chromium(), args=["--no-sandbox", *words])


@pytest.fixture(scope="session")
def chromium() -> Iterator[Browser]:
    with sync_playwright() as playwright:
        browser = launch(playwright.chromium, QUICK_TO_START)
        yield browser
        browser.close()


@dataclass
class Visit:
    """A page in a fresh browser profile, with what went on there."""

    context: BrowserContext
    page: Page
    served: Served
    errors: list[str] = field(default_factory=list)
    warnings: list[str] = field(default_factory=list)
    requests: list[str] = field(default_factory=list)

    def goes(self, path: str, **words: Any) -> None:
        self.page.goto(f"{self.served.address}/{path}", **words)

    def calculator(self, slug: str, place: int = 0) -> CalculatorOnPage:
        return CalculatorOnPage(self.page, slug, place)

    def _console(self, message: ConsoleMessage) -> None:
        if message.type == "error":
            self.errors.append(message.text)
        # Playwright's own word on what the fixture below asks of it
        if message.type == "warning" and "blocked by Playwright" not in message.text:
            self.warnings.append(message.text)

    def _request(self, request: Request) -> None:
        self.requests.append(request.url)

    def watch(self) -> None:
        self.context.on("console", self._console)
        self.context.on("request", self._request)
        self.page.on("pageerror", lambda error: self.errors.append(str(error)))

    def leaving(self) -> list[str]:
        """Requests to another host."""
        inside = (f"{self.served.address}/", "data:", "blob:")
        return [url for url in self.requests if not url.startswith(inside)]


def opened_in(chromium: Browser, served: Served, **words: Any) -> Visit:
    """A page in a new profile, opened with these words for a Playwright context."""
    context = chromium.new_context(**words)
    context.set_default_timeout(15_000)
    here = Visit(context, context.new_page(), served)
    here.watch()
    return here


@pytest.fixture
def visit(chromium: Browser, served: Served) -> Iterator[Callable[..., Visit]]:
    """Opens a fresh profile, by default at a desk's size; keywords as for a Playwright context."""
    contexts = []

    def opened(width: int = 1280, height: int = 900, **words: Any) -> Visit:
        # What a device keeps is tested by itself: elsewhere every file comes from the site, as on a first visit.
        words.setdefault("service_workers", "block")
        if words["service_workers"] == "block":
            served.troubles.setdefault("engine.worker.mjs", NOT_WARMED_UP)
        # A test's own waiting is refused by a page's policy; test_policy.py holds that policy with nothing bypassed.
        words.setdefault("bypass_csp", True)
        visited = opened_in(chromium, served, viewport={"width": width, "height": height}, **words)
        contexts.append(visited.context)
        return visited

    yield opened
    for context in contexts:
        context.close()


@pytest.fixture(scope="session")
def kept_open(chromium: Browser) -> Iterator[dict[str, Visit]]:
    """Pages that go from test to test, by what they were opened with."""
    kept: dict[str, Visit] = {}
    yield kept
    for one in kept.values():
        one.context.close()


@pytest.fixture
def passed_on(
    chromium: Browser, served: Served, kept_open: dict[str, Visit]
) -> Iterator[Callable[..., Visit]]:
    """As `visit`, in a page that other tests had before: half the time, for tests that change nothing a device keeps.

    scripts: what runs in the page before its own, as text or a file.
    """
    used = []

    def opened(
        width: int = 1280, height: int = 900, scripts: tuple[str | Path, ...] = (), **words: Any
    ) -> Visit:
        words |= {"service_workers": "block", "bypass_csp": words.get("bypass_csp", True)}
        served.troubles.setdefault("engine.worker.mjs", NOT_WARMED_UP)
        key = repr((served.troubles["engine.worker.mjs"], scripts, sorted(words.items())))
        if key not in kept_open:
            kept_open[key] = opened_in(chromium, served, **words)
            for script in scripts:
                kept_open[key].context.add_init_script(
                    **{"path" if isinstance(script, Path) else "script": script}
                )
        here = kept_open[key]
        here.page.set_viewport_size({"width": width, "height": height})
        used.append(here)
        return here

    yield opened
    for here in used:
        here.page.evaluate("localStorage.clear(); sessionStorage.clear()")
        here.page.goto("about:blank")
        for heard in (here.errors, here.warnings, here.requests):
            heard.clear()


@pytest.fixture
def copy(site_folder: Path, tmp_path: Path) -> Iterator[Server]:
    """A copy of the site that a test may deploy anew; as old as the site, since dates of files are told in whole seconds."""
    shutil.copytree(site_folder, tmp_path / "site")
    server = Server(tmp_path / "site")
    yield server
    server.shutdown()


@pytest.fixture
def keeps(visit: Callable[..., Visit], copy: Server) -> Visit:
    """A visit to that copy, on a device that keeps the site."""
    here = visit(service_workers="allow")
    here.served = copy.served
    return here


def on_command_line(slug: str, **texts: str) -> dict[str, Any]:
    """The answer of the command line as JSON; the browser has to say the same."""
    words = [word for key, text in texts.items() for word in (f"--{key.replace('_', '-')}", text)]
    said = io.StringIO()
    # In this process: a new one for each question takes longer than all the rest of some tests.
    with redirect_stdout(said):
        main([slug, *words, "--json"])
    assert said.getvalue()
    answer: dict[str, Any] = json.loads(said.getvalue())
    return answer


@pytest.fixture(scope="session")
def command_line() -> Callable[..., dict[str, Any]]:
    return on_command_line
