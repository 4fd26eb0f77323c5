"""How hot and how long do I bake this casting before powder? Heating and cooling of the bare metal, with its own limits."""

from __future__ import annotations

from collections.abc import Iterator
from math import ceil

from calculators.kit.calculator import Calculator, Out, Vary
from calculators.kit.chart import Axis, Chart, Mark, Series
from calculators.kit.numbers import whole
from calculators.kit.result import Carry, Caution, Result, Value
from calculators.kit.steps import Step, step
from calculators.prepare._prebake_plan_inputs import FINISHES, Inputs
from calculators.prepare._prebake_plan_sums import (
    Prebake,
    SPRAY_degC,
    Target,
    finish_of,
    prebake,
    target_of,
)
from calculators.tables import table

POINTS = 30
FAR_OVER_K = 30 / 1.8  # half again of the 20 F over the target that is advised: our own choice
LONG_HOLD_min = 60.0
OILY = (
    "Oil in the metal smokes, can burn, and comes back for bake after bake. Do not bake it with other parts, or before powder. "
    "Degrease it, then bake it out by itself with the exhaust running and nobody in the fume, wipe off what bleeds, and repeat "
    "until nothing comes. An oven that is not made for that may not be used for it: its manual and local codes decide."
)


def solve(asked: Inputs) -> Result:
    target = target_of(asked)
    if asked.oily == "yes":
        return _none(
            asked, target, Caution("stop", OILY, "oily", "common-practice"), "Stop: get the oil out first"
        )
    made = prebake(asked, target)
    if made is None:
        text = (
            f"The oven setting is too low: the metal never comes within 10 F of {_f_and_c(target.target_degC)}. Set the oven "
            f"10 to 20 F over that, if oven and metal allow."
        )
        return _none(asked, target, Caution("stop", text, "oven"), "No time: the oven is set too low")
    return Result(
        answers={
            "oven-time": Value(made.oven_min, words=f"{_up(made.oven_min)} min"),
            "metal-target": target.target_degC,
            "warm-up": Value(made.warm_up_min, words=f"{_up(made.warm_up_min)} min"),
            "coat-after": Value(words="never in so warm a shop")
            if made.coat_after_min is None
            else Value(made.coat_after_min, words=f"{_up(made.coat_after_min)} min"),
            "limits": _limits(asked, target),
            "why": _why(asked),
        },
        cautions=tuple(_cautions(asked, target, made)),
        steps=_steps(asked, target, made),
        charts=(_chart(target, made),),
        carries=_carries(asked, target, made),
        headline=f"Bake {_up(made.oven_min)} min before powder, to metal at {_f_and_c(target.target_degC)}",
    )


def _up(minutes: float) -> str:
    return f"{ceil(minutes - 1e-9):,}"


def _f_and_c(degC: float) -> str:
    return f"{whole(degC * 1.8 + 32)} F ({whole(degC)} C)"


def _none(asked: Inputs, target: Target, stop: Caution, headline: str) -> Result:
    nothing = Value(words="no time: see the stop")
    return Result(
        answers={
            "oven-time": nothing,
            "metal-target": target.target_degC,
            "warm-up": nothing,
            "coat-after": nothing,
            "limits": _limits(asked, target),
            "why": _why(asked),
        },
        cautions=(stop,),
        steps=(_target_step(asked, target),),
        headline=headline,
    )


def _limits(asked: Inputs, target: Target) -> list[str]:
    limits = [one.removesuffix(".") for one in table("prebake")[asked.metal]["limits"]]
    if target.capped and target.cap_degC is not None:
        limits.insert(
            0,
            f"This metal's own limit binds: {_f_and_c(target.cap_degC)}, not {_f_and_c(target.wanted_degC)}",
        )
    return limits or ["None of its own at this heat: the powder's cure sets the target"]


def _why(asked: Inputs) -> list[str]:
    row = table("prebake")[asked.metal]
    said = {"astm-d7803": "(ASTM D7803 and a galvanizers' page, second-hand)"}
    return [
        row["why"].removesuffix("."),
        "Metal 54 F (30 C) over the cure to come drives out now what the cure would have driven through the film "
        + said.get(row["over_cure_source"], "(common practice, no source)"),
        "Powder goes on below about 104 F (40 C): on hotter metal it melts as it lands and lies too thick (common practice, no "
        "source)",
    ]


def _cautions(asked: Inputs, target: Target, made: Prebake) -> Iterator[Caution]:
    if target.capped and target.target_degC < asked.cure_temperature_degC + 1e-9:
        yield Caution(
            "caution",
            "The metal's limit is no hotter than the cure to come, so the cure itself may still drive gas out. Choose a powder "
            "that cures cooler, and try one part.",
            "cure-temperature",
        )
    cap = target.cap_degC
    if cap is not None and made.hottest_end_degC > cap + 0.5:
        yield Caution(
            "caution",
            f"At the fast end the metal comes to {_f_and_c(made.hottest_end_degC)} by then, over its limit of {_f_and_c(cap)}. "
            "Set the oven no hotter than the limit, or go by a probe.",
            "oven",
        )
    elif made.hottest_end_degC > target.target_degC + FAR_OVER_K:
        yield Caution(
            "caution",
            f"At the fast end the metal comes to {_f_and_c(made.hottest_end_degC)} by then, far over its target of "
            f"{_f_and_c(target.target_degC)}. Set the oven 10 to 20 F over the target, or go by a probe.",
            "oven",
        )
    row = table("metals")[table("prebake")[asked.metal]["metal"]]
    if asked.metal in ("galvanised", "aluminium-cast") and target.target_degC > row["service_degC"]:
        yield Caution("caution", row["service_note"].replace("°", ""), "metal", row["service_source"])
    if (
        asked.metal == "galvanised"
        and target.target_degC > row["service_degC"]
        and asked.hold_min > LONG_HOLD_min
    ):
        yield Caution(
            "caution",
            f"A hold of {whole(asked.hold_min)} min is long for zinc over {_f_and_c(row['service_degC'])}. The galvanizers' page "
            "asks for an hour, or until the part is at oven temperature.",
            "hold",
            "galvanizers-heat",
        )
    if finish_of(asked) not in FINISHES[asked.metal]:
        yield Caution(
            "caution",
            "This surface does not go with this metal. A surface that takes up more heat makes the time too short.",
            "finish",
        )


def _target_step(asked: Inputs, target: Target) -> Step:
    cap = 9999.0 if target.cap_degC is None else target.cap_degC * 1.8 + 32
    if target.cap_degC is None:
        return step("Metal target", "T = T_cure + 54", "F", T_cure=asked.cure_temperature_degC * 1.8 + 32)
    return step(
        "Metal target, at most the metal's own limit",
        "T = min(T_cure + 54, T_limit)",
        "F",
        T_cure=asked.cure_temperature_degC * 1.8 + 32,
        T_limit=cap,
    )


def _steps(asked: Inputs, target: Target, made: Prebake) -> tuple[Step, ...]:
    return (
        _target_step(asked, target),
        made.path_step,
        step("Warm-up ends within 10 F of it", "T_near = T - 10", "F", T=target.target_degC * 1.8 + 32),
        step(
            "Oven time: warm-up at the slow end, then the hold",
            "t = t_warm + t_hold",
            "min",
            t_warm=made.warm_up_min,
            t_hold=asked.hold_min,
        ),
    )


def _chart(target: Target, made: Prebake) -> Chart:
    out = made.oven_min
    after = made.coat_after_min if made.coat_after_min is not None else 2 * out
    in_oven = tuple(out * place / POINTS for place in range(POINTS + 1))
    cooling = tuple(after * 1.1 * place / POINTS for place in range(POINTS + 1))

    def degF(degC: float) -> float:
        return degC * 1.8 + 32

    return Chart(
        title="Metal temperature, in the oven and after",
        says="The metal creeps up to its target, is held there, and takes far longer to cool than people expect.",
        x=Axis("minutes from the closed door", 0),
        y=Axis("metal, F"),
        series=(
            Series("slow end", in_oven, tuple(degF(made.slow_curve.at(time)) for time in in_oven)),
            Series("as entered", in_oven, tuple(degF(made.curve.at(time)) for time in in_oven)),
            Series(
                "cooling, slow end",
                tuple(out + time for time in cooling),
                tuple(degF(made.slow_cooling.at(time)) for time in cooling),
            ),
        ),
        marks=(
            Mark("out", out),
            Mark("target", y=degF(target.target_degC)),
            Mark("spray below 104 F", y=degF(SPRAY_degC)),
        ),
    )


def _carries(asked: Inputs, target: Target, made: Prebake) -> tuple[Carry, ...]:
    if asked.metal != "aluminium-cast":
        return ()
    texts = {
        "alloy": "unknown",
        "next-temperature": f"{made.hottest_end_degC * 1.8 + 32:.4g} F",
        "next-time": f"{ceil(made.oven_min)} min",
        "bakes": "",
    }
    return (Carry("bake-history", "Count this bake in the history of the aluminium", texts),)


CALCULATOR = Calculator(
    title="Prebake plan",
    question="How hot and how long do I bake it before powder, to drive the gas out?",
    inputs=Inputs,
    solve=solve,
    answers=(
        Out(
            key="oven-time",
            label="Bake for",
            meaning="Minutes from the closed door: warm-up at the slow end, then the hold. Start the clock when the door shuts.",
            main=True,
            unit="min",
            digits=0,
        ),
        Out(
            key="metal-target",
            label="Metal to",
            meaning="What a probe in the heaviest section should come within 10 F of before the hold is counted.",
            unit="degC",
            shown=("degF", "degC"),
            digits=0,
            beside=True,
        ),
        Out(
            key="coat-after",
            label="Spray after",
            meaning="Minutes in still air until under 104 F (40 C), at the slow end. Check with a contact thermometer first.",
            unit="min",
            digits=0,
            beside=True,
        ),
        Out(
            key="warm-up",
            label="Of it, warming up",
            meaning="When the hold begins, at the slow end. With a probe, begin the hold when it reads the target less 10 F.",
            unit="min",
            digits=0,
        ),
        Out(
            key="limits",
            label="Limits of this metal",
            meaning="What binds before the powder does. Hold to the stricter one.",
        ),
        Out(
            key="why",
            label="Why",
            meaning="What each rule stands on. Show it to an owner who asks what the bake is for.",
        ),
    ),
    sources=(
        "astm-d7803",
        "galvanizers-heat",
        "hot-aluminium-2015",
        "en-1993-1-2",
        "en-1999-1-2",
        "incropera",
        "ir-tables",
        "asm-zinc",
        "shop-estimate",
        "common-practice",
    ),
    version=1,
    reviewed="2026-11-25",
    keywords=(
        "outgas",
        "outgassing",
        "pinholes",
        "degas",
        "cast wheels",
        "galvanized",
        "bubbles",
        "bake out",
    ),
    limits=(
        "It gives the heat and the time, not that the gas is out. Bubbles or pinholes on a test part mean: again.",
        "It knows your oven by three words or one measured number, and takes each section as one lump.",
        "The target and the hold are habits of the trade; only for galvanised steel did we find them printed, second-hand.",
        "Some castings never stop gassing. A powder made for gassing metal and a cooler cure do more than a third prebake.",
    ),
    standing=(
        Caution(
            "caution",
            "Vent and drain every closed hollow first: a prebake bursts it as a cure does. Keep the oven's exhaust on, for what "
            "comes out is fume. The oven's manual, local codes and a qualified person rule.",
        ),
    ),
    default_cautions=(("caution", ""),),
    vary=Vary(
        "thickness",
        ("1/8 in", "1/4 in", "3/8 in", "1/2 in", "5/8 in", "3/4 in", "1 in"),
        ("oven-time", "coat-after"),
    ),
)
