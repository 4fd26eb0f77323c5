"""What a reader of an oven load must not miss."""

from __future__ import annotations

from calculators.cure._oven_load_inputs import Inputs
from calculators.cure._oven_load_sums import Heat
from calculators.kit.numbers import shop_number, whole
from calculators.kit.result import Caution
from calculators.tables import table


def cautions(asked: Inputs, heat: Heat, fits: bool) -> tuple[Caution, ...]:
    """Every caution that this load deserves. fits: whether the air is back in a time that a cure plan takes."""
    found = []
    if heat.warm_up_min is None:
        found.append(
            Caution(
                "stop",
                f"Exhaust and walls take {shop_number(heat.losses_kW, 2)} kW and only {shop_number(heat.input_kW, 2)} kW "
                "come in: the oven cannot hold this setting. Do not cut the exhaust. More heat, better walls, or a powder "
                "that cures cooler.",
                "oven-power",
            )
        )
    elif not fits:
        found.append(
            Caution(
                "caution",
                "The air is not back at its setting within two hours. Bake less at a time.",
                "oven-power",
            )
        )
    elif heat.warm_up_min > heat.own_min:
        found.append(
            Caution(
                "caution",
                "The heat input, not the metal, sets the pace. A cure plan that leaves out the dip pulls too early: take the "
                "dip and its recovery along, or log the bake.",
                "oven-power",
            )
        )
    if heat.warm_up_min is not None and asked.bake_time_min < heat.warm_up_min:
        found.append(
            Caution(
                "caution",
                f"The load is not even warm by {whole(asked.bake_time_min)} min. Plan the bake again with the dip.",
                "bake-time",
            )
        )
    highest = table("fuels")[asked.fuel]["highest_percent"]
    if asked.efficiency_percent > highest:
        found.append(
            Caution(
                "caution",
                f"Of the heat that is billed for this fuel at most about {highest} % can come into the oven: the rest leaves as "
                "steam.",
                "efficiency",
                "eia-fuels",
            )
        )
    if asked.metal == "aluminium" and asked.aluminium_kg == 0 and asked.steel_kg > 0:
        found.append(
            Caution(
                "caution",
                "The heaviest section is aluminium, and no aluminium is entered. If the pounds under steel are aluminium, move "
                "them: they hold about twice the heat.",
                "aluminium",
            )
        )
    if asked.steel_kg + asked.aluminium_kg == 0:
        found.append(Caution("note", "No parts are entered: this is the oven with its racks alone.", "steel"))
    elif asked.area_m2 == 0:
        found.append(
            Caution(
                "caution",
                "No surface is entered, so the dip leaves the load out and is too small. Enter the surface that the air reaches.",
                "area",
            )
        )
    return tuple(found)
