"""The sums of oven-load: heat stored and lost, the pace that the burner allows, and the dip of the air."""

from __future__ import annotations

from dataclasses import dataclass

from calculators.cure._cure_plan_sums import part_of
from calculators.cure._oven_fields import convection_W_m2K
from calculators.cure._oven_load_inputs import Inputs
from calculators.physics.heat import Surroundings, heat_path_m, radiation_W_m2K, temperature_curve
from calculators.physics.oven_dip import Dip, Loaded, dip_of
from calculators.physics.oven_heat import exhaust_kW, heat_limited_min, stored_kJ, wall_kW
from calculators.tables import table

KJ_A_KWH = 3600.0
# A section counts as warm when it is within this of the air: it never quite gets there.
WARM_WITHIN_K = 10 / 1.8


@dataclass(frozen=True, slots=True)
class Heat:
    """Heat in kJ, power in kW, times in min; None where it never comes to that. rise_K: of the fresh air."""

    part_kJ: float
    rack_kJ: float
    shell_kJ: float
    air_kW: float
    wall_kW: float
    input_kW: float
    own_min: float
    warm_up_min: float | None
    dip: Dip | None
    conductance_W_K: float
    rise_K: float

    @property
    def losses_kW(self) -> float:
        return self.air_kW + self.wall_kW

    @property
    def stored_kJ(self) -> float:
        return self.part_kJ + self.rack_kJ + self.shell_kJ


def specific_heat(metal: str) -> tuple[float, ...]:
    return tuple(table("metals")[metal]["specific_heat_J_kgK"])


def heat_of(asked: Inputs) -> Heat:
    """All of the sums."""
    steel, aluminium = specific_heat("carbon-steel"), specific_heat("aluminium")
    start, oven = asked.start_degC, asked.oven_degC
    part_kJ = stored_kJ(asked.steel_kg, steel, start, oven) + stored_kJ(
        asked.aluminium_kg, aluminium, start, oven
    )
    rack_kJ = stored_kJ(asked.rack_kg, steel, start, oven)
    shell_kJ = stored_kJ(asked.shell_kg, steel, asked.oven_begins_degC, oven)
    shop = start if asked.shop_degC is None else asked.shop_degC
    rise = oven - shop
    air, wall = exhaust_kW(asked.exhaust_m3_s, rise), wall_kW(asked.wall_area_m2, asked.wall_u_W_m2K, rise)
    into_kW = asked.oven_power_W / 1000 * asked.efficiency_percent / 100
    convection = convection_W_m2K(asked.airflow, asked.oven_coefficient_W_m2K)
    exposure: float = table("shading")[asked.shading]["exposure"]
    section = part_of(asked.metal, heat_path_m(asked.shape, asked.thickness_m))
    curve = temperature_curve(section, Surroundings(oven, convection, exposure), start)
    own = curve.first_at_or_above(max(start, oven - WARM_WITHIN_K))
    parts_kg = asked.steel_kg + asked.aluminium_kg
    # the rack is taken to draw heat as the parts do, pound for pound
    with_rack = 1 + asked.rack_kg / parts_kg if parts_kg > 0 else 1.0
    conductance = (
        (convection + radiation_W_m2K(section.emissivity * exposure, start, oven)) * asked.area_m2 * with_rack
    )
    return Heat(
        part_kJ=part_kJ,
        rack_kJ=rack_kJ,
        shell_kJ=shell_kJ,
        air_kW=air,
        wall_kW=wall,
        input_kW=into_kW,
        own_min=own or 0.0,
        warm_up_min=heat_limited_min(part_kJ + rack_kJ + shell_kJ, into_kW, air + wall)
        if into_kW > air + wall
        else None,
        dip=dip_of(
            Loaded(
                setting_degC=oven,
                shop_degC=shop,
                air_degC=asked.oven_begins_degC,
                load_degC=start,
                input_W=1000 * into_kW,
                loss_W_K=1000 * (air + wall) / rise,
                load_W_K=conductance,
                load_J_K=1000 * (part_kJ + rack_kJ) / (oven - start),
                oven_J_K=1000 * stored_kJ(asked.shell_kg, steel, start, oven) / (oven - start),
            )
        ),
        conductance_W_K=conductance,
        rise_K=rise,
    )
