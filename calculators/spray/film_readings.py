"""Does this film pass? Readings as they come off the gauge, made into spots and areas, judged by the rule of the order."""

from __future__ import annotations

from dataclasses import dataclass
from statistics import fmean

from calculators.kit.calculator import Calculator, Out, Vary
from calculators.kit.chart import Axis, Band, Chart, Series
from calculators.kit.fields import Choice, Limits, Option, Quantity, Readings, When, Whole, ask
from calculators.kit.result import Caution, Clash, Result, Table, Value
from calculators.kit.steps import Step, step
from calculators.spray import _film_rules as rules
from calculators.spray._film_rules import MIL, Judged, Limit, film
from calculators.spray._powder_fields import FILM_UNITS
from calculators.tables import table

# Invented: 15 readings on a bench's end, three at each of five spots; spot 3 is thin and still allowed at level 3.
EXAMPLE = "2.6 2.7 2.8\n3.0 3.1 2.9\n2.3 2.4 2.5\n3.2 3.4 3.1\n2.8 2.9 3.0"
FILM = Limits("0.2 mil", "60 mil", "thinner does not close, thicker is not one coat of powder")
PA2 = tuple(f"pa2-level-{level}" for level in range(1, 6))
ROWS = 60  # of the table; the rest is in the reader's own file
ISO_THINNEST_um = 40.0  # nominal film below which ISO 19840 does not apply


@dataclass(frozen=True)
class Inputs:
    readings_um: tuple[float, ...] = ask(
        Readings(
            group="Off the gauge",
            label="Film readings",
            hint="In the order taken, with spaces or new lines between; or a gauge's CSV file",
            units=FILM_UNITS,
            default=EXAMPLE,
            limits=Limits("0 mil", "60 mil", "thicker is not powder; micrometres need their own unit"),
            at_most=3_000,
            takes_file=True,
        )
    )
    low_um: float = ask(
        Quantity(
            group="What was agreed",
            label="Lowest film",
            hint="From the order or the powder's data sheet",
            units=FILM_UNITS,
            default="2.5",
            limits=FILM,
        )
    )
    high_um: float = ask(Quantity(label="Highest film", units=FILM_UNITS, default="3.5", limits=FILM))
    rule: str = ask(
        Choice(
            label="Rule",
            hint="Level 3 is the usual one in the US where the order names none",
            options=(
                Option("pa2-level-1", "SSPC-PA 2 level 1 (strict)", ("level 1",)),
                Option("pa2-level-2", "SSPC-PA 2 level 2", ("level 2",)),
                Option("pa2-level-3", "SSPC-PA 2 level 3 (usual)", ("level 3", "sspc-pa 2", "pa2")),
                Option("pa2-level-4", "SSPC-PA 2 level 4", ("level 4",)),
                Option("pa2-level-5", "SSPC-PA 2 level 5 (no top)", ("level 5",)),
                Option("iso-19840", "ISO 19840 (single readings)", ("iso",)),
            ),
            default="pa2-level-3",
        )
    )
    per_spot: int = ask(
        Whole(
            group="How it was measured",
            label="Readings at each spot",
            hint="Three or more within a 1.5 in (4 cm) circle; 1 if each number is a spot's mean already",
            default="3",
            low=1,
            high=50,
            when=When("rule", PA2),
        )
    )
    area_m2: float | None = ask(
        Quantity(
            label="Area to judge",
            hint="Says how many readings it takes; empty to judge those you have as they stand",
            units=("ft2", "m2"),
            default="41.2",
            may_be_empty=True,
            limits=Limits("0.1 ft2", "1000000 ft2", "from a bracket to a bridge"),
            example="100 ft2",
        )
    )
    profile_correction_um: float = ask(
        Quantity(
            label="Profile correction",
            hint="Taken off every reading. 0 if the gauge was set on the same blasted metal, or the part is smooth",
            units=FILM_UNITS,
            default="0",
            limits=Limits("0 mil", "6 mil", "deeper is not a blast under powder"),
        )
    )


def solve(asked: Inputs) -> Result:
    if asked.high_um <= asked.low_um:
        raise Clash(("high", "Highest film must be more than the lowest film"))
    if asked.profile_correction_um and asked.profile_correction_um >= min(asked.readings_um):
        raise Clash(
            (
                "profile-correction",
                f"Profile correction must be less than every reading; the lowest is {film(min(asked.readings_um))}",
            )
        )
    films = tuple(one - asked.profile_correction_um for one in asked.readings_um)
    limit = rules.limits_of(asked.rule, asked.low_um, asked.high_um)
    if asked.rule == "iso-19840":
        judged = rules.by_readings(films, limit, asked.rule, asked.low_um, asked.area_m2)
    else:
        judged = rules.by_spots(films, asked.per_spot, limit, asked.area_m2)
    verdict = "fail" if judged.failed else "too-few" if judged.more or not judged.spots else "pass"
    none = Value(words="no whole spot yet")
    return Result(
        answers={
            "verdict": verdict,
            "mean": fmean(films),
            "lowest-spot": min(judged.spots) if judged.spots else none,
            "highest-spot": max(judged.spots) if judged.spots else none,
            "failed": judged.failed,
            "readings-needed": Value(words="no area given")
            if judged.needed is None
            else float(judged.needed),
            "readings-given": float(len(films)),
            "still-to-take": judged.more or "nothing more",
        },
        headline=_headline(verdict, judged, asked.rule),
        cautions=tuple(_cautions(asked, films, judged, verdict)),
        steps=_steps(asked, films, limit, judged),
        tables=_tables(asked, judged, limit),
        charts=(_chart(asked, judged, limit),) if judged.spots else (),
    )


def _headline(verdict: str, judged: Judged, rule: str) -> str:
    words = f"{WORDS[verdict]} by {rules.name_of(rule)}"
    if judged.failed:
        return f"{words}. {judged.failed[0]}"
    return f"{words}: take {judged.more}" if judged.more else words


def _cautions(asked: Inputs, films: tuple[float, ...], judged: Judged, verdict: str) -> list[Caution]:
    found = []
    if verdict == "pass" and asked.area_m2 is None and (few := _few(asked, judged)):
        words = f"No area was given, so what is there was judged: {few}. Enter the area to see how many readings it takes."
        found.append(Caution("caution", words, "area"))
    mean = fmean(films)
    if not asked.low_um / 8 < mean < 8 * asked.high_um:
        words = f"The mean, {film(mean)}, is far from the range. Check the unit of the readings."
        found.append(Caution("caution", words, "readings"))
    if asked.rule == "iso-19840" and asked.low_um < ISO_THINNEST_um * (1 - 1e-9):
        words = "ISO 19840 is not for films under 40 um (1.6 mil). Agree another rule."
        found.append(Caution("caution", words, "low", "iso-19840"))
    if asked.rule != "iso-19840" and asked.per_spot < 3:
        words = "Each number counts as a spot's mean. SSPC-PA 2 wants three readings or more behind it."
        found.append(Caution("note", words, "per-spot", "sspc-pa2"))
    if asked.profile_correction_um:
        words = (
            "A correction belongs to one case only: gauge set on smooth metal, part blasted. If the gauge was set on the same "
            "blasted metal, put 0, or the profile is taken off twice."
        )
        found.append(Caution("note", words, "profile-correction", "iso-19840"))
    if judged.failed and asked.rule != "iso-19840" and len(judged.areas) > 1:
        words = (
            "Find how far the bad area reaches: measure outwards from it until the spots pass, and mark it."
        )
        found.append(Caution("note", words, "readings", "common-practice"))
    thick = asked.high_um if asked.rule == "pa2-level-5" else 10 * MIL
    if max(films) > max(thick, 10 * MIL):
        words = "Some of it is over 10 mil (254 um). So thick a film may be bubbled or brittle, whatever the rule says."
        found.append(Caution("caution", words, "readings", "powder-sheets"))
    return found


def _few(asked: Inputs, judged: Judged) -> str:
    """In what the readings fall short of the smallest set that the rule knows; empty where they do not."""
    if asked.rule == "iso-19840":
        least = rules.ISO_READINGS[0][1]
        return f"{len(judged.spots)} of the {least} readings that ISO 19840 takes at least" * (
            len(judged.spots) < least
        )
    spots = judged.areas[-1][1]
    which = "the last area" if len(judged.areas) > 1 else "the area"
    return f"{which} has {spots} of its {rules.SPOTS} spots" * (spots < rules.SPOTS)


def _steps(asked: Inputs, films: tuple[float, ...], limit: Limit, judged: Judged) -> tuple[Step, ...]:
    row = table("film_rules")[asked.rule]
    word = "reading" if asked.rule == "iso-19840" else "spot"
    made = [
        step(f"Lowest {word} allowed", "L = low * share", "um", low=asked.low_um, share=row["spot_low"]),
    ]
    if limit.spot_high_um is not None:
        made.append(
            step(
                f"Highest {word} allowed",
                "H = high * share",
                "um",
                high=asked.high_um,
                share=row["spot_high"],
            )
        )
    made.append(step("Mean of all readings", "M = total / count", "um", total=sum(films), count=len(films)))
    if asked.rule != "iso-19840" and judged.needed is not None:
        made.append(
            step(
                "Readings that the area needs",
                "N = areas * 5 * per_spot",
                areas=judged.needed / rules.SPOTS / asked.per_spot,
                per_spot=asked.per_spot,
            )
        )
    return tuple(made)


def _tables(asked: Inputs, judged: Judged, limit: Limit) -> tuple[Table, ...]:
    if not judged.spots:
        return ()
    single = asked.rule == "iso-19840"
    word = "Reading" if single else "Spot"
    rows = []
    for place, spot in enumerate(judged.spots[:ROWS], 1):
        where = "" if single else str((place - 1) // rules.SPOTS + 1)
        rows.append((str(place), *((where,) if where else ()), film(spot), _mark(spot, limit)))
    cut = f", the first {ROWS} of {len(judged.spots)}" if len(judged.spots) > ROWS else ""
    head = (word, "Film", "By the rule") if single else (word, "Area", "Mean film", "By the rule")
    return (Table(f"{word}s{cut}", head, tuple(rows)),)


def _mark(spot: float, limit: Limit) -> str:
    if spot < limit.spot_low_um * (1 - rules.SLACK):
        return "too thin"
    if limit.spot_high_um is not None and spot > limit.spot_high_um * (1 + rules.SLACK):
        return "too thick"
    if spot < limit.mean_low_um * (1 - rules.SLACK):
        return "thin, allowed"
    if limit.mean_high_um is not None and spot > limit.mean_high_um * (1 + rules.SLACK):
        return "thick, allowed"
    return "in range"


def _chart(asked: Inputs, judged: Judged, limit: Limit) -> Chart:
    spots = tuple(spot / MIL for spot in judged.spots)
    places = tuple(float(place) for place in range(1, len(spots) + 1))
    single = asked.rule == "iso-19840"
    top_um = max(limit.spot_high_um or asked.high_um, asked.high_um, max(judged.spots))
    bands = [Band("", limit.spot_low_um / MIL, asked.low_um / MIL, "near")]
    if limit.spot_high_um is not None and limit.spot_high_um > asked.high_um:
        bands.append(Band("", asked.high_um / MIL, limit.spot_high_um / MIL, "near"))
    bands.append(Band("agreed", asked.low_um / MIL, asked.high_um / MIL, "good"))
    return Chart(
        title="The readings in the range" if single else "The spots in the range",
        says="The middle zone is the range agreed; the zones beside it are as far as the rule lets a single one stray.",
        x=Axis("reading" if single else "spot", 0, len(spots) + 1.0),
        y=Axis("film, mil", 0, 1.15 * top_um / MIL),
        series=(Series("", places, spots), Series("", places, spots, dots=True)),
        bands=tuple(bands),
    )


WORDS = {"pass": "Pass", "fail": "Fail", "too-few": "Too few readings"}

CALCULATOR = Calculator(
    title="Film readings",
    question="Does this film pass?",
    inputs=Inputs,
    solve=solve,
    answers=(
        Out(
            key="verdict",
            label="By this rule",
            meaning="Clauses that fail and readings still to take are named below. Write rule, gauge and readings on the job.",
            main=True,
            options=WORDS,
        ),
        Out(
            key="mean",
            label="Mean",
            meaning="Of all readings, correction taken off. The mean alone never passes a film.",
            quantity="film-measured",
            unit="um",
            shown=("mil", "um"),
            beside=True,
        ),
        Out(
            key="failed",
            label="Clauses that fail",
            meaning="Each one alone fails the film. Touch up, or strip and redo, and measure again.",
            beside=True,
        ),
        Out(
            key="still-to-take",
            label="Still to take",
            meaning="Until then nothing is passed, however good the readings look.",
            beside=True,
        ),
        Out(
            key="lowest-spot",
            label="Lowest spot",
            meaning="By ISO 19840 the lowest single reading. Look there first for bare edges.",
            unit="um",
            shown=("mil", "um"),
        ),
        Out(
            key="highest-spot",
            label="Highest spot",
            meaning="By ISO 19840 the highest single reading. Look there for orange peel and bubbles.",
            unit="um",
            shown=("mil", "um"),
        ),
        Out(
            key="readings-needed",
            label="Readings needed",
            meaning="For the area given, by the rule chosen. More never hurt.",
            unit="ratio",
            digits=0,
        ),
        Out(
            key="readings-given",
            label="Readings given",
            meaning="Check it against the gauge's own count, to see that none was lost.",
            unit="ratio",
            digits=0,
        ),
    ),
    sources=("sspc-pa2", "iso-19840", "astm-d7091", "powder-sheets", "common-practice"),
    version=1,
    reviewed="2026-11-25",
    keywords=(
        "dft",
        "mils",
        "dry film thickness",
        "pa 2",
        "gauge readings",
        "how many readings",
        "90/10",
        "80/20",
        "spot and area",
    ),
    limits=(
        "The two rules differ: the same readings may pass one and fail the other. Go by the one in the order.",
        "From memory: PA 2's levels 1, 2, 4 and 5, and ISO 19840's count of readings and its clause on readings a little short.",
        "A gauge that was not checked on its shims, or set on other metal, gives readings that no rule can mend.",
        "Both rules are written for paint on steel structures. For small parts agree the number of readings with the customer.",
        "SSPC-PA 2 has its own appendices for beams and small parts, which are not worked here.",
    ),
    vary=Vary("rule", (*PA2, "iso-19840"), ("verdict", "failed", "readings-needed")),
)
