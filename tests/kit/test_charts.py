"""Charts: valid markup with classes only, everything inside the frame, and the numbers beside the picture."""

from __future__ import annotations

import re
from xml.etree import ElementTree

import pytest

from calculators.kit.chart import Axis, Band, Bar, Chart, Mark, Series
from calculators.kit.chart_svg import WIDTH, chart_svg, ticks
from calculators.kit.chart_table import chart_table

LINES = Chart(
    title="Metal & <time>",
    says='It rises to "400".',
    x=Axis("min", 0),
    y=Axis("F"),
    series=(
        Series("thick", (0, 10, 20), (70, 300, 390)),
        Series("doubt", (0, 10, 20), (60, 280, 380), upper=(80, 320, 395)),
        Series("read", (1, 5), (90, 200), dots=True),
    ),
    marks=(Mark("pull", x=12), Mark("pull it now", x=12.5), Mark("300 F", y=300), Mark("here", 10, 300)),
    bands=(Band("good", 350, None, "good"), Band("soon", None, 5, "near", "x")),
)
BARS = Chart(
    "Bars",
    "They differ.",
    Axis("%", 0, 100),
    Axis("part"),
    bars=(Bar("a <b>", 10, 40, "bad", "low"), Bar("c", 5, 5)),
)
FLAT = Chart("Flat", "Nothing moves.", Axis("min"), Axis("F"), series=(Series("one", (1.0,), (5.0,)),))


@pytest.mark.parametrize("chart", [LINES, BARS, FLAT], ids=lambda chart: chart.title[:4])
def test_the_picture_is_well_formed_and_strict(chart: Chart) -> None:
    picture = chart_svg(chart, "name")
    root = ElementTree.fromstring(picture)
    assert root.get("role") == "img"
    assert root.get("aria-labelledby") == "name-title name-says"
    assert [root[0].text, root[1].text] == [chart.title, chart.says]
    for part in root.iter():
        assert "style" not in part.attrib
        assert part.tag not in ("style", "script", "foreignObject", "image", "a")
        assert not [
            name
            for name in part.attrib
            if name.startswith("on") or "href" in name or name in ("fill", "stroke")
        ]
    assert "nan" not in picture.lower()
    assert not re.search(r"\binf\b", picture)


@pytest.mark.property
def test_everything_stays_inside_the_frame() -> None:
    root = ElementTree.fromstring(chart_svg(LINES, "name"))
    height = float(root.attrib["viewBox"].split()[3])
    for part in root.iter():
        for name, most in (("x", WIDTH), ("cx", WIDTH), ("y", height), ("cy", height)):
            assert 0 <= float(part.get(name, 0)) <= most, ElementTree.tostring(part)
        if part.tag == "rect":
            assert float(part.attrib["width"]) >= 0
            assert float(part.attrib["height"]) >= 0


def test_labels_of_marks_that_are_near_stand_on_rows_of_their_own() -> None:
    root = ElementTree.fromstring(chart_svg(LINES, "name"))
    rows = {part.text: part.get("y") for part in root.iter("text") if part.get("class") == "calc-mark-text"}
    assert rows["pull"] != rows["pull it now"]


@pytest.mark.derived
@pytest.mark.parametrize(
    ("low", "high", "expected"),
    [
        (0, 47, [0, 10, 20, 30, 40, 50]),
        (0, 1, [0, 0.2, 0.4, 0.6, 0.8, 1.0]),
        (-40, 60, [-40, -20, 0, 20, 40, 60]),
    ],
)
def test_ticks(low: float, high: float, expected: list[float]) -> None:
    """Round numbers that cover the range, counted by hand."""
    assert ticks(low, high) == pytest.approx(expected)


@pytest.mark.derived
def test_the_table_holds_the_picture_s_numbers() -> None:
    """Straight between points: 5 min lies half way between 70 and 300 F, at 185 F."""
    table = chart_table(
        Chart("t", "s", Axis("min"), Axis("F"), series=(Series("thick", (0, 5, 10), (70, 185, 300)),))
    )
    assert table.head == ("min", "thick")
    assert table.rows == (("0", "70"), ("5", "185"), ("10", "300"))
    many = Series("thick", tuple(range(101)), tuple(10 * x for x in range(101)))
    assert chart_table(Chart("t", "s", Axis("min"), Axis("F"), series=(many,))).rows[6] == ("50", "500")
    assert all(len(row) == len(chart_table(LINES).head) for row in chart_table(LINES).rows)
    assert chart_table(BARS).rows[0] == ("a <b>", "10", "40", "low")


def test_a_band_s_upper_edge_of_zero_is_zero() -> None:
    table = chart_table(
        Chart("t", "s", Axis("min"), Axis("F"), series=(Series("doubt", (0, 1), (-5, -5), upper=(0, 0)),))
    )
    assert table.rows[0] == ("0", "-5 to 0")
