"""The guides of the job and of the start: figures that cannot disagree with the safety pages, and what they must never say."""

from __future__ import annotations

import re
import sys
from functools import cache
from html import unescape
from pathlib import Path

import pytest

from calculators.kit.sources import source
from calculators.tables import table

ROOT = Path(__file__).resolve().parents[2]
sys.path.append(str(ROOT / "scripts"))

from shortcodes import Page, put_in  # noqa: E402

DOCS = ROOT / "docs"
RANK = ("memory", "second-hand", "excerpt", "full-text")
PAGES = [
    pytest.param(path, id=f"{path.parent.name}-{path.stem}")
    for path in [*sorted((DOCS / "job").glob("*.md")), *sorted((DOCS / "start").glob("*.md"))]
]
HEAT = table("heat_sensitive")


@cache
def words(name: str) -> str:
    """The words of a page with every comment in place, on one line."""
    body = (DOCS / f"{name}.md").read_text("utf-8").split("---\n", 2)[2]
    html = put_in(body, Page("../../", name.rsplit("/", 1)[-1], "none"))
    return re.sub(r"\s+", " ", unescape(re.sub(r"<[^>]+>", "", html))).replace("**", "")


@pytest.mark.property
@pytest.mark.parametrize("path", PAGES)
def test_no_line_begins_with_a_figure(path: Path) -> None:
    """A comment at the start of a line is a block of its own: it would cut the sentence in two."""
    lines = path.read_text("utf-8").splitlines()
    assert [line for line in lines if re.match(r"\s*<!-- (value|rule|worked):", line)] == []


@pytest.mark.property
@pytest.mark.parametrize("path", PAGES)
def test_nothing_is_called_safe(path: Path) -> None:
    """A shop never says that a part is safe, nor a coating food safe: such words stand only where they are refused."""
    for found in re.finditer(
        r"[^.|]*\b(?:food[- ]safe|(?:wheel|frame|part) is safe)\b[^.|]*", path.read_text("utf-8"), re.I
    ):
        assert re.search(
            r"\bnever|\bnot\b|nobody|cannot|[\"“]|no \"|any powder|Is powder|# ", found[0], re.I
        ), found[0]


@pytest.mark.published
@pytest.mark.parametrize(
    ("name", "said"),
    [
        # 21 CFR 175.300(c)(1) to (4) and Tables 1 and 2, read in a public copy of the eCFR
        ("job/near-food", "| One-time container up to 1 gallon | 0.5 mg/in² |"),
        ("job/near-food", "| One-time container, larger | 1.8 mg/in² |"),
        ("job/near-food", "not part of a container | 18 mg/in² |"),
        ("job/near-food", "water at 250 °F (121 °C) for 2 hours"),
        # Donovan, Fortune, Trout 2015, abstract
        ("job/parts-heat-can-harm", "16 h at 390 °F (199 °C) or 4 h at 425 °F (218 °C)"),
        # 49 CFR 180.205, as a government page quotes it
        ("job/parts-heat-can-harm", "has been over 350 °F (176 °C) must be condemned"),
        # IAPWS-IF97: saturated steam at 200 C is 1,555 kPa absolute
        ("job/what-to-refuse", "210 psi (14.5 bar)"),
        # ISO 13732-1, from memory
        ("start/first-shift", "(43 °C) for bare hands"),
        # health services, seen in excerpts
        ("start/first-shift", "cool running water, 20 minutes, at once"),
    ],
)  # fmt: skip
def test_the_page_says_what_the_source_says(name: str, said: str) -> None:
    assert said in words(name)


@pytest.mark.derived
def test_food_limits_in_metric() -> None:
    """1 in2 is 645.16 mm2, so 1 mg/in2 is 1.5500 g/m2: 0.5, 1.8 and 18 mg/in2 are 0.775, 2.79 and 27.9."""
    rows = re.findall(r"\| ([\d.]+) mg/in² \| ([\d.]+) \|", words("job/near-food"))
    assert len(rows) == 4
    for milligrams, grams in rows:
        assert float(grams) == pytest.approx(float(milligrams) / 0.64516, rel=0.01)


@pytest.mark.published
@pytest.mark.parametrize(
    ("key", "degC"),
    [("solder-lead", 183), ("solder-lead-free", 217), ("aluminium-6061", 177), ("aluminium-356", 152),
     ("aluminium-cylinder", 176)],
)  # fmt: skip
def test_heat(key: str, degC: int) -> None:
    """Melting points of Sn63/Pb37 and of SAC305 (from memory); ageing of 6061 (a supplier's sheet) and of 356 (a page quoting
    ASM Handbook volume 2); 49 CFR 180.205 (a government page)."""
    assert HEAT[key]["harmed_degC"] == degC


@pytest.mark.property
@pytest.mark.parametrize("key", HEAT)
def test_a_row_of_heat_is_whole_and_no_better_known_than_its_source(key: str) -> None:
    row = HEAT[key]
    assert row["harm"].endswith(".")
    assert row["do"].endswith(".")
    if "harmed_degC" in row:
        assert row["harmed_degF"] == pytest.approx(row["harmed_degC"] * 1.8 + 32, abs=1.5)
        assert RANK.index(row["harmed_seen"]) <= RANK.index(source(row["harmed_source"]).seen)


@pytest.mark.property
def test_other_stages_decline_the_same_parts() -> None:
    """What blast-or-not refuses by its own rules stands on the page of refusals."""
    page = words("job/what-to-refuse")
    for kind in ("cylinder", "strut", "shock absorber", "Magnesium", "Cooking surface", "wheel"):
        assert kind in page
