"""The sums of cure-plan: the same part heated at the slow, the nominal and the fast end of its doubts."""

from __future__ import annotations

from dataclasses import dataclass, replace

from calculators.cure._cure_plan_doubt import Doubt, doubts
from calculators.cure._cure_plan_inputs import Inputs
from calculators.cure._lump import Lump, lump_of
from calculators.cure._oven_fields import SHOP_AIR_DOUBT, convection_W_m2K
from calculators.cure._schedule import DEFAULT_KJ_MOL, Schedule
from calculators.cure._window import over_bake_min, pull_min, slow_pull_min, whole_up
from calculators.kit.steps import Step, step
from calculators.physics.bake import (
    AfterPull,
    earliest_pull_min,
    sheet_pull_min,
)
from calculators.physics.cure import Kinetics
from calculators.physics.curve import Curve
from calculators.physics.dose import Dose
from calculators.physics.heat import (
    Part,
    Surroundings,
    heat_path_m,
    radiation_W_m2K,
    temperature_curve,
    weighed_heat_path_m,
)
from calculators.tables import table

FLOW_DEGC = (300 - 32) / 1.8
TOUCH_DEGC = (110 - 32) / 1.8
NEVER_THERE = "never: the metal does not reach schedule temperature"


@dataclass(frozen=True, slots=True)
class Plan:
    """What the sums came to. Times are minutes from the closed door, or after the pull where they say so."""

    part: Part
    thin: Part
    path_step: Step
    coefficient_W_m2K: float
    whole_W_m2K: float
    lump: Lump
    needed_share: float
    curve: Curve
    slow_curve: Curve
    thin_curve: Curve
    cooling: Curve
    doses: tuple[Dose, Dose, Dose]
    safe_min: float
    no_credit_min: float
    sheet_min: float | None
    earliest_min: float
    earliest_low_min: float
    earliest_high_min: float
    metal_at_pull_degC: float
    metal_at_safe_degC: float
    in_oven_min: float
    after_pull_min: float
    reach_flow_min: float | None
    reach_schedule_min: float | None
    hot_after_min: float
    over_bake_min: float | None
    touch_min: float | None
    primer_total_percent: float | None
    doubts: tuple[Doubt, ...]

    @property
    def one_section(self) -> bool:
        return self.thin == self.part

    @property
    def has_window(self) -> bool:
        """Whether some whole minute serves the heaviest and the thinnest section."""
        return self.over_bake_min is None or whole_up(self.safe_min) <= self.over_bake_min


def part_of(metal: str, path_m: float, finish: str = "coated") -> Part:
    """A section of a metal with a heat path, as the heat sums take it."""
    row = table("metals")[metal]
    return Part(
        row["density_kg_m3"], row["specific_heat_J_kgK"], path_m, table("finishes")[finish]["emissivity"]
    )


def _path(asked: Inputs) -> tuple[float, Step]:
    if asked.shape == "weighed":
        density = table("metals")[asked.metal]["density_kg_m3"]
        path = weighed_heat_path_m(asked.mass_kg, density, asked.area_m2)
        working = step(
            "Heat path", "L = m / (rho * A) * 1000", "mm", m=asked.mass_kg, rho=density, A=asked.area_m2
        )
        return path, working
    path = heat_path_m(asked.shape, asked.thickness_m)
    part = round(asked.thickness_m / path)
    return path, step(
        "Heat path: metal volume over heated area", "L = t / n", "mm", t=asked.thickness_m * 1000, n=part
    )


def thin_shape(shape: str) -> str:
    """How the thinnest section of a part is heated: the thin place of a bar or a casting is a wall with air on both sides."""
    return shape if shape in ("one-side", "heat-path") else "both-sides"


def _thin_path(asked: Inputs, path_m: float) -> float:
    if asked.thinnest_m is None:
        return path_m
    return min(path_m, heat_path_m(thin_shape(asked.shape), asked.thinnest_m))


def plan(asked: Inputs, schedule: Schedule) -> Plan | None:
    """All of the sums, or None where the metal never reaches the sheet's coolest point."""
    path, path_step = _path(asked)
    part, thin = part_of(asked.metal, path), part_of(asked.metal, _thin_path(asked, path))
    coefficient = convection_W_m2K(asked.airflow, asked.oven_coefficient_W_m2K)
    share = asked.primer_share_percent / 100 if asked.bake == "primer-to-gel" else 1.0
    needed = share * schedule.schedule_min

    exposure: float = table("shading")[asked.shading]["exposure"]
    still_W_m2K: float = table("airflow")["still"]["convection_W_m2K"]

    around = Surroundings(asked.oven_degC, coefficient, exposure, asked.dip_dC, asked.recovery_min)

    def heated(section: Part, factor: float) -> Curve:
        air = replace(around, convection_W_m2K=factor * coefficient)
        return temperature_curve(section, air, asked.start_degC)

    if asked.oven_degC <= schedule.coolest_degC:
        return None
    doubt = asked.oven_doubt_percent / 100
    curve, slow = heated(part, 1.0), heated(part, 1 - doubt)
    fast_thin = heated(thin, 1 + doubt)
    best, low, high = schedule.all_kinetics
    no_credit = pull_min(curve, best, schedule, needed)
    slow_pull = slow_pull_min(slow, schedule, needed)
    if no_credit is None or slow_pull is None:
        return None
    safe = max(no_credit, slow_pull)

    shop = Surroundings(asked.shop_degC, still_W_m2K, exposure)
    hottest = max(asked.oven_degC, asked.shop_degC + 1.0)
    dose = Dose(curve, best)
    cooling = temperature_curve(part, shop, hottest)
    after = AfterPull(cooling, best)
    earliest = min(earliest_pull_min(curve, dose, after, needed), no_credit)
    fast = fast_thin if thin == part else heated(part, 1 + doubt)
    slow_low, fast_high = Dose(slow, low), Dose(fast, high)
    after_low, after_high = AfterPull(cooling, low), AfterPull(cooling, high)
    ends = [
        earliest_pull_min(fast, Dose(fast, low), after_low, needed),
        earliest_pull_min(fast, fast_high, after_high, needed),
        earliest_pull_min(slow, slow_low, after_low, needed),
        earliest_pull_min(slow, Dose(slow, high), after_high, needed),
    ]
    metal_at_pull = curve.at(earliest)
    metal_at_safe = curve.at(safe)
    slow_shop = Surroundings(asked.shop_degC, (1 - SHOP_AIR_DOUBT) * still_W_m2K, exposure)
    touch = temperature_curve(part, slow_shop, metal_at_safe).first_at_or_below(TOUCH_DEGC)
    whole = coefficient + radiation_W_m2K(part.emissivity * exposure, metal_at_safe, asked.oven_degC)
    return Plan(
        part=part,
        thin=thin,
        path_step=path_step,
        coefficient_W_m2K=coefficient,
        whole_W_m2K=whole,
        lump=lump_of(asked.metal, asked.shape, part, whole),
        needed_share=share,
        curve=curve,
        slow_curve=slow,
        thin_curve=curve if thin == part else heated(thin, 1.0),
        cooling=cooling,
        doses=(dose, slow_low, fast_high),
        safe_min=safe,
        no_credit_min=no_credit,
        sheet_min=sheet_pull_min(curve, schedule.schedule_degC, needed),
        earliest_min=earliest,
        earliest_low_min=min(earliest, *ends),
        earliest_high_min=max(earliest, *ends),
        metal_at_pull_degC=metal_at_pull,
        metal_at_safe_degC=metal_at_safe,
        in_oven_min=dose.at(earliest),
        after_pull_min=after.cure_min(metal_at_pull),
        reach_flow_min=curve.first_at_or_above(FLOW_DEGC),
        reach_schedule_min=curve.first_at_or_above(schedule.schedule_degC),
        hot_after_min=after.minutes_to(FLOW_DEGC, metal_at_pull) or 0.0,
        over_bake_min=over_bake_min(fast_thin, schedule),
        touch_min=touch,
        primer_total_percent=_primer_total(asked, schedule, curve, safe),
        doubts=doubts(
            asked,
            schedule,
            needed,
            around,
            curve,
            slow,
            lambda air: temperature_curve(part, air, asked.start_degC),
        ),
    )


def _primer_total(asked: Inputs, schedule: Schedule, curve: Curve, safe_min: float) -> float | None:
    if asked.bake != "topcoat-over-primer":
        return None
    own_degC = asked.primer_temperature_degC
    temperature = schedule.schedule_degC if own_degC is None else own_degC
    time = schedule.schedule_min if asked.primer_time_min is None else asked.primer_time_min
    # of the primer only one point is known, so its cure speed is the usual one and not the topcoat's
    activation = schedule.activation_kJ_mol if own_degC is None else DEFAULT_KJ_MOL
    made = Dose(curve, Kinetics(temperature, activation, max(temperature, schedule.hottest_degC))).at(
        safe_min
    )
    return asked.primer_had_percent + 100 * made / time
