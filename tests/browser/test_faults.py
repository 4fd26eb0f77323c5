"""The fault finder in a browser: whole without scripts, narrowed with them."""

from __future__ import annotations

import tomllib
from collections.abc import Callable

import pytest
from playwright.sync_api import expect

from tests.browser.conftest import ROOT, Visit
from tests.browser.test_every_page import findings, too_wide

FAULTS = tomllib.loads((ROOT / "calculators" / "tables" / "pages" / "faults.toml").read_text("utf-8"))
PAGE = "inspect/what-went-wrong/"


def shown(at: Visit) -> list[str]:
    keys: list[str] = at.page.evaluate(
        "[...document.querySelectorAll('[data-fault]')].filter((one) => one.checkVisibility()).map((one) => one.dataset.fault)"
    )
    return keys


def fitting(**wanted: str) -> list[str]:
    return [
        key for key, fault in FAULTS.items() if all(value in fault[name] for name, value in wanted.items())
    ]


def test_every_fault_is_there_without_scripts(visit: Callable[..., Visit]) -> None:
    at = visit(390, 844, java_script_enabled=False)
    at.goes(PAGE)
    expect(at.page.locator("[data-fault-filter]")).to_be_hidden()
    assert at.page.locator("[data-fault]:visible").count() == len(FAULTS)
    assert at.page.locator("[data-fault-link] a:visible").count() == len(FAULTS)
    at.page.locator('[data-fault-link="soft"] a').click()
    expect(at.page.locator("#soft")).to_be_in_viewport()


@pytest.mark.parametrize(
    "wanted",
    [
        {"seen": "rust"},
        {"where": "recesses"},
        {"when": "spraying"},
        {"seen": "holes", "where": "joints", "when": "oven"},
    ],
)
def test_the_filter_leaves_what_fits_and_says_how_many(
    visit: Callable[..., Visit], wanted: dict[str, str]
) -> None:
    at = visit()
    at.goes(PAGE)
    form = at.page.locator("[data-fault-filter]")
    expect(form).to_be_visible()
    at.page.wait_for_load_state("networkidle")
    at.requests.clear()
    for name, value in wanted.items():
        form.locator(f'[name="{name}"]').select_option(value)
    fits = fitting(**wanted)
    assert 0 < len(fits) < len(FAULTS)
    expect(form.get_by_role("status")).to_have_text(f"{len(fits)} of {len(FAULTS)} faults shown.")
    assert shown(at) == fits
    assert at.page.locator("[data-fault-link] a:visible").count() == len(fits)
    groups = {FAULTS[key]["seen"][0] for key in fits}
    assert at.page.locator("[data-fault-group] h2:visible").count() == len(groups)
    # nothing is asked of the host and nothing is put into the address
    assert [one for one in at.requests if not one.endswith("/assets/icon.svg")] == []
    assert at.page.url.endswith(PAGE)
    form.get_by_role("button", name="Show all").click()
    expect(form.get_by_role("status")).to_have_text(f"{len(FAULTS)} of {len(FAULTS)} faults shown.")
    assert shown(at) == list(FAULTS)


def test_it_says_so_where_nothing_fits(visit: Callable[..., Visit]) -> None:
    assert fitting(seen="rust", when="spraying") == []
    at = visit()
    at.goes(PAGE)
    form = at.page.locator("[data-fault-filter]")
    form.locator('[name="seen"]').select_option("rust")
    form.locator('[name="when"]').select_option("spraying")
    expect(form.get_by_role("status")).to_have_text(
        "No fault fits all three. Set one of them back to Anything."
    )
    assert shown(at) == []


def test_a_link_reaches_a_fault_that_the_filter_hides(visit: Callable[..., Visit]) -> None:
    at = visit()
    at.goes(PAGE)
    at.page.locator('[name="seen"]').select_option("rust")
    expect(at.page.locator("#orange-peel")).to_be_hidden()
    at.page.evaluate("location.hash = '#orange-peel'")
    expect(at.page.locator("#orange-peel")).to_be_in_viewport()
    assert at.page.locator('[name="seen"]').input_value() == ""
    # the same link once more
    at.page.locator('[name="seen"]').select_option("holes")
    at.page.locator('a[href="#stars"]:visible').first.click()
    expect(at.page.locator("#stars")).to_be_in_viewport()
    assert at.errors == []


def test_the_keyboard_alone_narrows_it_down(visit: Callable[..., Visit]) -> None:
    at = visit()
    at.goes(PAGE)
    expect(at.page.locator("[data-fault-filter]")).to_be_visible()
    # the theme's own link past the menu comes first
    at.page.keyboard.press("Tab")
    at.page.keyboard.press("Enter")
    for _ in range(10):
        at.page.keyboard.press("Tab")
        if at.page.evaluate("document.activeElement.name") == "seen":
            break
    assert at.page.evaluate("document.activeElement.name") == "seen"
    outline = at.page.evaluate("getComputedStyle(document.activeElement).outlineStyle")
    assert outline != "none"
    at.page.keyboard.type("Rust")
    expect(at.page.get_by_label("What you see")).to_have_value("rust")
    assert shown(at) == fitting(seen="rust")


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_a_narrowed_page_is_accessible_and_fits_a_phone(visit: Callable[..., Visit], scheme: str) -> None:
    at = visit(390, 844, color_scheme=scheme, has_touch=True, is_mobile=True)
    at.goes(PAGE)
    at.page.get_by_label("Where on the part").select_option("recesses")
    assert findings(at.page) == []
    assert too_wide(at.page) == []
    small = at.page.evaluate(
        """() => [...document.querySelectorAll("[data-fault-filter] :is(select, button), [data-fault-link] a")]
             .filter((one) => one.checkVisibility() && one.getBoundingClientRect().height < 43.5)
             .map((one) => one.outerHTML.slice(0, 60))"""
    )
    assert small == []
