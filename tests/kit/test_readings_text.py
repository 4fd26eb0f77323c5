"""Lists of readings as people type them and as a gauge's file holds them."""

from __future__ import annotations

import pytest

from calculators.kit.fields import Asked, Limits, Readings
from calculators.kit.read import Refused, read_field

FILM = Asked(
    "readings",
    "readings_um",
    "um",
    Readings(
        label="Film readings", units=("mil", "um"), limits=Limits("0 mil", "60 mil", ""), takes_file=True
    ),
)
MIL = 25.4


def mils(text: str, unit: str = "") -> tuple[list[float], list[str]]:
    notes: list[str] = []
    values = read_field(FILM, text, unit, notes)
    return [round(value / MIL, 6) for value in values], notes


@pytest.mark.parametrize(
    "text",
    [
        "2.1 2.4 3",
        "2.1, 2.4, 3",
        "2.1\n2.4\n3\n",
        "2.1;2.4;3",
        "2,1 2,4 3",
        "2.1\t2.4\t3 mil",
        "2.1,2.4, 3",
        "2.1 mil 2.4 3",
    ],
)
def test_a_typed_list(text: str) -> None:
    assert mils(text) == ([2.1, 2.4, 3], [])


@pytest.mark.parametrize("text", ["2½ 3", "2½ mil, 3 mil", "2¹⁄₂ mil\n3", "２½ ３", "\u200b 2½ 3"])
def test_a_fraction_s_sign_belongs_to_the_number_before_it(text: str) -> None:
    assert mils(text) == ([2.5, 3], [])


def test_the_last_unit_holds_for_all_that_have_none() -> None:
    assert mils("50.8, 76.2 um")[0] == [2, 3]
    assert mils("50.8 76.2", "um")[0] == [2, 3]


GAUGE = """Batch,B7
Gauge,set on blasted steel
No.,Thickness (um),Date
1,50.8,2026-11-24 10:02
2,76.2,2026-11-24 10:03
3,63.5,2026-11-24 10:03
Mean,63.5,
Std. dev.,12.7,
"""


def test_a_gauge_s_file_with_a_heading() -> None:
    values, notes = mils(GAUGE)
    assert values == [2, 3, 2.5]
    assert notes == ["Readings were taken from the column “thickness”.", "2 summary lines were left out."]


@pytest.mark.parametrize(
    "text",
    [
        "Reading;Unit\n50,8;um\n76,2;um\n63,5;um",
        "Spot\tR1\tR2\tR3\n1\t2\t3\t2.5",
        "\ufeffReading no,Value,Units\r\n1,2,mil\r\n2,3,mil\r\n3,2.5,mil\r\n",
        "Film readings (mil)\n2\n3\n2.5",
    ],
)
def test_other_files(text: str) -> None:
    assert mils(text)[0] == [2, 3, 2.5]


def test_a_column_that_counts_is_left_out() -> None:
    values, notes = mils("1,2.1\n2,2.4\n3,3.0")
    assert values == [2.1, 2.4, 3]
    assert notes == ["The first column counts 1, 2, 3 and was left out."]
    # two lines are too few to tell a count from readings
    assert mils("1, 2.1\n2, 2.4")[0] == [1, 2.1, 2, 2.4]


@pytest.mark.parametrize(
    ("text", "place"), [("2.1 2.4 x", 3), ("2.1 abc 3", 2), ("No.,Thickness\n1,2.1\n2,OVER", 2)]
)
def test_what_is_no_number_is_named_by_its_place(text: str, place: int) -> None:
    with pytest.raises(Refused, match=f"^Reading {place}: "):
        mils(text)


def test_a_heading_without_readings_is_not_an_answer() -> None:
    with pytest.raises(Refused):
        mils("Reading\n")
    with pytest.raises(Refused, match="Enter the film readings"):
        mils("No.,Reading\n1,\n")
