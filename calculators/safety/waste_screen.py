"""What does this blast waste still need? Each metal's total over 20, against the limit of the leaching test."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from calculators.kit.calculator import Calculator, Out
from calculators.kit.chart import Axis, Bar, Chart, Mark
from calculators.kit.fields import Choice, Limits, Option, Quantity, Rows, ask
from calculators.kit.numbers import shop_number
from calculators.kit.result import Caution, Result, Table, Value
from calculators.kit.steps import step
from calculators.tables import table

METALS = table("waste_limits")
LIQUID_TO_SOLID = 20.0  # method 1311: kg of liquid for a kg of waste

# An invented laboratory sheet for the spent abrasive of the park benches' old paint.
EXAMPLE = """lead, 640
chromium, 85
cadmium, 4
arsenic, 6
barium, 300
mercury, 0.1
selenium, 2
silver, 1"""


@dataclass(frozen=True)
class MetalRow:
    agent: str = ask(
        Choice(
            label="Metal",
            options=tuple(Option(slug, row["name"], tuple(row["aliases"])) for slug, row in METALS.items()),
            default="lead",
        )
    )
    total_mg_kg: float | None = ask(
        Quantity(
            label="Total",
            hint="For less than 5 write 5; empty if not measured",
            units=("mg_kg", "percent"),
            limits=Limits("0 mg/kg", "1000000 mg/kg", "a share of the waste"),
            may_be_empty=True,
            example="640 mg/kg",
        )
    )


@dataclass(frozen=True)
class Inputs:
    metals: tuple[MetalRow, ...] = ask(
        Rows(
            group="The laboratory's sheet",
            label="Metals",
            hint="A metal a line, then its total in mg/kg; for less than 5 write 5. Names: lead, chromium, cadmium, arsenic, "
            "barium, mercury, selenium, silver",
            row=MetalRow,
            default=EXAMPLE,
            at_most=100,
            unit_of="total",
        )
    )


def solve(asked: Inputs) -> Result:
    found: dict[str, float] = {}
    for row in asked.metals:
        if row.total_mg_kg is not None:
            found[row.agent] = max(found.get(row.agent, 0.0), row.total_mg_kg)
    missing = [slug for slug in METALS if slug not in found]
    shares = {slug: total / LIQUID_TO_SOLID / METALS[slug]["leached_mg_L"] for slug, total in found.items()}
    worst = max(shares, key=lambda slug: shares[slug], default="")
    test = [slug for slug in METALS if shares.get(slug, 0.0) >= 1 - 1e-12]
    verdict = "must-leach-test" if test else "not-all-measured" if missing else "cannot-fail-these"
    return Result(
        answers={
            "verdict": verdict,
            "worst-share": Value(shares[worst], words=_share(shares[worst]))
            if worst
            else Value(words="nothing measured"),
            "worst-metal": METALS[worst]["name"] if worst else "none",
            "test-for": [f"{METALS[slug]['name']} ({METALS[slug]['code']})" for slug in test],
            "not-measured": [METALS[slug]["name"] for slug in missing],
            "until-then": _until(verdict),
        },
        cautions=tuple(_cautions(asked, verdict)),
        steps=tuple(
            step(
                f"{METALS[slug]['name']}: total over 20, over its limit",
                "share = total / 20 / limit",
                "",
                total=total,
                limit=METALS[slug]["leached_mg_L"],
            )
            for slug, total in found.items()
        ),
        tables=(_table(found, shares),),
        charts=(_chart(shares),) if shares else (),
        headline=_headline(verdict, [METALS[slug]["name"] for slug in test], missing),
    )


def _share(share: float) -> str:
    """A share that must not be rounded up to the limit."""
    said = shop_number(share)
    return "just under 1" if share < 1 - 1e-12 and said == "1" else said


def _headline(verdict: str, names: list[str], missing: list[str]) -> str:
    short = [name.split(",")[0].lower() for name in names]
    return {
        "must-leach-test": f"Leaching test needed for {', '.join(short)}: treat as hazardous until it is back",
        "not-all-measured": f"No answer yet: {len(missing)} of 8 metals not measured",
        "cannot-fail-these": "Cannot fail the leaching test for these eight metals",
    }[verdict]


def _until(verdict: str) -> tuple[str, ...]:
    if verdict == "cannot-fail-these":
        return (
            "Keep the laboratory's sheet with the record of the job",
            "Ask the state agency whether its own list or limits are stricter",
        )
    return (
        "Keep it closed, dry, labelled with what it is and when it began, apart from other waste",
        "Do not put it in a skip, mix it with clean abrasive, or wash it down a drain",
        "Send a sample for the leaching test (TCLP, method 1311), or have a waste firm take it as hazardous",
    )


def _cautions(asked: Inputs, verdict: str) -> Iterator[Caution]:
    if verdict == "must-leach-test":
        yield Caution(
            "stop",
            "This waste may be hazardous waste. Do not throw it in the ordinary skip. Keep it closed and labelled until a "
            "leaching test or a waste firm has settled it.",
            "metals",
            "epa-tclp",
        )
    if verdict == "not-all-measured":
        yield Caution(
            "caution",
            "A metal that was not measured cannot be passed. Have all eight measured, or know in writing what the paint and the "
            "abrasive hold.",
            "metals",
        )
    given = [row.agent for row in asked.metals]
    twice = sorted({slug for slug in given if given.count(slug) > 1})
    if twice:
        names = ", ".join(METALS[slug]["name"].split(",")[0].lower() for slug in twice)
        yield Caution(
            "note", f"More than one line for {names}: the highest counts, as one sample may be it.", "metals"
        )


def _table(found: dict[str, float], shares: dict[str, float]) -> Table:
    rows = []
    for slug, row in METALS.items():
        measured = slug in found
        rows.append(
            (
                f"{row['name']} ({row['code']})",
                f"{shop_number(found[slug])} mg/kg" if measured else "not measured",
                f"{shop_number(found[slug] / LIQUID_TO_SOLID)} mg/L" if measured else "",
                f"{shop_number(row['leached_mg_L'])} mg/L",
                "" if not measured else "test it" if shares[slug] >= 1 - 1e-12 else "cannot fail",
            )
        )
    return Table(
        "Metal by metal", ("Metal", "Total", "Test finds at most", "Hazardous from", "So"), tuple(rows)
    )


def _chart(shares: dict[str, float]) -> Chart:
    top = 2.0
    return Chart(
        title="Most that the leaching test could find, against its limit",
        says="At 1 or more a metal could reach the limit and must be leach-tested; under 1 it cannot. Bars are cut off at 2.",
        x=Axis("total / 20, over the limit", 0, top),
        y=Axis("", names=tuple(METALS[slug]["name"] for slug in shares)),
        bars=tuple(
            Bar(
                METALS[slug]["name"].split(",")[0],
                0,
                min(share, top),
                "bad" if share >= 1 - 1e-12 else "good",
                _share(share),
            )
            for slug, share in shares.items()
        ),
        marks=(Mark("test from here", x=1.0),),
    )


CALCULATOR = Calculator(
    title="Waste screen",
    question="Is this blast waste hazardous, or what test does it still need?",
    inputs=Inputs,
    solve=solve,
    answers=(
        Out(
            key="verdict",
            label="This waste",
            meaning="Test means: hazardous until a leaching test says otherwise. Cannot fail holds for these eight metals only.",
            main=True,
            options={
                "cannot-fail-these": "cannot fail the leaching test for these eight metals",
                "must-leach-test": "must be leach-tested",
                "not-all-measured": "not all eight metals are measured: no answer yet",
            },
        ),
        Out(
            key="worst-share",
            label="Worst metal, total over 20, over its limit",
            meaning="1 or more must be leach-tested: a result equal to the limit is already hazardous.",
            unit="ratio",
            shown=("ratio",),
            beside=True,
        ),
        Out(
            key="worst-metal",
            label="Worst metal",
            meaning="The one nearest to its limit, or furthest over it. Look there first in the next sample.",
            beside=True,
        ),
        Out(
            key="test-for",
            label="Leach-test for",
            meaning="Ask the laboratory for these by method 1311; it can run all eight from one leaching.",
        ),
        Out(
            key="not-measured",
            label="Not measured",
            meaning="These pass nothing until there is a figure.",
        ),
        Out(
            key="until-then",
            label="Until then",
            meaning="What to do with the drum in the meantime.",
        ),
    ),
    sources=("epa-tclp", "epa-tclp-method"),
    version=1,
    reviewed="2026-11-25",
    keywords=(
        "hazardous waste",
        "TCLP",
        "spent abrasive",
        "lead paint waste",
        "blast media disposal",
        "D008",
        "leach test",
        "RCRA 8",
    ),
    limits=(
        "Eight metals only. Other lists may make the waste hazardous: solvents, strippers, listed wastes, or a state's own list.",
        "States may be stricter. California, for one, has limits on the total as well, and a harsher leaching test.",
        "It holds for a dry solid. Sludge with free liquid is judged by the liquid itself.",
        "It is worth no more than the sample: one from the middle of a mixed drum, not from its top.",
        "Waste powder and dust that burns are another matter: never in a dusty skip or a compactor.",
    ),
    standing=(
        Caution(
            "note",
            "US: 40 CFR 261.24. The European Union classes waste by its total content instead (Directive 2008/98/EC, recalled). "
            "The rule's text, the state agency, local codes and a qualified person decide.",
            "",
            "epa-tclp",
        ),
    ),
    default_cautions=(("stop", "metals"),),
)
