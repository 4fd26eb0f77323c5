"""Draw what the blast grades let stay on one unit area, in the shares of tables/surface_grades.toml.

    python3 scripts/grade_pictures.py

Writes docs/assets/pictures/prepare/surface-grades.svg. Each square is one unit area, all at one scale; exactly the share that the
grade allows is filled, cell by cell. Where stains lie and what shape they have is invented, and the same each time.
"""

from __future__ import annotations

import sys
from dataclasses import dataclass
from html import escape
from math import sqrt
from pathlib import Path
from random import Random

ROOT = Path(__file__).resolve().parent.parent
sys.path.insert(0, str(ROOT))

from calculators.tables import table

FILE = ROOT / "docs" / "assets" / "pictures" / "prepare" / "surface-grades.svg"
UNITS_PER_IN = 40  # of the drawing
CELLS_PER_IN = 20
CELL = UNITS_PER_IN / CELLS_PER_IN
PLACES = ((28, 40), (206, 40), (28, 246), (206, 246))
# From most cleaned to least. In an SP 14 the share is what clings, and stain may be anywhere.
GRADES = ("sp5", "sp10", "sp6", "sp14")
CLINGS = ("sp14",)
# A stain lets the metal show through; what clings hides it.
STAIN, CRUST = ' fill-opacity="0.45"', ""
PATCH = 5  # cells from one knot of the noise to the next: the size of a patch


@dataclass(frozen=True)
class Swatch:
    """One grade on one unit area. side_in: its edge; percent: what may remain of it."""

    key: str
    iso: str
    side_in: float
    percent: float

    @property
    def cells(self) -> int:
        """Along one edge."""
        return round(self.side_in * CELLS_PER_IN)

    @property
    def remains_in2(self) -> float:
        return self.side_in**2 * self.percent / 100


def swatches() -> list[Swatch]:
    rows = table("surface_grades")
    # white metal has no unit area in the table, as nothing is counted on it; it is drawn as large as the others
    usual = float(rows["sp6"]["unit_area_in2"])
    return [
        Swatch(
            key,
            str(rows[key]["iso_grade"]),
            sqrt(float(rows[key].get("unit_area_in2", usual))),
            float(rows[key]["remains_percent"]),
        )
        for key in GRADES
    ]


def remaining(swatch: Swatch) -> set[tuple[int, int]]:
    """The cells that are not bare: (column, row), the allowed share of all of them, in patches."""
    chance = Random(GRADES.index(swatch.key))
    knots = swatch.cells // PATCH + 2
    height = [[chance.random() for _ in range(knots)] for _ in range(knots)]

    def noise(x: int, y: int) -> float:
        i, j = x // PATCH, y // PATCH
        u, v = (_smooth((one % PATCH) / PATCH) for one in (x, y))
        top = height[j][i] * (1 - u) + height[j][i + 1] * u
        bottom = height[j + 1][i] * (1 - u) + height[j + 1][i + 1] * u
        return top * (1 - v) + bottom * v

    # noise alone makes smooth blots: a little chance frays their edges
    worth = {
        (x, y): noise(x, y) + 0.08 * chance.random() for y in range(swatch.cells) for x in range(swatch.cells)
    }
    count = round(len(worth) * swatch.percent / 100)
    return set(sorted(worth, key=lambda cell: (-worth[cell], cell))[:count])


def _smooth(t: float) -> float:
    return t * t * (3 - 2 * t)


def runs(cells: set[tuple[int, int]], side: int) -> str:
    """The cells as one path of rows."""
    way = []
    for y in range(side):
        x = 0
        while x < side:
            long = 0
            while x + long < side and (x + long, y) in cells:
                long += 1
            if long:
                way.append(f"M{x} {y}h{long}v1h-{long}z")
            x += long + 1
    return "".join(way)


def words(swatch: Swatch) -> tuple[str, str]:
    """Two lines under a square: what may remain, and how much of the square that is."""
    if not swatch.percent:
        return "nothing may remain", "no stain"
    share = f"{swatch.remains_in2:g} of {swatch.side_in**2:g} in²"
    if swatch.key in CLINGS:
        return f"rust, scale, coat: {swatch.percent:g} %", f"{share}; stain anywhere"
    return f"stain only: {swatch.percent:g} %", share


def name(swatch: Swatch) -> str:
    """Like "SP 10, about Sa 2 1/2"; no number of the other system where there is no match."""
    short = f"SP {swatch.key.removeprefix('sp')}"
    return short if swatch.iso.startswith("none") else f"{short}, near {swatch.iso}"


def square(swatch: Swatch, x: float, y: float) -> list[str]:
    side = swatch.side_in * UNITS_PER_IN
    at = f'x="{x:g}" y="{y:g}" width="{side:g}" height="{side:g}"'
    parts = [f'<rect class="pic-metal" {at} data-grade="{swatch.key}"/>']
    if swatch.key in CLINGS:
        parts.append(f'<rect class="pic-hot" {at}{STAIN}/>')
    if swatch.percent:
        look = CRUST if swatch.key in CLINGS else STAIN
        parts.append(
            f'<path class="pic-hot" data-remains="{swatch.key}" '
            f'transform="translate({x:g} {y:g}) scale({CELL:g})" d="{runs(remaining(swatch), swatch.cells)}"{look}/>'
        )
    return [*parts, f'<rect class="pic-thin" fill="none" {at}/>']


def ruler(x: float, y: float, inches: float) -> list[str]:
    """An edge marked in inches, with its length in words."""
    ticks = "".join(f"M{x + one * UNITS_PER_IN:g} {y - 4:g}v8" for one in range(round(inches) + 1))
    middle = x + inches * UNITS_PER_IN / 2
    return [
        f'<path class="pic-thin" fill="none" d="M{x:g} {y:g}h{inches * UNITS_PER_IN:g}{ticks}"/>',
        f'<text class="pic-small" x="{middle:g}" y="{y - 9:g}" font-size="13" text-anchor="middle">'
        f"{inches:g} in ({inches * 25.4:.0f} mm)</text>",
    ]


def drawing() -> str:
    made = swatches()
    says = "; ".join(f"{name(one)}: {', '.join(words(one))}" for one in made)
    lines = [
        '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 360 432" width="540" role="img" '
        'aria-labelledby="prepare-surface-grades-title prepare-surface-grades-desc">',
        '<title id="prepare-surface-grades-title">What may remain on one unit area</title>',
        f'<desc id="prepare-surface-grades-desc">Four squares of blasted steel, each one unit area of '
        f"{made[0].side_in:g} by {made[0].side_in:g} inches. {escape(says)}. "
        f"The shares are drawn exactly; the shapes are invented.</desc>",
    ]
    for swatch, (x, y) in zip(made, PLACES, strict=True):
        side = swatch.side_in * UNITS_PER_IN
        middle = x + side / 2
        lines += square(swatch, x, y)
        if y == PLACES[0][1]:
            lines += ruler(x, y - 12, swatch.side_in)
        lines.append(
            f'<text class="pic-text" x="{middle:g}" y="{y + side + 20:g}" font-size="15" text-anchor="middle">'
            f"{escape(name(swatch))}</text>"
        )
        lines += [
            f'<text class="pic-small" x="{middle:g}" y="{y + side + 38 + 17 * at:g}" font-size="13" '
            f'text-anchor="middle">{escape(text)}</text>'
            for at, text in enumerate(words(swatch))
        ]
    return "\n".join([*lines, "</svg>", ""])


if __name__ == "__main__":
    FILE.parent.mkdir(parents=True, exist_ok=True)
    FILE.write_text(drawing(), "utf-8")
