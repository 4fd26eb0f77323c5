"""Faults of how much film: thin edges, framing, bare corners, light spots, sags, powder that falls or will not build."""

from __future__ import annotations

from fault_drawing import FILM, METAL, Drawing, bump, draws, flat, grains, pens, shape, sound
from pictures_pen import HEIGHT, WIDTH, scattered


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


@draws("picture-framing")
def picture_framing() -> Drawing:
    face, cut = pens()
    face.face()
    face.rect("powder", 22, 20, WIDTH - 44, HEIGHT - 40, ' fill-opacity="0.55"')
    face.rect("note", 22, 20, WIDTH - 44, HEIGHT - 40, ' stroke-dasharray="4 3"')
    cut.rect("metal", 10, METAL, WIDTH - 20, HEIGHT - METAL)

    def skin(x: float) -> float:
        return FILM + 12 - bump(x, 20, 18, 24) - bump(x, 148, 18, 24)

    cut.between("film", skin, flat(METAL), 10, WIDTH - 10)
    cut.outline(skin, 10, WIDTH - 10)
    cut.arrow("note", 24, 6, 0, 18)
    cut.arrow("note", 144, 6, 0, 18)
    return (
        "Picture framing",
        "Left: a band along all edges looks heavier than the middle. Right: the film is thick at both edges and thin "
        "between them.",
        face, cut, ("heavy band at the edges", "thick, thin, thick"),
    )  # fmt: skip


@draws("bare-corners")
def bare_corners() -> Drawing:
    face, cut = pens()
    face.face()
    face.path("metal", "M74 0 Q80 50 76 100 H92 Q88 50 94 0 Z")
    face.line("thin", (84, 0), (84, HEIGHT))
    cut.path("metal", f"M20 0 H44 V76 H{WIDTH - 4} V{HEIGHT} H20 Z")
    shape(cut, "film", "M44 0 H58 Q58 40 45 62 L44 62 Z")
    shape(cut, "film", f"M{WIDTH - 4} 76 V62 Q96 62 60 75 L60 76 Z")
    cut.arrow("note", 104, 18, -44, 42)
    return (
        "Bare inside corners",
        "Left: a bare line where two faces meet. Right: two walls cut through; the film on both thins out to nothing "
        "before the corner.",
        face, cut, ("bare line in the corner", "film stops short of it"),
    )  # fmt: skip


@draws("light-spots")
def light_spots() -> Drawing:
    face, cut = pens()
    face.face()
    for x, y, wide, high in ((44, 34, 24, 14), (116, 62, 30, 17), (132, 22, 13, 8)):
        oval = f"M{x - wide} {y} a{wide} {high} 0 1 0 {2 * wide} 0 a{wide} {high} 0 1 0 {-2 * wide} 0 Z"
        face.path("metal", oval, ' fill-opacity="0.6"')
        face.path("note", oval, ' stroke-dasharray="3 4"')

    def skin(x: float) -> float:
        return FILM + bump(x, 50, 20, 19) + bump(x, 122, 15, 17)

    cut.metal(METAL)
    cut.between("film", skin, flat(METAL))
    cut.outline(skin)
    return (
        "Light spots",
        "Left: pale patches in which the metal glimmers through. Right: the film is thin in those places.",
        face, cut, ("metal glimmers through", "film thin in places"),
    )  # fmt: skip


@draws("drips-and-sags")
def drips_and_sags() -> Drawing:
    face, cut = pens()
    face.rect("film", 0, 0, WIDTH, 76)
    face.path("thin", "M0 34 Q20 52 42 40 Q66 60 92 44 Q118 62 140 42 Q156 50 168 40")
    face.circle("metal", 126, 20, 7)
    face.circle("thin", 126, 20, 7)
    for x, long in ((22, 15), (58, 21), (92, 12), (140, 18)):
        way = f"M{x - 9} 75 Q{x - 5} 78 {x - 5} {76 + long - 6} a5 5 0 0 0 10 0 Q{x + 5} 78 {x + 9} 75 Z"
        face.path("film", way)
        face.path("thin", way)
    face.path("thin", "M123 27 Q121 44 126 47 Q131 44 129 27")
    cut.rect("metal", 58, 0, 30, 84)
    shape(
        cut,
        "film",
        "M88 0 H102 Q102 26 110 38 Q118 50 104 56 Q112 70 112 82 Q110 98 96 97 Q84 96 58 92 V84 H88 Z",
    )
    cut.arrow("note", 136, 24, 0, 48)
    return (
        "Drips and sags",
        "Left: a curtain across a face, a tear under a hole and beads on the lower edge. Right: an upright part cut "
        "through; the film bulges downward and hangs below the edge.",
        face, cut, ("curtain, tear, beads", "film slid down"),
    )  # fmt: skip


@draws("falls-off")
def falls_off() -> Drawing:
    face, cut = pens()
    face.rect("metal", 0, 0, WIDTH, HEIGHT)
    face.path("powder", "M0 0 H168 V26 Q150 40 128 30 Q110 62 84 48 Q56 78 34 50 Q16 60 0 44 Z")
    face.path("thin", "M168 26 Q150 40 128 30 Q110 62 84 48 Q56 78 34 50 Q16 60 0 44")
    for x, y in scattered(26, 6, 8, (14, 66, 156, 96)):
        face.circle("powder", x, y, 2.2)
    cut.rect("metal", 40, 0, 20, HEIGHT)
    grains(cut, [(65, 5 + 9 * at) for at in range(5)] + [(73, 9 + 9 * at) for at in range(3)])
    grains(cut, [(78, 46), (90, 58), (74, 64), (98, 76), (84, 82), (110, 90), (70, 92)])
    cut.arrow("note", 124, 36, 0, 40)
    return (
        "Powder falls off before the bake",
        "Left: a layer of raw powder has slid and left bare metal below. Right: grains drop away from an upright part.",
        face, cut, ("raw powder slides", "grains drop away"),
    )  # fmt: skip


@draws("second-coat-bare")
def second_coat_bare() -> Drawing:
    face, cut = pens()
    face.face()
    for x, y in scattered(90, 14, 5, (6, 6, 162, 94)):
        if (x - 60) ** 2 + (y - 40) ** 2 > 700 and (x - 130) ** 2 + (y - 66) ** 2 > 500:
            face.circle("powder", x, y, 2.2)
    sound(cut, 74, 50)
    cut.line("thin", (0, 50), (WIDTH, 50))
    grains(cut, [(x, 45) for x in (10, 20, 30, 60, 70, 118, 128, 138, 158)])
    for x, y, dx in ((42, 40, -18), (92, 42, 4), (148, 40, 14)):
        cut.circle("powder", x + dx, y - 30, 4.8)
        cut.circle("thin", x + dx, y - 30, 4.8)
        cut.arrow("note", x, y, dx * 0.7, -20)
    return (
        "Second coat will not build",
        "Left: new powder lies thin and in patches on a coated face. Right: grains bounce off the cured film under them.",
        face, cut, ("thin, patchy new powder", "old film pushes it off"),
    )  # fmt: skip
