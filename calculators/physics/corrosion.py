"""How fast bare metal goes in a place's air: first-year loss from temperature, damp and salts, and the loss of later years.

Uses the dose-response functions of ISO 9223 and the power law of ISO 9224.
"""

from __future__ import annotations

import math
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class DoseResponse:
    """Coefficients of one metal's dose-response function, named for what they multiply.

    sulfur, sulfur_power, sulfur_humidity: of the sulfur dioxide term. cold_degC, warm_degC: slope of f up to 10 C and above it.
    chloride, chloride_power, chloride_humidity, chloride_degC: of the chloride term.
    """

    sulfur: float
    sulfur_power: float
    sulfur_humidity: float
    cold_degC: float
    warm_degC: float
    chloride: float
    chloride_power: float
    chloride_humidity: float
    chloride_degC: float


def loss_terms_um(
    metal: DoseResponse,
    air_degC: float,
    humidity_percent: float,
    sulfur_dioxide_mg_m2d: float,
    chloride_mg_m2d: float,
) -> tuple[float, float]:
    """The two parts of the first year's loss: by sulfur dioxide, and by chloride. Their sum is the loss.

        r = a Pd^p exp(b RH + f) + c Sd^q exp(d RH + e T)
        f = f1 (T - 10) up to 10 C, f2 (T - 10) above

    T: air_degC, C.   RH: humidity_percent, %.   Pd: sulfur_dioxide_mg_m2d, mg/(m2 d).   Sd: chloride_mg_m2d, mg/(m2 d).
    Returns both parts in um.

    Holds: yearly means; -17.1 to 28.7 C, 34 to 93 %, Pd 0.7 to 150.4, Sd 0.4 to 760.5; open air, rain reaching the metal.
    Source: ISO 9223:2012, equations 1 (steel) and 2 (zinc) (seen: second-hand, public programs that quote them).
    Departs from the source: nothing.

    >>> steel = DoseResponse(1.77, 0.52, 0.020, 0.150, -0.054, 0.102, 0.62, 0.033, 0.040)
    >>> round(sum(loss_terms_um(steel, 10, 75, 5, 5)), 2)
    23.22
    """
    slope = metal.cold_degC if air_degC <= 10 else metal.warm_degC
    by_sulfur = (
        metal.sulfur
        * sulfur_dioxide_mg_m2d**metal.sulfur_power
        * math.exp(metal.sulfur_humidity * humidity_percent + slope * (air_degC - 10))
    )
    by_chloride = (
        metal.chloride
        * chloride_mg_m2d**metal.chloride_power
        * math.exp(metal.chloride_humidity * humidity_percent + metal.chloride_degC * air_degC)
    )
    return by_sulfur, by_chloride


def loss_after_um(first_year_um: float, exponent: float, years: float) -> float:
    """Loss after some years: rust slows the rust that follows, for twenty years; from then on the rate stays as it is.

        D = r t^b                                up to 20 years
        D = r (20^b + b 20^(b-1) (t - 20))       beyond

    r: first_year_um, um.   b: exponent.   t: years.   Returns D in um.

    Holds: the place stays as it was in the first year.
    Source: ISO 9224:2012 (seen: second-hand, two public programs that quote it).
    Departs from the source: nothing.

    >>> round(loss_after_um(first_year_um=25, exponent=0.523, years=20), 1)
    119.8
    """
    grown: float = min(years, 20.0) ** exponent
    steady: float = exponent * 20.0 ** (exponent - 1)
    return first_year_um * (grown + steady * max(years - 20, 0.0))
