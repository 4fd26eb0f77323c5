"""Tables as people and instruments write them."""

from __future__ import annotations

from dataclasses import dataclass

import pytest

from calculators.kit.fields import Asked, Choice, Limits, Option, Quantity, Rows, Whole, ask
from calculators.kit.read import Refused, read_field, read_form


@dataclass(frozen=True)
class LogLine:
    time_min: float = ask(
        Quantity(label="Time", units=("min", "s", "h"), limits=Limits("0 min", "100000 min", ""))
    )
    metal_degC: tuple[float, ...] = ask(
        Quantity(
            label="Metal temperature",
            units=("degF", "degC"),
            default="350",
            limits=Limits("-60 F", "1200 F", ""),
        )
    )


LOG = Asked(
    "log",
    "log",
    "",
    Rows(label="Log", row=LogLine, repeats="metal", clock="time", unit_of="metal", takes_file=True),
)


@dataclass(frozen=True)
class Bake:
    temperature_degC: float = ask(
        Quantity(
            label="Temperature", units=("degF", "degC"), default="400", limits=Limits("0 F", "900 F", "")
        )
    )
    minutes_min: float = ask(
        Quantity(label="Minutes", units=("min", "h"), default="20", limits=Limits("0 min", "9000 min", ""))
    )


BAKES = Asked("bakes", "bakes", "", Rows(label="Bakes", row=Bake))


def log(text: str, unit: str = "") -> tuple[list[float], list[tuple[float, ...]], list[str]]:
    """Minutes, metal in F, notes."""
    notes: list[str] = []
    rows = read_field(LOG, text, unit, notes)
    return (
        [round(row.time_min, 4) for row in rows],
        [tuple(round(one * 1.8 + 32, 3) for one in row.metal_degC) for row in rows],
        notes,
    )


TWO = ([0.0, 5.0], [(70.0,), (212.0,)])


@pytest.mark.derived
@pytest.mark.parametrize(
    "text",
    [
        "0, 70\n5, 212",
        "0,70\r\n5,212\r\n",
        "0 70\n5 212",
        "0\t70\n5\t212",
        "0;70\n5;212",
        "0, 70\n\n\n5, 212\n,,\n",
        "0, 70 F\n5, 100 C",
        "0 min, 70\n300 s, 212",
        "\ufefftime (min),metal (F)\n0,70\n5,212",
        "Time,Metal temperature\n0,70\n5,212",
        "time [s];metal [°F]\n0;70\n300;212",
        "time (s),metal (F)\n0,70\n300,212",
        "Seconds,Metal (F)\n0,70\n300,212",
        "time (h)\tmetal (F)\n0\t70\n0.0833333333\t212",
        "time;metal\n0,0;70,0\n5,0;212,0",
        "metal (F),time (min)\n70,0\n212,5",
        '"Time (min)","Metal (F)"\n"0","70"\n"5","212"',
        "No,Time (min),Metal (F)\n1,0,70\n2,5,212",
        "Bake of the bench\nMade by hand\n\ntime (min),metal (F)\n0,70\n5,212",
        "23:58,70\n00:03,212",
        "23:58:00,70\n0:03:00,212",
        "11:58 PM,70\n12:03 AM,212",
        "time,metal\n10:00:00,70\n10:05:00,212",
        "2026-11-25 23:58:00,70\n2026-11-26 00:03:00,212",
        "2026-11-25T23:58:00,70\n2026-11-26T00:03:00,212",
        "11/25/2026 23:58,70\n11/26/2026 00:03,212",
        "25.11.2026 23:58;70,0\n26.11.2026 00:03;212,0",
        "2026-11-25,23:58:00,70\n2026-11-26,00:03:00,212",
        "Date,Time,Metal (F)\n2026-11-25,23:58:00,70\n2026-11-26,00:03:00,212",
        "Date/Time,Metal (F)\n2026-12-31 23:58,70\n2027-01-01 00:03,212",
    ],
)
def test_the_same_log_however_it_is_written(text: str) -> None:
    """70 F at the start and 212 F (100 C) five minutes later; the rest is arithmetic of clocks and units."""
    minutes, metal, _ = log(text)
    assert minutes == pytest.approx(TWO[0], abs=1e-4)
    assert metal == [pytest.approx(row) for row in TWO[1]]


@pytest.mark.derived
def test_the_unit_beside_the_table_holds_for_bare_numbers() -> None:
    """100 C = 212 F."""
    assert log("0, 0\n1, 100", "C")[1] == [(32.0,), (212.0,)]
    assert log("0, 0\n1, 212 F", "C")[1] == [(32.0,), (212.0,)]


def test_a_heading_s_unit_wins_over_the_one_beside_the_table() -> None:
    assert log("time,metal (F)\n0,70\n5,212", "C")[:2] == TWO


def test_several_probes() -> None:
    minutes, metal, _ = log("time (min),probe 1 (F),probe 2 (F)\n0,70,71\n5,212,213")
    assert (minutes, metal) == ([0, 5], [(70, 71), (212, 213)])
    assert log("0, 70, 71\n5, 212, 213")[1] == metal


@pytest.mark.parametrize("air", ["Oven air (F)", "Air", "Setpoint", "ambient (F)"])
def test_the_oven_s_air_is_not_metal(air: str) -> None:
    minutes, metal, notes = log(f"time (min),{air},metal (F)\n0,400,70\n5,400,212")
    assert (minutes, metal) == TWO
    assert [air[:3] in note and "left out" in note for note in notes] == [True]


def test_a_clock_is_said() -> None:
    assert log("23:58,70\n00:03,212")[2] == ["Clock times were read as minutes from the first line."]


def test_a_clock_that_runs_back_a_little_is_not_the_next_day() -> None:
    """Rows out of order are for the calculator to refuse; they are not 24 hours apart."""
    with pytest.raises(Refused, match=r"Line 2: .*must be between"):
        log("10:05,70\n10:03,212")


@pytest.mark.parametrize(
    ("text", "sentence"),
    [
        ("0, 70\n5, warm", "Line 2: metal temperature must be a number, like 350 F"),
        ("0, 70\n5", "Line 2: enter the metal temperature"),
        ("0, 70\nnext, 80", "Line 2: time must be a number, like 0 min"),
        ("0, 70\n5, 9999", "Line 2: metal temperature must be between -60 F and 1,200 F"),
        ("time,battery\n0,3\n1,3", "The headings name no column for the metal temperature: name it “Metal temperature”"),
    ],
)  # fmt: skip
def test_a_fault_names_its_line(text: str, sentence: str) -> None:
    with pytest.raises(Refused) as refused:
        log(text)
    assert str(refused.value) == sentence


def test_headings_of_more_columns_than_a_logger_has_are_refused() -> None:
    """Each short line would be filled up to all of them: a file of 80 kB came to 16 million cells."""
    probes = 199
    assert len(log(f"time{',metal' * probes}\n0{',70' * probes}\n5{',212' * probes}")[1][0]) == probes
    with pytest.raises(Refused) as refused:
        log(f"time{',metal' * 4000}\n0{',70' * 4000}\n" + "5,212\n" * 4000)
    assert str(refused.value) == "The headings name 4,001 columns, and more than 200 are not read"


def test_line_numbers_count_preamble_and_blank_lines() -> None:
    with pytest.raises(Refused, match=r"^Line 6: "):
        log("Bake of the bench\n\ntime (min),metal (F)\n0,70\n\n5,warm")


def test_a_plain_table_needs_no_headings() -> None:
    expected = (Bake(pytest.approx(400 / 1.8 - 32 / 1.8), 20.0), Bake(pytest.approx(200), 90.0))
    assert read_field(BAKES, "400, 20\n200 C, 1.5 h", "", []) == expected
    assert read_field(BAKES, "temperature, minutes\n400, 20\n200 C, 1.5 h", "", []) == expected
    assert read_field(BAKES, "Minutes; Temperature\n20; 400\n1,5 h; 200 C", "", []) == expected


@pytest.mark.parametrize(
    "text", ["\ufeff", ",", ";;", "time,metal", "\x00", "a", "0", ",,,\n,,,", "🔥,🔥", '"', '"0,70\n5,80']
)
def test_what_is_no_table_is_refused_with_a_sentence(text: str) -> None:
    with pytest.raises(Refused):
        log(text)


def test_an_empty_cell_takes_the_default_of_a_choice_or_a_count() -> None:
    """Most pieces are alike in most columns: only what differs is written."""

    @dataclass(frozen=True)
    class Piece:
        shape: str = ask(
            Choice(label="Shape", options=(Option("bar", "Bar"), Option("tube", "Tube")), default="bar")
        )
        count: int = ask(Whole(label="Count", default="1"))

    @dataclass(frozen=True)
    class Form:
        pieces: tuple[Piece, ...] = ask(Rows(label="Pieces", row=Piece, default="bar, 2"))

    read = read_form(Form, {"pieces": "tube\n, 3\ntube,"})
    assert read.errors == []
    assert read.values["pieces"] == (Piece("tube", 1), Piece("bar", 3), Piece("tube", 1))
