"""Faults of colour and shine: off shade, yellow, dull, cloudy metallic, chalk, white after water."""

from __future__ import annotations

import math

from fault_drawing import FILM, METAL, Drawing, draws, flat, pens, shape, sound
from pictures_pen import HEIGHT, WIDTH, scattered


@draws("colour-off")
def colour_off() -> Drawing:
    face, cut = pens()
    face.face()
    face.rect("powder", 84, 0, 84, HEIGHT, ' fill-opacity="0.5"')
    face.rect("fill", 30, 26, 24, 48)
    face.rect("film", 33, 29, 18, 42)
    face.rect("fill", 114, 26, 24, 48)
    face.rect("film", 117, 29, 18, 42)
    cut.metal(METAL)
    cut.between("film", flat(FILM - 4), flat(METAL), 0, 80)
    cut.between("film", flat(METAL - 9), flat(METAL), 88, WIDTH)
    cut.line("thin", (0, FILM - 4), (80, FILM - 4))
    cut.line("thin", (88, METAL - 9), (WIDTH, METAL - 9))
    for x, low in ((24, FILM - 4), (112, METAL)):
        cut.arrow("note", x, 6, 16, low - 6)
        cut.arrow("note", x + 16, low, 16, 8 - low)
    return (
        "Colour off",
        "Left: the same sample card matches one part and not the other. Right: light comes back from a thick film, and "
        "goes through a thin one to the metal.",
        face, cut, ("sample fits one of two", "thin film shows metal"),
    )  # fmt: skip


@draws("yellowing")
def yellowing() -> Drawing:
    face, cut = pens()
    face.face()
    for place in range(7):
        face.rect("hot", place * 24, 0, 24, HEIGHT, f' fill-opacity="{0.12 * place:.2f}"')
    cut.path("metal", f"M0 {METAL - 10} H100 V78 H{WIDTH} V90 H100 V{HEIGHT} H0 Z")
    cut.path("film", f"M0 34 H112 V64 H{WIDTH} V78 H100 V{METAL - 10} H0 Z")
    cut.path("hot", f"M100 64 H{WIDTH} V78 H100 Z", ' fill-opacity="0.8"')
    cut.path("thin", f"M0 34 H112 V64 H{WIDTH} V78 H100 V{METAL - 10} H0 Z")
    for x in (124, 140, 156):
        cut.path("hot", f"M{x - 2} 14 h4 v28 h5 l-7 12 l-7 -12 h5 Z")
    return (
        "Yellow or brown",
        "Left: a face turns brown towards one side. Right: the film is brown on the thin section of the metal, "
        "which took the most heat.",
        face, cut, ("colour turns brown", "thin metal goes first"),
    )  # fmt: skip


@draws("dull")
def dull() -> Drawing:
    face, cut = pens()
    face.face()
    face.rect("hot", 28, 22, 26, 54)
    for grow in range(5):
        face.rect("hot", 110 - 5 * grow, 22 - 4 * grow, 26 + 10 * grow, 54 + 8 * grow, ' fill-opacity="0.13"')
    face.line("note", (84, 0), (84, HEIGHT))

    def skin(x: float) -> float:
        return FILM + (1.8 * math.sin(x * 1.9) if x > 84 else 0)

    cut.metal(METAL)
    cut.path(
        "film",
        "M0 42 H84 " + " ".join(f"L{x} {skin(x):.1f}" for x in range(85, WIDTH + 1)) + f" V{METAL} H0 Z",
    )
    cut.path("thin", "M0 42 H84 " + " ".join(f"L{x} {skin(x):.1f}" for x in range(85, WIDTH + 1)))
    cut.arrow("note", 12, 8, 26, 33)
    cut.arrow("note", 40, 40, 26, -33)
    cut.arrow("note", 98, 8, 26, 31)
    for dx, dy in ((-18, -22), (2, -28), (20, -24), (32, -12)):
        cut.arrow("note", 126, 38, dx, dy)
    return (
        "Dull or patchy shine",
        "Left: a lamp seen in a shiny half is sharp, in a dull half a blur. Right: a smooth skin sends light back one "
        "way, a rough one scatters it.",
        face, cut, ("lamp sharp, lamp blurred", "rough skin, light strays"),
    )  # fmt: skip


@draws("metallic-clouds")
def metallic_clouds() -> Drawing:
    face, cut = pens()
    face.face()
    for place in range(4):
        x = 6 + place * 42
        way = (
            f"M{x} 0 Q{x + 8} 30 {x - 2} 60 Q{x - 4} 84 {x + 4} 100 "
            f"H{x + 22} Q{x + 14} 70 {x + 22} 44 Q{x + 26} 20 {x + 20} 0 Z"
        )
        face.path("powder", way, ' fill-opacity="0.75"')
    for x, y in scattered(60, 31, 6):
        face.circle("fill", x, y, 1)
    sound(cut, METAL, 30)
    cut.line("thin", (0, 30), (WIDTH, 30))
    for place, x in enumerate(range(8, WIDTH - 6, 12)):
        y = 38 + (place * 7) % 22
        lean = 0.1 if x < 84 else (0.9 if place % 2 else -1.1)
        cut.line(
            "thin",
            (x - 5 * math.cos(lean), y - 5 * math.sin(lean)),
            (x + 5 * math.cos(lean), y + 5 * math.sin(lean)),
        )
    return (
        "Metallic cloudy or striped",
        "Left: pale stripes across a metallic face. Right: flakes lie flat in one place and at all angles in another.",
        face, cut, ("stripes across the face", "flakes flat and askew"),
    )  # fmt: skip


@draws("chalking")
def chalking() -> Drawing:
    face, cut = pens()
    face.face()
    face.rect("metal", 0, 0, WIDTH, HEIGHT, ' fill-opacity="0.6"')
    face.path("film", "M14 70 L96 16 L120 44 L36 94 Z")
    shape(face, "fill", "M92 12 L112 4 L136 34 L124 50 Z")
    for x, y in scattered(16, 4, 5, (104, 14, 124, 40)):
        face.circle("metal", x, y, 1.6)

    def skin(x: float) -> float:
        return FILM + 4 + 2.5 * math.sin(x / 2.7) * math.sin(x / 11)

    cut.metal(METAL)
    cut.between("film", skin, flat(METAL))
    cut.outline(skin)
    for x, y in scattered(26, 7, 6, (6, 34, 162, 42)):
        cut.circle("powder", x, y, 2)
        cut.circle("thin", x, y, 2)
    cut.circle("hot", 140, 12, 8)
    for dx, dy in ((-34, 14), (-14, 18), (8, 18)):
        cut.arrow("note", 140 + dx * 0.4, 14 + dy * 0.5, dx * 0.6, dy * 0.6)
    return (
        "Chalking and fading",
        "Left: a cloth wiped over the face takes pale dust off and leaves a stronger colour. Right: sun has worn the skin "
        "of the film, and loose grains lie on it.",
        face, cut, ("dust wipes off", "sun wears the skin"),
    )  # fmt: skip


@draws("water-whitening")
def water_whitening() -> Drawing:
    face, cut = pens()
    face.face()
    for x, y, radius in ((40, 34, 18), (104, 58, 24), (142, 22, 11), (62, 80, 9)):
        face.circle("metal", x, y, radius, ' fill-opacity="0.6"')
        face.circle("metal", x, y, radius * 0.6, ' fill-opacity="0.7"')
    sound(cut)
    cut.line("thin", (0, FILM), (WIDTH, FILM))
    cut.path("metal", f"M50 {FILM} Q84 {FILM + 30} 118 {FILM} Z", ' fill-opacity="0.7"')
    way = f"M48 {FILM} Q52 16 84 16 Q116 16 120 {FILM} Z"
    cut.path("cold", way, ' fill-opacity="0.6"')
    cut.path("thin", way)
    for x in (68, 84, 100):
        cut.arrow("note", x, 30, 0, 24)
    return (
        "White after water",
        "Left: milky round spots. Right: a drop stands on the film and water goes into it, leaving haze beneath.",
        face, cut, ("milky spots", "water goes into the film"),
    )  # fmt: skip
