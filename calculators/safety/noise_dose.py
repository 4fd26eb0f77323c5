"""How long may I blast at this level? A day's noise against what the law and what the safer advice allow."""

from __future__ import annotations

from collections.abc import Iterator
from math import floor

from calculators.kit.calculator import Calculator, Out
from calculators.kit.chart import Axis, Bar, Chart, Mark
from calculators.kit.numbers import shop_number, whole
from calculators.kit.result import Caution, Clash, Result, Table, Value
from calculators.kit.steps import Step, step
from calculators.physics.sound import allowed_min, average_dBA, derated_dB, dose_percent
from calculators.safety._noise_inputs import Inputs
from calculators.tables import table

RULES = table("noise_limits")
LAW = (float(RULES["law"]["criterion_dBA"]), float(RULES["law"]["exchange_dB"]))
ADVICE = (float(RULES["advice"]["criterion_dBA"]), float(RULES["advice"]["exchange_dB"]))
TABLE_TOP_DBA = 115.0
COUNTED_FROM_DBA = 80.0  # the hearing programme's sum counts from here; Table G-16 itself starts at 90
PROGRAMME_PERCENT = 50.0
DAY_MIN = 24 * 60.0


def solve(asked: Inputs) -> Result:
    day = [(row.level_dBA, row.minutes_min) for row in asked.level]
    total = sum(minutes for _, minutes in day)
    if total > DAY_MIN + 1e-6:
        raise Clash(("level", f"The times add up to {whole(total)} min, and a day has 1,440"))
    if asked.both == "yes" and asked.protector_ratio == 0:
        raise Clash(
            ("protector", "Noise reduction rating must be that of the better one where both are worn")
        )
    off = derated_dB(asked.protector_ratio, asked.both == "yes")
    under = [(level - off, minutes) for level, minutes in day]
    dose, strict = (dose_percent(day, *rule, COUNTED_FROM_DBA) for rule in (LAW, ADVICE))
    dose_under, strict_under = (dose_percent(under, *rule, COUNTED_FROM_DBA) for rule in (LAW, ADVICE))
    loudest = max(level for level, _ in day)
    return Result(
        answers={
            "dose": dose,
            "allowed": _time(allowed_min(loudest, *LAW), loudest > TABLE_TOP_DBA),
            "allowed-strict": _time(allowed_min(loudest, *ADVICE)),
            "with-protector": dose_under,
            "strict-dose": strict,
            "strict-with-protector": strict_under,
            "average": average_dBA(dose, *LAW) if dose > 0 else Value(words="under 80 dBA all day"),
            "level-under": loudest - off,
            "taken-off": Value(off, words=f"{shop_number(off)} dB"),
        },
        cautions=tuple(_cautions(asked, loudest, dose, dose_under, strict_under, off)),
        steps=_steps(asked, day, off, dose, loudest),
        tables=(_table(day, off),),
        charts=(_chart(dose, strict, dose_under, strict_under),),
        headline=_headline(loudest, dose, dose_under, off),
    )


def _headline(loudest: float, dose: float, dose_under: float, off: float) -> str:
    if loudest > TABLE_TOP_DBA:
        with_it = f", {whole(dose_under)} % with the protector" if off else ""
        return f"{shop_number(loudest, 4)} dBA: not a minute bare-eared. The sum is {whole(dose)} % of a day's noise{with_it}"
    if dose > 100 and not off:
        return f"{whole(dose)} % of a day's noise, and no protector is counted: too much"
    bare = f"{whole(dose)} % of a day's noise without protection"
    if dose > 100 and dose_under > 100:
        return f"{bare}, {whole(dose_under)} % with it: too much"
    return f"{bare}, {whole(dose_under)} % with it" if dose > 100 else bare


def _minutes_words(minutes: float) -> str:
    """Rounded down, so that nobody stays too long; seconds where a minute is too coarse."""
    if minutes >= DAY_MIN:
        return "all day"
    if minutes < 2:
        return f"{floor(minutes * 60 + 1e-6):,} s"
    return f"{floor(minutes + 1e-6):,} min"


def _time(minutes: float, none: bool = False) -> Value:
    words = "none without protection: over 115 dBA" if none else _minutes_words(minutes)
    return Value(0.0 if none else minutes, words=words)


def _table(day: list[tuple[float, float]], off: float) -> Table:
    rows = []
    for level, minutes in day:
        none = level > TABLE_TOP_DBA
        rows.append(
            (
                f"{shop_number(level, 4)} dBA",
                f"{shop_number(minutes, 4)} min",
                "none" if none else _minutes_words(allowed_min(level, *LAW)),
                _minutes_words(allowed_min(level, *ADVICE)),
                f"{shop_number(level - off, 4)} dBA",
            )
        )
    return Table(
        "Level by level",
        ("Level", "Time at it", "Law allows", "Safer advice allows", "Under the protector"),
        tuple(rows),
    )


def _steps(
    asked: Inputs, day: list[tuple[float, float]], off: float, dose: float, loudest: float
) -> tuple[Step, ...]:
    steps = []
    for level, minutes in day[:20]:
        if level < COUNTED_FROM_DBA:
            continue
        steps.append(
            step(
                f"Share of the day's noise from {shop_number(minutes, 4)} min at {shop_number(level, 4)} dBA, by the law",
                "share = 100 * C / (480 / 2 ** ((L - Lc) / q))",
                "%",
                C=minutes,
                L=level,
                Lc=LAW[0],
                q=LAW[1],
            )
        )
    steps.append(
        step(
            "Allowed at the loudest level by the 3 dB advice",
            "T = 480 / 2 ** ((L - Lc) / q)",
            "min",
            L=loudest,
            Lc=ADVICE[0],
            q=ADVICE[1],
        )
    )
    steps.append(
        step(
            "Taken off by the protector",
            "A = max((NRR - 7) / 2, 0) + both",
            "dB",
            NRR=asked.protector_ratio,
            both=5 if asked.both == "yes" else 0,
        )
    )
    steps.append(step("Under the protector at the loudest", "Lu = L - A", "dBA", L=loudest, A=off))
    if dose > 0:
        steps.append(
            step(
                "Steady level with the same dose in 8 h",
                "Lm = Lc + q * ln(D / 100) / ln(2)",
                "dBA",
                Lc=LAW[0],
                q=LAW[1],
                D=dose,
            )
        )
    return tuple(steps)


def _cautions(
    asked: Inputs, loudest: float, dose: float, dose_under: float, strict_under: float, off: float
) -> Iterator[Caution]:
    if loudest > TABLE_TOP_DBA:
        yield Caution(
            "stop",
            f"{shop_number(loudest, 4)} dBA is over 115 dBA, where the law's table ends: no time without protection is allowed. "
            "Do not work there bare-eared, not for a minute. Cut the noise, stand off, and wear plugs and muffs.",
            "level",
            "osha-1910-95",
        )
    if off and loudest - off > TABLE_TOP_DBA:
        yield Caution(
            "stop",
            f"Under the protector it is still {shop_number(loudest - off, 4)} dBA, over 115. Do not work there. Cut the noise or "
            "stand off.",
            "protector",
            "osha-1910-95",
        )
    if dose_under > 100:
        comes = "Even with this protector the day" if off else "No protector is counted, and the day"
        yield Caution(
            "stop",
            f"{comes} comes to {whole(dose_under)} % of what the law allows. Do not work this day as "
            "entered. Shorten the loud jobs, quieten them, or wear plugs and muffs together.",
            "protector",
            "osha-1910-95",
        )
    elif dose > 100:
        yield Caution(
            "caution",
            f"Bare-eared this day is {whole(dose)} % of what the law allows. The noise itself must be cut as far as it can be; "
            "until then the protector must be worn for all of it.",
            "protector",
            "osha-1910-95",
        )
    if dose >= PROGRAMME_PERCENT:
        yield Caution(
            "caution",
            "A dose of 50 % or more, counted as if nothing were worn, starts the hearing programme: hearing tests, training, "
            "protectors to choose from.",
            "level",
            "osha-1910-95",
        )
    if strict_under > 100 >= dose_under:
        worn = " even with the protector" if off else ""
        # a dose within the table says nothing where the table has ended
        dose_of = "under the protector" if off else "of bare ears"
        within = f"The dose {dose_of} is within the law's table, and the ear"
        ear = "The ear" if loudest > TABLE_TOP_DBA else within
        yield Caution(
            "caution",
            f"By the stricter 3 dB advice the day is {whole(strict_under)} %{worn}. {ear} is not safe: "
            "wear plugs and muffs together or shorten the loud jobs.",
            "protector",
            "niosh-noise",
        )
    if 0 < asked.protector_ratio <= 7 and asked.both == "no":
        yield Caution(
            "caution",
            "With a rating of 7 or less nothing is left after the 7 dB that come off for a level in dBA.",
            "protector",
            "osha-1910-95-b",
        )


def _chart(dose: float, strict: float, dose_under: float, strict_under: float) -> Chart:
    bars = (
        ("Law, bare ears", dose),
        ("Law, with protector", dose_under),
        ("Advice, bare ears", strict),
        ("Advice, with protector", strict_under),
    )
    top = 300.0

    def tone(value: float) -> str:
        return "good" if value < 50 else "near" if value <= 100 else "bad"

    return Chart(
        title="A day's noise against what is allowed",
        says=f"100 % is all that is allowed in a day: {whole(dose)} % with bare ears by the law and {whole(strict)} % by the "
        f"3 dB advice; with the protector {whole(dose_under)} % and {whole(strict_under)} %. Bars are cut off at 300 %.",
        x=Axis("% of a day's noise", 0, top),
        y=Axis("", names=tuple(name for name, _ in bars)),
        bars=tuple(
            Bar(name, 0, min(value, top), tone(value), f"{whole(value)} %")  # type: ignore[arg-type]
            for name, value in bars
        ),
        marks=(Mark("all that is allowed", x=100.0),),
    )


CALCULATOR = Calculator(
    title="Noise dose",
    question="How long may I blast at this noise level?",
    inputs=Inputs,
    solve=solve,
    answers=(
        Out(
            key="dose",
            label="Noise of the day, bare ears",
            meaning="Percent of what US law allows. 50 or more starts a hearing programme, over 100 is too much.",
            main=True,
            unit="percent",
            digits=3,
        ),
        Out(
            key="with-protector",
            label="With the protector",
            meaning="The same under the protector, at the half of its rating that people really get. Keep it well under 100.",
            unit="percent",
            digits=3,
            beside=True,
        ),
        Out(
            key="allowed",
            label="Law allows at the loudest level",
            meaning="Time in a day with bare ears if there were no other noise, 5 dB halving it.",
            unit="min",
            beside=True,
        ),
        Out(
            key="allowed-strict",
            label="Safer advice allows there",
            meaning="NIOSH: 85 dBA for 8 h, 3 dB halving the time, as in Europe. Plan by this one if you value your ears.",
            unit="min",
            beside=True,
        ),
        Out(
            key="strict-dose",
            label="Noise of the day by the advice",
            meaning="Percent by the 3 dB rule, bare ears. It is the one that hearing loss follows.",
            unit="percent",
            digits=3,
        ),
        Out(
            key="strict-with-protector",
            label="By the advice, with the protector",
            meaning="Over 100 means that the ear is not safe, even where the percent by the law is under 100.",
            unit="percent",
            digits=3,
        ),
        Out(
            key="average",
            label="Same dose as a steady",
            meaning="The 8 h mean by the law's sum. From 85 dBA a hearing programme is due.",
            unit="dBA",
        ),
        Out(
            key="level-under",
            label="Loudest, under the protector",
            meaning="What reaches the ear if it is worn well. Under about 70 it cuts off calls and alarms.",
            unit="dBA",
        ),
        Out(
            key="taken-off",
            label="Taken off by the protector",
            meaning="Half of the rating less 7, and 5 more for muffs over plugs. Not the number on the packet.",
        ),
    ),
    sources=("osha-1910-95", "osha-1910-95-b", "niosh-noise", "eu-noise"),
    version=1,
    reviewed="2026-11-25",
    keywords=("decibels", "dBA", "ear plugs", "ear muffs", "NRR", "hearing", "loud", "blasting noise"),
    limits=(
        "It is worth no more than the levels. Measure at the ear with a meter or a dosimeter; a phone can be 5 dB out.",
        "Under a blast helmet the air and the abrasive make their own noise: measure inside it, or take the level outside.",
        "It counts steady noise. A bang over 140 dB peak harms at once, whatever the sum.",
        "A protector that is off for a tenth of the shift loses most of its worth; the sum takes it as worn all the time.",
    ),
    standing=(
        Caution(
            "note",
            "US: 29 CFR 1910.95; in Europe Directive 2003/10/EC with ISO 9612. The rule's text, local codes and a qualified "
            "person decide.",
            "",
            "osha-1910-95",
        ),
    ),
    default_cautions=(("caution", "protector"), ("caution", "protector"), ("caution", "level")),
)
