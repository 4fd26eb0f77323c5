"""The working of an oven load, line by line."""

from __future__ import annotations

from calculators.cure._oven_load_inputs import Inputs
from calculators.cure._oven_load_sums import KJ_A_KWH, Heat
from calculators.kit.steps import Step, step
from calculators.physics.heat import heat_path_m


def steps(asked: Inputs, heat: Heat, total: float) -> tuple[Step, ...]:
    """The lines of working. total: kWh of heat for the load."""
    mass = asked.steel_kg + asked.aluminium_kg
    lines = []
    if mass > 0:
        lines.append(
            step(
                "Heat that the parts take up, at their mean specific heat on the way",
                "Qp = m * c * dT / 3600",
                "kWh",
                m=mass,
                c=heat.part_kJ / mass / (asked.oven_degC - asked.start_degC),
                dT=asked.oven_degC - asked.start_degC,
            )
        )
    lines += [
        step(
            "Exhaust, as cool air at 1.2 kg/m3 and 1.01 kJ/kgK",
            "Pa = 1.2 * 1.01 * V * dT",
            "kW",
            V=asked.exhaust_m3_s,
            dT=heat.rise_K,
        ),
        step(
            "Walls",
            "Pw = U * A * dT / 1000",
            "kW",
            U=asked.wall_u_W_m2K,
            A=asked.wall_area_m2,
            dT=heat.rise_K,
        ),
        step(
            "Heat that comes in",
            "Pin = P * eff / 100",
            "kW",
            P=asked.oven_power_W / 1000,
            eff=asked.efficiency_percent,
        ),
    ]
    if heat.warm_up_min is not None:
        lines.append(
            step(
                "Warm-up that the heat allows: parts, racks and the oven's own steel",
                "t = Q * 60 / (Pin - Pa - Pw)",
                "min",
                Q=heat.stored_kJ / KJ_A_KWH,
                Pin=heat.input_kW,
                Pa=heat.air_kW,
                Pw=heat.wall_kW,
            )
        )
    lines += [
        step(
            "Heat path of the heaviest section",
            "L = t / n",
            "mm",
            t=asked.thickness_m * 1000,
            n=round(asked.thickness_m / heat_path_m(asked.shape, asked.thickness_m)),
        ),
        step(
            "Draw of the whole load on the air",
            "G = h_all * A * rack",
            "W/K",
            h_all=heat.conductance_W_K / (asked.area_m2 * _with_rack(asked)) if asked.area_m2 > 0 else 0.0,
            A=asked.area_m2,
            rack=_with_rack(asked),
        ),
        step(
            "Energy billed",
            "E = Q / (eff / 100)",
            "kWh",
            Q=total,
            eff=asked.efficiency_percent,
        ),
    ]
    return tuple(lines)


def _with_rack(asked: Inputs) -> float:
    parts = asked.steel_kg + asked.aluminium_kg
    return 1 + asked.rack_kg / parts if parts > 0 else 1.0
