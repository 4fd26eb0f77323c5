"""Draw the pictures of the fault finder: on the left what is seen, on the right the same place cut through.

    python3 scripts/fault_pictures.py

Writes docs/assets/pictures/faults/*.svg, the same files each time.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from pathlib import Path

from pictures_pen import HEIGHT, WIDTH, Pen, picture, scattered

FOLDER = Path(__file__).resolve().parent.parent / "docs" / "assets" / "pictures" / "faults"
FILM, METAL = 42, 66  # where a sound film's skin and the metal lie in a cut

Drawing = tuple[str, str, Pen, Pen, tuple[str, str]]
DRAWINGS: dict[str, Callable[[], Drawing]] = {}


def draws(name: str) -> Callable[[Callable[[], Drawing]], Callable[[], Drawing]]:
    def keep(make: Callable[[], Drawing]) -> Callable[[], Drawing]:
        DRAWINGS[name] = make
        return make

    return keep


def pens() -> tuple[Pen, Pen]:
    return Pen(), Pen()


def flat(y: float) -> Callable[[float], float]:
    return lambda x: y


def bump(x: float, at: float, width: float, height: float) -> float:
    return height * math.exp(-(((x - at) / width) ** 2))


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


@draws("thin-edges")
def thin_edges() -> Drawing:
    face, cut = pens()
    face.face("metal")
    face.path(
        "film",
        "M9 9 H159 Q157 34 160 60 L159 91 Q90 94 9 91 Q12 50 9 9 Z",
    )
    face.rect("thin", 0, 0, WIDTH, HEIGHT)
    for x, y in ((3, 70), (60, 96), (163, 28), (120, 4), (164, 82)):
        face.circle("hot", x, y, 3.4)
    cut.path("film", f"M0 20 H90 Q112 20 118.5 41.5 Q140 46 140 68 V{HEIGHT} H0 Z")
    cut.path("thin", f"M0 20 H90 Q112 20 118.5 41.5 Q140 46 140 68 V{HEIGHT}")
    cut.path("metal", f"M0 44 H116 V{HEIGHT} H0 Z")
    cut.arrow("note", 158, 12, -34, 24)
    return (
        "Thin edges",
        "Left: a panel whose edge is bare, with spots of rust. Right: a sharp edge cut through; the melted film has drawn "
        "back from it and is hardly there at the corner.",
        face, cut, ("bare line along the edge", "film draws back"),
    )  # fmt: skip


@draws("poor-stick")
def poor_stick() -> Drawing:
    face, cut = pens()
    face.face()
    way = "M58 30 L84 18 L112 34 L122 60 L96 78 L70 72 L52 54 Z"
    face.path("metal", way)
    face.path("thin", way)
    face.path("powder", "M112 34 L122 60 L142 54 L134 30 Z")
    face.path("thin", "M112 34 L122 60 L142 54 L134 30 Z")
    face.path("thin", "M58 30 L40 22 M52 54 L36 62 M96 78 L100 92")
    cut.metal(METAL)
    cut.rect("film", 0, FILM, 62, METAL - FILM)
    cut.path("film", f"M66 {METAL} L62 {FILM} Q110 36 148 2 L158 22 Q120 58 66 {METAL} Z")
    cut.path("thin", f"M66 {METAL} L62 {FILM} Q110 36 148 2 L158 22 Q120 58 66 {METAL} Z")
    cut.line("thin", (0, FILM), (62, FILM))
    cut.arrow("note", 136, 58, 0, -22)
    return (
        "Poor stick",
        "Left: a chip is gone and a flap lifts beside bare metal. Right: the film comes away from the metal in one piece.",
        face, cut, ("chip gone, flap lifting", "film lets go of metal"),
    )  # fmt: skip


def main() -> None:
    FOLDER.mkdir(parents=True, exist_ok=True)
    for name, make in DRAWINGS.items():
        (FOLDER / f"{name}.svg").write_text(picture(f"faults/{name}", *make()), "utf-8")


if __name__ == "__main__":
    main()
