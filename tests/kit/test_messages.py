"""The sentences of every refusal, word for word."""

from __future__ import annotations

from dataclasses import dataclass

import pytest

from calculators.kit.fields import Asked, Choice, Limits, Option, Quantity, Readings, Rows, When, Whole, ask
from calculators.kit.messages import beyond_source
from calculators.kit.read import Refused, read_field, read_form


@dataclass(frozen=True)
class Line:
    minute_min: float = ask(Quantity(label="Minute", units=("min", "s"), limits=Limits("0 min", None, "")))
    temperature_degC: float = ask(
        Quantity(
            label="Temperature", units=("degF", "degC"), default="350", limits=Limits("0 F", "900 F", "")
        )
    )


@dataclass(frozen=True)
class Form:
    part_mass_kg: float = ask(
        Quantity(
            label="Part mass", units=("lb", "kg"), default="50", limits=Limits("0.05 lb", "11000 lb", "")
        )
    )
    lift_kg: float = ask(
        Quantity(label="Lift", units=("lb", "kg"), default="5", limits=Limits("0.05 lb", None, ""))
    )
    load_kg: float = ask(
        Quantity(label="Load", units=("lb", "kg"), default="5", limits=Limits(None, "11000 lb", ""))
    )
    share_percent: float = ask(
        Quantity(label="RH share", units=("percent",), default="50", limits=Limits("0 %", "100 %", ""))
    )
    gravity_ratio: float = ask(
        Quantity(label="Gravity", units=("ratio",), default="1.5", limits=Limits("1", "2", ""))
    )
    racks: int = ask(Whole(label="Number of racks", default="4", low=1, high=2000))
    metal: str = ask(
        Choice(label="Metal", options=(Option("iron", "Iron"), Option("steel", "Steel")), default="iron")
    )
    shape: str = ask(
        Choice(
            label="Shape",
            options=tuple(
                Option(slug, slug.replace("-", " ").capitalize())
                for slug in (
                    *("plate", "round-bar", "square-bar", "flat-bar", "round-tube", "square-tube"),
                    *("angle", "channel", "disc", "ring", "sphere"),
                )
            ),
            default="plate",
        )
    )
    readings_um: tuple[float, ...] = ask(
        Readings(
            label="Film",
            units=("mil", "um"),
            default="2 2.5",
            limits=Limits("0.2 mil", "60 mil", ""),
            at_most=5,
        )
    )
    log: tuple[Line, ...] = ask(Rows(label="Bake log", row=Line, default="0, 70", at_least=1, at_most=4))
    extra_kg: float | None = ask(
        Quantity(
            label="Extra",
            units=("lb", "kg"),
            limits=Limits("0 lb", "9 lb", ""),
            when=When("metal", ("steel",)),
            may_be_empty=True,
        )
    )


def refusals(**texts: str) -> list[tuple[str, str]]:
    given = {key.replace("_", "-"): text for key, text in texts.items()}
    return [(one.key, one.message) for one in read_form(Form, given).errors]


@pytest.mark.parametrize(
    ("key", "text", "sentence"),
    [
        ("part_mass", "", "Enter the part mass"),
        ("part_mass", " \t", "Enter the part mass"),
        ("share", "", "Enter the RH share"),
        ("part_mass", "heavy", "Part mass must be a number, like 50 lb"),
        ("part_mass", "nan", "Part mass must be a number, like 50 lb"),
        ("part_mass", "🔥" * 10_000, "Part mass must be a number, like 50 lb"),
        ("part_mass", "5 ft", "Part mass must be in lb or kg"),
        ("share", "5 lb", "RH share must be in %"),
        ("gravity", "1.5 lb", "Gravity must be a number without a unit"),
        ("part_mass", "1,23,456", "Part mass has a comma that could be read two ways. Write it with a point, like 50 lb"),
        ("part_mass", "10³ lb", "Part mass has a raised, lowered or encircled digit. Write it in plain digits, like 50 lb"),
        ("racks", "3²", "Number of racks has a raised, lowered or encircled digit. Write it in plain digits, like 4"),
        ("log", "0, 1²", "Line 1: temperature has a raised, lowered or encircled digit. Write it in plain digits, like 350 F"),
        ("readings", "2 ③", "Reading 2: film has a raised, lowered or encircled digit. Write it in plain digits, like 2 mil"),
        ("lift", "0.04", "Lift must be 0.05 lb or more"),
        ("load", "11001", "Load must be 11,000 lb or less"),
        ("part_mass", "0.04", "Part mass must be between 0.05 lb and 11,000 lb"),
        ("part_mass", "5000 kg", "Part mass must be between 0.0227 kg and 4,980 kg"),
        ("part_mass", "-3", "Part mass must be between 0.05 lb and 11,000 lb"),
        ("share", "101 %", "RH share must be between 0 % and 100 %"),
        ("racks", "", "Enter the number of racks"),
        ("racks", "4.5", "Number of racks must be a whole number, like 4"),
        ("racks", "four", "Number of racks must be a whole number, like 4"),
        ("racks", "3 lb", "Number of racks must be a whole number, like 4"),
        ("racks", "0", "Number of racks must be between 1 and 2,000"),
        ("metal", "", "Select the metal"),
        ("metal", "wood", "Metal must be one of: iron, steel"),
        ("shape", "round-rube", "Shape must be one of 11 choices. Nearest to what was typed: round-tube or round-bar"),
        ("shape", "Sphere!", "Shape must be one of 11 choices. Nearest to what was typed: sphere"),
        ("shape", "🔥" * 10_000, "Shape must be one of 11 choices, such as plate, round-bar or square-bar"),
        ("readings", "", "Enter the film"),
        ("readings", "2 x 3", "Reading 2: film must be a number, like 2 mil"),
        ("readings", "2 99", "Reading 2: film must be between 0.2 mil and 60 mil"),
        ("readings", "1 2 3 4 5 6", "Film must have 5 lines or fewer"),
        ("log", "", "Enter the bake log"),
        ("log", "0, 70\n1, 80\n2, warm", "Line 3: temperature must be a number, like 350 F"),
        ("log", "0, 70\n\n2, 1000", "Line 3: temperature must be between 0 F and 900 F"),
        ("log", "0", "Line 1: enter the temperature"),
        ("log", "0, 1, 2", "Line 1: there are 3 columns where 2 are asked"),
        ("log", "0,1\n" * 5, "Bake log must have 4 lines or fewer"),
    ],
)  # fmt: skip
def test_the_sentence(key: str, text: str, sentence: str) -> None:
    assert refusals(**{key: text}) == [(key.replace("_", "-"), sentence)]


def test_all_errors_come_at_once_in_the_form_s_order() -> None:
    assert [key for key, _ in refusals(racks="x", part_mass="", metal="wood")] == [
        "part-mass",
        "racks",
        "metal",
    ]


def test_an_unknown_unit_beside_the_field_is_refused() -> None:
    assert refusals(part_mass="5", part_mass_unit="stone") == [("part-mass", "Part mass must be in lb or kg")]


def test_a_unit_in_the_text_wins_over_the_one_beside_it() -> None:
    values = read_form(Form, {"part-mass": "5 kg", "part-mass-unit": "lb"}).values
    assert values["part_mass_kg"] == pytest.approx(5)
    values = read_form(Form, {"part-mass": "5", "part-mass-unit": "kg"}).values
    assert values["part_mass_kg"] == pytest.approx(5)


def test_a_field_that_is_not_asked_is_not_read() -> None:
    assert refusals(extra="nonsense") == []
    assert refusals(extra="nonsense", metal="steel") == [("extra", "Extra must be a number, like 0 lb")]
    assert read_form(Form, {"metal": "Steel", "extra": ""}).values["extra_kg"] is None


def test_a_key_left_out_is_assumed() -> None:
    assert read_form(Form, {"racks": "3"}).assumed == [
        "part-mass", "lift", "load", "share", "gravity", "metal", "shape", "readings", "log",
    ]  # fmt: skip


@pytest.mark.parametrize("text", ["iron", "Iron", " IRON ", "iron\u200b"])
def test_a_choice_by_slug_or_label(text: str) -> None:
    assert read_form(Form, {"metal": text}).values["metal"] == "iron"


def test_a_name_may_be_typed_with_small_digits() -> None:
    """A formula's digits are lowered where it is printed: that is its name, not another number."""
    choice = Choice(label="Gas", options=(Option("co2", "CO2"), Option("n2", "N2")), default="n2")
    assert read_field(Asked("gas", "gas", "", choice), "CO₂", "", []) == "co2"


@pytest.mark.derived
@pytest.mark.parametrize(
    ("text", "mils"),
    [
        ("2.1, 2.4 mil", [2.1, 2.4]),
        ("2.1;2.4\n2,2", [2.1, 2.4, 2.2]),
        ("50.8 63.5 um", [2, 2.5]),
        ("2 mil 50.8 um", [2, 2]),
    ],
)
def test_a_list_of_readings(text: str, mils: list[float]) -> None:
    """1 mil = 25.4 um; a unit after the last number holds for those without one."""
    got = read_form(Form, {"readings": text}).values["readings_um"]
    assert list(got) == pytest.approx([25.4 * one for one in mils])


def test_beyond_a_source() -> None:
    assert beyond_source("End temperature", "high", "392 F", "the table", "The fit runs away.") == (
        "End temperature is above 392 F, the top of what its source covers (the table). The fit runs away. "
        "Treat the answer as an estimate."
    )
    assert beyond_source("End temperature", "low", "32 F", "the table", "It freezes.") == (
        "End temperature is below 32 F, the bottom of what its source covers (the table). It freezes. "
        "Treat the answer as an estimate."
    )


def test_a_meters_word_stands_for_a_number() -> None:
    """OL on a meter is more than it can read: the field says what that stands for, whatever its limits."""
    field = Quantity(
        label="Resistance",
        units=("Mohm", "ohm"),
        default="1",
        limits=Limits("0 ohm", "1000 Mohm", "what a meter reads"),
        words=(("OL", float("inf")),),
    )
    one = Asked("resistance", "resistance_ohm", "ohm", field)
    assert read_field(one, " ol ", "", []) == float("inf")
    assert read_field(one, "2", "", []) == 2e6
    with pytest.raises(Refused):
        read_field(one, "OLL", "", [])
