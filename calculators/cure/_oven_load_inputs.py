"""What oven-load asks."""

from __future__ import annotations

from dataclasses import dataclass, replace

from calculators.cure import _cure_plan_inputs as part
from calculators.cure import _oven_fields
from calculators.kit.fields import Choice, Limits, Option, Quantity, When, ask
from calculators.kit.result import Clash
from calculators.tables import table

_MASS = ("lb", "kg")
_ANY_LOAD = Limits("0 lb", "100000 lb", "nothing to a truck frame")


@dataclass(frozen=True)
class Inputs:
    steel_kg: float = ask(
        Quantity(
            group="The load",
            label="Steel and iron in the load",
            hint="All parts together, stainless and zinc as well",
            units=_MASS,
            default="233",
            limits=_ANY_LOAD,
            meaning="part-mass",
        )
    )
    aluminium_kg: float = ask(
        Quantity(
            label="Aluminium in the load",
            hint="A pound of it holds about twice the heat of a pound of steel",
            units=_MASS,
            default="0",
            limits=_ANY_LOAD,
        )
    )
    rack_kg: float = ask(
        Quantity(
            label="Racks, hooks and cart",
            hint="All steel that goes in cold with the parts",
            units=_MASS,
            default="60",
            limits=_ANY_LOAD,
        )
    )
    area_m2: float = ask(
        Quantity(
            label="Surface of the load",
            hint="Every face that the air reaches; it sets how fast the load draws heat",
            units=("ft2", "m2", "in2"),
            default="41.2",
            limits=Limits("0 ft2", "100000 ft2", "nothing to a hall of railings"),
            meaning="coated-area",
        )
    )
    metal: str = ask(replace(part.metal(), group="", label="Metal of the heaviest section"))
    shape: str = ask(replace(part.shape(), options=part.shape_options()))
    thickness_m: float = ask(
        replace(part.thickness(), hint="It sets how long the metal itself takes", when=None)
    )
    start_degC: float = ask(_oven_fields.start())
    shop_degC: float | None = ask(
        replace(
            _oven_fields.shop(),
            hint="Where the fresh air comes from; empty if it is as the load",
            default="",
            may_be_empty=True,
            example="70 F",
        )
    )
    oven_degC: float = ask(part.oven())
    oven_begins_degC: float = ask(
        Quantity(
            label="Oven's inside when the door closes",
            hint="What its air reads then; as cold as the load for the first load of a day",
            units=("degF", "degC"),
            default="300",
            limits=Limits("-40 F", "600 F", "a yard in winter to a hot oven"),
        )
    )
    shell_kg: float = ask(
        Quantity(
            label="The oven's own steel that warms",
            hint="Inner skin, floor, ducts and fan; not the outer skin",
            units=_MASS,
            default="400",
            limits=_ANY_LOAD,
        )
    )
    airflow: str = ask(_oven_fields.airflow())
    oven_coefficient_W_m2K: float = ask(_oven_fields.oven_coefficient())
    shading: str = ask(_oven_fields.shading())
    exhaust_m3_s: float = ask(
        Quantity(
            label="Exhaust",
            hint="Fresh air that leaves by the stack, counted cool",
            units=("cfm", "m3_h", "m3_s", "L_s"),
            default="100",
            limits=Limits("0 cfm", "100000 cfm", "a closed box to a paint line's oven"),
            meaning="exhaust-flow",
        )
    )
    wall_area_m2: float = ask(
        Quantity(
            label="Walls, roof, floor and door",
            hint="Their area, together",
            units=("ft2", "m2"),
            default="384",
            limits=Limits("0 ft2", "100000 ft2", "a bench oven to a hall of an oven"),
        )
    )
    wall_u_W_m2K: float = ask(
        Quantity(
            label="U-value of the walls",
            hint="4 in of mineral wool about 0.5 W/m2K; gaps and the door's edge make it more",
            units=("W_m2K", "Btu_hft2F"),
            default="0.5",
            limits=Limits("0 W/m2K", "20 W/m2K", "perfect to bare sheet"),
        )
    )
    oven_power_W: float = ask(
        Quantity(
            label="Heat input of the oven",
            hint="On its plate: heaters together, or the burner's rating",
            units=("kW", "Btu_h", "W"),
            default="30",
            limits=Limits("0.1 kW", "20000 kW", "a bench oven to a paint line's oven"),
            example="30 kW",
        )
    )
    bake_time_min: float = ask(
        Quantity(
            label="Time in the oven",
            hint="From the closed door to the pull, by the cure plan",
            units=("min", "h", "s"),
            default="50",
            limits=Limits("1 min", "1440 min", "a minute to a day"),
            meaning="oven-time",
        )
    )
    fuel: str = ask(
        Choice(
            group="What it costs",
            label="Heated by",
            options=tuple(Option(slug, row["name"]) for slug, row in table("fuels").items()),
            default="electric",
        )
    )
    efficiency_percent: float = ask(
        Quantity(
            label="Share of that heat that comes into the oven",
            hint="Electric 100 %; gas under 90 %, an indirect burner about 70 %",
            units=("percent",),
            default="100",
            limits=Limits("5 %", "100 %", "a share of what is billed"),
        )
    )
    price_money_kWh: float = ask(
        Quantity(
            label="Price of energy",
            hint="From the bill, all of it; for gas by the therm",
            units=("money_kWh", "money_therm", "money_MJ"),
            default="0.15",
            limits=Limits("0 a kWh", "100 a kWh", "free to absurd"),
            example="0.15",
        )
    )
    gallon_price_money_gal: float | None = ask(
        Quantity(
            label="Price of a gallon of propane",
            hint="Used in place of the price above; may be empty",
            units=("money_gal", "money_L"),
            limits=Limits("0 a gal", "1000 a gal", "free to absurd"),
            when=When("fuel", ("propane",)),
            may_be_empty=True,
            example="2.50",
        )
    )


def checked(asked: Inputs) -> None:
    """Raises Clash where inputs do not fit each other."""
    clashes = []
    if asked.start_degC >= asked.oven_degC:
        clashes.append(("start", "Metal when it goes in must be cooler than oven setting"))
    if asked.shop_degC is not None and asked.shop_degC >= asked.oven_degC:
        clashes.append(("shop", "Shop temperature must be cooler than oven setting"))
    if asked.oven_begins_degC > asked.oven_degC:
        clashes.append(
            ("oven-begins", "Oven's inside when the door closes must be no hotter than oven setting")
        )
    if clashes:
        raise Clash(*clashes)
