"""What pressure builds in a closed hollow in the oven? Trapped air by the gas law, trapped water as steam by IAPWS-IF97."""

from __future__ import annotations

from dataclasses import dataclass
from math import pi

from calculators.kit.calculator import Calculator, Out, Vary
from calculators.kit.chart import Axis, Chart, Mark, Series
from calculators.kit.fields import Limits, Quantity, ask
from calculators.kit.numbers import shop_number, whole
from calculators.kit.result import Caution, Clash, Result, Value
from calculators.kit.steps import Step, step
from calculators.physics.gas import ATMOSPHERE_kPa, closed_air_pressure_kPa
from calculators.physics.steam import (
    liquid_share,
    saturated_liquid_kg_m3,
    saturated_vapour_kg_m3,
    vapour_pressure_kPa,
)

PSI = 6.894757  # kPa
ZERO = 273.15
# Above this the liquid has hardly room left to swell, and the sum of gas and steam says nothing.
FULL = 0.9
SQUEEZED = 0.05
BURSTS = "no number: water fills it at oven heat, and it bursts as a full pipe does"


@dataclass(frozen=True)
class Inputs:
    volume_m3: float = ask(
        Quantity(
            group="The hollow",
            label="Volume of the hollow",
            hint="Length times inside cross-section; 1 gal is 231 in3",
            units=("in3", "ft3", "gal", "L", "mL", "cm3", "m3"),
            default="172.5",
            limits=Limits("0.01 in3", "100000 in3", "a pinhole's pocket to a tank"),
        )
    )
    bore_m: float = ask(
        Quantity(
            label="Inside diameter of its end",
            hint="The cap, plug or weld that would fly",
            units=("in", "mm", "cm"),
            default="2.36",
            limits=Limits("0.05 in", "60 in", "a pinhole to a tank"),
        )
    )
    water_g: float = ask(
        Quantity(
            label="Water trapped in it",
            hint="A teaspoon is 5 g; rain, rinse and blast-wash get in by a pinhole",
            units=("g", "oz", "lb", "kg"),
            default="22",
            limits=Limits("0 g", "2000 kg", "dry to a full tank"),
        )
    )
    oven_degC: float = ask(
        Quantity(
            group="The heat",
            label="Oven setting",
            hint="The metal comes to this in the end",
            units=("degF", "degC"),
            default="400",
            limits=Limits("150 F", "600 F", "a cure oven, not a burn-off oven"),
            meaning="oven-setting",
        )
    )
    fill_temperature_degC: float = ask(
        Quantity(
            label="Temperature when it was closed",
            hint="Air was trapped at this",
            units=("degF", "degC"),
            default="70",
            limits=Limits("-40 F", "130 F", "where people work"),
        )
    )


def solve(asked: Inputs) -> Result:
    oven, volume = asked.oven_degC, asked.volume_m3
    water_kg = asked.water_g / 1000
    _hold_water(asked, water_kg)
    saturating_kg = saturated_vapour_kg_m3(oven) * volume
    air = closed_air_pressure_kPa(asked.fill_temperature_degC, oven)
    air_gauge = (air - ATMOSPHERE_kPa) * 1000
    share = liquid_share(oven, water_kg, volume)
    if share > FULL:
        return _bursts(asked, saturating_kg, air_gauge, share)
    steam = vapour_pressure_kPa(oven, water_kg, volume)
    gauge = (air + steam - ATMOSPHERE_kPa) * 1000
    return Result(
        answers={
            "verdict": "vent-first",
            "pressure": gauge,
            "end-force": gauge * pi * asked.bore_m**2 / 4,
            "air-alone": air_gauge,
            "steam": steam * 1000,
            "water-to-saturate": saturating_kg * 1000,
        },
        cautions=_cautions(share),
        steps=_steps(asked, air, steam, saturating_kg),
        charts=(_chart(asked, gauge),),
        headline=f"Vent first, never bake it sealed: about {_psi(gauge)} would build inside",
    )


def _psi(pressure_Pa: float) -> str:
    return f"{shop_number(pressure_Pa / 1000 / PSI)} psi ({shop_number(pressure_Pa / 1e5)} bar)"


def _hold_water(asked: Inputs, water_kg: float) -> None:
    held_kg = saturated_liquid_kg_m3(max(asked.fill_temperature_degC, 0.01)) * asked.volume_m3
    if water_kg > held_kg * (1 + 1e-9):
        raise Clash(
            (
                "water",
                f"Water trapped in it is more than the hollow holds, which is {shop_number(held_kg * 1000)} g. Check the "
                "volume and its unit",
            )
        )


def _bursts(asked: Inputs, saturating_kg: float, air_gauge: float, share: float) -> Result:
    return Result(
        answers={
            "verdict": "vent-first",
            "pressure": Value(words=BURSTS),
            "end-force": Value(words="no number: nothing holds it"),
            "air-alone": air_gauge,
            "steam": Value(words="no number"),
            "water-to-saturate": saturating_kg * 1000,
        },
        cautions=(
            Caution(
                "stop",
                f"At oven heat the water swells to {whole(share * 100)} % of the hollow, over 90 %. A full hollow bursts "
                "whatever its wall. Do not heat it. Open it at both ends, drain it and dry it.",
                "water",
            ),
        ),
        steps=(_saturating_step(asked, saturating_kg),),
        headline="Stop: full of water, it bursts. Vent and drain it first",
    )


def _cautions(share: float) -> tuple[Caution, ...]:
    if share <= SQUEEZED:
        return ()
    return (
        Caution(
            "caution",
            f"Water still liquid takes {whole(share * 100)} % of the hollow at oven heat and squeezes the air. That is not in "
            "the sum: the true pressure is higher.",
            "water",
        ),
    )


def _saturating_step(asked: Inputs, saturating_kg: float) -> Step:
    return step(
        "Water that fills the hollow with saturated steam, none left over",
        "m_full = rho_v * V * 1000",
        "g",
        rho_v=saturating_kg / asked.volume_m3,
        V=asked.volume_m3,
    )


def _steps(asked: Inputs, air: float, steam: float, saturating_kg: float) -> tuple[Step, ...]:
    return (
        step(
            "Trapped air at oven heat, absolute",
            "p_air = 101.325 * (T_oven + 273.15) / (T_closed + 273.15)",
            "kPa",
            T_oven=asked.oven_degC,
            T_closed=asked.fill_temperature_degC,
        ),
        _saturating_step(asked, saturating_kg),
        step(
            "Air and steam (of the water that is there, at most saturated), over the air outside",
            "p = (p_air + p_steam - 101.325) / 6.8948",
            "psi",
            p_air=air,
            p_steam=steam,
        ),
        step(
            "Push on the end",
            "F = (p_air + p_steam - 101.325) * 3.1416 * d ** 2 / 4 / 4.4482 * 1000",
            "lbf",
            p_air=air,
            p_steam=steam,
            d=asked.bore_m,
        ),
    )


def _chart(asked: Inputs, gauge: float) -> Chart:
    low, high = asked.fill_temperature_degC, max(asked.oven_degC + 20, 220.0)
    ovens = tuple(low + (high - low) * place / 40 for place in range(41))

    def gauges(water_kg: float) -> tuple[float, ...]:
        return tuple(
            (
                closed_air_pressure_kPa(low, oven)
                + vapour_pressure_kPa(max(oven, 0.01), water_kg, asked.volume_m3)
                - ATMOSPHERE_kPa
            )
            / PSI
            for oven in ovens
        )

    fahrenheit = tuple(oven * 1.8 + 32 for oven in ovens)
    return Chart(
        title="Pressure in the closed hollow",
        says="Air alone rises slowly. Water rises slowly at first, then steeply, until all of it is steam.",
        x=Axis("metal, F"),
        y=Axis("pressure over the air outside, psi", 0),
        series=(
            Series("with the water entered", fahrenheit, gauges(asked.water_g / 1000)),
            Series("air alone", fahrenheit, gauges(0.0)),
        ),
        marks=(Mark("this oven", asked.oven_degC * 1.8 + 32, gauge / 1000 / PSI),),
    )


CALCULATOR = Calculator(
    title="Sealed hollow",
    question="What pressure builds in a closed hollow in the oven?",
    inputs=Inputs,
    solve=solve,
    answers=(
        Out(
            key="pressure",
            label="Pressure inside",
            meaning="Over the air outside, if nothing gave way. It shows why to vent; it never shows that a part is safe.",
            main=True,
            unit="Pa",
            shown=("psi", "bar"),
        ),
        Out(
            key="verdict",
            label="Do",
            meaning="The same for any number here: open the hollow and drain it before any heat, or refuse the part.",
            options={"vent-first": "vent first, never bake it sealed"},
            beside=True,
        ),
        Out(
            key="end-force",
            label="Push on the end",
            meaning="What tries to shoot the cap, plug or weld off. Think of that weight thrown across the shop.",
            unit="N",
            shown=("lbf", "kN"),
            beside=True,
        ),
        Out(
            key="water-to-saturate",
            label="Water that is enough",
            meaning="With this much water or more, pressure is all that steam can give at this heat.",
            unit="g",
            shown=("g", "oz"),
        ),
        Out(
            key="air-alone",
            label="Dry air alone",
            meaning="Pressure if not a drop of water were inside. Nobody can see that from outside.",
            unit="Pa",
            shown=("psi", "bar"),
        ),
        Out(
            key="steam",
            label="Steam's own part",
            meaning="What the water adds to the air, as absolute pressure.",
            unit="Pa",
            shown=("psi", "bar"),
        ),
    ),
    sources=("iapws-if97", "iapws-sr1-86", "gas-law", "common-practice"),
    version=1,
    reviewed="2026-11-25",
    keywords=(
        "sealed tube",
        "vent hole",
        "drain hole",
        "explode",
        "burst",
        "trapped water",
        "steam pressure",
        "closed section",
        "tank",
    ),
    limits=(
        "It is a warning with a number, not a proof: no result here makes a sealed part fit for the oven.",
        "It takes the water as clean. Fuel, solvent, oil, refrigerant and gas under pressure are worse, and there is no number "
        "for them here.",
        "The room that liquid water takes is neglected, so a hollow with much water in it has more pressure than this says.",
        "It says nothing of what a wall, a weld or a plug can bear. They fail at far less when hot, rusted or cracked.",
    ),
    standing=(
        Caution(
            "stop",
            "Never bake a closed hollow. Open it at both ends, drain it and dry it, and feel air blow through it. A part that "
            "held fuel, gas or pressure, a strut, shock, cylinder or battery is not yours to drill: refuse it, or leave it to "
            "people trained for it.",
            "",
            "common-practice",
        ),
    ),
    default_cautions=(("stop", ""),),
    vary=Vary("water", ("0 g", "2 g", "5 g", "10 g", "22 g", "50 g"), ("pressure", "end-force", "verdict")),
)
