"""The rules by which a set of film readings passes or fails: SSPC-PA 2 by spots and areas, ISO 19840 by single readings."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, field
from statistics import fmean

from calculators.kit.numbers import shop_number
from calculators.tables import table

SPOTS = 5  # in an area
AREA_m2, AREA_ft2 = 10.0, 100.0  # the standard prints both, and they are not quite equal
FT2 = 0.09290304  # m2
MIL = 25.4  # um
SLACK = 1e-9  # a reading on a limit passes, whatever its last bit

# ISO 19840: readings for an inspection area up to so many m2, and how many of them may be taken again
ISO_READINGS = ((1.0, 5, 1), (3.0, 10, 2), (10.0, 15, 3), (30.0, 20, 4), (100.0, 30, 6))


@dataclass(frozen=True, slots=True)
class Limit:
    """What a rule allows: of single spots or readings, and of the mean. None where there is no limit."""

    spot_low_um: float
    spot_high_um: float | None
    mean_low_um: float
    mean_high_um: float | None


@dataclass(slots=True)
class Judged:
    """What a rule makes of the readings.

    spots: the numbers that are judged one by one. areas: means, with the number of spots behind each. failed: a sentence for
    each clause that fails. needed: readings that the rule asks for, or None. more: what to take still, and where.
    """

    spots: list[float]
    areas: list[tuple[float, int]] = field(default_factory=list)
    failed: list[str] = field(default_factory=list)
    needed: int | None = None
    more: str = ""


def film(um: float) -> str:
    """A film as a sentence says it."""
    return f"{shop_number(um / MIL)} mil ({shop_number(um)} um)"


def name_of(rule: str) -> str:
    """The rule as a sentence says it."""
    return str(table("film_rules")[rule]["name"])


def limits_of(rule: str, low_um: float, high_um: float) -> Limit:
    """The rule's limits for the lowest and highest film that the job asks for."""
    row = table("film_rules")[rule]

    def high(key: str) -> float | None:
        return row[key] * high_um if key in row else None

    return Limit(row["spot_low"] * low_um, high("spot_high"), row["area_low"] * low_um, high("area_high"))


def areas_needed(area_m2: float) -> int:
    """How many areas SSPC-PA 2 has measured: each up to three, three up to ten, and one in each further ten.

    >>> areas_needed(12_500 * 0.09290304)
    15
    """
    size = (area_m2 / AREA_m2 if _measured_in_m2(area_m2) else area_m2 / FT2 / AREA_ft2) - SLACK
    if size <= 3:
        return max(math.ceil(size), 1)
    return 3 if size <= 10 else 3 + math.ceil(size / 10 - 1)


def _measured_in_m2(area_m2: float) -> bool:
    """Whether the area was measured in m2. The standard prints 100 ft2 and 10 m2 side by side, 7 % apart, and says to keep to
    one system; an area that is round in m2 and not in ft2 was measured in m2.
    """
    in_m2, in_ft2 = (abs(10 * size - round(10 * size)) < 1e-6 for size in (area_m2, area_m2 / FT2))
    return in_m2 and not in_ft2


def iso_readings_needed(area_m2: float) -> int:
    """How many readings ISO 19840 asks for on an inspection area.

    >>> [iso_readings_needed(area) for area in (1, 2, 10, 100, 101)]
    [5, 10, 15, 30, 40]
    """
    for up_to, readings, _ in ISO_READINGS:
        if area_m2 <= up_to * (1 + SLACK):
            return readings
    return 30 + 10 * math.ceil(area_m2 / 100 - 1 - SLACK)


def by_spots(readings: Sequence[float], per_spot: int, limit: Limit, area_m2: float | None) -> Judged:
    """SSPC-PA 2: readings in their order make spots, five spots make an area."""
    whole = len(readings) // per_spot
    spots = [fmean(readings[place * per_spot : (place + 1) * per_spot]) for place in range(whole)]
    judged = Judged(spots)
    for start in range(0, whole, SPOTS):
        group = spots[start : start + SPOTS]
        judged.areas.append((fmean(group), len(group)))
    _judge_spots(judged, limit)
    _judge_areas(judged, limit)
    if area_m2 is not None:
        judged.needed = areas_needed(area_m2) * SPOTS * per_spot
    judged.more = _more_spots(len(readings), per_spot, judged.needed)
    return judged


def _judge_spots(judged: Judged, limit: Limit) -> None:
    low, high = limit.spot_low_um, limit.spot_high_um
    thin = [place for place, spot in enumerate(judged.spots, 1) if spot < low * (1 - SLACK)]
    if thin:
        worst = film(min(judged.spots))
        judged.failed.append(f"Spots: {_listed('spot', thin)} under {film(low)}; the lowest is {worst}")
    if high is not None:
        thick = [place for place, spot in enumerate(judged.spots, 1) if spot > high * (1 + SLACK)]
        if thick:
            worst = film(max(judged.spots))
            judged.failed.append(f"Spots: {_listed('spot', thick)} over {film(high)}; the highest is {worst}")


def _judge_areas(judged: Judged, limit: Limit) -> None:
    low, high = limit.mean_low_um, limit.mean_high_um
    for place, (mean, _) in enumerate(judged.areas, 1):
        which = f"area {place}" if len(judged.areas) > 1 else "the area"
        if mean < low * (1 - SLACK):
            judged.failed.append(f"Area mean: {which} has {film(mean)}, under {film(low)}")
        if high is not None and mean > high * (1 + SLACK):
            judged.failed.append(f"Area mean: {which} has {film(mean)}, over {film(high)}")


def _more_spots(given: int, per_spot: int, needed: int | None) -> str:
    parts = []
    over = given % per_spot
    if over:
        parts.append(f"{_count(per_spot - over, 'reading')} in spot {given // per_spot + 1}, to complete it")
    spots = math.ceil(given / per_spot)
    if needed is not None and needed > spots * per_spot:
        missing = needed // per_spot - spots
        in_area = min(-spots % SPOTS, missing)
        if in_area:
            parts.append(f"{_count(in_area, 'spot')} in area {spots // SPOTS + 1}")
        if missing > in_area:
            parts.append(
                f"{_count((missing - in_area) // SPOTS, 'area')} of {SPOTS} spots elsewhere, picked at random"
            )
    return "; ".join(parts)


def by_readings(
    readings: Sequence[float], limit: Limit, rule: str, low_um: float, area_m2: float | None
) -> Judged:
    """ISO 19840: each reading is judged, and so is their mean."""
    row = table("film_rules")[rule]
    judged = Judged(list(readings), [(fmean(readings), len(readings))])
    mean = judged.areas[0][0]
    few_low, share = row["few_low"] * low_um, row["few_share"]
    thin = sum(one < limit.spot_low_um * (1 - SLACK) for one in readings)
    between = sum(limit.spot_low_um * (1 - SLACK) <= one < few_low * (1 - SLACK) for one in readings)
    if mean < limit.mean_low_um * (1 - SLACK):
        judged.failed.append(f"Mean: {film(mean)}, under {film(limit.mean_low_um)}")
    if thin:
        judged.failed.append(
            f"Single readings: {thin} of {len(readings)} under {film(limit.spot_low_um)}; the lowest is {film(min(readings))}"
        )
    if between >= share * len(readings) * (1 - SLACK) and between:
        judged.failed.append(
            f"Too many a little short: {between} of {len(readings)} lie from {film(limit.spot_low_um)} to {film(few_low)}, "
            f"and fewer than {share:.0%} may"
        )
    if limit.spot_high_um is not None and max(readings) > limit.spot_high_um * (1 + SLACK):
        over = sum(one > limit.spot_high_um * (1 + SLACK) for one in readings)
        judged.failed.append(
            f"Most allowed: {over} of {len(readings)} over {film(limit.spot_high_um)}; the highest is {film(max(readings))}"
        )
    if area_m2 is not None:
        judged.needed = iso_readings_needed(area_m2)
        if judged.needed > len(readings):
            judged.more = (
                f"{_count(judged.needed - len(readings), 'reading')} elsewhere on the area, spread at random"
            )
    return judged


def _count(number: int, word: str) -> str:
    return f"{number} more {word}{'' if number == 1 else 's'}"


def _listed(word: str, places: list[int]) -> str:
    """Spot 3; or spots 3, 7 and 2 others."""
    if len(places) == 1:
        return f"{word} {places[0]}"
    shown = ", ".join(map(str, places[:6]))
    return f"{word}s {shown}" + (f" and {len(places) - 6} others" if len(places) > 6 else "")
