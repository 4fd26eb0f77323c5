"""Faults that are holes: pinholes, bubbles, craters, fish eyes, stars."""

from __future__ import annotations

import math

from fault_drawing import FILM, METAL, Drawing, bump, draws, flat, pens
from pictures_pen import WIDTH, scattered


@draws("pinholes")
def pinholes() -> Drawing:
    face, cut = pens()
    face.face()
    for x, y in scattered(34, 3, 7, (20, 14, 90, 84)) + scattered(12, 5, 8, (108, 30, 156, 70)):
        face.hole(x, y, 1.8)
    cut.metal(METAL)
    cut.between("film", flat(FILM), flat(METAL))
    for x, low in ((30, METAL), (52, 58), (86, METAL), (104, 56), (140, METAL)):
        cut.rect("fill", x - 1.8, FILM - 1, 3.6, low - FILM + 1)
        cut.line("thin", (x - 1.8, FILM), (x - 1.8, low))
        cut.line("thin", (x + 1.8, FILM), (x + 1.8, low))
        if low == METAL:
            cut.hole(x, METAL + 9, 6)
            cut.arrow("note", x, 34, 0, -22)
    return (
        "Pinholes",
        "Left: fine round holes in clusters. Right: narrow channels through the film, some down to a pore in the metal, "
        "with gas rising out of them.",
        face, cut, ("clusters of fine holes", "gas from the metal"),
    )  # fmt: skip


@draws("bubbles")
def bubbles() -> Drawing:
    face, cut = pens()
    face.face()
    for place, (x, y) in enumerate(scattered(11, 8, 26, (18, 18, 150, 82))):
        radius = 6 + 5 * (place % 3) / 2
        face.circle("thin", x, y, radius)
        shine = radius * 0.55
        face.path(
            "thin",
            f"M{x - shine:.1f} {y - radius * 0.1:.1f} A{shine:.1f} {shine:.1f} 0 0 1 {x:.1f} {y - radius * 0.6:.1f}",
        )
    cut.metal(METAL)

    def skin(x: float) -> float:
        return FILM - bump(x, 48, 15, 24) - bump(x, 120, 19, 30)

    cut.between("film", skin, flat(METAL))
    cut.outline(skin)
    for x, wide, high in ((48, 13, 18), (120, 17, 24)):
        top, side = METAL - high * 1.5, METAL - high * 1.4
        way = (
            f"M{x - wide} {METAL} Q{x - wide} {side:.1f} {x} {top:.1f} "
            f"Q{x + wide} {side:.1f} {x + wide} {METAL} Z"
        )
        cut.path("fill", way)
        cut.path("thin", way)
    return (
        "Bubbles",
        "Left: closed domes of several sizes. Right: the film is lifted off the metal over a hollow.",
        face, cut, ("closed domes", "hollow under the film"),
    )  # fmt: skip


@draws("craters")
def craters() -> Drawing:
    face, cut = pens()
    face.face()
    for x, y in scattered(8, 21, 32, (18, 18, 150, 82)):
        face.circle("powder", x, y, 9)
        face.circle("thin", x, y, 9)
        face.hole(x, y, 3.6)
    cut.metal(METAL)

    def skin(x: float) -> float:
        return FILM - bump(x, 72, 6, 22) - bump(x, 96, 6, 22)

    cut.between("film", skin, flat(METAL), 0, 78)
    cut.between("film", skin, flat(METAL), 90, WIDTH)
    cut.outline(skin, 0, 78)
    cut.outline(skin, 90, WIDTH)
    cut.hole(84, METAL + 12, 11)
    cut.rect("fill", 78.6, METAL - 2, 10.8, 6)
    cut.arrow("note", 84, METAL + 6, 0, -58)
    return (
        "Craters with a raised rim",
        "Left: rings with a hole in the middle. Right: gas from a pore in the metal has blown through the film and left "
        "a raised rim on both sides.",
        face, cut, ("raised ring, hole inside", "gas blew out of metal"),
    )  # fmt: skip


@draws("fish-eyes")
def fish_eyes() -> Drawing:
    face, cut = pens()
    face.face()
    for place, (x, y) in enumerate(scattered(6, 4, 42, (22, 22, 146, 78))):
        radius = 12 + 2 * (place % 3)
        face.circle("powder", x, y, radius)
        face.circle("thin", x, y, radius)
        face.circle("metal", x, y, radius * 0.5)
    cut.metal(METAL)

    def left(x: float) -> float:
        return METAL - (24 + bump(x, 44, 9, 5)) * math.sqrt(max(0.0, 1 - (x / 56) ** 8))

    def right(x: float) -> float:
        return left(WIDTH - x)

    cut.between("film", left, flat(METAL), 0, 56)
    cut.outline(left, 0, 56)
    cut.between("film", right, flat(METAL), 112, WIDTH)
    cut.outline(right, 112, WIDTH)
    cut.path("hot", f"M70 {METAL} Q84 {METAL - 13} 98 {METAL} Z")
    cut.path("thin", f"M70 {METAL} Q84 {METAL - 13} 98 {METAL} Z")
    return (
        "Fish eyes",
        "Left: round dishes with a smooth rim and bare metal in the middle. Right: the melted film has drawn back from a "
        "drop of oil on the metal.",
        face, cut, ("round dish, bare middle", "drawn back from oil"),
    )  # fmt: skip


@draws("stars")
def stars() -> Drawing:
    face, cut = pens()
    face.face("powder")
    for x, y in scattered(9, 12, 30, (18, 16, 150, 84)):
        points = []
        for turn in range(12):
            radius = 10 if turn % 2 == 0 else 3.4
            angle = math.pi * turn / 6 + x
            points.append((x + radius * math.cos(angle), y + radius * math.sin(angle)))
        way = "M" + " L".join(f"{a:.1f} {b:.1f}" for a, b in points) + " Z"
        face.path("fill", way)
        face.path("thin", way)
    cut.metal(METAL + 10)
    for row in range(5):
        for place in range(17):
            x = 5 + place * 10 + (row % 2) * 5
            if abs(x - 84) > 6 + row * 5 and x < WIDTH - 4:
                cut.circle("powder", x, METAL + 5 - row * 9, 4.8)
                cut.circle("thin", x, METAL + 5 - row * 9, 4.8)
    cut.path("thin", f"M84 {METAL + 8} L78 52 L88 46 L80 26 L92 16")
    cut.arrow("note", 66, 22, -22, -16)
    cut.arrow("note", 104, 22, 22, -16)
    return (
        "Stars in the powder",
        "Left: star-shaped pits in raw powder. Right: charge breaks through a thick layer of grains from the metal and "
        "throws powder off.",
        face, cut, ("stars in raw powder", "charge bursts through"),
    )  # fmt: skip
