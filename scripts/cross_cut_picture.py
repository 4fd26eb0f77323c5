"""Draw the cross-cut classes from their printed limits: each lattice has lost exactly the most that its class allows.

    python3 scripts/cross_cut_picture.py

Writes docs/assets/pictures/inspect/cross-cut-classes.svg. The lattice is five by five unit squares of CELLS by CELLS cells;
what comes off first lies nearest a crossing of two cuts, as it does on a plate.
"""

from __future__ import annotations

import sys
from html import escape
from pathlib import Path
from random import Random

ROOT = Path(__file__).resolve().parent.parent
sys.path.insert(0, str(ROOT))

from calculators.tables import table

FILE = ROOT / "docs" / "assets" / "pictures" / "inspect" / "cross-cut-classes.svg"
SQUARES, CELLS = 5, 8
SIDE = SQUARES * CELLS
CELL = 2.2  # units of the drawing
CLASSES = (
    ("iso-0", "5b"),
    ("iso-1", "4b"),
    ("iso-2", "3b"),
    ("iso-3", "2b"),
    ("iso-4", "1b"),
    ("iso-5", "0b"),
)
# The worst class has no upper end: one plate of many that would be in it.
WORST_PERCENT = 80


def shares() -> list[float]:
    """What each lattice has lost, in per cent."""
    most = [float(table("cross_cut")[iso]["most_percent"]) for iso, _ in CLASSES]
    return [*most[:-1], WORST_PERCENT]


def lost(percent: float, seed: int) -> set[tuple[int, int]]:
    """The cells that have come off: (column, row), the given share of all of them."""
    chance = Random(seed)
    corner = {(i, j): chance.uniform(0.5, 1.6) for i in range(SQUARES + 1) for j in range(SQUARES + 1)}
    whole = {(i, j): chance.uniform(0.6, 1.8) for i in range(SQUARES) for j in range(SQUARES)}

    def holds(cell: tuple[int, int]) -> float:
        """How well a cell holds: worse near a crossing, and in a square that lets go as a whole."""
        x, y = (cell[0] + 0.5) / CELLS, (cell[1] + 0.5) / CELLS
        i, j = round(x), round(y)
        to_crossing = (abs(x - i) + abs(y - j)) * corner[i, j]
        return min(to_crossing, 0.75 * whole[int(x), int(y)])

    cells = [(x, y) for x in range(SIDE) for y in range(SIDE)]
    count = round(len(cells) * percent / 100)
    return set(sorted(cells, key=lambda cell: (holds(cell), cell))[:count])


def runs(cells: set[tuple[int, int]]) -> str:
    """The cells as one path of rows."""
    way = []
    for y in range(SIDE):
        x = 0
        while x < SIDE:
            long = 0
            while x + long < SIDE and (x + long, y) in cells:
                long += 1
            if long:
                way.append(f"M{x} {y}h{long}v1h-{long}z")
            x += long + 1
    return "".join(way)


def lattice(x: float, y: float, percent: float, seed: int) -> list[str]:
    end = SIDE * CELL
    cuts = "".join(
        f"M{x + at * CELLS * CELL:.1f} {y - 6:.1f}v{end + 12:.1f}M{x - 6:.1f} {y + at * CELLS * CELL:.1f}h{end + 12:.1f}"
        for at in range(SQUARES + 1)
    )
    parts = [
        f'<rect class="pic-film" x="{x - 9:.1f}" y="{y - 9:.1f}" width="{end + 18:.1f}" height="{end + 18:.1f}"/>'
    ]
    if percent:
        parts.append(
            f'<path class="pic-metal" data-lost="{percent:g}" transform="translate({x:.1f} {y:.1f}) scale({CELL})" '
            f'd="{runs(lost(percent, seed))}"/>'
        )
    return [*parts, f'<path class="pic-thin" d="{cuts}"/>']


def main() -> None:
    most = shares()
    words = (
        ["nothing off"] + [f"up to {share:g} % off" for share in most[1:-1]] + [f"over {most[-2]:g} % off"]
    )
    lines = [
        '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 360 322" width="540" role="img" '
        'aria-labelledby="inspect-cross-cut-classes-title inspect-cross-cut-classes-desc">',
        '<title id="inspect-cross-cut-classes-title">Cross-cut classes of ISO 2409 and ASTM D3359</title>',
        '<desc id="inspect-cross-cut-classes-desc">Six lattices of 25 squares. '
        + escape(
            "; ".join(
                f"ISO {iso[-1]} is {us.upper()}: {word}"
                for (iso, us), word in zip(CLASSES, words, strict=True)
            )
        )
        + f". The last one has lost {most[-1]:g} %. The two scales run opposite ways.</desc>",
    ]
    for place, ((iso, us), share, word) in enumerate(zip(CLASSES, most, words, strict=True)):
        x, y = 16 + 120 * (place % 3), 14 + 160 * (place // 3)
        middle = x + SIDE * CELL / 2
        lines += lattice(x, y, share, place)
        lines += [
            f'<text class="pic-text" x="{middle:.0f}" y="{y + 118}" font-size="15" text-anchor="middle">'
            f"ISO {iso[-1]} = {us.upper()}</text>",
            f'<text class="pic-small" x="{middle:.0f}" y="{y + 136}" font-size="13" text-anchor="middle">{word}</text>',
        ]
    FILE.parent.mkdir(parents=True, exist_ok=True)
    FILE.write_text("\n".join([*lines, "</svg>", ""]), "utf-8")


if __name__ == "__main__":
    main()
