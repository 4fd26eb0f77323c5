"""What is this oven's own heat transfer coefficient, from a log of one bake?

Least squares on two unknowns, the coefficient and the metal's temperature at the first reading, so that
a poor first reading does not bend the answer. Steps are those of Levenberg and Marquardt.
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from math import exp, log, sqrt

from calculators.physics.heat import Part, Surroundings, temperature_curve

# Two numbers are fitted, and their spread needs readings to spare.
FEWEST_READINGS = 4
_LOWEST_W_m2K, _HIGHEST_W_m2K = 0.05, 2000.0
_FIRST_TRIES_W_m2K = (7.0, 20.0, 60.0)
_STEP = 1e-4


@dataclass(frozen=True, slots=True)
class OvenFit:
    """A fitted oven coefficient.

    convection_W_m2K: the coefficient.   spread_W_m2K: its standard error.
    start_degC: metal temperature at the first reading, as fitted.   residual_K: root mean square miss.
    """

    convection_W_m2K: float
    spread_W_m2K: float
    start_degC: float
    residual_K: float


def fit_oven(
    times_min: Sequence[float],
    temperatures_degC: Sequence[float],
    part: Part,
    oven: Surroundings,
    least_scatter_K: float = 0.0,
) -> OvenFit:
    """Oven coefficient that fits a heating log best, and its spread.

    minimise the sum of (T_log - T_curve(t; h, T_start))^2 over h and T_start

    times_min: min since the door closed, rising.   temperatures_degC: metal, C.   part: its lump.
    oven: air, exposure, dip and recovery; its own coefficient is not used.   least_scatter_K: what a reading is known
    to scatter by; a few readings that happen to lie on a curve are not taken to be better than that.
    Returns an OvenFit: h and its standard error in W/(m2 K), T_start in C, residual in K.

    Holds: readings in the oven only, at least four, while the metal still climbs; the spread counts the
    scatter of the readings, not a wrong thickness or oven temperature.
    Source: Levenberg-Marquardt least squares (any text on numerical methods; seen: memory).
    Departs from the source: nothing.
    Raises ValueError where the log cannot tell the coefficient.

    >>> steel, oven = Part(7850, (490.0,), 0.003, 0.9), Surroundings(200.0, 20.0)
    >>> curve = temperature_curve(steel, oven, 21.0)
    >>> minutes = [0, 2, 4, 6, 8, 10, 12]
    >>> fit = fit_oven(minutes, [curve.at(minute) for minute in minutes], steel, oven)
    >>> round(fit.convection_W_m2K, 1), round(fit.start_degC, 1)
    (20.0, 21.0)
    """
    count = len(times_min)
    if count < FEWEST_READINGS:
        raise ValueError("a fit needs at least four readings in the oven")
    if any(later <= earlier for earlier, later in pairwise(times_min)):
        raise ValueError("the times of the log must rise")
    if max(temperatures_degC) - min(temperatures_degC) < 10.0:
        raise ValueError(
            "the metal hardly changed temperature in these readings, so they cannot tell the oven"
        )
    first_min = times_min[0]
    # Seen from the first reading, the dip that is left is the one to recover from.
    left_K = oven.temperature_degC - oven.air_degC(first_min)

    def misses(log_h: float, start_degC: float) -> list[float]:
        here = replace(oven, convection_W_m2K=exp(log_h), dip_K=left_K)
        curve = temperature_curve(part, here, start_degC, times_min[-1] - first_min)
        return [
            reading - curve.at(minute - first_min)
            for minute, reading in zip(times_min, temperatures_degC, strict=True)
        ]

    start = temperatures_degC[0]
    tries = [(log(h), misses(log(h), start)) for h in _FIRST_TRIES_W_m2K]
    log_h, miss = min(tries, key=lambda tried: _square(tried[1]))
    least = _square(miss)
    damping = 1e-3
    for _ in range(60):
        hh, hs, ss, gh, gs = _normal(misses, miss, log_h, start)
        improved = False
        while damping < 1e9 and not improved:
            a, b = hh * (1.0 + damping), ss * (1.0 + damping)
            determinant = a * b - hs * hs
            if determinant <= 0.0:
                damping *= 10.0
                continue
            step_h, step_s = (b * gh - hs * gs) / determinant, (a * gs - hs * gh) / determinant
            tried_h = min(max(log_h + max(-1.0, min(1.0, step_h)), log(_LOWEST_W_m2K)), log(_HIGHEST_W_m2K))
            tried = misses(tried_h, start + step_s)
            square = _square(tried)
            if square <= least:
                improved = True
                settled = abs(tried_h - log_h) < 1e-5 and abs(step_s) < 1e-3
                log_h, start, miss, least = tried_h, start + step_s, tried, square
                damping = max(damping * 0.1, 1e-9)
            else:
                damping *= 10.0
        if not improved or settled:
            break
    # the last step was too small to change the slopes, so the spread takes them as they are
    determinant = hh * ss - hs * hs
    if not _LOWEST_W_m2K * 1.01 < exp(log_h) < _HIGHEST_W_m2K * 0.99 or determinant <= 1e-12 * hh * ss:
        raise ValueError(
            "no oven coefficient fits these readings: check thickness, metal and oven temperature"
        )
    variance = max(least / (count - 2), least_scatter_K**2) * ss / determinant
    return OvenFit(exp(log_h), exp(log_h) * sqrt(variance), start, sqrt(least / count))


def _square(misses: Sequence[float]) -> float:
    return sum(miss * miss for miss in misses)


def _normal(
    misses: Callable[[float, float], list[float]], miss: Sequence[float], log_h: float, start_degC: float
) -> tuple[float, float, float, float, float]:
    """Sums of the normal equations, from differences: h*h, h*start, start*start, h*miss, start*miss."""
    by_h = [(a - b) / _STEP for a, b in zip(miss, misses(log_h + _STEP, start_degC), strict=True)]
    by_start = [(a - b) / 0.01 for a, b in zip(miss, misses(log_h, start_degC + 0.01), strict=True)]
    return (
        _square(by_h),
        sum(a * b for a, b in zip(by_h, by_start, strict=True)),
        _square(by_start),
        sum(a * b for a, b in zip(by_h, miss, strict=True)),
        sum(a * b for a, b in zip(by_start, miss, strict=True)),
    )
