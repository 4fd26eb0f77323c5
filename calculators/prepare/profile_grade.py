"""Is this surface profile right for the film? Mean of the peaks against the comparator's grades, and the film over them."""

from __future__ import annotations

from dataclasses import dataclass

from calculators.kit.calculator import Calculator, Out, Vary
from calculators.kit.chart import Axis, Band, Chart, Mark, Series
from calculators.kit.fields import Choice, Limits, Option, Quantity, Readings, ask
from calculators.kit.numbers import shop_number
from calculators.kit.result import Caution, Result, Value
from calculators.kit.steps import step
from calculators.tables import table

MIL = 25.4  # um
GRADES = {
    "finer-than-fine": "Finer than fine",
    "fine": "Fine",
    "medium": "Medium",
    "coarse": "Coarse",
    "coarser-than-coarse": "Coarser than coarse",
}
COVERS = {
    "covered": "The film stands over the peaks by 1 mil (25 um) or more",
    "deep": "The film covers the peaks, and more than half of it lies between them",
    "close": "Little film over the highest peak",
    "through": "The highest peaks come through the film",
}
# What a gauge that was set on smooth steel reads too much, by grade.
GAUGE = {"fine": 10.0, "medium": 25.0, "coarse": 40.0}
# Least film over the highest peak, and most of the film below the mean one, that pass without a word: common practice, no source.
COVER_um = MIL
DEEP_SHARE = 0.5
FEW = 3


@dataclass(frozen=True)
class Inputs:
    abrasive_shape: str = ask(
        Choice(
            group="The surface",
            label="Abrasive",
            hint="Grit and shot have comparators of their own",
            options=(
                Option("grit", "Grit, sharp"),
                Option("shot", "Shot or bead, round"),
            ),
            default="grit",
            few=True,
        )
    )
    peak_um: tuple[float, ...] = ask(
        Readings(
            label="Peak readings",
            hint="Peak to valley, by replica tape or depth gauge, from several places",
            units=("mil", "um"),
            default="1.8 1.6 2.1 1.9 1.7",
            limits=Limits("0.04 mil", "20 mil", "polished to torch-cut"),
            at_most=500,
        )
    )
    film_um: float = ask(
        Quantity(
            group="The film",
            label="Film",
            hint="Of all coats together, wanted or measured",
            units=("mil", "um", "in", "mm"),
            default="5",
            limits=Limits("0.2 mil", "100 mil", "thinner does not close, thicker is not powder"),
            meaning="film-measured",
        )
    )


def solve(asked: Inputs) -> Result:
    peaks, film = asked.peak_um, asked.film_um
    mean = sum(peaks) / len(peaks)
    row = table("profile_grades")[asked.abrasive_shape]
    edges = tuple(float(row[f"segment_{place}_um"]) for place in (1, 2, 3, 4))
    grade = list(GRADES)[sum(mean >= edge - 1e-9 for edge in edges)]
    cover = film - max(peaks)
    verdict = _verdict(film, mean, cover)
    return Result(
        answers={
            "profile-grade": grade,
            "film-verdict": verdict,
            "mean-peak": Value(mean, min(peaks), max(peaks)),
            "spread": max(peaks) - min(peaks),
            "film-over-peaks": Value(film - mean, cover, film - min(peaks)),
            "share-of-film": 100 * mean / film,
            "gauge-correction": _correction(grade),
        },
        headline=f"{GRADES[grade]}: {shop_number(mean / MIL)} mil ({shop_number(mean)} um). {COVERS[verdict]}",
        cautions=_cautions(asked, mean, verdict, edges),
        steps=(
            step("Mean of the readings", "mean = total / n", "um", total=sum(peaks), n=len(peaks)),
            step("Highest less lowest", "spread = high - low", "um", high=max(peaks), low=min(peaks)),
            step("Film over the mean peak", "over = film - mean", "um", film=film, mean=mean),
            step("Film over the highest peak", "least = film - high", "um", film=film, high=max(peaks)),
        ),
        charts=(_chart(asked, edges),),
    )


def _verdict(film_um: float, mean_um: float, cover_um: float) -> str:
    if cover_um <= 0:
        return "through"
    if cover_um < COVER_um - 1e-9:
        return "close"
    return "deep" if mean_um > DEEP_SHARE * film_um + 1e-9 else "covered"


def _correction(grade: str) -> Value:
    if grade in GAUGE:
        return Value(GAUGE[grade])
    return Value(
        words="none set for a profile outside the grades: set the gauge on the same blasted bare steel"
    )


def _cautions(asked: Inputs, mean_um: float, verdict: str, edges: tuple[float, ...]) -> tuple[Caution, ...]:
    made = []
    if verdict == "through":
        words = (
            "The highest peak stands as high as the film, so it shows and rusts. Lay more film inside the data sheet's range, or "
            "blast again with a finer abrasive (common practice, no source)."
        )
        made.append(Caution("caution", words, "film", "common-practice"))
    elif verdict == "close":
        words = (
            "Under 1 mil (25 um) of film stands over the highest peak. Outdoors or by salt lay more, or go finer "
            "(common practice, no source)."
        )
        made.append(Caution("caution", words, "film", "common-practice"))
    elif verdict == "deep":
        words = (
            "Such a profile is deep for this film: under 2.5 to 3.5 mil (64 to 89 um) aim for peaks of 1 to 2 mil (25 to 50 um). "
            "Lay more inside the data sheet's range, or go finer (common practice, no source)."
        )
        made.append(Caution("caution", words, "film", "common-practice"))
    if mean_um < edges[0] - 1e-9:
        words = (
            "The surface is smoother than fine: powder may not hold. Blast with a sharper or coarser grit."
        )
        made.append(Caution("caution", words, "peak", "iso-8503-1"))
    if asked.abrasive_shape == "shot":
        words = "Round abrasive closes the surface, and powder holds less well on it than on grit at the same depth."
        made.append(Caution("note", words, "abrasive-shape"))
    if len(asked.peak_um) < FEW:
        words = "Fewer than 3 readings say little. Take several places, the worst among them."
        made.append(Caution("note", words, "peak"))
    return tuple(made)


def _chart(asked: Inputs, edges: tuple[float, ...]) -> Chart:
    peaks = tuple(sorted(peak / MIL for peak in asked.peak_um))
    film = asked.film_um / MIL
    top = 1.08 * max(peaks[-1], film, edges[2] / MIL)
    ends = [min(edge / MIL, top) for edge in edges]
    zones = (
        Band("finer than fine", 0, ends[0]),
        Band("fine", ends[0], ends[1], "good"),
        Band("medium", ends[1], ends[2], "near"),
        Band("coarse", ends[2], ends[3], "bad"),
        Band("coarser than coarse", ends[3], top),
    )
    places = tuple(float(place) for place in range(1, len(peaks) + 1))
    # a lone reading is drawn as a level, as a line needs two ends
    line = (places, peaks) if len(peaks) > 1 else ((0.5, 1.5), (peaks[0], peaks[0]))
    return Chart(
        title="Peak readings in the grades",
        says="Your readings from the lowest to the highest. All of them have to stay well under the film.",
        x=Axis("readings, lowest to highest", 0, len(peaks) + 1),
        y=Axis("peak to valley, mil", 0, top),
        series=(Series("peak to valley", *line), Series("", places, peaks, dots=True)),
        marks=(Mark("film", None, film),),
        bands=tuple(band for band in zones if (band.high or 0) > (band.low or 0)),
    )


CALCULATOR = Calculator(
    title="Profile grade",
    question="Is this surface profile right for the film?",
    inputs=Inputs,
    solve=solve,
    answers=(
        Out(
            key="profile-grade",
            label="Profile grade",
            meaning="Fine to low medium suits one coat of powder. Coarser takes a thicker film or a primer.",
            main=True,
            options=GRADES,
        ),
        Out(
            key="film-verdict",
            label="Film over it",
            meaning="Counted from the highest reading, as the highest peak rusts first.",
            options=COVERS,
            beside=True,
        ),
        Out(
            key="mean-peak",
            label="Mean peak, lowest to highest",
            meaning="Write the mean and the span on the job's sheet, with the method: tape, gauge and comparator do not agree.",
            unit="um",
            shown=("mil", "um"),
            beside=True,
        ),
        Out(
            key="spread",
            label="Spread",
            meaning="Highest less lowest. A wide spread means mixed or worn abrasive, or an uneven hand.",
            unit="um",
            shown=("mil", "um"),
        ),
        Out(
            key="film-over-peaks",
            label="Film over the peaks",
            meaning="Over the mean peak, and from the highest to the lowest. It is counted from the valleys, the careful way.",
            unit="um",
            shown=("mil", "um"),
        ),
        Out(
            key="share-of-film",
            label="Profile, of the film",
            meaning="About a third is a common wish, so that two thirds stand over the peaks (no source).",
            unit="percent",
            shown=("percent",),
            digits=2,
        ),
        Out(
            key="gauge-correction",
            label="Take off gauge readings",
            meaning="Only if the film gauge was set on smooth steel. Set on this blasted bare steel it needs none: never both.",
            unit="um",
            shown=("mil", "um"),
            digits=2,
        ),
    ),
    sources=("iso-8503-1", "iso-19840", "astm-d4417", "common-practice"),
    version=2,
    reviewed="2026-11-25",
    keywords=(
        "anchor profile",
        "anchor pattern",
        "replica tape",
        "peak to valley",
        "surface roughness",
        "comparator",
        "fine medium coarse",
        "how rough",
    ),
    limits=(
        "The grades were made for a comparator held against steel blasted to Sa 2 1/2 or Sa 3. Judging tape or gauge readings by "
        "them is common, and near, not equal.",
        "The segments were read on a comparator seller's sheet, not in ISO 8503.",
        "Replica tape, a depth gauge and a stylus read different things on the same steel. Compare only like with like.",
        "1 mil over the highest peak, and half of the film over the mean one, are common practice without a source.",
        "It counts peaks by height. How many there are, and how sharp, it does not see.",
        "Which profile a powder wants is on its data sheet, or is common practice without a source.",
    ),
    vary=Vary(
        "peak",
        ("0.8", "1.2", "1.8", "2.5", "3.5", "6.5"),
        ("profile-grade", "film-over-peaks", "gauge-correction"),
    ),
)
