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
mm2 = mm ** 2
s = [time]
ms = 0.001 s
min = 60 s
h = 60 min
day = 24 h
year = 365.25 day
joule = kg * m ** 2 / s ** 2
mJ = 0.001 joule
kJ = 1000 joule
MJ = 1e6 joule
Btu = 1055.05585262 joule
kWh = 3.6e6 joule
therm = 1e5 Btu
W = joule / s
kW = 1000 W
Btu_h = Btu / h
hp = 745.69987158227022 W
N = kg * m / s ** 2
kN = 1000 N
lbf = 4.4482216152605 N
Pa = N / m ** 2
kPa = 1000 Pa
MPa = 1e6 Pa
bar = 1e5 Pa
psi = lbf / in ** 2
m3 = m ** 3
ft3 = ft ** 3
in3 = in ** 3
L = 0.001 m3
mL = 0.001 L
cm3 = cm ** 3
gal = 231 in3
cfm = ft3 / min
m3_h = m3 / h
m3_min = m3 / min
m3_s = m3 / s
L_min = L / min
L_s = L / s
ft_min = ft / min
ft_s = ft / s
m_s = m / s
m_min = m / min
lb_h = lb / h
lb_min = lb / min
kg_h = kg / h
g_min = g / min
g_s = g / s
ft2_h = ft2 / h
ft2_min = ft2 / min
m2_h = m2 / h
m2_min = m2 / min
kg_m3 = kg / m3
g_m3 = g / m3
mg_m3 = 1e-6 kg / m3
ug_m3 = 1e-9 kg / m3
mg_L = 1e-6 kg / L
g_cm3 = g / cm3
lb_ft3 = lb / ft3
oz_ft3 = oz / ft3
kg_m2 = kg / m2
g_m2 = g / m2
mg_m2 = 1e-6 kg / m2
ug_cm2 = 1e-9 kg / cm2
lb_ft2 = lb / ft2
oz_ft2 = oz / ft2
kg_m = kg / m
lb_ft = lb / ft
mg_m2d = 1e-6 kg / m2 / day
V = [voltage]
kV = 1000 V
A = joule / s / V
mA = 0.001 A
uA = 1e-6 A
ohm = V / A
mohm = 0.001 ohm
kohm = 1000 ohm
Mohm = 1e6 ohm
Gohm = 1e9 ohm
farad = A * s / V
nF = 1e-9 farad
pF = 1e-12 farad
S_m = 1 / ohm / m
uS_cm = 1e-6 / ohm / cm
mS_cm = 0.001 / ohm / cm
dBA = [sound]
money = [price]
money_lb = money / lb
money_kg = money / kg
money_h = money / h
money_kWh = money / kWh
money_therm = money / therm
money_MJ = money / MJ
money_gal = money / gal
money_L = money / L
money_m3 = money / m3
W_m2K = joule / s / m ** 2 / dC
Btu_hft2F = 1055.05585262 joule / h / ft ** 2 / dF
mol = [substance]
kJ_mol = 1000 joule / mol
ft2_lb = ft2 / lb
m2_kg = m2 / kg
ratio = []
percent = 0.01 ratio
mg_kg = 1e-6 ratio
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
        mm2="mm2; mm^2; sq mm; square millimetres; square millimeters",
    ),
    *_kind(
        "time",
        min="min; min.; mins; minute; minutes",
        s="s; sec; secs; second; seconds",
        h="h; hr; hrs; hour; hours",
        ms="ms; msec; millisecond; milliseconds",
        day="days; day; d",
        year="years; year; yr; yrs; a",
    ),
    *_kind("share", percent="%; pct; per cent", ratio="; :1", mg_kg="mg/kg; ppm; mg per kg"),
    *_kind(
        "heat transfer coefficient",
        W_m2K="W/m2K; W/m2.K; W/(m2K); W/m2/K; W/(m2 K); W/m2 K; W/m^2K; W/(m2.K); W/m2C",
        Btu_hft2F="Btu/h ft2 F; Btu/(h ft2 F); Btu/hft2F; Btu/h/ft2/F; Btu/hr ft2 F",
    ),
    *_kind(
        "volume",
        gal="gal; gal.; gallon; gallons; US gal; US gallon; US gallons",
        ft3="ft3; ft^3; cu ft; cuft; cubic foot; cubic feet",
        in3="in3; in^3; cu in; cubic inch; cubic inches",
        L="L; litre; litres; liter; liters",
        mL="mL; millilitre; millilitres; milliliter; milliliters; cc",
        m3="m3; m^3; cu m; cubic metre; cubic metres; cubic meter; cubic meters",
        cm3="cm3; cm^3; cubic centimetres; cubic centimeters",
    ),
    *_kind(
        "pressure",
        psi="psi; psig; psi gauge; lb/in2; lbf/in2; pounds per square inch",
        bar="bar; bars; barg",
        kPa="kPa",
        MPa="MPa",
        Pa="Pa; pascal; pascals",
    ),
    *_kind("force", lbf="lbf; lb; lbs; pound; pounds; pounds force", N="N; newton; newtons", kN="kN"),
    *_kind(
        "flow",
        cfm="cfm; scfm; acfm; ft3/min; cu ft/min; cubic feet per minute; cubic feet a minute",
        m3_h="m3/h; m3/hr; m^3/h; cmh; cubic metres per hour; cubic meters per hour",
        m3_min="m3/min; m^3/min; cmm",
        m3_s="m3/s; m^3/s",
        L_min="L/min; lpm; litres per minute; liters per minute",
        L_s="L/s",
    ),
    *_kind(
        "speed",
        ft_min="ft/min; fpm; feet per minute; feet a minute",
        ft_s="ft/s; fps; feet per second",
        m_s="m/s; metres per second; meters per second",
        m_min="m/min; metres per minute; meters per minute",
    ),
    *_kind(
        "mass flow",
        lb_h="lb/h; lb/hr; lbs/h; lbs/hr; pounds per hour; pounds an hour",
        lb_min="lb/min; lbs/min; pounds per minute",
        kg_h="kg/h; kg/hr; kilograms per hour",
        g_min="g/min; grams per minute; grams a minute",
        g_s="g/s; grams per second",
    ),
    *_kind(
        "area in time",
        ft2_min="ft2/min; sq ft/min; square feet per minute; square feet a minute",
        ft2_h="ft2/h; ft2/hr; sq ft/h; sq ft/hr; square feet per hour; square feet an hour",
        m2_min="m2/min; square metres per minute; square meters per minute",
        m2_h="m2/h; m2/hr; square metres per hour; square meters per hour",
    ),
    *_kind(
        "mass in a volume",
        kg_m3="kg/m3; kg/m^3",
        lb_ft3="lb/ft3; lbs/ft3; lb/cu ft; pcf; pounds per cubic foot",
        g_cm3="g/cm3; g/cc; g/mL",
        g_m3="g/m3; g/m^3",
        mg_m3="mg/m3; mg/m^3",
        ug_m3="ug/m3; ug/m^3",
        mg_L="mg/L; mg/litre; mg/liter",
        oz_ft3="oz/ft3",
    ),
    *_kind(
        "mass on an area",
        kg_m2="kg/m2; kg/m^2",
        lb_ft2="lb/ft2; lbs/ft2; lb/sq ft; psf; pounds per square foot",
        g_m2="g/m2; g/m^2",
        mg_m2="mg/m2; mg/m^2",
        ug_cm2="ug/cm2; ug/cm^2",
        oz_ft2="oz/ft2; oz/sq ft",
    ),
    *_kind("mass in a length", lb_ft="lb/ft; lbs/ft; pounds per foot", kg_m="kg/m; kilograms per metre"),
    *_kind("deposition", mg_m2d="mg/(m2 d); mg/m2d; mg/m2/d; mg/m2/day; mg/(m2 day); mg/(m2d)"),
    *_kind(
        "energy",
        kWh="kWh; kilowatt hours; kilowatt-hours",
        Btu="Btu",
        joule="J; joules",
        mJ="mJ; millijoule; millijoules",
        kJ="kJ; kilojoules",
        MJ="MJ; megajoule; megajoules",
        therm="therm; therms",
    ),
    *_kind(
        "power",
        kW="kW; kilowatt; kilowatts",
        W="W; watt; watts",
        Btu_h="Btu/h; Btu/hr; Btuh",
        hp="hp; horsepower",
    ),
    *_kind("voltage", V="V; volt; volts", kV="kV; kilovolt; kilovolts"),
    *_kind("current", uA="uA; microamp; microamps", mA="mA; milliamp; milliamps", A="A; amp; amps"),
    *_kind(
        "resistance",
        ohm="ohm; ohms; Ω",
        mohm="mohm; mΩ; milliohm; milliohms",
        kohm="kohm; kΩ; kilohm; kilohms; kilo-ohm; kilo-ohms",
        Mohm="Mohm; MΩ; Mohms; megohm; megohms; megaohm; megaohms; meg",
        Gohm="Gohm; GΩ; gigohm; gigohms; gigaohm; gigaohms",
    ),
    *_kind("capacitance", pF="pF; picofarad; picofarads", nF="nF; nanofarad; nanofarads"),
    *_kind("conductivity", uS_cm="uS/cm; uS; microsiemens/cm", mS_cm="mS/cm", S_m="S/m"),
    *_kind("sound level", dBA="dBA; dB(A); dB A; dB; decibels"),
    *_kind("money", money=""),
    *_kind("price of mass", money_lb="a lb; per lb; /lb", money_kg="a kg; per kg; /kg"),
    *_kind("price of time", money_h="an hour; per hour; /h; per h; /hr"),
    *_kind(
        "price of energy",
        money_kWh="a kWh; per kWh; /kWh",
        money_therm="a therm; per therm; /therm",
        money_MJ="a MJ; per MJ; /MJ",
    ),
    *_kind(
        "price of volume",
        money_gal="a gal; per gal; /gal",
        money_L="a L; per L; /L",
        money_m3="a m3; per m3; /m3",
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
