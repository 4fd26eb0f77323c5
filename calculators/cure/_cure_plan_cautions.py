"""What a reader of a cure plan must not miss."""

from __future__ import annotations

from collections.abc import Iterator

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
from calculators.cure._cure_plan_inputs import Inputs
from calculators.cure._cure_plan_sums import Plan, thin_shape
from calculators.cure._schedule import Schedule, f_and_c
from calculators.cure._window import whole_down, whole_up
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
        *_window(asked, schedule, made),
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


def _window(asked: Inputs, schedule: Schedule, made: Plan) -> Iterator[Caution]:
    if made.over_bake_min is None:
        return
    pull, over = whole_up(made.safe_min), whole_down(made.over_bake_min)
    if not made.has_window and not made.one_section:
        # an oven that is to be raised is not to be lowered as well
        lower = "" if too_little_margin(asked.oven_degC, schedule) else "lower the oven, "
        advice = f"{lower}split the load, or ask for a powder with a wider window."
        yield Caution(
            "caution",
            f"The heavy section needs {pull:,} min, and the thin one may be over-baked from {over:,} min: no single pull serves "
            f"both sections. {advice[0].upper()}{advice[1:]}",
            "thinnest",
        )
        return
    if not made.has_window:
        yield Caution(
            "caution",
            f"The doubt is wider than the powder's window: at the slow end of airflow and cure speed this section needs "
            f"{pull:,} min, at the fast end it may be over-baked from {over:,} min. {widen(asked.airflow)}",
            "airflow",
        )
    if made.sheet_min is not None and whole_up(made.sheet_min) > made.over_bake_min:
        yield Caution(
            "caution",
            f"By the sheet, to the letter, the pull is at {whole_up(made.sheet_min):,} min, and over-bake may begin at {over:,} "
            "min: the two do not fit at this setting. A probe in the heaviest section and the maker's own longest time decide.",
            "longest-time",
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
