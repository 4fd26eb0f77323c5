"""What does this job cost me, and what do I charge? Time, material, oven and rework added up, then the margin."""

from __future__ import annotations

from math import ceil, isfinite

from calculators.job._job_price_inputs import Inputs
from calculators.kit.calculator import Calculator, Out, Vary
from calculators.kit.chart import Axis, Bar, Chart, Mark, Series
from calculators.kit.numbers import money, shop_number
from calculators.kit.result import Caution, Result, Table, Value
from calculators.kit.steps import Step, step

WORK = ("strip", "blast", "clean", "mask", "hang", "prebake", "spray")


def solve(asked: Inputs) -> Result:
    lines = _lines(asked)
    direct = sum(lines.values())
    rework = asked.rework_percent / 100
    redone = _redone(rework, asked.rework_factor_ratio)
    with_overhead = direct * (1 + asked.overhead_percent / 100)
    cost = with_overhead * redone
    margin = asked.margin_percent / 100
    worked_out = cost / (1 - margin)
    price = max(worked_out, asked.minimum_charge_money)
    lines |= {"Overhead": with_overhead - direct, "Rework": cost - with_overhead, "Profit": price - cost}
    cautions = []
    if price > worked_out:
        cautions.append(
            Caution(
                "note", "The minimum charge rules: the job by itself would come to less.", "minimum-charge"
            )
        )
    if direct == 0:
        cautions.append(Caution("caution", "Nothing in it costs anything. Enter the times.", "labour-rate"))
    return Result(
        answers={
            "price": price,
            "price-per-part": price / asked.parts,
            "cost": cost,
            "profit": price - cost,
            "break-even-parts": _break_even(asked, worked_out / asked.parts),
            "rework-cost": cost - with_overhead,
            "colour-change-cost": lines["Colour changes"] * redone * (1 + asked.overhead_percent / 100),
        },
        cautions=tuple(cautions),
        steps=_steps(asked, lines, direct, with_overhead, cost, redone),
        charts=(_bars(lines), _batch(asked, worked_out / asked.parts)),
        tables=(_table(lines, price),),
    )


def _redone(rework: float, factor: float) -> float:
    """How many times over all jobs are paid for: each redo may fail again, 1 + f r (1 + r + r2 + ...)."""
    return 1 + factor * rework / (1 - rework)


def _lines(asked: Inputs) -> dict[str, float]:
    minutes = sum(getattr(asked, f"{name}_time_min") for name in WORK)
    hour = asked.labour_rate_money_h / 60
    return {
        "Time at work": minutes * hour,
        "Colour changes": asked.colour_changes * asked.colour_change_time_min * hour,
        "Powder": asked.powder_kg * asked.powder_price_money_kg,
        "Abrasive": asked.abrasive_kg * asked.abrasive_price_money_kg,
        "Plugs, tape, hooks": asked.consumables_money,
        "Oven": asked.oven_time_min * asked.oven_share_ratio * asked.oven_running_cost_money_h / 60,
    }


def _break_even(asked: Inputs, each: float) -> Value:
    """The batch from which the minimum charge no longer rules, if all of it grew with the number of parts."""
    if each <= 0 or not isfinite(asked.minimum_charge_money / each):
        return Value(words="none: a part costs nothing")
    count = max(1, ceil(asked.minimum_charge_money / each - 1e-9))
    return Value(float(count), words=f"{count:,} part{'' if count == 1 else 's'}")


def _steps(
    asked: Inputs, lines: dict[str, float], direct: float, with_overhead: float, cost: float, redone: float
) -> tuple[Step, ...]:
    return (
        step(
            "Time at work",
            "work = minutes / 60 * rate",
            minutes=sum(getattr(asked, f"{name}_time_min") for name in WORK),
            rate=asked.labour_rate_money_h,
        ),
        step("With overhead", "c = direct * (1 + o / 100)", direct=direct, o=asked.overhead_percent),
        step(
            "Jobs paid for, for each one sold: a redo can fail too",
            "k = 1 + f * r / (1 - r)",
            f=asked.rework_factor_ratio,
            r=asked.rework_percent / 100,
        ),
        step("Cost", "cost = c * k", c=with_overhead, k=redone),
        step(
            "Price, margin taken of the price", "p = cost / (1 - m)", cost=cost, m=asked.margin_percent / 100
        ),
    )


def _table(lines: dict[str, float], price: float) -> Table:
    rows = tuple(
        (name, money(amount), f"{shop_number(100 * amount / price, 2)}%" if price else "")
        for name, amount in sorted(lines.items(), key=lambda pair: -pair[1])
    )
    return Table("Where the money goes", ("Line", "Money", "Of the price"), rows)


def _bars(lines: dict[str, float]) -> Chart:
    bars, running = [], 0.0
    for name, amount in lines.items():
        bars.append(
            Bar(name, running, running + amount, "good" if name == "Profit" else "plain", money(amount))
        )
        running += amount
    return Chart(
        title="Where the money goes, line upon line",
        says="Each bar begins where the one before it ends; the last is what you keep.",
        x=Axis("money, added up", 0),
        y=Axis("Goes to", names=tuple(lines)),
        bars=tuple(bars),
    )


def _batch(asked: Inputs, each: float) -> Chart:
    top = max(2 * asked.parts, ceil(2 * asked.minimum_charge_money / each) if each > 0 else 10, 2)
    top = min(top, 200_000)
    counts = tuple(max(1.0, top * place / 40) for place in range(41))
    return Chart(
        title="Price of a part against the size of the batch",
        says="Below the break-even batch the minimum charge is shared by too few parts.",
        x=Axis("parts in the batch", 0, float(top)),
        y=Axis("price of a part", 0),
        series=(
            Series(
                "price of a part",
                counts,
                tuple(max(each, asked.minimum_charge_money / one) for one in counts),
            ),
        ),
        marks=(Mark("this job", float(asked.parts), max(each, asked.minimum_charge_money / asked.parts)),),
    )


CALCULATOR = Calculator(
    title="Job price",
    question="What does this job cost me, and what do I charge?",
    inputs=Inputs,
    solve=solve,
    answers=(
        Out(
            key="price",
            label="Charge",
            meaning="For the whole job, before tax. Quote it with what is not in it: welding, collection, a second colour.",
            main=True,
            unit="money",
        ),
        Out(
            key="price-per-part",
            label="For each part",
            meaning="Only for this batch: a single part would cost more.",
            unit="money",
            beside=True,
        ),
        Out(
            key="cost",
            label="It costs you",
            meaning="Below this you pay the customer. It is not a price.",
            unit="money",
        ),
        Out(
            key="profit",
            label="You keep",
            meaning="What is left for tools, slow weeks and yourself, if you paid yourself no more than the labour above.",
            unit="money",
        ),
        Out(
            key="break-even-parts",
            label="Minimum charge no longer rules from",
            meaning="A smaller batch is charged the minimum; offer the customer to wait and share a load.",
            digits=0,
        ),
        Out(
            key="rework-cost",
            label="Rework costs",
            meaning="In every job, good ones too. A better ground, a cleaner rack or a test panel is paid out of this.",
            unit="money",
        ),
        Out(
            key="colour-change-cost",
            label="Colour changes cost",
            meaning="Two jobs of one colour on one day save it.",
            unit="money",
        ),
    ),
    sources=("price-arithmetic", "common-practice", "shop-estimate"),
    version=1,
    reviewed="2026-11-25",
    keywords=(
        "quote",
        "estimate",
        "how much to charge",
        "price per part",
        "shop rate",
        "profit margin",
        "minimum charge",
    ),
    limits=(
        "It knows no market: what others charge, and what the customer would pay, are yours to find out.",
        "Tax, collection, packing and money that comes late are not in it.",
        "All of it grows in step with the batch. Real set-up time does not, so a small batch costs more than it says.",
    ),
    vary=Vary("margin", ("0 %", "15 %", "30 %", "45 %"), ("price", "price-per-part", "profit")),
)
