"""A calculator on a page, as the tests use it: by field keys and answer keys."""

from __future__ import annotations

import re
from collections.abc import Mapping

from playwright.sync_api import Locator, Page, expect

# A cold start of the engine on a slow, busy machine.
START_ms = 40_000


def one_line(text: str) -> str:
    return re.sub(r"\s+", " ", text).strip()


class CalculatorOnPage:
    def __init__(self, page: Page, slug: str, place: int = 0) -> None:
        self.page = page
        self.box = page.locator(f'calc-form[slug="{slug}"]').nth(place)
        self.outcome = self.box.locator("[data-outcome]")
        self.status = self.box.locator("[data-status]")
        self.summary = self.box.locator("[data-summary]")
        self.plate = self.box.locator(".calc-plate")

    def field(self, name: str) -> Locator:
        return self.box.locator(f'[name="{name}"]')

    def put(self, name: str, text: str) -> None:
        """Type or choose, as a hand does."""
        field = self.field(name).first
        kind = field.evaluate("(one) => one.type")
        if kind == "radio":
            self.box.locator(f'[name="{name}"][value="{text}"]').check()
        elif kind == "select-one":
            field.select_option(text)
        else:
            field.fill(text)

    def put_all(self, texts: Mapping[str, str]) -> None:
        for name, text in texts.items():
            self.put(name, text)

    def holds(self) -> dict[str, str]:
        """What every field holds now."""
        held: dict[str, str] = self.box.locator("form").evaluate(
            "(form) => Object.fromEntries([...new FormData(form)])"
        )
        return held

    def calculate(self) -> None:
        self.box.locator('button[type="submit"]').click()

    def reaches(self, state: str, within_ms: int = START_ms) -> None:
        expect(self.outcome).to_have_attribute("data-state", state, timeout=within_ms)

    @property
    def state(self) -> str | None:
        return self.outcome.get_attribute("data-state")

    def answers(self) -> dict[str, str]:
        """Every answer that can be seen, as a reader sees it; an answer shown twice fails."""
        shown: list[list[str]] = self.outcome.evaluate(
            """(outcome) => [...outcome.querySelectorAll("[data-answer]")]
                 .filter((one) => one.checkVisibility())
                 .map((one) => [one.dataset.answer, one.innerText])"""
        )
        keys = [key for key, _ in shown]
        assert len(keys) == len(set(keys)), f"an answer is shown twice: {keys}"
        return {key: one_line(text) for key, text in shown}

    def error(self, key: str) -> Locator:
        return self.box.locator(f'[data-error="{key}"]')

    def act(self, name: str) -> None:
        self.box.locator(f'[data-act="{name}"]').click()
