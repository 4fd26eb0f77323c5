"""Does this part need blasting? Asks, looks the answers up in the rule table, and says which rules decided."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache
from itertools import product

from calculators.kit.calculator import Calculator, Out, Vary
from calculators.kit.fields import Choice
from calculators.kit.messages import any_of, lower_first
from calculators.kit.result import Caution, Result, Value
from calculators.kit.rules import Rule, RuleTable, Ruling
from calculators.kit.sources import source
from calculators.kit.steps import Step, step
from calculators.prepare._blast_carries import carries
from calculators.prepare._blast_questions import ASKED, DATA, Inputs

RULES = RuleTable.from_data(DATA)
MM_PER_IN = 25.4
MIL = 25.4  # um
# What stands for the answer to a question that was not asked.
NOT_ASKED = {"rust": "not-sure", "oily": "yes", "thickness": "not-sure", "service": "not-sure"}
THIN_MM = DATA["thin"]["under_in"] * MM_PER_IN


def solve(asked: Inputs) -> Result:
    facts = {
        "metal": asked.metal,
        "coating": asked.coating,
        "rust": asked.rust,
        "oily": asked.oily,
        "thickness": thickness_class(asked.thickness_mm),
        "service": asked.service,
        "lead-known": asked.lead_known,
        "sealed-hollows": asked.sealed_hollows,
        "held": asked.held,
        "part": asked.part,
    }
    facts |= {key: NOT_ASKED[key] for key, when in ASKED.items() if asked.metal not in when.values}
    ruling = RULES.ruling(facts)
    never = ruling.all("abrasive-never")
    cautions = tuple(_cautions(ruling))
    return Result(
        answers={
            "verdict": ruling.settled,
            "prep-grade": ruling.one("prep-grade"),
            "abrasive": [one for one in ruling.all("abrasive") if one not in never],
            "abrasive-never": never,
            "profile": _profile(ruling.one("profile")),
            "pressure": ruling.one("pressure"),
            "before": ruling.all("before"),
            "after": ruling.all("after"),
            "at-home": ruling.all("at-home"),
            "ask-a-shop": ruling.all("ask-a-shop"),
            "would-change-it": list(_changes(facts)),
            "why": list(_why(ruling)),
        },
        cautions=cautions,
        steps=_steps(asked.thickness_mm if facts["thickness"] != "not-sure" else None),
        carries=tuple(carries(facts, ruling)),
        headline=_headline(ruling.settled, sum(one.level == "stop" for one in cautions)),
    )


def thickness_class(thickness_mm: float | None) -> str:
    """The name that the rules have for a thickness: exactly 1/8 in is not thin, however it was typed."""
    if thickness_mm is None:
        return "not-sure"
    return "thin" if thickness_mm < THIN_MM - 1e-6 else "thick"


def _headline(verdict: str, stops: int) -> str:
    words: str = DATA["verdicts"][verdict]
    if stops and verdict in ("blast", "sweep", "clean-only"):
        return f"Not yet: clear {'the stop' if stops == 1 else f'{stops} stops'} first, then {lower_first(words)}"
    return words


def _profile(name: str) -> Value:
    if name == "none":
        return Value(words="none: no blasting here")
    row = DATA["profiles"][name]
    return Value(low=row["low_mil"] * MIL, high=row["high_mil"] * MIL)


def _cautions(ruling: Ruling) -> Iterator[Caution]:
    for key in ruling.all("cautions"):
        row = DATA["cautions"][key]
        rule = next(one for one in ruling.fired if key in one.says.get("cautions", ()))
        printed = next((one for one in rule.sources if one != "common-practice"), "")
        yield Caution(row["level"], row["text"], row["about"], printed)


def _changes(facts: dict[str, str]) -> Iterator[str]:
    """One sentence a question and outcome, so that thirteen answers do not make thirteen lines."""
    turned: dict[tuple[str, str], list[str]] = {}
    for fact, value, becomes in _turning(facts):
        turned.setdefault((fact, becomes), []).append(f"“{_choices()[fact].label_of(value)}”")
    for (fact, becomes), labels in turned.items():
        yield f"{_choices()[fact].label} {any_of(labels)}: {becomes}"


def _turning(facts: dict[str, str]) -> Iterator[tuple[str, str, str]]:
    """Question, other answer, and what it would come to in words."""
    now = RULES.settle(facts)
    for change in RULES.changes(facts):
        if not (change.fact == "metal" and _brought_up(facts["metal"], change.value)):
            yield change.fact, change.value, lower_first(DATA["verdicts"][change.becomes])
    # a metal that brings up questions which have no answer yet: every answer to them is tried
    for metal in RULES.facts["metal"]:
        keys = _brought_up(facts["metal"], metal)
        if not keys:
            continue
        answers = product(*(RULES.facts[key] for key in keys))
        others = dict.fromkeys(
            RULES.settle(facts | {"metal": metal} | dict(zip(keys, given, strict=True))) for given in answers
        )
        if list(others) != [now]:
            words = any_of([lower_first(DATA["verdicts"][one]) for one in others])
            yield "metal", metal, f"{words}, by what is then asked" if len(others) > 1 else words


def _brought_up(metal: str, other: str) -> tuple[str, ...]:
    """The questions that are asked of the other metal and not of this one."""
    return tuple(key for key, when in ASKED.items() if other in when.values and metal not in when.values)


@cache
def _choices() -> dict[str, Choice]:
    return {one.key: one.field for one in CALCULATOR.fields if isinstance(one.field, Choice)}


def _why(ruling: Ruling) -> Iterator[str]:
    """The rule that decided, then the other safety rules, then the rest; what was overruled says so."""
    first = ruling.deciding("verdict")
    for rule in sorted(ruling.fired, key=lambda one: (one is not first, not one.safety)):
        aside = ", set aside by a higher rule" if ruling.sets_aside(rule) else ""
        yield f"{rule.reason.removesuffix('.')} {_cited(rule)}{aside}"


@cache
def _cite(key: str) -> str:
    found = source(key)
    if found.kind == "common-practice":
        return "common practice, no source"
    return f"{found.edition or found.title}, {found.standing}"


def _cited(rule: Rule) -> str:
    return " ".join(f"({_cite(key)})" for key in rule.sources)


def _steps(thickness_mm: float | None) -> tuple[Step, ...]:
    if thickness_mm is None:
        return ()
    return (
        step(
            "Thickness against the limit for thin sheet: thin if under 1",
            "share = t / limit",
            t=thickness_mm / MM_PER_IN,
            limit=DATA["thin"]["under_in"],
        ),
    )


CALCULATOR = Calculator(
    title="Blast or not",
    question="Does this part need blasting?",
    inputs=Inputs,
    solve=solve,
    answers=(
        Out(
            key="verdict",
            label="Verdict",
            meaning="Clear every stop first, then work down Before. A part to send out or refuse stays as it is.",
            main=True,
            options=DATA["verdicts"],
        ),
        Out(
            key="prep-grade",
            label="Clean it to",
            meaning="Ask for it by name. US and ISO grades are close, never equal.",
            options=DATA["prep-grades"],
            beside=True,
        ),
        Out(
            key="before",
            label="Before",
            meaning="Do them in this order, each finished before the next.",
            options=DATA["before"],
            beside=True,
        ),
        Out(
            key="abrasive",
            label="Abrasive that fits",
            meaning="Sharp grit, new or kept for this kind of metal.",
            options=DATA["abrasives"],
        ),
        Out(
            key="abrasive-never",
            label="Abrasive never to use",
            meaning="Check the bag and ask what the cabinet was last used on.",
            options=DATA["abrasives"],
        ),
        Out(
            key="profile",
            label="Surface profile",
            meaning="Depth from peak to valley. Measure it with replica tape: the film has to stand well over the peaks.",
            unit="um",
            shown=("mil", "um"),
            digits=2,
        ),
        Out(
            key="pressure",
            label="Pressure at the nozzle",
            meaning="Try it on a place that will not show.",
            options=DATA["pressures"],
        ),
        Out(
            key="after",
            label="After",
            meaning="Plan these before you start, because the surface does not wait.",
            options=DATA["after"],
        ),
        Out(
            key="at-home",
            label="At home",
            meaning="Yes and no for one part without a shop. Where it says only if, and you have not, it is a no.",
            options=DATA["at-home"],
        ),
        Out(
            key="ask-a-shop",
            label="Ask the shop",
            meaning="Ask before you leave the part, and have the answers on the order.",
            options=DATA["ask-a-shop"],
        ),
        Out(
            key="would-change-it",
            label="What would change it",
            meaning="One other answer that turns the verdict. Change an answer only when it is true.",
        ),
        Out(
            key="why",
            label="Why",
            meaning="Each rule that fired and how well it is known. Common practice means try a piece first.",
        ),
    ),
    sources=tuple(dict.fromkeys(key for rule in RULES.rules for key in rule.sources)),
    version=2,
    reviewed="2026-11-25",
    keywords=(
        "sandblast",
        "media blast",
        "surface preparation",
        "strip to bare metal",
        "Sa 2 1/2",
        "SSPC-SP 10",
        "near-white",
        "which abrasive",
        "sweep blast",
        "lead paint",
        "mill scale",
        "degrease",
    ),
    limits=(
        "It knows only what you answer. It cannot see cracks, a sealed weld, a light metal under paint or lead in an old coat.",
        "Most of its rules are common practice without a printed source. Each one says how well it is known.",
        "The standards were seen quoted on other pages, not in full. Have the grade's own text where a contract names it.",
        "It gives no permission. Law, local codes, the part's maker and a qualified person decide.",
        "It says nothing of whether a wheel, a safety part or a pressure part is safe to use.",
    ),
    vary=Vary(
        "coating",
        ("none", "powder-sound", "paint-sound", "chrome-plating", "yellow-or-cadmium-plating"),
        ("verdict", "prep-grade"),
    ),
    default_cautions=(("stop", "lead-known"), ("caution", ""), ("caution", "")),
)
