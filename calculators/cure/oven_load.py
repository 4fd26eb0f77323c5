"""Can the oven heat this load, how long does it take, and what does it cost? A heat balance of load, oven, air and walls."""

from __future__ import annotations

from math import ceil

from calculators.cure._oven_load_cautions import cautions
from calculators.cure._oven_load_inputs import Inputs, checked
from calculators.cure._oven_load_steps import steps
from calculators.cure._oven_load_sums import KJ_A_KWH, WARM_WITHIN_K, Heat, heat_of
from calculators.cure._schedule import F_DIGITS
from calculators.kit.calculator import Calculator, Out, Vary
from calculators.kit.chart import Axis, Bar, Chart
from calculators.kit.numbers import shop_number, whole
from calculators.kit.result import Carry, Caution, Given, Result, Value
from calculators.tables import table

NEVER = "never: exhaust and walls take all the heat there is"
# What cure-plan takes for the dip of the air.
MOST_DIP_K, MOST_RECOVERY_MIN = 400 / 1.8, 120.0


def solve(asked: Inputs) -> Result:
    checked(asked)
    heat = heat_of(asked)
    kWh = _kWh(asked, heat)
    total = sum(kWh.values())
    billed = total / (asked.efficiency_percent / 100)
    cost = billed * _price(asked)
    rules = "heat-input" if heat.warm_up_min is None or heat.warm_up_min > heat.own_min else "part"
    fits = _dip_fits(heat)
    answers: dict[str, Given] = {
        "warm-up": Value(words=NEVER) if heat.warm_up_min is None else Value(heat.warm_up_min),
        "own-time": heat.own_min,
        "rules": rules,
        "heat": total,
        "heat-part": kWh["Parts"],
        "heat-rack": kWh["Racks"],
        "heat-shell": kWh["The oven's own steel"],
        "heat-air": kWh["Exhaust air"],
        "heat-wall": kWh["Walls"],
        "energy": billed,
        "cost": cost,
        "cost-per-hour": cost / (asked.bake_time_min / 60),
        "power-needed": _power_needed(asked, heat),
        "dip": Value(heat.dip.dip_K)
        if fits and heat.dip
        else Value(words="cannot be told: it is not back in time"),
        "recovery": Value(heat.dip.recovery_min)
        if fits and heat.dip
        else Value(words="over 2 h: the oven cannot carry this load"),
    }
    return Result(
        answers=answers,
        cautions=cautions(asked, heat, fits),
        steps=steps(asked, heat, total),
        charts=(_chart(kWh, total),),
        carries=(_carry(asked, heat),) if fits else (),
        headline=_headline(heat, rules, cost),
    )


def _headline(heat: Heat, rules: str, cost: float) -> str:
    money = f"{cost:,.2f} a load"
    if heat.warm_up_min is None:
        return "This oven cannot hold its setting: exhaust and walls take all the heat there is"
    if rules == "part":
        return f"The oven can: {whole(heat.warm_up_min)} min of heat, the metal itself takes {whole(heat.own_min)} min; {money}"
    return (
        f"The oven is short: it needs {whole(heat.warm_up_min)} min for what the metal would take in "
        f"{whole(heat.own_min)} min; {money}"
    )


def _kWh(asked: Inputs, heat: Heat) -> dict[str, float]:
    hours = asked.bake_time_min / 60
    return {
        "Parts": heat.part_kJ / KJ_A_KWH,
        "Racks": heat.rack_kJ / KJ_A_KWH,
        "The oven's own steel": heat.shell_kJ / KJ_A_KWH,
        "Exhaust air": heat.air_kW * hours,
        "Walls": heat.wall_kW * hours,
    }


def _price(asked: Inputs) -> float:
    """Price of a billed kWh."""
    if asked.fuel == "propane" and asked.gallon_price_money_gal is not None:
        return asked.gallon_price_money_gal / float(table("fuels")["propane"]["kWh"])
    return asked.price_money_kWh


def _power_needed(asked: Inputs, heat: Heat) -> float:
    """Heat input at which the burner keeps pace with the metal, W on the plate."""
    pace_kW = heat.stored_kJ / (60 * heat.own_min) if heat.own_min > 0 else 0.0
    return 1000 * (pace_kW + heat.losses_kW) / (asked.efficiency_percent / 100)


def _dip_fits(heat: Heat) -> bool:
    return (
        heat.dip is not None and heat.dip.dip_K <= MOST_DIP_K and heat.dip.recovery_min <= MOST_RECOVERY_MIN
    )


def _chart(kWh: dict[str, float], total: float) -> Chart:
    largest = max(kWh, key=lambda name: kWh[name])
    share = 100 * kWh[largest] / total if total > 0 else 0.0
    bars = tuple(
        Bar(
            name,
            0.0,
            amount,
            "plain",
            f"{shop_number(amount, 2)} kWh, {whole(100 * amount / total) if total > 0 else 0} %",
        )
        for name, amount in kWh.items()
    )
    return Chart(
        title="Where the heat goes",
        says=f"{largest} {'take' if largest in ('Parts', 'Racks', 'Walls') else 'takes'} most of it: {share:.0f} %.",
        x=Axis("kWh for this load", 0),
        y=Axis("Goes to", names=tuple(kWh)),
        bars=bars,
    )


def _carry(asked: Inputs, heat: Heat) -> Carry:
    assert heat.dip is not None
    texts = {
        "metal": asked.metal,
        "shape": asked.shape,
        "thickness": f"{asked.thickness_m / 0.0254:.6g} in",
        "oven": f"{asked.oven_degC * 1.8 + 32:{F_DIGITS}} F",
        "start": f"{asked.start_degC * 1.8 + 32:{F_DIGITS}} F",
        "airflow": asked.airflow,
        "shading": asked.shading,
        # rounded up, so that the plan is not earlier than the estimate
        "dip": f"{ceil(heat.dip.dip_K * 1.8 - 1e-9)} F",
        "recovery": f"{min(ceil(heat.dip.recovery_min * 2 - 1e-9) / 2, MOST_RECOVERY_MIN):g} min",
    }
    if asked.airflow == "measured":
        texts["oven-coefficient"] = f"{asked.oven_coefficient_W_m2K:.4g} W/m2K"
    return Carry("cure-plan", "Plan the bake with this dip, an estimate", texts)


_WITHIN_F = round(WARM_WITHIN_K * 1.8)

CALCULATOR = Calculator(
    title="Oven load",
    question="Can the oven heat this load, how long does it take, and what does it cost?",
    inputs=Inputs,
    solve=solve,
    answers=(
        Out(
            key="warm-up",
            label="Warm-up that the heat input allows",
            meaning="With the burner full on all the way. The metal cannot be warm sooner, however thin it is.",
            main=True,
            unit="min",
            digits=0,
        ),
        Out(
            key="own-time",
            label="What the metal itself takes",
            meaning=f"The heaviest section to within {_WITHIN_F} F of steady air. The longer of the two is the one to count on.",
            unit="min",
            digits=0,
            beside=True,
        ),
        Out(
            key="rules",
            label="Sets the pace",
            meaning="If it is the heat input, bake less at a time or take the dip along to the cure plan.",
            options={"part": "the metal", "heat-input": "the heat input"},
            beside=True,
        ),
        Out(
            key="cost",
            label="Energy for this load",
            meaning="In your money, for the time in the oven that you gave. Warming a cold oven beforehand comes on top.",
            unit="money",
        ),
        Out(
            key="cost-per-hour",
            label="Energy an hour",
            meaning="Cost of this load over its time. Price other loads of the kind with it.",
            unit="money_h",
        ),
        Out(
            key="heat",
            label="Heat for this load",
            meaning="All that must come into the oven until the pull. The chart says where it goes.",
            unit="kWh",
            shown=("kWh", "MJ"),
        ),
        Out(
            key="heat-part",
            label="In the parts",
            meaning="What the parts take up. It leaves with them.",
            unit="kWh",
        ),
        Out(
            key="heat-rack",
            label="In racks and hooks",
            meaning="What cold steel takes up for nothing. Lighter racks save it every load.",
            unit="kWh",
        ),
        Out(
            key="heat-shell",
            label="In the oven's own steel",
            meaning="From what it had when the door closed. Short loading keeps it small.",
            unit="kWh",
        ),
        Out(
            key="heat-air",
            label="With the exhaust air",
            meaning="The price of fresh air, and not to be saved: it carries off vapour.",
            unit="kWh",
        ),
        Out(
            key="heat-wall",
            label="Through the walls",
            meaning="Feel for hot places at the door's edge and joints. Better seals save it all day.",
            unit="kWh",
        ),
        Out(
            key="energy",
            label="Energy billed",
            meaning="What the meter will show for this load. Check it against a real one.",
            unit="kWh",
            shown=("kWh", "therm"),
        ),
        Out(
            key="power-needed",
            label="Heat input to keep pace with the metal",
            meaning="On the plate. Add a reserve; an electrician or a gas fitter sizes the supply.",
            unit="W",
            shown=("kW", "Btu_h"),
        ),
        Out(
            key="dip",
            label="Dip of the air, an estimate",
            meaning="How far the air is down at its worst. Watch the oven's own air once and use that instead.",
            quantity="dip",
            unit="dC",
            shown=("dF", "dC"),
            digits=2,
        ),
        Out(
            key="recovery",
            label="Its recovery, an estimate",
            meaning="For a dip that fades at an even pace and loses as many degree-minutes. Goes with the dip to the cure plan.",
            quantity="recovery",
            unit="min",
            digits=2,
        ),
    ),
    sources=(
        "en-1993-1-2",
        "en-1999-1-2",
        "incropera",
        "air-heat",
        "eia-fuels",
        "nfpa-86",
        "shop-estimate",
    ),
    version=1,
    reviewed="2026-11-25",
    keywords=(
        "kilowatts",
        "oven size",
        "burner",
        "gas bill",
        "energy cost",
        "warm-up",
        "heat load",
        "propane",
        "natural gas",
        "exhaust",
        "home-built oven",
    ),
    limits=(
        "Dip and recovery are an estimate from two lumps: the load, and the oven's own steel with its air. Watch your oven once.",
        "Losses are counted at full heat from the first minute, so warm-up and cost are a little high.",
        "The walls' U-value is rarely known. Gaps, the door's edge and a worn seal can double it.",
        "Iron, stainless, zinc and brass are counted as steel: up to 10 % off either way. Ductwork and a flue are not in it.",
    ),
    vary=Vary(
        "steel",
        ("50 lb", "100 lb", "233 lb", "500 lb", "1000 lb"),
        ("warm-up", "rules", "heat", "cost", "dip"),
    ),
    standing=(
        Caution(
            "caution",
            "Never cut the exhaust to save heat: it keeps vapour far under what burns, and clears a burner's own gas. The oven's "
            "listing, NFPA 86 and the local authority set it. Wiring and gas are for licensed people.",
            "exhaust",
            "nfpa-86",
        ),
    ),
    default_cautions=(("caution", "exhaust"),),
)
