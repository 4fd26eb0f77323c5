"""How much soluble salt is on this steel? Conductivity of water from a test patch, turned into salt on an area."""

from __future__ import annotations

from dataclasses import dataclass

from calculators.kit.calculator import Calculator, Out, Vary
from calculators.kit.chart import Axis, Band, Chart, Mark, Series
from calculators.kit.fields import Choice, Limits, Option, Quantity, When, ask
from calculators.kit.numbers import shop_number
from calculators.kit.result import Caution, Clash, Result, Value
from calculators.kit.steps import step
from calculators.physics.salt import CHLORIDE_kg_m2S, MIXED_kg_m2S, salt_kg_m2

MG = 1e-6  # kg
MICRO = 1e-4  # S/m in 1 uS/cm
LIMITS = {"20": 20 * MG, "50": 50 * MG}
# Scatter of one result between 30 and 80 mg/m2. Under it the same is taken, over it the same share: our own estimate.
SCATTER_TO_kg_m2 = 80 * MG
VERDICTS = {
    "under": "Under the limit",
    "unsure": "Too near the limit for this kit to say",
    "over": "Over the limit",
}


@dataclass(frozen=True)
class Inputs:
    blank_S_m: float = ask(
        Quantity(
            group="The meter",
            label="Blank",
            hint="The water by itself, after it was in the syringe and on an unused patch",
            units=("uS_cm", "mS_cm", "S_m"),
            default="2",
            limits=Limits("0 uS/cm", "2000 uS/cm", "pure water to sea spray"),
        )
    )
    reading_S_m: float = ask(
        Quantity(
            label="Reading",
            hint="The same water after it was on the steel",
            units=("uS_cm", "mS_cm", "S_m"),
            default="10",
            limits=Limits("0 uS/cm", "2000 uS/cm", "pure water to sea spray"),
        )
    )
    water_m3: float = ask(
        Quantity(
            group="The patch",
            label="Water",
            hint="All the water that was measured, as the kit's sheet says",
            units=("mL", "L"),
            default="15",
            limits=Limits("0.5 mL", "1000 mL", "a small patch to a wash of a whole plate"),
        )
    )
    patch_area_m2: float = ask(
        Quantity(
            label="Area under the patch",
            hint="A common patch has 12.5 cm2",
            units=("cm2", "mm2", "in2", "m2"),
            default="12.5",
            limits=Limits("1 cm2", "10000 cm2", "the smallest patch to a square metre"),
        )
    )
    limit: str = ask(
        Choice(
            group="What you allow",
            label="Limit",
            options=(
                Option("20", "20 mg/m2, careful"),
                Option("50", "50 mg/m2, as ships' tanks"),
                Option("other", "Another"),
            ),
            default="50",
            few=True,
        )
    )
    other_limit_kg_m2: float = ask(
        Quantity(
            label="Limit of your own",
            hint="From the job's papers",
            units=("mg_m2", "ug_cm2"),
            default="30",
            limits=Limits("1 mg/m2", "1000 mg/m2", "what a kit can tell"),
            when=When("limit", ("other",)),
        )
    )
    scatter_kg_m2: float = ask(
        Quantity(
            label="Scatter of the kit",
            hint="Either way, of one result",
            units=("mg_m2", "ug_cm2"),
            default="8.2",
            limits=Limits("0.01 mg/m2", "100 mg/m2", "next to none, to past what one test can differ by"),
        )
    )


def solve(asked: Inputs) -> Result:
    rise = asked.reading_S_m - asked.blank_S_m
    if rise < 0:
        raise Clash(
            ("reading", "Reading must not be less than the blank: rinse the cell and take both again")
        )
    salt = salt_kg_m2(rise, asked.water_m3, asked.patch_area_m2)
    limit = asked.other_limit_kg_m2 if asked.limit == "other" else LIMITS[asked.limit]
    doubt = asked.scatter_kg_m2 * max(1.0, salt / SCATTER_TO_kg_m2)
    verdict = "under" if salt + doubt < limit else "over" if salt - doubt > limit else "unsure"
    factor = salt_kg_m2(MICRO, asked.water_m3, asked.patch_area_m2)
    return Result(
        answers={
            "salt": Value(salt, max(salt - doubt, 0.0), salt + doubt),
            "verdict": verdict,
            "as-chloride": salt * CHLORIDE_kg_m2S / MIXED_kg_m2S,
            "worth": factor,
            "reading-at-limit": asked.blank_S_m + limit / factor * MICRO,
        },
        headline=f"{VERDICTS[verdict]}: {shop_number(salt / MG)} mg/m2, give or take {shop_number(doubt / MG, 2)}",
        cautions=_cautions(asked, verdict),
        steps=(
            step(
                "What 1 uS/cm is worth",
                "F = 5 * V / A * 100",
                "mg/m2",
                V=asked.water_m3 * 1e3,
                A=asked.patch_area_m2 * 1e3,
            ),
            step(
                "Salt",
                "salt = F * (reading - blank)",
                "mg/m2",
                F=factor / MG,
                reading=asked.reading_S_m / MICRO,
                blank=asked.blank_S_m / MICRO,
            ),
            step(
                "As chloride, if all of it is sodium chloride",
                "Cl = salt * 2.805 / 5",
                "mg/m2",
                salt=salt / MG,
            ),
        ),
        charts=(_chart(asked, factor, limit, salt),),
    )


def _cautions(asked: Inputs, verdict: str) -> tuple[Caution, ...]:
    made = []
    if verdict == "over":
        words = (
            "Blasting alone does not take salt out of pits. Wash with clean water, dry, test again, and blast the rust that "
            "comes back."
        )
        made.append(Caution("caution", words, "reading"))
    if verdict == "unsure":
        words = "One test scatters as much as it is from the limit. Take two more beside it, or wash and test again."
        made.append(Caution("note", words, "reading", "nace-sp0508"))
    if asked.blank_S_m > 5 * MICRO * (1 + 1e-9):
        words = (
            "The water by itself reads over 5 uS/cm. Use fresh purified water and rinse the syringe and the cell "
            "(common practice)."
        )
        made.append(Caution("note", words, "blank"))
    return tuple(made)


def _chart(asked: Inputs, factor: float, limit: float, salt: float) -> Chart:
    top = max(2 * limit, 1.2 * salt, 1.2 * asked.scatter_kg_m2)
    low = max(limit - asked.scatter_kg_m2, 0.0)
    end = asked.blank_S_m + top / factor * MICRO
    return Chart(
        title="Salt by the meter's reading",
        says="Salt goes up in step with the reading over the blank. In the middle zone one test cannot say.",
        x=Axis("reading, uS/cm", 0, end / MICRO),
        y=Axis("salt, mg/m2", 0, top / MG),
        series=(Series("salt", (asked.blank_S_m / MICRO, end / MICRO), (0, top / MG)),),
        marks=(Mark("this test", asked.reading_S_m / MICRO, salt / MG),),
        bands=(
            Band("under", 0, low / MG, "good"),
            Band("unsure", low / MG, (limit + asked.scatter_kg_m2) / MG, "near"),
            Band("over", (limit + asked.scatter_kg_m2) / MG, top / MG, "bad"),
        )
        if limit + asked.scatter_kg_m2 < top
        else (Band("under", 0, low / MG, "good"), Band("unsure", low / MG, top / MG, "near")),
    )


CALCULATOR = Calculator(
    title="Salt test",
    question="How much soluble salt is on this steel?",
    inputs=Inputs,
    solve=solve,
    answers=(
        Out(
            key="salt",
            label="Salt on the steel",
            meaning="With the kit's own scatter. Over the limit: wash, dry, test again, and only then blast and coat.",
            main=True,
            unit="kg_m2",
            shown=("mg_m2", "ug_cm2"),
        ),
        Out(
            key="verdict",
            label="Against the limit",
            meaning="It counts the scatter: under and over are said only where one test can tell.",
            options=VERDICTS,
            beside=True,
        ),
        Out(
            key="as-chloride",
            label="As chloride",
            meaning="If all of it is sodium chloride. Use it where a paper names a limit for chloride alone.",
            unit="kg_m2",
            shown=("mg_m2", "ug_cm2"),
        ),
        Out(
            key="worth",
            label="1 uS/cm is worth",
            meaning="With this water and this patch. The last digit of the meter moves the result by its share of this.",
            unit="kg_m2",
            shown=("mg_m2",),
        ),
        Out(
            key="reading-at-limit",
            label="Reading at the limit",
            meaning="For the next patches of this job, with the same water: stop and wash when the meter shows more.",
            unit="S_m",
            shown=("uS_cm",),
        ),
    ),
    sources=("iso-8502-6", "nace-sp0508", "imo-pspc", "common-practice", "shop-estimate"),
    version=1,
    reviewed="2026-11-25",
    keywords=(
        "chloride test",
        "conductivity",
        "salt contamination",
        "soluble salts",
        "patch test",
        "mg/m2",
        "road salt",
        "rust comes back",
    ),
    limits=(
        "No standard sets a limit for powder on shop steel. 20 to 50 mg/m2 outdoors is prudence, no more.",
        "The factor is a convention for mixed salts. Pure table salt comes out about 8 % high.",
        "A patch sees what dissolves in its minutes on the steel. Salt deep in pits stays where it is.",
        "Two patches side by side differ. The scatter of 8.2 mg/m2 was read for results between 30 and 80 mg/m2; under that the "
        "same is taken, over it the same share, which is our own estimate.",
        "The meter must correct to 77 F (25 C). One that does not is off by about 1 % for each F.",
    ),
    vary=Vary(
        "reading", ("3 uS/cm", "5 uS/cm", "8 uS/cm", "10 uS/cm", "15 uS/cm", "30 uS/cm"), ("salt", "verdict")
    ),
)
