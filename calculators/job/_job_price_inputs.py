"""What the price of a job is worked out from. No currency: a number is in whatever the shop is paid in."""

from __future__ import annotations

from dataclasses import dataclass

from calculators.kit.fields import Limits, Quantity, Whole, ask


def _minutes(label: str, default: str, *, group: str = "", hint: str = "", meaning: str = "") -> Quantity:
    return Quantity(
        group=group,
        label=label,
        hint=hint,
        units=("min", "h"),
        default=default,
        limits=Limits("0 min", "100000 min", "time at work on one job"),
        meaning=meaning,
    )


def _money(label: str, default: str, *, group: str = "", hint: str = "") -> Quantity:
    return Quantity(
        group=group,
        label=label,
        hint=hint,
        units=("money",),
        default=default,
        limits=Limits("0", "100000000", "money, in your own"),
    )


def _share(label: str, default: str, high: str, *, hint: str = "") -> Quantity:
    return Quantity(
        label=label,
        hint=hint,
        units=("percent",),
        default=default,
        limits=Limits("0 %", high, "a share"),
    )


@dataclass(frozen=True)
class Inputs:
    parts: int = ask(Whole(group="The job", label="Parts", default="4", low=1, high=100_000, meaning="parts"))
    strip_time_min: float = ask(
        _minutes(
            "Stripping",
            "60",
            group="Time at work, for the whole job",
            hint="Old coating off, by hand or by tank",
        )
    )
    blast_time_min: float = ask(_minutes("Blasting", "75", meaning="blast-time"))
    clean_time_min: float = ask(_minutes("Cleaning", "30", hint="Degreasing before, dust off after"))
    mask_time_min: float = ask(_minutes("Masking", "20"))
    hang_time_min: float = ask(_minutes("Hanging", "20"))
    prebake_time_min: float = ask(
        _minutes("Bake before powder", "0", hint="Hands on it, not the oven's own time")
    )
    spray_time_min: float = ask(_minutes("Spraying", "25", meaning="spray-time"))
    labour_rate_money_h: float = ask(
        Quantity(
            label="Labour",
            hint="What an hour costs you, wage and all that goes with it",
            units=("money_h",),
            default="30",
            limits=Limits("0 an hour", "100000 an hour", "money an hour"),
        )
    )
    powder_kg: float = ask(
        Quantity(
            group="What is used up",
            label="Powder",
            units=("lb", "kg", "oz", "g"),
            default="1.5",
            limits=Limits("0 lb", "20000 lb", "none to a hall of railings"),
            meaning="powder",
        )
    )
    powder_price_money_kg: float = ask(
        Quantity(
            label="Powder price",
            units=("money_lb", "money_kg"),
            default="9",
            limits=Limits("0 a lb", "100000 a lb", "money a pound"),
        )
    )
    abrasive_kg: float = ask(
        Quantity(
            label="Abrasive used up",
            hint="What is not used again",
            units=("lb", "kg"),
            default="40",
            limits=Limits("0 lb", "200000 lb", "none to a bridge"),
            meaning="abrasive-used",
        )
    )
    abrasive_price_money_kg: float = ask(
        Quantity(
            label="Abrasive price",
            units=("money_lb", "money_kg"),
            default="0.6",
            limits=Limits("0 a lb", "100000 a lb", "money a pound"),
        )
    )
    consumables_money: float = ask(_money("Plugs, tape and hooks", "8"))
    oven_time_min: float = ask(
        _minutes(
            "Time in the oven",
            "50",
            group="The oven",
            hint="All bakes of this job together",
            meaning="oven-time",
        )
    )
    oven_share_ratio: float = ask(
        Quantity(
            label="Share of the load",
            hint="1 when it bakes alone; 0.5 or 50 % when it fills half",
            units=("ratio", "percent"),
            default="1",
            limits=Limits("0", "1", "a share of one load"),
            meaning="oven-share",
            example="0.5",
        )
    )
    oven_running_cost_money_h: float = ask(
        Quantity(
            label="Oven's running cost",
            hint="Fuel and power for an hour",
            units=("money_h",),
            default="12",
            limits=Limits("0 an hour", "100000 an hour", "money an hour"),
        )
    )
    colour_changes: int = ask(
        Whole(group="What comes on top", label="Colour changes", default="1", low=0, high=1000)
    )
    colour_change_time_min: float = ask(_minutes("Time for one", "15"))
    overhead_percent: float = ask(
        _share(
            "Overhead", "25", "1000 %", hint="Rent, insurance, quoting and sweeping, on top of all the above"
        )
    )
    rework_percent: float = ask(
        _share("Rework", "5", "95 %", hint="Share of jobs that you do again, at your cost")
    )
    rework_factor_ratio: float = ask(
        Quantity(
            label="Redone, it costs",
            hint="Times a first one; stripping makes it 2 to 3",
            units=("ratio",),
            default="2.5",
            limits=Limits("0", "20", "free to twenty times"),
        )
    )
    margin_percent: float = ask(
        _share("Margin", "30", "95 %", hint="Of the price, not of the cost: 30 % keeps 30 of every 100")
    )
    minimum_charge_money: float = ask(
        _money("Minimum charge", "100", hint="Less than this you do not start for")
    )
