"""What oven-survey asks."""

from __future__ import annotations

from dataclasses import dataclass

from calculators.kit.fields import Choice, Limits, Option, Quantity, Rows, Text, ask

_OVEN = Limits("100 F", "700 F", "a cure oven, with room for a hot corner")
EXAMPLE = """top back left, 404
top back right, 407
top door left, 396
top door right, 399
middle, 400
bottom back left, 392
bottom back right, 395
bottom door left, 381
bottom door right, 386"""


@dataclass(frozen=True)
class Place:
    place: str = ask(Text(label="Place"))
    temperature_degC: float = ask(
        Quantity(label="Steady temperature", units=("degF", "degC"), limits=_OVEN, example="396 F")
    )


@dataclass(frozen=True)
class Inputs:
    readings: tuple[Place, ...] = ask(
        Rows(
            group="The survey",
            label="Readings",
            hint="A place a line: its name, then its temperature once it no longer climbs",
            row=Place,
            default=EXAMPLE,
            at_least=3,
            at_most=200,
            unit_of="temperature",
        )
    )
    read_as: str = ask(
        Choice(
            label="What was read",
            options=(
                Option("air", "Air: probes hung free"),
                Option("metal", "Metal: probes on like pieces, soaked through"),
            ),
            default="air",
            few=True,
        )
    )
    setting_degC: float = ask(
        Quantity(
            label="Oven setting in the survey",
            units=("degF", "degC"),
            default="400",
            limits=Limits("150 F", "600 F", "a cure oven, not a burn-off oven"),
        )
    )
    target_degC: float | None = ask(
        Quantity(
            group="What you want",
            label="Temperature that the coldest place should have",
            hint="Empty takes the setting",
            units=("degF", "degC"),
            limits=Limits("150 F", "600 F", "a cure oven, not a burn-off oven"),
            may_be_empty=True,
            example="400 F",
        )
    )
    hottest_allowed_degC: float | None = ask(
        Quantity(
            label="Hottest that any part may see",
            hint="The sheet's hottest point, or the metal's limit; empty if not known",
            units=("degF", "degC"),
            limits=Limits("150 F", "700 F", "a cure oven, with room for a hot corner"),
            may_be_empty=True,
            example="425 F",
        )
    )
    even_dC: float = ask(
        Quantity(
            label="Spread that you call even",
            hint="Hottest less coldest; 20 F is a habit, not a rule",
            units=("dF", "dC"),
            default="20",
            limits=Limits("1 F", "100 F", "finer than thermometers agree, to no oven at all"),
        )
    )
