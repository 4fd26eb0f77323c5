"""What bake-history asks."""

from __future__ import annotations

from dataclasses import dataclass

from calculators.kit.fields import Choice, Limits, Option, Quantity, Rows, ask


@dataclass(frozen=True)
class Bake:
    temperature_degC: float = ask(
        Quantity(
            label="Metal temperature",
            units=("degF", "degC"),
            limits=Limits("150 F", "900 F", "a warm oven to a burn-off oven"),
            example="375 F",
        )
    )
    time_min: float = ask(
        Quantity(
            label="Time",
            units=("min", "h", "s"),
            limits=Limits("0 min", "100000 min", "a bake to a life in service"),
            example="20 min",
        )
    )


@dataclass(frozen=True)
class Inputs:
    alloy: str = ask(
        Choice(
            group="The part",
            label="Alloy and temper",
            hint="From its paper or stamp, never by eye",
            options=(
                Option("6061-t6", "6061-T6, known from paper", ("6061",)),
                Option("other", "Another alloy or temper"),
                Option("unknown", "Not known", ("not sure",)),
            ),
            default="6061-t6",
        )
    )
    history: str = ask(
        Choice(
            label="Bakes before these",
            hint="By other shops, at the maker, in a stripping oven",
            options=(
                Option("all-listed", "None: every bake of its life is listed"),
                Option("some-unknown", "There were some, or nobody knows"),
            ),
            default="all-listed",
            few=True,
        )
    )
    bakes: tuple[Bake, ...] = ask(
        Rows(
            group="Its bakes",
            label="Bakes so far",
            hint="A bake a line: metal temperature, minutes. Prebakes, burn-off and cure all count",
            row=Bake,
            default="375, 20\n400, 15",
            at_most=60,
            may_be_empty=True,
            unit_of="temperature",
        )
    )
    next_temperature_degC: float | None = ask(
        Quantity(
            group="The bake to come",
            label="Next bake, metal temperature",
            hint="Empty if none is planned",
            units=("degF", "degC"),
            limits=Limits("150 F", "900 F", "a warm oven to a burn-off oven"),
            may_be_empty=True,
            example="375 F",
        )
    )
    next_time_min: float | None = ask(
        Quantity(
            label="Next bake, time",
            hint="Warm-up counted, as if all of it were hot",
            units=("min", "h", "s"),
            limits=Limits("0 min", "100000 min", "a bake to a life in service"),
            may_be_empty=True,
            example="20 min",
        )
    )
