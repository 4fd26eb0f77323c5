"""What pressure does trapped air come to when it is heated?"""

ATMOSPHERE_kPa = 101.325


def closed_air_pressure_kPa(closed_degC: float, now_degC: float) -> float:
    """Pressure of air that was closed in at the pressure of the air outside and then heated.

    p = 101.325 kPa (T2 + 273.15) / (T1 + 273.15)

    T1: closed_degC, C, when it was closed in.   T2: now_degC, C.   Returns p in kPa absolute.

    Holds: dry air, a hollow that neither gives nor leaks.
    Source: gas law at constant volume (Gay-Lussac; any physics text; seen: memory).
    Departs from the source: nothing.

    >>> round(closed_air_pressure_kPa(20.0, 200.0), 1)
    163.5
    """
    return ATMOSPHERE_kPa * (now_degC + 273.15) / (closed_degC + 273.15)
