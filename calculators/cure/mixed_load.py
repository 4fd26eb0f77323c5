"""Thick and thin parts in one bake: one pull, an order of pulls, or a load to split. No cure after a pull is counted."""

from __future__ import annotations

from math import inf

from calculators.cure._bake_cautions import VENT_FIRST, too_cool
from calculators.cure._mixed_load_cautions import cautions
from calculators.cure._mixed_load_inputs import Inputs, schedules_asked
from calculators.cure._mixed_load_plan import PLANS, Made
from calculators.cure._mixed_load_search import search
from calculators.cure._mixed_load_sums import Oven, load_of
from calculators.cure._oven_fields import convection_W_m2K
from calculators.cure._schedule import F_DIGITS, Schedule
from calculators.kit.calculator import Calculator, Out, Vary
from calculators.kit.result import Carry, Caution, Result, Value
from calculators.kit.steps import Step, step
from calculators.tables import table

NOTHING = "none: the oven is too cool for this powder"


def solve(asked: Inputs) -> Result:
    common, schedules = schedules_asked(asked)
    cool = next((one for one in schedules if asked.oven_degC <= one.coolest_degC), None)
    if cool is not None:
        return Result(
            answers={out.key: Value(words=NOTHING) for out in CALCULATOR.answers},
            cautions=(too_cool(cool),),
            headline="No pull time: the oven is too cool",
        )
    oven = Oven(
        asked.oven_degC,
        convection_W_m2K(asked.airflow, asked.oven_coefficient_W_m2K),
        table("shading")[asked.shading]["exposure"],
        asked.dip_dC,
        asked.recovery_min,
        asked.door_dC,
        asked.start_degC,
        asked.oven_doubt_percent / 100,
    )
    names = [row.name or f"part {line}" for line, row in enumerate(asked.load, 1)]
    load = load_of(
        [
            (name, row.metal, row.shape, row.thickness_m, schedule)
            for name, row, schedule in zip(names, asked.load, schedules, strict=True)
        ],
        oven,
    )
    made = Made(load, search(load, asked.oven_degC))
    return Result(
        answers=made.answers(),
        cautions=cautions(asked, common, load, [made.pulled_min(place) for place in range(len(load))]),
        steps=_steps(asked, common, made),
        charts=(made.chart,),
        tables=(made.table(),),
        carries=(_carry(asked, common, made),),
        headline=made.headline(),
    )


def _slowest(made: Made) -> int:
    return max(range(len(made.load)), key=lambda place: made.load[place].earliest_min or inf)


def _carry(asked: Inputs, common: Schedule, made: Made) -> Carry:
    row = asked.load[_slowest(made)]
    schedule = made.load[_slowest(made)].schedule
    texts = {
        "metal": row.metal,
        "shape": row.shape,
        "thickness": f"{row.thickness_m / 0.0254:.6g} in",
        "oven": f"{asked.oven_degC * 1.8 + 32:{F_DIGITS}} F",
        "airflow": asked.airflow,
        "shading": asked.shading,
        "schedule-temperature": f"{schedule.schedule_degC * 1.8 + 32:{F_DIGITS}} F",
        "schedule-time": f"{schedule.schedule_min:g} min",
    }
    if asked.airflow == "measured":
        texts["oven-coefficient"] = f"{asked.oven_coefficient_W_m2K:.4g} W/m2K"
        texts["oven-doubt"] = f"{asked.oven_doubt_percent:g} %"
    second, time = asked.second_temperature_degC, asked.second_time_min
    if schedule is common and second is not None and time is not None:
        texts |= {
            "second-temperature": f"{second * 1.8 + 32:{F_DIGITS}} F",
            "second-time": f"{time:g} min",
        }
    else:
        texts |= {"second-temperature": "", "second-time": ""}
    return Carry("cure-plan", "See the slowest part's bake alone", texts)


def _steps(asked: Inputs, common: Schedule, made: Made) -> tuple[Step, ...]:
    slowest = made.load[_slowest(made)]
    thickness_mm = asked.load[_slowest(made)].thickness_m * 1000
    steps = [
        step(
            f"Heat path of the slowest part ({slowest.name})",
            "L = t / n",
            "mm",
            t=thickness_mm,
            n=round(thickness_mm / 1000 / slowest.part.heat_path_m),
        )
    ]
    if common.activation_step is not None:
        steps.append(common.activation_step)
    steps += [
        step(
            "Slow end of the airflow",
            "h_slow = (1 - doubt / 100) * h",
            "W/m2K",
            doubt=asked.oven_doubt_percent,
            h=slowest.oven.convection_W_m2K,
        ),
        step(
            "Fast end of the airflow",
            "h_fast = (1 + doubt / 100) * h",
            "W/m2K",
            doubt=asked.oven_doubt_percent,
            h=slowest.oven.convection_W_m2K,
        ),
    ]
    if asked.recovery_min > 0 and asked.door_dC > 0:
        steps.append(
            step(
                "Air still missing 2 min after an opening",
                "missing = door * exp(-3 * 2 / recovery)",
                "F",
                door=asked.door_dC * 1.8,
                recovery=asked.recovery_min,
            )
        )
    if len(made.pulls) > 1:
        last = made.pulls[-1]
        place = last.places[last.earliest_min.index(max(last.earliest_min))]
        steps.append(
            step(
                f"What the openings cost the last part ({made.load[place].name})",
                "delay = opened - shut",
                "min",
                opened=max(last.earliest_min),
                shut=made.load[place].earliest_min or 0.0,
            )
        )
    return tuple(steps)


CALCULATOR = Calculator(
    title="Mixed load",
    question="How do I bake thick and thin parts in one load?",
    inputs=Inputs,
    solve=solve,
    answers=(
        Out(
            key="plan",
            label="Plan",
            meaning="Follow it by the clock from the closed door. What comes out must already be cured: nothing here counts on "
            "heat after the pull.",
            main=True,
            options=PLANS,
        ),
        Out(
            key="order",
            label="What comes out when",
            meaning="Open the door at these minutes and no others. Where the load is split, each line is a bake of its own.",
            beside=True,
        ),
        Out(
            key="pull",
            label="One pull at",
            meaning="The first whole minute that serves every part. Pull all of it then.",
            unit="min",
            digits=0,
        ),
        Out(
            key="window",
            label="Window for all",
            meaning="From the last part cured, at the slow end of airflow and cure speed, to the first that may be over-baked. "
            "The wider it is, the calmer the pull.",
            unit="min",
            digits=0,
        ),
        Out(
            key="windows",
            label="Each part's window",
            meaning="From cured, at the slow end of airflow and cure speed, to may be over-baked, door openings counted. The "
            "oven's own error is not counted: check it with a probe.",
        ),
        Out(
            key="oven-that-opens-one",
            label="Oven setting with one pull for all",
            meaning="The setting nearest to yours at which one pull serves all. Set it, and plan again.",
            unit="degC",
            shown=("degF", "degC"),
            digits=0,
        ),
        Out(
            key="last-out",
            label="Last part out",
            meaning="How long the oven is taken. Plan the next load from it.",
            quantity="oven-time",
            unit="min",
            digits=0,
        ),
    ),
    sources=(
        "en-1993-1-2",
        "en-1999-1-2",
        "incropera",
        "arrhenius-sheet",
        "ea-default",
        "cure-schedules",
        "shop-estimate",
        "common-practice",
    ),
    version=1,
    reviewed="2026-11-25",
    keywords=(
        "thick and thin",
        "mixed parts",
        "one load",
        "batch",
        "pull order",
        "over-bake",
        "oven door",
        "sheet and casting",
    ),
    limits=(
        "It knows a part by its heaviest section. A thin place on the same part is a line of its own here.",
        "It does not know how much the load weighs. A load too heavy for the burner heats later: see the oven load.",
        "What an opened door costs is what you enter. Watch your own oven's air once.",
        "The powder's own data sheet rules. Over-bake is counted from twice the schedule time until the sheet says more.",
    ),
    vary=Vary(
        "oven",
        ("390 F", "395 F", "400 F", "410 F", "420 F"),
        ("plan", "order", "windows"),
    ),
    standing=(
        Caution("caution", VENT_FIRST, ""),
        Caution(
            "caution",
            "Opening a hot oven: gloves and sleeves rated for its heat, a face shield, a clear way to the rack. Its manual says "
            "what the burner and the fan must do while the door is open; never bridge the door switch.",
            "door",
        ),
    ),
    default_cautions=(("caution", ""), ("caution", "door")),
)
