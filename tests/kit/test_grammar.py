"""What people type for a number with a unit, and what must be refused."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calculators.kit.grammar import (
    LONGEST,
    NotANumber,
    NotAUnit,
    SmallDigit,
    UnclearComma,
    read_measure,
    tidy,
    unit_named,
)

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
        ("1¹⁄₂ in", 1.5),
        ("1 ¹⁄₂ in", 1.5),
        ("1¹/₂", 1.5),
        ("-1¹⁄₂", -1.5),
        ("¹⁄₂ in", 0.5),
        ("11¹⁵⁄₁₆ in", 11.9375),
        ("1⅟₈ in", 1.125),
        ("5' 6¹⁄₂\"", 66.5),
        ("１½", 1.5),
        ("１¹／₂", 1.5),
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
    ("text", "unit", "expected"),
    [
        ("5 in²", "in2", 5),
        ("5in²", "in2", 5),
        ("5 in ²", "in2", 5),
        ("2 m²", "m2", 2),
        ("2 ㎡", "m2", 2),
        ("1 1/2 m²", "m2", 1.5),
        ("1¹⁄₂ m²", "m2", 1.5),
        ("3 m³", "m3", 3),
        ("1,200 kg/m³", "kg_m3", 1200),
        ("4 W/m²K", "W_m2K", 4),
        ("4 W/(m²·K)", "W_m2K", 4),
    ],
)
def test_a_raised_digit_in_a_unit_is_its_power(text: str, unit: str, expected: float) -> None:
    assert read_measure(text, (unit,), unit, unit) == (pytest.approx(expected, rel=1e-12), unit)


@pytest.mark.parametrize(
    "text",
    [
        "10³ in", "3² mm", "1² in", "²", "1 ² in", "1.5³", "1,²34", "10⁻³", "10⁻³/8", "1e³", "2₂ in", "₂", "1¹/8", "1¹⁄2", "1/₂",
        "1¹⁄ ₂x", "5① in", "① in", "⒈5 in", "5 ft 6² in",
    ],
)  # fmt: skip
def test_a_small_digit_is_no_digit_of_a_number(text: str) -> None:
    """Ten to the third is not 103, and a 5 beside an encircled 1 is not 51."""
    with pytest.raises(SmallDigit):
        inches(text)


@pytest.mark.parametrize(
    "text", ["5 ft²", "5 ft² in", "5 ft ² in", "5 ft²1 in", "5 ft²6", "½2 in", "¹⁄₂3 in", "3/½", "½/3"]
)
def test_a_small_digit_or_fraction_is_not_joined_to_what_follows(text: str) -> None:
    with pytest.raises((NotAUnit, NotANumber)):
        inches(text)


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


SIGNS = "0123456789 ,./-+e'\"ftinmµ½⅝×°⁄¹²³⁴₂₈⅟⁻₋①１２／．，\ud800\udcff\u200b"


@settings(max_examples=600, deadline=None, derandomize=True)
@given(st.one_of(st.text(st.characters(), max_size=220), st.text(SIGNS, max_size=24)))
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
@settings(max_examples=400, deadline=None, derandomize=True)
@given(st.text(st.characters(), max_size=60) | st.text(SIGNS, max_size=20))
def test_tidy_twice_is_tidy_once(text: str) -> None:
    assert tidy(tidy(text)) == tidy(text)


@pytest.mark.property
@settings(max_examples=400, deadline=None, derandomize=True)
@given(st.text("0123456789 .,/-½¹²³₂⁄①in", min_size=1, max_size=12))
def test_what_tidy_makes_of_a_text_is_read_as_the_text_is(text: str) -> None:
    """A link holds the tidied text, so it must not be read where what was typed was refused."""

    def read(words: str) -> object:
        try:
            return inches(words)
        except REFUSALS as refused:
            return type(refused)

    assert read(tidy(text)) == read(text)


def test_a_unit_of_millions_of_signs_is_refused_by_its_length() -> None:
    assert unit_named("in" + " " * (LONGEST - 2), LENGTHS) == "in"
    assert unit_named("in" + " " * (LONGEST - 1), LENGTHS) is None
