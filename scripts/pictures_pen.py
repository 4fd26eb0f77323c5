"""A pen for drawings that a script makes: shapes in the site's classes, in two frames side by side with words under each."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from html import escape
from random import Random

WIDTH, HEIGHT = 168, 100
LEFT, RIGHT, TOP = 4, 188, 4
Curve = Callable[[float], float]
Point = tuple[float, float]


def number(value: float) -> str:
    return f"{value:.1f}".removesuffix(".0")


def through(points: Iterable[Point]) -> str:
    return "M" + " L".join(f"{number(x)} {number(y)}" for x, y in points)


def sampled(curve: Curve, start: float = 0, end: float = WIDTH, step: float = 3) -> list[Point]:
    count = max(1, round((end - start) / step))
    return [(x, curve(x)) for x in (start + (end - start) * one / count for one in range(count + 1))]


class Pen:
    """Draws in one frame of WIDTH by HEIGHT, its corner at the frame's own place."""

    def __init__(self) -> None:
        self.shapes: list[str] = []

    def rect(self, look: str, x: float, y: float, width: float, height: float, more: str = "") -> None:
        at = " ".join(
            f'{name}="{number(value)}"'
            for name, value in (("x", x), ("y", y), ("width", width), ("height", height))
        )
        self.shapes.append(f'<rect class="pic-{look}" {at}{more}/>')

    def circle(self, look: str, x: float, y: float, radius: float, more: str = "") -> None:
        self.shapes.append(
            f'<circle class="pic-{look}" cx="{number(x)}" cy="{number(y)}" r="{number(radius)}"{more}/>'
        )

    def path(self, look: str, way: str, more: str = "") -> None:
        self.shapes.append(f'<path class="pic-{look}" d="{way}"{more}/>')

    def line(self, look: str, *points: Point) -> None:
        self.path(look, through(points))

    def between(self, look: str, top: Curve, bottom: Curve, start: float = 0, end: float = WIDTH) -> None:
        """What lies between two curves."""
        ways = sampled(top, start, end) + sampled(bottom, start, end)[::-1]
        self.path(look, through(ways) + " Z")

    def hole(self, x: float, y: float, radius: float, inside: str = "fill") -> None:
        self.circle(inside, x, y, radius)
        self.circle("thin", x, y, radius)

    def arrow(self, look: str, x: float, y: float, dx: float, dy: float) -> None:
        """From a point along dx, dy, with a head."""
        length = (dx * dx + dy * dy) ** 0.5
        ux, uy = dx / length, dy / length
        tip, neck = (x + dx, y + dy), (x + dx - 7 * ux, y + dy - 7 * uy)
        self.line(look, (x, y), tip)
        sides = [(neck[0] + s * 4 * uy, neck[1] - s * 4 * ux) for s in (1, -1)]
        self.line(look, sides[0], tip, sides[1])

    def face(self, look: str = "film") -> None:
        """A coated panel seen from the front."""
        self.rect(look, 0, 0, WIDTH, HEIGHT)

    def metal(self, top: float = 66) -> None:
        self.rect("metal", 0, top, WIDTH, HEIGHT - top)

    def outline(self, curve: Curve, start: float = 0, end: float = WIDTH) -> None:
        """The skin of a film that is cut through."""
        self.path("thin", through(sampled(curve, start, end)))


def scattered(
    count: int, seed: int, apart: float, box: tuple[float, float, float, float] = (8, 8, 160, 92)
) -> list[Point]:
    """Points by chance, the same ones each time, none nearer to another than `apart`."""
    chance, found = Random(seed), []
    for _ in range(4000):
        x, y = chance.uniform(box[0], box[2]), chance.uniform(box[1], box[3])
        if all((x - a) ** 2 + (y - b) ** 2 >= apart * apart for a, b in found):
            found.append((x, y))
        if len(found) == count:
            break
    return found


def picture(name: str, title: str, words: str, left: Pen, right: Pen, says: tuple[str, str]) -> str:
    """The file: face on the left, cut through on the right, a line of words under each (two with a bar between)."""
    rows = [one.split("|") for one in says]
    height = TOP + HEIGHT + 8 + 16 * max(map(len, rows))
    mark = name.replace("/", "-")
    lines = [
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 360 {height}" width="540" role="img" '
        f'aria-labelledby="{mark}-title {mark}-desc">',
        f'<title id="{mark}-title">{escape(title)}</title>',
        f'<desc id="{mark}-desc">{escape(words)}</desc>',
    ]
    for place, pen, row in ((LEFT, left, rows[0]), (RIGHT, right, rows[1])):
        lines += [f'<g transform="translate({place} {TOP})">', *pen.shapes, "</g>"]
        lines += [
            f'<text class="pic-small" x="{place + WIDTH // 2}" y="{TOP + HEIGHT + 16 * at}" font-size="13" '
            f'text-anchor="middle">{escape(text)}</text>'
            for at, text in enumerate(row, 1)
        ]
    return "\n".join([*lines, "</svg>", ""])
