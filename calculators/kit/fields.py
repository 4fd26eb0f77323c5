"""What a calculator can ask: six kinds of field, their limits, and when each is asked.

A field is declared on an attribute of the calculator's `Inputs` dataclass. The attribute's name is the field's key and the
fixed unit that `solve` gets: `part_mass_kg` is the key `part-mass`, handed over in kg, however it was typed.
"""

from __future__ import annotations

import dataclasses
from collections.abc import Hashable
from dataclasses import dataclass
from functools import cache
from typing import Any

from calculators.kit.units import UNITS

type Field = Quantity | Whole | Choice | Text | Readings | Rows


class DeclarationError(Exception):
    """A calculator was declared wrongly; the message says how to mend it."""


@dataclass(frozen=True, slots=True)
class Limits:
    """Hard ends of a field, as text with a unit: beyond them the input is refused. `why` is for the reader."""

    low: str | None
    high: str | None
    why: str


@dataclass(frozen=True, slots=True)
class Validity:
    """The range that a source covers, as text with a unit: beyond it there is an answer and a caution.

    source: key of a row in tables/sources.toml. beyond: one sentence, what goes wrong out there.
    """

    low: str | None
    high: str | None
    source: str
    beyond: str


@dataclass(frozen=True, slots=True)
class When:
    """Ask a field only while another field of the same form holds one of these values.

    On a column of a row: another column of that row. There it says only what a row's editor shows; every cell is still read.
    """

    key: str
    values: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Option:
    """One thing that a choice can be: its stable slug, its label, and other words that people type for it.

    drawing: name of the drawing of it (`data-drawing`) in a picture on the calculator's page, shown beside the choice in a row.
    """

    slug: str
    label: str
    also: tuple[str, ...] = ()
    drawing: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Asked:
    """What every field has.

    label: a noun, so that the error sentences read. hint: one short sentence without a full stop. group: heading of the part
    of the form that the field stands in; the first field of a group names it. meaning: what the quantity is, for hand-over
    between calculators; empty for none.
    """

    label: str
    hint: str = ""
    group: str = ""
    when: When | None = None
    meaning: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Quantity(_Asked):
    """A number with a unit. units: slugs, the shop's first. example: shown in the error sentence.

    words: what an instrument shows in place of a number, such as OL, and the value in the fixed unit that it stands for.
    """

    units: tuple[str, ...]
    default: str = ""
    limits: Limits
    validity: Validity | None = None
    may_be_empty: bool = False
    example: str = ""
    words: tuple[tuple[str, float], ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Whole(_Asked):
    """A count."""

    default: str
    low: int = 0
    high: int = 1_000_000


@dataclass(frozen=True, slots=True, kw_only=True)
class Choice(_Asked):
    """One of a few options. few: shown as radio buttons instead of a list."""

    options: tuple[Option, ...]
    default: str
    few: bool = False

    @property
    def slugs(self) -> tuple[str, ...]:
        return tuple(option.slug for option in self.options)

    def label_of(self, slug: str) -> str:
        return next(option.label for option in self.options if option.slug == slug)


@dataclass(frozen=True, slots=True, kw_only=True)
class Text(_Asked):
    """A few words of the reader's own, such as the name of a part: repeated in the answer, and never reckoned with."""

    default: str = ""
    longest: int = 40
    may_be_empty: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Readings(_Asked):
    """A list of one quantity, typed with spaces, commas, semicolons or new lines between the numbers."""

    units: tuple[str, ...]
    default: str = ""
    limits: Limits
    at_least: int = 1
    at_most: int = 5_000
    may_be_empty: bool = False
    takes_file: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Rows(_Asked):
    """A small table, one row a line. row: a dataclass whose attributes are declared with `ask`, one a column.

    An empty cell of a choice or a whole number takes its default; of a quantity it is refused unless that may be empty.

    repeats: key of the last column, of which a line may hold several (a probe each); its value is then a tuple.
    clock: key of the column that may be a clock time; it is read as minutes from the first row.
    unit_of: key of the column whose unit can be chosen beside the table. names: other headings that a file may have.
    """

    row: type[Any]
    default: str = ""
    at_least: int = 1
    at_most: int = 20_000
    may_be_empty: bool = False
    takes_file: bool = False
    repeats: str = ""
    clock: str = ""
    unit_of: str = ""


def ask(field: Field) -> Any:
    """Declare a field on an attribute of an `Inputs` dataclass (or a column on a row's dataclass)."""
    return dataclasses.field(metadata={"ask": field})


@dataclass(frozen=True, slots=True)
class Asked:
    """A declared field with what its attribute's name says: the key and the fixed unit."""

    key: str
    attribute: str
    unit: str
    field: Field


def asked(inputs: type[Any]) -> tuple[Asked, ...]:
    """The fields of a dataclass in declared order. Raises DeclarationError where a name and its field disagree."""
    return _all_asked(inputs)  # type: ignore[arg-type]  # a class is hashable; mypy looks at its instances


@cache
def _all_asked(inputs: Hashable) -> tuple[Asked, ...]:
    assert isinstance(inputs, type)
    return tuple(_asked(one) for one in dataclasses.fields(inputs) if "ask" in one.metadata)


def _asked(attribute: dataclasses.Field[Any]) -> Asked:
    field: Field = attribute.metadata["ask"]
    name = attribute.name
    if isinstance(field, Quantity | Readings):
        unit = _suffix(name)
        kinds = {UNITS[slug].kind for slug in (*field.units, unit)}
        if len(kinds) != 1:
            raise DeclarationError(
                f"{name}: the name's unit {unit} and the units {field.units} are of different kinds"
            )
        return Asked(name.removesuffix("_" + unit).replace("_", "-"), name, unit, field)
    if isinstance(field, Choice) and field.default not in field.slugs:
        raise DeclarationError(
            f"{name}: the default {field.default!r} is not one of its options; use one of {field.slugs}"
        )
    if isinstance(field, Rows):
        keys = [column.key for column in asked(field.row)]
        for used in filter(None, (field.repeats, field.clock, field.unit_of)):
            if used not in keys:
                raise DeclarationError(f"{name}: {used!r} is not a column of its rows; they are {keys}")
        _hold_columns(name, field)
    return Asked(name.replace("_", "-"), name, "", field)


def _hold_columns(name: str, field: Rows) -> None:
    choices = {one.key: one.field for one in asked(field.row) if isinstance(one.field, Choice)}
    for column in asked(field.row):
        when = column.field.when
        if when is None:
            continue
        if when.key == column.key or when.key not in choices:
            raise DeclarationError(
                f"{name}: {column.key} is asked by {when.key!r}, which is not another choice of its rows; "
                f"they are {list(choices)}"
            )
        unknown = set(when.values) - set(choices[when.key].slugs)
        if unknown:
            raise DeclarationError(
                f"{name}: {column.key} is asked for {sorted(unknown)}, not options of {when.key}"
            )


def _suffix(name: str) -> str:
    fits = [slug for slug in UNITS if name.endswith("_" + slug)]
    if not fits:
        raise DeclarationError(
            f"{name}: the name must end in a unit, like {name}_kg; the units are in kit/units.py"
        )
    return max(fits, key=len)
