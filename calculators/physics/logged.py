"""What cure did this logged bake really give, summed straight between the readings?"""

from collections.abc import Sequence
from math import ceil, exp, inf

from calculators.physics.cure import GAS_CONSTANT_J_molK, Kinetics
from calculators.physics.curve import GAUSS_3

# A gap while the metal falls hides how fast it fell; longer than this it earns no safe credit.
LONGEST_FALLING_GAP_MIN = 5.0


def straight_equivalent_min(kinetics: Kinetics, minutes: float, start_degC: float, end_degC: float) -> float:
    """Equivalent minutes made while the metal goes straight from one temperature to another.

    t_eq = (t/(T2 - T1)) integral of exp[(Ea/R)(1/T_s - 1/T)] dT, from T1 to T2

    Ea, T_s: from kinetics, without its hottest point.   t: minutes.   T1, T2: start_degC, end_degC, C.
    Returns t_eq in min.

    Holds: any temperatures; sub-steps are sized by the exponent to 1e-6.
    Source: the Arrhenius relation (seen: memory); three-point Gauss-Legendre.
    Departs from the source: nothing.

    >>> straight_equivalent_min(Kinetics(200.0, 80.0), 5.0, 200.0, 200.0)
    5.0
    """
    slope = kinetics.activation_kJ_mol * 1000.0 / GAS_CONSTANT_J_molK
    offset = slope / (kinetics.schedule_degC + 273.15)
    start_K, rise_K = start_degC + 273.15, end_degC - start_degC
    # Half a unit of the exponent a sub-step.
    pieces = max(1, ceil(2.0 * abs(slope / start_K - slope / (start_K + rise_K))))
    total = 0.0
    for piece in range(pieces):
        for place, weight in GAUSS_3:
            total += weight * exp(offset - slope / (start_K + rise_K * (piece + place) / pieces))
    return total * minutes / pieces


def logged_equivalents_min(
    times_min: Sequence[float],
    temperatures_degC: Sequence[float],
    kinetics: Kinetics,
    credit_above_degC: float = -inf,
    longest_falling_gap_min: float = inf,
) -> list[float]:
    """Running total of equivalent minutes at each reading of a log.

    t_eq = integral of exp[(Ea/R)(1/T_s - 1/T)] dt, T straight between readings

    times_min: min, rising.   temperatures_degC: C.   Ea, T_s, hottest point: from kinetics.
    credit_above_degC: minutes below it do not count.   longest_falling_gap_min: a gap longer than this
    in which the metal falls counts nothing. Returns one total for each reading; the first is 0.

    Holds: readings close enough that a straight line between them is fair.
    Source: the Arrhenius relation (seen: memory).
    Departs from the source: rate held level above the hottest point; the two credit rules are ours.

    >>> readings = [20, 120, 160, 180, 190, 195, 198, 198, 150, 80]
    >>> minutes = [0, 5, 8, 10, 12, 15, 20, 24, 26, 30]
    >>> round(logged_equivalents_min(minutes, readings, Kinetics(200, 80))[-1], 2)
    12.72
    """
    totals = [0.0]
    for place in range(1, len(times_min)):
        minutes = times_min[place] - times_min[place - 1]
        start_degC, end_degC = temperatures_degC[place - 1], temperatures_degC[place]
        if minutes < 0.0:
            raise ValueError("the times of the log must rise")
        if end_degC < start_degC and minutes > longest_falling_gap_min:
            totals.append(totals[-1])
            continue
        totals.append(totals[-1] + _line_min(kinetics, minutes, start_degC, end_degC, credit_above_degC))
    return totals


def _line_min(
    kinetics: Kinetics, minutes: float, start_degC: float, end_degC: float, credit_degC: float
) -> float:
    """One straight line, cut where it passes the hottest point and the credit threshold."""
    hottest = kinetics.hottest_degC
    if start_degC == end_degC:
        if start_degC < credit_degC:
            return 0.0
        level = min(start_degC, hottest)
        return straight_equivalent_min(kinetics, minutes, level, level)
    low, high = min(start_degC, end_degC), max(start_degC, end_degC)
    per_kelvin = minutes / (high - low)
    low = max(low, credit_degC)
    if low >= high:
        return 0.0
    total = 0.0
    if high > hottest:
        level_from = max(low, hottest)
        total += straight_equivalent_min(kinetics, per_kelvin * (high - level_from), hottest, hottest)
        high = hottest
    if high > low:
        total += straight_equivalent_min(kinetics, per_kelvin * (high - low), low, high)
    return total
