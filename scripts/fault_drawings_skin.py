"""Faults of the skin: orange peel, uneven texture, marks that show through, lumps."""

from __future__ import annotations

import math

from fault_drawing import FILM, METAL, Drawing, bump, draws, flat, grains, pens, sound
from pictures_pen import HEIGHT, WIDTH, scattered


@draws("orange-peel")
def orange_peel() -> Drawing:
    face, cut = pens()
    face.face()
    for row in range(9):
        for place in range(13):
            x = 8 + place * 12.4 + (row % 2) * 6.2
            y = 9 + row * 10.2 + 1.5 * math.sin(place * 2.1 + row)
            if x < WIDTH - 6:
                face.path("thin", f"M{x - 4.6:.1f} {y + 1.5:.1f} q4.6 -6 9.2 0")
    cut.metal(METAL)

    def skin(x: float) -> float:
        return 34 - 5 * math.cos(x / 4.4) - 1.5 * math.cos(x / 9)

    cut.between("film", skin, flat(METAL))
    cut.outline(skin)
    return (
        "Orange peel",
        "Left: an even ripple over the whole face. Right: the film's skin goes up and down in waves; the metal is flat.",
        face, cut, ("even ripple", "waves in the skin only"),
    )  # fmt: skip


@draws("uneven-texture")
def uneven_texture() -> Drawing:
    face, cut = pens()
    face.face()
    for x, y in scattered(38, 2, 11, (8, 8, 76, 92)):
        face.circle("powder", x, y, 3.6)
        face.circle("thin", x, y, 3.6)
    for x, y in scattered(40, 9, 7, (92, 8, 160, 92)):
        face.circle("powder", x, y, 1.1)

    def skin(x: float) -> float:
        share = 1 / (1 + math.exp((x - 84) / 8))
        return FILM - 3 - share * (8 + 6 * math.sin(x / 3.3))

    cut.metal(METAL)
    cut.between("film", skin, flat(METAL))
    cut.outline(skin)
    return (
        "Uneven texture",
        "Left: one half of a textured face is coarse and the other is nearly flat. Right: the film is thick and knobbly "
        "where it is coarse, and thin where it is flat.",
        face, cut, ("coarse here, flat there", "film thick and thin"),
    )  # fmt: skip


@draws("show-through")
def show_through() -> Drawing:
    face, cut = pens()
    face.face()
    for place in range(9):
        face.line("thin", (10 + place * 5, 88 - place * 2), (44 + place * 6, 12 + place * 2))
    for place in range(9):
        x = 122 + 2 * math.sin(place)
        y = 10 + place * 9.5
        face.path("thin", f"M{x - 13:.1f} {y:.1f} q13 9 26 0")

    def metal(x: float) -> float:
        groove = sum(bump(x, at, 3.2, 15) for at in (24, 40, 56))
        return METAL + groove - bump(x, 124, 17, 17)

    def skin(x: float) -> float:
        groove = sum(bump(x, at, 4.4, 6) for at in (24, 40, 56))
        return FILM + groove - bump(x, 124, 19, 14)

    cut.between("metal", metal, flat(HEIGHT))
    cut.between("film", skin, metal)
    cut.outline(skin)
    return (
        "Scratches and pits show through",
        "Left: grinding lines and a weld bead can be seen in the coat. Right: the film follows grooves and a bead in the "
        "metal and does not level them.",
        face, cut, ("grinding lines and weld", "film follows the metal"),
    )  # fmt: skip


@draws("lumps")
def lumps() -> Drawing:
    face, cut = pens()
    face.face()
    for place, (x, y) in enumerate(scattered(8, 17, 30, (16, 16, 152, 84))):
        radius = 4 + place % 4 * 1.5
        face.circle("powder", x, y, radius)
        face.circle("thin", x, y, radius)
    sound(cut)

    def skin(x: float) -> float:
        return FILM - bump(x, 46, 9, 18) - bump(x, 122, 13, 24)

    cut.between("film", skin, flat(METAL))
    cut.outline(skin)
    grains(
        cut, [(40, 38), (49, 36), (45, 29), (113, 38), (122, 39), (131, 37), (117, 30), (126, 29), (121, 22)]
    )
    return (
        "Lumps and spits",
        "Left: round bumps of several sizes in the film's own colour. Right: clumps of powder grains stand up in the film.",
        face, cut, ("bumps, same colour", "clumps of grains"),
    )  # fmt: skip
