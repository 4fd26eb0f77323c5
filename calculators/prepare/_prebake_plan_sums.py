"""The sums of prebake-plan: the bare part heated to its target and cooled again, at the slow end of its doubts."""

from __future__ import annotations

from dataclasses import dataclass

from calculators.kit.steps import Step, step
from calculators.physics.curve import Curve
from calculators.physics.heat import Part, Surroundings, heat_path_m, temperature_curve
from calculators.prepare._prebake_plan_inputs import USUAL, Inputs
from calculators.tables import table

# As in cure-plan: our own estimate of how far the airflow may be off.
AIRFLOW_DOUBT = 0.25
NEAR_TARGET_K = 10 / 1.8
# Cool enough to spray: common practice, no source.
SPRAY_degC = 40.0


@dataclass(frozen=True, slots=True)
class Target:
    """What the metal should come to. cap_degC: the hottest that this metal is held at; None where none binds."""

    target_degC: float
    wanted_degC: float
    cap_degC: float | None

    @property
    def capped(self) -> bool:
        return self.cap_degC is not None and self.cap_degC < self.wanted_degC - 1e-9


@dataclass(frozen=True, slots=True)
class Prebake:
    """Times in minutes: warm-up and oven time from the closed door, coat-after from the opened one; slow end."""

    path_step: Step
    warm_up_min: float
    oven_min: float
    coat_after_min: float | None
    hottest_end_degC: float
    curve: Curve
    slow_curve: Curve
    slow_cooling: Curve


def target_of(asked: Inputs) -> Target:
    """Cure and 54 F (30 C) over it, or the metal's cap where that is lower."""
    row = table("prebake")[asked.metal]
    cap = table("metals")[row["metal"]][row["cap"]] if row["cap"] else None
    wanted = asked.cure_temperature_degC + row["over_cure_dC"]
    return Target(wanted if cap is None else min(wanted, cap), wanted, cap)


def finish_of(asked: Inputs) -> str:
    """The row of finishes.toml that the part's surface has."""
    usual: str = table("metals")[table("prebake")[asked.metal]["metal"]]["bare_finish"]
    return usual if asked.finish == USUAL else asked.finish


def _section(asked: Inputs, emissivity: str) -> Part:
    metal = table("metals")[table("prebake")[asked.metal]["metal"]]
    return Part(
        metal["density_kg_m3"],
        metal["specific_heat_J_kgK"],
        heat_path_m(asked.shape, asked.thickness_m),
        table("finishes")[finish_of(asked)][emissivity],
    )


def prebake(asked: Inputs, target: Target) -> Prebake | None:
    """All of the sums, or None where the metal never comes near its target."""
    near = target.target_degC - NEAR_TARGET_K
    if asked.oven_degC <= near + 0.01:
        return None
    exposure: float = table("shading")[asked.racked]["exposure"]
    convection = (
        asked.oven_coefficient_W_m2K
        if asked.airflow == "measured"
        else float(table("airflow")[asked.airflow]["convection_W_m2K"])
    )
    still: float = table("airflow")["still"]["convection_W_m2K"]

    def heated(factor: float, emissivity: str) -> Curve:
        around = Surroundings(asked.oven_degC, factor * convection, exposure)
        return temperature_curve(_section(asked, emissivity), around, asked.shop_degC)

    slow = heated(1 - AIRFLOW_DOUBT, "low")
    warm_up = slow.first_at_or_above(near)
    if warm_up is None:
        return None
    oven_min = warm_up + asked.hold_min
    hottest = heated(1 + AIRFLOW_DOUBT, "high").at(oven_min)
    shop = Surroundings(asked.shop_degC, (1 - AIRFLOW_DOUBT) * still, exposure)
    cooling = temperature_curve(_section(asked, "low"), shop, hottest)
    path = heat_path_m(asked.shape, asked.thickness_m)
    return Prebake(
        path_step=step(
            "Heat path: metal volume over heated area",
            "L = t / n",
            "mm",
            t=asked.thickness_m * 1000,
            n=round(asked.thickness_m / path),
        ),
        warm_up_min=warm_up,
        oven_min=oven_min,
        coat_after_min=cooling.first_at_or_below(SPRAY_degC) if hottest > SPRAY_degC else 0.0,
        hottest_end_degC=hottest,
        curve=heated(1.0, "emissivity"),
        slow_curve=slow,
        slow_cooling=cooling,
    )
