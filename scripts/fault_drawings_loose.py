"""Faults of hold: soft, brittle, poor stick, flakes at welds, coats that part, ragged mask lines."""

from __future__ import annotations

import math

from fault_drawing import FILM, METAL, Drawing, bump, draws, flat, pens, shape
from pictures_pen import HEIGHT, WIDTH


@draws("soft")
def soft() -> Drawing:
    face, cut = pens()
    face.face()
    for at in range(4):
        face.path("powder", f"M{24 + at * 34} {70 - at * 8} q8 -14 20 -10 q-8 4 -10 16 Z")
        face.path("thin", f"M{24 + at * 34} {70 - at * 8} q8 -14 20 -10 q-8 4 -10 16 Z")

    def skin(x: float) -> float:
        return FILM + bump(x, 84, 11, 17) - bump(x, 62, 9, 6) - bump(x, 106, 9, 6)

    cut.metal(METAL)
    cut.between("film", skin, flat(METAL))
    cut.outline(skin)
    shape(cut, "fill", "M78 58 Q74 30 82 4 H104 Q98 30 90 58 Q84 62 78 58 Z")
    cut.arrow("note", 124, 8, 0, 26)
    return (
        "Soft film",
        "Left: dents of a fingernail. Right: a nail pressed into the film, which gives way and piles up beside it.",
        face, cut, ("dents of a nail", "nail goes in"),
    )  # fmt: skip


@draws("brittle")
def brittle() -> Drawing:
    face, cut = pens()
    face.face()
    for at, lean in ((58, 6), (72, -5), (84, 4), (97, -6), (110, 5)):
        face.path("thin", f"M{at} 4 L{at + lean} 24 L{at - lean * 0.6:.1f} 46 L{at + lean} 70 L{at} 96")
    shape(face, "metal", "M86 40 L100 36 L104 52 L92 58 Z")
    face.line("note", (44, 0), (44, HEIGHT))
    face.line("note", (124, 0), (124, HEIGHT))

    def arc(radius: float, turn: float) -> tuple[float, float]:
        return 84 + radius * math.sin(turn), 112 - radius * math.cos(turn)

    def band(look: str, inner: float, outer: float) -> None:
        turns = [-1 + 2 * step / 40 for step in range(41)]
        points = [arc(outer, turn) for turn in turns] + [arc(inner, turn) for turn in turns[::-1]]
        kept = [(x, min(y, HEIGHT)) for x, y in points]
        cut.path(look, "M" + " L".join(f"{x:.1f} {y:.1f}" for x, y in kept) + " Z")

    band("metal", 54, 74)
    band("film", 74, 96)
    for turn in (-0.55, -0.3, -0.05, 0.2, 0.45):
        (x1, y1), (x2, y2), (x3, y3) = arc(97, turn - 0.055), arc(75, turn), arc(97, turn + 0.055)
        way = f"M{x1:.1f} {y1:.1f} L{x2:.1f} {y2:.1f} L{x3:.1f} {y3:.1f} Z"
        shape(cut, "fill", way)
    return (
        "Cracks and brittle chips",
        "Left: cracks along a bend and one chip. Right: bent metal cut through; the film on the outside has cracked open.",
        face, cut, ("cracks along a bend", "film opens on the bend"),
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


@draws("flakes-at-welds")
def flakes_at_welds() -> Drawing:
    face, cut = pens()
    face.face()
    face.rect("metal", 66, 0, 36, HEIGHT)
    for at in range(11):
        face.path("thin", f"M66 {4 + at * 9.5:.1f} q18 9 36 0")
    shape(face, "metal", "M66 16 L48 24 L52 44 L66 50 Z")
    shape(face, "metal", "M102 48 L124 56 L118 78 L102 82 Z")
    face.line("thin", (66, 0), (66, HEIGHT))
    face.line("thin", (102, 0), (102, HEIGHT))

    def metal(x: float) -> float:
        return METAL - bump(x, 84, 20, 18)

    cut.between("metal", metal, flat(HEIGHT))
    cut.between("film", lambda x: metal(x) - 20, metal, 0, 52)
    cut.outline(lambda x: metal(x) - 20, 0, 52)
    cut.between("film", lambda x: metal(x) - 20, metal, 124, WIDTH)
    cut.outline(lambda x: metal(x) - 20, 124, WIDTH)
    cut.between("hot", lambda x: metal(x) - 5, metal, 62, 104)
    shape(cut, "film", "M66 30 Q84 8 108 18 L112 2 Q80 -4 58 20 Z")
    shape(cut, "hot", "M66 30 Q84 10 108 20 L108 16 Q84 4 63 26 Z")
    return (
        "Flakes at welds and cut edges",
        "Left: flakes are gone along a weld bead. Right: slag on the bead; a flake of film lifts with slag on its back.",
        face, cut, ("film gone along a weld", "slag on the flake's back"),
    )  # fmt: skip


@draws("coats-part")
def coats_part() -> Drawing:
    face, cut = pens()
    face.face()
    shape(face, "powder", "M54 26 L92 14 L124 34 L116 72 L78 86 L46 64 Z")
    face.path("thin", "M54 26 L36 14 M124 34 L146 28 M78 86 L74 98")
    cut.metal(76)
    cut.rect("powder", 0, 54, WIDTH, 22)
    cut.line("thin", (0, 54), (WIDTH, 54))
    cut.rect("film", 0, 34, 70, 20)
    shape(cut, "film", "M72 54 L70 34 Q114 30 150 2 L158 20 Q122 50 72 54 Z")
    cut.line("thin", (0, 34), (70, 34))
    return (
        "Second coat peels off the first",
        "Left: in the chip the first coat is seen, whole. Right: the upper layer lifts from the lower one, which holds.",
        face, cut, ("first coat in the chip", "layers part"),
    )  # fmt: skip


@draws("ragged-mask-line")
def ragged_mask_line() -> Drawing:
    face, cut = pens()
    face.face("metal")
    teeth = " ".join(
        f"L{x} {y}"
        for x, y in ((92, 8), (80, 16), (96, 27), (84, 38), (100, 50), (82, 60), (94, 72), (78, 82), (90, 92))
    )
    shape(face, "film", f"M0 0 H86 {teeth} L84 100 H0 Z")
    cut.metal(METAL)
    cut.rect("film", 0, FILM, 78, METAL - FILM)
    cut.line("thin", (0, FILM), (78, FILM))
    cut.rect("powder", 84, METAL - 6, 84, 6)
    cut.rect("thin", 84, METAL - 6, 84, 6)
    shape(cut, "film", f"M78 {METAL} V{FILM} Q104 {FILM - 2} 118 20 L128 26 Q112 {METAL - 10} 78 {METAL} Z")
    cut.arrow("note", 140, 46, 14, -28)
    return (
        "Ragged mask line",
        "Left: a saw-toothed edge of film beside bare metal. Right: film that bridges onto the tape is torn up with it.",
        face, cut, ("torn, toothed edge", "film bridges the tape"),
    )  # fmt: skip
