"""How long, how much air, how much abrasive? A nozzle by the dealers' tables, a hose by pipe flow, time as a wide guess."""

from __future__ import annotations

from calculators.kit.calculator import Calculator, Out, Vary
from calculators.kit.numbers import rounded_inward, shop_number, whole
from calculators.kit.result import Result, Value
from calculators.prepare._blast_plan_cautions import NOT_TO_USE, cautions
from calculators.prepare._blast_plan_inputs import Inputs
from calculators.prepare._blast_plan_shown import chart, steps
from calculators.prepare._blast_plan_sums import (
    CFM,
    LOSS_EACH_PSI,
    NOZZLES,
    PSI,
    H,
    LOSS_SEEN_TO_psi,
    NODES_psi,
    Plan,
    Span,
    plan,
    verdict_of,
)

VERDICTS = {
    "enough": "Carries it, with the reserve for wear",
    "no-reserve": "Carries a new nozzle, without the reserve for wear",
    "short": "Does not carry it",
}
SUCTION = "the table does not cover it: time a test patch"


def solve(asked: Inputs) -> Result:
    made = plan(asked)
    unusable = asked.abrasive in NOT_TO_USE
    no_time = "none: this abrasive is not for a hand-held nozzle" if unusable else SUCTION
    no_air = "none: the compressor gives no more than the helmet takes"
    verdict = verdict_of(made.margin)
    return Result(
        answers={
            "blast-time": _time(made.blast_time_s, no_time if made.open_share > 0 else no_air),
            "verdict": verdict,
            "air-demand": made.demand_m3_s,
            "air-margin": 100 * made.margin,
            "tank-time": _tank_time(made),
            "open-share": 100 * made.open_share,
            "nozzle-time": _time(made.nozzle_time_s, no_time),
            "abrasive-rate": _span(made.rate_g_s, no_time),
            "abrasive-through": _span(made.through_kg, no_time),
            "abrasive-used": _span(made.used_kg, no_time),
            "worn-nozzle": Value(words="the table does not cover it")
            if made.worn_m3_s is None
            else made.worn_m3_s,
            "worn-pressure": _worn_pressure(asked, made),
            "wear-power": Value(words="the table does not cover it")
            if made.wear_kW is None
            else made.wear_kW,
            "wear-cost": _wear_cost(asked, made),
            "hose-loss": _hose_loss(asked, made),
            "hose-work-lost": _work_lost(made),
            "air-upper": made.upper_m3_s,
        },
        headline=_headline(asked, made, verdict),
        cautions=cautions(asked, made),
        steps=steps(asked, made),
        charts=(chart(asked, made),),
    )


def _span(span: Span | None, words: str) -> Value:
    return Value(words=words) if span is None else Value(span.middle, span.low, span.high)


def _time(span: Span | None, words: str) -> Value:
    if span is None:
        return Value(words=words)
    low, high = _clock(span.low), _clock(span.high)
    ends = low if low == high else f"{low} to {high}"
    return Value(span.middle, span.low, span.high, f"{_clock(span.middle)}, {ends}")


def _clock(seconds: float) -> str:
    minutes = seconds / 60
    if minutes < 1:
        return "under 1 min"
    if minutes < 100:
        return f"{whole(minutes)} min"
    return f"{shop_number(minutes / 60, 2)} h"


def _headline(asked: Inputs, made: Plan, verdict: str) -> str:
    air = f"air {shop_number(made.demand_m3_s / CFM)} cfm ({shop_number(made.demand_m3_s * 60)} m3/min)"
    if asked.abrasive == "silica-sand":
        return "Do not blast with sand"
    if asked.abrasive in NOT_TO_USE:
        return "Do not blast with this abrasive by hand"
    if made.open_share <= 0:
        return f"No air left for the nozzle; {air}"
    if made.blast_time_s is None:
        return f"No time without a test patch; {air}. The compressor {_first_lower(VERDICTS[verdict])}"
    low, high = _clock(made.blast_time_s.low), _clock(made.blast_time_s.high)
    return f"{low} to {high} of blasting, {air}. The compressor {_first_lower(VERDICTS[verdict])}"


def _first_lower(words: str) -> str:
    return words[0].lower() + words[1:]


def _tank_time(made: Plan) -> Value:
    if made.tank_time_s is None:
        return Value(words="no need: the compressor keeps up")
    if made.tank_time_s <= 0:
        return Value(words="none: no tank, or its pressure is no higher than the nozzle's")
    carried = f"{rounded_inward(made.tank_time_s / 60, False, 2)} min"  # down: it bridges a lack
    return Value(made.tank_time_s, words="under 1 min" if made.tank_time_s < 60 else carried)


def _worn_pressure(asked: Inputs, made: Plan) -> Value:
    if made.worn_m3_s is None:
        return Value(words="the table does not cover it")
    if made.worn_pressure_psi is None:
        low = shop_number(min(NODES_psi[0], asked.pressure_kPa / PSI))
        return Value(words=f"under {low} psi: too little to work with")
    return Value(made.worn_pressure_psi * PSI)


def _wear_cost(asked: Inputs, made: Plan) -> Value:
    if asked.energy_price_money_kWh is None:
        return Value(words="no price given")
    if made.wear_kW is None or made.nozzle_time_s is None:
        return Value(words="no time to reckon with")
    cost = made.nozzle_time_s.times(made.wear_kW / H * asked.energy_price_money_kWh)
    return Value(cost.middle, cost.low, cost.high)


def _hose_loss(asked: Inputs, made: Plan) -> Value:
    if made.hose_kPa is None or made.hose_kPa > asked.pressure_kPa:
        return Value(words="the hose is too thin: it cannot carry this air")
    return Value(made.hose_kPa)


def _work_lost(made: Plan) -> Value:
    if made.hose_kPa is None:
        return Value(words="all of it")
    lost_psi = made.hose_kPa / PSI
    if lost_psi > LOSS_SEEN_TO_psi:
        return Value(words="more than 17 %, past the end of the sheet: take a wider hose")
    return Value(100 * LOSS_EACH_PSI * lost_psi)


CALCULATOR = Calculator(
    title="Blast plan",
    question="How long will blasting take, and how much air and abrasive?",
    inputs=Inputs,
    solve=solve,
    answers=(
        Out(
            key="blast-time",
            label="Blast time",
            meaning="On the clock, as wide as so little knowledge makes it. Time one square foot, and type your own rate in.",
            main=True,
            quantity="blast-time",
            unit="s",
            shown=("h",),
            digits=2,
        ),
        Out(
            key="verdict",
            label="Compressor",
            meaning="If it does not carry the nozzle, take a smaller one: a bigger tank only puts off the stop.",
            options=VERDICTS,
            beside=True,
        ),
        Out(
            key="air-demand",
            label="Air demand",
            meaning="Free air for nozzle and helmet. Compare it with what the compressor delivers, not with its motor.",
            unit="m3_s",
            shown=("cfm", "m3_min"),
            beside=True,
        ),
        Out(
            key="air-margin",
            label="Compressor, of the demand",
            meaning="150 % leaves half again for wear and leaks. Under 100 % the blast stops and starts.",
            unit="percent",
            shown=("percent",),
            digits=2,
        ),
        Out(
            key="tank-time",
            label="The tank carries it for",
            meaning="From full down to the pressure at the nozzle. Then the blast waits for the compressor.",
            unit="s",
            shown=("min",),
            digits=2,
        ),
        Out(
            key="open-share",
            label="Nozzle can be open",
            meaning="Share of the time that the compressor can feed it, the helmet first. The blast time counts it.",
            unit="percent",
            shown=("percent",),
            digits=2,
        ),
        Out(
            key="nozzle-time",
            label="Time with the nozzle open",
            meaning="What the air, the abrasive and your ears have to bear.",
            unit="s",
            shown=("min",),
            digits=2,
        ),
        Out(
            key="abrasive-rate",
            label="Abrasive through the nozzle",
            meaning="In an hour of open nozzle. A metering valve wide open gives more and cleans no better.",
            unit="g_s",
            shown=("lb_h", "kg_h"),
            digits=2,
        ),
        Out(
            key="abrasive-through",
            label="Abrasive for the job, each pass counted",
            meaning="What goes through the machine: fill and empty it for this much.",
            unit="kg",
            shown=("lb", "kg"),
            digits=2,
        ),
        Out(
            key="abrasive-used",
            label="Abrasive used up",
            meaning="What to buy and to get rid of. After lead or chromate paint none of it is used again without a test.",
            quantity="abrasive-used",
            unit="kg",
            shown=("lb", "kg"),
            digits=2,
        ),
        Out(
            key="worn-nozzle",
            label="Air demand, nozzle worn one size",
            meaning="The same pressure then takes this much. Change the nozzle by then.",
            unit="m3_s",
            shown=("cfm", "m3_min"),
        ),
        Out(
            key="worn-pressure",
            label="Pressure left, nozzle worn one size",
            meaning="What this compressor holds on it. Each psi under your own is about 1.5 % of the work.",
            unit="kPa",
            shown=("psi", "bar"),
        ),
        Out(
            key="wear-power",
            label="Power that one size of wear takes",
            meaning="At the compressor, while the nozzle is open and the compressor can follow. A nozzle costs less.",
            unit="kW",
            shown=("kW",),
            digits=2,
        ),
        Out(
            key="wear-cost",
            label="One size of wear costs",
            meaning="On this job, in the money that you typed the price in, for power alone.",
            unit="money",
            shown=("money",),
            digits=2,
        ),
        Out(
            key="hose-loss",
            label="Lost in the air hose",
            meaning="Set the regulator this much over the pressure wanted at the nozzle. Couplings and the blast hose lose more.",
            unit="kPa",
            shown=("psi", "bar"),
            digits=2,
        ),
        Out(
            key="hose-work-lost",
            label="Work lost if nobody makes it up",
            meaning="About 1.5 % for each psi. A hose one size wider costs less than the hours.",
            unit="percent",
            shown=("percent",),
            digits=2,
        ),
        Out(
            key="air-upper",
            label="Most air this bore can pass",
            meaning="An open hole without abrasive in it: no compressor for this nozzle needs to be larger, wear apart.",
            unit="m3_s",
            shown=("cfm", "m3_min"),
        ),
    ),
    sources=(
        "nozzle-tables",
        "moss-1906",
        "orifice-table",
        "pipe-flow-haaland",
        "hose-loss-sheet",
        "abrasive-dealer-tables",
        "trade-pages",
        "osha-1910-94",
        "osha-1910-134",
        "osha-1910-244",
        "osha-1910-95",
        "osha-1910-1053",
        "nfpa-dust",
        "niosh-42cfr84",
        "common-practice",
        "shop-estimate",
    ),
    version=1,
    reviewed="2026-11-25",
    keywords=(
        "sandblasting",
        "cfm",
        "compressor size",
        "nozzle size",
        "how much air",
        "media consumption",
        "blast pot",
        "siphon blaster",
        "blasting time",
        "pressure drop in hose",
    ),
    limits=(
        "The time is a guess: of the figures behind it only one, 5 lb on a square foot, was seen printed. Your own test patch is "
        "worth more than all of it.",
        "The nozzle table is for pressure pots, abrasive of 100 lb/ft3 and a long nozzle. It was read on dealers' sheets.",
        "Heavier abrasive is credited with no more speed, and how many times it can be used is habit.",
        "The hose is clean air in a straight hose. Couplings, bends, a half-open valve and the blast hose itself lose more.",
        "It says nothing of whether the part may be blasted: ask blast-or-not first.",
    ),
    vary=Vary("nozzle", NOZZLES, ("blast-time", "air-demand", "air-margin", "abrasive-used")),
    default_cautions=(("caution", ""), ("caution", "")),
)
