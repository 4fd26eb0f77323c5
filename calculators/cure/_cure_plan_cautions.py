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
from calculators.cure._cure_plan_sums import Plan
from calculators.cure._schedule import Schedule, f_and_c
from calculators.kit.numbers import whole
from calculators.kit.result import Caution


def cautions(asked: Inputs, schedule: Schedule, made: Plan) -> tuple[Caution, ...]:
    """Every caution that these inputs deserve."""
    return (
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


def _window(made: Plan) -> Iterator[Caution]:
    safe_min = ceil(made.safe_min - 1e-9)
    if made.over_bake_min is None or safe_min <= made.over_bake_min:
        return
    if made.thin == made.part:
        yield Caution(
            "caution",
            f"The doubt is wider than the powder's window: at the slow end this section needs {safe_min} min, at the fast end "
            f"it may be over-baked from {whole(made.over_bake_min)} min. Log a bake and enter the measured oven coefficient, "
            "lower the oven, or ask for a powder with a wider window.",
            "airflow",
        )
        return
    yield Caution(
        "caution",
        f"The heavy section needs {safe_min} min, and the thin one may be over-baked from "
        f"{whole(made.over_bake_min)} min: no single pull serves both sections. Lower the oven, split the load, or ask for "
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
