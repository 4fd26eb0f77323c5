"""How hard is this place on a coating? The loss of bare steel and zinc in its air gives a category, the worse metal ruling."""

from __future__ import annotations

from calculators.inspect._site_corrosivity_inputs import Inputs
from calculators.inspect._site_corrosivity_sums import (
    METALS,
    category_of,
    first_year,
    later_years,
    metal_row,
    rank_of,
    reach_of,
    system_of,
    terms_um,
)
from calculators.kit.calculator import Calculator, Out, Vary
from calculators.kit.chart import Axis, Band, Bar, Chart, Mark, Series, Tone
from calculators.kit.result import Caution, Result, Value
from calculators.kit.steps import Step, step
from calculators.physics.corrosion import DoseResponse, loss_after_um
from calculators.tables import table


def solve(asked: Inputs) -> Result:
    first = {metal: first_year(asked, metal) for metal in METALS}
    later = {metal: later_years(first[metal], metal, asked.years_year) for metal in METALS}
    if asked.place == "measured":
        of = {metal: category_of(metal, first[metal].number or 0.0) for metal in METALS}
        category = max(of.values(), key=rank_of)
        rules = [metal for metal in METALS if of[metal] == category]
        ruled = "both" if len(rules) == 2 else rules[0]
    else:
        category, ruled = str(table("places")[asked.place]["category"]), "described"
    system = system_of(asked, category)
    reach = reach_of(first) if asked.place == "measured" else (category, category)
    return Result(
        answers={
            "category": category,
            "ruled-by": ruled,
            "may-be": _span(*reach),
            "system": system,
            "steel-loss": first["steel"],
            "zinc-loss": first["zinc"],
            "steel-loss-later": later["steel"],
            "zinc-loss-later": later["zinc"],
        },
        headline=f"{NAMES[category]}: {SYSTEMS[system][0].lower()}{SYSTEMS[system][1:]}",
        cautions=tuple(_cautions(asked, first, category)),
        steps=_steps(asked, first),
        charts=(
            _first_chart("steel", first["steel"]),
            _first_chart("zinc", first["zinc"]),
            _later_chart(asked, first),
        ),
    )


def _span(low: str, high: str) -> str:
    return NAMES[low] if low == high else f"{NAMES[low]} to {NAMES[high]}"


def _cautions(asked: Inputs, first: dict[str, Value], category: str) -> list[Caution]:
    found = []
    ends = table("corrosivity")["cx"]
    for metal in METALS:
        if (first[metal].number or 0.0) > ends[f"{metal}_um"]:
            words = f"The loss of {metal} is beyond the end of CX. No category holds it: ask a corrosion engineer."
            found.append(Caution("caution", words, "place", "iso-9223"))
    if asked.place != "measured":
        words = "A described place is a first guess. Shelter from rain, wet ledges and salt that is never washed off are worse."
        found.append(Caution("note", words, "place", str(table("places")[asked.place]["category_source"])))
    if category in ("c5", "cx"):
        words = "At C5 and above every chip rusts fast. Ask powder maker and galvaniser for a system that they stand behind."
        found.append(Caution("caution", words, "place", "common-practice"))
    return found


def _steps(asked: Inputs, first: dict[str, Value]) -> tuple[Step, ...]:
    made = []
    for metal in METALS:
        row, value = metal_row(metal), first[metal]
        name = row["name"].lower()
        if asked.place == "measured":
            made += _dose_steps(asked, metal, name)
        by_then = value.number if value.number is not None else value.high or 0.0
        until = min(asked.years_year, 20)
        what = f"Loss of {name} after the years" + (
            "" if value.number is not None else ", at the category's end"
        )
        if asked.years_year <= 20:
            made.append(step(what, "D = r * t ** b", "um", r=by_then, t=until, b=row["exponent"]))
        else:
            made.append(
                step(
                    what,
                    "D = r * (20 ** b + b * 20 ** (b - 1) * (t - 20))",
                    "um",
                    r=by_then,
                    t=asked.years_year,
                    b=row["exponent"],
                )
            )
    return tuple(made)


def _dose_steps(asked: Inputs, metal: str, name: str) -> list[Step]:
    dose = DoseResponse(*metal_row(metal)["dose_response"])
    by_sulfur, by_chloride = terms_um(asked, metal)
    cold = asked.temperature_degC <= 10
    return [
        step(
            f"Sulfur dioxide's part, {name}",
            "s = a * P ** p * exp(b * RH + f * (T - 10))",
            "um",
            a=dose.sulfur,
            P=asked.sulfur_dioxide_mg_m2d,
            p=dose.sulfur_power,
            b=dose.sulfur_humidity,
            RH=asked.humidity_percent,
            f=dose.cold_degC if cold else dose.warm_degC,
            T=asked.temperature_degC,
        ),
        step(
            f"Chloride's part, {name}",
            "c = k * S ** q * exp(d * RH + g * T)",
            "um",
            k=dose.chloride,
            S=asked.chloride_mg_m2d,
            q=dose.chloride_power,
            d=dose.chloride_humidity,
            RH=asked.humidity_percent,
            g=dose.chloride_degC,
            T=asked.temperature_degC,
        ),
        step(f"First year's loss, {name}", "r = s + c", "um", s=by_sulfur, c=by_chloride),
    ]


def _first_chart(metal: str, first: Value) -> Chart:
    rows = table("corrosivity")
    ends = [0.0, *(float(row[f"{metal}_um"]) for row in rows.values())]
    high = first.high or 0.0
    rank = min(rank_of(category_of(metal, high)) + 1, len(rows))
    top = max(ends[max(rank, 4)], high)
    tones: tuple[Tone, ...] = ("good", "good", "near", "bad", "plain", "bad")
    # C1 is too narrow to be named on this scale
    bands = tuple(
        Band(slug.upper() if place else "", ends[place], min(ends[place + 1], top), tones[place], "x")
        for place, slug in enumerate(rows)
        if ends[place] < top
    )
    name = metal_row(metal)["name"]
    return Chart(
        title=f"{name}: the first year's loss in the categories",
        says="The bar is the loss with its doubt; the zones are the categories.",
        x=Axis("bare metal lost in the first year, um", 0, top),
        y=Axis("", names=(name,)),
        bands=bands,
        bars=(Bar("zinc" if metal == "zinc" else "steel", first.low or 0.0, high, "plain"),),
    )


def _later_chart(asked: Inputs, first: dict[str, Value]) -> Chart:
    row, value = metal_row("steel"), first["steel"]
    end = max(20.0, asked.years_year)
    years = tuple(end * place / 24 for place in range(1, 25))
    low = tuple(loss_after_um(value.low or 0.0, row["exponent"], one) for one in years)
    high = tuple(loss_after_um(value.high or 0.0, row["cautious_exponent"], one) for one in years)
    series: tuple[Series, ...] = (Series("with its doubt", years, low, high),)
    if value.number is not None:
        middle = tuple(loss_after_um(value.number, row["exponent"], one) for one in years)
        series = (*series, Series("best estimate", years, middle))
    return Chart(
        title="Bare steel lost over the years",
        says="Rust slows the rust that follows. It is what a scratch to bare metal faces, not the coated face.",
        x=Axis("years", 0, end),
        y=Axis("bare steel lost, um", 0),
        series=series,
        marks=(Mark(f"{asked.years_year:.3g} years", asked.years_year),),
    )


NAMES = {slug: slug.upper() for slug in ("c1", "c2", "c3", "c4", "c5", "cx")}
SYSTEMS = {
    "one-coat": "One coat on good pretreatment",
    "primer-and-topcoat": "Epoxy primer and topcoat",
    "two-coats-on-galvanised": "Galvanised, then primer and topcoat",
    "ask-a-specialist": "Ask a corrosion specialist",
}

CALCULATOR = Calculator(
    title="Site corrosivity",
    question="How hard is this place on a coating?",
    inputs=Inputs,
    solve=solve,
    answers=(
        Out(
            key="category",
            label="Category",
            meaning="Of ISO 9223: C1 mildest, CX hardest, by the metal that fares worse. It sets hopes; it promises no years.",
            main=True,
            options=NAMES,
        ),
        Out(
            key="may-be",
            label="May be",
            meaning="What the doubt of the formula leaves open. Plan for the harder one where a failure would hurt.",
            beside=True,
        ),
        Out(
            key="system",
            label="Coating on steel",
            meaning="Common practice, no source: no standard seen gives it for powder. The powder maker's word goes first.",
            options=SYSTEMS,
            beside=True,
        ),
        Out(
            key="ruled-by",
            label="Ruled by",
            meaning="A part of bare or galvanised metal follows its own metal; see the two losses below.",
            options={
                "steel": "Steel",
                "zinc": "Zinc",
                "both": "Steel and zinc alike",
                "described": "The place described",
            },
        ),
        Out(
            key="steel-loss",
            label="Bare steel, first year",
            meaning="What a scratch to bare steel loses. Powder stops it only while it is whole.",
            unit="um",
            shown=("um", "mil"),
        ),
        Out(
            key="zinc-loss",
            label="Bare zinc, first year",
            meaning="Set against the zinc's thickness, it tells how long galvanising lasts bare.",
            unit="um",
            shown=("um", "mil"),
        ),
        Out(
            key="steel-loss-later",
            label="Bare steel after the years",
            meaning="From ISO 9224, with the doubt of the first year and of the years.",
            unit="um",
            shown=("um", "mil"),
        ),
        Out(
            key="zinc-loss-later",
            label="Bare zinc after the years",
            meaning="A hot-dip coat is often 50 to 85 um thick (common practice): compare.",
            unit="um",
            shown=("um", "mil"),
        ),
    ),
    sources=(
        "iso-9223",
        "iso-9223-doubt",
        "iso-9223-places",
        "iso-9224",
        "iso-12944-2",
        "iso-12944-powder",
        "common-practice",
    ),
    version=1,
    reviewed="2026-11-25",
    keywords=(
        "C3",
        "C4",
        "C5",
        "coastal",
        "road salt",
        "near the sea",
        "how long will it last",
        "outdoor",
        "corrosion class",
        "do I need a primer",
    ),
    limits=(
        "It is about bare metal. How long a coat lasts hangs on preparation, edges and damage, and no category tells it.",
        "ISO 12944 covers paint that cures by itself, not powder: borrow its categories, not its systems or its years.",
        "It is open air. Under a shelter that rain does not wash, salt gathers and it is worse.",
        "Soil, water, splash, chemicals and two metals touching are outside it.",
        "The span of doubt, a third less to a half more, and the place of road salt are from memory.",
    ),
    standing=(
        Caution(
            "note",
            "ISO 12944 does not cover powder. For powder on zinc see EN 13438 and EN 15773; the powder maker's approval rules.",
            "place",
            "iso-12944-powder",
        ),
    ),
    vary=Vary("chloride", ("3", "30", "60", "150", "300"), ("category", "may-be", "system", "steel-loss")),
)
