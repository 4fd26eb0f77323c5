"""How much surface and weight has this part? Its pieces added up, and the section that heats last."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from calculators.kit.calculator import Calculator, Out, Vary
from calculators.kit.chart import Axis, Chart, Series
from calculators.kit.fields import Choice, Option, Rows, Whole, ask
from calculators.kit.numbers import shop_number
from calculators.kit.result import Caution, Result, Table
from calculators.kit.steps import Step, step
from calculators.part._pieces import INCH, Piece, Sized, sized
from calculators.tables import table

FT2 = 0.09290304  # m2
LB = 0.45359237  # kg

HEATED = {
    "both-sides": "plate or wall, hot air on both sides",
    "one-side": "tube, heated from outside",
    "round-bar": "round bar",
    "square-bar": "square bar",
    "heat-path": "ball: its heat path",
}

# metals whose sheet goes by each gauge, or that have such sheet welded or bolted between castings
GAUGED = {
    "steel": ("carbon-steel", "galvanised", "cast-iron"),
    "galvanised": ("galvanised", "carbon-steel", "cast-iron"),
    "aluminium": ("aluminium", "copper-brass"),
}
GAUGE_WORDS = {"steel": "steel sheet", "galvanised": "galvanised sheet", "aluminium": "aluminium"}

# two cast ends by their weight, six straps between them; the bolts are masked
BENCH = """weighed, , , 5/8, , 22.1, 2
flat-bar, 1 1/2, , 1/8, 48, , 6"""


def _metals() -> tuple[Option, ...]:
    return tuple(
        Option(slug, row["name"], tuple(row.get("aliases", ()))) for slug, row in table("metals").items()
    )


@dataclass(frozen=True)
class Inputs:
    pieces: tuple[Piece, ...] = ask(
        Rows(
            label="Pieces",
            hint="One a line: shape, a, b, wall, length, mass, count, inside. Leave empty what a shape does not need",
            row=Piece,
            default=BENCH,
            at_most=200,
        )
    )
    metal: str = ask(Choice(label="Metal", options=_metals(), default="cast-iron", meaning="metal"))
    count: int = ask(
        Whole(label="Parts", hint="How many of this part", default="4", low=1, high=100_000, meaning="parts")
    )


def solve(asked: Inputs) -> Result:
    density: float = table("metals")[asked.metal]["density_kg_m3"]
    pieces = [sized(piece, line, density) for line, piece in enumerate(asked.pieces, 1)]
    area = sum(one.area_m2 * one.count for one in pieces)
    mass = sum(one.mass_kg * one.count for one in pieces)
    heaviest = max(pieces, key=lambda one: one.heat_path_m)
    lightest = min(pieces, key=lambda one: one.heat_path_m)
    # said as the cure plan reads it: through the same path when the heaviest is heated from one side, else as a plate
    thin = lightest.heat_path_m * (1 if heaviest.heated in ("one-side", "heat-path") else 2)
    cautions = list(_gauges(asked))
    if any(one.estimate for one in pieces):
        cautions.append(
            Caution(
                "caution",
                "A casting sized by its weight is an estimate: bosses and ribs make its surface smaller, edges larger. "
                "Allow 20 % either way.",
                "pieces",
                "shop-estimate",
            )
        )
    return Result(
        answers={
            "area": area * asked.count,
            "mass": mass * asked.count,
            "area-each": area,
            "mass-each": mass,
            "thickness": heaviest.thickness_m,
            "shape": heaviest.heated,
            "thinnest": thin,
        },
        cautions=tuple(cautions),
        steps=_steps(asked, pieces, area, mass, density),
        charts=(_chart(pieces),),
        tables=(_table(pieces),),
    )


def _gauges(asked: Inputs) -> Iterator[Caution]:
    """The same gauge number is another thickness in each metal."""
    for line, piece in enumerate(asked.pieces, 1):
        used = piece.gauge_ratio is not None and piece.shape not in table("sections")
        if used and asked.metal not in GAUGED[piece.gauge_of]:
            yield Caution(
                "caution",
                f"Line {line}: its gauge is that of {GAUGE_WORDS[piece.gauge_of]}, and the part is not. A gauge number is "
                "another thickness in each metal: measure the wall.",
                "pieces",
                "sheet-gauges",
            )


def _steps(asked: Inputs, pieces: list[Sized], area: float, mass: float, density: float) -> tuple[Step, ...]:
    first = pieces[0]
    return (
        step("Mass of one of the first piece", "m = rho * V", "kg", rho=density, V=first.mass_kg / density),
        step("Surface of all parts", "A = n * each", "m2", n=asked.count, each=area),
        step("Mass of all parts", "M = n * each", "kg", n=asked.count, each=mass),
    )


def _table(pieces: list[Sized]) -> Table:
    rows = tuple(
        (
            f"{place}. {one.name}",
            str(one.count),
            f"{shop_number(one.area_m2 * one.count / FT2, 3)} ft2",
            f"{shop_number(one.mass_kg * one.count / LB, 3)} lb",
            f"{shop_number(one.thickness_m / INCH, 3)} in, {HEATED[one.heated]}",
        )
        for place, one in enumerate(pieces, 1)
    )
    return Table("Piece by piece, for one part", ("Piece", "Count", "Surface", "Mass", "Section"), rows)


def _chart(pieces: list[Sized]) -> Chart:
    ranked = sorted(pieces, key=lambda one: one.heat_path_m)
    running, xs, ys = 0.0, [0.0], [ranked[0].heat_path_m / INCH]
    for one in ranked:
        xs.append(running / FT2)
        ys.append(one.heat_path_m / INCH)
        running += one.area_m2 * one.count
        xs.append(running / FT2)
        ys.append(one.heat_path_m / INCH)
    return Chart(
        title="How much of the surface is on how heavy metal",
        says="Metal behind each bit of surface: the last step heats last and sets the bake, the first is over-baked first.",
        x=Axis("surface of one part, ft2", 0),
        y=Axis("heat path, in", 0),
        series=(Series("heat path", tuple(xs), tuple(ys)),),
    )


CALCULATOR = Calculator(
    title="Part size",
    question="How much surface and weight has this part?",
    inputs=Inputs,
    solve=solve,
    answers=(
        Out(
            key="area",
            label="Coated area",
            meaning="Of all parts. Give it to the powder and the blasting, which ask for the whole job.",
            main=True,
            quantity="coated-area",
            unit="m2",
            shown=("ft2", "m2"),
        ),
        Out(
            key="mass",
            label="Mass",
            meaning="Of all parts. Check hooks, rack and lift against it before you hang anything.",
            quantity="part-mass",
            unit="kg",
            shown=("lb", "kg"),
            beside=True,
        ),
        Out(
            key="thickness",
            label="Heaviest section",
            meaning="It heats last, so it sets the bake. Measure the real part there.",
            quantity="thickest-section",
            unit="m",
            shown=("in", "mm"),
        ),
        Out(
            key="shape",
            label="It is a",
            meaning="How heat gets into that section: from both faces, one face, or all round.",
            quantity="section-shape",
            options=HEATED,
        ),
        Out(
            key="thinnest",
            label="Thinnest section",
            meaning="As a plate that heats alike. It is over-baked first, and the gun and the blast nozzle can warp it.",
            quantity="thinnest-section",
            unit="m",
            shown=("in", "mm"),
        ),
        Out(
            key="area-each",
            label="Area of one part",
            meaning="Powder for a sample panel or a single redo goes by this.",
            unit="m2",
            shown=("ft2", "m2"),
        ),
        Out(
            key="mass-each",
            label="Mass of one part",
            meaning="Weigh one: if it is more than a tenth away, look for a wrong wall or a missed piece.",
            unit="kg",
            shown=("lb", "kg"),
        ),
    ),
    sources=(
        "part-geometry",
        "sheet-gauges",
        "pipe-tables",
        "section-tables",
        "en-1993-1-2",
        "shop-estimate",
    ),
    version=1,
    reviewed="2026-11-25",
    keywords=(
        "surface area",
        "square feet of a part",
        "weight of steel",
        "sheet gauge",
        "pipe weight",
        "how much area to coat",
    ),
    limits=(
        "One metal is taken for all pieces. Where bars of another metal make up much of the part, size them apart.",
        "Corners are sharp and holes are not taken off. A hole narrower than the metal is thick adds surface.",
        "A tube counts as heated from outside only, closed or not, because little air goes through it.",
        "The inside of an open box or a deep pocket counts only if you list it. Powder reaches little of it.",
    ),
    vary=Vary("count", ("1", "4", "10", "50"), ("area", "mass")),
    default_cautions=(("caution", "pieces"),),
)
