"""How good is this cross-cut? The share of the lattice that came off, by both scales, which run opposite ways."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from calculators.kit.calculator import Calculator, Out, Vary
from calculators.kit.chart import Axis, Band, Bar, Chart, Tone
from calculators.kit.fields import Choice, Limits, Option, Quantity, Validity, Whole, ask
from calculators.kit.numbers import shop_number
from calculators.kit.result import Caution, Clash, Result, Value
from calculators.kit.steps import step
from calculators.tables import table

ISO = ("iso-0", "iso-1", "iso-2", "iso-3", "iso-4", "iso-5")
US = ("5b", "4b", "3b", "2b", "1b", "0b")
SLACK = 1e-9


@dataclass(frozen=True)
class Inputs:
    squares: int = ask(
        Whole(
            group="The lattice",
            label="Squares in the lattice",
            hint="Six cuts each way make 25, eleven make 100",
            default="25",
            low=1,
            high=400,
        )
    )
    affected_ratio: float = ask(
        Quantity(
            label="Squares that came off",
            hint="Add up the parts: two half squares and a quarter are 1 1/4",
            units=("ratio",),
            default="1",
            limits=Limits("0", "400", "squares of a lattice"),
            example="1 1/4",
        )
    )
    film_um: float = ask(
        Quantity(
            group="The part",
            label="Film on it",
            hint="All coats, measured",
            units=("mil", "um", "in", "mm"),
            default="2.8",
            limits=Limits("0.2 mil", "100 mil", "thinner does not close, thicker is not powder"),
            validity=Validity(
                None, "250 um", "iso-2409", "A blade no longer cuts cleanly through: make an X-cut instead."
            ),
        )
    )
    substrate: str = ask(
        Choice(
            label="Under the film",
            options=(
                Option("hard", "Metal", ("steel", "aluminium")),
                Option("soft", "Wood, board or plastic", ("mdf", "plaster")),
            ),
            default="hard",
            few=True,
        )
    )


def solve(asked: Inputs) -> Result:
    if asked.affected_ratio > asked.squares:
        raise Clash(
            ("affected", f"Squares that came off must be {asked.squares} or fewer, as in the lattice")
        )
    lost = 100 * asked.affected_ratio / asked.squares
    grade, us_grade = _class(ISO, lost), _class(US, lost)
    cut, us_cut = _cut(asked.film_um, asked.substrate), _us_cut(asked.film_um)
    us = f"in the US {US_CLASSES[us_grade]}" if us_cut else "no US grade for this film"
    no_cut = Value(words="no cross-cut: X-cut")
    return Result(
        answers={
            "cut-grade": grade,
            "us-cut-grade": us_grade if us_cut else Value(words="none for this film: X-cut"),
            "lost": lost,
            "spacing": float(cut["spacing_mm"]) if cut else no_cut,
            "cuts": float(cut["cuts"]) if cut else no_cut,
            "us-spacing": float(us_cut["spacing_mm"]) if us_cut else no_cut,
            "us-cuts": float(us_cut["cuts"]) if us_cut else no_cut,
        },
        headline=f"ISO class {grade[-1]}, {us}: {shop_number(lost)} % came off",
        cautions=tuple(_cautions(asked, lost, cut, us_cut)),
        steps=(
            step(
                "Share of the lattice that came off",
                "p = 100 * off / squares",
                "%",
                off=asked.affected_ratio,
                squares=asked.squares,
            ),
        ),
        charts=(_chart(lost, grade),),
    )


def _class(scale: tuple[str, ...], lost_percent: float) -> str:
    """The first class that the lost share does not go beyond. A share printed as the end of two classes is in the better."""
    rows = table("cross_cut")
    for slug in scale:
        most = rows[slug]["most_percent"]
        under = rows[slug].get("under", False)
        if lost_percent < most - SLACK or (not under and lost_percent <= most + SLACK):
            return slug
    return scale[-1]


def _cut(film_um: float, substrate: str) -> dict[str, Any] | None:
    return _first_for(film_um, (f"iso-cut-thin-{substrate}", "iso-cut-middle", "iso-cut-thick"))


def _us_cut(film_um: float) -> dict[str, Any] | None:
    return _first_for(film_um, ("us-cut-thin", "us-cut-thick"))


def _first_for(film_um: float, names: tuple[str, ...]) -> dict[str, Any] | None:
    rows = (table("cross_cut")[name] for name in names)
    return next((row for row in rows if film_um <= row["up_to_um"] * (1 + SLACK)), None)


def _cautions(
    asked: Inputs, lost: float, cut: dict[str, Any] | None, us_cut: dict[str, Any] | None
) -> list[Caution]:
    found = []
    if us_cut is None:
        words = (
            "The film is over 5 mil (125 um). There ASTM D3359 asks for the X-cut (method A), and a lattice has no US grade: "
            "quote the ISO class, or make an X-cut."
        )
        found.append(Caution("caution", words, "film", "astm-d3359"))
    wanted = {(int(row["cuts"]) - 1) ** 2 for row in (cut, us_cut) if row}
    if wanted and asked.squares not in wanted:
        counts = " or ".join(str(one) for one in sorted(wanted))
        words = f"For this film the lattice has {counts} squares. Another lattice gives a class that cannot be compared."
        found.append(Caution("note", words, "squares", "iso-2409"))
    if abs(lost - 5) < SLACK:
        words = (
            "Exactly 5 %: still class 1 by ISO 2409 (not more than 5), and 3B by ASTM D3359 (4B is under 5)."
        )
        found.append(Caution("note", words, "affected"))
    return found


def _chart(lost: float, grade: str) -> Chart:
    ends = [table("cross_cut")[slug]["most_percent"] for slug in ISO]
    tones: tuple[Tone, ...] = ("good", "near", "near", "bad", "bad")
    bands = tuple(
        Band(f"{place}", low, high, tone, "x")
        for place, (low, high, tone) in enumerate(zip(ends, ends[1:], tones, strict=False), 1)
    )
    return Chart(
        title="Share of the lattice that came off, in the ISO classes",
        says="The figures above the zones are ISO classes: 0 is best and 5 worst. The US scale runs the other way.",
        x=Axis("came off, %", 0, 100),
        y=Axis("", names=("cut",)),
        bands=bands,
        bars=(Bar("cut", 0, lost, "plain", f"ISO class {grade[-1]}"),),
    )


CLASSES = {slug: f"Class {slug[-1]}" for slug in ISO}
US_CLASSES = {slug: slug.upper() for slug in US}

CALCULATOR = Calculator(
    title="Adhesion grade",
    question="How good is this cross-cut?",
    inputs=Inputs,
    solve=solve,
    answers=(
        Out(
            key="cut-grade",
            label="ISO 2409",
            meaning="0 is best, 5 worst. Sound powder gives 0; the order says what passes, often 0 or 1.",
            main=True,
            options=CLASSES,
        ),
        Out(
            key="us-cut-grade",
            label="ASTM D3359 B",
            meaning="5B is best, 0B worst: the opposite way. Always write the scale beside the figure.",
            options=US_CLASSES,
            beside=True,
        ),
        Out(
            key="lost",
            label="Came off",
            meaning="Look at what came off: bare metal points to cleaning, a split within the film to cure.",
            unit="percent",
            beside=True,
        ),
        Out(
            key="spacing",
            label="Cut apart, ISO",
            meaning="Distance between cuts for this film. A wrong spacing gives a class that means nothing.",
            unit="mm",
            shown=("mm",),
        ),
        Out(
            key="cuts",
            label="Cuts each way, ISO",
            meaning="Down to the metal, in one stroke each, with a fresh blade.",
            unit="ratio",
            digits=0,
        ),
        Out(
            key="us-spacing",
            label="Cut apart, ASTM",
            meaning="Distance between cuts for this film by method B.",
            unit="mm",
            shown=("mm",),
        ),
        Out(
            key="us-cuts",
            label="Cuts each way, ASTM",
            meaning="Tape on, wait 90 s give or take 30, and pull it back on itself in one smooth go.",
            unit="ratio",
            digits=0,
        ),
    ),
    sources=("iso-2409", "astm-d3359", "common-practice"),
    version=1,
    reviewed="2026-11-25",
    keywords=(
        "cross hatch",
        "crosshatch",
        "tape test",
        "scratch test",
        "adhesion test",
        "5B",
        "class 0",
        "will it peel",
    ),
    limits=(
        "The test cuts the film to the metal: make it on a test piece, or where the repair will not show.",
        "It is not for textured films, and it tells nothing about cure or about rust to come.",
        "A blunt blade tears the edges and gives a worse class than the film deserves.",
        "Where a share is printed as the end of two US grades (15, 35, 65 %), the better one is given here.",
    ),
    vary=Vary("affected", ("0", "1", "1 1/4", "3", "6", "12", "20"), ("cut-grade", "us-cut-grade", "lost")),
)
