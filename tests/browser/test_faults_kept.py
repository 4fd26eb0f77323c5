"""Faults in what the device keeps, and in how a new version comes: no wrong answer, nothing typed lost, all said."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from playwright.sync_api import Page, expect

from tests.browser.conftest import Visit
from tests.browser.keeping import (
    KEPT_IMAGE,
    POWDER,
    RENEWED,
    SAVES_DATA,
    deploy,
    engine_of,
    renew,
    until,
    wait_until_image_is_kept,
    wait_until_kept,
)
from tests.browser.serving import Server, Trouble

MODE = "performance.getEntriesByName('calc:engine-ready').at(-1).detail.mode"
# The kept image changed by one bit, by many bytes, or in its length.
DAMAGE = """async ([how, url]) => {
  const name = (await caches.keys()).find((one) => one.startsWith(`engine-${url.split("/").at(-2)} `));
  const cache = await caches.open(name);
  const old = await cache.match(url);
  let bytes = new Uint8Array(await old.arrayBuffer());
  const place = Math.floor(0.7 * bytes.length);
  if (how === "one bit") bytes[place] ^= 4;
  if (how === "a page") bytes.fill(0x5a, place, place + 65_536);
  if (how === "all zeros") bytes.fill(0);
  if (how === "shorter") bytes = bytes.slice(0, place);
  if (how === "empty") bytes = new Uint8Array(0);
  await cache.put(url, new Response(bytes, how === "no sum" ? {} : { headers: old.headers }));
}"""
SOUND = """async ([before, url]) => {
  const kept = await caches.match(url);
  if (!kept) return false;
  const hash = new Uint8Array(await crypto.subtle.digest("SHA-256", await kept.arrayBuffer()));
  return hash.join() === before;
}"""
HASH = """async (url) => {
  const kept = await (await caches.match(url)).arrayBuffer();
  return new Uint8Array(await crypto.subtle.digest("SHA-256", kept)).join();
}"""


def test_a_damaged_kept_image_is_noticed_and_made_anew(visit: Callable[..., Visit]) -> None:
    at = visit()
    at.goes("cure/cure-plan/?oven=425+F&v=1")
    calculator = at.calculator("cure-plan")
    calculator.reaches("live")
    answers = calculator.answers()
    wait_until_image_is_kept(at.page)
    url = at.page.evaluate(KEPT_IMAGE)
    before = at.page.evaluate(HASH, url)
    for how in ("one bit", "a page", "all zeros", "shorter", "empty", "no sum"):
        at.page.evaluate(DAMAGE, [how, url])
        at.warnings.clear()
        at.page.reload()
        calculator.reaches("live")
        assert any("kept image cannot be used" in warning for warning in at.warnings), how
        assert calculator.answers() == answers
        assert at.page.evaluate(MODE) == "image"
        until(at.page, SOUND, [before, url])
    at.warnings.clear()
    at.page.reload()
    calculator.reaches("live")
    assert not any("kept image" in warning for warning in at.warnings)


NO_STORAGE = """
  Storage.prototype.setItem = () => { throw new DOMException("full", "QuotaExceededError"); };
"""


def test_a_full_device(keeps: Visit, copy: Server) -> None:
    """No room for the pages, the engine or a copy of what is typed: all of it still works, and a link holds the rest."""
    keeps.context.add_init_script(NO_STORAGE)
    browser = keeps.context.new_cdp_session(keeps.page)
    browser.send("Storage.overrideQuotaForOrigin", {"origin": copy.served.address, "quotaSize": 100_000})
    keeps.goes("cure/cure-plan/")
    calculator = keeps.calculator("cure-plan")
    calculator.put("oven", "425")
    calculator.reaches("live")
    keeps.page.wait_for_timeout(6_000)
    assert keeps.page.evaluate(KEPT_IMAGE) is None
    assert (
        keeps.page.evaluate("navigator.serviceWorker.getRegistration().then((kept) => Boolean(kept?.active))")
        is False
    )
    # it was not fetched in vain: pages of other stages were never asked for
    assert not any("/inspect/" in path for path in copy.served.asked)
    calculator.act("add-to-job")
    expect(calculator.status).to_contain_text("no room left for the job")
    keeps.page.reload()
    calculator.reaches("live")
    assert calculator.holds()["oven"] == "425"


def update(page: Page) -> None:
    page.evaluate("navigator.serviceWorker.getRegistration().then((kept) => kept.update().catch(() => {}))")


def test_two_tabs_when_a_new_version_comes(keeps: Visit, copy: Server) -> None:
    page = keeps.page
    keeps.goes("spray/powder-needed/")
    wait_until_kept(page)
    page.reload()
    other = keeps.context.new_page()
    other.goto(f"{copy.served.address}/spray/powder-needed/?v=1&coats=2")
    powder = keeps.calculator("powder-needed")
    powder.put("film", "3.25")
    there = type(powder)(other, "powder-needed")
    there.put("film", "4.5")
    there.reaches("live")
    renew(copy.served.root)
    update(page)
    for tab in (page, other):
        expect(tab.locator(".new-version")).to_contain_text("newer version", timeout=30_000)
    page.locator(".new-version").get_by_role("button", name="Reload").click()
    expect(page.locator("h1")).to_have_text(RENEWED)
    expect(powder.field("film")).to_have_value("3.25")
    # the other tab was not reloaded: it says that it is the older one, holds what was typed, and still answers
    expect(other.locator(".new-version")).to_contain_text("from an older version")
    expect(other.locator("h1")).to_have_text(POWDER)
    assert there.holds()["film"] == "4.5"
    there.put("film", "5")
    there.reaches("live")
    other.locator(".new-version").get_by_role("button", name="Reload").click()
    expect(other.locator("h1")).to_have_text(RENEWED)
    expect(there.field("film")).to_have_value("5")


def test_a_new_version_takes_over_while_a_download_hangs(keeps: Visit, copy: Server) -> None:
    """The browser would wait for minutes until the older worker has no request open."""
    page = keeps.page
    keeps.goes("cure/run-a-bake/")
    wait_until_kept(page)
    # so that no engine starts by itself
    keeps.context.add_init_script(SAVES_DATA)
    keeps.goes("spray/powder-needed/")
    renew(copy.served.root)
    update(page)
    line = page.locator(".new-version")
    expect(line).to_contain_text("newer version", timeout=30_000)
    copy.served.troubles["pyodide.asm.wasm"] = Trouble(quiet_after_bytes=100_000)
    powder = keeps.calculator("powder-needed")
    powder.put("film", "3.25")
    powder.reaches("starting")
    page.wait_for_timeout(1_000)
    line.get_by_role("button", name="Reload").click()
    expect(page.locator("h1")).to_have_text(RENEWED, timeout=30_000)
    expect(powder.field("film")).to_have_value("3.25")
    copy.served.over.set()


def test_a_kept_page_whose_engine_is_gone(keeps: Visit, copy: Server) -> None:
    """The host has the newest engine only: the page says so, and its line leads on."""
    page = keeps.page
    keeps.goes("cure/run-a-bake/")
    wait_until_kept(page)
    copy.served.troubles["pyodide.asm.js"] = Trouble(missing=True)
    keeps.goes("spray/powder-needed/")
    powder = keeps.calculator("powder-needed")
    powder.put("film", "3.25")
    powder.reaches("unavailable")
    expect(powder.status).to_contain_text("by the line at its foot")
    renew(copy.served.root)
    update(page)
    line = page.locator(".new-version")
    expect(line).to_contain_text("newer version", timeout=30_000)
    copy.served.troubles.clear()
    line.get_by_role("button", name="Reload").click()
    expect(page.locator("h1")).to_have_text(RENEWED, timeout=30_000)
    expect(powder.field("film")).to_have_value("3.25")
    powder.reaches("live")


def test_a_kept_image_is_no_leave_to_run_other_files(visit: Callable[..., Visit]) -> None:
    """Where no service worker holds the interpreter's files, they are held against their hashes at each visit."""
    at = visit()
    at.goes("cure/cure-plan/?oven=425+F&v=1")
    calculator = at.calculator("cure-plan")
    calculator.reaches("live")
    wait_until_image_is_kept(at.page)
    at.served.troubles["pyodide.asm.js"] = Trouble(instead=('"use strict"', "'use strict'"))
    at.context.new_cdp_session(at.page).send("Network.clearBrowserCache")
    at.page.reload()
    calculator.reaches("unavailable")


def test_a_version_taken_back_does_not_harm_the_one_in_use(keeps: Visit, copy: Server) -> None:
    page = keeps.page
    keeps.goes("")
    wait_until_kept(page)
    page.reload()
    site = copy.served.root
    renew(site)
    update(page)
    expect(page.locator(".new-version")).to_contain_text("newer version", timeout=30_000)
    deploy(site, "spray/powder-needed/index.html", f"{RENEWED}</h1>", f"{POWDER}</h1>")
    # and at that moment the network is bad
    copy.served.troubles["/"] = Trouble(missing=True)
    update(page)
    page.wait_for_timeout(3_000)
    keeps.context.set_offline(True)
    keeps.goes("spray/powder-needed/")
    expect(page.locator("h1")).to_have_text(POWDER)


def test_the_network_dies_while_the_site_is_fetched(keeps: Visit, copy: Server) -> None:
    page = keeps.page
    copy.served.troubles["inspect/what-went-wrong/"] = Trouble(body=b"x" * 9000, breaks_after_bytes=3000)
    keeps.goes("spray/powder-needed/?film=3+mil")
    keeps.calculator("powder-needed").reaches("live")
    page.wait_for_timeout(5_000)
    names = "caches.keys().then((names) => names.filter((one) => one.startsWith('pages-')))"
    assert page.evaluate(names) == []
    copy.served.troubles.clear()
    page.reload()
    wait_until_kept(page)
    assert len(page.evaluate(names)) == 1


def test_a_damaged_interpreter_neither_runs_nor_stays(keeps: Visit, copy: Server) -> None:
    """Under an address that never changes, the browser's own cache would hold it for a year."""
    copy.served.troubles["pyodide.asm.js"] = Trouble(instead=('"use strict"', "'use strict'"), kept=True)
    keeps.goes("spray/powder-needed/?film=3+mil")
    calculator = keeps.calculator("powder-needed")
    calculator.reaches("unavailable")
    kept = keeps.page.evaluate(
        """async () => {
             const found = (await caches.keys()).filter((one) => one.startsWith("engine-"));
             const all = await Promise.all(found.map(async (one) => (await (await caches.open(one)).keys())));
             return all.flat().map((one) => one.url.split("/").at(-1));
           }"""
    )
    assert "pyodide.asm.js" not in kept
    copy.served.troubles.clear()
    keeps.page.reload()
    calculator.reaches("live")


@pytest.mark.parametrize("started", [True, False], ids=["engine started", "engine not started"])
def test_a_page_left_open_through_a_deploy(visit: Callable[..., Visit], copy: Server, started: bool) -> None:
    """On a host that keeps only the newest engine, and a device that keeps nothing."""
    at = visit()
    at.served = copy.served
    if not started:
        at.context.add_init_script(SAVES_DATA)
    at.goes("cure/cure-plan/")
    calculator = at.calculator("cure-plan")
    if started:
        calculator.put("oven", "400")
        calculator.reaches("live")
    site = copy.served.root
    old = engine_of(site)
    new = "0" * 12
    for page in site.rglob("*.html"):
        page.write_text(page.read_text("utf-8").replace(old, new), "utf-8")
    (site / "assets/engine" / old).rename(site / "assets/engine" / new)
    calculator.put("oven", "425")
    if started:
        calculator.reaches("live")
    else:
        calculator.reaches("unavailable")
        expect(calculator.status).to_contain_text("the site has been renewed")
        expect(calculator.status).to_contain_text("Reload the page")
    at.page.reload()
    assert calculator.holds()["oven"] == "425"
    calculator.reaches("live")
