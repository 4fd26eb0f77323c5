"""What cure-plan asks."""

from __future__ import annotations

from dataclasses import dataclass

from calculators.cure import _oven_fields, _schedule
from calculators.kit.fields import Choice, Limits, Option, Quantity, When, ask
from calculators.kit.result import Clash
from calculators.tables import table

METALS = (
    "carbon-steel",
    "cast-iron",
    "aluminium",
    "galvanised",
    "stainless",
    "zinc-die-cast",
    "copper-brass",
)
SHAPES = {
    "both-sides": "Plate or casting wall, hot air on both sides",
    "one-side": "Tube or box (vented), or back against something",
    "round-bar": "Round bar",
    "square-bar": "Square bar",
    "heat-path": "Heat path, worked out already",
    "weighed": "Odd shape: by weight and area",
}
# What people call them, where a shape is typed. A tube or a box takes heat by its outside: its wall is the thickness.
_SHAPE_WORDS = {
    "both-sides": ("plate", "sheet", "flat", "flat-bar", "strap", "casting", "wall"),
    "one-side": ("tube", "pipe", "box", "round-tube", "square-tube", "closed-tube"),
    "round-bar": ("round", "rod"),
    "square-bar": ("square",),
}
_BY_THICKNESS = tuple(shape for shape in SHAPES if shape != "weighed")


def metal_options(slugs: tuple[str, ...] = METALS) -> tuple[Option, ...]:
    """Choices of metal, with the other words for each from the table of metals."""
    rows = table("metals")
    return tuple(Option(slug, rows[slug]["name"], tuple(rows[slug].get("aliases", ()))) for slug in slugs)


def shape_options(*, weighed: bool = False) -> tuple[Option, ...]:
    """Choices of how heat reaches a section; by weight and area only where both are asked for."""
    return tuple(
        Option(slug, label, _SHAPE_WORDS.get(slug, ()))
        for slug, label in SHAPES.items()
        if weighed or slug != "weighed"
    )


def metal() -> Choice:
    """The field for the metal."""
    return Choice(
        group="The part", label="Metal", options=metal_options(), default="cast-iron", meaning="metal"
    )


def shape() -> Choice:
    """The field for how heat reaches the heaviest section."""
    return Choice(
        label="Heaviest section",
        options=shape_options(weighed=True),
        default="both-sides",
        meaning="section-shape",
    )


def thickness() -> Quantity:
    """The field for the heaviest section's thickness or diameter."""
    return Quantity(
        label="Thickness of the heaviest section",
        hint="Plate thickness, or a bar's width; measure the thickest place",
        units=("in", "mm", "cm"),
        default="5/8",
        limits=Limits("0.01 in", "12 in", "foil to a forging"),
        when=When("shape", _BY_THICKNESS),
        example="5/8 in",
        meaning="thickest-section",
    )


def oven() -> Quantity:
    """The field for the oven's setting."""
    return Quantity(
        group="The oven",
        label="Oven setting",
        hint="What the air is held at",
        units=("degF", "degC"),
        default="400",
        limits=Limits("150 F", "600 F", "a cure oven, not a burn-off oven"),
        meaning="oven-setting",
    )


@dataclass(frozen=True)
class Inputs:
    metal: str = ask(metal())
    shape: str = ask(shape())
    thickness_m: float = ask(thickness())
    mass_kg: float = ask(
        Quantity(
            label="Mass",
            hint="Of one part, as it hangs",
            units=("lb", "kg", "oz", "g"),
            default="40",
            limits=Limits("0.01 lb", "20000 lb", "a bracket to a large frame"),
            when=When("shape", ("weighed",)),
        )
    )
    area_m2: float = ask(
        Quantity(
            label="Area that the air reaches",
            hint="All faces of one part",
            units=("ft2", "in2", "m2", "cm2"),
            default="6",
            limits=Limits("0.01 ft2", "5000 ft2", "a bracket to a large frame"),
            when=When("shape", ("weighed",)),
        )
    )
    thinnest_m: float | None = ask(
        Quantity(
            label="Thinnest section",
            hint="Of the same part or load; empty if all is alike",
            units=("in", "mm", "cm"),
            limits=Limits("0.01 in", "12 in", "foil to a forging"),
            may_be_empty=True,
            example="1/8 in",
            meaning="thinnest-section",
        )
    )
    schedule_temperature_degC: float = ask(_schedule.schedule_temperature())
    schedule_time_min: float = ask(_schedule.schedule_time())
    second_temperature_degC: float | None = ask(_schedule.second_temperature())
    second_time_min: float | None = ask(_schedule.second_time())
    longest_time_min: float | None = ask(_schedule.longest_time())
    oven_degC: float = ask(oven())
    airflow: str = ask(_oven_fields.airflow())
    oven_coefficient_W_m2K: float = ask(_oven_fields.oven_coefficient())
    oven_doubt_percent: float = ask(_oven_fields.oven_doubt())
    shading: str = ask(_oven_fields.shading())
    dip_dC: float = ask(_oven_fields.dip())
    recovery_min: float = ask(_oven_fields.recovery())
    start_degC: float = ask(_oven_fields.start())
    shop_degC: float = ask(_oven_fields.shop())
    bake: str = ask(
        Choice(
            group="Primer and topcoat",
            label="Which bake this is",
            options=(
                Option("single", "One coat, or each coat fully baked"),
                Option("primer-to-gel", "Primer, only until it gels"),
                Option("topcoat-over-primer", "Topcoat over a primer that had part of its bake"),
            ),
            default="single",
        )
    )
    primer_share_percent: float = ask(
        Quantity(
            label="Share of the schedule that gels the primer",
            hint="From the primer's own data sheet; there is no usual figure",
            units=("percent",),
            limits=Limits("1 %", "100 %", "a share of the whole schedule"),
            when=When("bake", ("primer-to-gel",)),
            example="30 %",
        )
    )
    primer_had_percent: float = ask(
        Quantity(
            label="Share of its schedule that the primer has had",
            hint="From the log of its own bake",
            units=("percent",),
            limits=Limits("0 %", "200 %", "a share of the primer's whole schedule"),
            when=When("bake", ("topcoat-over-primer",)),
            example="30 %",
        )
    )
    primer_temperature_degC: float | None = ask(
        Quantity(
            label="Primer's schedule temperature",
            hint="Empty if it is the topcoat's",
            units=("degF", "degC"),
            limits=Limits("200 F", "550 F", "no coating powder cures outside this"),
            when=When("bake", ("topcoat-over-primer",)),
            may_be_empty=True,
            example="350 F",
        )
    )
    primer_time_min: float | None = ask(
        Quantity(
            label="Primer's schedule time",
            hint="Empty if it is the topcoat's",
            units=("min", "h", "s"),
            limits=Limits("0.5 min", "240 min", "no coating powder's schedule lies outside this"),
            when=When("bake", ("topcoat-over-primer",)),
            may_be_empty=True,
            example="15 min",
        )
    )


def schedule_asked(asked: Inputs) -> _schedule.Schedule:
    """The schedule of these inputs. Raises Clash where inputs do not fit each other."""
    schedule = _schedule.schedule_asked(asked)
    clashes = _oven_fields.clashes(asked.start_degC, asked.oven_degC, asked.dip_dC, asked.recovery_min)
    if clashes:
        raise Clash(*clashes)
    return schedule
