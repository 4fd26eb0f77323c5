"""How far does this powder go? Area that the pounds on the shelf cover, at a film and with the losses."""

from __future__ import annotations

from dataclasses import dataclass

from calculators.kit.calculator import Calculator, Out, Vary
from calculators.kit.chart import Axis, Band, Chart, Mark, Series
from calculators.kit.fields import Limits, Quantity, ask
from calculators.kit.result import Result
from calculators.kit.steps import step
from calculators.physics.film import coverage_m2_kg, utilisation
from calculators.spray import _powder_fields as fields

FT2_LB = fields.FT2 / fields.LB  # m2/kg


@dataclass(frozen=True)
class Inputs:
    film_um: float = fields.film_field("The coat")
    specific_gravity_ratio: float = fields.specific_gravity_field()
    transfer_percent: float = fields.transfer_field()
    reclaim_percent: float = fields.reclaim_field()
    shelf_kg: float = ask(
        Quantity(
            group="The powder you have",
            label="Powder on the shelf",
            hint="1 lb for the coverage alone",
            units=("lb", "oz", "kg", "g"),
            default="5",
            limits=Limits("1 g", "100000 lb", "from a sample to a bulk store"),
        )
    )


def solve(asked: Inputs) -> Result:
    share = utilisation(asked.transfer_percent / 100, asked.reclaim_percent / 100)
    covers = coverage_m2_kg(asked.film_um, asked.specific_gravity_ratio, share)
    best = coverage_m2_kg(asked.film_um, asked.specific_gravity_ratio, 1)
    return Result(
        answers={"coverage": covers, "covers": asked.shelf_kg * covers, "no-loss": best},
        cautions=fields.thick_coat(asked.film_um),
        steps=(
            step(
                "Share of the powder that ends as film",
                "U = TE / (1 - r * (1 - TE))",
                TE=asked.transfer_percent / 100,
                r=asked.reclaim_percent / 100,
            ),
            step(
                "Coverage",
                "a = 192.22 * U / (t * SG)",
                "ft2/lb",
                U=share,
                t=asked.film_um / fields.MIL,
                SG=asked.specific_gravity_ratio,
            ),
            step(
                "Area that the powder covers",
                "A = M * a",
                "ft2",
                M=asked.shelf_kg / fields.LB,
                a=covers / FT2_LB,
            ),
        ),
        charts=(_chart(asked, share),),
    )


def _chart(asked: Inputs, share: float) -> Chart:
    high = max(2 * asked.film_um, 5 * fields.MIL)
    low = min(asked.film_um, fields.MIL)
    films = tuple(low + (high - low) * place / 32 for place in range(33))
    covers = tuple(coverage_m2_kg(film, asked.specific_gravity_ratio, share) / FT2_LB for film in films)
    here = coverage_m2_kg(asked.film_um, asked.specific_gravity_ratio, share) / FT2_LB
    return Chart(
        title="Coverage against film",
        says="Twice the film is half the coverage.",
        x=Axis("film in one coat, mil"),
        y=Axis("coverage, ft2/lb", 0),
        series=(Series("coverage", tuple(film / fields.MIL for film in films), covers),),
        marks=(Mark("here", asked.film_um / fields.MIL, here),),
        bands=(Band("usual range", 2, 4, "good", "x"),),
    )


CALCULATOR = Calculator(
    title="Coverage",
    question="How far does this powder go?",
    inputs=Inputs,
    solve=solve,
    answers=(
        Out(
            key="coverage",
            label="Coverage",
            meaning="What a pound covers at this film with these losses. Divide the area of the job by it.",
            main=True,
            unit="m2_kg",
            shown=("ft2_lb", "m2_kg"),
        ),
        Out(
            key="covers",
            label="What you have covers",
            meaning="One coat, nothing kept back. Keep a tenth for the hopper and a redo.",
            unit="m2",
            shown=("ft2", "m2"),
            beside=True,
        ),
        Out(
            key="no-loss",
            label="With nothing lost",
            meaning="The most that a sheet may promise. No shop reaches it.",
            unit="m2_kg",
            shown=("ft2_lb", "m2_kg"),
        ),
    ),
    sources=(
        "film-mass-balance",
        "astm-d5965-iso-8130-2",
        "powder-sheets",
        *fields.THICK_COAT_SOURCES,
        "common-practice",
    ),
    version=1,
    reviewed="2026-11-25",
    keywords=(
        "square feet per pound",
        "how far does a pound go",
        "192.3",
        "spread rate",
        "m2 per kg",
        "do I have enough powder",
    ),
    limits=(
        "The share that sticks is yours to measure: no standard gives it, and it moves the answer more than all else.",
        "A sheet's coverage is for powder without loss. Yours is that times the share that ends as film.",
        "Metallic, textured and clear powders lay on differently: their data sheet rules the film.",
    ),
    vary=Vary("film", ("1.5 mil", "2 mil", "2.5 mil", "3 mil", "4 mil", "6 mil"), ("coverage", "covers")),
)
