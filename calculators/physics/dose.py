"""How many minutes of the schedule has this bake made by now, and when has it made them all?

Equivalent minutes t_eq = integral of exp[(Ea/R)(1/T_s - 1/T)] dt, summed along a temperature curve.
"""

from bisect import bisect_left, bisect_right
from math import exp, inf

from calculators.physics.cure import GAS_CONSTANT_J_molK, Kinetics, cure_rate
from calculators.physics.curve import GAUSS_3, Curve, find_share

_WEIGHTS = tuple(weight for _, weight in GAUSS_3)


class Dose:
    """Equivalent minutes along a curve, as a running total that can be read either way.

    Each step is integrated by three-point Gauss-Legendre. A step that crosses the hottest point (where
    the rate stops rising) or the credit threshold (where minutes begin to count) is cut there first.
    After the curve's end the metal stays level, so the total grows in a straight line. Steps are summed
    as they are asked for: most pulls come long before the metal has come to the oven's air.
    """

    __slots__ = (
        "_arrhenius",
        "_credit_degC",
        "_curve",
        "_offset",
        "_pieces",
        "_starts",
        "_steps",
        "_totals",
        "kinetics",
    )

    def __init__(self, curve: Curve, kinetics: Kinetics, credit_above_degC: float = -inf) -> None:
        self.kinetics = kinetics
        self._curve = curve
        self._credit_degC = credit_above_degC
        self._arrhenius = -kinetics.activation_kJ_mol * 1000.0 / GAS_CONSTANT_J_molK
        self._offset = -self._arrhenius / (kinetics.schedule_degC + 273.15)
        self._pieces: list[tuple[int, float, float]] = []  # step, share at its start, share at its end
        self._starts: list[float] = []  # minute at which each piece starts
        self._totals: list[float] = [0.0]  # total at each piece's start, and after the last
        self._steps = 0  # of the curve's steps, those summed so far

    def _sum(self, until_min: float = inf, enough_min: float = inf) -> None:
        """Sum further steps, to one that starts after a minute, or until so many equivalent minutes are made."""
        curve, hottest, credit = self._curve, self.kinetics.hottest_degC, self._credit_degC
        times, nodes = curve.times_min, curve.temperatures_degC
        slope, offset = self._arrhenius, self._offset
        low_weight, middle_weight, _ = _WEIGHTS
        total = self._totals[-1]
        for step in range(self._steps, len(times) - 1):
            if total >= enough_min or times[step] > until_min:
                break
            self._steps = step + 1
            first, second, third = curve.gauss_temperatures(step)
            start_degC, end_degC = nodes[step], nodes[step + 1]
            lower, upper = (start_degC, end_degC) if start_degC < end_degC else (end_degC, start_degC)
            cuts = [level for level in (hottest, credit) if lower < level < upper]
            if cuts:
                shares = sorted(curve.crossing(step, level) for level in cuts)
                for begin, end in zip([0.0, *shares], [*shares, 1.0], strict=True):
                    total += self._add_piece(step, begin, end)
                    self._totals.append(total)
                continue
            if upper > credit or upper == lower >= credit:
                length = times[step + 1] - times[step]
                if lower >= hottest:
                    total += length * exp(offset + slope / (hottest + 273.15))
                else:
                    total += length * (
                        low_weight * exp(offset + slope / (first + 273.15))
                        + middle_weight * exp(offset + slope / (second + 273.15))
                        + low_weight * exp(offset + slope / (third + 273.15))
                    )
            self._pieces.append((step, 0.0, 1.0))
            self._starts.append(times[step])
            self._totals.append(total)

    def _add_piece(self, step: int, begin: float, end: float) -> float:
        self._pieces.append((step, begin, end))
        self._starts.append(self._curve.time_in_step(step, begin))
        return self._between(step, begin, end)

    def _between(self, step: int, begin: float, end: float) -> float:
        """Equivalent minutes between two shares of one step, none of the levels crossed inside."""
        curve = self._curve
        width = end - begin
        # Curve.in_step spelled out: it is asked for hundreds of times an answer.
        start, first, second, third = curve.cubic(step)
        share = begin + 0.5 * width
        if start + share * (first + share * (second + share * third)) < self._credit_degC:
            return 0.0
        hottest, slope, offset = self.kinetics.hottest_degC, self._arrhenius, self._offset
        total = 0.0
        for place, weight in GAUSS_3:
            share = begin + place * width
            metal_degC = start + share * (first + share * (second + share * third))
            total += weight * exp(offset + slope / (min(metal_degC, hottest) + 273.15))
        return total * width * (curve.times_min[step + 1] - curve.times_min[step])

    @property
    def final_rate(self) -> float:
        """Equivalent minutes a minute after the curve's end; 0 where the metal earns no credit."""
        last_degC = self._curve.last_degC
        return cure_rate(self.kinetics, last_degC) if last_degC >= self._credit_degC else 0.0

    @property
    def at_end_min(self) -> float:
        """Equivalent minutes made up to the curve's last node."""
        self._sum()
        return self._totals[-1]

    def at(self, time_min: float) -> float:
        """Equivalent minutes made by a minute on the curve's clock."""
        curve = self._curve
        if time_min >= curve.end_min:
            return self.at_end_min + (time_min - curve.end_min) * self.final_rate
        if time_min <= curve.times_min[0]:
            return 0.0
        if time_min >= curve.times_min[self._steps]:
            self._sum(until_min=time_min)
        piece = bisect_right(self._starts, time_min) - 1
        step, begin, _ = self._pieces[piece]
        share = (time_min - curve.times_min[step]) / (curve.times_min[step + 1] - curve.times_min[step])
        return self._totals[piece] + self._between(step, begin, max(begin, share))

    def time_to(self, equivalent_min: float) -> float | None:
        """First minute by which that many equivalent minutes are made; None = never."""
        totals, curve = self._totals, self._curve
        if equivalent_min <= 0.0:
            return curve.times_min[0]
        self._sum(enough_min=equivalent_min)
        if equivalent_min > totals[-1]:
            rate = self.final_rate
            return curve.end_min + (equivalent_min - totals[-1]) / rate if rate > 0.0 else None
        piece = bisect_left(totals, equivalent_min) - 1
        step, begin, end = self._pieces[piece]
        wanted = equivalent_min - totals[piece]
        share = find_share(lambda place: self._between(step, begin, place) - wanted, begin, end)
        return curve.time_in_step(step, share)
