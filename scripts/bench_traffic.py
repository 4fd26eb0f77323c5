"""What a visit moves: every byte that the server sends, headers and the service worker's own requests too."""

from __future__ import annotations

import functools
import sys
import tempfile
import threading
import time
from collections.abc import Iterator
from contextlib import contextmanager
from http.server import ThreadingHTTPServer
from pathlib import Path
from typing import Any

CALCULATOR = "cure/cure-plan/?thickness=1+in&v=1"
GUIDE = "cure/run-a-bake/"
LIVE = "document.querySelector('[data-outcome]')?.dataset.state === 'live'"
# Nothing sent for so long: the device has what it keeps.
QUIET_s = 8.0


class Count:
    """Bytes sent, by address."""

    def __init__(self) -> None:
        self.sent: dict[str, int] = {}
        self.last = time.monotonic()

    def add(self, path: str, size: int) -> None:
        self.sent[path] = self.sent.get(path, 0) + size
        self.last = time.monotonic()

    def total(self, engine: bool | None = None) -> int:
        return sum(size for path, size in self.sent.items() if engine in (None, "/assets/engine/" in path))


@contextmanager
def counted(site: Path) -> Iterator[tuple[str, Count]]:
    """The site on a free port, as scripts/serve.py serves it, with a count of what goes out."""
    from serve import SiteHandler

    count = Count()

    class Handler(SiteHandler):
        def handle_one_request(self) -> None:
            plain, sent = self.wfile, 0

            class Counting:
                def write(_self, data: bytes) -> int:
                    nonlocal sent
                    sent += len(data)
                    return int(plain.write(data))

                def __getattr__(_self, name: str) -> Any:
                    return getattr(plain, name)

            self.wfile = Counting()
            try:
                super().handle_one_request()
            finally:
                self.wfile = plain
                if sent:
                    count.add(self.path, sent)

    server = ThreadingHTTPServer(
        ("127.0.0.1", 0), functools.partial(Handler, directory=str(site), quiet=True)
    )
    server.daemon_threads = True
    threading.Thread(target=server.serve_forever, daemon=True).start()
    try:
        yield f"http://127.0.0.1:{server.server_port}", count
    finally:
        server.shutdown()


def visits(site: Path) -> Iterator[tuple[str, int, int, int]]:
    """Words; bytes until the page is there (or live), of these the engine; bytes fetched quietly after that."""
    from environment_chromium import chromium
    from playwright.sync_api import sync_playwright

    with counted(site) as (address, count), sync_playwright() as playwright:

        def visit(context: Any, words: str, path: str, live: bool) -> tuple[str, int, int, int]:
            count.sent.clear()
            page = context.new_page()
            page.goto(f"{address}/{path}", wait_until="load")
            if live:
                page.wait_for_function(LIVE, timeout=120_000)
            now, engine = count.total(), count.total(True)
            count.last = time.monotonic()
            while time.monotonic() - count.last < QUIET_s:
                page.wait_for_timeout(500)
            page.close()
            return words, now, engine, count.total() - now

        for first, path, live in (
            ("a guide", GUIDE, False),
            ("a calculator, to the live answer", CALCULATOR, True),
        ):
            with tempfile.TemporaryDirectory() as profile:
                context = playwright.chromium.launch_persistent_context(
                    profile, executable_path=str(chromium()), args=["--no-sandbox"], bypass_csp=True
                )
                yield visit(context, f"first visit: {first}", path, live)
                if live:
                    yield visit(
                        context, "then another calculator", "spray/powder-needed/?film=3+mil&v=1", True
                    )
                    yield visit(context, "the same calculator once more", path, True)
                context.close()


def brotli_saves(site: Path) -> int:
    """Bytes that a host with brotli saves on the engine of a first visit; 0 where those copies were not built."""
    saved = 0
    for name in ("pyodide.mjs", "pyodide.asm.js", "pyodide.asm.wasm", "image.bin"):
        for copy in site.glob(f"assets/engine/*/{name}.br"):
            saved += copy.with_suffix(".gz").stat().st_size - copy.stat().st_size
    return saved


def table(site: Path) -> Iterator[str]:
    if not (site / "index.html").is_file():
        sys.exit("Build the site first: python3 scripts/serve.py --build")
    yield "| visit | page | engine | quietly after | a million of them |"
    yield "|---|---|---|---|---|"
    for words, now, engine, after in visits(site):
        page, rest = (now - engine) / 1e3, engine / 1e6
        yield f"| {words} | {page:,.1f} kB | {rest:.2f} MB | {after / 1e6:.2f} MB | {(now + after) / 1e3:,.0f} GB |"
    saved = brotli_saves(site)
    yield ""
    yield f"Brotli saves {saved / 1e6:.2f} MB of a first engine." if saved else "No brotli copies were built."
