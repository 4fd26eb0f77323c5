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
# What a host serves compressed copies as.
HOSTS = {"gzip": ("gzip",), "brotli": ("br", "gzip"), "no compression": ()}
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
def counted(site: Path, serves: tuple[str, ...] = HOSTS["brotli"]) -> Iterator[tuple[str, Count]]:
    """The site on a free port, as scripts/serve.py serves it, with a count of what goes out. serves: which compressed copies."""
    from serve import SiteHandler

    count = Count()

    class Handler(SiteHandler):
        def translate_path(self, path: str) -> str:
            accepted = self.headers.get("Accept-Encoding", "")
            del self.headers["Accept-Encoding"]
            self.headers["Accept-Encoding"] = ", ".join(one for one in serves if one in accepted)
            return super().translate_path(path)

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


def visits(site: Path, host: str) -> Iterator[tuple[str, int, int, int]]:
    """Words; bytes until the page is there (or live), of these the engine; bytes fetched quietly after that."""
    from environment_chromium import chromium
    from playwright.sync_api import sync_playwright

    with counted(site, HOSTS[host]) as (address, count), sync_playwright() as playwright:

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
            return f"{words}, host with {host}", now, engine, count.total() - now

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


def table(site: Path) -> Iterator[str]:
    if not (site / "index.html").is_file():
        sys.exit("Build the site first: python3 scripts/serve.py --build")
    yield "| visit | page | engine | quietly after | a million of them |"
    yield "|---|---|---|---|---|"
    has_brotli = any(site.glob("assets/engine/*/*.br"))
    for host in HOSTS:
        if host == "brotli" and not has_brotli:
            continue
        for words, now, engine, after in visits(site, host):
            sizes = " | ".join(f"{size / 1e6:.2f} MB" for size in (now - engine, engine, after))
            yield f"| {words} | {sizes} | {(now + after) / 1e6:.1f} TB |"
    if not has_brotli:
        yield ""
        yield "No brotli copies were built: scripts/build.py --publish makes them."
