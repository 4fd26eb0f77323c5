"""How long a noise may be borne, how several add up over a day, and what a hearing protector takes off."""

from __future__ import annotations

from collections.abc import Iterable
from math import log10


def allowed_min(level_dBA: float, criterion_dBA: float, exchange_dB: float) -> float:
    """Time that fills a day's noise by itself.

        T = 480 / 2^((L - Lc) / q)

    L: level_dBA, dBA.   Lc: criterion_dBA, the level allowed for 8 h.   q: exchange_dB, the rise that halves the time.
    Returns T in minutes.

    Holds: steady noise, slow response. The law's own table ends at 115 dBA.
    Source: 29 CFR 1910.95, Appendix A (Lc 90, q 5; from memory); NIOSH recommended limit (Lc 85, q 3; seen in a copy).
    Departs from the source: nothing. Table G-16 prints the results rounded: 6, 3 and 1.5 h for 92, 97 and 102 dBA.

    >>> allowed_min(level_dBA=100, criterion_dBA=90, exchange_dB=5), allowed_min(100, 85, 3)
    (120.0, 15.0)
    """
    return 480 / 2 ** ((level_dBA - criterion_dBA) / exchange_dB)


def dose_percent(
    times: Iterable[tuple[float, float]], criterion_dBA: float, exchange_dB: float, threshold_dBA: float
) -> float:
    """A day's noise in percent of what is allowed.

        D = 100 (C1/T1 + C2/T2 + ...)

    times: level in dBA and minutes at it.   threshold_dBA: quieter levels count nothing.   Returns D in percent.

    Holds: as allowed_min, each level steady for its time.
    Source: 29 CFR 1910.95 Table G-16, its footnote on mixed exposure.
    Departs from the source: nothing.

    >>> dose_percent([(90, 240), (100, 60)], 90, 5, 80)
    100.0
    """
    return sum(
        100 * minutes / allowed_min(level, criterion_dBA, exchange_dB)
        for level, minutes in times
        if level >= threshold_dBA
    )


def average_dBA(dose: float, criterion_dBA: float, exchange_dB: float) -> float:
    """The steady level that gives the same dose in 8 h.

        L = Lc + q log2(D / 100)

    dose: D, percent, above 0.   Returns L in dBA.

    Holds: as dose_percent.
    Source: 29 CFR 1910.95, Appendix A, where q log2 is printed as 16.61 log10 (from memory).
    Departs from the source: 5 / log10(2) is 16.6096, not 16.61.

    >>> average_dBA(dose=50, criterion_dBA=90, exchange_dB=5)
    85.0
    """
    return criterion_dBA + exchange_dB * log10(dose / 100) / log10(2)


def derated_dB(rating: float, both: bool = False) -> float:
    """What a hearing protector may be taken to take off a level measured in dBA, worn as people wear it.

        A = (NRR - 7) / 2, and 5 more for muffs worn over plugs

    rating: NRR, noise reduction rating, dB; of the better one where both are worn.   Returns A in dB, never under 0.

    Holds: worn all the time; 10 % of the shift without it undoes most of it.
    Source: 29 CFR 1910.95, Appendix B (the 7; second-hand); halving, and 5 for both, are OSHA's field advice (from memory).
    Departs from the source: nothing below zero.

    >>> derated_dB(rating=27), derated_dB(rating=27, both=True)
    (10.0, 15.0)
    """
    return max((rating - 7) / 2, 0.0) + (5.0 if both else 0.0)
