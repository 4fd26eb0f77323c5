"""Units that a field may be typed in, and the only door to pint.

Typed text never reaches pint: pint's default registry reads ``450 F`` as farads and ``3 mil`` as an angle. The names that
people type are this table's; pint is given plain numbers and unit names of ours, in a private registry without defaults.
Importing pint costs more than most answers, so it waits for the first conversion.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    import pint

# A slug is also the unit's name in the registry. `degC` is a point on a scale, `dC` a difference.
DEFINITIONS = """
kelvin = [temperature]; offset: 0
degC = kelvin; offset: 273.15
degF = 5/9 kelvin; offset: 255.3722222222222
dC = 1 kelvin
dF = 5/9 dC
m = [length]
in = 0.0254 m
ft = 12 in
mil = 0.001 in
um = 1e-6 m
mm = 0.001 m
cm = 0.01 m
kg = [mass]
g = 0.001 kg
lb = 0.45359237 kg
oz = 0.0625 lb
ft2 = ft ** 2
in2 = in ** 2
m2 = m ** 2
cm2 = cm ** 2
s = [time]
min = 60 s
h = 60 min
joule = kg * m ** 2 / s ** 2
W_m2K = joule / s / m ** 2 / dC
Btu_hft2F = 1055.05585262 joule / h / ft ** 2 / dF
mol = [substance]
kJ_mol = 1000 joule / mol
ft2_lb = ft2 / lb
m2_kg = m2 / kg
ratio = []
percent = 0.01 ratio
"""


@dataclass(frozen=True, slots=True)
class Unit:
    """A unit that a field can be read or shown in: its kind, how it is shown, and how people type it."""

    slug: str
    kind: str
    shown: str
    spellings: tuple[str, ...]


def _kind(kind: str, **units: str) -> list[Unit]:
    rows = []
    for slug, row in units.items():
        slug = slug.rstrip("_")
        shown, *more = row.split("; ")
        rows.append(Unit(slug, kind, shown, tuple(dict.fromkeys((shown, slug, *more)))))
    return rows


# shown first, then what people type; read.py folds case, spaces and look-alike signs before it compares
_ALL = (
    *_kind(
        "temperature",
        degF="F; °F; deg F; degrees F; fahrenheit; degrees fahrenheit",
        degC="C; °C; deg C; degrees C; celsius; degrees celsius; centigrade",
    ),
    *_kind(
        "temperature difference",
        dF="F; °F; deg F; degF; degrees F; fahrenheit",
        dC="C; °C; deg C; degC; degrees C; celsius; K; kelvin",
    ),
    *_kind(
        "length",
        in_='in; "; in.; inch; inches',
        ft="ft; '; ft.; foot; feet",
        mil="mil; mils; thou",
        um="um; micron; microns; micrometre; micrometres; micrometer; micrometers",
        mm="mm; millimetre; millimetres; millimeter; millimeters",
        cm="cm; centimetre; centimetres; centimeter; centimeters",
        m="m; metre; metres; meter; meters",
    ),
    *_kind(
        "mass",
        lb="lb; lb.; lbs; lbs.; pound; pounds; #",
        oz="oz; oz.; ounce; ounces",
        kg="kg; kgs; kilo; kilos; kilogram; kilograms",
        g="g; gm; gram; grams",
    ),
    *_kind(
        "area",
        ft2="ft2; ft^2; sq ft; sqft; sq. ft; sq. ft.; sf; square foot; square feet",
        in2="in2; in^2; sq in; sqin; sq. in; sq. in.; square inch; square inches",
        m2="m2; m^2; sq m; sqm; square metre; square metres; square meter; square meters",
        cm2="cm2; cm^2; sq cm; square centimetres; square centimeters",
    ),
    *_kind(
        "time",
        min="min; min.; mins; minute; minutes",
        s="s; sec; secs; second; seconds",
        h="h; hr; hrs; hour; hours",
    ),
    *_kind("share", percent="%; pct; per cent", ratio=""),
    *_kind(
        "heat transfer coefficient",
        W_m2K="W/m2K; W/m2.K; W/(m2K); W/m2/K; W/(m2 K); W/m2 K; W/m^2K; W/(m2.K); W/m2C",
        Btu_hft2F="Btu/h ft2 F; Btu/(h ft2 F); Btu/hft2F; Btu/h/ft2/F; Btu/hr ft2 F",
    ),
    *_kind("coverage", ft2_lb="ft2/lb; sq ft/lb; ft2 per lb", m2_kg="m2/kg; sq m/kg; m2 per kg"),
    *_kind("molar energy", kJ_mol="kJ/mol; kJ per mol"),
)

UNITS: dict[str, Unit] = {unit.slug: unit for unit in _ALL}


@cache
def registry() -> pint.UnitRegistry[float]:
    """The project's private pint registry, built on first use."""
    import pint

    made: pint.UnitRegistry[float] = pint.UnitRegistry(None, on_redefinition="raise")
    for line in DEFINITIONS.strip().splitlines():
        made.define(line)
    return made


@cache
def _line(source: str, target: str) -> tuple[float, float]:
    """Scale and offset from one unit to the other: every conversion here is a straight line."""
    zero, thousand = (float(registry().convert(number, source, target)) for number in (0.0, 1000.0))
    return (thousand - zero) / 1000.0, zero


def convert(number: float, source: str, target: str) -> float:
    """The number, given in one unit's slug, in another's.

    >>> round(convert(3, "mil", "um"), 9)
    76.2
    >>> round(convert(50, "dF", "dC"), 2)
    27.78
    """
    if source == target:
        return float(number)
    scale, offset = _line(source, target)
    return number * scale + offset
