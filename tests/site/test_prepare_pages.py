"""The guides to preparing a part: grades drawn as the standards word them, figures as tables and calculators give them now."""

from __future__ import annotations

import itertools
import re
import sys
from collections.abc import Iterator
from html import unescape
from pathlib import Path
from urllib.parse import parse_qsl

import pytest
import yaml

from calculators.kit import find
from calculators.kit.run import run
from calculators.tables import table

ROOT = Path(__file__).resolve().parents[2]
sys.path.append(str(ROOT / "scripts"))

import grade_pictures  # noqa: E402
from shortcodes import Page, put_in  # noqa: E402

FOLDER = ROOT / "docs" / "prepare"
DRAWN = (ROOT / "docs" / "assets" / "pictures" / "prepare" / "surface-grades.svg").read_text("utf-8")
LINK = re.compile(r'<a\s+href="~/(?:[\w-]+)/([\w-]+)/(?:\?([^"]*))?">(.*?)</a>', re.S)


def split(path: Path) -> tuple[dict[str, object], str]:
    _, head, body = path.read_text("utf-8").split("---\n", 2)
    return yaml.safe_load(head), body


def guides() -> Iterator[Path]:
    for path in sorted(FOLDER.glob("*.md")):
        if split(path)[0]["kind"] != "calculator":
            yield path


GUIDES = [pytest.param(path, id=path.stem) for path in guides()]


def words(name: str) -> str:
    """A guide as a reader sees it, on one line and without marks."""
    html = put_in(split(FOLDER / f"{name}.md")[1], Page("../../", name, "none"))
    return re.sub(r"\s+", " ", unescape(re.sub(r"<[^>]+>", "", html))).replace("**", "")


def links(path: Path) -> list[tuple[str, dict[str, str], str]]:
    """Of each link into a calculator: its slug, what it fills in, and the words that stand on and after it."""
    body = split(path)[1]
    return [
        (
            found[1],
            dict(parse_qsl(unescape(found[2] or ""))),
            re.sub(r"\s+", " ", re.sub(r"<[^>]+>", "", body[found.start() : found.end() + 260])).replace(
                "**", ""
            ),
        )
        for found in LINK.finditer(body)
    ]


# ---- The drawing of the grades ----


def cells_of(grade: str) -> int:
    way = re.search(rf'data-remains="{grade}"[^>]* d="([^"]+)"', DRAWN)
    return sum(int(long) for long in re.findall(r"h(\d+)v1", way[1])) if way else 0


@pytest.mark.published
@pytest.mark.parametrize(("grade", "percent"), [("sp5", 0), ("sp10", 5), ("sp6", 33), ("sp14", 10)])
def test_each_square_shows_the_share_that_the_standard_allows(grade: str, percent: float) -> None:
    """SSPC-SP 5, 10, 6 and 14: no stain; stain on up to 5 %; on up to 33 %; clinging matter on up to 10 % of each unit area.
    SP 6 and SP 14 read in the foreword of SP 6, the others second-hand in tables that quote them."""
    across = 3 * grade_pictures.CELLS_PER_IN
    assert cells_of(grade) / across**2 == pytest.approx(percent / 100, abs=0.5 / across**2)
    assert table("surface_grades")[grade]["remains_percent"] == percent


@pytest.mark.published
def test_each_square_is_one_unit_area_at_one_scale() -> None:
    """SSPC-SP 6: a unit area is 9 square inches, a square of 3 by 3 in (read in its foreword)."""
    squares = re.findall(r'width="([\d.]+)" height="([\d.]+)" data-grade="(\w+)"', DRAWN)
    assert [grade for *_, grade in squares] == ["sp5", "sp10", "sp6", "sp14"]
    ruler = re.search(r'd="M[\d.]+ [\d.]+h([\d.]+)M[^"]*"/>\s*<text[^>]*>3 in \(76 mm\)', DRAWN)
    assert ruler
    inch = float(ruler[1]) / 3
    for wide, high, _ in squares:
        assert float(wide) * float(high) / inch**2 == pytest.approx(9)


@pytest.mark.derived
@pytest.mark.parametrize(("grade", "in2"), [("sp10", "0.45"), ("sp6", "2.97"), ("sp14", "0.9")])
def test_the_share_is_said_in_square_inches(grade: str, in2: str) -> None:
    """0.05, 0.33 and 0.10 of 9 in2, worked by hand; in cm2 times 6.4516: 2.9, 19.2 and 5.8."""
    assert f"{in2} of 9 in²" in DRAWN
    page = words("surface-grades")
    cm2 = {"sp10": "2.9", "sp6": "19", "sp14": "5.8"}[grade]
    assert f"{in2} in² ({cm2} cm²)" in page


@pytest.mark.property
def test_the_drawing_is_the_one_that_the_script_makes_and_always_the_same() -> None:
    assert grade_pictures.drawing() == grade_pictures.drawing() == DRAWN


@pytest.mark.property
def test_no_cell_of_a_square_is_drawn_twice_or_outside_it() -> None:
    for grade in ("sp10", "sp6", "sp14"):
        way = re.search(rf'data-remains="{grade}"[^>]* d="([^"]+)"', DRAWN)
        assert way
        across = 3 * grade_pictures.CELLS_PER_IN
        seen = [
            (int(x) + step, int(y))
            for x, y, long in re.findall(r"M(\d+) (\d+)h(\d+)v1", way[1])
            for step in range(int(long))
        ]
        assert len(seen) == len(set(seen))
        assert all(0 <= x < across and 0 <= y < across for x, y in seen)


@pytest.mark.property
def test_a_grade_without_a_match_gets_no_iso_name() -> None:
    for swatch in grade_pictures.swatches():
        assert ("Sa" in grade_pictures.name(swatch)) == (not swatch.iso.startswith("none"))


# ---- Links into calculators ----


@pytest.mark.property
@pytest.mark.parametrize("path", GUIDES)
def test_what_a_link_fills_in_is_taken(path: Path) -> None:
    made = links(path)
    assert made or "<!-- calculator:" in split(path)[1], "no calculator on the page or one tap away"
    for slug, filled, _ in made:
        calculator = find.load(slug)
        if filled:
            assert filled.pop("v") == str(calculator.version), slug
        assert set(filled) <= {one.key for one in calculator.fields}, slug
        assert not run(slug, filled).errors, slug


# What a page says beside its link, and the answer that it must still be. The number is the first one of its kind.
SAID = [
    ("blast-a-part", 1, "air-demand", "89 cfm"),
    ("air-hose-nozzle", 0, "worn-nozzle", "137 cfm"),
    ("air-hose-nozzle", 0, "worn-pressure", "85"),
    ("air-hose-nozzle", 1, "tank-time", "1.9 min"),
    ("after-blasting", 0, "dew-point", "66.5"),
    ("after-blasting", 0, "least-metal", "71.9"),
    ("after-blasting", 0, "verdict", "go"),
    ("after-blasting", 1, "salt", "48 mg/m"),
    ("galvanised-steel", 0, "oven-time", "50 min"),
    ("galvanised-steel", 0, "warm-up", "30"),
    ("galvanised-steel", 0, "metal-target", "429"),
    ("galvanised-steel", 1, "verdict", "sweep"),
    ("galvanised-steel", 1, "profile", "0.75 to 1.5 mil"),
    ("aluminium-and-stainless", 0, "oven-time", "70 min"),
    ("aluminium-and-stainless", 0, "metal-target", "429"),
    ("aluminium-and-stainless", 2, "verdict", "sweep blast, no more"),
    ("chemical-pretreatment", 0, "verdict", "clean it, no blasting"),
    ("clean-and-strip", 0, "verdict", "clean it, no blasting"),
    ("surface-grades", 0, "prep-grade", "SSPC-SP 10"),
    ("surface-profile", 0, "profile-grade", "fine"),
    ("surface-profile", 0, "mean-peak", "1.82 mil"),
    ("mask-and-plug", 0, "verdict", "will not fit"),
    ("mask-and-plug", 1, "room-after", "4 mil"),
    ("mask-and-plug", 1, "verdict", "tight"),
    ("take-a-part-in", 0, "pressure", "232 psi (16 bar)"),
]


@pytest.mark.property
@pytest.mark.parametrize(("name", "place", "key", "said"), SAID)
def test_a_number_beside_a_link_is_what_the_calculator_answers_now(
    name: str, place: int, key: str, said: str
) -> None:
    slug, filled, near = links(FOLDER / f"{name}.md")[place]
    filled.pop("v")
    assert said.lower() in run(slug, filled).answers[key].text.lower()
    assert said.lower() in near.lower()


@pytest.mark.property
def test_the_blasting_time_on_the_page_is_the_span_of_the_calculator() -> None:
    slug, filled, near = links(FOLDER / "blast-a-part.md")[1]
    filled.pop("v")
    span = re.search(r"([\d.]+) to ([\d.]+) min", run(slug, filled).headline)
    span = span or re.search(r"([\d.]+) min to ([\d.]+) min", run(slug, filled).headline)
    assert span
    assert f"{round(float(span[1]))} to {round(float(span[2]))} minutes" in near


@pytest.mark.property
def test_what_is_not_known_at_the_door_stops_the_part() -> None:
    slug, filled, near = links(FOLDER / "take-a-part-in.md")[1]
    filled.pop("v")
    assert run(slug, filled).headline.startswith("Not yet")
    assert "not yet" in near


# ---- Figures of tables and rules ----


@pytest.mark.property
def test_half_again_of_each_nozzle() -> None:
    page = words("air-hose-nozzle")
    for number in "23456":
        row = table("nozzles")[number]
        line = next(
            one for one in split(FOLDER / "air-hose-nozzle.md")[1].splitlines() if f"No. {number}," in one
        )
        last = int(line.split("|")[-2])
        assert last == pytest.approx(1.5 * row["at_100_psi_cfm"], abs=0.51)
        assert f"No. {number}, " in page and str(row["at_100_psi_cfm"]) in page


@pytest.mark.property
def test_uses_of_an_abrasive_are_those_of_the_table() -> None:
    body = split(FOLDER / "choose-an-abrasive.md")[1]
    for name, keys in {
        "Steel grit, shot": ("steel-grit", "steel-shot"),
        "Aluminium oxide": ("aluminium-oxide",),
        "Glass bead": ("glass-bead",),
        "Garnet": ("garnet",),
        "Crushed glass, slag, soda": ("crushed-glass", "slag", "soda"),
    }.items():
        line = next(one for one in body.splitlines() if one.startswith(f"| {name} |"))
        for key in keys:
            low, high = table("abrasives")[key]["reuse_cycles"]
            assert re.findall(r"\d+", line) == list(dict.fromkeys((str(low), str(high))))


@pytest.mark.property
def test_fields_of_the_comparator_are_those_of_the_table() -> None:
    page = words("surface-profile")
    for kind in ("grit", "shot"):
        ends = [table("profile_grades")[kind][f"segment_{one}_um"] for one in (1, 2, 3, 4)]
        for low, high in itertools.pairwise(ends):
            assert (
                f"{low} to {high} µm ({low / 25.4:.1f} to {high / 25.4:.1f} mil)".replace(".0 ", " ") in page
            )


@pytest.mark.property
def test_no_guide_offers_an_abrasive_that_the_rules_forbid() -> None:
    """The rows of the choosing table, against what each abrasive may touch."""
    body = split(FOLDER / "choose-an-abrasive.md")[1]
    offered = {"Garnet": "garnet", "aluminium oxide": "aluminium-oxide", "crushed glass": "crushed-glass"}
    line = next(one for one in body.splitlines() if one.startswith("| Carbon steel"))
    assert all(word in line for word in offered) and "steel grit" in line
    for key in offered.values():
        row = table("abrasives")[key]
        for metal in (
            "carbon-steel",
            "stainless",
            "aluminium",
            "copper-brass",
            "galvanised",
            "zinc-die-cast",
        ):
            assert metal in row["may_touch"], (key, metal)
    for key in ("steel-grit", "steel-shot", "slag"):
        assert {"stainless", "aluminium", "galvanised"} <= set(table("abrasives")[key]["never_touch"])


@pytest.mark.property
def test_thin_sheet_zinc_and_profile_are_as_in_the_rules() -> None:
    rules = table("blasting_rules")
    assert rules["thin"]["under_in"] == 0.125 and "under 1/8 in (3 mm)" in words("blast-a-part")
    for name, key in (
        ("blast-a-part", "thin"),
        ("galvanised-steel", "zinc"),
        ("aluminium-and-stainless", "soft"),
    ):
        assert "40 psi (2.8 bar" in rules["pressures"][key], key
        assert "40 psi (2.8 bar)" in words(name), name
    blast, sweep = rules["profiles"]["blast"], rules["profiles"]["sweep"]
    assert f"{blast['low_mil']:g} to {blast['high_mil']:g} mil" in words("surface-profile")
    assert f"{sweep['low_mil']:g} to {sweep['high_mil']:g} mil" in words("surface-profile")


# ---- What each page must have ----


@pytest.mark.property
@pytest.mark.parametrize("path", GUIDES)
def test_a_page_has_its_parts_in_order(path: Path) -> None:
    meta, body = split(path)
    parts = ["# ", "## Next", "*Also asked as:", "## Sources", "<!-- sources:", "**Not certain:**"]
    places = [body.index(one) for one in parts]
    assert places == sorted(places)
    assert "qualified" in body
    if meta["kind"] == "guide":
        hazards = body.index("## Before you start")
        assert all(hazards < body.index(one) for one in ("## How to tell it worked", "## If it goes wrong"))
        assert "safety/" in body


@pytest.mark.property
@pytest.mark.parametrize("path", GUIDES)
def test_no_word_that_talks_down(path: Path) -> None:
    found = re.findall(r"\b(simply|just|easily|please|sorry|invalid|obviously)\b", split(path)[1], re.I)
    assert found == []
