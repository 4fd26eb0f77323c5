"""Cautions that every plan of a bake may have to give, in one wording."""

from __future__ import annotations

from math import ceil

from calculators.cure._lump import Lump
from calculators.cure._schedule import Schedule, f_and_c
from calculators.kit.result import Caution
from calculators.tables import table

MARGIN_DC = 15 / 1.8
FAR_OVER_DC = 15.0
# A metal's own limit is spoken of when the bake comes this near to it.
NEAR_LIMIT_DC = 5.0

VENT_FIRST = (
    "Vent and drain every closed hollow before it goes in the oven: trapped water or air can burst it. Take off what heat "
    "harms or bursts: gas struts, batteries, seals, bearings. The powder's own data sheet rules the cure; the oven's manual, "
    "local codes and a qualified person rule how it is run."
)


def too_little_margin(oven_degC: float, schedule: Schedule) -> Caution | None:
    """The oven is hardly hotter than the metal is to be."""
    if oven_degC - schedule.schedule_degC >= MARGIN_DC - 1e-6:
        return None
    return Caution(
        "caution",
        f"The oven is set less than 15 F over {f_and_c(schedule.schedule_degC)}. The metal creeps up to it, and a "
        "small error of the oven decides. Set it 15 to 25 F over, if the thin sections allow.",
        "oven",
        "common-practice",
    )


def far_over(metal_degC: float, schedule: Schedule) -> Caution | None:
    """The metal goes far over what the sheet vouches for."""
    if metal_degC <= schedule.hottest_degC + FAR_OVER_DC:
        return None
    return Caution(
        "caution",
        f"The metal goes more than 27 F over {f_and_c(schedule.hottest_degC)}, the hottest point of the sheet. Cure "
        "is counted no faster there, and colour or gloss may suffer. Lower the oven.",
        "oven",
    )


def steady_air(dip_K: float) -> Caution | None:
    """Nothing was said of how the air falls."""
    if dip_K > 0:
        return None
    return Caution(
        "note",
        "The oven is taken to hold its setting from the moment the door closes. A cold load and an open door make every "
        "time longer: watch the air once and enter how far it falls.",
        "dip",
    )


def widen(airflow: str) -> str:
    """What helps one section whose doubt is wider than its window.

    Not the oven's setting: whether a hotter or a cooler oven brings the two ends together hangs on section and sheet.
    """
    log = (
        "Log another bake and enter less doubt if the two agree"
        if airflow == "measured"
        else "Log a bake and enter the measured oven coefficient"
    )
    return f"{log}, or ask for a powder with a wider window."


def metal_limit(metal: str, metal_degC: float, key: str) -> Caution | None:
    """The bake comes near what this metal may be held at."""
    row = table("metals")[metal]
    limit = row.get("service_degC")
    if limit is None or metal_degC <= limit - NEAR_LIMIT_DC:
        return None
    return Caution("caution", row["service_note"].replace("°", ""), key, row["service_source"])


def too_thick(lump: Lump, key: str, section: str = "This section") -> Caution | None:
    """The section is no lump of one temperature."""
    if not lump.too_thick:
        return None
    return Caution(
        "caution",
        f"{section} is thick for its metal (Biot number {lump.biot:.2f}, over 0.1): its core reaches a temperature about "
        f"{ceil(lump.core_lag_min):,} min after its skin. Add that, or put the probe in the core.",
        key,
        "incropera",
    )


def one_point(schedule: Schedule) -> Caution | None:
    """The sheet's second point is missing."""
    if schedule.two_points:
        return None
    return Caution(
        "note",
        "With one point of the sheet the powder's cure speed is a guess (80 kJ/mol, 60 to 120). A second point narrows "
        "every time here.",
        "second-temperature",
        "ea-default",
    )


def guessed_longest(schedule: Schedule) -> Caution | None:
    """The longest time is ours, not the sheet's."""
    if not schedule.longest_is_guess:
        return None
    return Caution(
        "note",
        "Over-bake is counted from twice the schedule time. That is a guess until the sheet says more.",
        "longest-time",
    )


def too_cool(schedule: Schedule) -> Caution:
    """The oven cannot cure this powder: there are no times to give."""
    coolest = round(schedule.coolest_degC * 1.8 + 32)
    return Caution(
        "stop",
        f"The oven setting is not above {coolest} F, the coolest point of this data sheet, so the metal never gets there. "
        "Do not bake this powder so. Set the oven 15 to 25 F over the sheet's temperature, or use a powder that cures cooler.",
        "oven",
    )


def said(*cautions: Caution | None) -> tuple[Caution, ...]:
    """Those that there are."""
    return tuple(one for one in cautions if one is not None)
