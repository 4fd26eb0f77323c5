"""Will this raw powder cure to the right film? The comb gives two teeth; the cured film lies between them, shrunk."""

from __future__ import annotations

from dataclasses import dataclass

from calculators.kit.calculator import Calculator, Out, Vary
from calculators.kit.chart import Axis, Band, Bar, Chart
from calculators.kit.fields import Limits, Quantity, ask
from calculators.kit.numbers import shop_number
from calculators.kit.result import Caution, Clash, Result, Value
from calculators.kit.steps import Step, step
from calculators.spray._powder_fields import FILM_UNITS, MIL

FILM = Limits("0.2 mil", "60 mil", "thinner does not close, thicker is not one coat of powder")
TOOTH = Limits("0.2 mil", "100 mil", "the teeth of a comb for raw powder")


@dataclass(frozen=True)
class Inputs:
    marked_um: float = ask(
        Quantity(
            group="On the comb",
            label="Highest tooth that marked",
            hint="The tallest gap whose tooth left a line in the raw powder",
            units=FILM_UNITS,
            default="6",
            limits=TOOTH,
        )
    )
    clear_um: float = ask(
        Quantity(
            label="Next tooth, that stayed clear",
            hint="The next one up, that did not touch",
            units=FILM_UNITS,
            default="7",
            limits=TOOTH,
        )
    )
    low_um: float = ask(
        Quantity(
            group="Cured film wanted",
            label="Lowest film",
            hint="From the powder's data sheet or the order",
            units=FILM_UNITS,
            default="2.5",
            limits=FILM,
        )
    )
    high_um: float = ask(Quantity(label="Highest film", units=FILM_UNITS, default="3.5", limits=FILM))
    reduction_ratio: float = ask(
        Quantity(
            group="How far it shrinks",
            label="Cured film for each raw",
            hint="Rule of thumb 0.5; your own pair below is better",
            units=("ratio", "percent"),
            default="0.5",
            limits=Limits("0.15", "1", "a film is never thicker than its raw powder"),
            example="0.5",
        )
    )
    raw_known_um: float | None = ask(
        Quantity(
            label="Raw powder at a known spot",
            hint="Both of this pair, from one spot of this powder before and after a bake; empty for the rule of thumb",
            units=FILM_UNITS,
            may_be_empty=True,
            limits=TOOTH,
            example="6.5",
        )
    )
    cured_known_um: float | None = ask(
        Quantity(
            label="Cured film at that spot",
            units=FILM_UNITS,
            may_be_empty=True,
            limits=FILM,
            example="3.1",
        )
    )


def solve(asked: Inputs) -> Result:
    if asked.clear_um <= asked.marked_um:
        raise Clash(
            ("clear", "Next tooth, that stayed clear must be higher than the highest tooth that marked")
        )
    if asked.high_um <= asked.low_um:
        raise Clash(("high", "Highest film must be more than the lowest film"))
    reduction = _reduction(asked)
    least, most = asked.marked_um * reduction, asked.clear_um * reduction
    verdict = _verdict(least, most, asked.low_um, asked.high_um)
    return Result(
        answers={
            "cured": Value(None, least, most),
            "verdict": verdict,
            "teeth-to-aim-for": Value(None, asked.low_um / reduction, asked.high_um / reduction),
            "reduction-used": reduction,
        },
        headline=f"{WORDS[verdict]}: cures to {_span(least / MIL, most / MIL)} mil ({_span(least, most)} um)",
        cautions=tuple(_cautions(asked, most)),
        steps=_steps(asked, reduction),
        charts=(_chart(asked, verdict, least, most),),
    )


def _reduction(asked: Inputs) -> float:
    raw, cured = asked.raw_known_um, asked.cured_known_um
    if raw is None and cured is None:
        return asked.reduction_ratio
    if raw is None:
        raise Clash(("raw-known", "Enter the raw powder at the known spot too, or empty the cured film"))
    if cured is None:
        raise Clash(("cured-known", "Enter the cured film at that spot too, or empty the raw powder"))
    if cured > raw:
        raise Clash(("cured-known", "Cured film at that spot must not be more than the raw powder there"))
    if cured / raw < 0.15:
        raise Clash(
            ("cured-known", "Cured film at that spot is under 0.15 of the raw powder: check both units")
        )
    return cured / raw


def _span(low: float, high: float) -> str:
    return f"{shop_number(low)} to {shop_number(high)}"


def _verdict(least: float, most: float, low: float, high: float) -> str:
    """Only where the whole span agrees is there a verdict. The clear tooth did not touch: the raw powder is lower than it."""
    slack = 1e-9 * high
    if most <= low + slack:
        return "spray-more"
    if least > high + slack:
        return "wipe-off"
    if least >= low - slack and most <= high + slack:
        return "right"
    return "unsure"


def _cautions(asked: Inputs, most: float) -> list[Caution]:
    found = []
    if asked.raw_known_um is None:
        words = (
            "The share that is left was typed, not measured here. About one half is a rule of thumb of comb sellers: measure one "
            "spot raw and cured, and enter the pair."
        )
        found.append(Caution("note", words, "reduction", "astm-d7378"))
    else:
        found.append(Caution("note", "The pair is used, not the share typed above it.", "raw-known"))
    if most > 10 * MIL:
        words = "So thick a coat may bubble, sag or crack, and a thick raw layer throws powder off in stars."
        found.append(Caution("caution", words, "clear", "powder-sheets"))
    return found


def _steps(asked: Inputs, reduction: float) -> tuple[Step, ...]:
    made = []
    if asked.raw_known_um is not None and asked.cured_known_um is not None:
        made.append(
            step("Share that is left", "R = cured / raw", cured=asked.cured_known_um, raw=asked.raw_known_um)
        )
    made += [
        step("Film at least", "low = marked * R", "um", marked=asked.marked_um, R=reduction),
        step("Film at most", "high = clear * R", "um", clear=asked.clear_um, R=reduction),
        step("Raw powder for the lowest film", "raw = low / R", "um", low=asked.low_um, R=reduction),
        step("Raw powder for the highest film", "raw = high / R", "um", high=asked.high_um, R=reduction),
    ]
    return tuple(made)


def _chart(asked: Inputs, verdict: str, least: float, most: float) -> Chart:
    return Chart(
        title="Where the film will come out",
        says="The bar runs from the marked tooth to the clear one, shrunk; the shaded zone is the film wanted.",
        x=Axis("cured film, mil", 0, max(1.3 * asked.high_um, 1.1 * most) / MIL),
        y=Axis("", names=("comb",)),
        bands=(Band("wanted", asked.low_um / MIL, asked.high_um / MIL, "good", "x"),),
        bars=(Bar("comb", least / MIL, most / MIL, "plain", SHORT[verdict]),),
    )


WORDS = {
    "spray-more": "Spray more",
    "right": "Right, bake it",
    "wipe-off": "Wipe off, spray again",
    "unsure": "Too close to call",
}
SHORT = {"spray-more": "thin", "right": "right", "wipe-off": "thick", "unsure": "unsure"}

CALCULATOR = Calculator(
    title="Comb to cured",
    question="Will this raw powder cure to the right film?",
    inputs=Inputs,
    solve=solve,
    answers=(
        Out(
            key="cured",
            label="Cures to",
            meaning="The film lies between the two. Comb where the mark will not show: it stays as a line in the film.",
            main=True,
            unit="um",
            shown=("mil", "um"),
        ),
        Out(
            key="verdict",
            label="Do",
            meaning="Too close to call: comb with finer teeth, or bake one part and measure it.",
            options=WORDS,
            beside=True,
        ),
        Out(
            key="teeth-to-aim-for",
            label="Raw powder to aim for",
            meaning="The tooth at the first figure should mark, the tooth at the second should stay clear.",
            unit="um",
            shown=("mil", "um"),
            beside=True,
        ),
        Out(
            key="reduction-used",
            label="Share that is left",
            meaning="Keep it with the powder's sheet: it differs from powder to powder and from gun to gun.",
            unit="ratio",
            shown=("ratio",),
        ),
    ),
    sources=("astm-d7378", "film-mass-balance", "powder-sheets"),
    version=1,
    reviewed="2026-11-25",
    keywords=(
        "raw powder thickness",
        "powder comb",
        "wet film",
        "before cure",
        "uncured",
        "dft",
        "mils before bake",
        "thickness before the oven",
    ),
    limits=(
        "A comb gives a span, not a figure; nothing between its two teeth can be told.",
        "The share that is left is not the same for two powders, nor for a thin and a very thick layer.",
        "Combing needs hard, flat or evenly curved metal; on an edge or in a corner it says nothing.",
    ),
    vary=Vary("clear", ("6.5 mil", "7 mil", "8 mil", "9 mil"), ("cured", "verdict")),
)
