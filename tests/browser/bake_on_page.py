"""A bake beside you, as the tests use it: a clock that they turn, and hands that type readings."""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from typing import Any

from playwright.sync_api import Locator, expect

from tests.browser.calculator_page import CalculatorOnPage, one_line
from tests.browser.conftest import Visit

BEGIN = "2026-11-25T14:05:00"
# Chicago in winter, where the tests take place.
ZONE = "-06:00"
# Minute and metal of an iron end in a 400 F oven; invented, rounded as a hand reads a dial.
READINGS = [(0, "70"), (3, "131"), (6, "174"), (9, "215"), (12, "249"), (15, "281")]


class BakeOnPage:
    def __init__(self, at: Visit) -> None:
        self.at, self.page = at, at.page
        self.box = at.page.locator("bake-beside")
        self.form = CalculatorOnPage(at.page, "bake-log")
        self.said = self.box.locator("[data-said]")
        self.notes = self.box.locator("[data-notes]")
        self.readings = self.box.locator("[data-readings] > li")

    def part(self, name: str) -> Locator:
        return self.box.locator(f'[data-part="{name}"]')

    def tap(self, act: str) -> None:
        self.box.locator(f'[data-act="{act}"]:visible').click()

    def big(self, cell: str) -> Locator:
        return self.box.locator(f'[data-cell="{cell}"] [data-big]')

    def small(self, cell: str) -> Locator:
        return self.box.locator(f'[data-cell="{cell}"] [data-small]')

    def wait(self, minutes: float) -> None:
        """The device's clock goes on, and the page with it."""
        # at once, and then as long as it takes every timer to have its turn
        self.page.clock.fast_forward(max(round(minutes * 60_000) - 2_000, 0))
        self.page.clock.run_for(min(round(minutes * 60_000), 2_000))

    def add(self, text: str) -> None:
        """A reading, answered."""
        count = self.readings.count()
        self.box.get_by_label("Metal temperature now").fill(text)
        self.box.get_by_role("button", name="Add reading").click()
        expect(self.readings).to_have_count(count + 1)
        self.answered()

    def answered(self) -> None:
        self.form.reaches("live")
        expect(self.small("cure")).not_to_have_text("working it out")

    def bake(self, readings: Sequence[tuple[int, str]] = READINGS) -> None:
        """Started, and read at these minutes."""
        self.tap("start")
        before = 0
        for minute, text in readings:
            self.wait(minute - before)
            before = minute
            self.add(text)

    def log(self) -> list[tuple[float, str]]:
        """What the form's log holds."""
        lines = self.form.holds()["log"].replace("\r", "").split("\n")
        return [(float(line.split(",")[0]), line.split(",")[1].strip()) for line in lines]

    def minutes_left(self) -> int:
        found = re.fullmatch(r"(\d+) min", one_line(self.big("pull").inner_text()))
        assert found, self.big("pull").inner_text()
        return int(found[1])


def opened(
    visit: Callable[..., Visit],
    begin: str = BEGIN,
    before: str = "",
    path: str = "cure/bake-log/",
    **words: Any,
) -> BakeOnPage:
    """The page at a moment (none: in real time), in a fresh profile. before: a script that runs ahead of the page's own."""
    words = {"locale": "en-US", "timezone_id": "America/Chicago", **words}
    at = visit(390, 844, has_touch=True, is_mobile=True, **words)
    if before:
        at.page.add_init_script(before)
    if begin:
        at.page.clock.install(time=f"{begin}{ZONE}")
    at.goes(path)
    bake = BakeOnPage(at)
    expect(bake.box).to_be_visible()
    return bake
