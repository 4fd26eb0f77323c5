"""At what temperature does water or frost settle out of the air? Dew point and humidity by the Magnus form."""

from __future__ import annotations

from math import exp, log

_WATER = (17.62, 243.12)
_ICE = (22.46, 272.62)


def _over(dew_degC: float) -> tuple[float, float]:
    return _WATER if dew_degC >= 0 else _ICE


def _back(exponent: float) -> float:
    """The temperature at which the saturation pressure is exp(exponent) times that at 0 C."""
    a, b_degC = _over(exponent)
    return b_degC * exponent / (a - exponent)


def saturation_exponent(degC: float, over_degC: float | None = None) -> float:
    """Logarithm of the saturation pressure of water vapour, against that at 0 C.

        g = 17.62 T / (243.12 + T) over water;   22.46 T / (272.62 + T) over ice

    T: degC, C.   over_degC: temperature that says whether it is over water (0 C and more) or ice; T itself if not given.
    Returns g.

    Holds: -65 to 60 C.
    Source: Sonntag 1990, as in the WMO guide no. 8 (from memory).
    Departs from the source: the pressure at 0 C, 6.112 hPa, drops out of all that is asked here.

    >>> round(saturation_exponent(20), 4)
    1.3393
    """
    a, b_degC = _over(degC if over_degC is None else over_degC)
    return a * degC / (b_degC + degC)


def dew_point_degC(air_degC: float, humidity_percent: float) -> float:
    """Dew point of air; the frost point where that lies below freezing.

        g = ln(RH / 100) + g(T);   Td = 243.12 g / (17.62 - g)

    T: air_degC, C.   RH: humidity_percent, over water.   g(T): saturation_exponent.   Returns Td, C.

    Holds: as saturation_exponent.
    Source: saturation_exponent turned round; within 0.2 C of a psychrometrics library over 0 to 40 C and 20 to 95 %.
    Departs from the source: nothing.

    >>> round(dew_point_degC(air_degC=25, humidity_percent=70), 2)
    19.15
    """
    return _back(log(humidity_percent / 100) + saturation_exponent(air_degC, over_degC=0))


def humidity_at_dew_point_percent(air_degC: float, dew_degC: float) -> float:
    """Relative humidity of air that has a dew point.

        RH = 100 exp(g(Td) - g(T))

    T: air_degC, C.   Td: dew_degC, C.   g: saturation_exponent.   Returns RH over water, %; over 100 where Td > T.

    Holds: as saturation_exponent.
    Source: dew_point_degC turned round.
    Departs from the source: nothing.

    >>> round(humidity_at_dew_point_percent(air_degC=25, dew_degC=19.15))
    70
    """
    return 100 * exp(saturation_exponent(dew_degC) - saturation_exponent(air_degC, over_degC=0))


def air_at_dew_point_degC(dew_degC: float, humidity_percent: float) -> float:
    """Temperature at which air of this humidity has that dew point.

        g = g(Td) - ln(RH / 100);   T = 243.12 g / (17.62 - g)

    Td: dew_degC, C.   RH: humidity_percent, over water.   g(Td): saturation_exponent.   Returns T, C.

    Holds: as saturation_exponent.
    Source: dew_point_degC turned round.
    Departs from the source: nothing.

    >>> round(air_at_dew_point_degC(dew_degC=19.15, humidity_percent=70), 1)
    25.0
    """
    exponent = saturation_exponent(dew_degC) - log(humidity_percent / 100)
    a, b_degC = _WATER
    return b_degC * exponent / (a - exponent)
