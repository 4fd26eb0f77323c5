"""How much powder does this job take? Mass of the film over the share of powder that ends as film."""

from __future__ import annotations

from dataclasses import dataclass

from calculators.kit.calculator import Calculator, Out, Vary
from calculators.kit.chart import Axis, Band, Chart, Mark, Series
from calculators.kit.fields import Limits, Quantity, Validity, Whole, ask
from calculators.kit.result import Caution, Result
from calculators.kit.steps import Step, step
from calculators.physics.film import coverage_m2_kg, film_mass_kg, utilisation

LB = 0.45359237  # kg
MIL = 25.4  # um
FT2 = 0.09290304  # m2


@dataclass(frozen=True)
class Inputs:
    area_m2: float = ask(
        Quantity(
            group="The job",
            label="Area to coat",
            hint="All parts together, every face that gets powder",
            units=("ft2", "in2", "m2", "cm2"),
            default="41.2",
            limits=Limits("0.01 ft2", "100000 ft2", "from one small bracket to a hall of railings"),
            meaning="coated-area",
        )
    )
    parts: int = ask(
        Whole(
            label="Number of parts", hint="Only for the powder on each part", default="4", low=1, high=100_000
        )
    )
    film_um: float = ask(
        Quantity(
            label="Film in one coat",
            hint="Cured thickness; the powder's data sheet gives the range",
            units=("mil", "um"),
            default="2.5",
            limits=Limits("0.2 mil", "60 mil", "thinner does not close, thicker is not one coat of powder"),
            validity=Validity(
                "1.5 mil",
                "10 mil",
                "powder-sheets",
                "Thinner may show metal; thicker may bubble, sag or turn brittle.",
            ),
            meaning="film",
        )
    )
    coats: int = ask(
        Whole(
            label="Number of coats",
            hint="Of this powder, each of the film above",
            default="1",
            low=1,
            high=10,
        )
    )
    specific_gravity_ratio: float = ask(
        Quantity(
            group="The powder",
            label="Specific gravity",
            hint="On the data sheet: clear about 1.2, white about 1.7",
            units=("ratio",),
            default="1.5",
            limits=Limits("0.8", "4", "no coating powder lies outside"),
            validity=Validity(
                "1.2", "1.8", "powder-sheets", "Few powders are so light or heavy: check the data sheet."
            ),
            example="1.5",
            meaning="specific-gravity",
        )
    )
    transfer_percent: float = ask(
        Quantity(
            group="What sticks",
            label="First-pass transfer",
            hint="Share of sprayed powder that stays: flat about 70 %, wire and tube about 30 %. Weigh your own",
            units=("percent",),
            default="60",
            limits=Limits("5 %", "100 %", "a share of what is sprayed"),
            meaning="transfer",
        )
    )
    reclaim_percent: float = ask(
        Quantity(
            label="Overspray sprayed again",
            hint="0 when you spray to waste",
            units=("percent",),
            default="0",
            limits=Limits("0 %", "99 %", "a share of the overspray"),
            meaning="reclaim",
        )
    )
    spare_percent: float = ask(
        Quantity(
            label="Spare",
            hint="Extra for the hopper, the hose and a redo",
            units=("percent",),
            default="10",
            limits=Limits("0 %", "300 %", "extra over what the sum gives"),
        )
    )


def solve(asked: Inputs) -> Result:
    transfer, reclaim = asked.transfer_percent / 100, asked.reclaim_percent / 100
    share = utilisation(transfer, reclaim)
    total_um = asked.film_um * asked.coats
    on_part = film_mass_kg(asked.area_m2, total_um, asked.specific_gravity_ratio)
    used = on_part / share
    buy = used * (1 + asked.spare_percent / 100)
    cautions = []
    if asked.coats > 1:
        cautions.append(
            Caution(
                "note",
                "The films of all coats add up. Keep the total inside the range of the powder's data sheet.",
                "coats",
            )
        )
    return Result(
        answers={
            "powder": buy,
            "on-part": on_part,
            "waste": used - on_part,
            "coverage": coverage_m2_kg(asked.film_um, asked.specific_gravity_ratio, share),
            "per-part": used / asked.parts,
            "utilisation": share * 100,
        },
        cautions=tuple(cautions),
        steps=_steps(asked, transfer, reclaim, share, on_part, used),
        charts=(_chart(asked, share),),
    )


def _steps(
    asked: Inputs, transfer: float, reclaim: float, share: float, on_part: float, used: float
) -> tuple[Step, ...]:
    return (
        step("Share of the powder that ends as film", "U = TE / (1 - r * (1 - TE))", TE=transfer, r=reclaim),
        step(
            "Mass of the film",
            "m = A * t * n * SG / 1000",
            "kg",
            A=asked.area_m2,
            t=asked.film_um,
            n=asked.coats,
            SG=asked.specific_gravity_ratio,
        ),
        step("Powder sprayed", "used = m / U", "kg", m=on_part, U=share),
        step(
            "Powder to buy",
            "buy = used * (1 + spare / 100) / 0.45359",
            "lb",
            used=used,
            spare=asked.spare_percent,
        ),
    )


def _chart(asked: Inputs, share: float) -> Chart:
    top = max(2 * asked.film_um, 5 * MIL)
    films = tuple(top * place / 24 for place in range(25))
    per_um = (
        film_mass_kg(asked.area_m2, asked.coats, asked.specific_gravity_ratio)
        / share
        * (1 + asked.spare_percent / 100)
    )
    return Chart(
        title="Powder to buy against film",
        says="Powder goes up in step with film: a film half as thick again takes half as much powder again.",
        x=Axis("film in one coat, mil", 0, top / MIL),
        y=Axis("powder to buy, lb", 0),
        series=(
            Series(
                "powder", tuple(film / MIL for film in films), tuple(per_um * film / LB for film in films)
            ),
        ),
        marks=(Mark("this job", asked.film_um / MIL, per_um * asked.film_um / LB),),
        bands=(Band("usual range, one smooth coat", 2, 4, "good", "x"),),
    )


CALCULATOR = Calculator(
    title="Powder needed",
    question="How much powder does this job take?",
    inputs=Inputs,
    solve=solve,
    answers=(
        Out(
            key="powder",
            label="Buy",
            meaning="Powder to have in the shop before you start, spare and overspray counted.",
            main=True,
            quantity="powder",
            unit="kg",
            shown=("lb", "kg"),
        ),
        Out(
            key="coverage",
            label="Coverage",
            meaning="What a pound covers at this film with these losses. Use it to check a quick guess.",
            quantity="coverage",
            unit="m2_kg",
            shown=("ft2_lb", "m2_kg"),
            beside=True,
        ),
        Out(
            key="on-part",
            label="On the parts",
            meaning="Weight the parts gain. Weigh one before and after to check the film.",
            unit="kg",
            shown=("lb", "kg"),
        ),
        Out(
            key="waste",
            label="Lost as overspray",
            meaning="What goes to the filter or the floor. A better ground and steadier gun make it smaller.",
            unit="kg",
            shown=("lb", "kg"),
        ),
        Out(
            key="per-part",
            label="Used for each part",
            meaning="Powder sprayed for one part, without the spare. Price the part with it.",
            unit="kg",
            shown=("lb", "kg"),
        ),
        Out(
            key="utilisation",
            label="Ends as film",
            meaning="Share of the powder you pay for that stays on parts.",
            unit="percent",
            digits=2,
        ),
    ),
    sources=("film-mass-balance", "astm-d5965-iso-8130-2", "powder-sheets", "common-practice"),
    version=1,
    reviewed="2026-11-25",
    keywords=(
        "coverage",
        "square feet per pound",
        "how much powder",
        "powder to order",
        "transfer efficiency",
        "mil",
        "dft",
    ),
    limits=(
        "The share that sticks is yours to measure: no standard gives it, and it moves the answer more than all else.",
        "It counts the area you give. Edges, backs and hooks that take powder are not in it.",
        "Metallic, textured and clear powders lay on differently: their data sheet rules the film.",
    ),
    vary=Vary(
        "film", ("1.5 mil", "2 mil", "2.5 mil", "3 mil", "4 mil", "6 mil"), ("powder", "coverage", "on-part")
    ),
)
