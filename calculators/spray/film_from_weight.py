"""How thick is the film, by the scale? Weight gained over area and specific gravity, and what one division is worth."""

from __future__ import annotations

from dataclasses import dataclass

from calculators.kit.calculator import Calculator, Out, Vary
from calculators.kit.chart import Axis, Band, Bar, Chart
from calculators.kit.fields import Limits, Quantity, ask
from calculators.kit.numbers import shop_number
from calculators.kit.result import Caution, Clash, Result, Value
from calculators.kit.steps import step
from calculators.physics.film import film_from_mass_um
from calculators.spray import _powder_fields as fields

MIL = fields.MIL
GRAM = 0.001  # kg
MASS = ("lb", "g", "oz", "kg")
THICKEST_um = 60 * MIL  # as the fields that ask for a film take it
ROUGH = 0.1  # of the film: one division worth more than this says little


@dataclass(frozen=True)
class Inputs:
    before_kg: float = ask(
        Quantity(
            group="On the scale",
            label="Weight before",
            hint="Clean, bare and cold, without hook and plugs",
            units=MASS,
            default="3.190",
            limits=Limits("0.1 g", "20000 lb", "what can be weighed well enough"),
        )
    )
    after_kg: float = ask(
        Quantity(
            label="Weight after",
            hint="Cured and cold, the same part on the same scale",
            units=MASS,
            default="3.220",
            limits=Limits("0.1 g", "20000 lb", "what can be weighed well enough"),
        )
    )
    division_kg: float = ask(
        Quantity(
            label="One division of the scale",
            hint="The smallest step that it shows",
            units=MASS,
            default="0.002",
            limits=Limits("0.001 g", "10 lb", "the last digit of a scale"),
        )
    )
    # not the area of the job, which other calculators hand over: only of what lay on the scale
    area_m2: float = ask(
        Quantity(
            group="The part",
            label="Area coated",
            hint="Of the part on the scale, every face that got powder",
            units=fields.AREA_UNITS,
            default="1.35",
            limits=fields.AREA_LIMITS,
        )
    )
    specific_gravity_ratio: float = fields.specific_gravity_field()
    target_um: float = ask(
        Quantity(
            group="What you want",
            label="Film aimed for",
            hint="The middle of the data sheet's range",
            units=fields.FILM_UNITS,
            default="3",
            limits=Limits("0.2 mil", "60 mil", "thinner does not close, thicker is not one coat of powder"),
            meaning="film",
        )
    )
    either_side_um: float = ask(
        Quantity(
            label="Allowed either side",
            hint="Half the width of that range",
            units=fields.FILM_UNITS,
            default="0.5",
            limits=Limits("0.05 mil", "30 mil", "narrower than any gauge, wider than any range"),
        )
    )


def solve(asked: Inputs) -> Result:
    gained = asked.after_kg - asked.before_kg
    if gained <= 0:
        raise Clash(("after", "Weight after must be more than the weight before"))
    if asked.either_side_um >= asked.target_um:
        raise Clash(("either-side", "Allowed either side must be less than the film aimed for"))
    film = film_from_mass_um(gained, asked.area_m2, asked.specific_gravity_ratio)
    if film > THICKEST_um:
        raise Clash(
            (
                "after",
                f"The weight gained gives a film of {_said(film)}, and no coat is over 60 mil. "
                "Check both weights, the area and their units",
            )
        )
    division = film_from_mass_um(asked.division_kg, asked.area_m2, asked.specific_gravity_ratio)
    low, high = asked.target_um - asked.either_side_um, asked.target_um + asked.either_side_um
    # two weighings, each true to half a division
    least, most = max(film - division, 0.0), film + division
    verdict = "thin" if film < low else "thick" if film > high else "right"
    unsure = ", but too close to be sure" if _reaches_over((low, high), (least, most)) else ""
    return Result(
        answers={
            "film": Value(film, least, most),
            "verdict": verdict,
            "scale-error": division,
            "gained": gained,
        },
        headline=f"{WORDS[verdict]}{unsure}: {_said(film)}",
        cautions=tuple(_cautions(film, division, (low, high), (least, most))),
        steps=(
            step(
                "Weight gained",
                "m = after - before",
                "g",
                after=asked.after_kg / GRAM,
                before=asked.before_kg / GRAM,
            ),
            step(
                "Film",
                "t = m / (A * SG)",
                "um",
                m=gained / GRAM,
                A=asked.area_m2,
                SG=asked.specific_gravity_ratio,
            ),
            step(
                "What one division is worth",
                "e = d / (A * SG)",
                "um",
                d=asked.division_kg / GRAM,
                A=asked.area_m2,
                SG=asked.specific_gravity_ratio,
            ),
            step("Film in mil", "t = um / 25.4", "mil", um=film),
        ),
        charts=(_chart(verdict, (low, high), (least, most)),),
    )


def _said(film: float) -> str:
    return f"{shop_number(film / MIL)} mil ({shop_number(film)} um)"


def _reaches_over(wanted: tuple[float, float], span: tuple[float, float]) -> bool:
    """Whether the scale's doubt leaves open on which side of an end of the range the film lies."""
    return any(span[0] < end < span[1] for end in wanted)


def _cautions(
    film: float, division: float, wanted: tuple[float, float], span: tuple[float, float]
) -> list[Caution]:
    found = []
    if division > ROUGH * film:
        found.append(
            Caution(
                "caution",
                f"One division of this scale is worth {100 * division / film:.0f} % of the film. "
                "Weigh several parts together, or use a finer scale.",
                "division",
            )
        )
    if _reaches_over(wanted, span):
        found.append(
            Caution(
                "note",
                "The scale's doubt reaches over an end of the range: too close to call by weight alone. Use a film gauge.",
                "division",
            )
        )
    if film > 10 * MIL:
        found.append(
            Caution(
                "caution",
                "Over 10 mil (254 um) for one coat. Check the area and the unit; so thick a film may bubble, sag or crack.",
                "area",
                "powder-sheets",
            )
        )
    return found


def _chart(verdict: str, wanted: tuple[float, float], span: tuple[float, float]) -> Chart:
    return Chart(
        title="The film in the range that you want",
        says="The bar is the film with the scale's doubt; the shaded zone is the range aimed for.",
        x=Axis("film, mil", 0, max(1.3 * wanted[1], 1.1 * span[1]) / MIL),
        y=Axis("", names=("film",)),
        bands=(Band("aimed for", wanted[0] / MIL, wanted[1] / MIL, "good", "x"),),
        bars=(Bar("film", span[0] / MIL, span[1] / MIL, "plain", WORDS[verdict].lower()),),
    )


WORDS = {"thin": "Thin", "right": "Right", "thick": "Thick"}

CALCULATOR = Calculator(
    title="Film from weight",
    question="How thick is the film, by the scale?",
    inputs=Inputs,
    solve=solve,
    answers=(
        Out(
            key="film",
            label="Film",
            meaning="Mean over the whole part, with the scale's doubt. Edges and corners differ: spot-check with a gauge.",
            main=True,
            quantity="film-measured",
            unit="um",
            shown=("mil", "um"),
        ),
        Out(
            key="verdict",
            label="Against the aim",
            meaning="Thin: spray slower or a second pass. Thick: move faster, or turn the powder down.",
            options=WORDS,
            beside=True,
        ),
        Out(
            key="scale-error",
            label="One division is worth",
            meaning="A gain of one division more or less moves the film by this. Weigh more parts together to shrink it.",
            unit="um",
            shown=("mil", "um"),
            digits=2,
        ),
        Out(
            key="gained",
            label="Powder on the part",
            meaning="Divide it by the powder sprayed at it, and you have your own transfer.",
            unit="kg",
            shown=("lb", "g"),
        ),
    ),
    sources=("film-mass-balance", "astm-d5965-iso-8130-2", "powder-sheets"),
    version=1,
    reviewed="2026-11-25",
    keywords=(
        "no gauge",
        "weigh the part",
        "scale",
        "thickness without a gauge",
        "mils from weight",
        "wood",
        "plastic",
    ),
    limits=(
        "The mean hides thin edges and fat faces: a part can be right by weight and bare in a corner.",
        "An area that is out by a tenth puts the film out by a tenth.",
        "Weighed raw, powder is heavier than the film: some kinds lose a few percent of water or gas in the oven.",
        "Oil, rust, plugs, hooks or a warm part on the scale count as film.",
    ),
    vary=Vary("after", ("3.205 lb", "3.215 lb", "3.22 lb", "3.23 lb", "3.24 lb"), ("film", "verdict")),
)
