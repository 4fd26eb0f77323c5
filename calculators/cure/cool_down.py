"""When can a baked part be checked, unmasked, sprayed again, assembled? Cooling of one lump, with the doubt of the air."""

from __future__ import annotations

from dataclasses import dataclass
from math import ceil

from calculators.cure._cool_down_inputs import AIRS, HANGS, Inputs
from calculators.cure._lump import lump_of
from calculators.cure._oven_fields import SHOP_AIR_DOUBT
from calculators.kit.calculator import Calculator, Out, Vary
from calculators.kit.chart import Axis, Chart, Mark, Series
from calculators.kit.numbers import whole
from calculators.kit.result import Caution, Clash, Result, Value
from calculators.kit.steps import Step, step
from calculators.physics.curve import Curve
from calculators.physics.heat import Part, Surroundings, heat_path_m, radiation_W_m2K, temperature_curve
from calculators.tables import table

TOUCH_DEGC = (110 - 32) / 1.8
SPRAY_DEGC = (104 - 32) / 1.8
UNMASK_DEGC = (140 - 32) / 1.8
ASSEMBLE_OVER_SHOP_DC = 10 / 1.8
NEVER = "not in this shop's air"
POINTS = 40


@dataclass(frozen=True, slots=True)
class Cooling:
    """The same part at the fast, the nominal and the slow end of its doubts."""

    fast: Curve
    best: Curve
    slow: Curve

    def to(self, degC: float) -> Value:
        """Minutes to a temperature: the nominal figure with its range, shown at the slow end."""
        ends = [curve.first_at_or_below(degC) for curve in (self.fast, self.best, self.slow)]
        if None in ends:
            return Value(words=NEVER)
        fast, best, slow = (one for one in ends if one is not None)
        return Value(best, min(fast, best), max(slow, best), f"{ceil(max(slow, best) - 1e-9):,} min")


def solve(asked: Inputs) -> Result:
    clashes = []
    if asked.from_degC <= asked.shop_degC:
        clashes.append(("from", "Metal when it comes out must be hotter than shop temperature"))
    if asked.target_degC is not None and asked.target_degC >= asked.from_degC:
        clashes.append(
            ("target", "A temperature of your own must be cooler than the metal when it comes out")
        )
    if clashes:
        raise Clash(*clashes)
    path = heat_path_m(asked.shape, asked.thickness_m)
    finish = table("finishes")[asked.finish]
    convection: float = table("airflow")[AIRS[asked.air]]["convection_W_m2K"]
    exposure: float = table("shading")[HANGS[asked.racked]]["exposure"]

    def cooled(factor: float, emissivity: float) -> Curve:
        row = table("metals")[asked.metal]
        part = Part(row["density_kg_m3"], row["specific_heat_J_kgK"], path, emissivity)
        around = Surroundings(asked.shop_degC, factor * convection, exposure)
        return temperature_curve(part, around, asked.from_degC)

    best = finish["emissivity"]
    made = Cooling(
        cooled(1 + SHOP_AIR_DOUBT, max(best, finish["high"])),
        cooled(1.0, best),
        cooled(1 - SHOP_AIR_DOUBT, min(best, finish["low"])),
    )
    whole_W_m2K = convection + radiation_W_m2K(best * exposure, asked.from_degC, asked.shop_degC)
    touch = made.to(TOUCH_DEGC)
    return Result(
        answers={
            "touch": touch,
            "unmask": made.to(UNMASK_DEGC),
            "spray-again": made.to(SPRAY_DEGC),
            "assemble": made.to(asked.shop_degC + ASSEMBLE_OVER_SHOP_DC),
            "target-after": made.to(asked.target_degC)
            if asked.target_degC is not None
            else Value(words="not asked"),
        },
        cautions=_cautions(asked, path, whole_W_m2K),
        steps=_steps(asked, path, convection, exposure, best),
        charts=(_chart(asked, made),),
        headline=_headline(touch),
    )


def _headline(touch: Value) -> str:
    if touch.number is None:
        return "It does not cool to 110 F in this shop's air"
    if touch.high == 0:
        return "Under 110 F already: check it with a contact thermometer"
    return f"Check it from {touch.words}, with a contact thermometer"


def _cautions(asked: Inputs, path: float, whole_W_m2K: float) -> tuple[Caution, ...]:
    found = []
    row = table("metals")[asked.metal]
    lump = lump_of(
        asked.metal,
        asked.shape,
        Part(row["density_kg_m3"], row["specific_heat_J_kgK"], path, 0.0),
        whole_W_m2K,
    )
    if lump.too_thick:
        found.append(
            Caution(
                "caution",
                f"This section is thick for its metal (Biot number {lump.biot:.2f}, over 0.1): its core stays hot about "
                f"{ceil(lump.core_lag_min):,} min longer than its skin, and warms the skin again.",
                "thickness",
                "incropera",
            )
        )
    if asked.shop_degC >= SPRAY_DEGC - ASSEMBLE_OVER_SHOP_DC:
        found.append(
            Caution(
                "note",
                "A shop this warm leaves little between its air and metal that is cool enough. The last degrees take long.",
                "shop",
            )
        )
    if asked.air == "fan":
        found.append(
            Caution(
                "note",
                "No fan, wind or water on it before the bake has made its schedule: heavy metal goes on curing, and a draught "
                "takes that away. Water can craze the film.",
                "air",
                "common-practice",
            )
        )
    return tuple(found)


def _steps(
    asked: Inputs, path: float, convection: float, exposure: float, emissivity: float
) -> tuple[Step, ...]:
    thickness_mm = asked.thickness_m * 1000
    row = table("metals")[asked.metal]
    middle_degC = (asked.from_degC + asked.shop_degC) / 2
    radiation = radiation_W_m2K(emissivity * exposure, middle_degC, asked.shop_degC)
    heat_J_kgK = sum(one * middle_degC**power for power, one in enumerate(row["specific_heat_J_kgK"]))
    return (
        step(
            "Heat path: metal volume over cooled area",
            "L = t / n",
            "mm",
            t=thickness_mm,
            n=round(asked.thickness_m / path),
        ),
        step(
            "Radiation half way, as a coefficient",
            "hr = eps * F * 5.6704e-8 * (T + Ts) * (T**2 + Ts**2)",
            "W/m2K",
            eps=emissivity,
            F=exposure,
            T=middle_degC + 273.15,
            Ts=asked.shop_degC + 273.15,
        ),
        step(
            "Time constant half way (the curve itself is followed step by step)",
            "tau = rho * c * L / (h + hr) / 60",
            "min",
            rho=row["density_kg_m3"],
            c=heat_J_kgK,
            L=path,
            h=convection,
            hr=radiation,
        ),
        step(
            "Metal that may be assembled",
            "cold = shop + 10",
            "F",
            shop=asked.shop_degC * 1.8 + 32,
        ),
    )


def _chart(asked: Inputs, made: Cooling) -> Chart:
    assemble = made.slow.first_at_or_below(asked.shop_degC + ASSEMBLE_OVER_SHOP_DC)
    end = made.slow.end_min if assemble is None else assemble
    times = tuple(end * place / POINTS for place in range(POINTS + 1))

    def along(curve: Curve) -> tuple[float, ...]:
        return tuple(curve.at(time) * 1.8 + 32 for time in times)

    marks = [Mark("110 F, check it", y=110.0)]
    if asked.target_degC is not None and asked.target_degC > asked.shop_degC:
        marks.append(Mark("yours", y=asked.target_degC * 1.8 + 32))
    hot = made.slow.first_at_or_below(TOUCH_DEGC)
    says = (
        "It never comes to 110 F in this air."
        if hot is None
        else f"A part that nobody can see is hot stays over 110 F for up to {whole(hot)} min."
    )
    return Chart(
        title="Metal temperature after the pull",
        says=says,
        x=Axis("minutes after the pull", 0, end),
        y=Axis("metal, F"),
        series=(
            Series("doubt", times, along(made.fast), along(made.slow)),
            Series("as entered", times, along(made.best)),
        ),
        marks=tuple(marks),
    )


CALCULATOR = Calculator(
    title="Cool down",
    question="When can it be touched, unmasked, sprayed again, assembled?",
    inputs=Inputs,
    solve=solve,
    answers=(
        Out(
            key="touch",
            label="Cool enough to check, after",
            meaning="About 110 F, at the slow end. Check with a contact thermometer, never by the clock. No leave to grip it.",
            main=True,
            unit="min",
            digits=0,
        ),
        Out(
            key="unmask",
            label="Unmask, in gloves",
            meaning="About 140 F: warm enough for tape and plugs to let go, and still a burn. Their maker's own figure rules.",
            unit="min",
            digits=0,
            beside=True,
        ),
        Out(
            key="spray-again",
            label="Spray again",
            meaning="104 F. Sprayed hotter, powder melts as it lands, and nobody can tell how much is on.",
            unit="min",
            digits=0,
            beside=True,
        ),
        Out(
            key="assemble",
            label="Assemble or stack",
            meaning="Within 10 F of the shop. No tools, stacking or wrapping before it is cold through.",
            unit="min",
            digits=0,
        ),
        Out(
            key="target-after",
            label="Your own temperature",
            meaning="When the metal is at the temperature that you entered, at the slow end.",
            unit="min",
            digits=0,
        ),
    ),
    sources=(
        "en-1993-1-2",
        "en-1999-1-2",
        "incropera",
        "ir-tables",
        "shop-estimate",
        "iso-13732-1",
        "astm-c1055",
        "common-practice",
    ),
    version=1,
    reviewed="2026-11-25",
    keywords=(
        "cooling time",
        "how long to cool",
        "safe to touch",
        "hot part",
        "unmask",
        "second coat",
        "handle",
        "assemble",
        "pack",
    ),
    limits=(
        "No temperature here is leave to grip a part. Bare or coated metal burns in a minute at about 124 F (51 C).",
        "It takes the section as one lump in air that stays the same. A stack of hot parts cools far slower.",
        "The air's doubt is 25 % either way, our own estimate; a closed hollow holds its heat longer.",
        "Spraying at 104 F and unmasking at 140 F are common practice, no source. The powder's and the tape's makers rule.",
    ),
    vary=Vary(
        "thickness",
        ("1/16 in", "1/8 in", "1/4 in", "3/8 in", "5/8 in", "1 in"),
        ("touch", "unmask", "spray-again", "assemble"),
    ),
    standing=(
        Caution(
            "caution",
            "A hot part looks like a cold one. Hang a HOT sign on it, wear gloves rated for its heat, check it with a contact "
            "thermometer. On a burn: cool running water for 20 min; medical help for a large, deep, face or hand burn.",
            "",
            "iso-13732-1",
        ),
    ),
    default_cautions=(("caution", ""),),
)
