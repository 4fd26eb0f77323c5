"""The fault finder as it is built, and the drawn cross-cut classes against the printed limits."""

from __future__ import annotations

import json
import re
import tomllib
from html import unescape
from typing import Any

import pytest

from calculators.kit.sources import source
from tests.site.conftest import ROOT, SITE, built

FAULTS: dict[str, dict[str, Any]] = tomllib.loads(
    (ROOT / "calculators" / "tables" / "pages" / "faults.toml").read_text("utf-8")
)
PICTURES = ROOT / "docs" / "assets" / "pictures"
PAGE = "inspect/what-went-wrong/index.html"


def words_of(html: str) -> str:
    return " ".join(unescape(re.sub(r"<[^>]*>", " ", html)).split())


def section(key: str) -> str:
    return built(PAGE).text.split(f'data-fault="{key}"', 1)[1].split("</section>", 1)[0]


def test_there_are_enough_and_no_name_stands_twice() -> None:
    assert len(FAULTS) >= 24
    names = [fault["name"].lower() for fault in FAULTS.values()]
    assert len(set(names)) == len(names)


@pytest.mark.parametrize("key", FAULTS)
def test_a_fault_is_whole(key: str) -> None:
    fault = FAULTS[key]
    assert fault["looks"].endswith(".")
    assert fault["now"].endswith(".")
    assert len(fault["also"].split(",")) >= 3
    assert len(fault["cause"]) >= 2, "one cause needs no test to tell it apart"
    for why, tell, prevent in fault["cause"]:
        assert why and not why.endswith("."), "the page puts the full stop"
        assert tell.endswith(".")
        assert prevent.endswith((".", ")."))
    for name in fault["sources"]:
        source(name)


@pytest.mark.parametrize("key", FAULTS)
def test_a_fault_is_a_heading_with_all_its_causes(key: str) -> None:
    """Without a script: the page itself holds everything, and hides none of it."""
    fault, text = FAULTS[key], section(key)
    assert f'<h3 id="{key}">' in text
    assert "hidden" not in text.split(">", 1)[0]
    shown = words_of(text)
    for cause in fault["cause"]:
        for part in cause:
            # a link in a sentence is written as Markdown in the table
            plain = re.sub(r"\[([^\]]*)\]\([^)]*\)", r"\1", part)
            assert plain.split(" [")[0].rstrip(".")[:60] in shown
    assert "Do now:" in shown
    assert "Stands on: " in shown
    if {"common-practice"} & set(fault["sources"]):
        assert "common practice, no source" in shown


@pytest.mark.parametrize("key", FAULTS)
def test_a_fault_has_a_drawing_of_its_own(key: str) -> None:
    svg = (PICTURES / "faults" / f"{key}.svg").read_text("utf-8")
    assert f'<title id="faults-{key}-title">' in svg
    desc = re.search(r"<desc[^>]*>(.*?)</desc>", svg)
    assert desc and desc[1].startswith("Left: ") and "Right: " in desc[1]
    # 168 units of 13 unit letters: a longer line would run into the other frame
    assert all(len(unescape(words)) <= 24 for words in re.findall(r"<text[^>]*>(.*?)</text>", svg))
    drawn = re.sub(r"<(title|desc)[^>]*>.*?</\1>|faults-[a-z-]+", "", svg)
    others = [one for one in FAULTS if one != key]
    assert all(
        drawn != re.sub(r"<(title|desc)[^>]*>.*?</\1>|faults-[a-z-]+", "", text)
        for text in ((PICTURES / "faults" / f"{one}.svg").read_text("utf-8") for one in others)
    )


def test_the_filter_waits_for_a_script_and_offers_only_what_finds_something() -> None:
    form = built(PAGE).text.split('<form class="fault-filter"', 1)[1].split("</form>", 1)[0]
    assert " hidden" in form.split(">", 1)[0]
    for name in ("seen", "where", "when"):
        choices = re.search(rf'<select id="fault-{name}".*?</select>', form, re.DOTALL)
        assert choices and f'<label for="fault-{name}">' in form
        for value in re.findall(r'value="([a-z]+)"', choices[0]):
            assert any(value in fault[name] for fault in FAULTS.values()), f"{name}={value} finds nothing"


def test_the_search_finds_a_fault_by_what_people_call_it() -> None:
    documents = json.loads((SITE / "search" / "search_index.json").read_text("utf-8"))["docs"]
    found = {one["location"]: one for one in documents}
    for key, fault in FAULTS.items():
        entry = found[f"inspect/what-went-wrong/#{key}"]
        assert unescape(entry["title"]) == fault["name"]
        text = words_of(entry["text"])
        assert all(words.strip() in text for words in fault["also"].split(","))


@pytest.mark.published
@pytest.mark.parametrize(
    ("iso", "us", "percent"), [(1, "4B", 5), (2, "3B", 15), (3, "2B", 35), (4, "1B", 65)]
)
def test_the_drawn_lattices_have_lost_what_the_classes_allow(iso: int, us: str, percent: float) -> None:
    """ISO 2409 classes 1 to 4: up to 5, 15, 35 and 65 %; ASTM D3359 4B to 1B the other way round. Read second-hand in
    tool makers' manuals that quote the standards."""
    svg = (PICTURES / "inspect" / "cross-cut-classes.svg").read_text("utf-8")
    assert f"ISO {iso} = {us}" in svg
    ways = re.findall(r'data-lost="([\d.]+)"[^>]*d="([^"]+)"', svg)
    share, way = ways[iso - 1]
    cells = sum(int(long) for long in re.findall(r"h(\d+)v1", way))
    assert float(share) == percent
    assert cells / (5 * 8) ** 2 == pytest.approx(percent / 100, abs=1e-3)


def test_no_lattice_of_the_best_class_has_lost_anything() -> None:
    svg = (PICTURES / "inspect" / "cross-cut-classes.svg").read_text("utf-8")
    assert "ISO 0 = 5B" in svg and "ISO 5 = 0B" in svg
    shares = [float(one) for one in re.findall(r'data-lost="([\d.]+)"', svg)]
    assert len(shares) == 5 and shares == sorted(shares)
    assert shares[-1] > 65
