"""Air through a booth or an oven: how fast, how much dust in it, and how long until it has been changed."""

from __future__ import annotations

from math import exp


def face_velocity_m_s(flow_m3_s: float, opening_m2: float) -> float:
    """Mean speed of the air into an opening.

        v = Q / A

    Q: flow_m3_s, m3/s.   A: opening_m2, m2, all openings together.   Returns v in m/s.

    Holds: all of the air comes in by the opening. Filters that load up and leaks take from it.
    Source: definition of a mean.
    Departs from the source: nothing.

    >>> face_velocity_m_s(flow_m3_s=2, opening_m2=4)
    0.5
    """
    return flow_m3_s / opening_m2


def mean_cloud_g_m3(sprayed_g_s: float, transfer: float, flow_m3_s: float) -> float:
    """Powder in the air that leaves a booth, as a mean.

        c = m (1 - TE) / Q

    m: sprayed_g_s, g/s, all guns.   TE: transfer, share that stays on the part; 0 for the safe case.   Q: flow_m3_s, m3/s.
    Returns c in g/m3.

    Holds: a steady state and well mixed air. Near the gun the cloud is always far thicker.
    Source: mass balance.
    Departs from the source: nothing.

    >>> round(mean_cloud_g_m3(sprayed_g_s=200 / 60, transfer=0, flow_m3_s=2), 2)
    1.67
    """
    return sprayed_g_s * (1 - transfer) / flow_m3_s


def purge_s(volume_m3: float, changes: float, flow_m3_s: float) -> float:
    """Time in which fresh air to so many times a volume has gone through it.

        t = n V / Q

    V: volume_m3, m3.   n: changes.   Q: flow_m3_s, m3/s of fresh air.   Returns t in s.

    Holds: Q is air from outside that leaves by the stack. Air that a fan moves round inside changes nothing.
    Source: definition of a change of air.
    Departs from the source: nothing.

    >>> purge_s(volume_m3=12, changes=4, flow_m3_s=0.25)
    192.0
    """
    return changes * volume_m3 / flow_m3_s


def left_share(changes: float) -> float:
    """Share of the first air that is left after so many changes, in a space that is stirred all the time.

        s = exp(-n)

    n: changes.   Returns s, 0 to 1.

    Holds: perfect mixing. Corners that the air does not reach keep more.
    Source: dilution of a stirred volume, worked out: V dc/dt = -Q c.
    Departs from the source: nothing.

    >>> round(left_share(4), 3)
    0.018
    """
    return exp(-changes)
