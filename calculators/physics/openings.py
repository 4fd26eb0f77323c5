"""How hot is a part in an oven whose door is opened while it bakes?

Each opening takes the air down by so much, and the air comes back as it does after the door first closed.
"""

from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise
from math import inf

from calculators.physics.curve import Curve
from calculators.physics.heat import Part, Surroundings, temperature_curve


def spliced(first: Curve, time_min: float, second: Curve) -> Curve:
    """One curve up to a minute, and from there on another whose own clock starts at that minute.

    Holds: both have the same temperature where they meet; the slope may differ there.
    Source: bookkeeping, nothing physical.
    Departs from the source: nothing.

    >>> joined = spliced(Curve([0, 10], [0, 10], [1, 1]), 5, Curve([0, 5], [5, 0], [-1, -1]))
    >>> joined.at(4), joined.at(5), joined.at(6)
    (4.0, 5.0, 4.0)
    """
    kept = sum(1 for node_min in first.times_min if node_min < time_min)
    slope_K_min = 0.0
    if 0 < kept < len(first.times_min):
        length = first.times_min[kept] - first.times_min[kept - 1]
        share = (time_min - first.times_min[kept - 1]) / length
        gap = first.temperatures_degC[kept] - first.temperatures_degC[kept - 1]
        start, end = first.slopes_K_min[kept - 1] * length, first.slopes_K_min[kept] * length
        # the slope of the cubic that the first curve follows in this step
        slope_K_min = (
            start + share * (2.0 * (3.0 * gap - 2.0 * start - end) + share * 3.0 * (start + end - 2.0 * gap))
        ) / length
    times, nodes, slopes = first.times_min[:kept], first.temperatures_degC[:kept], first.slopes_K_min[:kept]
    if 0 < kept == len(first.times_min):
        # level from its last node on, as a curve is read there
        times, nodes, slopes = [*times, times[-1]], [*nodes, nodes[-1]], [*slopes, 0.0]
    return Curve(
        [*times, time_min, *(time_min + later for later in second.times_min)],
        [*nodes, first.at(time_min), *second.temperatures_degC],
        [*slopes, slope_K_min, *second.slopes_K_min],
    )


def opened_curve(
    part: Part, around: Surroundings, start_degC: float, openings_min: Sequence[float], door_K: float
) -> Curve:
    """Temperature of a part in an oven whose door is opened for a moment at each of some minutes.

    air = T_s - m(t), m' = -3 m / recovery, and m grows by the door's loss at each opening

    part, start_degC: as temperature_curve.   around: T_s, recovery and the first dip of the air.
    openings_min: min from the closed door, rising.   door_K: K, what the air loses each time.
    Returns a Curve, minutes and C.

    Holds: the opening is short beside the recovery; the walls follow the air.
    Source: our own model, that of Surroundings, carried on from one opening to the next.
    Departs from the source: nothing.

    >>> steel = Part(7850, (480.0,), 0.003, 0.0)
    >>> oven = Surroundings(200.0, 25.0, recovery_min=5.0)
    >>> shut, opened = (opened_curve(steel, oven, 20.0, openings, 30.0) for openings in ([], [10.0]))
    >>> round(shut.at(12.0) - opened.at(12.0), 1)
    4.0
    """
    if around.recovery_min <= 0.0 or door_K == 0.0:
        return temperature_curve(part, around, start_degC)
    ends_min = [*openings_min, inf]
    curve = temperature_curve(part, around, start_degC, ends_min[0])
    now = around
    for shut_at_min, (opened_min, end_min) in zip([0.0, *openings_min], pairwise(ends_min), strict=False):
        missing_K = now.temperature_degC - now.air_degC(opened_min - shut_at_min)
        now = replace(now, dip_K=missing_K + door_K)
        after = temperature_curve(part, now, curve.at(opened_min), end_min - opened_min)
        curve = spliced(curve, opened_min, after)
    return curve
