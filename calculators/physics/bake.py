"""When may this part be pulled, by the sheet, by minutes that surely count, and by the last degree?

A bake is a heating curve, its running cure (dose), and what the part still gains while it cools. The
cooling depends only on the temperature at the pull, so one cooling curve from the hottest metal
downward answers for every pull.
"""

from bisect import bisect_left, bisect_right

from calculators.physics.cure import Kinetics
from calculators.physics.curve import Curve, find_share
from calculators.physics.dose import Dose

# Minutes count as safe credit only while the metal is within this of the sheet's coolest point: our own
# cautious choice, because nothing on the sheet vouches for the powder further down.
SAFE_CREDIT_UNDER_COOLEST_K = 15.0

# After the pull nothing is counted below this: a film near its glass temperature (50 to 70 C for powder;
# from memory) stops reacting, and summed down to shop temperature the tail would have no end.
COOLEST_COUNTED_AFTER_PULL_degC = 60.0


class AfterPull:
    """What a part gains and how long it stays hot after it leaves the oven, for any pull temperature.

    cooling: temperature_curve of the part in the shop, from the hottest that any pull can be; one curve
    serves every powder and every oven.
    """

    __slots__ = ("_dose", "cooling")

    def __init__(self, cooling: Curve, kinetics: Kinetics) -> None:
        self.cooling = cooling
        self._dose = Dose(cooling, kinetics, COOLEST_COUNTED_AFTER_PULL_degC)

    def _minute_at(self, temperature_degC: float) -> float:
        """Minute on the cooling clock, which starts at the hottest metal, at which it is this cool."""
        minute = self.cooling.first_at_or_below(temperature_degC)
        return self.cooling.end_min if minute is None else minute

    def cure_min(self, pull_degC: float) -> float:
        """Equivalent minutes gained while the part cools from the pull temperature to where none count."""
        return self._dose.at_end_min - self._dose.at(self._minute_at(pull_degC))

    def minutes_to(self, temperature_degC: float, pull_degC: float) -> float | None:
        """Minutes from the pull until the part is at or under a temperature; None = never."""
        if pull_degC <= temperature_degC:
            return 0.0
        minute = self.cooling.first_at_or_below(temperature_degC)
        return None if minute is None else minute - self._minute_at(pull_degC)


def sheet_pull_min(curve: Curve, schedule_degC: float, schedule_min: float) -> float | None:
    """Pull time by the data sheet to the letter.

    t = t(metal at T_s) + t_s

    curve: metal temperature in the oven.   T_s: schedule_degC, C.   t_s: schedule_min, min.
    Returns t in min from the closing of the door, or None where the metal never comes to T_s.

    Holds: an oven that stays at or above T_s once the metal is there.
    Source: how data sheets state a schedule: minutes at metal temperature (seen: excerpt, Biller,
    Coatings World, Sept 2022).
    Departs from the source: nothing.

    >>> from calculators.physics.heat import Part, Surroundings, temperature_curve
    >>> steel = Part(7850, (480.0,), 0.003, 0.0)
    >>> curve = temperature_curve(steel, Surroundings(200.0, 25.0), 20.0)
    >>> round(sheet_pull_min(curve, 190.0, 10.0), 1)
    31.8
    """
    reached_min = curve.first_at_or_above(schedule_degC)
    return None if reached_min is None else reached_min + schedule_min


def credit_pull_min(curve: Curve, safe_dose: Dose, coolest_degC: float, schedule_min: float) -> float | None:
    """Pull time at which the oven alone has made the schedule, counting safe minutes only.

    t = the later of t(t_eq = t_s) and t(metal at the sheet's coolest point)

    safe_dose: summed with credit only above the coolest point less SAFE_CREDIT_UNDER_COOLEST_K.
    coolest point: coolest_degC, C.   t_s: schedule_min, min.   Returns t in min, or None = never.

    Holds: as Dose; no gain after the pull is counted.
    Source: our own rule on the Arrhenius relation.
    Departs from the source: nothing.

    >>> from calculators.physics.heat import Part, Surroundings, temperature_curve
    >>> steel = Part(7850, (480.0,), 0.003, 0.0)
    >>> curve = temperature_curve(steel, Surroundings(200.0, 25.0), 20.0)
    >>> round(credit_pull_min(curve, Dose(curve, Kinetics(190, 80, 190), 175.0), 190.0, 10.0), 1)
    26.5
    """
    made_min = safe_dose.time_to(schedule_min)
    reached_min = curve.first_at_or_above(coolest_degC)
    if made_min is None or reached_min is None:
        return None
    return max(made_min, reached_min)


def earliest_pull_min(curve: Curve, dose: Dose, after: AfterPull, schedule_min: float) -> float:
    """Earliest pull at which oven and cooling together make the schedule.

    t_eq(oven, up to t) + t_eq(cooling from T(t)) = t_s

    dose: all minutes counted, along curve.   after: cooling of the same part from the curve's peak.
    t_s: schedule_min, min.   Returns t in min from the closing of the door.

    Holds: still air after the pull, a probe in the heaviest section; a lower bound, not advice.
    Source: our own sum on the Arrhenius relation.
    Departs from the source: nothing.

    >>> from calculators.physics.heat import Part, Surroundings, temperature_curve
    >>> steel = Part(7850, (480.0,), 0.003, 0.0)
    >>> curve = temperature_curve(steel, Surroundings(200.0, 25.0), 20.0)
    >>> shop, powder = Surroundings(20.0, 6.0), Kinetics(190.0, 80.0, 190.0)
    >>> after = AfterPull(temperature_curve(steel, shop, 200.0), powder)
    >>> round(earliest_pull_min(curve, Dose(curve, powder), after, 10.0), 1)
    20.6
    """

    def missing(time_min: float) -> float:
        return dose.at(time_min) + after.cure_min(curve.at(time_min)) - schedule_min

    times = curve.times_min
    alone_min = dose.time_to(schedule_min)
    # by the first node at which the oven has made it alone, it is made
    nodes = len(times) if alone_min is None else bisect_right(times, alone_min) + 1
    if nodes >= len(times):
        nodes = len(times)
        at_end = missing(times[-1])
        if at_end <= 0.0:
            return times[-1] - at_end / dose.final_rate
    # The sum only grows with time, because air that still heats loses less heat than the shop takes.
    node = bisect_left(range(nodes), 0.0, key=lambda place: missing(times[place]))
    if node == 0:
        return times[0]
    return find_share(missing, times[node - 1], times[node])
