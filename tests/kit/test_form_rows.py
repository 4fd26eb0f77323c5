"""The row of controls that waits beside a table's text."""

from __future__ import annotations

import re
from dataclasses import dataclass

import pytest

from calculators.kit.fields import (
    Asked,
    Choice,
    DeclarationError,
    Limits,
    Option,
    Quantity,
    Rows,
    When,
    Whole,
    ask,
    asked,
)
from calculators.kit.form import calculator_html
from calculators.kit.form_controls import keypad
from calculators.kit.form_rows import row_template
from calculators.kit.messages import beginnings
from calculators.kit.read import Refused, read_field

LENGTH = Limits("0 in", "100 in", "small to large")
SHAPES = (Option("bar", "Bar <long>", ("rod|", '"stick"'), drawing="a-bar"), Option("ball", "Ball"))


@dataclass(frozen=True)
class Piece:
    shape: str = ask(Choice(label="Shape", options=SHAPES, default="bar"))
    length_m: float | None = ask(
        Quantity(
            label="Length",
            hint="End & end",
            units=("in", "mm"),
            limits=LENGTH,
            may_be_empty=True,
            when=When("shape", ("bar",)),
        )
    )
    count: int = ask(Whole(label="Count", default="1"))


PIECES = Rows(label="Pieces", row=Piece, default="bar, 2", at_most=7)


def test_a_row_has_a_control_for_each_column_and_no_names() -> None:
    html = row_template(PIECES)
    assert re.findall(r'data-column="([^"]+)"', html) == ["shape", "length", "count"]
    assert " name=" not in html and " id=" not in html
    assert html.count("<label>") == 3
    assert 'data-asked-by="shape" data-asked-for="bar"' in html
    assert 'data-at-most="7"' in html and 'data-default="1"' in html and 'inputmode="numeric"' in html
    assert '<option value="mm">mm</option>' in html
    assert 'data-shows="a-bar"' in html
    assert "End &amp; end" in html and "Bar &lt;long&gt;" in html and "&quot;stick&quot;" in html


@pytest.mark.parametrize("field", [{"takes_file": True}, {"repeats": "count"}, {"clock": "length"}])
def test_a_table_of_an_instrument_has_no_rows_to_fill_in(field: dict[str, object]) -> None:
    assert row_template(Rows(label="Log", row=Piece, **field)) == ""  # type: ignore[arg-type]


def test_the_unit_beside_a_table_is_not_asked_again_in_each_row() -> None:
    beside = row_template(Rows(label="Pieces", row=Piece, unit_of="length"))
    assert "data-unit-beside>in</span>" in beside and '<option value="mm">' not in beside


def test_a_column_that_is_not_asked_is_read_all_the_same() -> None:
    """`When` on a column is for what a row shows: text that was accepted stays accepted, and is not dropped."""
    (row,) = read_field(Asked("pieces", "pieces", "", PIECES), "ball, 4", "", [])
    assert row.length_m == pytest.approx(4 * 0.0254)
    (row,) = read_field(Asked("pieces", "pieces", "", PIECES), "ball", "", [])
    assert row.length_m is None


@pytest.mark.parametrize(
    ("key", "values"), [("colour", ("red",)), ("length", ("bar",)), ("shape", ("cone",))]
)
def test_a_column_is_asked_by_a_choice_of_its_row(key: str, values: tuple[str, ...]) -> None:
    @dataclass(frozen=True)
    class Wrong:
        shape: str = ask(Choice(label="Shape", options=SHAPES, default="bar"))
        length_m: float = ask(Quantity(label="Length", units=("in",), limits=LENGTH, when=When(key, values)))

    @dataclass(frozen=True)
    class Inputs:
        pieces: tuple[Wrong, ...] = ask(Rows(label="Pieces", row=Wrong, default=""))

    with pytest.raises(DeclarationError, match="length"):
        asked(Inputs)


@pytest.mark.parametrize(
    "text",
    ["bar, two", "bar, 2²", "bar, 900", "bar, 2 lb", "bar, 2, half", "bar, 2, 0x", "cone", "bar, 2, -4"],
)
def test_every_refusal_of_a_cell_begins_as_its_column_says(text: str) -> None:
    with pytest.raises(Refused) as refused:
        read_field(Asked("pieces", "pieces", "", PIECES), text, "", [])
    sentence = str(refused.value).removeprefix("Line 1: ")
    labels = [
        column.field.label
        for column in asked(Piece)
        if any(sentence.startswith(words) for words in beginnings(column.field.label))
    ]
    assert len(labels) == 1, sentence


def test_the_rows_stand_beside_the_text_that_is_the_field() -> None:
    html = calculator_html("part-size", "../../", "../../assets/engine/0/")
    assert html.count("<template data-row") == 1
    assert html.index('<textarea id="part-size-pieces"') < html.index("<template data-row")
    assert "<template" not in calculator_html("bake-log", "../../", "../../assets/engine/0/")


@pytest.mark.parametrize(
    ("units", "decimal"),
    [(("in", "mm"), False), (("ft", "in"), False), (("mil", "um", "in", "mm"), True), (("min", "h"), True)],
)
def test_a_phone_shows_its_decimal_pad_save_where_fractions_are_typed(
    units: tuple[str, ...], decimal: bool
) -> None:
    field = Quantity(label="One", units=units, limits=Limits(f"0.1 {units[0]}", None, "none"), default="1")
    assert ("inputmode" in keypad(field)) is decimal
