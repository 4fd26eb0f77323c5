"""How much air does a nozzle take, and what does the hose to it lose? Choked flow through an orifice, and flow in a pipe."""

from __future__ import annotations

from math import log, log10, pi, sqrt

GAS_CONSTANT_J_kgK = 287.05
HEAT_RATIO = 1.4
FREE_AIR_kg_m3 = (
    1.2004  # 0.07494 lb/ft3: at 70 F and 14.7 psi, the free air that cfm of nozzles are counted in
)
FREE_AIR_K = 294.26
ATMOSPHERE_kPa = 101.325
VISCOSITY_Pa_s = 1.82e-5  # of air at room heat
HOSE_ROUGHNESS_m = 1e-5


class Choked(ValueError):
    """The air at the hose's end would have to go faster than sound can carry the pressure back: the hose is too thin."""


def choked_flow_kg_s(
    bore_m: float, pressure_kPa: float, temperature_K: float = FREE_AIR_K, discharge: float = 1.0
) -> float:
    """Air through an orifice whose throat runs at the speed of sound.

        m = C A p sqrt(k / (R T)) (2 / (k + 1))^((k + 1) / (2 (k - 1)))

    A: area of bore_m, m2.   p: pressure_kPa, absolute, upstream.   T: temperature_K, K, upstream.
    C: discharge, share of the ideal flow.   k = 1.4, R = 287.05 J/(kg K).   Returns m in kg/s.

    Holds: pressure outside at most 0.528 of that upstream, so over about 13 psi (90 kPa) gauge into free air.
    Source: choked flow of an ideal gas, any gas-dynamics textbook (from memory); S. A. Moss, 1906, prints the same for air as
    W = 0.5303 A C P / sqrt(T) (quoted on a reference page), 0.3 % lower.
    Departs from the source: nothing.

    >>> round(choked_flow_kg_s(bore_m=0.00635, pressure_kPa=790.8), 4)
    0.059
    """
    k = HEAT_RATIO
    area_m2 = pi * bore_m**2 / 4
    factor: float = sqrt(k / (GAS_CONSTANT_J_kgK * temperature_K)) * (2 / (k + 1)) ** (
        (k + 1) / (2 * (k - 1))
    )
    return discharge * area_m2 * pressure_kPa * 1000 * factor


def friction_factor(reynolds: float, relative_roughness: float) -> float:
    """Darcy's friction factor of a pipe.

        1 / sqrt(f) = -1.8 log10((e / 3.7)^1.11 + 6.9 / Re)    (turbulent);   f = 64 / Re    (laminar)

    Re: reynolds.   e: relative_roughness, roughness over bore.   Returns f.

    Holds: Re under 2,300 laminar; turbulent from 4,000. Between them the turbulent value is used, which is the higher.
    Source: S. E. Haaland, J. Fluids Eng. 105 (1983), 89-90 (from memory); within 2 % of Colebrook's law.
    Departs from the source: nothing.

    >>> round(friction_factor(reynolds=100_000, relative_roughness=0.0005), 4)
    0.0201
    """
    if reynolds < 2300:
        return 64 / reynolds
    return (-1.8 * log10((relative_roughness / 3.7) ** 1.11 + 6.9 / reynolds)) ** -2


def hose_inlet_kPa(flow_kg_s: float, bore_m: float, length_m: float, outlet_kPa: float) -> float:
    """Pressure that a hose needs at its start to hand on a pressure at its end.

        p1^2 = p2^2 + (m / A)^2 R T (f L / D + 2 ln(p1 / p2))

    m: flow_kg_s, kg/s.   D: bore_m, m.   L: length_m, m.   p2: outlet_kPa, absolute.   f: friction_factor.
    Returns p1, kPa absolute.   Raises Choked where no pressure can push that much through.

    Holds: clean air at 70 F all along, a straight round bore, no couplings. Abrasive in the hose loses more.
    Source: isothermal flow of a gas in a pipe, any textbook of fluid flow (from memory).
    Departs from the source: the roughness of 0.01 mm is our choice; it gives a dealer's printed example within 5 % for thin
    hoses (11.1 and 2.4 psi).

    >>> round(hose_inlet_kPa(flow_kg_s=0.085, bore_m=0.01905, length_m=15.24, outlet_kPa=716.8), 0)
    790.0
    """
    area_m2 = pi * bore_m**2 / 4
    per_area = (flow_kg_s / area_m2) ** 2 * GAS_CONSTANT_J_kgK * FREE_AIR_K / 1e6  # kPa2
    if per_area >= outlet_kPa**2:
        raise Choked
    reynolds = 4 * flow_kg_s / (pi * bore_m * VISCOSITY_Pa_s)
    loss = friction_factor(reynolds, HOSE_ROUGHNESS_m / bore_m) * length_m / bore_m
    inlet = sqrt(outlet_kPa**2 + per_area * loss)
    for _ in range(40):
        inlet = sqrt(outlet_kPa**2 + per_area * (loss + 2 * log(inlet / outlet_kPa)))
    return inlet


def stored_free_air_m3(volume_m3: float, from_kPa: float, to_kPa: float) -> float:
    """Free air that a tank gives while its pressure falls.

        V = V_tank (p1 - p2) / p_atm

    V_tank: volume_m3, m3.   p1, p2: from_kPa, to_kPa, both gauge or both absolute.   Returns V, m3 at 1 atmosphere.

    Holds: the air in the tank keeps its temperature. It cools as it leaves, so a quick draw gives less.
    Source: the ideal gas law, worked out.
    Departs from the source: nothing.

    >>> round(stored_free_air_m3(volume_m3=0.2271, from_kPa=861.8, to_kPa=620.5), 3)
    0.541
    """
    return volume_m3 * (from_kPa - to_kPa) / ATMOSPHERE_kPa
