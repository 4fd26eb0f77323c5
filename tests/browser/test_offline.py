"""The site kept on the device: whole or not at all, without a network, and through a deploy."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from playwright.sync_api import expect

from tests.browser.calculator_page import START_ms
from tests.browser.conftest import Visit
from tests.browser.keeping import POWDER, RENEWED, SAVES_DATA, deploy, renew, until, wait_until_kept
from tests.browser.serving import FOLDER, Server, Trouble


def test_after_one_visit_everything_works_without_a_network(keeps: Visit, copy: Server) -> None:
    page = keeps.page
    keeps.goes("cure/cure-plan/")
    wait_until_kept(page)
    page.wait_for_function("document.documentElement.dataset.engine === 'ready'", timeout=START_ms)
    until(
        page,
        """async () => {
             const name = (await caches.keys()).find((one) => one.startsWith("engine-"));
             return name && (await (await caches.open(name)).keys()).length >= 5;
           }""",
    )
    copy.shutdown()
    copy.server_close()
    keeps.context.set_offline(True)
    keeps.goes("spray/powder-needed/?film=3+mil")
    powder = keeps.calculator("powder-needed")
    powder.reaches("live")
    assert powder.answers()["powder"].startswith("1.77 lb")
    powder.act("add-to-job")
    expect(page.locator('[data-about="job"]')).to_be_visible()
    keeps.goes("job/job-sheet/")
    page.locator('[data-act="again"]').click()
    expect(page.locator("job-sheet [data-status]")).to_contain_text(
        "All 1 worked out again", timeout=START_ms
    )
    keeps.goes("inspect/what-went-wrong/")
    expect(page.locator("h1")).to_have_text("What went wrong?")
    page.locator(".md-search__input").fill("respirator")
    # the index is read in a worker of the theme's, which takes its time on a busy machine
    expect(page.locator(".md-search-result__link").first).to_be_visible(timeout=30_000)
    page.goto(f"{keeps.served.address}/no/such/page/")
    expect(page.locator("h1")).to_have_text("There is no such page")


def test_a_deploy_is_offered_and_nothing_typed_is_lost(keeps: Visit, copy: Server) -> None:
    page = keeps.page
    keeps.goes("spray/powder-needed/")
    wait_until_kept(page)
    page.reload()
    keeps.calculator("powder-needed").put("film", "3.25")
    renew(copy.served.root)
    page.evaluate("navigator.serviceWorker.getRegistration().then((kept) => kept.update())")
    line = page.locator(".new-version")
    expect(line).to_contain_text("newer version", timeout=30_000)
    assert "renewed" not in page.locator("h1").inner_text()
    line.get_by_role("button", name="Reload").click()
    expect(page.locator("h1")).to_have_text(RENEWED)
    expect(keeps.calculator("powder-needed").field("film")).to_have_value("3.25")


def test_a_deploy_halfway_is_refused_and_the_old_version_stays_whole(keeps: Visit, copy: Server) -> None:
    page = keeps.page
    keeps.goes("")
    wait_until_kept(page)
    page.reload()
    site = copy.served.root
    renew(site)
    # the list is new and one file on the server is neither the old nor the new one
    torn = site / "spray" / "powder-needed" / "index.html"
    torn.write_text(torn.read_text("utf-8")[:-200], "utf-8")
    page.evaluate("navigator.serviceWorker.getRegistration().then((kept) => kept.update().catch(() => {}))")
    page.wait_for_timeout(3_000)
    expect(page.locator(".new-version")).to_have_count(0)
    keeps.goes("spray/powder-needed/")
    expect(page.locator("h1")).to_have_text(POWDER)
    assert (
        page.evaluate("caches.keys().then((names) => names.filter((one) => one.startsWith('pages-')).length)")
        == 1
    )


def test_what_the_device_threw_away_comes_from_the_site_again(keeps: Visit) -> None:
    page = keeps.page
    keeps.goes("")
    wait_until_kept(page)
    page.reload()
    page.evaluate("caches.keys().then((names) => Promise.all(names.map((one) => caches.delete(one))))")
    keeps.goes("spray/powder-needed/?film=3+mil")
    keeps.calculator("powder-needed").reaches("live")


@pytest.mark.parametrize(
    "refusal",
    [
        SAVES_DATA,
        "navigator.serviceWorker.register = () => Promise.reject(new DOMException('no', 'SecurityError'));",
    ],
)
def test_a_reader_or_browser_that_keeps_nothing_is_served_all_the_same(keeps: Visit, refusal: str) -> None:
    keeps.context.add_init_script(refusal)
    keeps.goes("spray/powder-needed/?film=3+mil")
    keeps.calculator("powder-needed").reaches("live")
    keeps.page.wait_for_timeout(500)
    assert keeps.page.evaluate("navigator.serviceWorker.getRegistrations().then((all) => all.length)") == 0
    assert keeps.errors == []


def test_what_is_kept_for_later_waits_until_the_answer_is_there(keeps: Visit) -> None:
    keeps.goes("cure/cure-plan/?thickness=1+in&v=1")
    keeps.calculator("cure-plan").reaches("live")
    assert not [one for one in keeps.served.asked if one.endswith("service-worker.js")]
    wait_until_kept(keeps.page)
    assert [one for one in keeps.served.asked if one.endswith("service-worker.js")]


def test_a_page_without_a_calculator_starts_no_engine(keeps: Visit) -> None:
    keeps.goes("cure/run-a-bake/")
    wait_until_kept(keeps.page)
    keeps.page.wait_for_timeout(1_000)
    assert not any("/assets/engine/" in path for path in keeps.served.asked)


def test_the_calculators_are_kept_where_the_reader_asks(keeps: Visit, copy: Server) -> None:
    """Without a calculator's page ever opened; where some of it does not come that is said, and can be asked again."""
    keeps.goes("")
    wait_until_kept(keeps.page)
    place = keeps.page.locator("[data-keep-here]")
    button = place.get_by_role("button", name="Keep the calculators too, 10 MB")
    copy.served.troubles["pyodide.asm.wasm"] = Trouble(breaks_after_bytes=1_000_000)
    button.click()
    expect(place).to_contain_text("Not all of it came", timeout=START_ms)
    copy.served.troubles.clear()
    button.click()
    expect(place).to_contain_text("Pages and calculators are on this device.", timeout=START_ms)
    copy.shutdown()
    copy.server_close()
    keeps.context.set_offline(True)
    keeps.goes("spray/powder-needed/?film=3+mil")
    keeps.calculator("powder-needed").reaches("live")
    keeps.goes("")
    expect(place).to_contain_text("Pages and calculators are on this device.")


def test_addresses_that_are_no_pages_of_the_site(keeps: Visit) -> None:
    page = keeps.page
    keeps.goes("")
    wait_until_kept(page)
    keeps.goes("cure/cure-plan?thickness=1+in&v=1")
    assert page.url.endswith("/cure/cure-plan/?thickness=1+in&v=1")
    assert keeps.calculator("cure-plan").holds()["thickness"] == "1"
    keeps.context.set_offline(True)
    # a name that every object of the language has
    page.goto(f"{keeps.served.address}/constructor")
    expect(page.locator("h1")).to_have_text("There is no such page")


def test_two_copies_on_one_host_leave_each_other_alone(keeps: Visit, copy: Server) -> None:
    """The same site in two folders, of different versions: each keeps its own, and takes nothing from the other."""
    page = keeps.page
    folder = f"{keeps.served.address}{FOLDER}"
    page.goto(folder)
    wait_until_kept(page)
    deploy(copy.served.root, "index.html", "What are you trying to do?</h1>", "What now?</h1>")
    keeps.goes("")
    wait_until_kept(page)
    keeps.context.set_offline(True)
    keeps.goes("")
    expect(page.locator("h1")).to_have_text("What now?")
    page.goto(folder)
    expect(page.locator("h1")).to_have_text("What are you trying to do?")


def test_with_data_saver_on_only_a_field_entered_is_an_approach(visit: Callable[..., Visit]) -> None:
    at = visit(390, 844, has_touch=True)
    at.context.add_init_script(SAVES_DATA)
    at.goes("cure/cure-plan/")
    form = at.calculator("cure-plan").box
    form.locator("legend").first.tap()
    form.locator("legend").first.hover()
    at.page.wait_for_timeout(1_000)
    assert not any("/assets/engine/" in path for path in at.served.asked)
    at.calculator("cure-plan").field("thickness").focus()
    at.page.wait_for_function("document.documentElement.dataset.engine === 'ready'", timeout=START_ms)


def test_the_app_can_be_installed(keeps: Visit) -> None:
    """What a browser asks before it offers to install: a name, an address inside the scope, and icons that load."""
    keeps.goes("")
    page = keeps.page
    manifest = page.evaluate(
        """async () => {
             const address = document.querySelector('link[rel="manifest"]').href;
             const read = await (await fetch(address)).json();
             const icons = await Promise.all(read.icons.map(async (one) => (await fetch(new URL(one.src, address))).status));
             return { ...read, start: new URL(read.start_url, address).href, icons };
           }"""
    )
    assert manifest["start"] == f"{keeps.served.address}/"
    assert set(manifest["icons"]) == {200}
    assert manifest["display"] == "standalone"
