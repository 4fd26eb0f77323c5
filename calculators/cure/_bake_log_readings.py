"""Is this log one that can be summed? Times in order, every probe in every line, Fahrenheit and Celsius not mixed up."""

from __future__ import annotations

from dataclasses import dataclass

from calculators.cure._bake_log_inputs import Inputs
from calculators.cure._schedule import Schedule, f_and_c
from calculators.kit.numbers import shop_number, whole
from calculators.kit.result import Caution, Clash

# How far a reading may be from the metal: our estimates, no source. A gun's doubt is that of cured film.
DOUBT_DC = {"probe": 4 / 1.8, "infrared": 15 / 1.8}
# A pull so long after the last reading is of another bake, or in another unit.
LATEST_PULL_MIN = 240.0
# A fall of this much from the hottest reading, ending at the lowest since, is a part that was pulled.
FALL_DC = 15 / 1.8
FAR_OVER_OVEN_DC = 50 / 1.8
# Metal that starts at more than this many degrees, whatever their unit, starts in Fahrenheit.
COOL_START = 45.0
WARM_PEAK = 100.0
SHORTEST_FLAT_MIN = 10.0


@dataclass(frozen=True, slots=True)
class Log:
    """A log that can be summed. pull: place of the last reading in the oven. pulled: the metal has left the oven.

    pulled_min: when it left, as far as is known.
    """

    times_min: list[float]
    probes: tuple[list[float], ...]
    pull: int
    pulled: bool
    pulled_min: float
    cautions: tuple[Caution, ...]


def doubt_dC(asked: Inputs) -> float:
    """How far a reading may be from the metal: as measured, or our estimate for the instrument."""
    return DOUBT_DC[asked.instrument] if asked.reading_doubt_dC is None else asked.reading_doubt_dC


def log_of(asked: Inputs, schedule: Schedule) -> Log:
    """The log of these inputs. Raises Clash where it cannot be summed."""
    times = [row.minute_min for row in asked.log]
    widest = max(len(row.temperature_degC) for row in asked.log)
    for place, row in enumerate(asked.log):
        if len(row.temperature_degC) != widest:
            had = len(row.temperature_degC)
            raise Clash(
                (
                    "log",
                    f"Log must have a temperature for each probe in every line: reading {_at(times, place)} has {had}, "
                    f"others have {widest}",
                )
            )
        if place and times[place] < times[place - 1]:
            raise Clash(
                (
                    "log",
                    f"Log must run forward in time: reading {_at(times, place)} comes after reading {_at(times, place - 1)}",
                )
            )
    if len(times) > 1 and times[-1] <= times[0]:
        raise Clash(("log", "Log must last some time: all its readings have the same time"))
    probes = tuple([row.temperature_degC[probe] for row in asked.log] for probe in range(widest))
    cautions = [*_units(asked, schedule, times, probes)]
    if any(
        times[place] == times[place - 1] and asked.log[place] != asked.log[place - 1]
        for place in range(1, len(times))
    ):
        cautions.append(
            Caution(
                "note",
                "Some readings carry the same time, so the clock is coarser than the log. Write the seconds if you have them.",
                "log",
            )
        )
    pull, pulled = _pull(asked, times, probes)
    given = asked.pulled_at_min
    return Log(times, probes, pull, pulled, times[pull] if given is None else given, tuple(cautions))


def _at(times: list[float], place: int) -> str:
    return f"{place + 1:,} ({shop_number(times[place], 6)} min)"


def _pull(asked: Inputs, times: list[float], probes: tuple[list[float], ...]) -> tuple[int, bool]:
    given = asked.pulled_at_min
    if given is not None:
        if not times[0] <= given <= times[-1] + LATEST_PULL_MIN + 1e-6:
            raise Clash(
                (
                    "pulled-at",
                    f"Pulled at must lie within the log, {shop_number(times[0], 6)} to {shop_number(times[-1], 6)} min, or at "
                    f"most {LATEST_PULL_MIN:g} min after it; if the part still bakes, leave it empty",
                )
            )
        return max(place for place, time in enumerate(times) if time <= given + 1e-6), True
    means = [sum(both) / len(both) for both in zip(*probes, strict=True)]
    hottest = max(means)
    pull = max(place for place, mean in enumerate(means) if mean >= hottest - 1.0)
    fallen = means[-1] <= hottest - FALL_DC and means[-1] <= min(means[pull:]) + 1.0
    return (pull, True) if fallen else (len(times) - 1, False)


def _units(
    asked: Inputs, schedule: Schedule, times: list[float], probes: tuple[list[float], ...]
) -> list[Caution]:
    """Refuse a log whose numbers can only be of the other unit; caution where they only look so."""
    peak = max(map(max, probes))
    oven = asked.oven_degC
    if oven is not None and peak > oven + FAR_OVER_OVEN_DC:
        # the numbers as they stand, if they were typed in Celsius
        if (
            (schedule.coolest_degC - FAR_OVER_OVEN_DC) * 1.8 + 32
            <= peak
            <= (oven + FAR_OVER_OVEN_DC) * 1.8 + 32
        ):
            raise Clash(
                (
                    "log",
                    f"Log reads up to {f_and_c(peak)}, far over the oven setting of {f_and_c(oven)}. Its numbers look "
                    "like Fahrenheit taken for Celsius: choose F beside the log",
                )
            )
        return [
            Caution(
                "caution",
                f"The log reads up to {f_and_c(peak)}, far over the oven setting of {f_and_c(oven)}. Check the setting, "
                "the probe and the unit beside the log before you trust this answer.",
                "log",
            )
        ]
    # the numbers as they stand, if they were typed in Fahrenheit
    peak_number, start_number = peak * 1.8 + 32, min(one[0] for one in probes) * 1.8 + 32
    hottest = (schedule.hottest_degC if oven is None else oven) + FAR_OVER_OVEN_DC
    if start_number > COOL_START or not WARM_PEAK <= peak_number <= hottest:
        return []
    words = (
        f"Log never goes over {f_and_c(peak)}. Taken as Celsius, its numbers run from {whole(start_number)} C to "
        f"{whole(peak_number)} C, which is more like a bake"
    )
    cured = peak_number >= schedule.coolest_degC - FAR_OVER_OVEN_DC
    if cured and oven is not None and _levels_off(times, max(probes, key=max)):
        raise Clash(
            ("log", f"{words}, and metal does not level off so far under the oven: choose C beside the log")
        )
    return [Caution("caution", f"{words}. If the log is in Celsius, choose C beside it.", "log")]


def _levels_off(times: list[float], metal: list[float]) -> bool:
    """Whether the metal hardly climbs over the last quarter of the time to its hottest reading."""
    top = metal.index(max(metal))
    climbed = times[top] - times[0]
    if climbed < SHORTEST_FLAT_MIN:
        return False
    before = [place for place in range(top) if times[place] <= times[top] - climbed / 4]
    return bool(before) and metal[top] - metal[before[-1]] < 0.15 * (metal[top] - metal[0])
