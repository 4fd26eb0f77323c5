"""The pieces of a part: what each shape needs, and what it comes to."""

from __future__ import annotations

from dataclasses import dataclass

from calculators.kit.fields import Choice, Limits, Option, Quantity, When, Whole, ask
from calculators.kit.result import Clash
from calculators.physics import sections
from calculators.physics.sections import Solid
from calculators.tables import table

INCH = 0.0254  # m

# slug: its words, the columns it needs, how heat reaches its section (a slug of cure-plan's shape)
SHAPES: dict[str, tuple[str, tuple[str, ...], str]] = {
    "plate": ("Plate: a by b, wall thick", ("a", "b", "wall"), "both-sides"),
    "round-bar": ("Round bar: a across, length", ("a", "length"), "round-bar"),
    "square-bar": ("Square bar: a across, length", ("a", "length"), "square-bar"),
    "flat-bar": ("Flat bar: a wide, wall thick, length", ("a", "wall", "length"), "both-sides"),
    "round-tube": ("Round tube: a across, wall, length", ("a", "wall", "length"), "one-side"),
    "square-tube": ("Square tube: a by b, wall, length", ("a", "wall", "length"), "one-side"),
    "angle": ("Angle: legs a and b, wall, length", ("a", "b", "wall", "length"), "both-sides"),
    "channel": ("Channel: a deep, flanges b, wall, length", ("a", "b", "wall", "length"), "both-sides"),
    "disc": ("Disc: a across, wall thick", ("a", "wall"), "both-sides"),
    "ring": ("Ring: a across, hole b, wall thick", ("a", "b", "wall"), "both-sides"),
    "sphere": ("Ball: a across", ("a",), "heat-path"),
    "weighed": ("Casting by its mass and usual wall", ("wall", "mass"), "both-sides"),
    "mesh": ("Wire mesh: a by b, wire = wall, length = pitch", ("a", "b", "wall", "length"), "round-bar"),
}
COLUMNS = {
    "a": "a",
    "b": "b",
    "wall": "wall or thickness",
    "length": "length",
    "mass": "mass of one",
}


# columns that a shape takes and can do without
OPTIONAL = {"b": ("square-tube",), "inside": ("round-tube", "square-tube")}
# sheet and what is bent or rolled from it
BY_GAUGE = ("plate", "flat-bar", "round-tube", "square-tube", "angle", "channel", "disc", "ring")


def _takes(column: str) -> When:
    """The shapes whose row shows this column. A standard section has its sizes already."""
    plain = (slug for slug, (_, needs, _) in SHAPES.items() if column in (*needs, *_optional(slug)))
    standard = (
        slug
        for slug, row in table("sections").items()
        if column == "length" or (column == "inside" and column in _optional(row["shape"]))
    )
    return When("shape", (*plain, *standard))


def _optional(shape: str) -> tuple[str, ...]:
    return tuple(column for column, shapes in OPTIONAL.items() if shape in shapes)


def _size(label: str, high: str, hint: str, column: str) -> Quantity:
    return Quantity(
        label=label,
        hint=hint,
        when=_takes(column),
        units=("in", "mm", "ft", "cm", "m"),
        limits=Limits("0.005 in", high, "sheet to a gate"),
        may_be_empty=True,
        example="5/8 in",
    )


def _options() -> tuple[Option, ...]:
    plain = (Option(slug, words, drawing=slug) for slug, (words, _, _) in SHAPES.items())
    standard = (Option(slug, row["name"], drawing=row["shape"]) for slug, row in table("sections").items())
    return (*plain, *standard)


@dataclass(frozen=True)
class Piece:
    shape: str = ask(Choice(label="Shape", options=_options(), default="plate"))
    a_m: float | None = ask(_size("a", "1200 in", "First dimension of the shape", "a"))
    b_m: float | None = ask(_size("b", "1200 in", "Second dimension, where the shape has one", "b"))
    wall_m: float | None = ask(
        _size("Wall or thickness", "24 in", "Of the metal; empty with a gauge", "wall")
    )
    length_m: float | None = ask(_size("Length", "3000 in", "Of bars, tubes and sections", "length"))
    mass_kg: float | None = ask(
        Quantity(
            label="Mass",
            hint="Of one, for a weighed casting",
            when=_takes("mass"),
            units=("lb", "kg", "oz", "g"),
            limits=Limits("0.001 lb", "20000 lb", "a knob to a large frame"),
            may_be_empty=True,
        )
    )
    count: int = ask(Whole(label="Count", hint="In one part", default="1", low=1, high=10_000))
    inside: str = ask(
        Choice(
            label="Inside coated",
            options=(Option("no", "No"), Option("yes", "Yes")),
            default="no",
            when=_takes("inside"),
        )
    )
    gauge_of: str = ask(
        Choice(
            label="Gauge of",
            options=(
                Option("none", "No gauge: the wall is a length"),
                Option("steel", "Sheet steel gauge"),
                Option("galvanised", "Galvanised sheet gauge", ("galvanized",)),
                Option("aluminium", "Aluminium gauge", ("aluminum",)),
            ),
            default="none",
            when=When("shape", BY_GAUGE),
        )
    )
    gauge_ratio: float | None = ask(
        Quantity(
            label="Gauge",
            hint="Its number, with the metal it belongs to before it",
            units=("ratio",),
            limits=Limits("3", "30", "sheet gauges"),
            when=When("gauge-of", ("steel", "galvanised", "aluminium")),
            may_be_empty=True,
            example="16",
        )
    )


@dataclass(frozen=True, slots=True)
class Sized:
    """A piece with what it comes to, each. heated: slug of how heat reaches its section, as cure-plan asks for it."""

    name: str
    count: int
    area_m2: float
    mass_kg: float
    heated: str
    thickness_m: float
    heat_path_m: float
    estimate: bool = False


def sized(piece: Piece, line: int, density_kg_m3: float) -> Sized:
    """One line's piece. Raises Clash with the sentence for what its shape lacks."""
    row = table("sections").get(piece.shape)
    shape = row["shape"] if row else piece.shape
    words, needs, heated = SHAPES[shape]
    name = row["name"] if row else words.split(":")[0]
    if row:
        given = {key: row[f"{key}_in"] * INCH for key in ("a", "b", "wall") if f"{key}_in" in row}
    else:
        given = {"a": piece.a_m, "b": piece.b_m, "wall": _wall(piece, line)}
    given |= {"length": piece.length_m, "mass": piece.mass_kg}
    missing = [COLUMNS[key] for key in needs if given.get(key) is None]
    if missing:
        article = "an" if name[0] in "AEIOU" else "a"
        what = "a casting by its mass" if shape == "weighed" else f"{article} {name.lower()}"
        raise Clash(("pieces", f"Line {line}: {what} needs {' and '.join(missing)}"))
    solid = _solid(
        shape, {key: float(value) for key, value in given.items() if value is not None}, line, density_kg_m3
    )
    if solid.inside_m2 <= 0 and piece.inside == "yes":
        raise Clash(("pieces", f"Line {line}: only a tube has an inside to coat"))
    area = solid.area_m2 + (solid.inside_m2 if piece.inside == "yes" else 0.0)
    thickness = {"both-sides": 2, "one-side": 1, "round-bar": 4, "square-bar": 4, "heat-path": 1}[heated]
    return Sized(
        name,
        piece.count,
        area,
        solid.volume_m3 * density_kg_m3,
        heated,
        solid.heat_path_m * thickness,
        solid.heat_path_m,
        shape == "weighed",
    )


def _wall(piece: Piece, line: int) -> float | None:
    if piece.gauge_ratio is None:
        if piece.gauge_of != "none":
            raise Clash(("pieces", f"Line {line}: the gauge needs its number"))
        return piece.wall_m
    if piece.gauge_of == "none":
        raise Clash(
            ("pieces", f"Line {line}: a gauge number means nothing until the line says whose gauge it is")
        )
    if piece.wall_m is not None:
        raise Clash(("pieces", f"Line {line}: give the wall or the gauge, not both"))
    number = piece.gauge_ratio
    if piece.gauge_of == "aluminium":
        return sections.aluminium_gauge_in(number) * INCH
    known = table("gauges")[piece.gauge_of]["thickness_in"]
    if number != int(number) or str(int(number)) not in known:
        raise Clash(("pieces", f"Line {line}: gauge {number:g} is not in the table for {piece.gauge_of}"))
    return float(known[str(int(number))]) * INCH


def _solid(shape: str, size: dict[str, float], line: int, density_kg_m3: float) -> Solid:
    a, b, wall, length = (size.get(key, 0.0) for key in ("a", "b", "wall", "length"))
    if shape in ("round-tube", "square-tube") and 2 * wall >= min(a, b or a):
        raise Clash(("pieces", f"Line {line}: the wall is too thick for the tube"))
    if shape == "ring" and b >= a:
        raise Clash(("pieces", f"Line {line}: the hole b must be smaller than the ring a"))
    if shape == "mesh" and length <= wall:
        raise Clash(("pieces", f"Line {line}: the pitch must be more than the wire"))
    if (shape == "angle" and wall >= min(a, b)) or (shape == "channel" and (2 * wall >= a or wall >= b)):
        raise Clash(("pieces", f"Line {line}: the wall is too thick for its legs"))
    match shape:
        case "plate":
            return sections.plate(a, b, wall)
        case "flat-bar":
            return sections.plate(length, a, wall)
        case "round-bar":
            return sections.round_bar(a, length)
        case "square-bar":
            return sections.square_bar(a, length)
        case "round-tube":
            return sections.round_tube(a, wall, length)
        case "square-tube":
            return sections.square_tube(a, b or a, wall, length)
        case "angle":
            return sections.angle(a, b, wall, length)
        case "channel":
            return sections.channel(a, b, wall, length)
        case "disc":
            return sections.disc(a, wall)
        case "ring":
            return sections.ring(a, b, wall)
        case "sphere":
            return sections.sphere(a)
        case "mesh":
            return sections.mesh(a, b, wall, length)
        case _:
            return sections.weighed(size["mass"], density_kg_m3, wall)
