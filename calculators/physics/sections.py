"""Surface, volume and heat path of the shapes that parts are made of. Sharp corners; ends and edges counted."""

from __future__ import annotations

from dataclasses import dataclass
from math import pi


@dataclass(frozen=True, slots=True)
class Solid:
    """One piece. area: outside, with ends. inside: of a tube's bore. heat_path: metal volume over the area that heats it."""

    area_m2: float
    volume_m3: float
    heat_path_m: float
    inside_m2: float = 0.0


def plate(long_m: float, wide_m: float, thick_m: float) -> Solid:
    """A plate or flat bar, both faces and all four edges, given in any order.

    Source: geometry. The heat path is that of a wide plate, half the least size, which for a narrow bar is on the long side.

    >>> plate(0.6, 0.4, 0.01).area_m2
    0.5
    """
    area = 2 * (long_m * wide_m + long_m * thick_m + wide_m * thick_m)
    return Solid(area, long_m * wide_m * thick_m, min(long_m, wide_m, thick_m) / 2)


def round_bar(across_m: float, long_m: float) -> Solid:
    """A round bar with its ends; heat path a quarter of the diameter (volume over the side's area)."""
    end = pi * across_m**2 / 4
    return Solid(pi * across_m * long_m + 2 * end, end * long_m, across_m / 4)


def square_bar(across_m: float, long_m: float) -> Solid:
    """A square bar with its ends; heat path a quarter of the side."""
    return Solid(4 * across_m * long_m + 2 * across_m**2, across_m**2 * long_m, across_m / 4)


def round_tube(across_m: float, wall_m: float, long_m: float) -> Solid:
    """A round tube: the outside and the two rings at its ends, its bore apart. Heated from outside, so its path is its wall."""
    bore_m = across_m - 2 * wall_m
    ring = pi * (across_m**2 - bore_m**2) / 4
    return Solid(pi * across_m * long_m + 2 * ring, ring * long_m, wall_m, pi * bore_m * long_m)


def square_tube(wide_m: float, high_m: float, wall_m: float, long_m: float) -> Solid:
    """A square or oblong tube with sharp corners, as round_tube."""
    inner_w, inner_h = wide_m - 2 * wall_m, high_m - 2 * wall_m
    ring = wide_m * high_m - inner_w * inner_h
    return Solid(
        2 * (wide_m + high_m) * long_m + 2 * ring, ring * long_m, wall_m, 2 * (inner_w + inner_h) * long_m
    )


def angle(leg_m: float, other_m: float, wall_m: float, long_m: float) -> Solid:
    """An angle of two legs, air on both sides of each."""
    section = wall_m * (leg_m + other_m - wall_m)
    return Solid(2 * (leg_m + other_m) * long_m + 2 * section, section * long_m, wall_m / 2)


def channel(deep_m: float, flange_m: float, wall_m: float, long_m: float) -> Solid:
    """A channel of one wall thickness, air on both sides of web and flanges."""
    section = wall_m * (deep_m + 2 * flange_m - 2 * wall_m)
    around = 2 * deep_m + 4 * flange_m - 2 * wall_m
    return Solid(around * long_m + 2 * section, section * long_m, wall_m / 2)


def disc(across_m: float, thick_m: float) -> Solid:
    """A disc, both faces and the rim. A thick one heats through its rim, like a bar: a quarter of its diameter."""
    face = pi * across_m**2 / 4
    return Solid(2 * face + pi * across_m * thick_m, face * thick_m, min(thick_m / 2, across_m / 4))


def ring(across_m: float, hole_m: float, thick_m: float) -> Solid:
    """A flat ring: both faces, the rim and the hole."""
    face = pi * (across_m**2 - hole_m**2) / 4
    around = pi * (across_m + hole_m) * thick_m
    return Solid(2 * face + around, face * thick_m, min(thick_m, (across_m - hole_m) / 2) / 2)


def sphere(across_m: float) -> Solid:
    """A solid ball; its path is volume over area, a sixth of the diameter."""
    return Solid(pi * across_m**2, pi * across_m**3 / 6, across_m / 6)


def mesh(long_m: float, wide_m: float, wire_m: float, pitch_m: float) -> Solid:
    """Woven or welded wire, the same pitch both ways. What the crossings hide from the powder is counted as seen."""
    wire_length_m = 2 * long_m * wide_m / pitch_m
    return Solid(pi * wire_m * wire_length_m, pi * wire_m**2 / 4 * wire_length_m, wire_m / 4)


def weighed(mass_kg: float, density_kg_m3: float, wall_m: float) -> Solid:
    """A casting of about one wall thickness, by its mass: two faces for each bit of wall, A = 2 m / (rho t).

    Source: volume = area x thickness for a thin wall; edges and bosses are not in it.
    """
    volume = mass_kg / density_kg_m3
    return Solid(2 * volume / wall_m, volume, wall_m / 2)


def aluminium_gauge_in(number: float) -> float:
    """Thickness of a sheet gauge of aluminium in inches, from the definition of the gauge: 0.005 x 92^((36 - n)/39).

    >>> round(aluminium_gauge_in(16), 4)
    0.0508
    """
    return float(0.005 * 92 ** ((36 - number) / 39))
