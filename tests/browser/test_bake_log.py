"""The log of a bake, from the logger's file to the plan for the next bake."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from playwright.sync_api import expect

from tests.browser.conftest import Visit

# A part that warms towards 400 F and is pulled at 40 min; invented.
READINGS = [(0, 70), (5, 168), (10, 239), (15, 287), (20, 321), (25, 345), (30, 361), (35, 373), (40, 381)]


def test_a_loggers_file_fills_the_field_and_is_answered(visit: Callable[..., Visit], tmp_path: Path) -> None:
    at = visit()
    at.goes("cure/bake-log/")
    calculator = at.calculator("bake-log")
    before = calculator.answers()
    text = "\n".join(f"{minute}, {metal}" for minute, metal in READINGS)
    file = tmp_path / "bench.csv"
    file.write_bytes(text.replace("\n", "\r\n").encode("utf-16"))  # as some loggers write it
    with at.page.expect_file_chooser() as chooser:
        calculator.box.get_by_text("Fill from a file").click()
    chooser.value.set_files(file)
    expect(calculator.field("log")).to_have_value(text)
    calculator.reaches("live")
    assert calculator.answers() != before
    assert not at.leaving()


def test_the_fitted_oven_goes_with_the_reader_to_the_next_plan(visit: Callable[..., Visit]) -> None:
    at = visit()
    at.goes("cure/bake-log/")
    at.calculator("bake-log").calculate()
    at.calculator("bake-log").reaches("live")
    at.calculator("bake-log").outcome.locator('a[data-carry="cure-plan"]').click()
    at.page.wait_for_url("**/cure/cure-plan/**")
    plan = at.calculator("cure-plan")
    plan.reaches("live")
    assert plan.holds()["airflow"] == "measured"
    expect(plan.field("oven-coefficient")).to_be_visible()
    assert f"oven-coefficient={plan.holds()['oven-coefficient']}+" in at.page.url
