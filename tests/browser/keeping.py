"""What tests of a kept site do to it: deploy anew, and wait until the device has it."""

from __future__ import annotations

import sys
import time
from pathlib import Path
from typing import Any

from playwright.sync_api import Page

from tests.browser.conftest import ROOT

sys.path.insert(0, str(ROOT / "scripts"))

import offline_files

KEPT = "navigator.serviceWorker.ready.then((kept) => kept.active?.state === 'activated')"

SAVES_DATA = "Object.defineProperty(navigator, 'connection', { value: { saveData: true } });"


def kept_file(end: str) -> str:
    """A function that gives the address of the kept file whose name ends so."""
    return f"""async () => {{
      for (const name of await caches.keys()) {{
        for (const {{ url }} of await (await caches.open(name)).keys()) if (url.endsWith("{end}")) return url;
      }}
    }}"""


KEPT_IMAGE = kept_file("image.laid")


def engine_of(site: Path) -> str:
    return next(path.name for path in (site / "assets" / "engine").iterdir() if path.is_dir())


def deploy(site: Path, page: str, old: str, new: str) -> None:
    path = site / page
    text = path.read_text("utf-8")
    assert old in text
    path.write_text(text.replace(old, new), "utf-8")
    offline_files.write(site, engine_of(site))


POWDER, RENEWED = "Powder needed", "Powder needed, renewed"


def renew(site: Path) -> None:
    """A newer version, in which the page of powder-needed has another heading."""
    deploy(site, "spray/powder-needed/index.html", f"{POWDER}</h1>", f"{RENEWED}</h1>")


def until(page: Page, script: str, argument: Any = None, within_s: float = 60) -> None:
    """Ask until the script's promise is kept with something true; wait_for_function asks only once of a promise."""
    end = time.monotonic() + within_s
    while not page.evaluate(script, argument):
        assert time.monotonic() < end, f"still not so after {within_s} s: {script}"
        page.wait_for_timeout(200)


def wait_until_kept(page: Page) -> None:
    until(page, KEPT)


def wait_until_image_is_kept(page: Page) -> None:
    until(page, KEPT_IMAGE)
