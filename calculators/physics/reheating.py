"""How much of a table of reheating limits has a part used up, all of its bakes together?"""

from collections.abc import Sequence
from itertools import pairwise
from math import exp, log


def reheating_limit_min(table: Sequence[tuple[float, float]], metal_degC: float) -> float | None:
    """Time that a table allows at a metal temperature.

    ln t = ln t1 + (ln t2 - ln t1) (T - T1)/(T2 - T1)

    table: pairs of temperature, C, and limit, min, the cooler first.   T: metal_degC, C.
    Returns t in min; under the table the limit of its coolest line; None over the table.

    Holds: between the lines of the table. Under it the limit is too short, on purpose: nothing vouches for more.
    Source: straight line in the logarithm of time, our own choice; it is how a rate that grows with heat goes over
    short spans (seen: memory).
    Departs from the source: nothing.

    >>> round(reheating_limit_min([(175.0, 80.0), (195.0, 20.0)], 185.0), 6)
    40.0
    """
    if metal_degC > table[-1][0] + 1e-9:
        return None
    if metal_degC <= table[0][0]:
        return table[0][1]
    for (cooler, longer), (hotter, shorter) in pairwise(table):
        if metal_degC <= hotter + 1e-9:
            share = (metal_degC - cooler) / (hotter - cooler)
            return exp(log(longer) + (log(shorter) - log(longer)) * share)
    return table[-1][1]


def reheating_used(
    table: Sequence[tuple[float, float]], bakes: Sequence[tuple[float, float]]
) -> float | None:
    """Share of the table's limit that bakes have used up together.

    sum of t_i / limit(T_i)

    table: as reheating_limit_min.   bakes: pairs of metal temperature, C, and time, min.
    Returns the share (1 = used up), or None where a bake was hotter than the table.

    Holds: as reheating_limit_min; that shares add up is the table's own word.
    Source: our own rule of adding shares (linear damage), on the table.
    Departs from the source: nothing.

    >>> reheating_used([(175.0, 80.0), (195.0, 20.0)], [(195.0, 5.0), (150.0, 40.0)])
    0.75
    """
    total = 0.0
    for metal_degC, minutes in bakes:
        limit = reheating_limit_min(table, metal_degC)
        if limit is None:
            return None
        total += minutes / limit
    return total
