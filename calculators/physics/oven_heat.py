"""Where does an oven's heat go, and how long does it take to heat a load and itself?"""

from collections.abc import Sequence

AIR_kg_m3 = 1.2
"""Density of room air, kg/m3, at about 20 C and sea level. Source: any handbook (seen: memory)."""

AIR_kJ_kgK = 1.01
"""Specific heat of air, kJ/(kg K). Source: any handbook (seen: memory)."""


def stored_kJ(
    mass_kg: float, specific_heat_J_kgK: Sequence[float], start_degC: float, end_degC: float
) -> float:
    """Heat that a mass takes up between two temperatures.

    Q = m integral of c(T) dT,   c = c0 + c1 T + c2 T^2 + ..., T in C

    m: mass_kg, kg.   c: specific_heat_J_kgK, coefficients, c0 first.   start_degC, end_degC: C.
    Returns Q in kJ.

    Holds: no melting or phase change between the two.
    Source: definition of specific heat; the integral of a polynomial.
    Departs from the source: nothing.

    >>> stored_kJ(10, (490.0,), 20.0, 120.0)
    490.0
    """
    total = 0.0
    for power, one in enumerate(specific_heat_J_kgK, 1):
        total += one * (end_degC**power - start_degC**power) / power
    return mass_kg * total / 1000.0


def exhaust_kW(flow_m3_s: float, rise_K: float) -> float:
    """Heat that fresh air takes from the oven on its way to the stack.

    P = rho Q c dT

    Q: flow_m3_s, m3/s, counted as the cool air that comes in.   dT: rise_K, K.   Returns P in kW.

    Holds: dry room air; measured in the hot stack the same air has more volume.
    Source: heat balance (any text on ventilation; seen: memory).
    Departs from the source: nothing.

    >>> round(exhaust_kW(0.1, 180.0), 1)
    21.8
    """
    return AIR_kg_m3 * flow_m3_s * AIR_kJ_kgK * rise_K


def wall_kW(area_m2: float, u_W_m2K: float, rise_K: float) -> float:
    """Heat that the walls let through.

    P = U A dT

    A: area_m2, m2, walls, roof, floor and door.   U: u_W_m2K, W/(m2 K).   dT: rise_K, K.   Returns P in kW.

    Holds: walls that have come to a steady state; gaps and the door's edge are part of U.
    Source: definition of the U-value.
    Departs from the source: nothing.

    >>> wall_kW(40.0, 0.5, 180.0)
    3.6
    """
    return u_W_m2K * area_m2 * rise_K / 1000.0


def heat_limited_min(stored_heat_kJ: float, input_kW: float, losses_kW: float) -> float | None:
    """Time to put a heat into the load where the burner, not the metal, sets the pace.

    t = Q / (P - losses)

    Q: stored_heat_kJ, kJ.   P: input_kW, kW, into the oven.   losses: losses_kW, kW, at full heat.
    Returns t in min, or None where the losses are as large as the input.

    Holds: losses at full heat all the way, so a little longer than it takes.
    Source: heat balance.
    Departs from the source: nothing.

    >>> heat_limited_min(6000.0, 15.0, 5.0)
    10.0
    """
    if stored_heat_kJ == 0.0:
        return 0.0
    if input_kW <= losses_kW:
        return None
    return stored_heat_kJ / (input_kW - losses_kW) / 60.0
