"""How fast does this part heat in the oven and cool after it?

The part is one lump: rho c(T) L dT/dt = h (T_air - T) + F eps sigma (T_wall^4 - T^4), with L its heat
path, F the share of the walls' radiation that reaches it, and the walls at the temperature of the air.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from math import exp, inf, pi

from calculators.physics.curve import Curve

STEFAN_BOLTZMANN_W_m2K4 = 5.670374e-8
ZERO_degC_K = 273.15

# Below this distance from its surroundings a part counts as having come to them.
_ARRIVED_K = 0.005
_MOST_STEPS = 20_000


@dataclass(frozen=True, slots=True)
class Part:
    """What one section of a part is made of, as far as heat is concerned.

    specific_heat_J_kgK: coefficients of powers of degrees Celsius, lowest first, at most four.
    """

    density_kg_m3: float
    specific_heat_J_kgK: Sequence[float]
    heat_path_m: float
    emissivity: float


@dataclass(frozen=True, slots=True)
class Surroundings:
    """The air and walls round a part: an oven, or the shop after the pull.

    exposure: share of the walls' radiation that the part sees (1 open).
    dip_K, recovery_min: how far the air is below its setting at minute 0, and how long it takes back.
    """

    temperature_degC: float
    convection_W_m2K: float
    exposure: float = 1.0
    dip_K: float = 0.0
    recovery_min: float = 0.0

    def air_degC(self, time_min: float) -> float:
        """Air temperature at a minute after the door closed: setting - dip exp(-3 t / recovery)."""
        if self.dip_K == 0.0 or self.recovery_min <= 0.0:
            return self.temperature_degC
        return self.temperature_degC - self.dip_K * exp(-3.0 * time_min / self.recovery_min)


def heat_path_m(shape: str, thickness_m: float) -> float:
    """Heat path of a section: its volume over the area that heat enters by.

    L = t/2 for a plate heated from both sides; t from one side; t/4 for a round or square bar

    shape: both-sides, one-side, round-bar, square-bar or heat-path (already one).
    t: thickness_m, m: plate thickness, bar diameter or side.    Returns L in m.

    Holds: edges and ends neglected, so a small part heats a little faster than this says.
    Source: geometry: plate V/A = t/2 or t; bar V/A = (pi t^2/4)/(pi t) = t^2/(4 t) = t/4.
    Departs from the source: nothing.

    >>> heat_path_m("round-bar", 0.020)
    0.005
    """
    parts_of_thickness = {
        "both-sides": 2.0,
        "one-side": 1.0,
        "round-bar": 4.0,
        "square-bar": 4.0,
        "heat-path": 1.0,
    }
    if shape not in parts_of_thickness:
        raise ValueError(f"no heat path is known for the shape {shape!r}")
    return thickness_m / parts_of_thickness[shape]


def weighed_heat_path_m(mass_kg: float, density_kg_m3: float, area_m2: float) -> float:
    """Heat path of a part from its weight and its heated area.

    L = m / (rho A)

    m: mass_kg, kg.   rho: density_kg_m3, kg/m3.   A: area_m2, m2, all of it reached by the air.
    Returns L in m.

    Holds: an average over the part: a heavier section lags behind it.
    Source: definition, L = V/A.
    Departs from the source: nothing.

    >>> weighed_heat_path_m(mass_kg=7.85, density_kg_m3=7850, area_m2=0.5)
    0.002
    """
    return mass_kg / (density_kg_m3 * area_m2)


def sphere_heat_path_m(diameter_m: float) -> float:
    """Heat path of a sphere: L = (pi D^3/6)/(pi D^2) = D/6.

    D: diameter_m, m.   Returns L in m.

    Holds: heated all round.
    Source: geometry.
    Departs from the source: nothing.

    >>> sphere_heat_path_m(0.006)
    0.001
    """
    return (pi * diameter_m**3 / 6.0) / (pi * diameter_m**2)


def radiation_W_m2K(emissivity: float, part_degC: float, walls_degC: float) -> float:
    """Radiation between a part and walls all round it, as a coefficient that adds to convection.

    h_rad = eps sigma (T1 + T2) (T1^2 + T2^2), temperatures in K

    eps: emissivity, of the part (times its exposure).   T1, T2: part_degC, walls_degC, C.
    Returns h_rad in W/(m2 K).

    Holds: a grey part, small beside the walls.
    Source: Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, eq. 1.9 (seen: memory).
    Departs from the source: nothing.

    >>> round(radiation_W_m2K(0.9, 20.0, 200.0), 1)
    12.1
    """
    part_K, walls_K = part_degC + ZERO_degC_K, walls_degC + ZERO_degC_K
    return emissivity * STEFAN_BOLTZMANN_W_m2K4 * (part_K + walls_K) * (part_K**2 + walls_K**2)


def specific_heat_at_J_kgK(coefficients: Sequence[float], temperature_degC: float) -> float:
    """Specific heat at a temperature.

    c = c0 + c1 T + c2 T^2 + c3 T^3, T in C

    coefficients: c0 first.   T: temperature_degC, C.   Returns c in J/(kg K).

    Holds: over the range of the source of the coefficients.
    Source: form of EN 1993-1-2:2005, 3.4.1.2 (seen: second-hand).
    Departs from the source: nothing.

    >>> specific_heat_at_J_kgK((903.0, 0.41), 100.0)
    944.0
    """
    total = 0.0
    for coefficient in reversed(coefficients):
        total = total * temperature_degC + coefficient
    return total


def temperature_curve(part: Part, around: Surroundings, start_degC: float, until_min: float = inf) -> Curve:
    """Temperature of a part from the moment it meets its surroundings until it has come to them.

    rho c(T) L dT/dt = h (T_air - T) + F eps sigma (T_air^4 - T^4), the fourth powers in K

    part: rho, c(T), L, eps.   around: T_air(t), h, F.   start_degC: T at minute 0, C.
    until_min: the latest minute that anybody will ask about; the curve may end soon after it.
    Returns a Curve, minutes and C, that stays level after its last node.

    Holds: a lump (Biot number under 0.1), walls at the temperature of the air.
    Source: Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, ch. 5, general lumped
    capacitance analysis (seen: memory); fourth-order Runge-Kutta steps sized by the lump's own time
    constant (numerical method, no source needed).
    Departs from the source: specific heat follows temperature.

    >>> steel = Part(7850, (480.0,), 0.003, 0.0)
    >>> round(temperature_curve(steel, Surroundings(200.0, 25.0), 20.0).first_at_or_above(190.0), 1)
    21.8
    """
    if len(part.specific_heat_J_kgK) > 4:
        raise ValueError("specific heat has at most four coefficients")
    c0, c1, c2, c3 = (*part.specific_heat_J_kgK, 0.0, 0.0, 0.0)[:4]
    storage = part.density_kg_m3 * part.heat_path_m / 60.0  # per minute
    convection = around.convection_W_m2K
    radiation = part.emissivity * around.exposure * STEFAN_BOLTZMANN_W_m2K4
    if storage <= 0.0 or convection < 0.0 or radiation < 0.0 or convection + radiation <= 0.0:
        raise ValueError("a part needs density, a heat path, and some heat transfer")
    setting = around.temperature_degC
    dips = around.dip_K != 0.0 and around.recovery_min > 0.0
    fall = 3.0 / around.recovery_min if dips else 0.0
    dip = around.dip_K if dips else 0.0

    def slope(air_degC: float, metal_degC: float) -> float:
        air_K, metal_K = air_degC + 273.15, metal_degC + 273.15
        heat = (air_degC - metal_degC) * (
            convection + radiation * (air_K + metal_K) * (air_K * air_K + metal_K * metal_K)
        )
        return heat / (storage * (c0 + metal_degC * (c1 + metal_degC * (c2 + metal_degC * c3))))

    time, metal, air, missing = 0.0, start_degC, setting - dip, dip
    rate = slope(air, metal)
    times, temperatures, slopes = [time], [metal], [rate]
    for _ in range(_MOST_STEPS):
        if time >= until_min or (abs(setting - metal) < _ARRIVED_K and abs(missing) < _ARRIVED_K):
            break
        # The lump's own time constant, in minutes, at its fastest now.
        hot_K = max(metal, setting) + 273.15
        constant = (
            storage
            * (c0 + metal * (c1 + metal * (c2 + metal * c3)))
            / (convection + 4.0 * radiation * hot_K * hot_K * hot_K)
        )
        # An eighth of it at first, where a part that cools loses its cure quickly; later less of the
        # difference is left, and the step may grow, short of where the method turns unstable (2.8).
        # A test holds this to 0.1 %.
        step = constant * min(2.0, 0.12 + 0.05 * time / constant)
        if dips:
            # The air's own recovery must be followed as well, closely at first; one that is over in a
            # small part of the lump's time constant does not matter to the metal.
            step = min(step, max(0.3 / fall, 0.005 * constant) + 0.25 * time)
            missing_half = dip * exp(-fall * (time + 0.5 * step))
            missing = dip * exp(-fall * (time + step))
            air_half, air = setting - missing_half, setting - missing
        else:
            air_half = air
        second = slope(air_half, metal + 0.5 * step * rate)
        third = slope(air_half, metal + 0.5 * step * second)
        fourth = slope(air, metal + step * third)
        metal += step * (rate + 2.0 * (second + third) + fourth) / 6.0
        time += step
        rate = slope(air, metal)
        times.append(time)
        temperatures.append(metal)
        slopes.append(rate)
    else:
        raise ValueError("the part had not come to its surroundings after any reasonable time")
    return Curve(times, temperatures, slopes)
