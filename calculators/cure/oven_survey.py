"""Where is this oven hot and cold? The spread of readings about it, and what the setting must be for its coldest place."""

from __future__ import annotations

from calculators.cure._oven_survey_inputs import Inputs, Place
from calculators.cure._schedule import F_DIGITS, f_and_c
from calculators.kit.calculator import Calculator, Out
from calculators.kit.chart import Axis, Bar, Chart, Mark
from calculators.kit.numbers import shop_number, whole
from calculators.kit.result import Carry, Caution, Clash, Result, Table, Value
from calculators.kit.steps import Step, step

MOST_BARS = 20
HOTTEST_SETTING_degC = (600 - 32) / 1.8
# Our own choice: further off, something else than the oven's corners is wrong.
FAR_OFF_K = 30 / 1.8


def solve(asked: Inputs) -> Result:
    if asked.target_degC is not None and abs(asked.target_degC - asked.setting_degC) > 100 / 1.8 + 1e-9:
        raise Clash(
            (
                "target",
                "Temperature that the coldest place should have must be within 100 F of the oven setting in the survey: "
                "further off, survey again near it",
            )
        )
    coldest = min(asked.readings, key=lambda one: one.temperature_degC)
    hottest = max(asked.readings, key=lambda one: one.temperature_degC)
    spread = hottest.temperature_degC - coldest.temperature_degC
    target = asked.setting_degC if asked.target_degC is None else asked.target_degC
    add = target - coldest.temperature_degC
    then = hottest.temperature_degC + add
    # a hair of slack, so that 20 F typed and 20 F read compare as equal
    verdict = _verdict(spread - 1e-6, asked.even_dC)
    return Result(
        answers={
            "verdict": verdict,
            "spread": spread,
            "coldest": Value(coldest.temperature_degC, words=_at(coldest)),
            "hottest": Value(hottest.temperature_degC, words=_at(hottest)),
            "mean": _mean(asked),
            "add": add,
            "new-setting": Value(words="none: over 600 F (316 C)")
            if _too_hot(asked, add)
            else asked.setting_degC + add,
            "hottest-then": then,
        },
        cautions=_cautions(asked, then, verdict, add),
        steps=_steps(asked, coldest, hottest, target),
        charts=(_chart(asked, spread),),
        tables=(_table(asked, add),),
        carries=(
            Carry(
                "cure-plan",
                "Plan a bake for the coldest place, at this setting",
                {"oven": f"{coldest.temperature_degC * 1.8 + 32:{F_DIGITS}} F"},
            ),
        ),
        headline=f"{_WORDS[verdict]}: {whole(spread * 1.8)} F from {coldest.place} to {hottest.place}",
    )


_WORDS = {"even": "Even", "uneven": "Uneven", "too-uneven": "Too uneven"}


def _verdict(spread: float, even: float) -> str:
    return "even" if spread <= even else "uneven" if spread <= 2 * even else "too-uneven"


def _at(place: Place) -> str:
    return f"{place.place}, {f_and_c(place.temperature_degC)}"


def _mean(asked: Inputs) -> float:
    return sum(one.temperature_degC for one in asked.readings) / len(asked.readings)


def _too_hot(asked: Inputs, add: float) -> bool:
    return asked.setting_degC + add > HOTTEST_SETTING_degC + 1e-6


def _cautions(asked: Inputs, then: float, verdict: str, add: float) -> tuple[Caution, ...]:
    cautions = []
    off = _mean(asked) - asked.setting_degC
    if _too_hot(asked, add):
        cautions.append(
            Caution(
                "stop",
                "The coldest place would need a setting over 600 F (316 C). Do not set a cure oven so. Find what is wrong with "
                "the oven, its probe or the survey first.",
                "setting",
            )
        )
    elif abs(off) > FAR_OFF_K + 1e-6:
        cautions.append(
            Caution(
                "caution",
                f"The places read {whole(abs(off) * 1.8)} F {'under' if off < 0 else 'over'} the setting on the mean. Find out "
                "why before you move the setting: the controller's probe, the thermometers, or an oven that was not steady yet.",
                "setting",
            )
        )
    if asked.hottest_allowed_degC is not None and then > asked.hottest_allowed_degC + 1e-6:
        cautions.append(
            Caution(
                "caution",
                f"With the coldest place right, the hottest comes to {f_and_c(then)}, over what you allow. No setting serves "
                "both: hang nothing in the hot or the cold place, or have the oven mended.",
                "hottest-allowed",
            )
        )
    if verdict == "too-uneven":
        cautions.append(
            Caution(
                "caution",
                "Do not raise the setting to hide a spread like this. Look for a fan that runs backwards or not at all, blocked "
                "or shifted ducts, a door that leaks, a burner or element that is out; then survey again.",
                "readings",
                "common-practice",
            )
        )
    if asked.read_as == "air":
        cautions.append(
            Caution(
                "note",
                "This is the air. Parts also take heat from the walls, and heavy ones come to it late: put a probe in a part at "
                "the coldest place once.",
                "read-as",
            )
        )
    if add < 0:
        cautions.append(
            Caution(
                "note",
                "Even the coldest place is hotter than you want: the setting may come down by this much.",
                "target",
            )
        )
    return tuple(cautions)


def _steps(asked: Inputs, coldest: Place, hottest: Place, target: float) -> tuple[Step, ...]:
    cold, hot = coldest.temperature_degC * 1.8 + 32, hottest.temperature_degC * 1.8 + 32
    wanted = target * 1.8 + 32
    return (
        step("Spread", "spread = T_hot - T_cold", "F", T_hot=hot, T_cold=cold),
        step("To add to the setting", "add = T_wanted - T_cold", "F", T_wanted=wanted, T_cold=cold),
        step(
            "What the hottest place sees then",
            "T = T_hot + T_wanted - T_cold",
            "F",
            T_hot=hot,
            T_wanted=wanted,
            T_cold=cold,
        ),
    )


def _table(asked: Inputs, add: float) -> Table:
    rows = tuple(
        (
            one.place,
            f_and_c(one.temperature_degC),
            f"{(one.temperature_degC - asked.setting_degC) * 1.8:+.0f} F",
            f_and_c(one.temperature_degC + add),
        )
        for one in sorted(asked.readings, key=lambda one: one.temperature_degC)
    )
    return Table(
        "Place by place, coldest first",
        ("Place", "Read", "Against the setting", "With the new setting"),
        rows,
    )


def _chart(asked: Inputs, spread: float) -> Chart:
    ordered = sorted(asked.readings, key=lambda one: one.temperature_degC)
    if len(ordered) > MOST_BARS:
        ordered = ordered[: MOST_BARS // 2] + ordered[-MOST_BARS // 2 :]
    setting = asked.setting_degC * 1.8 + 32

    def tone(place: Place) -> str:
        off = abs(place.temperature_degC - asked.setting_degC)
        return "good" if off <= asked.even_dC / 2 + 1e-6 else "near" if off <= asked.even_dC + 1e-6 else "bad"

    bars = []
    for place in ordered:
        temperature = place.temperature_degC * 1.8 + 32
        bars.append(
            Bar(
                place.place,
                min(temperature, setting),
                max(temperature, setting),
                tone(place),  # type: ignore[arg-type]
                f"{whole(temperature)} F, {temperature - setting:+.0f} F",
            )
        )
    return Chart(
        title="Each place against the setting",
        says=f"Each bar runs from the setting to what the place had. The whole spread is {shop_number(spread * 1.8)} F.",
        x=Axis("F"),
        y=Axis("Place"),
        bars=tuple(bars),
        marks=(Mark("setting", setting),),
    )


CALCULATOR = Calculator(
    title="Oven survey",
    question="Where is my oven hot and cold, and what setting serves its coldest corner?",
    inputs=Inputs,
    solve=solve,
    answers=(
        Out(
            key="verdict",
            label="The oven",
            meaning="Uneven: hang heavy parts in the hot places, light ones in the cold. Too uneven: mend it first.",
            main=True,
            options={
                "even": "even, by your own limit",
                "uneven": "uneven: up to twice your limit",
                "too-uneven": "too uneven: over twice your limit",
            },
        ),
        Out(
            key="spread",
            label="Spread",
            meaning="Hottest place less coldest. Write it down with the date: it tells when the oven changes.",
            unit="dC",
            shown=("dF", "dC"),
            digits=0,
            beside=True,
        ),
        Out(
            key="coldest",
            label="Coldest",
            meaning="The place that rules the cure. Hang the probe or the test panel there.",
            unit="degC",
            shown=("degF", "degC"),
            digits=0,
            beside=True,
        ),
        Out(
            key="hottest",
            label="Hottest",
            meaning="The place that rules over-bake. Keep thin parts and light colours out of it.",
            unit="degC",
            shown=("degF", "degC"),
            digits=0,
            beside=True,
        ),
        Out(
            key="mean",
            label="Mean",
            meaning="If it is far from the setting, the controller's own probe hangs in an odd place or reads wrong.",
            unit="degC",
            shown=("degF", "degC"),
            digits=0,
        ),
        Out(
            key="add",
            label="Add to the setting",
            meaning="Then the coldest place gets what you want. Look at the hottest place before you do it.",
            unit="dC",
            shown=("dF", "dC"),
            digits=0,
        ),
        Out(
            key="new-setting",
            label="Setting for that",
            meaning="Never over what the oven is built and listed for: its plate says.",
            unit="degC",
            shown=("degF", "degC"),
            digits=0,
        ),
        Out(
            key="hottest-then",
            label="Hottest place then",
            meaning="Hold it against the sheet's hottest point and the limits of the metal.",
            unit="degC",
            shown=("degF", "degC"),
            digits=0,
        ),
    ),
    sources=("common-practice",),
    version=1,
    reviewed="2026-11-25",
    keywords=(
        "uniformity",
        "cold spot",
        "hot spot",
        "cold corner",
        "temperature survey",
        "oven map",
        "thermocouple",
        "data logger",
        "oven thermometer",
    ),
    limits=(
        "It holds for the survey's load, fan and setting. Add at most 100 F to or from it; survey again after any repair.",
        "The limits of even and too uneven are yours: 20 F and twice that are habits of the trade, with no source.",
        "Thermometers differ among themselves. Hang them all in one place first, and take off what each is out.",
        "It says nothing of how long parts take to heat: that is the cure plan's and the bake log's work.",
    ),
    standing=(
        Caution(
            "note",
            "Hang probes and thermometers in the cold oven, with leads through the port or the closed door. Nobody goes into a "
            "hot oven, and a door that is opened spoils the reading. Exhaust, purge and interlocks stay as they are.",
        ),
    ),
)
