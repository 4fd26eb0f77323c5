"""How far does my oven's air fall with a load, and how long does it take to come back? Fitted to readings of the air."""

from __future__ import annotations

from calculators.cure._air_recovery_cautions import MOST_RECOVERY_MIN, cautions
from calculators.cure._air_recovery_inputs import Inputs
from calculators.cure._air_recovery_sums import Air, air_of
from calculators.cure._schedule import F_DIGITS
from calculators.kit.calculator import Calculator, Out
from calculators.kit.chart import Axis, Chart, Mark, Series
from calculators.kit.numbers import shop_number, whole
from calculators.kit.result import Carry, Caution, Given, Result, Value
from calculators.kit.steps import Step, step
from calculators.physics.confidence import student_t_95
from calculators.physics.recovery import recovering_air_degC

# What a bake's plan takes at most.
MOST_DIP_DC = 400 / 1.8
POINTS = 60


def solve(asked: Inputs) -> Result:
    air = air_of(asked)
    return Result(
        answers=_answers(air),
        cautions=cautions(asked, air),
        steps=_steps(asked, air),
        charts=(_chart(asked, air),),
        carries=_carries(asked, air),
        headline=_said(air),
    )


def _said(air: Air) -> str:
    if air.fit is None:
        return f"Cannot be told: {air.why}"
    return f"The air starts {whole(air.fit.dip_K * 1.8)} F low and is back in {shop_number(air.fit.recovery_min, 2)} min"


def _answers(air: Air) -> dict[str, Given]:
    if air.fit is None:
        unknown = Value(words=f"cannot be told: {air.why}")
        return {"recovery": unknown, "dip": unknown, "settles-at": Value(words="not seen yet")}
    settled = air.settled_degC
    fit, reach = air.fit, student_t_95(len(air.times_min) - 2)
    return {
        "recovery": Value(
            fit.recovery_min,
            max(fit.recovery_min - reach * fit.recovery_spread_min, 0.0),
            fit.recovery_min + reach * fit.recovery_spread_min,
        ),
        "dip": Value(
            fit.dip_K, max(fit.dip_K - reach * fit.dip_spread_K, 0.0), fit.dip_K + reach * fit.dip_spread_K
        ),
        "settles-at": Value(words="not seen yet") if settled is None else settled,
    }


def _steps(asked: Inputs, air: Air) -> tuple[Step, ...]:
    if air.fit is None:
        return ()
    return (
        step(
            "Air a third of the way on, by the fit: hold it against your reading",
            "T = S - D * exp(-3 * t / R)",
            "F",
            S=asked.setting_degC * 1.8 + 32,
            D=air.fit.dip_K * 1.8,
            t=air.fit.recovery_min / 3,
            R=air.fit.recovery_min,
        ),
        step(
            "Still missing when it counts as back",
            "left = D * exp(-3)",
            "F",
            D=air.fit.dip_K * 1.8,
        ),
    )


def _chart(asked: Inputs, air: Air) -> Chart:
    times = tuple(at + air.closed_min for at in air.times_min)
    series = [Series("air read", times, tuple(one * 1.8 + 32 for one in air.air_degC), dots=True)]
    marks = [Mark("setting", y=asked.setting_degC * 1.8 + 32)]
    says = f"The readings do not give a recovery: {air.why}."
    if air.fit is not None:
        fit, last = air.fit, air.times_min[-1]
        clock = tuple(last * place / POINTS for place in range(POINTS + 1))
        series.append(
            Series(
                "fitted",
                tuple(at + air.closed_min for at in clock),
                tuple(
                    recovering_air_degC(asked.setting_degC, fit.dip_K, fit.recovery_min, at) * 1.8 + 32
                    for at in clock
                ),
            )
        )
        if fit.recovery_min <= last:
            marks.append(Mark("back", air.closed_min + fit.recovery_min))
        says = (
            f"{_said(air)}: only 5 % of the dip is left then. "
            f"The fit misses the readings by {shop_number(fit.residual_K * 1.8, 2)} F."
        )
    return Chart(
        title="How the air came back",
        says=says,
        x=Axis("minutes on the log's clock"),
        y=Axis("air, F"),
        series=tuple(series),
        marks=tuple(marks),
    )


def _carries(asked: Inputs, air: Air) -> tuple[Carry, ...]:
    fit = air.fit
    if fit is None or fit.dip_K > MOST_DIP_DC or fit.recovery_min > MOST_RECOVERY_MIN:
        return ()
    texts = {
        "dip": f"{fit.dip_K * 1.8:.3g} F",
        "recovery": f"{fit.recovery_min:.3g} min",
        "oven": f"{asked.setting_degC * 1.8 + 32:{F_DIGITS}} F",
    }
    return (
        Carry("cure-plan", "Plan a bake with this dip and recovery", texts),
        Carry("bake-log", "Log a bake with this dip and recovery", texts),
    )


CALCULATOR = Calculator(
    title="Air recovery",
    question="How far does my oven's air fall with a load, and how long does it take to come back?",
    inputs=Inputs,
    solve=solve,
    answers=(
        Out(
            key="recovery",
            label="Back at setting in",
            meaning="Until 5 % of the dip is left. Enter it in the cure plan: every minute of it makes the bake longer.",
            main=True,
            quantity="recovery",
            unit="min",
            digits=3,
        ),
        Out(
            key="dip",
            label="Air below setting when the door closes",
            meaning="How cold the oven starts with this load. It goes into the plan together with the recovery.",
            quantity="dip",
            unit="dC",
            shown=("dF", "dC"),
            digits=3,
            beside=True,
        ),
        Out(
            key="settles-at",
            label="Air settles at",
            meaning="The mean once it is back. If it is not the setting, plan with this and have the thermometers compared.",
            unit="degC",
            shown=("degF", "degC"),
            digits=0,
        ),
    ),
    sources=("oven-recovery-model", "shop-estimate"),
    version=1,
    reviewed="2026-11-25",
    keywords=(
        "oven recovery",
        "recovery time",
        "temperature drop",
        "door open",
        "cold load",
        "ramp back",
        "heat up time",
        "oven log",
    ),
    limits=(
        "It is the number of one load in one oven. A heavier load falls further and comes back later.",
        "The range counts the scatter of the readings at 95 %, at least 2 F a reading, which is our estimate. It does not "
        "count a probe that lags: use a thin bare wire in the air, away from heater, load and door.",
        "Burners and controllers come back in steps and overshoot. The curve is smooth; where it misses by much, it says so.",
    ),
    standing=(
        Caution(
            "note",
            "Fix the probe while the oven is cold and bring its lead out through the port. The oven's manual, local codes and a "
            "qualified person rule how it is run; no safety is bridged for a measurement.",
        ),
    ),
    default_cautions=(("note", ""),),
)
