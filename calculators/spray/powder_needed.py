"""How much powder does this job take? Mass of the film over the share of powder that ends as film."""

from __future__ import annotations

import math
from dataclasses import dataclass

from calculators.kit.calculator import Calculator, Out, Vary
from calculators.kit.chart import Axis, Band, Chart, Mark, Series
from calculators.kit.fields import Choice, Limits, Option, Quantity, When, Whole, ask
from calculators.kit.numbers import shop_number
from calculators.kit.result import Caution, Clash, Result, Value
from calculators.kit.steps import Step, step
from calculators.physics.film import coverage_m2_kg, film_mass_kg, utilisation
from calculators.spray import _powder_fields as fields

LB, MIL = fields.LB, fields.MIL
WEIGHED = ("lb", "g", "oz", "kg")
PANEL = When("gravity-from", ("panel",))
TRIAL = When("transfer-from", ("trial",))


@dataclass(frozen=True)
class Inputs:
    area_m2: float = fields.area_field()
    parts: int = ask(
        Whole(
            label="Number of parts",
            hint="Only for the powder on each part",
            default="4",
            low=1,
            high=100_000,
            meaning="parts",
        )
    )
    film_um: float = fields.film_field()
    coats: int = ask(
        Whole(
            label="Number of coats",
            hint="Of this powder, each of the film above",
            default="1",
            low=1,
            high=10,
        )
    )
    gravity_from: str = ask(
        Choice(
            group="The powder",
            label="Specific gravity from",
            options=(
                Option("sheet", "Data sheet", ("data sheet", "sds", "tds")),
                Option("panel", "Your own panel", ("measured", "weighed")),
            ),
            default="sheet",
            few=True,
        )
    )
    specific_gravity_ratio: float = fields.specific_gravity_field(when=When("gravity-from", ("sheet",)))
    panel_gained_kg: float = ask(
        Quantity(
            label="Powder on the panel",
            hint="Weight of the flat panel after the bake, less before",
            units=("g", "oz", "lb", "kg"),
            default="9",
            limits=Limits("0.1 g", "10 kg", "what a panel can carry"),
            when=PANEL,
        )
    )
    panel_area_m2: float = ask(
        Quantity(
            label="Area coated on the panel",
            hint="Both faces, if both got powder",
            units=("in2", "ft2", "cm2", "m2"),
            default="144",
            limits=Limits("1 in2", "100 ft2", "what can be weighed and measured all over"),
            when=PANEL,
        )
    )
    panel_film_um: float = ask(
        Quantity(
            label="Film on the panel",
            hint="Mean of at least ten gauge readings all over it",
            units=fields.FILM_UNITS,
            default="2.5",
            limits=Limits("0.2 mil", "60 mil", "thinner does not close, thicker is not one coat of powder"),
            when=PANEL,
        )
    )
    transfer_from: str = ask(
        Choice(
            group="What sticks",
            label="First-pass transfer from",
            options=(
                Option("share", "A share you know", ("known", "guess")),
                Option("trial", "A weighed trial", ("measured", "weighed")),
            ),
            default="share",
            few=True,
        )
    )
    transfer_percent: float = fields.transfer_field(when=When("transfer-from", ("share",)))
    trial_sprayed_kg: float = ask(
        Quantity(
            label="Powder sprayed in the trial",
            hint="Hopper or cup weighed before and after, trigger on at the part only",
            units=WEIGHED,
            default="0.5",
            limits=Limits("1 g", "1000 lb", "what a scale can tell"),
            when=TRIAL,
        )
    )
    trial_gained_kg: float = ask(
        Quantity(
            label="Powder gained by the parts",
            hint="The same parts weighed after the bake, less before",
            units=WEIGHED,
            default="0.3",
            limits=Limits("0.1 g", "1000 lb", "what a scale can tell"),
            when=TRIAL,
        )
    )
    reclaim_percent: float = fields.reclaim_field()
    spare_percent: float = ask(
        Quantity(
            group="To buy",
            label="Spare",
            hint="Extra for the hopper, the hose and a redo",
            units=("percent",),
            default="10",
            limits=Limits("0 %", "300 %", "extra over what the sum gives"),
        )
    )
    box_kg: float | None = ask(
        Quantity(
            label="Powder in a box",
            hint="Empty if you buy it loose",
            units=("lb", "kg"),
            may_be_empty=True,
            limits=Limits("0.1 lb", "2000 lb", "from a sample bag to a bulk box"),
            example="5 lb",
        )
    )
    price_money_kg: float | None = ask(
        Quantity(
            label="Price of the powder",
            hint="In your own money; empty for no sum",
            units=("money_lb", "money_kg"),
            may_be_empty=True,
            limits=Limits("0 a lb", "100000 a lb", "a price"),
            example="9",
        )
    )


def solve(asked: Inputs) -> Result:
    gravity, transfer = _gravity(asked), _transfer(asked)
    reclaim = asked.reclaim_percent / 100
    share = utilisation(transfer, reclaim)
    on_part = film_mass_kg(asked.area_m2, asked.film_um * asked.coats, gravity)
    used = on_part / share
    buy = used * (1 + asked.spare_percent / 100)
    price = asked.price_money_kg
    return Result(
        answers={
            "powder": buy,
            "on-part": on_part,
            "waste": used - on_part,
            "coverage": coverage_m2_kg(asked.film_um, gravity, share),
            "per-part": used / asked.parts,
            "utilisation": share * 100,
            "boxes": _boxes(buy, asked.box_kg),
            "powder-cost": Value(words="no price given") if price is None else used * price,
        },
        cautions=_cautions(asked),
        steps=_steps(asked, gravity, transfer, share, on_part, used, buy),
        charts=(_chart(asked, gravity, share),),
    )


def _gravity(asked: Inputs) -> float:
    if asked.gravity_from == "sheet":
        return asked.specific_gravity_ratio
    found = 1000 * asked.panel_gained_kg / (asked.panel_area_m2 * asked.panel_film_um)
    if not 0.8 <= found <= 4:
        raise Clash(
            (
                "panel-gained",
                f"The panel gives a specific gravity of {shop_number(found)}; no powder lies outside 0.8 to 4. "
                "Check the weight, the area (both faces?) and the film",
            )
        )
    return found


def _transfer(asked: Inputs) -> float:
    if asked.transfer_from == "share":
        return asked.transfer_percent / 100
    found = asked.trial_gained_kg / asked.trial_sprayed_kg
    if found > 1:
        raise Clash(("trial-gained", "Powder gained by the parts must not be more than the powder sprayed"))
    if found < 0.01:
        raise Clash(
            ("trial-gained", "Powder gained is under 1 % of the powder sprayed: check both weights and units")
        )
    return found


def _boxes(buy: float, box: float | None) -> Value:
    if box is None:
        return Value(words="no box size given")
    count = max(math.ceil(buy / box * (1 - 1e-12)), 1)
    left = max(count * box - buy, 0.0)
    return Value(
        float(count), words=f"{count:,}, with {shop_number(left / LB)} lb ({shop_number(left)} kg) over"
    )


def _cautions(asked: Inputs) -> tuple[Caution, ...]:
    thick = fields.thick_coat(asked.film_um)
    if asked.coats == 1:
        return thick
    words = "The films of all coats add up. Keep the total inside the range of the powder's data sheet."
    return (*thick, Caution("note", words, "coats"))


def _steps(
    asked: Inputs, gravity: float, transfer: float, share: float, on_part: float, used: float, buy: float
) -> tuple[Step, ...]:
    made = []
    if asked.gravity_from == "panel":
        made.append(
            step(
                "Specific gravity by your panel",
                "SG = 1000 * m / (A * t)",
                m=asked.panel_gained_kg,
                A=asked.panel_area_m2,
                t=asked.panel_film_um,
            )
        )
    if asked.transfer_from == "trial":
        made.append(
            step(
                "First-pass transfer by your trial",
                "TE = gained / sprayed",
                gained=asked.trial_gained_kg,
                sprayed=asked.trial_sprayed_kg,
            )
        )
    made += [
        step(
            "Share of the powder that ends as film",
            "U = TE / (1 - r * (1 - TE))",
            TE=transfer,
            r=asked.reclaim_percent / 100,
        ),
        step(
            "Mass of the film",
            "m = A * t * n * SG / 1000",
            "kg",
            A=asked.area_m2,
            t=asked.film_um,
            n=asked.coats,
            SG=gravity,
        ),
        step("Powder sprayed", "used = m / U", "kg", m=on_part, U=share),
        step(
            "Powder to buy",
            "buy = used * (1 + spare / 100) / 0.45359",
            "lb",
            used=used,
            spare=asked.spare_percent,
        ),
    ]
    if asked.box_kg is not None:
        made.append(
            step("In boxes, before rounding up", "boxes = buy / box", buy=buy / LB, box=asked.box_kg / LB)
        )
    if asked.price_money_kg is not None:
        made.append(
            step(
                "Cost of the powder sprayed",
                "cost = used * price",
                used=used / LB,
                price=asked.price_money_kg * LB,
            )
        )
    return tuple(made)


def _chart(asked: Inputs, gravity: float, share: float) -> Chart:
    top = max(2 * asked.film_um, 5 * MIL)
    films = tuple(top * place / 24 for place in range(25))
    per_um = film_mass_kg(asked.area_m2, asked.coats, gravity) / share * (1 + asked.spare_percent / 100)
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
        Out(
            key="boxes",
            label="Boxes",
            meaning="Whole boxes that hold what to buy. Take one batch number for one job.",
            unit="ratio",
            digits=0,
        ),
        Out(
            key="powder-cost",
            label="Powder sprayed costs",
            meaning="In the money that you typed the price in, without the spare, which goes back on the shelf.",
            unit="money",
            shown=("money",),
        ),
    ),
    sources=(
        "film-mass-balance",
        "astm-d5965-iso-8130-2",
        "powder-sheets",
        *fields.THICK_COAT_SOURCES,
        "common-practice",
    ),
    version=2,
    reviewed="2026-11-25",
    keywords=(
        "coverage",
        "square feet per pound",
        "how much powder",
        "powder to order",
        "boxes of powder",
        "transfer efficiency",
        "mil",
        "dft",
    ),
    limits=(
        "The share that sticks is yours to measure: no standard gives it, and it moves the answer more than all else.",
        "It counts the area you give. Edges, backs and hooks that take powder are not in it.",
        "Metallic, textured and clear powders lay on differently: their data sheet rules the film.",
        "A trial is good for parts of that shape, at that gun setting, on that ground.",
    ),
    vary=Vary(
        "film", ("1.5 mil", "2 mil", "2.5 mil", "3 mil", "4 mil", "6 mil"), ("powder", "coverage", "on-part")
    ),
)
