"""How much faster does powder cure when the metal is hotter?

Cure speed follows k = A exp(-Ea/(R T)); minutes at any temperature are turned into minutes at the
schedule temperature.
"""

from dataclasses import dataclass
from math import exp, inf, log

GAS_CONSTANT_J_molK = 8.314462618


@dataclass(frozen=True, slots=True)
class Kinetics:
    """A powder's cure speed.

    schedule_degC: metal temperature to which equivalent minutes refer.
    activation_kJ_mol: activation energy.
    hottest_degC: the hottest point of the data sheet; above it the rate is held at its value there.
    """

    schedule_degC: float
    activation_kJ_mol: float
    hottest_degC: float = inf


def activation_energy_kJ_mol(
    first_degC: float, first_min: float, second_degC: float, second_min: float
) -> float:
    """Activation energy from two points of the same data sheet.

    Ea = R ln(t2/t1) / (1/T2 - 1/T1), temperatures in K

    T1, t1: first_degC, C, and first_min, min.   T2, t2: second_degC, C, and second_min, min.
    Returns Ea in kJ/mol; the order of the points does not matter.

    Holds: both points are the same degree of cure. A data sheet rounds its minutes, so this is a rough
    figure: one sheet's own tolerance has spanned 74 to 126 kJ/mol.
    Source: the Arrhenius relation (any text on kinetics; seen: memory).
    Departs from the source: nothing.
    Raises ValueError for equal temperatures, and where the hotter point does not take less time.

    >>> round(activation_energy_kJ_mol(200, 10, 190, 15), 1)
    73.9
    """
    if min(first_min, second_min) <= 0.0:
        raise ValueError("both schedule times must be more than zero")
    if first_degC == second_degC:
        raise ValueError("the two schedule points have the same temperature")
    cooler, hotter = sorted(((first_degC, first_min), (second_degC, second_min)))
    if hotter[1] >= cooler[1]:
        raise ValueError("the hotter schedule point must take less time than the cooler one")
    span = 1.0 / (cooler[0] + 273.15) - 1.0 / (hotter[0] + 273.15)
    return GAS_CONSTANT_J_molK * log(cooler[1] / hotter[1]) / span / 1000.0


def cure_rate(kinetics: Kinetics, metal_degC: float) -> float:
    """Equivalent minutes at the schedule temperature that one minute at this temperature is worth.

    k/k_s = exp[(Ea/R)(1/T_s - 1/T)], temperatures in K

    Ea, T_s: from kinetics.   T: metal_degC, C, or the sheet's hottest point where that is lower.
    Returns the ratio.

    Holds: near the sheet's own temperatures (15 C or so either way); the sheet rules.
    Source: the Arrhenius relation (seen: memory).
    Departs from the source: held level above the sheet's hottest point, where nothing vouches for it.

    >>> round(1 / cure_rate(Kinetics(200, 80), 190), 3)
    1.551
    """
    capped_degC = min(metal_degC, kinetics.hottest_degC)
    per_kelvin = kinetics.activation_kJ_mol * 1000.0 / GAS_CONSTANT_J_molK
    return exp(per_kelvin * (1.0 / (kinetics.schedule_degC + 273.15) - 1.0 / (capped_degC + 273.15)))


def minutes_needed(kinetics: Kinetics, schedule_min: float, metal_degC: float) -> float:
    """Minutes at one steady metal temperature that are worth the schedule.

    t = t_s / exp[(Ea/R)(1/T_s - 1/T)]

    t_s: schedule_min, min at the schedule temperature.   T: metal_degC, C.   Returns t in min.

    Holds: as cure_rate.
    Source: the Arrhenius relation (seen: memory).
    Departs from the source: as cure_rate.

    >>> round(minutes_needed(Kinetics(200, 60), 10, 180), 1)
    19.6
    """
    return schedule_min / cure_rate(kinetics, metal_degC)
