"""What people type for a number with a unit, and what must be refused."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calculators.kit.grammar import NotANumber, NotAUnit, UnclearComma, read_measure, tidy

LENGTHS = ("in", "ft", "mm", "m", "cm", "mil", "um")
REFUSALS = (NotANumber, NotAUnit, UnclearComma)


def inches(text: str) -> float:
    return read_measure(text, LENGTHS, "in", "in")[0]


@pytest.mark.derived
@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("1", 1),
        ("+2", 2),
        ("-2", -2),
        ("\u22122", -2),
        (" 1.5 ", 1.5),
        (".5", 0.5),
        ("5.", 5),
        ("1e3", 1000),
        ("2.5E-1", 0.25),
        ("1/8", 0.125),
        ("5/8", 0.625),
        ("5 / 8 in", 0.625),
        ("5\u20448", 0.625),
        ("11/2", 5.5),
        ("1 1/2", 1.5),
        ("1-1/2", 1.5),
        ("-1 1/2", -1.5),
        ("1½", 1.5),
        ("1 ½ in", 1.5),
        ("½", 0.5),
        ("⅝ in", 0.625),
        ("¾\u2033", 0.75),
        ('1/4"', 0.25),
        ("1/4\u201d", 0.25),
        ("1/4 inch", 0.25),
        ("1/4in.", 0.25),
        ("5 ft 6 in", 66),
        ("5ft6in", 66),
        ("5'6\"", 66),
        ("5\u2032 6\u2033", 66),
        ("5 ft 6", 66),
        ("5 ft 6 1/2 in", 66.5),
        ("-5 ft 6 in", -66),
        ("1,234", 1234),
        ("1,234,567.5", 1234567.5),
        ("2,5", 2.5),
        ("0,625 in", 0.625),
        ("1.234,5", 1234.5),
        ("25.4 mm", 1),
        ("2.54cm", 1),
        ("25,400 µm", 1),
        ("25400 μm", 1),
        ("1000 mils", 1),
        ("3 MIL", 0.003),
        ("1\u00a0in", 1),
        ("\u200b1 in\ufeff", 1),
        ("１２", 12),
    ],
)
def test_a_length_is_read(text: str, expected: float) -> None:
    """Worked by hand from 1 ft = 12 in, 1 in = 25.4 mm, 1 mil = 0.001 in."""
    assert inches(text) == pytest.approx(expected, rel=1e-12)


@pytest.mark.derived
@pytest.mark.parametrize(
    ("text", "bare", "expected"),
    [
        ("450 F", "degF", 232.2222222),
        ("450F", "degC", 232.2222222),
        ("450 °F", "degF", 232.2222222),
        ("450 ºF", "degF", 232.2222222),
        ("450", "degF", 232.2222222),
        ("200 C", "degF", 200),
        ("200 celsius", "degF", 200),
        ("-40", "degF", -40),
        ("-40 C", "degF", -40),
        ("-10F", "degF", -23.3333333),
        ("0 F", "degF", -17.7777778),
        ("-0 F", "degF", -17.7777778),
    ],
)
def test_a_temperature_is_never_a_capacitance(text: str, bare: str, expected: float) -> None:
    """By C = (F - 32) 5/9, by hand."""
    assert read_measure(text, ("degF", "degC"), bare, "degC")[0] == pytest.approx(expected, abs=1e-6)


@pytest.mark.derived
def test_a_difference_has_no_offset() -> None:
    """A difference of 50 F is 50 x 5/9 = 27.78 C; a mil is 25.4 um, so 3 of them are 76.2 um."""
    assert read_measure("50 F", ("dF", "dC"), "dF", "dC")[0] == pytest.approx(27.7777778)
    assert read_measure("3 mil", ("mil", "um"), "mil", "um")[0] == pytest.approx(76.2)


@pytest.mark.derived
def test_several_parts_add_up() -> None:
    """1 h 20 min = 80 min; 2 lb 8 oz = 2.5 lb."""
    assert read_measure("1 h 20", ("min", "s", "h"), "min", "min")[0] == pytest.approx(80)
    assert read_measure("1 h 20 min 30 s", ("min", "s", "h"), "min", "min")[0] == pytest.approx(80.5)
    assert read_measure("2 lb 8 oz", ("lb", "oz"), "lb", "lb")[0] == pytest.approx(2.5)


@pytest.mark.parametrize(
    "text", ["12 furlong", "3 cfm", "450 F", "5 kg", "3 mill", "2 in in", "5 in2", "1 ½½ x"]
)
def test_a_foreign_unit_is_refused(text: str) -> None:
    with pytest.raises((NotAUnit, NotANumber)):
        inches(text)


@pytest.mark.parametrize("text", ["450 F", "5 kg", "3 cfm"])
def test_a_number_with_another_kind_of_unit_says_so(text: str) -> None:
    with pytest.raises(NotAUnit):
        inches(text)


@pytest.mark.parametrize("text", ["1,23,456", "12,3456,7", "1,2,3", "1.5,2", "12,34.5", "0,123,456"])
def test_a_comma_that_could_mean_two_things_is_refused(text: str) -> None:
    with pytest.raises(UnclearComma):
        inches(text)


@pytest.mark.parametrize(
    "text",
    [
        "", " ", "nan", "nan in", "inf", "-inf in", "infinity", "1/0", "0/0 in", "1 1/0", "--5", "+-5", "5--", "in", "/8", "1/",
        "3*4 in", "2+2", "2**3", "1e999", "1e400 in", "0x10", "1_000", "🔥", "5 🔥", "½🔥", "five", "6 in 5 ft", "5 ft -6 in",
        "5 ft 6 ft", "5 6", "1 2 3", "__import__('os')", "9" * 201, "1" * 10_000, "a" * 10_000, "1/2/3", "1.2.3",
    ],
)  # fmt: skip
def test_what_is_not_a_number_is_refused(text: str) -> None:
    with pytest.raises(REFUSALS):
        inches(text)


@settings(max_examples=300, deadline=None, derandomize=True)
@given(st.one_of(st.text(max_size=220), st.text("0123456789 ,./-+e'\"ftinmµ½⅝×°", max_size=24)))
@pytest.mark.property
def test_any_text_is_read_or_refused(text: str) -> None:
    try:
        value = inches(text)
    except REFUSALS:
        return
    assert value == value
    assert abs(value) < float("inf")


@settings(max_examples=150, deadline=None, derandomize=True)
@given(st.floats(-1e6, 1e6), st.sampled_from(LENGTHS))
@pytest.mark.property
def test_a_number_typed_in_full_comes_back(number: float, unit: str) -> None:
    assert read_measure(f"{number!r} {unit}", LENGTHS, "in", unit)[0] == pytest.approx(
        number, rel=1e-12, abs=1e-300
    )


@pytest.mark.property
@settings(max_examples=150, deadline=None, derandomize=True)
@given(st.text(max_size=60))
def test_tidy_twice_is_tidy_once(text: str) -> None:
    assert tidy(tidy(text)) == tidy(text)
