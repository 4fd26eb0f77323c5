"""What a reader of a cure plan must not miss."""

from __future__ import annotations

from collections.abc import Iterator
from math import ceil

from calculators.cure._cure_plan_inputs import Inputs
from calculators.cure._cure_plan_sums import Plan
from calculators.cure._schedule import Schedule, f_and_c
from calculators.kit.numbers import whole
from calculators.kit.result import Caution
from calculators.tables import table

MARGIN_DC = 15 / 1.8
FAR_OVER_DC = 15.0


def cautions(asked: Inputs, schedule: Schedule, made: Plan) -> tuple[Caution, ...]:
    """Every caution that these inputs deserve."""
    return (
        *_oven(asked, schedule, made),
        *_window(made),
        *_metal(asked, made),
        *_powder(asked, schedule, made),
    )


def _oven(asked: Inputs, schedule: Schedule, made: Plan) -> Iterator[Caution]:
    if asked.oven_degC - schedule.schedule_degC < MARGIN_DC - 1e-6:
        yield Caution(
            "caution",
            f"The oven is set less than 15 F over {f_and_c(schedule.schedule_degC)}. The metal creeps up to it, and a "
            "small error of the oven decides. Set it 15 to 25 F over, if the thin sections allow.",
            "oven",
            "common-practice",
        )
    if made.metal_at_safe_degC > schedule.hottest_degC + FAR_OVER_DC:
        yield Caution(
            "caution",
            f"The metal goes more than 27 F over {f_and_c(schedule.hottest_degC)}, the hottest point of the sheet. Cure "
            "is counted no faster there, and colour or gloss may suffer. Lower the oven.",
            "oven",
        )
    if asked.dip_dC == 0:
        yield Caution(
            "note",
            "The oven is taken to hold its setting from the moment the door closes. A cold load and an open door make every "
            "time longer: watch the air once and enter how far it falls.",
            "dip",
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


def _metal(asked: Inputs, made: Plan) -> Iterator[Caution]:
    row = table("metals")[asked.metal]
    limit = row.get("service_degC")
    if limit is not None and made.metal_at_safe_degC > limit - 5:
        yield Caution("caution", row["service_note"].replace("°", ""), "metal", row["service_source"])
    if made.lump.too_thick:
        yield Caution(
            "caution",
            f"This section is thick for its metal (Biot number {made.lump.biot:.2f}, over 0.1): its core reaches a temperature about "
            f"{made.lump.core_lag_min:.1f} min after its skin. Add that, or put the probe in the core.",
            "thickness",
            "incropera",
        )


def _powder(asked: Inputs, schedule: Schedule, made: Plan) -> Iterator[Caution]:
    if made.metal_at_pull_degC < schedule.coolest_degC:
        yield Caution(
            "note",
            f"At the earliest pull the metal is still under {f_and_c(schedule.coolest_degC)}, the coolest point of the "
            "sheet. That time counts on cure that the sheet does not vouch for.",
            "schedule-temperature",
        )
    if not schedule.two_points:
        yield Caution(
            "note",
            "With one point of the sheet the powder's cure speed is a guess (80 kJ/mol, 60 to 120). A second point narrows "
            "every time here.",
            "second-temperature",
            "ea-default",
        )
    if schedule.longest_is_guess:
        yield Caution(
            "note",
            "Over-bake is counted from twice the schedule time. That is a guess until the sheet says more.",
            "longest-time",
        )
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
