"""What booth-air asks."""

from __future__ import annotations

from dataclasses import dataclass

from calculators.kit.fields import Choice, Limits, Option, Quantity, Readings, Whole, ask


@dataclass(frozen=True)
class Inputs:
    opening_width_m: float = ask(
        Quantity(
            group="The booth",
            label="Opening width",
            hint="All openings that air comes in by, together as one",
            units=("ft", "in", "m", "cm"),
            default="8",
            limits=Limits("0.5 ft", "200 ft", "from a bench hood to a drive-through booth"),
        )
    )
    opening_height_m: float = ask(
        Quantity(
            label="Opening height",
            units=("ft", "in", "m", "cm"),
            default="7",
            limits=Limits("0.5 ft", "60 ft", "from a bench hood to a drive-through booth"),
        )
    )
    fan_flow_m3_s: float = ask(
        Quantity(
            label="Air the fan moves",
            hint="What it really moves with these filters; the plate tells what it moved when new",
            units=("cfm", "m3_h", "m3_min", "m3_s"),
            default="4200",
            limits=Limits("10 cfm", "500000 cfm", "from a bench hood to a paint hall"),
        )
    )
    velocity_readings_m_s: tuple[float, ...] = ask(
        Readings(
            label="Air speed readings",
            hint="Nine or more, spread over the opening, by a vane or hot-wire meter. They rule over the fan's figure",
            units=("ft_min", "m_s", "m_min", "ft_s"),
            limits=Limits("0 ft/min", "5000 ft/min", "faster is a duct, not an opening"),
            at_most=200,
            may_be_empty=True,
        )
    )
    electrostatic: str = ask(
        Choice(
            label="Electrostatic guns",
            options=(
                Option("yes", "Yes"),
                Option("no", "No"),
            ),
            default="yes",
            few=True,
        )
    )
    guns: int = ask(
        Whole(group="The powder", label="Guns at once", default="1", low=0, high=50, meaning="guns")
    )
    gun_output_g_s: float = ask(
        Quantity(
            label="Output of one gun",
            hint="Weighed: powder caught in a minute",
            units=("g_min", "lb_h", "lb_min", "kg_h", "g_s"),
            default="200",
            limits=Limits("1 g/min", "2000 g/min", "from a touch-up to more than any gun gives"),
            meaning="gun-output",
        )
    )
    transfer_percent: float = ask(
        Quantity(
            label="Transfer",
            hint="What sticks; 0 is the safe case. It is counted only for what is breathed, never against the explosion",
            units=("percent",),
            default="0",
            limits=Limits("0 %", "95 %", "some always flies past"),
        )
    )
    explosible_g_m3: float = ask(
        Quantity(
            label="Thinnest cloud that burns",
            hint="From the powder's safety data sheet (MEC or LEL). Not known: 20, the low end",
            units=("g_m3", "oz_ft3", "kg_m3", "mg_L"),
            default="20",
            limits=Limits("1 g/m3", "500 g/m3", "no burning dust lies outside"),
            example="20 g/m3",
        )
    )
    tgic_percent: float = ask(
        Quantity(
            label="TGIC in the powder",
            hint="From its safety data sheet, often 3 to 7 % in TGIC polyester; 0 for TGIC-free",
            units=("percent",),
            default="0",
            limits=Limits("0 %", "20 %", "a hardener is a small part of a powder"),
        )
    )
