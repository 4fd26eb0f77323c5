"""A table's text as rows to fill in: the text stays the field, and neither side loses what the other holds."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any
from urllib.parse import quote

import pytest
from playwright.sync_api import Locator, expect

from tests.browser.calculator_page import CalculatorOnPage, one_line
from tests.browser.conftest import Visit
from tests.browser.test_every_page import AXE, findings, too_wide

EXAMPLE = "weighed, , , 5/8, , 22.1, 2\nflat-bar, 1 1/2, , 1/8, 48, , 6"
SMALL = """(box) => [...box.querySelectorAll("button, select, input[type=text]")]
    .filter((one) => one.checkVisibility())
    .map((one) => [one.outerHTML.slice(0, 80), one.getBoundingClientRect().height])
    .filter(([, height]) => height < 43.5)"""
# With a table's rows at their start; bake-log reads an instrument's file and keeps its text.
TABLES = {
    "part-size": "part/part-size/",
    "mixed-load": "cure/mixed-load/",
    "respirator-check": "safety/respirator-check/",
    "noise-dose": "safety/noise-dose/",
    "oven-survey": "cure/oven-survey/",
    "waste-screen": "safety/waste-screen/",
    "bake-history": "cure/bake-history/",
}


class Rows:
    """The rows of one table on a page."""

    def __init__(self, calculator: CalculatorOnPage, key: str) -> None:
        self.calculator = calculator
        self.text = calculator.field(key)
        self.box = calculator.box.locator(f'[data-field="{key}"]')
        self.rows = self.box.locator(".calc-row")

    def cell(self, row: int, column: str) -> Locator:
        return self.rows.nth(row).locator(f'[data-column="{column}"] [data-cell]')

    def unit(self, row: int, column: str) -> Locator:
        return self.rows.nth(row).locator(f'[data-column="{column}"] [data-unit]')

    def shown(self, row: int) -> list[str]:
        keys: list[str] = self.rows.nth(row).evaluate(
            "(row) => [...row.querySelectorAll('[data-column]')].filter((one) => one.checkVisibility())"
            ".map((one) => one.dataset.column)"
        )
        return keys

    def act(self, words: str) -> None:
        self.box.get_by_role("button", name=words, exact=True).click()


@pytest.fixture
def opened(visit: Callable[..., Visit]) -> Callable[..., tuple[Visit, Rows]]:
    def opens(slug: str, key: str, query: str = "", **words: Any) -> tuple[Visit, Rows]:
        at = visit(**words)
        at.goes(TABLES[slug] + query)
        return at, Rows(at.calculator(slug), key)

    return opens


PHONE = {"width": 390, "height": 844, "has_touch": True, "is_mobile": True}
type Opens = Callable[..., tuple[Visit, Rows]]


@pytest.mark.usefixtures("resting_engine")
@pytest.mark.parametrize("size", [PHONE, {"width": 1440, "height": 900}], ids=["phone", "desk"])
@pytest.mark.parametrize("slug", TABLES)
def test_each_table_is_shown_as_rows(
    passed_on: Callable[..., Visit], slug: str, size: dict[str, Any]
) -> None:
    at = passed_on(scripts=(AXE,), **size)
    at.goes(TABLES[slug])
    calculator = at.calculator(slug)
    before = calculator.holds()
    rows = calculator.box.locator(".calc-row")
    text = calculator.box.locator("textarea")
    expect(rows).to_have_count(len(text.input_value().splitlines()))
    assert calculator.holds() == before, "showing the rows changed the text"
    assert calculator.box.locator("[data-rows] [name]").count() == 0
    assert calculator.box.evaluate(SMALL) == []
    assert findings(at.page) == []
    assert too_wide(at.page) == []
    assert at.errors == []


def test_a_cell_writes_into_the_text_and_is_answered(opened: Opens, command_line: Callable[..., Any]) -> None:
    _, rows = opened("part-size", "pieces", **PHONE)
    rows.cell(1, "length").fill("60")
    expect(rows.text).to_have_value("weighed, , , 5/8, , 22.1, 2\nflat-bar, 1 1/2, , 1/8, 60, , 6")
    rows.calculator.reaches("live")
    answer = command_line("part-size", pieces=rows.text.input_value())["answers"]["area"]["text"]
    assert one_line(rows.calculator.answers()["area"]) == answer


def test_the_caret_stays_while_typing(opened: Opens) -> None:
    at, rows = opened("part-size", "pieces")
    length = rows.cell(1, "length")
    length.focus()
    length.press("Home")
    at.page.keyboard.type("1")
    rows.calculator.reaches("live")
    at.page.keyboard.type("2 ")
    expect(length).to_be_focused()
    assert length.input_value() == "12 48"
    assert length.evaluate("(one) => one.selectionStart") == 3


def test_a_unit_is_chosen_or_typed(opened: Opens) -> None:
    _, rows = opened("part-size", "pieces")
    rows.unit(1, "wall").select_option("mm")
    rows.cell(1, "wall").fill("3")
    expect(rows.text).to_have_value("weighed, , , 5/8, , 22.1, 2\nflat-bar, 1 1/2, , 3 mm, 48, , 6")
    rows.cell(1, "length").fill("4ft")
    expect(rows.text).to_have_value("weighed, , , 5/8, , 22.1, 2\nflat-bar, 1 1/2, , 3 mm, 4ft, , 6")
    rows.cell(1, "length").press("Tab")
    expect(rows.cell(1, "length")).to_have_value("4")
    expect(rows.unit(1, "length")).to_have_value("ft")
    expect(rows.text).to_have_value("weighed, , , 5/8, , 22.1, 2\nflat-bar, 1 1/2, , 3 mm, 4 ft, , 6")
    rows.calculator.reaches("live")


def test_a_decimal_comma_does_not_part_a_cell(opened: Opens, command_line: Callable[..., Any]) -> None:
    _, rows = opened("bake-history", "bakes")
    rows.cell(0, "time").fill("20,5")
    assert rows.text.input_value().splitlines()[0] == "375; 20,5"
    rows.calculator.reaches("live")
    commas = command_line("bake-history", bakes=rows.text.input_value())["answers"]
    assert commas == command_line("bake-history", bakes="375, 20.5\n400, 15")["answers"]


def test_a_row_is_added_removed_and_put_back(opened: Opens) -> None:
    at, rows = opened("part-size", "pieces")
    rows.act("Add a row")
    expect(rows.cell(2, "shape")).to_be_focused()
    # Nothing is written, and nothing more is asked, before the shape is chosen.
    expect(rows.text).to_have_value(EXAMPLE)
    assert rows.shown(2) == ["shape"]
    rows.act("Add a row")
    expect(rows.rows).to_have_count(3)
    rows.cell(2, "shape").select_option("disc")
    assert rows.shown(2) == ["shape", "a", "wall", "count", "gauge-of"]
    rows.cell(2, "a").fill("6")
    rows.cell(2, "wall").fill("1/4")
    expect(rows.text).to_have_value(f"{EXAMPLE}\ndisc, 6, , 1/4")
    rows.calculator.reaches("live")
    rows.act("Remove line 1")
    expect(rows.rows).to_have_count(2)
    assert rows.text.input_value().startswith("flat-bar")
    assert at.page.evaluate("document.activeElement.getAttribute('aria-label')") == "Remove line 1"
    rows.act("Put it back")
    expect(rows.text).to_have_value(f"{EXAMPLE}\ndisc, 6, , 1/4")
    expect(rows.cell(0, "mass")).to_have_value("22.1")


def test_a_dust_that_was_not_measured_can_be_added(opened: Opens) -> None:
    _, rows = opened("respirator-check", "agents", **PHONE)
    start = rows.text.input_value()
    rows.act("Add a row")
    rows.cell(3, "agent").select_option("cadmium")
    expect(rows.text).to_have_value(f"{start}\ncadmium,")


def test_a_shape_shows_what_it_needs_and_its_drawing(opened: Opens) -> None:
    _, rows = opened("part-size", "pieces")
    assert rows.shown(0) == ["shape", "wall", "mass", "count"]
    assert rows.shown(1) == ["shape", "a", "wall", "length", "count", "gauge-of"]
    drawing = rows.rows.nth(1).locator(".calc-row-drawing")
    expect(drawing).to_be_visible()
    flat = drawing.inner_html()
    shape = rows.cell(1, "shape")
    shape.select_option("round-tube")
    expect(drawing).not_to_contain_text("flat-bar")
    assert drawing.inner_html() != flat
    assert "inside" in rows.shown(1)
    # What another shape needed is kept, and not in the text.
    shape.select_option("sphere")
    assert rows.text.input_value().splitlines()[1] == "sphere, 1 1/2, , , , , 6"
    shape.select_option("flat-bar")
    expect(rows.text).to_have_value(EXAMPLE)
    rows.cell(1, "gauge-of").select_option("steel")
    assert "gauge" in rows.shown(1)


def test_what_a_link_holds_is_shown_even_where_its_shape_does_not_ask_for_it(opened: Opens) -> None:
    text = "sphere, 3, , , 48\nPipe 1 1/2, schedule 40"
    _, rows = opened("part-size", "pieces", f"?pieces={quote('ball of steel')}")
    # No such shape: the reader sees the text as it came.
    expect(rows.text).to_have_value("ball of steel")
    expect(rows.box).to_contain_text("Shown as text: this table has columns of its own")
    _, rows = opened("part-size", "pieces", f"?pieces={quote(text.splitlines()[0])}")
    expect(rows.cell(0, "length")).to_be_visible()
    expect(rows.cell(0, "length")).to_have_value("48")


def test_the_rows_follow_a_link_a_script_and_a_reset(opened: Opens) -> None:
    _, rows = opened("part-size", "pieces", f"?pieces={quote('disc, 6, , 1/4')}&count=2")
    expect(rows.rows).to_have_count(1)
    expect(rows.cell(0, "a")).to_have_value("6")
    # As another's script fills the field, while it is behind the rows.
    rows.text.fill("ring, 6, 2, 1/4\nball, 3".replace("ball", "sphere"))
    expect(rows.rows).to_have_count(2)
    expect(rows.cell(0, "b")).to_have_value("2")
    rows.calculator.reaches("live")
    rows.calculator.act("reset")
    expect(rows.cell(1, "length")).to_have_value("48")
    rows.calculator.box.get_by_text("Put mine back").click()
    expect(rows.cell(1, "shape")).to_have_value("sphere")


@pytest.mark.parametrize(
    "text",
    ["temperature, minutes\n375, 20", '"375","20"', "375, 20, 3, 4", "375 20\n400 15"],
)
def test_text_of_another_make_is_left_alone(opened: Opens, text: str) -> None:
    _, rows = opened("bake-history", "bakes")
    rows.text.fill(text.replace("temperature, minutes", "Metal temperature, Time"))
    expect(rows.rows).to_have_count(0)
    expect(rows.text).to_be_visible()
    expect(rows.box).to_contain_text("Shown as text: this table has columns of its own")
    assert rows.text.input_value().splitlines()[-1] == text.splitlines()[-1]
    assert rows.text.get_attribute("aria-hidden") is None
    # Mended by hand, the text stays under the cursor until the reader asks for rows.
    rows.text.fill("375, 20")
    expect(rows.rows).to_have_count(0)
    rows.act("As rows")
    expect(rows.cell(0, "time")).to_have_value("20")


def test_text_or_rows_is_remembered(opened: Opens) -> None:
    at, rows = opened("noise-dose", "level")
    rows.act("As text")
    expect(rows.rows).to_have_count(0)
    at.page.reload()
    expect(rows.box.get_by_role("button", name="As rows")).to_be_visible()
    expect(rows.rows).to_have_count(0)
    rows.act("As rows")
    at.page.reload()
    expect(rows.rows).to_have_count(3)


def test_a_long_table_is_text_at_first(opened: Opens) -> None:
    long = "\n".join(["90, 10"] * 13)
    _, rows = opened("noise-dose", "level", f"?level={quote(long)}")
    expect(rows.rows).to_have_count(0)
    rows.act("As rows")
    expect(rows.rows).to_have_count(13)
    expect(rows.text).to_have_value(long)


def test_the_unit_beside_the_table_is_shown_in_each_row(opened: Opens) -> None:
    _, rows = opened("noise-dose", "level")
    rows.box.locator('select[name="level-unit"]').select_option("h")
    expect(rows.rows.nth(0).locator("[data-unit-beside]")).to_have_text("h")
    expect(rows.rows.nth(2).locator("[data-unit-beside]")).to_have_text("h")


def test_a_refusal_marks_its_row_once_the_row_is_left(opened: Opens) -> None:
    at, rows = opened("part-size", "pieces", **PHONE)
    rows.calculator.put("count", "3")
    rows.calculator.reaches("live")
    rows.cell(1, "length").fill("long")
    rows.calculator.reaches("stale")
    # From cell to cell of one row nobody complains yet. Words have no unit, so the choice of one is no stop.
    expect(rows.unit(1, "length")).to_be_hidden()
    rows.cell(1, "length").press("Tab")
    expect(rows.cell(1, "count")).to_be_focused()
    at.page.wait_for_timeout(400)
    expect(rows.calculator.error("pieces")).to_be_hidden()
    rows.calculator.field("count").focus()
    rows.calculator.reaches("errors")
    sentence = one_line(rows.calculator.error("pieces").inner_text())
    assert sentence.startswith("Line 2: length must be a number")
    beside = rows.rows.nth(1).locator("[data-row-error]")
    assert f"Line 2: {one_line(beside.inner_text())}" == sentence
    expect(rows.cell(1, "length")).to_have_attribute("aria-invalid", "true")
    assert rows.box.locator('[data-rows] [aria-invalid="true"]').count() == 1
    assert beside.get_attribute("id") in (rows.cell(1, "length").get_attribute("aria-describedby") or "")
    assert findings(at.page) == []
    # The list above leads to the cell, not to the text behind the rows.
    rows.calculator.calculate()
    rows.calculator.summary.locator("a").click()
    expect(rows.cell(1, "length")).to_be_focused()
    rows.cell(1, "length").fill("48")
    rows.calculator.reaches("live")
    expect(beside).to_be_hidden()
    assert rows.box.locator('[data-rows] [aria-invalid="true"]').count() == 0


def test_a_sentence_about_a_whole_row_marks_what_is_empty(opened: Opens) -> None:
    _, rows = opened("part-size", "pieces")
    rows.cell(1, "shape").select_option("angle")
    rows.calculator.field("count").focus()
    rows.calculator.reaches("errors")
    expect(rows.rows.nth(1).locator("[data-row-error]")).to_contain_text("needs b")
    expect(rows.cell(1, "b")).to_have_attribute("aria-invalid", "true")


def test_the_keyboard_alone_fills_a_row(opened: Opens) -> None:
    at, rows = opened("noise-dose", "level")
    add = rows.box.get_by_role("button", name="Add a row")
    add.focus()
    at.page.keyboard.press("Enter")
    at.page.keyboard.type("88")
    at.page.keyboard.press("Tab")
    at.page.keyboard.type("30")
    at.page.keyboard.press("Enter")
    expect(rows.text).to_have_value("105, 90\n95, 60\n84, 240\n88, 30")
    rows.calculator.reaches("live")
    # The text behind the rows is no stop of the keyboard.
    at.page.keyboard.press("Tab")
    at.page.keyboard.press("Tab")
    expect(add).to_be_focused()


def test_a_log_of_an_instrument_keeps_its_text(visit: Callable[..., Visit]) -> None:
    at = visit()
    at.goes("cure/bake-log/")
    calculator = at.calculator("bake-log")
    expect(calculator.field("log")).to_be_visible()
    assert calculator.box.locator("[data-rows]").count() == 0


def test_without_a_script_there_is_only_the_text(visit: Callable[..., Visit]) -> None:
    at = visit(java_script_enabled=False)
    at.goes(TABLES["part-size"])
    calculator = at.calculator("part-size")
    expect(calculator.field("pieces")).to_be_visible()
    expect(calculator.box.locator("[data-rows], .calc-row, .calc-rows-bar")).to_have_count(0)
