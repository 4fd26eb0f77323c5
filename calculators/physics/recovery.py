"""How far did the oven's air fall when the door was open, and how long did it take to come back? From readings of the air.

Least squares on two unknowns. For any time of recovery the best dip is a plain ratio of sums, so that only the time has
to be searched for.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import exp, sqrt

# Two numbers are fitted, and their spread needs readings to spare.
FEWEST_AIR_READINGS = 4
# What is left of the dip at the recovery time: exp(-3) = 5 %.
TIME_CONSTANTS = 3.0
_SHORTEST_min, _LONGEST_min = 0.05, 2000.0


@dataclass(frozen=True, slots=True)
class RecoveryFit:
    """A fitted recovery.

    dip_K: how far the air is below its setting at minute 0.   recovery_min: minutes until 5 % of that is left.
    dip_spread_K, recovery_spread_min: their standard errors.   residual_K: root mean square miss.
    """

    dip_K: float
    dip_spread_K: float
    recovery_min: float
    recovery_spread_min: float
    residual_K: float


def recovering_air_degC(setting_degC: float, dip_K: float, recovery_min: float, time_min: float) -> float:
    """Air of an oven on its way back to the setting.

    T = S - D exp(-3 t / R)

    S: setting_degC, C.   D: dip_K, K.   R: recovery_min, min.   t: time_min, min since the door closed.
    Returns T in C.

    Holds: an oven that makes up for the same share of what is missing every minute.
    Source: this project's own model (oven-recovery-model; seen: full-text).
    Departs from the source: nothing.

    >>> round(recovering_air_degC(200.0, 40.0, 9.0, 9.0), 2)
    198.01
    """
    return setting_degC - dip_K * exp(-TIME_CONSTANTS * time_min / recovery_min)


def fit_recovery(
    times_min: Sequence[float], air_degC: Sequence[float], setting_degC: float, least_scatter_K: float = 0.0
) -> RecoveryFit:
    """Dip and recovery that fit readings of the air best, and their spread.

    minimise the sum of (T_air - S + D exp(-3 t / R))^2 over D and R; for a given R,
    D = sum of (S - T_air) e / sum of e^2 with e = exp(-3 t / R)

    times_min: min since the door closed, rising, none below 0.   T_air: air_degC, C.   S: setting_degC, C.
    least_scatter_K: what a reading is known to scatter by.   Returns a RecoveryFit: D in K, R in min.

    Holds: at least four readings, some of them while the air still climbs.
    Source: least squares with the linear unknown solved for (any text on numerical methods; seen: memory); standard
    errors from the normal equations.
    Departs from the source: nothing.
    Raises ValueError where the readings cannot tell it.

    >>> minutes = [0.0, 2.0, 4.0, 8.0, 12.0]
    >>> fit = fit_recovery(minutes, [recovering_air_degC(200.0, 40.0, 9.0, at) for at in minutes], 200.0)
    >>> round(fit.dip_K, 2), round(fit.recovery_min, 2)
    (40.0, 9.0)
    """
    count = len(times_min)
    if count < FEWEST_AIR_READINGS:
        raise ValueError("it takes at least four readings after the door closed")
    if times_min[0] < 0.0 or any(later <= earlier for earlier, later in pairwise(times_min)):
        raise ValueError("the times of the log must rise")
    missing_K = [setting_degC - one for one in air_degC]

    def sums(recovery_min: float) -> tuple[float, float]:
        """Sums of missing * e and of e * e."""
        shares = [exp(-TIME_CONSTANTS * at / recovery_min) for at in times_min]
        return (
            sum(one * share for one, share in zip(missing_K, shares, strict=True)),
            sum(share * share for share in shares),
        )

    def explained(factor: float) -> float:
        """What a recovery time takes off the sum of squares; factor runs from 0 to 1 on a logarithmic scale."""
        product, square = sums(_SHORTEST_min * (_LONGEST_min / _SHORTEST_min) ** factor)
        return product * abs(product) / square

    def still_gains(factor: float) -> bool:
        """Whether a longer time would fit better yet: the slope of the sum of squares, the dip always at its best."""
        recovery_min = _SHORTEST_min * (_LONGEST_min / _SHORTEST_min) ** factor
        product, square = sums(recovery_min)
        shares = [exp(-TIME_CONSTANTS * at / recovery_min) for at in times_min]
        rows = zip(missing_K, shares, times_min, strict=True)
        return sum((one - product / square * share) * share * at for one, share, at in rows) > 0.0

    steps = 60
    best = max(range(steps + 1), key=lambda step: explained(step / steps))
    low, high = max(best - 1, 0) / steps, min(best + 1, steps) / steps
    # the slope's change of sign is known to many more digits than the place of a flat top
    for _ in range(50):
        middle = (low + high) / 2
        low, high = (middle, high) if still_gains(middle) else (low, middle)
    recovery_min = _SHORTEST_min * (_LONGEST_min / _SHORTEST_min) ** ((low + high) / 2)
    product, square = sums(recovery_min)
    dip_K = product / square
    if dip_K <= max(2.0 * least_scatter_K, 0.5):
        raise ValueError("the air never reads clearly below the setting after the door closed")
    shares = [exp(-TIME_CONSTANTS * at / recovery_min) for at in times_min]
    squares = sum((one - dip_K * share) ** 2 for one, share in zip(missing_K, shares, strict=True))
    by_time = [
        dip_K * share * TIME_CONSTANTS * at / recovery_min**2
        for share, at in zip(shares, times_min, strict=True)
    ]
    rr, dr = sum(one * one for one in by_time), sum(a * b for a, b in zip(by_time, shares, strict=True))
    determinant = rr * square - dr * dr
    if not 0.0 < best < steps or determinant <= 1e-12 * rr * square:
        raise ValueError(
            "the readings do not show how fast the air comes back: read it every minute at first"
        )
    variance = max(squares / (count - 2), least_scatter_K**2)
    return RecoveryFit(
        dip_K,
        sqrt(variance * rr / determinant),
        recovery_min,
        sqrt(variance * square / determinant),
        sqrt(squares / count),
    )
