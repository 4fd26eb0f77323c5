"""What cure did this bake really give, and when do I pull? Equivalent minutes summed straight between the readings."""

from __future__ import annotations

from calculators.cure._bake_log_answers import answers_of, said_of
from calculators.cure._bake_log_cautions import cautions
from calculators.cure._bake_log_charts import SHORT, charts
from calculators.cure._bake_log_forecast import forecast_of
from calculators.cure._bake_log_inputs import Inputs, schedule_asked
from calculators.cure._bake_log_readings import log_of
from calculators.cure._bake_log_sums import Bake, bake_of
from calculators.cure._schedule import F_DIGITS, Schedule
from calculators.kit.calculator import Calculator, Out
from calculators.kit.numbers import shop_number, whole
from calculators.kit.result import Carry, Caution, Result, Table
from calculators.kit.steps import Step, step
from calculators.physics.heat import heat_path_m

# What cure-plan takes as a measured oven.
LOWEST_CARRIED_W_m2K, HIGHEST_CARRIED_W_m2K = 2.0, 150.0


def solve(asked: Inputs) -> Result:
    schedule = schedule_asked(asked)
    log = log_of(asked, schedule)
    bake = bake_of(asked, schedule, log)
    forecast, doubts = forecast_of(asked, schedule, log, bake)
    said = said_of(schedule, log, bake, forecast)
    return Result(
        answers=answers_of(asked, schedule, bake, forecast, doubts),
        cautions=cautions(asked, schedule, log, bake, forecast),
        steps=_steps(asked, schedule, bake),
        charts=charts(schedule, log, bake, forecast, doubts, f"{said}."),
        tables=_tables(schedule, bake),
        carries=_carries(asked, bake),
        headline=said,
    )


def _tables(schedule: Schedule, bake: Bake) -> tuple[Table, ...]:
    if len(bake.probes) == 1:
        return ()
    rows = tuple(
        (
            one.name,
            f"{shop_number(one.safe.best)} min",
            f"{shop_number(one.all_minutes.best)} min",
            f"{whole(one.hottest_degC * 1.8 + 32)} F ({whole(one.hottest_degC)} C)",
            SHORT[one.verdict],
        )
        for one in bake.probes
    )
    return (Table("Probe by probe", ("Probe", "Safe minutes", "Every minute", "Hottest", "Verdict"), rows),)


def _carries(asked: Inputs, bake: Bake) -> tuple[Carry, ...]:
    fit = bake.oven.fit
    if fit is None or not LOWEST_CARRIED_W_m2K <= fit.convection_W_m2K <= HIGHEST_CARRIED_W_m2K:
        return ()
    texts = {
        "airflow": "measured",
        "oven-coefficient": f"{fit.convection_W_m2K:.3g} W/m2K",
        "metal": asked.metal,
        "shape": asked.shape,
        "schedule-temperature": f"{asked.schedule_temperature_degC * 1.8 + 32:{F_DIGITS}} F",
        "schedule-time": f"{asked.schedule_time_min:g} min",
    }
    if asked.thickness_m is not None:
        texts["thickness"] = f"{asked.thickness_m / 0.0254:.6g} in"
    texts["dip"] = f"{asked.dip_dC * 1.8:.6g} F"
    texts["recovery"] = f"{asked.recovery_min:.6g} min"
    if asked.oven_degC is not None:
        texts["oven"] = f"{asked.oven_degC * 1.8 + 32:{F_DIGITS}} F"
    second = asked.second_temperature_degC
    texts["second-temperature"] = "" if second is None else f"{second * 1.8 + 32:{F_DIGITS}} F"
    texts["second-time"] = "" if asked.second_time_min is None else f"{asked.second_time_min:g} min"
    if asked.longest_time_min is not None:
        texts["longest-time"] = f"{asked.longest_time_min:g} min"
    return (Carry("cure-plan", "Plan the next bake with this oven", texts),)


def _steps(asked: Inputs, schedule: Schedule, bake: Bake) -> tuple[Step, ...]:
    steps = [] if schedule.activation_step is None else [schedule.activation_step]
    hottest = min(bake.least.hottest_degC, schedule.hottest_degC)
    steps += [
        step(
            "What one minute at the hottest reading is worth (at most that at the sheet's hottest point)",
            "rate = exp(Ea * 1000 / 8.3145 * (1 / Ts - 1 / T))",
            "",
            Ea=schedule.activation_kJ_mol,
            Ts=schedule.schedule_degC + 273.15,
            T=hottest + 273.15,
        ),
        step(
            "Coolest metal at which a minute is safe credit",
            "T_safe = (T_coolest - 15) * 1.8 + 32",
            "F",
            T_coolest=schedule.coolest_degC,
        ),
        step(
            "Share of the schedule, from the sum of that rate over all safe minutes",
            "share = safe / t * 100",
            "%",
            safe=bake.least.safe.best,
            t=schedule.schedule_min,
        ),
    ]
    if bake.oven.fit is not None and asked.thickness_m is not None:
        path = heat_path_m(asked.shape, asked.thickness_m)
        steps.append(
            step(
                "Heat path of the section, on which the oven coefficient rests",
                "L = d / n * 1000",
                "mm",
                d=asked.thickness_m,
                n=asked.thickness_m / path,
            )
        )
    return tuple(steps)


CALCULATOR = Calculator(
    title="Bake log",
    question="What cure did this bake really give, and when do I pull?",
    inputs=Inputs,
    solve=solve,
    answers=(
        Out(
            key="verdict",
            label="This bake",
            meaning="Under: bake on, or again. Likely: test the film. Over: compare colour and gloss with a good panel.",
            main=True,
            options={
                "under": "under: the schedule is not made, even with every minute counted",
                "likely": "likely: made only by counting minutes cooler than the sheet vouches for",
                "in": "in the window: the schedule is made, and not overrun",
                "over": "over: longer than the longest time",
                "outside-sheet": "outside the sheet: no verdict can rest on it",
            },
        ),
        Out(
            key="safe-equivalent",
            label="Cure made, safe minutes",
            meaning="Minutes at schedule temperature, from metal within 27 F of the sheet. Hold it against the schedule.",
            unit="min",
            digits=3,
            beside=True,
        ),
        Out(
            key="pull-in",
            label="Pull in",
            meaning="Minutes from the last reading, nothing counted after the pull. Take the longer figure, and read again.",
            unit="min",
            digits=0,
            beside=True,
        ),
        Out(
            key="biggest-doubt",
            label="Biggest doubt",
            meaning="What widens the range most, and the one measurement that would shrink it.",
            options={
                "readings-probe": "the readings: try the probe in boiling water (212 F at sea level), and say how near it comes",
                "readings-infrared": "the readings: hold a contact probe beside the gun once, and say how near they come",
                "cure-speed-one-point": "the powder's cure speed: enter a second line of its data sheet",
                "cure-speed-two-points": "the powder's cure speed: rub-test a panel that rode along, or bake nearer the schedule",
                "oven-fit": "the oven's fit to the readings: read the metal again in 3 min",
                "none-yet": "none to weigh yet: no safe minute is made or in sight",
            },
        ),
        Out(
            key="equivalent",
            label="Cure made, every minute",
            meaning="The same with cooler minutes counted. Use it to see whether a bake can be over, or must be under.",
            unit="min",
            digits=3,
        ),
        Out(
            key="share",
            label="Share of the schedule",
            meaning="Safe minutes over the schedule time. At 100 % or more the schedule is made.",
            unit="percent",
            digits=3,
        ),
        Out(
            key="hottest",
            label="Hottest reading",
            meaning="Of all probes. Compare it with the sheet's hottest point and with the oven setting.",
            unit="degC",
            shown=("degF", "degC"),
            digits=0,
        ),
        Out(
            key="oven-coefficient",
            label="Oven coefficient",
            meaning="How hard this oven's air heats a part where this one hung. Plan the next bake there with it.",
            quantity="oven-coefficient",
            unit="W_m2K",
            shown=("W_m2K", "Btu_hft2F"),
            digits=3,
        ),
    ),
    sources=(
        "arrhenius-sheet",
        "ea-default",
        "cure-schedules",
        "incropera",
        "en-1993-1-2",
        "en-1999-1-2",
        "shop-estimate",
        "common-practice",
    ),
    version=2,
    reviewed="2026-11-25",
    keywords=(
        "oven log",
        "bake timer",
        "live bake",
        "temperature recorder",
        "data logger",
        "thermocouple",
        "equivalent minutes",
        "undercure",
        "overbake",
        "oven profile",
        "csv",
    ),
    limits=(
        "It knows the metal only where it was read. A heavier or more shaded place has had less.",
        "The doubt of a reading, 4 F by probe and 15 F by infrared on cured film, is our estimate. No source gives it. "
        "Enter your own where the instrument was checked.",
        "Cure speed comes from the data sheet. Far from the sheet's own temperatures it is a guess, and the sheet rules.",
        "The fit takes the air at its setting from the first reading on, unless its dip is given. Without it a cold load "
        "makes the coefficient too low and the forecast late.",
        "The oven coefficient rests on thickness, metal and oven setting as entered; its range counts the scatter of the "
        "readings only, at 95 %.",
        "A log proves time and temperature, not film. Where it matters, test the film.",
    ),
    standing=(
        Caution(
            "note",
            "Probe leads, racks and parts stay hot long after the pull. Handle them as hot until a contact thermometer says "
            "otherwise; the oven's own manual, local codes and a qualified person rule how it is run.",
        ),
    ),
    default_cautions=(("note", ""), ("note", "longest-time")),
)
