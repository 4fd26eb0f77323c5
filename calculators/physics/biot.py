"""Is this part too thick to count as one lump, and how far does its core lag behind its skin?

Uses the Biot number and the first term of the series for a slab heated evenly from its face.
"""

from math import cos, exp, log, pi, sin, sqrt


def biot_number(coefficient_W_m2K: float, heat_path_m: float, conductivity_W_mK: float) -> float:
    """Resistance to heat inside the part over resistance at its surface.

    Bi = h L / k

    h: coefficient_W_m2K, W/(m2 K), convection and radiation together.   L: heat_path_m, m.
    k: conductivity_W_mK, W/(m K).   Returns Bi.

    Holds: under 0.1 the part may be treated as one lump.
    Source: Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, 5.2 (seen: memory).
    Departs from the source: nothing.

    >>> biot_number(50.0, 0.01, 50.0)
    0.01
    """
    return coefficient_W_m2K * heat_path_m / conductivity_W_mK


def slab_root(biot: float) -> float:
    """First root of the slab equation.

    zeta tan zeta = Bi

    Bi: biot, with the slab's heat path as its length.   Returns zeta in radians, 0 to pi/2.

    Holds: a slab heated on one face, or on both and counted from its middle.
    Source: Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, eq. 5.39c and Table 5.1
    (seen: memory).
    Departs from the source: nothing.

    >>> round(slab_root(1.0), 4)
    0.8603
    """
    if biot <= 0.0:
        return 0.0
    low, high = 0.0, 0.5 * pi
    zeta = min(sqrt(biot / (1.0 + biot / 3.0)), 1.5)
    for _ in range(60):
        gap = zeta * sin(zeta) - biot * cos(zeta)
        if gap > 0.0:
            high = zeta
        else:
            low = zeta
        step = gap / (sin(zeta) * (1.0 + biot) + zeta * cos(zeta))
        following = zeta - step
        if not low < following < high:
            following = 0.5 * (low + high)
        if abs(following - zeta) < 1e-14:
            return following
        zeta = following
    return zeta


def slab_factor(zeta: float) -> float:
    """Leading coefficient of the slab series.

    C1 = 4 sin zeta / (2 zeta + sin 2 zeta)

    zeta: from slab_root.   Returns C1.

    Holds: as slab_root.
    Source: Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, eq. 5.39b (seen: memory).
    Departs from the source: nothing.

    >>> round(slab_factor(0.8603), 4)
    1.1191
    """
    return 1.0 if zeta == 0.0 else 4.0 * sin(zeta) / (2.0 * zeta + sin(2.0 * zeta))


def slab_core_share(biot: float, fourier: float) -> float:
    """Share of the first temperature difference that is left at the core.

    theta_0 = C1 exp(-zeta^2 Fo)

    Bi: biot.   Fo: fourier, k t/(rho c L^2).   Returns (T_core - T_air)/(T_start - T_air).

    Holds: Fo above 0.2, steady air, constant properties.
    Source: Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, eq. 5.41 (seen: memory).
    Departs from the source: nothing.

    >>> round(slab_core_share(1.0, 1.0), 3)
    0.534
    """
    zeta = slab_root(biot)
    return slab_factor(zeta) * exp(-zeta * zeta * fourier)


def core_lag_min(biot: float, heat_path_m: float, diffusivity_m2_s: float) -> float:
    """Minutes by which the core of a slab reaches a temperature after its skin does.

    t_lag = (L^2/alpha) ln(1/cos zeta) / zeta^2, because theta_skin = theta_0 cos zeta

    Bi: biot.   L: heat_path_m, m, from skin to core.   alpha: diffusivity_m2_s, k/(rho c), m2/s.
    Returns t_lag in min.

    Holds: a slab in steady air with Fo above 0.2. For a bar, give the distance from skin to core: the
    answer is then up to twice the true lag.
    Source: from the one-term slab solution, Incropera and DeWitt, eqs. 5.40b and 5.41 (seen: memory).
    Departs from the source: solved for the time between skin and core.

    >>> round(core_lag_min(0.2, 0.025, 1.2e-5), 2)
    0.45
    """
    zeta = slab_root(biot)
    shape = 0.5 if zeta < 1e-4 else -log(cos(zeta)) / (zeta * zeta)
    return heat_path_m**2 / diffusivity_m2_s * shape / 60.0


def core_lag_share(biot: float) -> float:
    """How much further the core still has to go than the skin, as a share of the core's own distance.

    (T_skin - T_core)/(T_air - T_core) = 1 - cos zeta

    Bi: biot.   Returns the share, 0 to 1.

    Holds: a slab in steady air with Fo above 0.2.
    Source: Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, eq. 5.40b (seen: memory).
    Departs from the source: nothing.

    >>> round(core_lag_share(0.1), 3)
    0.048
    """
    return 1.0 - cos(slab_root(biot))
