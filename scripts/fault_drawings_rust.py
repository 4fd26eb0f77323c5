"""Faults that rust: blisters, threads, freckles, tears from a seam."""

from __future__ import annotations

import math

from fault_drawing import FILM, METAL, Drawing, bump, draws, flat, pens, shape, sound
from pictures_pen import HEIGHT, WIDTH, sampled, scattered, through


@draws("rust-under-film")
def rust_under_film() -> Drawing:
    face, cut = pens()
    face.face()
    for x, y, radius in ((58, 34, 12), (82, 52, 15), (108, 66, 11), (76, 30, 7), (104, 44, 8)):
        face.circle("hot", x, y, radius * 0.7, ' fill-opacity="0.7"')
        face.circle("thin", x, y, radius)
    face.line("line", (38, 20), (128, 82))

    def skin(x: float) -> float:
        return FILM - bump(x, 56, 20, 16) - bump(x, 112, 20, 16)

    cut.metal(METAL)
    cut.between("film", skin, flat(METAL), 0, 78)
    cut.between("film", skin, flat(METAL), 90, WIDTH)
    cut.outline(skin, 0, 78)
    cut.outline(skin, 90, WIDTH)
    shape(
        cut, "hot", f"M26 {METAL} Q52 {METAL - 22} 78 {METAL - 14} V{METAL + 5} Q50 {METAL + 9} 26 {METAL} Z"
    )
    shape(
        cut,
        "hot",
        f"M142 {METAL} Q116 {METAL - 22} 90 {METAL - 14} V{METAL + 5} Q118 {METAL + 9} 142 {METAL} Z",
    )
    cut.arrow("note", 84, 10, 0, 44)
    return (
        "Rust under the film",
        "Left: blisters with rust along a scratch. Right: rust creeps from the scratch under the film and lifts it.",
        face, cut, ("blisters along a scratch", "rust creeps under"),
    )  # fmt: skip


@draws("rust-threads")
def rust_threads() -> Drawing:
    face, cut = pens()
    face.face()
    face.rect("metal", 0, 0, 10, HEIGHT)
    for place, (y, long, turn) in enumerate(
        ((14, 90, 1.0), (30, 130, 0.7), (46, 70, 1.3), (62, 142, 0.9), (76, 100, 1.1), (90, 60, 0.8))
    ):
        points = sampled(
            lambda x, y=y, turn=turn, place=place: (
                y + 5 * math.sin(x * 0.11 * turn + place) + 2 * math.sin(x * 0.3)
            ),
            10,
            long,
        )
        face.path(
            "fill",
            through(points) + " " + " ".join(f"L{x:.1f} {b + 2.4:.1f}" for x, b in points[::-1]) + " Z",
        )
        face.path("thin", through(points))
        face.circle("hot", points[-1][0], points[-1][1] + 1, 3)
    sound(cut)

    def skin(x: float) -> float:
        return FILM - bump(x, 40, 9, 9) - bump(x, 92, 9, 9) - bump(x, 136, 9, 9)

    cut.between("film", skin, flat(METAL))
    cut.outline(skin)
    for x in (40, 92, 136):
        shape(
            cut,
            "hot",
            f"M{x - 11} {METAL} Q{x} {METAL - 22} {x + 11} {METAL} Q{x} {METAL + 7} {x - 11} {METAL} Z",
        )
    return (
        "Threads under the film",
        "Left: thin winding threads grow from an edge. Right: small ridges of corrosion between metal and film.",
        face, cut, ("threads from an edge", "ridges under the film"),
    )  # fmt: skip


@draws("rust-freckles")
def rust_freckles() -> Drawing:
    face, cut = pens()
    face.face()
    for x, y in scattered(46, 23, 12):
        face.circle("hot", x, y, 2.3)

    def metal(x: float) -> float:
        return METAL + 10 - 26 * abs(((x / 24) % 1) - 0.5) * 2 + 26 * 0.35

    cut.path("metal", through(sampled(metal, step=1)) + f" L{WIDTH} {HEIGHT} L0 {HEIGHT} Z")
    cut.path(
        "film",
        f"M0 53 H{WIDTH} "
        + " ".join(f"L{x:.1f} {max(y, 53):.1f}" for x, y in sampled(metal, step=1)[::-1])
        + " Z",
    )
    cut.line("thin", (0, 53), (WIDTH, 53))
    for at in range(1, 7):
        cut.circle("hot", at * 24, 55, 5)
    return (
        "Rust freckles",
        "Left: many rust points, evenly spread. Right: the peaks of a deep blast profile reach the skin of a thin film "
        "and rust there.",
        face, cut, ("even rust points", "peaks reach the skin"),
    )  # fmt: skip


@draws("rust-tears")
def rust_tears() -> Drawing:
    face, cut = pens()
    face.face()
    face.rect("powder", 0, 0, WIDTH, 32, ' fill-opacity="0.5"')
    face.line("line", (0, 32), (WIDTH, 32))
    for x, long, wide in ((30, 46, 4), (64, 30, 3), (96, 60, 5), (136, 40, 4)):
        bend = round(32 + long * 0.6)
        face.path(
            "hot", f"M{x - wide} 32 Q{x - wide} {bend} {x} {32 + long} Q{x + wide} {bend} {x + wide} 32 Z"
        )
    cut.rect("metal", 60, 0, 20, HEIGHT)
    cut.rect("metal", 84, 0, 20, 56)
    cut.rect("cold", 80, 8, 4, 48)
    cut.rect("hot", 80, 46, 4, 10)
    cut.path("film", f"M104 0 H116 V62 Q116 66 108 66 L84 62 V56 H104 Z M80 64 H90 V{HEIGHT} H80 Z")
    cut.rect("film", 48, 0, 12, HEIGHT)
    cut.path("hot", "M80 56 H85 Q96 64 92 80 Q90 92 91 98 L88 98 Q88 84 86 74 Z")
    cut.arrow("note", 128, 84, -32, -18)
    return (
        "Rust tears from a seam",
        "Left: brown streaks below a lap seam. Right: the lap cut through; it is bare and wet inside, and rust runs out "
        "at its foot.",
        face, cut, ("streaks below a seam", "bare and wet inside"),
    )  # fmt: skip
