"""What temperature is the metal at this minute, and when does it reach that one?

A temperature history is kept as nodes with their slopes and read between them by the cubic that fits
both (Hermite), so a few dozen nodes serve every later question. Outside its nodes a curve stays level:
it was followed until the metal had come to its surroundings.
"""

from bisect import bisect_right
from collections.abc import Callable, Sequence
from dataclasses import dataclass, field

# Places (share of a step) and weights of three-point Gauss-Legendre integration on 0 to 1.
GAUSS_3 = (
    (0.5 - 0.15**0.5, 5 / 18),
    (0.5, 8 / 18),
    (0.5 + 0.15**0.5, 5 / 18),
)
_LOW, _HIGH = GAUSS_3[0][0], GAUSS_3[2][0]


def find_share(difference: Callable[[float], float], low: float = 0.0, high: float = 1.0) -> float:
    """Where a difference changes sign between two places, by false position with the Illinois weights.

    Holds: the difference has opposite signs, or is zero, at the two places.
    Source: M. Dowell and P. Jarratt, BIT 11 (1971) 168 (seen: memory).
    Departs from the source: nothing.

    >>> round(find_share(lambda s: s * s - 0.25), 9)
    0.5
    """
    at_low, at_high = difference(low), difference(high)
    if at_low == 0.0 or at_high == 0.0 or (at_low > 0.0) == (at_high > 0.0):
        return low if abs(at_low) <= abs(at_high) else high
    tolerance = 1e-8 * (high - low)
    side = 0
    middle = low
    for _ in range(60):
        middle = (low * at_high - high * at_low) / (at_high - at_low)
        value = difference(middle)
        if value == 0.0:
            return middle
        if (value > 0.0) == (at_high > 0.0):
            step, high, at_high = high - middle, middle, value
            if side == 1:
                at_low *= 0.5
            side = 1
        else:
            step, low, at_low = middle - low, middle, value
            if side == -1:
                at_high *= 0.5
            side = -1
        if step < tolerance or high - low < tolerance:
            break
    return middle


@dataclass(frozen=True, slots=True)
class Curve:
    """Metal temperature against time: minutes, degrees Celsius, and degrees per minute at each node."""

    times_min: Sequence[float]
    temperatures_degC: Sequence[float]
    slopes_K_min: Sequence[float]
    # Temperatures at the three Gauss places of the first steps, as many as were asked for; shared by every
    # cure that is summed along this curve.
    _gauss: list[tuple[float, float, float]] = field(default_factory=list, compare=False, repr=False)

    @property
    def end_min(self) -> float:
        """Minute of the last node."""
        return self.times_min[-1]

    @property
    def last_degC(self) -> float:
        """Temperature at the last node, and after it."""
        return self.temperatures_degC[-1]

    @property
    def peak_degC(self) -> float:
        """Highest temperature at any node."""
        return max(self.temperatures_degC)

    def cubic(self, step: int) -> tuple[float, float, float, float]:
        """Coefficients of one step's cubic in the share of the step passed, the constant first.

        With s that share, 0 to 1, and m0, m1 the slope at each end times the step's length:
        y = y0 + s (m0 + s (3 (y1 - y0) - 2 m0 - m1 + s (m0 + m1 - 2 (y1 - y0))))

        Holds: nothing physical; it is interpolation.
        Source: any text on numerical analysis, cubic Hermite interpolation (seen: memory).
        Departs from the source: nothing.

        >>> Curve((0.0, 1.0), (0.0, 1.0), (1.0, 1.0)).cubic(0)
        (0.0, 1.0, 0.0, 0.0)
        """
        length = self.times_min[step + 1] - self.times_min[step]
        start = self.temperatures_degC[step]
        gap = self.temperatures_degC[step + 1] - start
        rise_at_start, rise_at_end = self.slopes_K_min[step] * length, self.slopes_K_min[step + 1] * length
        return (
            start,
            rise_at_start,
            3.0 * gap - 2.0 * rise_at_start - rise_at_end,
            rise_at_start + rise_at_end - 2.0 * gap,
        )

    def in_step(self, step: int, share: float) -> float:
        """Temperature at a share of one step (0 = its first node, 1 = its second).

        >>> Curve((0.0, 1.0), (0.0, 1.0), (1.0, 1.0)).in_step(0, 0.5)
        0.5
        """
        start, first, second, third = self.cubic(step)
        return start + share * (first + share * (second + share * third))

    def at(self, time_min: float) -> float:
        """Temperature at a minute."""
        times = self.times_min
        if time_min <= times[0]:
            return self.temperatures_degC[0]
        if time_min >= times[-1]:
            return self.temperatures_degC[-1]
        step = bisect_right(times, time_min) - 1
        return self.in_step(step, (time_min - times[step]) / (times[step + 1] - times[step]))

    def first_at_or_above(self, temperature_degC: float) -> float | None:
        """First minute at which the metal is at this temperature or hotter; None = never."""
        return self._first(temperature_degC, 1.0)

    def first_at_or_below(self, temperature_degC: float) -> float | None:
        """First minute at which the metal is at this temperature or cooler; None = never."""
        return self._first(temperature_degC, -1.0)

    def _first(self, temperature_degC: float, sign: float) -> float | None:
        for step, node_degC in enumerate(self.temperatures_degC):
            if sign * (node_degC - temperature_degC) >= 0.0:
                if step == 0:
                    return self.times_min[0]
                return self.time_in_step(step - 1, self.crossing(step - 1, temperature_degC))
        return None

    def crossing(self, step: int, temperature_degC: float) -> float:
        """Share of a step at which it passes a temperature that lies between its two nodes."""
        start, first, second, third = self.cubic(step)
        return find_share(
            lambda share: start + share * (first + share * (second + share * third)) - temperature_degC
        )

    def time_in_step(self, step: int, share: float) -> float:
        """Minute at a share of one step."""
        return self.times_min[step] + share * (self.times_min[step + 1] - self.times_min[step])

    def gauss_temperatures(self, step: int) -> tuple[float, float, float]:
        """Temperatures at the three Gauss places of one step, worked once."""
        worked = self._gauss
        while len(worked) <= step:
            start, first, second, third = self.cubic(len(worked))
            worked.append(
                (
                    start + _LOW * (first + _LOW * (second + _LOW * third)),
                    start + 0.5 * (first + 0.5 * (second + 0.5 * third)),
                    start + _HIGH * (first + _HIGH * (second + _HIGH * third)),
                )
            )
        return worked[step]
