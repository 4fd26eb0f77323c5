"""Will it still fit? What a film does to a hole, a shaft, a slot and a 60-degree thread."""

from __future__ import annotations

PITCH_BELOW_MAJOR = 0.649519  # of the pitch: basic pitch diameter under the nominal one, 3 sqrt(3) / 8


def film_change(film: float, faces: int = 2) -> float:
    """What a film on both faces takes from a hole or slot, or adds to a shaft.

        d = n t

    t: film, any length.   n: faces that got it, 2 across a hole, a shaft or a slot.   Returns d, in the unit of t.

    Holds: the same film all round. At the mouth of a hole it is thicker, deep inside thinner.
    Source: geometry.
    Departs from the source: nothing.

    >>> film_change(film=3)
    6
    """
    return faces * film


def thread_change(film: float) -> float:
    """What a film moves the pitch diameter of a 60-degree thread.

        d = 2 t / sin(60 / 2) = 4 t

    t: film, any length, at right angles to the flank.   Returns d, in the unit of t.

    Holds: the same film on both flanks. Powder fills roots and leaves crests thin.
    Source: geometry of the flank: a film t on a flank at 30 degrees to the thread's cross plane moves it by t / sin 30 across
    the axis on either side.
    Departs from the source: nothing.

    >>> thread_change(film=3)
    12
    """
    return 4 * film


def pitch_diameter(major: float, pitch: float) -> float:
    """Basic pitch diameter of a 60-degree thread.

        d2 = d - 0.649519 p

    d: major, nominal diameter.   p: pitch, same unit.   Returns d2 in that unit.

    Holds: unified inch and ISO metric threads, which share one profile.
    Source: ASME B1.1 and ISO 68-1, from memory: 3 sqrt(3) / 8 of the pitch, two three-eighths of the sharp height.
    Departs from the source: nothing.

    >>> round(pitch_diameter(major=0.5, pitch=1 / 13), 4)
    0.45
    """
    return major - PITCH_BELOW_MAJOR * pitch


def allowance_2a_in(major_in: float, pitch_in: float) -> float:
    """Least room between a class 2A bolt and a nut, on the pitch diameter, before any film.

        T = 0.0015 d^(1/3) + 0.0015 sqrt(9 p) + 0.015 p^(2/3);   es = 0.3 T

    d: major_in, in.   p: pitch_in, in.   T: tolerance of class 2A for a length of engagement of 9 pitches.
    Returns es, in.

    Holds: unified inch threads, coarse to fine. Metric threads of class 6g have about as much.
    Source: ASME B1.1, from memory; its table prints 0.0015 in for 1/2-13 UNC.
    Departs from the source: nothing.

    >>> round(allowance_2a_in(major_in=0.5, pitch_in=1 / 13), 4)
    0.0015
    """
    tolerance: float = (
        0.0015 * major_in ** (1 / 3) + 0.0015 * (9 * pitch_in) ** 0.5 + 0.015 * pitch_in ** (2 / 3)
    )
    return 0.3 * tolerance
