"""What every drawing of a fault shares: its list, two pens, and where film and metal lie in a cut."""

from __future__ import annotations

import math
from collections.abc import Callable

from pictures_pen import WIDTH, Curve, Pen

FILM, METAL = 42, 66  # a sound film's skin, and the metal under it

# title, description, face, cut, and the words under each
Drawing = tuple[str, str, Pen, Pen, tuple[str, str]]
DRAWINGS: dict[str, Callable[[], Drawing]] = {}


def draws(name: str) -> Callable[[Callable[[], Drawing]], Callable[[], Drawing]]:
    """Keeps a drawing under the key of its fault."""

    def keep(make: Callable[[], Drawing]) -> Callable[[], Drawing]:
        DRAWINGS[name] = make
        return make

    return keep


def pens() -> tuple[Pen, Pen]:
    return Pen(), Pen()


def flat(y: float) -> Curve:
    return lambda x: y


def bump(x: float, at: float, width: float, height: float) -> float:
    """A smooth hump of that height."""
    return height * math.exp(-(((x - at) / width) ** 2))


def sound(cut: Pen, metal: float = METAL, film: float = FILM, start: float = 0, end: float = WIDTH) -> None:
    """Metal with an even film on it."""
    cut.metal(metal)
    cut.rect("film", start, film, end - start, metal - film)


def grains(cut: Pen, places: list[tuple[float, float]], radius: float = 4.8) -> None:
    for x, y in places:
        cut.circle("powder", x, y, radius)
        cut.circle("thin", x, y, radius)


def shape(pen: Pen, look: str, way: str) -> None:
    """Filled and outlined."""
    pen.path(look, way)
    pen.path("thin", way)
