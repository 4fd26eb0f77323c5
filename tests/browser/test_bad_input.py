"""Text that cannot be used: said in one sentence, in two places, and nothing typed is lost."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from playwright.sync_api import expect

from tests.browser.calculator_page import one_line
from tests.browser.conftest import Visit


def test_a_word_for_a_number(
    visit: Callable[..., Visit], command_line: Callable[..., dict[str, Any]]
) -> None:
    (error,) = command_line("cure-plan", thickness="thick", oven="415")["errors"]
    assert error["key"] == "thickness"

    at = visit()
    at.goes("cure/cure-plan/")
    calculator = at.calculator("cure-plan")
    calculator.put("oven", "415")
    calculator.reaches("live")
    answered = calculator.answers()

    # While it is being typed nobody complains.
    thickness = calculator.field("thickness")
    thickness.clear()
    thickness.press_sequentially("thick")
    calculator.reaches("stale")
    expect(calculator.error("thickness")).to_be_hidden()
    expect(calculator.summary).to_be_hidden()

    # On leaving the field the sentence is beside it and above the form, in the same words.
    thickness.press("Tab")
    calculator.reaches("errors")
    assert one_line(calculator.error("thickness").inner_text()) == error["message"]
    assert one_line(calculator.summary.locator("li").inner_text()) == error["message"]
    expect(thickness).to_have_attribute("aria-invalid", "true")
    assert "thickness-error" in (thickness.get_attribute("aria-describedby") or "")
    # The cursor went where the reader sent it, and not to the list.
    assert at.page.evaluate("document.activeElement.name") == "thickness-unit"

    # Nothing typed is lost, and the old answer stands, marked as old.
    assert calculator.holds()["thickness"] == "thick"
    assert calculator.holds()["oven"] == "415"
    assert calculator.answers() == answered
    assert "Before your last change" in calculator.plate.inner_text()

    # Calculate leads to the list, and the list leads to the field.
    calculator.calculate()
    expect(calculator.summary).to_be_focused()
    calculator.summary.locator("a").click()
    expect(thickness).to_be_focused()
    assert thickness.input_value() == "thick"

    thickness.fill("3/4")
    calculator.reaches("live")
    expect(calculator.error("thickness")).to_be_hidden()
    expect(calculator.summary).to_be_hidden()
    assert thickness.get_attribute("aria-invalid") is None


def test_two_entries_are_named_at_once(visit: Callable[..., Visit]) -> None:
    at = visit()
    at.goes("cure/cure-plan/")
    calculator = at.calculator("cure-plan")
    calculator.put_all({"thickness": "0", "oven": "9000"})
    calculator.calculate()
    calculator.reaches("errors")
    listed = [one_line(one) for one in calculator.summary.locator("li").all_inner_texts()]
    beside = [one_line(calculator.error(key).inner_text()) for key in ("thickness", "oven")]
    assert listed == beside
    assert all(beside)


def test_typed_markup_stays_text(visit: Callable[..., Visit]) -> None:
    at = visit()
    at.goes("cure/cure-plan/")
    calculator = at.calculator("cure-plan")
    typed = '<img src=x onerror="window.ran = 1">'
    calculator.put("thickness", typed)
    calculator.calculate()
    calculator.reaches("errors")
    assert calculator.holds()["thickness"] == typed
    assert at.page.evaluate("window.ran") is None
    assert calculator.box.locator("img").count() == 0


def test_back_to_the_example_can_be_taken_back(visit: Callable[..., Visit]) -> None:
    at = visit()
    at.goes("cure/cure-plan/")
    calculator = at.calculator("cure-plan")
    example = calculator.answers()
    calculator.put("thickness", "2")
    calculator.reaches("live")
    mine = calculator.answers()
    calculator.act("reset")
    expect(calculator.field("thickness")).to_have_value("5/8")
    calculator.reaches("live")
    assert calculator.answers() == example != mine
    calculator.box.get_by_text("Put mine back").click()
    expect(calculator.field("thickness")).to_have_value("2")
    calculator.reaches("live")
    assert calculator.answers() == mine
