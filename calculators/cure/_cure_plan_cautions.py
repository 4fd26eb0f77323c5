"""What a reader of a cure plan must not miss."""

from __future__ import annotations

from collections.abc import Iterator
from math import ceil

from calculators.cure._bake_cautions import (
    far_over,
    guessed_longest,
    metal_limit,
    one_point,
    said,
    steady_air,
    too_little_margin,
    too_thick,
)
from calculators.cure._cure_plan_inputs import Inputs
from calculators.cure._cure_plan_sums import Plan, thin_shape
from calculators.cure._schedule import Schedule, f_and_c
from calculators.kit.numbers import shop_number
from calculators.kit.result import Caution
from calculators.physics.heat import heat_path_m

# The most that a section's own thickness is taken for.
LONGEST_PATH_m = 12 * 0.0254


def cautions(asked: Inputs, schedule: Schedule, made: Plan) -> tuple[Caution, ...]:
    """Every caution that these inputs deserve."""
    return (
        *_contradictions(asked, made),
        *said(
            too_little_margin(asked.oven_degC, schedule),
            far_over(made.metal_at_safe_degC, schedule),
            steady_air(asked.dip_dC),
        ),
        *_window(made),
        *said(
            metal_limit(asked.metal, made.metal_at_safe_degC, "metal"),
            too_thick(made.lump, "thickness"),
        ),
        *_powder(asked, schedule, made),
    )


def _contradictions(asked: Inputs, made: Plan) -> Iterator[Caution]:
    path_m = made.part.heat_path_m
    if asked.thinnest_m is not None:
        thin_m = heat_path_m(thin_shape(asked.shape), asked.thinnest_m)
        if thin_m > path_m * (1 + 1e-9):
            yield Caution(
                "stop",
                "The thinnest section heats slower than the heaviest, so one of the two is wrong. Do not pull by these times. "
                "Swap them, or leave the thinnest empty.",
                "thinnest",
            )
    if asked.shape == "weighed" and path_m > LONGEST_PATH_m:
        yield Caution(
            "stop",
            f"That mass on that area is as slow as a plate {shop_number(2 * path_m / 0.0254, 2)} in thick. Do not pull by these "
            "times. Check both, and their units.",
            "area",
        )


def _window(made: Plan) -> Iterator[Caution]:
    safe_min = ceil(made.safe_min - 1e-9)
    if made.over_bake_min is None or safe_min <= made.over_bake_min:
        return
    over_min = int(made.over_bake_min + 1e-9)
    if made.thin == made.part:
        yield Caution(
            "caution",
            f"The doubt is wider than the powder's window: at the slow end this section needs {safe_min:,} min, at the fast end "
            f"it may be over-baked from {over_min:,} min. Log a bake and enter the measured oven coefficient, "
            "lower the oven, or ask for a powder with a wider window.",
            "airflow",
        )
        return
    yield Caution(
        "caution",
        f"The heavy section needs {safe_min:,} min, and the thin one may be over-baked from "
        f"{over_min:,} min: no single pull serves both sections. Lower the oven, split the load, or ask for "
        "a powder with a wider window.",
        "thinnest",
    )


def _powder(asked: Inputs, schedule: Schedule, made: Plan) -> Iterator[Caution]:
    if made.metal_at_pull_degC < schedule.coolest_degC:
        yield Caution(
            "note",
            f"At the earliest pull the metal is still under {f_and_c(schedule.coolest_degC)}, the coolest point of the "
            "sheet. That time counts on cure that the sheet does not vouch for.",
            "schedule-temperature",
        )
    yield from said(one_point(schedule), guessed_longest(schedule))
    if asked.bake == "primer-to-gel":
        yield Caution(
            "caution",
            "A primer that has cured through may not hold the topcoat. Pull it as its sheet says, let it cool, and topcoat it "
            "the same day.",
            "bake",
            "common-practice",
        )
    if made.primer_total_percent is not None and made.primer_total_percent < 100:
        yield Caution(
            "caution",
            "By this pull the primer has not made its own schedule. Bake longer, as long as the topcoat allows.",
            "primer-had",
        )
