"""When do I pull this part? The heating of its sections, the cure that they make, and the doubt of both."""

from __future__ import annotations

from calculators.cure._bake_cautions import VENT_FIRST, too_cool
from calculators.cure._cure_plan_carries import carries
from calculators.cure._cure_plan_cautions import cautions
from calculators.cure._cure_plan_charts import charts
from calculators.cure._cure_plan_doubt import NAMES, doubt_table
from calculators.cure._cure_plan_inputs import Inputs, schedule_asked
from calculators.cure._cure_plan_sums import NEVER_THERE, Plan, plan
from calculators.cure._schedule import Schedule, per_kelvin
from calculators.cure._window import whole_down, whole_up
from calculators.kit.calculator import Calculator, Out, Vary
from calculators.kit.result import Caution, Given, Result, Value
from calculators.kit.steps import Step, step

SAFE_WORDS = "no pull: the oven is too cool for this powder"


def solve(asked: Inputs) -> Result:
    schedule = schedule_asked(asked)
    made = plan(asked, schedule)
    if made is None:
        return _no_pull(asked, schedule)
    return Result(
        answers=_answers(made),
        cautions=cautions(asked, schedule, made),
        steps=_steps(asked, schedule, made),
        charts=charts(schedule, made),
        tables=(doubt_table(made.no_credit_min, made.doubts),),
        carries=carries(asked, schedule, made),
        headline=_headline(made),
    )


def _no_pull(asked: Inputs, schedule: Schedule) -> Result:
    nothing = Value(words=SAFE_WORDS)
    never = Value(words="never")
    answers: dict[str, Value] = {out.key: nothing for out in CALCULATOR.answers}
    answers |= {"reach-schedule": never, "primer-total": Value(words="not asked")}
    return Result(
        answers=answers,
        cautions=(too_cool(schedule),),
        headline="No pull time: the oven is too cool",
    )


def _headline(made: Plan) -> str:
    pull = whole_up(made.safe_min)
    if made.has_window or made.over_bake_min is None:
        return f"Pull at {pull:,} min, counted from the closed door"
    over = whole_down(made.over_bake_min)
    if made.one_section:
        return f"Pull at {pull:,} min from the closed door, may be over-baked from {over:,}"
    return f"No single pull: heavy section needs {pull:,} min, thin one over-baked from {over:,}"


def _pull(made: Plan) -> Value:
    """The pull to work by. Where over-bake comes first it is said in the same breath: a phone's plate shows no caution."""
    pull = whole_up(made.safe_min)
    if made.has_window or made.over_bake_min is None:
        return Value(pull)
    whose = "may be over-baked" if made.one_section else "thin section over-baked"
    return Value(pull, words=f"{pull:,} min, {whose} from {whole_down(made.over_bake_min):,}")


def _answers(made: Plan) -> dict[str, Given]:
    return {
        "safe-pull": _pull(made),
        "sheet-pull": _late(made.sheet_min, NEVER_THERE),
        "over-bake": Value(made.over_bake_min, words=f"{whole_down(made.over_bake_min):,} min")
        if made.over_bake_min is not None
        else Value(words="never at this setting"),
        "no-credit-pull": Value(made.no_credit_min),
        "pull-time": Value(made.earliest_min, made.earliest_low_min, made.earliest_high_min),
        "metal-at-pull": Value(made.metal_at_pull_degC),
        "in-oven": Value(made.in_oven_min),
        "after-pull": Value(made.after_pull_min),
        "reach-flow": Value(made.reach_flow_min) if made.reach_flow_min is not None else Value(words="never"),
        "reach-schedule": _late(made.reach_schedule_min, "never"),
        "hot-after": Value(made.hot_after_min),
        "touch-after": _late(made.touch_min, "not in this shop's air"),
        "biggest-doubt": made.doubts[0].slug,
        "measure-next": made.doubts[0].shrinks,
        "primer-total": Value(made.primer_total_percent)
        if made.primer_total_percent is not None
        else Value(words="not asked"),
    }


def _late(minutes: float | None, never: str) -> Value:
    """A time that must not come early, shown as the next whole minute."""
    return Value(words=never) if minutes is None else Value(minutes, words=f"{whole_up(minutes):,} min")


def _steps(asked: Inputs, schedule: Schedule, made: Plan) -> tuple[Step, ...]:
    steps = [made.path_step]
    if schedule.activation_step is not None:
        steps.append(schedule.activation_step)
    steps += [
        step(
            "Minutes of cure needed",
            "need = share * t",
            "min",
            share=made.needed_share,
            t=asked.schedule_time_min,
        ),
        step(
            "Slow end of the airflow",
            "h_slow = (1 - doubt / 100) * h",
            "W/m2K",
            doubt=asked.oven_doubt_percent,
            h=made.coefficient_W_m2K,
        ),
        step(
            "Cure rate at the oven's temperature, against the schedule's",
            f"rate = exp(Ea * 1000 / 8.3145 * ({per_kelvin('Ts')} - {per_kelvin('To')}))",
            "",
            Ea=schedule.activation_kJ_mol,
            Ts=schedule.schedule_degC * 1.8 + 32,
            To=min(asked.oven_degC, schedule.hottest_degC) * 1.8 + 32,
        ),
        step(
            "Biot number",
            "Bi = h_all * L / k",
            "",
            h_all=made.whole_W_m2K,
            L=made.part.heat_path_m,
            k=made.lump.conductivity_W_mK,
        ),
    ]
    return tuple(steps)


CALCULATOR = Calculator(
    title="Cure plan",
    question="When do I pull this part out of the oven?",
    inputs=Inputs,
    solve=solve,
    answers=(
        Out(
            key="safe-pull",
            label="Pull at",
            meaning="From the closed door, at the slow end of airflow and cure speed. The oven's own error is not counted: check "
            "it with a probe.",
            main=True,
            quantity="oven-time",
            unit="min",
            digits=0,
        ),
        Out(
            key="sheet-pull",
            label="By the sheet, to the letter",
            meaning="At the airflow as entered: metal at schedule temperature, then the whole time. Where a claim hangs on it, "
            "the clock starts when a probe in the heaviest section reads that temperature.",
            unit="min",
            digits=0,
            beside=True,
        ),
        Out(
            key="over-bake",
            label="Over-baked from",
            meaning="The thinnest section may be over-baked from here, at the fast end of airflow and cure speed. Pull before.",
            unit="min",
            digits=0,
            beside=True,
        ),
        Out(
            key="biggest-doubt",
            label="What is in doubt the most",
            meaning="Of five things tried one at a time, the one that moves this part's pull furthest. The table shows all.",
            options=NAMES,
        ),
        Out(
            key="measure-next",
            label="What would settle it",
            meaning="Measure this before anything else, then plan again.",
        ),
        Out(
            key="no-credit-pull",
            label="Without the doubt",
            meaning="The same sum as the first, if airflow and powder are as entered. Not a time to pull by.",
            unit="min",
            digits=0,
        ),
        Out(
            key="pull-time",
            label="Earliest",
            meaning="Only with a probe in the heaviest section, and cooling in still air: oven and cooling together make it.",
            unit="min",
            digits=0,
        ),
        Out(
            key="metal-at-pull",
            label="Metal at the earliest pull",
            meaning="What the probe must read at that time. If it reads less, leave the part in.",
            unit="degC",
            shown=("degF", "degC"),
            digits=0,
        ),
        Out(
            key="in-oven",
            label="Cure made in the oven by then",
            meaning="Minutes at schedule temperature that the oven has made by the earliest pull.",
            unit="min",
            digits=2,
        ),
        Out(
            key="after-pull",
            label="Cure made while cooling",
            meaning="Minutes at schedule temperature that the hot metal still makes in still air. A fan takes it away.",
            unit="min",
            digits=2,
        ),
        Out(
            key="reach-flow",
            label="Powder flows from",
            meaning="Metal at 300 F. The surface should look wet and level soon after.",
            unit="min",
            digits=0,
        ),
        Out(
            key="reach-schedule",
            label="Metal at schedule temperature",
            meaning="When the sheet's clock may start. The oven's own reading is there long before.",
            unit="min",
            digits=0,
        ),
        Out(
            key="hot-after",
            label="Over 300 F after the earliest pull",
            meaning="How long the metal goes on curing outside. Keep wind and water away from it.",
            unit="min",
            digits=0,
        ),
        Out(
            key="touch-after",
            label="Cool enough to check, after the pull",
            meaning="About 110 F, at the slow end. Check with a contact thermometer, never by the clock.",
            unit="min",
            digits=0,
        ),
        Out(
            key="primer-total",
            label="Primer after this bake",
            meaning="Share of the primer's own schedule. Under 100 % it is not cured; compare the top with its sheet.",
            unit="percent",
            digits=2,
        ),
    ),
    sources=(
        "en-1993-1-2",
        "en-1999-1-2",
        "incropera",
        "arrhenius-sheet",
        "ea-default",
        "cure-schedules",
        "ir-tables",
        "shop-estimate",
        "common-practice",
        "iso-13732-1",
    ),
    version=3,
    reviewed="2026-11-25",
    keywords=(
        "bake time",
        "cure time",
        "how long to bake",
        "metal temperature",
        "pull",
        "oven time",
        "heavy section",
        "undercure",
    ),
    limits=(
        "It knows your oven only by three words or one measured number. Log one bake and use the measured number.",
        "It takes each section as one lump. Deep blocks lag inside, and a section shaded by others heats later than this says.",
        "Cure speed comes from two points of the data sheet. Far from those points it is a guess, and the sheet rules.",
        "It says nothing of a part that gases, of film thickness, or of the oven's cold corner.",
        "It does not know what heat does to springs, hardened steel, solder, adhesive or rubber on the part.",
    ),
    vary=Vary(
        "thickness",
        ("1/16 in", "1/8 in", "1/4 in", "3/8 in", "1/2 in", "5/8 in", "3/4 in", "1 in"),
        ("safe-pull", "sheet-pull", "over-bake", "touch-after"),
    ),
    standing=(
        Caution(
            "caution",
            VENT_FIRST,
            "",
        ),
    ),
    default_cautions=(
        ("caution", ""),
        ("caution", "longest-time"),
        ("note", "dip"),
        ("note", "longest-time"),
    ),
)
