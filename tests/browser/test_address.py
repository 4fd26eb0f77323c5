"""The page's address holds the fields, and no way of leaving and coming back loses what was typed."""

from __future__ import annotations

import re
from collections.abc import Callable

from playwright.sync_api import expect

from calculators import run
from tests.browser.calculator_page import START_ms
from tests.browser.conftest import Visit
from tests.browser.serving import FOLDER

TYPED = {"thickness": "7/8", "metal": "aluminium", "oven": "410", "shading": "racked"}


def test_a_link_opens_with_the_same_fields_and_the_same_answer(visit: Callable[..., Visit]) -> None:
    at = visit(permissions=["clipboard-read", "clipboard-write"])
    at.goes("cure/cure-plan/")
    calculator = at.calculator("cure-plan")
    calculator.put_all(TYPED)
    calculator.reaches("live")
    assert re.search(r"[?&]thickness=7%2F8\+in&", at.page.url)
    assert re.search(r"&v=\d+$", at.page.url)
    calculator.act("copy-link")
    expect(calculator.status).to_contain_text("copied")
    link = at.page.evaluate("navigator.clipboard.readText()")
    assert link == at.page.url

    other = visit()
    other.page.goto(link)
    opened = other.calculator("cure-plan")
    opened.reaches("live")
    assert opened.holds() == calculator.holds()
    assert opened.answers() == calculator.answers()
    assert not other.errors


def test_a_copied_answer_is_the_one_of_the_terminal(visit: Callable[..., Visit]) -> None:
    at = visit(permissions=["clipboard-read", "clipboard-write"])
    at.goes("cure/cure-plan/")
    calculator = at.calculator("cure-plan")
    calculator.put("oven", "410")
    calculator.act("copy-answer")  # at once: it waits for the answer to what was typed
    expect(calculator.status).to_contain_text("Answer copied", timeout=START_ms)
    copied = at.page.evaluate("navigator.clipboard.readText()")
    assert copied == run("cure-plan", calculator.holds()).text
    calculator.put("oven", "warm")
    calculator.act("copy-answer")
    expect(calculator.status).to_contain_text("Nothing copied")


def test_reload_and_back_keep_what_was_typed(visit: Callable[..., Visit]) -> None:
    at = visit()
    at.goes("cure/cure-plan/")
    calculator = at.calculator("cure-plan")
    calculator.put_all(TYPED)
    calculator.put("thinnest", "about a")  # no answer yet: must come back all the same
    calculator.calculate()
    calculator.reaches("errors")
    held = calculator.holds()

    at.page.reload()
    calculator.reaches("errors")
    assert calculator.holds() == held
    # The answer that the page was built with is not passed off as the reader's.
    assert "not yours" in calculator.plate.inner_text()

    at.goes("spray/powder-needed/")
    at.page.go_back()
    calculator.reaches("errors")
    assert calculator.holds() == held

    # The same tab, by an ordinary link without a query.
    at.goes("cure/cure-plan/")
    calculator.reaches("errors")
    assert calculator.holds() == held


def test_a_link_that_does_not_fit_says_so(visit: Callable[..., Visit]) -> None:
    at = visit()
    at.goes("cure/cure-plan/?metal=unobtainium&colour=red&oven=405+F&v=1")
    calculator = at.calculator("cure-plan")
    calculator.reaches("errors")
    notes = calculator.box.locator("[data-notes]")
    expect(notes).to_contain_text("unobtainium")
    expect(notes).to_contain_text("colour")
    assert calculator.holds()["oven"] == "405"


def test_the_search_box_of_the_site_does_not_start_the_engine(visit: Callable[..., Visit]) -> None:
    """The theme's search adds ?h= to the address of what it found."""
    at = visit()
    at.goes("cure/cure-plan/?h=oven")
    assert at.calculator("cure-plan").state == "example"


def test_an_embedded_calculator_leaves_the_address_alone(visit: Callable[..., Visit]) -> None:
    at = visit()
    at.goes("spray/lay-the-right-film/")
    address = at.page.url
    calculator = at.calculator("powder-needed")
    calculator.put("area", "33")
    calculator.reaches("live")
    assert at.page.url == address
    at.page.reload()
    calculator.reaches("live")
    assert calculator.holds()["area"] == "33"


def test_two_calculators_on_a_page_do_not_mix(visit: Callable[..., Visit]) -> None:
    """The page's own, another, and the page's own once more: only the first of them has the address."""
    at = visit()
    form = re.compile(r"<calc-form .*?</calc-form>", re.S)
    other = (at.served.root / "spray/powder-needed/index.html").read_text(encoding="utf-8")
    page = (at.served.root / "cure/cure-plan/index.html").read_text(encoding="utf-8")
    own = form.search(page)
    added = form.search(other)
    assert own and added
    page = page.replace(own[0], own[0] + added[0] + own[0])
    at.page.route("**/cure/cure-plan/", lambda route: route.fulfill(body=page, content_type="text/html"))
    at.goes("cure/cure-plan/")
    address = at.page.url
    first, second = at.calculator("cure-plan"), at.calculator("cure-plan", 1)
    powder = at.calculator("powder-needed")

    powder.put("area", "44")
    powder.reaches("live")
    second.put("oven", "440")
    second.reaches("live")
    assert at.page.url == address
    assert first.state == "example"
    first.put("oven", "410")
    first.reaches("live")
    assert "oven=410+F" in at.page.url
    assert "area=44" not in at.page.url
    assert first.answers() != second.answers()
    starts = "performance.getEntriesByName('calc:engine-start').length"
    assert at.page.evaluate(starts) == 1


def test_the_site_works_below_a_folder(visit: Callable[..., Visit]) -> None:
    at = visit()
    at.goes(f"{FOLDER.strip('/')}/cure/cure-plan/")
    calculator = at.calculator("cure-plan")
    calculator.put("oven", "420")
    calculator.reaches("live")
    assert not at.errors
    outside = [path for path in at.served.asked if not path.startswith(FOLDER)]
    assert outside in ([], ["/favicon.ico"])


def test_a_missing_page_is_answered_with_a_page_that_works(visit: Callable[..., Visit]) -> None:
    for path in ("no/such/page/", f"{FOLDER.strip('/')}/no/such/page/"):
        at = visit()
        at.goes(path)
        expect(at.page.locator("h1")).to_be_visible()
        assert not [one for one in at.errors if "404" not in one]
        broken = at.page.evaluate(
            """Promise.all([...document.querySelectorAll("main a[href], link[rel=stylesheet]")]
                 .filter((one) => one.origin === location.origin || one.localName === "link")
                 .map((one) => fetch(one.href).then((got) => got.ok ? null : one.href)))
               .then((all) => all.filter(Boolean))"""
        )
        assert broken == []
