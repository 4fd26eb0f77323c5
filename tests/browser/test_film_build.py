"""The film page: four forms on one page, their main answers in sight at once on a phone, and each form minding its own."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest
from playwright.sync_api import expect

from tests.browser.calculator_page import one_line
from tests.browser.conftest import Visit

PAGE = "spray/film-build/"
SLUGS = ("coverage", "powder-needed", "film-from-weight", "comb-to-cured")
CHANGED = {
    "coverage": {"film": "3.5"},
    "powder-needed": {"area": "12.5"},
    "film-from-weight": {"after": "3.23"},
    "comb-to-cured": {"clear": "8"},
}


def main_of(answer: dict[str, Any]) -> str:
    return one_line(next(one["text"] for one in answer["answers"].values() if one["main"]))


@pytest.mark.parametrize("scripts", [True, False])
def test_four_answers_in_sight_on_a_phone(
    visit: Callable[..., Visit], command_line: Callable[..., dict[str, Any]], scripts: bool
) -> None:
    at = visit(390, 844, has_touch=True, is_mobile=True, java_script_enabled=scripts)
    at.goes(PAGE)
    links = at.page.locator("[data-main-of]")
    assert links.count() == len(SLUGS)
    for link, slug in zip(links.all(), SLUGS, strict=True):
        assert one_line(link.locator("strong").inner_text()) == main_of(command_line(slug))
        box = link.bounding_box()
        assert box is not None
        assert box["y"] + box["height"] <= 844
        assert box["height"] >= 44


def test_each_form_answers_for_itself_and_none_takes_the_address(
    visit: Callable[..., Visit], command_line: Callable[..., dict[str, Any]]
) -> None:
    at = visit(390, 844)
    at.goes(PAGE)
    address = at.page.url
    for slug, texts in CHANGED.items():
        calculator = at.calculator(slug)
        before = calculator.plate.inner_text()
        calculator.put_all(texts)
        calculator.reaches("live")
        assert calculator.plate.inner_text() != before
        expected = main_of(command_line(slug, **{key.replace("-", "_"): text for key, text in texts.items()}))
        expect(at.page.locator(f'[data-main-of="{slug}"] strong')).to_have_text(expected)
        others = [other for other in SLUGS if list(SLUGS).index(other) > SLUGS.index(slug)]
        assert [at.calculator(other).state for other in others] == ["example"] * len(others)
    assert at.page.url == address
    assert at.page.evaluate("performance.getEntriesByName('calc:engine-start').length") == 1

    # this tab keeps what was typed in each
    at.page.reload()
    for slug, texts in CHANGED.items():
        calculator = at.calculator(slug)
        calculator.reaches("live")
        held = calculator.holds()
        assert {key: held[key] for key in texts} == texts
    assert at.page.url == address
    assert not at.errors
    assert not at.leaving()


def test_values_in_the_address_go_to_no_form(visit: Callable[..., Visit]) -> None:
    """Several forms have a field called film: a link could not say which it means."""
    at = visit()
    at.goes(f"{PAGE}?film=9+mil&v=1")
    for slug in SLUGS:
        assert at.calculator(slug).state == "example"
    assert at.calculator("powder-needed").holds()["film"] == "2.5"


def test_ids_stay_unique_after_answers(visit: Callable[..., Visit]) -> None:
    at = visit()
    at.goes(PAGE)
    for slug, texts in CHANGED.items():
        at.calculator(slug).put_all(texts)
        at.calculator(slug).reaches("live")
    twice = at.page.evaluate(
        """() => { const ids = [...document.querySelectorAll("[id]")].map((one) => one.id);
             return ids.filter((id, place) => ids.indexOf(id) !== place) }"""
    )
    assert twice == []


def test_a_refused_field_is_marked_at_the_top_too(visit: Callable[..., Visit]) -> None:
    at = visit(390, 844)
    at.goes(PAGE)
    calculator = at.calculator("film-from-weight")
    calculator.put("after", "3.1")
    calculator.calculate()
    calculator.reaches("errors")
    link = at.page.locator('[data-main-of="film-from-weight"]')
    expect(link).to_have_attribute("data-state", "errors")
    expect(at.page.locator('[data-main-of="coverage"]')).to_have_attribute("data-state", "example")


@pytest.mark.parametrize("slug", SLUGS)
def test_a_tap_leads_to_the_form(visit: Callable[..., Visit], slug: str) -> None:
    at = visit(390, 844, has_touch=True, is_mobile=True)
    at.goes(PAGE)
    at.page.locator(f'[data-main-of="{slug}"]').tap()
    at.page.wait_for_timeout(300)
    box = at.calculator(slug).plate.bounding_box()
    assert box is not None
    assert 0 <= box["y"] <= 400
