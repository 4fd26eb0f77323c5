"""A stop looks, reads and prints differently from a caution, is announced, and can be read in both colour schemes."""

from __future__ import annotations

import re
from html.parser import HTMLParser
from pathlib import Path

import pytest

from calculators import run
from calculators.kit.html import LEVEL_WORDS, caution_html
from calculators.kit.result import Caution

DOCS = Path(__file__).resolve().parents[2] / "docs" / "assets"
SITE = (DOCS / "site.css").read_text("utf-8")
CALCULATOR = (DOCS / "calculator" / "calculator.css").read_text("utf-8")


class _Folded(HTMLParser):
    """Which cautions stand in something that can be folded away."""

    def __init__(self) -> None:
        super().__init__()
        self.depth, self.free, self.folded = 0, 0, 0

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.depth += tag == "details"
        if dict(attrs).get("data-caution"):
            self.folded += bool(self.depth)
            self.free += not self.depth

    def handle_endtag(self, tag: str) -> None:
        self.depth -= tag == "details"


def test_only_a_stop_is_an_alert_and_each_level_says_its_word() -> None:
    made = {level: caution_html(Caution(level, "Do this.")) for level in ("stop", "caution", "note")}  # type: ignore[arg-type]
    assert [level for level, html in made.items() if 'role="alert"' in html] == ["stop"]
    for level, html in made.items():
        assert f"<strong>{LEVEL_WORDS[level]}</strong>" in html
        assert f'data-caution="{level}"' in html
    assert len(set(LEVEL_WORDS.values())) == 3


@pytest.mark.parametrize("slug", ["ground-check", "respirator-check", "waste-screen", "blast-or-not"])
def test_no_caution_can_be_folded_away_and_stops_come_first(slug: str) -> None:
    outcome = run(slug, {})
    reader = _Folded()
    reader.feed(outcome.html)
    assert (reader.free, reader.folded) == (len(outcome.cautions), 0)
    assert outcome.cautions[0].level == "stop"
    assert outcome.html.index('data-caution="stop"') < outcome.html.index("<dl")
    assert "Stop." in outcome.text


def test_a_stop_differs_in_more_than_colour() -> None:
    for level in ("stop", "caution"):
        assert f'.calc-caution[data-caution="{level}"]::before' in CALCULATOR
    stop = _rule('.calc-caution[data-caution="stop"]')
    caution = _rule('.calc-caution[data-caution="caution"]')
    assert "double" in stop and "double" not in caution
    assert "font-weight: 600" in stop and "font-weight" not in caution
    marks = [_rule(f'.calc-caution[data-caution="{level}"]::before') for level in ("stop", "caution")]
    assert len({re.findall(r"clip-path: ([^;]+)", mark)[0] for mark in marks}) == 2


def test_the_mark_of_a_stop_prints() -> None:
    printed = CALCULATOR[CALCULATOR.index("@media print") :]
    assert re.search(r"[.]calc-caution::before,[^{]*{\s*print-color-adjust: exact", printed)
    hidden = re.findall(r"([^{}]+){\s*display: none !important;", printed)
    assert not [one for one in hidden if "calc-caution" in one]


def _rule(selector: str) -> str:
    found = re.search(rf"^{re.escape(selector)} {{([^}}]+)}}", CALCULATOR, re.MULTILINE)
    assert found, selector
    return found[1]


def _colours() -> list[dict[str, str]]:
    """The colours of the light scheme, then those of the dark one."""
    blocks = [
        dict(re.findall(r"--shop-([\w-]+): (#\w{6});", block)) for block in re.findall(r"{([^}]*)}", SITE)
    ]
    schemes = [block for block in blocks if "stop-soft" in block]
    assert len(schemes) >= 2
    return schemes


def _luminance(colour: str) -> float:
    parts = [int(colour[place : place + 2], 16) / 255 for place in (1, 3, 5)]
    red, green, blue = (c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in parts)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: str, other: str) -> float:
    low, high = sorted((_luminance(one), _luminance(other)))
    return (high + 0.05) / (low + 0.05)


@pytest.mark.published
def test_contrast_by_the_web_guidelines() -> None:
    """WCAG 2.2, success criterion 1.4.3 and its formula (from memory): 4.5 to 1 for text; black on white is 21 to 1."""
    assert contrast("#000000", "#ffffff") == pytest.approx(21)
    for scheme in _colours():
        for text, ground in (
            ("stop", "stop-soft"), ("ink", "stop-soft"), ("caution", "caution-soft"), ("ink", "caution-soft"),
            ("steel-0", "stop"), ("steel-4", "stop-soft"), ("steel-4", "caution-soft"),
        ):  # fmt: skip
            assert contrast(scheme[text], scheme[ground]) >= 4.5, (text, ground, scheme[text])
