"""Is this respirator enough for this dust? Each dust over its limit, added up, against the factor that the respirator has."""

from __future__ import annotations

from calculators.kit.calculator import Calculator, Out, Vary
from calculators.kit.chart import Axis, Bar, Chart, Mark
from calculators.kit.numbers import shop_number
from calculators.kit.result import Caution, Given, Result, Table, Value
from calculators.kit.steps import Step, step
from calculators.safety._respirator_inputs import BLASTING, RESPIRATORS, TIGHT, Inputs
from calculators.safety._respirator_sums import SAME_DUST, Class, Finding, classes, finding, shift_share
from calculators.safety._respirator_words import air_quality, cautions, filter_of, programme

NOT_FOR_THIS = "not for this task"


def solve(asked: Inputs) -> Result:
    found = finding(asked)
    return Result(
        answers=_answers(asked, found),
        cautions=tuple(cautions(asked, found)),
        steps=_steps(asked, found),
        tables=(_dusts(found), _classes(asked, found)),
        charts=() if found.wrong_type else (_chart(found),),
        headline=_headline(found),
    )


def _headline(found: Finding) -> str:
    factor = shop_number(found.factor)
    if found.verdict == "wrong-type":
        return "Wrong type: this work needs an air-line respirator approved for blasting"
    if found.verdict == "measure-first":
        return "Measure first: no respirator can be passed for air that nobody has measured"
    if found.verdict == "not-enough" and found.in_danger:
        return "Not enough: this air is over the level of immediate danger"
    if found.verdict == "not-enough":
        return f"Not enough: it counts for {factor}, the air needs {found.needs}"
    return f"Enough on paper: it counts for {factor}, the air needs {found.needs}"


def _answers(asked: Inputs, found: Finding) -> dict[str, Given]:
    needed: Given = Value(found.needed, words=found.needs)
    if found.needed is None:
        least = f", {found.needs} from what was" if found.added else ""
        needed = Value(words=f"not known: not all is measured{least}")
    return {
        "verdict": found.verdict,
        "most-it-may-be-used-in": Value(words=NOT_FOR_THIS)
        if found.wrong_type
        else found.ruling.most_mg_m3(found.factor),
        "assigned-factor": found.factor,
        "needed-factor": needed,
        "ruling-dust": found.ruling.name,
        "next-class": _next(asked, found),
        "filter": filter_of(asked, found),
        "air-quality": air_quality(asked),
        "programme": programme(asked),
    }


def _class_words(one: Class) -> str:
    proof = ", with the maker's proof" if one.proven else ""
    return f"{RESPIRATORS[one.slug]['name']}{proof}"


def _next(asked: Inputs, found: Finding) -> tuple[str, ...]:
    """The weakest classes that the task allows and that count for more than this one and for all that is measured."""
    better = [one for one in classes(asked, found) if one.factor > found.factor or found.wrong_type]
    if asked.fit == "none" and asked.respirator in TIGHT:
        better = [one for one in better if one.slug not in TIGHT]
    enough = [one for one in better if one.factor >= found.added * (1 - 1e-9)]
    if found.in_danger:
        return ("No class: change the work so that the air falls under the level of danger.",)
    highest = not better and found.factor >= found.added * (1 - 1e-9)
    if not enough and not highest:
        return ("No class that this task allows: cut the dust, by enclosure, wetting or exhaust.",)
    if found.unmeasured:
        return ("Not known until every dust is measured.",)
    if highest:
        return ("None higher that this task allows.",)
    factor = enough[0].factor
    approved = ", blasting on its label" if asked.task in BLASTING else ""
    return tuple(
        f"{_class_words(one)}{approved}: counts for {shop_number(one.factor)}, up to {shop_number(one.most_mg_m3)} mg/m3 of "
        f"{found.ruling.said}"
        for one in enough
        if one.factor == factor
    )


def _dusts(found: Finding) -> Table:
    rows = []
    for one in found.dusts:
        measured = one.measured_mg_m3
        rows.append(
            (
                one.name,
                "not measured" if measured is None else f"{shop_number(measured)} mg/m3",
                f"{shop_number(one.limit_mg_m3)} mg/m3",
                "" if measured is None else shop_number(one.times),
                NOT_FOR_THIS if found.wrong_type else f"{shop_number(one.most_mg_m3(found.factor))} mg/m3",
            )
        )
    return Table(
        "Dust by dust",
        ("Dust", "Measured", "Limit this shift", "Times the limit", "This respirator: up to, alone"),
        tuple(rows),
    )


def _classes(asked: Inputs, found: Finding) -> Table:
    rows = tuple(
        (
            _class_words(one),
            shop_number(one.factor),
            f"{shop_number(one.most_mg_m3)} mg/m3",
            "not known"
            if found.needed is None
            else "yes"
            if one.factor >= found.needed * (1 - 1e-9) and not found.in_danger
            else "no",
        )
        for one in classes(asked, found)
    )
    return Table(
        f"Classes that this task allows, by the {found.ruling.said} they may be used in",
        ("Class", "Factor", "Up to, of this dust alone", "Enough here"),
        rows,
    )


def _steps(asked: Inputs, found: Finding) -> tuple[Step, ...]:
    ruling = found.ruling
    steps = []
    if asked.hours_h > 8:
        steps.append(
            step(
                "Limit of the ruling dust on this shift",
                "L = L8 * 8 / hours",
                "mg/m3",
                L8=ruling.limit_mg_m3 / shift_share(asked.hours_h),
                hours=asked.hours_h,
            )
        )
    steps += [
        step(
            f"{one.name}, times its limit", "times = C / L", "", C=one.measured_mg_m3, L=one.limit_mg_m3
        )
        for one in found.dusts
        if one.measured_mg_m3 is not None
    ]  # fmt: skip
    counted = [one for one in found.dusts if one.measured_mg_m3 is not None]
    nuisance = [one.times for one in counted if one.slug in SAME_DUST]
    times = [one.times for one in counted if one.slug not in SAME_DUST]
    times += [max(nuisance)] if nuisance else []
    if len(times) > 1:
        names = {f"t{place}": value for place, value in enumerate(times, 1)}
        steps.append(step("Factor needed, all added up", f"need = {' + '.join(names)}", "", **names))
    if found.wrong_type:
        return tuple(steps)
    steps.append(
        step(
            f"Most {ruling.said} that it may be used in, if there were no other dust",
            "most = min(APF * L, danger)" if ruling.danger_mg_m3 < float("inf") else "most = APF * L",
            "mg/m3",
            APF=found.factor,
            L=ruling.limit_mg_m3,
            **({"danger": ruling.danger_mg_m3} if ruling.danger_mg_m3 < float("inf") else {}),
        )
    )
    return tuple(steps)


def _chart(found: Finding) -> Chart:
    shown = [one for one in found.dusts if one.measured_mg_m3 is not None]
    top = 2.0
    bars = [
        Bar(
            one.name.split(",")[0].split(" (")[0],
            0,
            min(one.times / found.factor, top),
            "good" if one.times <= found.factor else "bad",
            f"{shop_number(one.times)} times its limit",
        )
        for one in shown
    ]
    if len(shown) > 1:
        share = found.added / found.factor
        bars.append(
            Bar(
                "All added up",
                0,
                min(share, top),
                "good" if share <= 1 else "bad",
                f"needs {shop_number(found.added)}",
            )
        )
    bars += [
        Bar(one.name.split(",")[0].split(" (")[0], 0, 0, "plain", "not measured") for one in found.unmeasured
    ]
    return Chart(
        title="The air against this respirator",
        says=f"At 1 the respirator is used up: it counts for {shop_number(found.factor)} times a limit. Bars are cut off at 2. "
        "A dust that was not measured has no bar, and passes nothing.",
        x=Axis("share of what this respirator counts for", 0, top),
        y=Axis("", names=tuple(bar.name for bar in bars)),
        bars=tuple(bars),
        marks=(Mark("used up", x=1.0),),
    )


CALCULATOR = Calculator(
    title="Respirator check",
    question="Is this respirator enough for this dust?",
    inputs=Inputs,
    solve=solve,
    answers=(
        Out(
            key="verdict",
            label="This respirator",
            meaning="Less dust first, then a better class. Enough holds on paper only: air as measured, wearer fit-tested.",
            main=True,
            options={
                "enough": "enough on paper",
                "not-enough": "not enough",
                "measure-first": "measure first",
                "wrong-type": "wrong type for this task",
            },
        ),
        Out(
            key="needed-factor",
            label="Factor the air needs",
            meaning="Concentration over limit, all dusts added up. Less dust brings it down faster than a better mask.",
            unit="ratio",
            shown=("ratio",),
            beside=True,
        ),
        Out(
            key="assigned-factor",
            label="Factor it counts for",
            meaning="From the law's table, for this wearer: how many times cleaner the air inside may be taken to be.",
            unit="ratio",
            shown=("ratio",),
            digits=5,
            beside=True,
        ),
        Out(
            key="most-it-may-be-used-in",
            label="May be used in up to",
            meaning="Of the ruling dust, if there were no other: factor times limit, never over the level of danger.",
            unit="mg_m3",
            beside=True,
        ),
        Out(
            key="ruling-dust",
            label="Ruling dust",
            meaning="The one most over its limit. Work on this one first.",
        ),
        Out(
            key="next-class",
            label="Next class up that would do",
            meaning="Shown for comparison. Cut the dust first: the law puts enclosure and exhaust before any respirator.",
        ),
        Out(
            key="filter",
            label="Filter to ask for",
            meaning="Buy by this word. A filter stops dust, not solvent vapour and not a lack of oxygen.",
        ),
        Out(
            key="air-quality",
            label="Air for the air line",
            meaning="All of it before the hood goes on. A compressor that overheats can fill a hood with carbon monoxide.",
        ),
        Out(
            key="programme",
            label="What makes the factor count",
            meaning="Without these the factor is a number in a table.",
        ),
    ),
    sources=(
        "osha-1910-134",
        "osha-1910-94",
        "osha-1910-1000",
        "osha-1910-1053",
        "osha-1910-1025",
        "osha-1910-1026",
        "osha-1910-1027",
        "osha-1910-1024",
        "osha-1926-62",
        "acgih-tlv",
        "niosh-idlh",
        "niosh-42cfr84",
        "tgic-nicnas",
        "en-respirators",
    ),
    version=1,
    reviewed="2026-11-25",
    keywords=(
        "respirator",
        "N95",
        "P100",
        "dust mask",
        "blast hood",
        "supplied air",
        "type CE",
        "APF",
        "protection factor",
        "silica",
        "lead paint",
        "grade D",
    ),
    limits=(
        "It is worth no more than the sampling: taken at the face, over the whole shift, of the worst job.",
        "It knows dusts. Solvents, strippers, gases and a lack of oxygen need other respirators and other advice.",
        "Limits of immediate danger for silica, chromate and iron oxide, and all advisory limits, are from memory.",
        "Assigned factors are US law's. Other countries give other factors to the same respirator.",
        "A hygienist or the agency's free consultation can sample and choose with you; this page cannot stand in for them.",
    ),
    vary=Vary(
        "respirator",
        (
            "half-air-purifying",
            "full-air-purifying",
            "hood-powered",
            "hood-supplied-continuous",
            "half-supplied-pressure",
            "full-supplied-pressure",
        ),
        ("verdict", "assigned-factor", "most-it-may-be-used-in"),
    ),
    standing=(
        Caution(
            "note",
            "US: 29 CFR 1910.134 and the rule of each dust; in Europe EN 529 for choosing, EN 149, EN 143, EN 12941, "
            "EN 12942 and EN 14594 for the devices. The rule's text, local codes and a qualified person decide.",
            "",
            "osha-1910-134",
        ),
    ),
    default_cautions=(("stop", "respirator"), ("caution", "proof-1000")),
)
