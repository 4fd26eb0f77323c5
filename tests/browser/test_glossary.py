"""A word with dots under it opens its meaning by tap or key, without scripts of ours, and closes again."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from playwright.sync_api import expect

from tests.browser.conftest import Visit


@pytest.mark.property
@pytest.mark.parametrize("scripts", [True, False])
def test_a_tap_opens_the_meaning(visit: Callable[..., Visit], scripts: bool) -> None:
    here = visit(width=360, height=740, has_touch=True, is_mobile=True, java_script_enabled=scripts)
    here.goes("start/does-my-part-need-blasting/")
    word = here.page.locator('.term[popovertarget="term-condensation"]')
    meaning = here.page.locator("#term-condensation")
    expect(meaning).to_be_hidden()
    word.tap()
    expect(meaning).to_be_visible()
    box = meaning.bounding_box()
    assert box
    assert box["x"] >= 0
    assert box["x"] + box["width"] <= 360
    assert box["y"] + box["height"] <= 740
    here.page.locator("h1").tap()
    expect(meaning).to_be_hidden()


@pytest.mark.property
def test_keys_open_and_close_it_and_lead_to_the_glossary(visit: Callable[..., Visit]) -> None:
    here = visit()
    here.goes("start/does-my-part-need-blasting/")
    word = here.page.locator('.term[popovertarget="term-condensation"]')
    word.focus()
    here.page.keyboard.press("Enter")
    meaning = here.page.locator("#term-condensation")
    expect(meaning).to_be_visible()
    here.page.keyboard.press("Escape")
    expect(meaning).to_be_hidden()
    expect(word).to_be_focused()
    here.page.keyboard.press("Enter")
    meaning.get_by_role("link", name="In the glossary").click()
    expect(here.page.locator("#word-condensation")).to_be_in_viewport()


@pytest.mark.property
def test_meanings_are_not_printed(visit: Callable[..., Visit]) -> None:
    here = visit()
    here.goes("start/does-my-part-need-blasting/")
    here.page.locator('.term[popovertarget="term-condensation"]').click()
    expect(here.page.locator("#term-condensation")).to_be_visible()
    here.page.emulate_media(media="print")
    expect(here.page.locator("#term-condensation")).to_be_hidden()
