"""Does the booth move enough air? Three questions apart: is overspray caught, can the exhaust burn, what is breathed."""

from __future__ import annotations

from math import isinf

from calculators.kit.calculator import Calculator, Out, Vary
from calculators.kit.numbers import shop_number
from calculators.kit.result import Caution, Given, Result, Table, Value
from calculators.kit.steps import Step, step
from calculators.safety._booth_cautions import cautions
from calculators.safety._booth_charts import charts
from calculators.safety._booth_inputs import Inputs
from calculators.safety._booth_sums import (
    CFM,
    FT_MIN,
    SHARE_LIMIT,
    Air,
    air_of,
    dust_limits,
    ft_min,
    said,
    times_the_limit,
    verdict_of,
)

FILLS_UP = "no figure: the air stands still and the booth fills up"


def solve(asked: Inputs) -> Result:
    air = air_of(asked)
    verdict = verdict_of(asked, air)
    return Result(
        answers=_answers(asked, air, verdict),
        cautions=tuple(cautions(asked, air, verdict)),
        steps=_steps(asked, air),
        tables=(_table(asked, air),),
        charts=charts(asked, air),
        headline=_headline(asked, air, verdict),
    )


def _headline(asked: Inputs, air: Air, verdict: str) -> str:
    if isinf(air.cloud_g_m3):
        return "No air: the booth fills up with powder. Stop spraying"
    share = shop_number(100 * air.share(asked.explosible_g_m3), 2)
    share = f"just over {share}" if share == "50" else share
    slow, least = ft_min(air.mean_m_s), ft_min(air.least_m_s)
    slow = f"just under {least}" if slow == least else slow
    return {
        "enough": f"Enough to catch overspray: {ft_min(air.mean_m_s)}. Breathing is another matter",
        "too-slow": f"Too slow: {slow}, where {least} are asked",
        "too-rich": f"Too rich: the exhaust is at {share} % of a cloud that burns. Stop spraying",
        "too-fast": f"Too fast to coat well: {ft_min(air.mean_m_s)}",
    }[verdict]


def _finite(number: float) -> Value:
    return Value(words=FILLS_UP) if isinf(number) else Value(number)


def _answers(asked: Inputs, air: Air, verdict: str) -> dict[str, Given]:
    many = len(asked.velocity_readings_m_s) > 1
    return {
        "verdict": verdict,
        "face-velocity": Value(
            air.mean_m_s, air.low_m_s if many else None, air.high_m_s if many else None
        ),
        "cloud": _finite(air.cloud_g_m3),
        "share": _finite(100 * air.share(asked.explosible_g_m3)),
        "breathing-cloud": _finite(air.breathed_g_m3),
        "over-dust-limit": _finite(times_the_limit(asked, air)),
        "air-needed": air.needed_m3_s,
        "make-up-air": air.flow_m3_s,
        "lowest": air.low_m_s,
    }  # fmt: skip


def _table(asked: Inputs, air: Air) -> Table:
    rows = [
        (
            "Is overspray caught?",
            f"{ft_min(air.mean_m_s)} into the opening",
            f"at least {ft_min(air.least_m_s)}",
            "yes" if air.mean_m_s >= air.least_m_s * (1 - 1e-9) else "no",
        ),
        (
            "Can the exhaust burn?",
            f"{said(air.cloud_g_m3)} g/m3 on average",
            f"at most {shop_number(SHARE_LIMIT * asked.explosible_g_m3)} g/m3",
            "no" if air.share(asked.explosible_g_m3) <= SHARE_LIMIT * (1 + 1e-12) else "yes",
        ),
    ]
    for name, limit, share in dust_limits(asked):
        breathed = 1000 * air.breathed_g_m3 * share
        rows.append(
            (
                f"May this air be breathed? ({name})",
                f"{said(breathed)} mg/m3",
                f"at most {shop_number(limit)} mg/m3",
                "yes" if breathed <= limit else "no: stand upwind, wear a respirator, measure",
            )
        )
    return Table("Three questions, three limits", ("Question", "This booth", "Limit", "Answer"), tuple(rows))


def _steps(asked: Inputs, air: Air) -> tuple[Step, ...]:
    steps = [
        step(
            "Opening", "A = w * h", "ft2", w=asked.opening_width_m / 0.3048, h=asked.opening_height_m / 0.3048
        )
    ]
    if asked.velocity_readings_m_s:
        steps.append(
            step(
                "Air through the opening, from the mean of the readings",
                "Q = v * A",
                "cfm",
                v=air.mean_m_s / FT_MIN,
                A=air.area_m2 / 0.09290304,
            )
        )
    else:
        steps.append(
            step(
                "Mean air speed into the opening",
                "v = Q / A",
                "ft/min",
                Q=asked.fan_flow_m3_s / CFM,
                A=air.area_m2 / 0.09290304,
            )
        )
    if not isinf(air.cloud_g_m3) and air.sprayed_g_s > 0:
        steps += [
            step(
                "Powder in the exhaust if none sticks",
                "c = n * m / 60 / Q",
                "g/m3",
                n=asked.guns,
                m=asked.gun_output_g_s * 60,
                Q=air.flow_m3_s,
            ),
            step(
                "Share of the thinnest cloud that burns",
                "share = 100 * c / LEL",
                "%",
                c=air.cloud_g_m3,
                LEL=asked.explosible_g_m3,
            ),
            step(
                "Dust in that air with what sticks taken off",
                "d = 1000 * c * (1 - TE)",
                "mg/m3",
                c=air.cloud_g_m3,
                TE=asked.transfer_percent / 100,
            ),
        ]
    return tuple(steps)


CALCULATOR = Calculator(
    title="Booth air",
    question="Does the booth move enough air?",
    inputs=Inputs,
    solve=solve,
    answers=(
        Out(
            key="verdict",
            label="This booth",
            meaning="About catching overspray and about fire. Enough here does not mean that the air may be breathed.",
            main=True,
            options={
                "enough": "enough to catch overspray",
                "too-slow": "too slow: overspray gets out",
                "too-rich": "too rich: stop spraying",
                "too-fast": "too fast to coat well",
            },
        ),
        Out(
            key="face-velocity",
            label="1. Catching: air into the opening",
            meaning="60 ft/min or more for electrostatic work, else 100. Low? Filters first, then belt, then opening.",
            unit="m_s",
            shown=("ft_min", "m_s"),
            digits=3,
            beside=True,
        ),
        Out(
            key="share",
            label="2. Exploding: exhaust, of a cloud that burns",
            meaning="Over 50 % stop. Nothing is taken to stick, because a gun beside the part sprays all of it into the air.",
            unit="percent",
            digits=2,
            beside=True,
        ),
        Out(
            key="breathing-cloud",
            label="3. Breathing: dust in that air",
            meaning="For someone who stands in it. Upwind it is less: measure at the face, then use respirator-check.",
            unit="g_m3",
            shown=("mg_m3", "g_m3"),
            beside=True,
        ),
        Out(
            key="over-dust-limit",
            label="That dust, times its limit",
            meaning="Law's 15 mg/m3 of dust, or TGIC's advisory limit if the powder holds it, whichever is worse.",
            unit="ratio",
            shown=("ratio",),
            digits=2,
        ),
        Out(
            key="cloud",
            label="Powder in the exhaust if none sticks",
            meaning="The mean of the air that leaves. Near the gun it is always far thicker.",
            unit="g_m3",
            shown=("g_m3",),
        ),
        Out(
            key="lowest",
            label="Slowest place of the opening",
            meaning="Powder comes out where the air is slowest. Hold a thread or smoke there.",
            unit="m_s",
            shown=("ft_min", "m_s"),
        ),
        Out(
            key="air-needed",
            label="Air that would be enough",
            meaning="The larger of what the opening and what the powder ask for. Filters loaded, not new.",
            unit="m3_s",
            shown=("cfm", "m3_h"),
        ),
        Out(
            key="make-up-air",
            label="Make-up air",
            meaning="As much must come into the shop, warm in winter. Without it the booth starves and burners draw back.",
            unit="m3_s",
            shown=("cfm", "m3_h"),
        ),
    ),
    sources=(
        "osha-1910-107",
        "nfpa-33",
        "en-16985",
        "powder-clouds",
        "booth-mass-balance",
        "osha-1910-1000",
        "acgih-tlv",
        "tgic-nicnas",
        "shop-estimate",
        "common-practice",
    ),
    version=1,
    reviewed="2026-11-25",
    keywords=(
        "spray booth",
        "face velocity",
        "cfm",
        "fpm",
        "overspray",
        "dust explosion",
        "LEL",
        "MEC",
        "make-up air",
        "extraction",
    ),
    limits=(
        "The exhaust's mean says nothing of the cloud at the gun, in a duct bend or in the collector, which can all burn.",
        "It does not judge the collector, its explosion relief, interlocks or fire detection: a qualified person must.",
        "The air speed rules are fire rules. They do not say that the air may be breathed; only a measurement at the face does.",
        "150 ft/min as too fast, and nine readings, are our own: no source.",
    ),
    vary=Vary(
        "fan-flow",
        ("1500 cfm", "2500 cfm", "3400 cfm", "4200 cfm", "6000 cfm", "9000 cfm"),
        ("verdict", "face-velocity", "share", "breathing-cloud"),
    ),
    standing=(
        Caution(
            "note",
            "US: 29 CFR 1910.107 and NFPA 33; in Europe EN 16985. The rule's text, local codes and a qualified person decide.",
            "",
            "nfpa-33",
        ),
    ),
    default_cautions=(("caution", "gun-output"), ("caution", "transfer")),
)
