"""Charts: valid markup with classes only, everything inside the frame, and the numbers beside the picture."""

from __future__ import annotations

import re
from itertools import combinations, pairwise
from xml.etree import ElementTree

import pytest

from calculators import slugs
from calculators.kit.chart import Axis, Band, Bar, Chart, Mark, Series
from calculators.kit.chart_labels import wide
from calculators.kit.chart_svg import WIDTH, chart_svg, ticks
from calculators.kit.chart_table import chart_table
from calculators.kit.run import run

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


CROWDED = Chart(
    "Crowded",
    "Twelve pulls a minute apart.",
    Axis("min", 0, 60),
    Axis("F"),
    series=(Series("metal", (0, 30, 60), (70, 380, 400)),),
    marks=(
        *(Mark(f"{minute} min", x=minute) for minute in (3, *range(40, 50), 58)),
        Mark("schedule", y=375),
        Mark("powder flows", y=300),
    ),
)
LONG = Chart(
    "Long names",
    "Words as long as a reader may type them.",
    Axis("min", 0, 60),
    Axis("part"),
    marks=(Mark("5 min", x=5), Mark("6 min", x=6)),
    bars=(Bar("left hand bracket of the lower frame", 3, 8, "good", "at 5 min or at 6 min, no later"),),
)

type Box = tuple[float, float, float, float]


def words_of(root: ElementTree.Element) -> list[tuple[str, Box]]:
    """Left, top, right and bottom of every label, with the width that Chromium gives bold letters of this size: 6.2 each."""
    found = []
    for part in root.iter("text"):
        kind = part.get("class", "")
        if not re.search("mark-text|band-text|bar-name|bar-text", kind):
            continue
        width = 6.2 * len(part.text or "")
        left = (
            float(part.attrib["x"])
            - {"start": 0, "middle": width / 2, "end": width}[part.attrib["text-anchor"]]
        )
        foot = float(part.attrib["y"])
        found.append((part.text or "", (left, foot - 9, left + width, foot + 2)))
    return found


def ways_of(root: ElementTree.Element, kind: str) -> list[list[tuple[float, float]]]:
    """The corners of every path of one kind."""
    ways = []
    for part in root.iter("path"):
        if part.get("class", "").split()[0] != kind or "mark-level" in part.get("class", ""):
            continue
        way: list[tuple[float, float]] = []
        for letter, numbers in re.findall(r"([MLVH])([^MLVH]+)", part.attrib["d"]):
            at = [float(number) for number in numbers.split()]
            if letter == "V":
                at = [way[-1][0], at[0]]
            way.append((at[0], at[1]))
        ways.append(way)
    return ways


def runs_through(way: list[tuple[float, float]], box: Box) -> bool:
    left, top, right, bottom = box
    for (x, y), (to_x, to_y) in pairwise(way):
        steps = int(max(abs(to_x - x), abs(to_y - y))) * 2 + 1
        for step in range(steps + 1):
            at, height = x + (to_x - x) * step / steps, y + (to_y - y) * step / steps
            if left < at < right and top < height < bottom:
                return True
    return False


def examples() -> list[tuple[str, Chart]]:
    return [
        (f"{slug} {place}", chart) for slug in slugs() for place, chart in enumerate(run(slug, {}).charts)
    ]


EVERY = [("lines", LINES), ("bars", BARS), ("crowded", CROWDED), ("long", LONG), *examples()]


@pytest.mark.property
@pytest.mark.parametrize("chart", [chart for _, chart in EVERY], ids=[name for name, _ in EVERY])
def test_no_words_lie_on_others(chart: Chart) -> None:
    words = words_of(ElementTree.fromstring(chart_svg(chart, "name")))
    lying = [
        (one, other)
        for (one, a), (other, b) in combinations(words, 2)
        if a[0] < b[2] and b[0] < a[2] and a[1] < b[3] and b[1] < a[3]
    ]
    assert lying == []
    assert all(box[0] >= 0 and box[2] <= WIDTH and box[1] >= 0 for _, box in words)


@pytest.mark.property
@pytest.mark.parametrize("chart", [chart for _, chart in EVERY], ids=[name for name, _ in EVERY])
def test_no_curve_runs_through_words(chart: Chart) -> None:
    root = ElementTree.fromstring(chart_svg(chart, "name"))
    curves = ways_of(root, "calc-line")
    assert [words for words, box in words_of(root) if any(runs_through(way, box) for way in curves)] == []


@pytest.mark.property
@pytest.mark.parametrize("chart", [chart for _, chart in EVERY], ids=[name for name, _ in EVERY])
def test_every_upright_line_starts_under_its_own_words_and_passes_the_others(chart: Chart) -> None:
    root = ElementTree.fromstring(chart_svg(chart, "name"))
    over = {mark.text for mark in chart.marks if mark.x is not None and mark.y is None}
    labels = [(words, box) for words, box in words_of(root) if words in over]
    lines = ways_of(root, "calc-mark")
    assert len(lines) == len(labels)
    assert not [words for words, box in labels if any(runs_through(way, box) for way in lines)]
    for way in lines:
        (x, y), *_ = way
        assert sum(box[0] <= x <= box[2] and 0 <= y - box[3] <= 3 for _, box in labels) == 1


@pytest.mark.property
def test_labels_over_lines_keep_the_lines_order() -> None:
    root = ElementTree.fromstring(chart_svg(CROWDED, "name"))
    rows: dict[float, list[tuple[float, int]]] = {}
    for words, (left, top, _, _) in words_of(root):
        if words.endswith(" min"):
            rows.setdefault(top, []).append((left, int(words.split()[0])))
    assert sum(map(len, rows.values())) == 12
    for row in rows.values():
        minutes = [minute for _, minute in sorted(row)]
        assert minutes == sorted(minutes)


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


@pytest.mark.parametrize("high", [60, 1500, 250000])
def test_the_last_number_under_a_chart_is_whole(high: float) -> None:
    chart = Chart("t", "s", Axis("min"), Axis("F"), series=(Series("thick", (0, high), (70, 300)),))
    drawn = re.findall(
        r'<text class="calc-tick" x="([\d.]+)" y="[\d.]+" text-anchor="middle">([\d,]+)<',
        chart_svg(chart, "c"),
    )
    x, words = drawn[-1]
    assert words == f"{high:,}"
    assert float(x) + wide(words) / 2 <= WIDTH
