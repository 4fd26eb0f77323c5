"""Where a cure plan leads on: the log of the bake, the cooling after it, and both sections on one clock."""

from __future__ import annotations

from calculators.cure._cure_plan_inputs import Inputs
from calculators.cure._cure_plan_sums import Plan, thin_shape
from calculators.cure._schedule import F_DIGITS, Schedule
from calculators.kit.result import Carry


def carries(asked: Inputs, schedule: Schedule, made: Plan) -> tuple[Carry, ...]:
    """The links under the answer, each with what the next form needs."""
    texts = {
        "schedule-temperature": f"{asked.schedule_temperature_degC * 1.8 + 32:{F_DIGITS}} F",
        "schedule-time": f"{asked.schedule_time_min:g} min",
        "metal": asked.metal,
        "oven": f"{asked.oven_degC * 1.8 + 32:{F_DIGITS}} F",
    }
    if asked.second_temperature_degC is not None and asked.second_time_min is not None:
        texts["second-temperature"] = f"{asked.second_temperature_degC * 1.8 + 32:{F_DIGITS}} F"
        texts["second-time"] = f"{asked.second_time_min:g} min"
    log = Carry("bake-log", "Log this bake and see what cure it gave", texts)
    if asked.shape == "weighed":
        return (log,)
    section = {
        "metal": asked.metal,
        "shape": asked.shape,
        "thickness": f"{asked.thickness_m / 0.0254:.6g} in",
    }
    cool = section | {
        "from": f"{made.metal_at_safe_degC * 1.8 + 32:.1f} F",
        "shop": f"{asked.shop_degC * 1.8 + 32:{F_DIGITS}} F",
        "racked": "no" if asked.shading == "open" else "yes",
    }
    return (
        log,
        Carry("cool-down", "See when it can be handled after this pull", cool),
        *_to_mixed_load(asked, made, texts),
    )


def _to_mixed_load(asked: Inputs, made: Plan, texts: dict[str, str]) -> tuple[Carry, ...]:
    if made.one_section or asked.thinnest_m is None:
        return ()
    rows = [
        f"heavy section, {asked.metal}, {asked.shape}, {asked.thickness_m / 0.0254:.6g} in",
        f"thin section, {asked.metal}, {thin_shape(asked.shape)}, {asked.thinnest_m / 0.0254:.6g} in",
    ]
    load = texts | {
        "load": "\n".join(rows),
        "airflow": asked.airflow,
        "oven-coefficient": f"{asked.oven_coefficient_W_m2K:.4g} W/m2K",
        "oven-doubt": f"{asked.oven_doubt_percent:g} %",
        "shading": asked.shading,
    }
    del load["metal"]
    return (Carry("mixed-load", "See both sections on one clock", load),)
