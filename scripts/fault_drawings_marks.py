"""Marks: dirt, specks of another colour, handling, hooks."""

from __future__ import annotations

from fault_drawing import FILM, METAL, Drawing, bump, draws, flat, pens, shape, sound
from pictures_pen import WIDTH, scattered


@draws("dirt")
def dirt() -> Drawing:
    face, cut = pens()
    face.face()
    for place, (x, y) in enumerate(scattered(12, 41, 24, (14, 12, 154, 88))):
        if place % 4 == 0:
            face.path("thin", f"M{x - 10:.1f} {y:.1f} q6 -9 10 -2 t12 -3")
        else:
            shape(face, "metal", f"M{x - 3:.1f} {y:.1f} l2 -4 l4 1 l2 4 l-4 3 Z")

    def skin(x: float) -> float:
        return FILM - bump(x, 42, 11, 9) - bump(x, 124, 16, 7)

    cut.metal(METAL)
    cut.between("film", skin, flat(METAL))
    cut.outline(skin)
    shape(cut, "fill", "M33 62 L36 46 L46 42 L53 52 L48 63 Z")
    cut.path("line", "M98 60 q14 -24 24 -10 t30 -10")
    return (
        "Dirt and fibres",
        "Left: specks of grit and hairs. Right: a grain and a fibre sit inside the film and lift its skin.",
        face, cut, ("specks and hairs", "grain and fibre in film"),
    )  # fmt: skip


@draws("cross-contamination")
def cross_contamination() -> Drawing:
    face, cut = pens()
    face.face()
    for place, (x, y) in enumerate(scattered(40, 19, 11)):
        face.circle("hot" if place % 3 else "fill", x, y, 1.4 + place % 3 * 0.6)
    sound(cut)
    cut.line("thin", (0, FILM), (WIDTH, FILM))
    for place, (x, y) in enumerate(scattered(15, 3, 11, (6, 46, 162, 62))):
        cut.circle("hot" if place % 3 else "fill", x, y, 3.2)
    return (
        "Specks of another colour",
        "Left: small sharp dots of other colours. Right: grains of another powder lie in the film, level with its skin.",
        face, cut, ("dots of other colours", "strange grains in film"),
    )  # fmt: skip


@draws("handling-marks")
def handling_marks() -> Drawing:
    face, cut = pens()
    face.face()
    for grow in range(1, 5):
        face.path("thin", f"M{48 - grow * 5} {52 + grow * 2} a{grow * 5} {grow * 8} 0 0 1 {grow * 10} 0")
        face.path("thin", f"M{50 - grow * 4} {60 + grow * 3} q{grow * 4} {grow * 3} {grow * 8} 0")
    for row in range(5):
        for place in range(5):
            face.circle("thin", 106 + place * 12, 22 + row * 13, 3.6)

    def skin(x: float) -> float:
        return FILM + sum(bump(x, at, 5, 9) for at in (34, 52, 70, 88))

    cut.metal(METAL)
    cut.between("film", skin, flat(METAL))
    cut.outline(skin)
    shape(cut, "powder", "M14 4 H108 V26 H14 Z")
    for x in (34, 52, 70, 88):
        shape(cut, "powder", f"M{x - 6} 26 Q{x} 66 {x + 6} 26 Z")
    cut.arrow("note", 132, 6, 0, 28)
    return (
        "Marks from handling",
        "Left: a fingerprint and the dots of a wrap. Right: a wrap pressed on a warm film leaves its pattern in the skin.",
        face, cut, ("print, pattern of a wrap", "pressed in while warm"),
    )  # fmt: skip


@draws("hook-marks")
def hook_marks() -> Drawing:
    face, cut = pens()
    face.face()
    face.circle("fill", 84, 36, 18)
    face.circle("thin", 84, 36, 18)
    face.path("metal", "M72 22 A18 18 0 0 1 96 22 L100 12 A28 28 0 0 0 68 12 Z")
    face.path("thin", "M68 12 A28 28 0 0 1 100 12")
    face.path("line", "M84 0 V18")
    cut.rect("metal", 20, 40, 128, 34)
    cut.path("film", "M10 26 H70 Q76 28 78 40 H20 V74 H148 V40 H90 Q92 28 98 26 H158 V88 H10 Z")
    cut.path("thin", "M10 26 H70 Q76 28 78 40 H90 Q92 28 98 26 H158")
    cut.path("line", "M84 0 V30")
    shape(cut, "fill", "M80 26 L88 26 L84 40 Z")
    cut.arrow("note", 124, 8, -30, 24)
    return (
        "Hook and contact marks",
        "Left: a bare place at the edge of a hole where a hook hung. Right: the point of a hook on the metal; there is no "
        "film under it and a collar around it.",
        face, cut, ("bare where it hung", "no film at the point"),
    )  # fmt: skip
