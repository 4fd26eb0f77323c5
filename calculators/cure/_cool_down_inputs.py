"""What cool-down asks."""

from __future__ import annotations

from dataclasses import dataclass, replace

from calculators.cure import _cure_plan_inputs as part
from calculators.cure import _oven_fields
from calculators.kit.fields import Choice, Limits, Option, Quantity, ask
from calculators.tables import table

AIRS = {"still": "still", "fan": "shop-fan"}
HANGS = {"no": "open", "yes": "racked"}


@dataclass(frozen=True)
class Inputs:
    metal: str = ask(part.metal())
    shape: str = ask(replace(part.shape(), options=part.shape_options()))
    thickness_m: float = ask(replace(part.thickness(), when=None))
    finish: str = ask(
        Choice(
            label="Surface",
            hint="What the shop's walls see of it",
            options=tuple(
                Option(slug, row["name"], tuple(row["aliases"])) for slug, row in table("finishes").items()
            ),
            default="coated",
            meaning="finish",
        )
    )
    from_degC: float = ask(
        Quantity(
            group="Cooling",
            label="Metal when it comes out",
            hint="By a probe, or the oven setting where you have none",
            units=("degF", "degC"),
            default="395",
            limits=Limits("60 F", "900 F", "a warm shop to a burn-off oven"),
        )
    )
    shop_degC: float = ask(_oven_fields.shop())
    air: str = ask(
        Choice(
            label="Air",
            options=(
                Option("still", "Still shop air"),
                Option("fan", "A shop fan across the part"),
            ),
            default="still",
            few=True,
        )
    )
    racked: str = ask(
        Choice(
            label="Among other hot parts",
            options=(
                Option("no", "No, it hangs free", ("open", "false")),
                Option("yes", "Yes, racked", ("racked", "true")),
            ),
            default="no",
            few=True,
        )
    )
    target_degC: float | None = ask(
        Quantity(
            label="A temperature of your own",
            hint="What a tape, plug or fixture asks for; may be empty",
            units=("degF", "degC"),
            limits=Limits("-40 F", "900 F", "as the metal"),
            may_be_empty=True,
            example="150 F",
        )
    )
