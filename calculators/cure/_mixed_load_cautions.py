"""What a reader of a mixed load's plan must not miss."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from calculators.cure._bake_cautions import (
    far_over,
    guessed_longest,
    metal_limit,
    one_point,
    said,
    steady_air,
    too_little_margin,
    too_thick,
    widen,
)
from calculators.cure._lump import lump_of
from calculators.cure._mixed_load_inputs import Inputs
from calculators.cure._mixed_load_sums import Section
from calculators.cure._schedule import Schedule
from calculators.cure._window import whole_down, whole_up
from calculators.kit.messages import any_of
from calculators.kit.result import Caution
from calculators.physics.heat import radiation_W_m2K

# A pull with less than this to spare is one that a busy shop misses.
NARROW_MIN = 2.0


def cautions(
    asked: Inputs, common: Schedule, load: Sequence[Section], pulled_min: Sequence[float]
) -> tuple[Caution, ...]:
    """Every caution that this load deserves. pulled_min: when each part comes out, in the order of the load."""
    return (
        *_no_window(asked, load),
        *_narrow(load, pulled_min),
        *_oven(asked, load, pulled_min),
        *_sections(load, pulled_min),
        *_powders(common, load),
    )


def _no_window(asked: Inputs, load: Sequence[Section]) -> Iterator[Caution]:
    for one in load:
        if one.earliest_min is not None and not one.has_window:
            yield Caution(
                "caution",
                f"{_start(one.name)} has no window of its own at this setting: at the slow end of airflow and cure speed it is "
                f"cured from {whole_up(one.earliest_min):,} min, at the fast end it may be over-baked from "
                f"{whole_down(one.latest_min):,} min. {widen(asked.airflow)}",
                "load",
            )


def _narrow(load: Sequence[Section], pulled_min: Sequence[float]) -> Iterator[Caution]:
    narrow = [
        one.name
        for one, pull in zip(load, pulled_min, strict=True)
        if one.has_window and one.latest_min - pull < NARROW_MIN
    ]
    if narrow:
        yield Caution(
            "note",
            f"Less than {NARROW_MIN:.0f} min is left after the pull of {' and '.join(narrow)} before it may be over-baked: the "
            "doubt of airflow and powder has used up the rest. A logged bake and the sheet's own longest time give it back.",
            "airflow",
        )


def _oven(asked: Inputs, load: Sequence[Section], pulled_min: Sequence[float]) -> Iterator[Caution]:
    strictest = max((one.schedule for one in load), key=lambda one: one.schedule_degC)
    hottest = max(
        zip(load, pulled_min, strict=True),
        key=lambda pair: pair[0].fast.at(pair[1]) - pair[0].schedule.hottest_degC,
    )
    yield from said(
        too_little_margin(asked.oven_degC, strictest),
        far_over(hottest[0].fast.at(hottest[1]), hottest[0].schedule),
        steady_air(asked.dip_dC),
    )
    if asked.door_dC > 0 and asked.recovery_min == 0:
        yield Caution(
            "note",
            "With no time to come back to setting, an opened door costs nothing here. Watch the air once and enter how long "
            "it takes.",
            "recovery",
        )
    if asked.door_dC == 0:
        yield Caution(
            "note",
            "An opened door is taken to cost nothing. Watch how far the air falls when a part is taken out, and enter it.",
            "door",
        )


def _sections(load: Sequence[Section], pulled_min: Sequence[float]) -> Iterator[Caution]:
    hottest_degC: dict[str, float] = {}
    for one, pull in zip(load, pulled_min, strict=True):
        metal_degC = one.fast.at(pull)
        hottest_degC[one.metal] = max(metal_degC, hottest_degC.get(one.metal, metal_degC))
        oven = one.oven
        whole_W_m2K = oven.convection_W_m2K + radiation_W_m2K(
            one.part.emissivity * oven.exposure, metal_degC, oven.setting_degC
        )
        yield from said(
            too_thick(lump_of(one.metal, one.shape, one.part, whole_W_m2K), "load", _start(one.name))
        )
    for metal, metal_degC in hottest_degC.items():
        yield from said(metal_limit(metal, metal_degC, "load"))


def _powders(common: Schedule, load: Sequence[Section]) -> Iterator[Caution]:
    yield from said(one_point(common), guessed_longest(common))
    other = [one.name for one in load if one.schedule is not common]
    if other:
        yield Caution(
            "note",
            f"Another powder is on {any_of(other)}: its cure speed is a guess (80 kJ/mol, 60 to 120), and its over-bake is "
            "counted from twice its time. Vapour of one powder can dull another: ask both makers before they share an oven.",
            "load",
            "ea-default",
        )


def _start(name: str) -> str:
    return name[:1].upper() + name[1:]
