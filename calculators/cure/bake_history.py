"""What have the bakes done to this aluminium? Minutes against a table of reheating limits, and where there is no table."""

from __future__ import annotations

from calculators.cure._bake_history_inputs import Inputs
from calculators.kit.calculator import Calculator, Out
from calculators.kit.chart import Axis, Band, Bar, Chart
from calculators.kit.numbers import shop_number, whole
from calculators.kit.result import Caution, Clash, Result, Value
from calculators.kit.steps import Step, step
from calculators.physics.reheating import reheating_limit_min, reheating_used
from calculators.tables import table

# Our own choice: a fifth of the limit left is less than one usual bake is worth.
NEAR = 0.8
MOST_BARS = 12
FROM_MEMORY = (
    "The table behind this is from memory and unconfirmed: it was looked for twice and not found. Take it as a reason to stop, "
    "never as leave to go on."
)


def lower_limits() -> list[tuple[float, float]]:
    """The table's lower limits: metal in C, minutes."""
    return [
        ((row["temperature_degF"] - 32) / 1.8, float(row["limit_min"])) for row in table("reheating").values()
    ]


def solve(asked: Inputs) -> Result:
    if (asked.next_temperature_degC is None) != (asked.next_time_min is None):
        missing = "next-temperature" if asked.next_temperature_degC is None else "next-time"
        label = "metal temperature" if missing == "next-temperature" else "time"
        raise Clash((missing, f"Enter the next bake, {label}, or leave both empty"))
    if asked.alloy != "6061-t6":
        return _no_table(asked)
    limits = lower_limits()
    bakes = [(bake.temperature_degC, bake.time_min) for bake in asked.bakes]
    coming = (
        [(asked.next_temperature_degC, asked.next_time_min)]
        if asked.next_temperature_degC is not None and asked.next_time_min is not None
        else []
    )
    used, after = reheating_used(limits, bakes), reheating_used(limits, [*bakes, *coming])
    verdict = _verdict(asked, used, after)
    return Result(
        answers={
            "verdict": verdict,
            "used": _share(used, asked.history),
            "used-after-next": _share(after, asked.history)
            if coming
            else Value(words="no next bake entered"),
            "why": _why(asked, used, after, bool(coming)),
        },
        cautions=_cautions(asked, verdict),
        steps=_steps(limits, [*bakes, *coming]),
        charts=_charts(limits, bakes, coming),
        headline=_headline(verdict, after if coming else used, bool(coming)),
    )


def _verdict(asked: Inputs, used: float | None, after: float | None) -> str:
    if asked.history == "some-unknown" or used is None or after is None or after >= 1 - 1e-12:
        return "over"
    return "near" if after >= NEAR - 1e-12 else "inside-this-table"


def _share(used: float | None, history: str) -> Value:
    if used is None:
        return Value(words="over: a bake was hotter than the table")
    if history == "some-unknown":
        return Value(used, words=f"{shop_number(used, 2)} by the listed bakes, and more that nobody knows")
    return Value(used)


def _headline(verdict: str, used: float | None, coming: bool) -> str:
    when = "with the next bake" if coming else "so far"
    made = "" if used is None else f": {shop_number(used, 2)} of the lower limit used {when}"
    return {
        "inside-this-table": f"Inside this unconfirmed table{made}",
        "near": f"Near the end of this unconfirmed table{made}",
        "over": f"Counts as over{made if used is not None and used >= 1 else ''}: do not bake it on this table's word",
    }[verdict]


def _no_table(asked: Inputs) -> Result:
    none = Value(words="no table: do not assume")
    return Result(
        answers={
            "verdict": "unknown",
            "used": none,
            "used-after-next": none,
            "why": [
                "There is no table here for this alloy or temper: do not assume. An unknown alloy counts as over",
                "In the one study known to us, other alloys of the same family fell under their minimum after 2 h at 390 F "
                "(199 C), or 30 min at 425 F (218 C) (seen: abstract)",
            ],
        },
        cautions=_cautions(asked, "unknown"),
        headline="No table: do not assume. Treat it as over",
    )


def _why(asked: Inputs, used: float | None, after: float | None, coming: bool) -> list[str]:
    why = ["Table from memory, unconfirmed: 6061-T6, a loss of about 5 % at most, all heatings added up"]
    if asked.history == "some-unknown":
        why.append("Bakes that nobody has a record of count as over")
    if used is None or after is None:
        why.append("A bake over 450 F (232 C) is hotter than the table: it counts as over")
    elif coming and used < 1 <= after:
        why.append("The next bake takes it over")
    if any(bake.temperature_degC < lower_limits()[0][0] - 1e-9 for bake in asked.bakes):
        why.append("Bakes cooler than 350 F (177 C) are counted as if at 350 F: the table has nothing below")
    why.append(
        "One study saw 6061-T6 stay over its minimum yield strength far longer (64 h at 350 F); it used another measure and says "
        "nothing of fatigue (seen: abstract)"
    )
    return why


def _cautions(asked: Inputs, verdict: str) -> tuple[Caution, ...]:
    cautions = [Caution("caution", FROM_MEMORY, "", "reheating-table")]
    if not asked.bakes and asked.alloy == "6061-t6" and asked.history == "all-listed":
        cautions.append(
            Caution(
                "caution",
                "No bake is listed. That is right only for a part that has had none in its life. Where nobody knows, say so "
                "under Bakes before these: it then counts as over.",
                "bakes",
            )
        )
    if verdict in ("over", "unknown"):
        cautions.append(
            Caution(
                "stop",
                "Do not bake it as it is if anyone's safety hangs on its strength. Ask the part's maker in writing, or refuse "
                "it.",
                "alloy" if verdict == "unknown" else "bakes",
            )
        )
    return tuple(cautions)


def _steps(limits: list[tuple[float, float]], bakes: list[tuple[float, float]]) -> tuple[Step, ...]:
    steps, total = [], 0.0
    for place, (metal, minutes) in enumerate(bakes, 1):
        limit = reheating_limit_min(limits, metal)
        if limit is None:
            continue
        total += minutes / limit
        if place <= MOST_BARS:
            steps.append(
                step(
                    f"Bake {place}, {whole(metal * 1.8 + 32)} F: minutes over the lower limit there",
                    "share = t / limit",
                    "",
                    t=minutes,
                    limit=limit,
                )
            )
    steps.append(step("Used up, all bakes together, in percent", "used = total * 100", "%", total=total))
    return tuple(steps)


def _charts(
    limits: list[tuple[float, float]], bakes: list[tuple[float, float]], coming: list[tuple[float, float]]
) -> tuple[Chart, ...]:
    bars, total = [], 0.0
    shown = [*bakes, *coming]
    for place, (metal, minutes) in enumerate(shown, 1):
        limit = reheating_limit_min(limits, metal)
        if limit is None:
            return ()
        before, total = total, total + minutes / limit
        name = "Next bake" if place > len(bakes) else f"Bake {place}"
        bars.append(
            Bar(
                f"{name}: {whole(metal * 1.8 + 32)} F, {shop_number(minutes)} min",
                before,
                total,
                "bad" if total >= 1 else "near" if total >= NEAR else "good",
                f"to {shop_number(total, 2)}",
            )
        )
    if not bars:
        return ()
    return (
        Chart(
            title="How each bake adds up",
            says="Each bar starts where the one before ended. At 1 the lower limit of the table is used up.",
            x=Axis("share of the lower limit", 0, max(1.2, total * 1.05)),
            y=Axis("Bake"),
            bars=tuple(bars[-MOST_BARS:]),
            bands=(Band("near", NEAR, 1.0, "near", "x"), Band("over", 1.0, None, "bad", "x")),
        ),
    )


def _answers_declared() -> tuple[Out, ...]:
    return (
        Out(
            key="used",
            label="Used of the lower limit",
            meaning="1 is used up. It is a screen for hardened 6061 only, and no measure of what strength is left.",
            main=True,
            digits=2,
        ),
        Out(
            key="verdict",
            label="On this table",
            meaning="Over and unknown mean: do not bake a part whose strength matters. Inside is not a promise.",
            options={
                "inside-this-table": "inside this table, which is unconfirmed",
                "near": "near its end: under a fifth of the limit is left",
                "over": "counts as over",
                "unknown": "no table: do not assume, treat as over",
            },
            beside=True,
        ),
        Out(
            key="used-after-next",
            label="Used after the next bake",
            meaning="If this comes to 1 or more, choose a powder that cures cooler, or do not bake.",
            digits=2,
            beside=True,
        ),
        Out(
            key="why",
            label="Why",
            meaning="What the verdict rests on. Show it to whoever decides on the part.",
        ),
    )


CALCULATOR = Calculator(
    title="Bake history",
    question="What have the bakes done to this aluminium?",
    inputs=Inputs,
    solve=solve,
    answers=_answers_declared(),
    sources=(
        "reheating-table",
        "hot-aluminium-2015",
        "used-wheels-bulletin",
        "us-49cfr-180-205",
        "common-practice",
    ),
    version=1,
    reviewed="2026-11-25",
    keywords=(
        "aluminum wheels",
        "rims",
        "heat treatment",
        "temper",
        "T6",
        "6061",
        "overaging",
        "weaken",
        "bike frame",
    ),
    limits=(
        "It never says that a wheel, a frame or any part that carries load is safe. The maker's own limit rules, and where the "
        "maker says no bake, there is none.",
        "The table is for static strength of 6061-T6. It says nothing of castings, other tempers, welds, fatigue or cracks.",
        "Temperature is the metal's. If you have only the oven's setting, enter that, and count the warm-up as hot.",
        "Blasting, repair, welding and stripping ovens harm aluminium in ways that no bake count shows.",
    ),
    standing=(
        Caution(
            "caution",
            "No wheel, brake, steering, suspension, lifting or aircraft part is cleared by this page: its maker decides. An "
            "aluminium gas cylinder whose metal has been over 350 F (177 C) is condemned under US rules. Never bake one.",
            "",
            "us-49cfr-180-205",
        ),
    ),
    default_cautions=(("caution", ""), ("caution", "")),
)
