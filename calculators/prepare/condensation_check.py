"""May I blast or coat in this air? The metal against the dew point, and how much room is left."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from math import ceil, floor

from calculators.kit.calculator import Calculator, Out, Vary
from calculators.kit.chart import Axis, Band, Chart, Mark, Series
from calculators.kit.fields import Limits, Quantity, Validity, ask
from calculators.kit.numbers import rounded_inward, shop_number
from calculators.kit.result import Caution, Clash, Result, Value
from calculators.kit.steps import Step, step
from calculators.physics.humidity import (
    air_at_dew_point_degC,
    dew_point_degC,
    humidity_at_dew_point_percent,
    saturation_exponent,
)

LIMIT_K = 3.0
CLEAR_K = 8 / 1.8
HYGROMETER_percent = 3.0
HOTTEST_AIR_degC = 60.0
HOTTEST_TO_SPRAY_degC = 40.0  # common practice, no source
SOURCE = "magnus-wmo"
_EDGE = (
    1e-6  # K: far under any thermometer, and far over what a quoted figure loses on its way through two units
)

VERDICTS = {
    "stop": "Stop: too near the dew point",
    "wait": "Wait: inside the limit, too near to trust a hygrometer",
    "go": "Go",
}


@dataclass(frozen=True)
class Inputs:
    air_temperature_degC: float = ask(
        Quantity(
            group="Now",
            label="Air temperature",
            hint="Beside the part, out of the sun",
            units=("degF", "degC"),
            default="70",
            limits=Limits("-40 F", "140 F", "where people work"),
            validity=Validity(
                "32 F",
                "104 F",
                SOURCE,
                "The formula was compared with tables from 0 to 40 C only.",
            ),
            meaning="shop-temperature",
        )
    )
    humidity_percent: float = ask(
        Quantity(
            label="Relative humidity",
            hint="From a hygrometer beside the part",
            units=("percent",),
            default="60",
            limits=Limits("1 %", "100 %", "drier is no weather, wetter is rain"),
            validity=Validity(
                "20 %", "95 %", SOURCE, "A shop hygrometer is seldom right at the ends of its scale."
            ),
        )
    )
    metal_temperature_degC: float = ask(
        Quantity(
            label="Metal temperature",
            hint="At its coldest place, with a contact thermometer",
            units=("degF", "degC"),
            default="68",
            limits=Limits("-40 F", "500 F", "a yard in winter to a part from the oven"),
        )
    )
    earlier_min: float | None = ask(
        Quantity(
            group="Earlier, to see the drift",
            label="Minutes ago",
            hint="Empty if you took only one set of readings; then leave the next three empty too",
            units=("min", "h"),
            limits=Limits("5 min", "24 h", "shorter shows the instrument, longer shows the weather"),
            may_be_empty=True,
            example="60 min",
        )
    )
    earlier_air_degC: float | None = ask(
        Quantity(
            label="Air temperature then",
            units=("degF", "degC"),
            limits=Limits("-40 F", "140 F", "where people work"),
            may_be_empty=True,
            example="70",
        )
    )
    earlier_humidity_percent: float | None = ask(
        Quantity(
            label="Relative humidity then",
            units=("percent",),
            limits=Limits("1 %", "100 %", "drier is no weather, wetter is rain"),
            may_be_empty=True,
            example="55",
        )
    )
    earlier_metal_degC: float | None = ask(
        Quantity(
            label="Metal temperature then",
            units=("degF", "degC"),
            limits=Limits("-40 F", "500 F", "a yard in winter to a part from the oven"),
            may_be_empty=True,
            example="69",
        )
    )


def solve(asked: Inputs) -> Result:
    air, metal = asked.air_temperature_degC, asked.metal_temperature_degC
    dew = dew_point_degC(air, asked.humidity_percent)
    margin = metal - dew
    verdict = "stop" if margin < LIMIT_K - _EDGE else "wait" if margin < CLEAR_K - _EDGE else "go"
    return Result(
        answers={
            "margin": margin,
            "verdict": verdict,
            "dew-point": dew,
            "least-metal": Value(dew + LIMIT_K, words=_quoted(dew + LIMIT_K, ceil)),
            "highest-safe-humidity": _highest_humidity(air, metal),
            "warmest-air": _warmest_air(asked),
            "time-left": _time_left(asked, margin),
            "humidity-worth": dew_point_degC(air, min(asked.humidity_percent + HYGROMETER_percent, 100))
            - dew,
        },
        headline=f"{VERDICTS[verdict]}. {_words(margin)}",
        cautions=_cautions(asked, margin),
        steps=(
            step(
                "Dew point, by way of",
                "g = ln(RH / 100) + 17.62 * T / (243.12 + T)",
                RH=asked.humidity_percent,
                T=air,
            ),
            _dew_step(dew),
            step("Margin", "margin = metal - Td", "C", metal=metal, Td=dew),
            step("The same in F", "margin = 1.8 * d", "F", d=margin),
        ),
        charts=(_chart(dew, metal, margin),),
    )


def _words(margin_K: float) -> str:
    side = "above" if margin_K >= 0 else "below"
    size = abs(margin_K)
    return f"Metal {shop_number(size * 1.8)} F ({shop_number(size)} C) {side} the dew point"


def _quoted(degC: float, to_the_safe_side: Callable[[float], int]) -> str:
    """In tenths of a degree, so that a figure which is written down and kept to is inside the limit."""

    def tenths(degrees: float) -> str:
        steps = 10 * degrees
        near = round(steps)
        return shop_number((near if abs(steps - near) < _EDGE else to_the_safe_side(steps)) / 10, 4)

    return f"{tenths(degC * 1.8 + 32)} F ({tenths(degC)} C)"


def _dew_step(dew_degC: float) -> Step:
    exponent = saturation_exponent(dew_degC)
    if dew_degC < 0:
        return step("Frost point", "Td = 272.62 * g / (22.46 - g)", "C", g=exponent)
    return step("Dew point", "Td = 243.12 * g / (17.62 - g)", "C", g=exponent)


def _highest_humidity(air_degC: float, metal_degC: float) -> Value:
    humidity = humidity_at_dew_point_percent(air_degC, metal_degC - LIMIT_K)
    if humidity >= 100:
        return Value(words="any: this metal is warm enough for all air at this temperature")
    return Value(humidity, words=f"{rounded_inward(humidity, False, 2)}%")


def _warmest_air(asked: Inputs) -> Value:
    dew = asked.metal_temperature_degC - LIMIT_K
    warmest = air_at_dew_point_degC(dew, asked.humidity_percent) if dew < HOTTEST_AIR_degC else dew
    if warmest > HOTTEST_AIR_degC:
        return Value(words="any: no shop's air is so warm")
    if warmest < asked.air_temperature_degC - _EDGE:
        return Value(words="already past it")
    return Value(warmest, words=_quoted(warmest, floor))


def _time_left(asked: Inputs, margin_K: float) -> Value:
    """The margin then and now, carried on in a straight line to the limit."""
    then = {
        "earlier": asked.earlier_min,
        "earlier-air": asked.earlier_air_degC,
        "earlier-humidity": asked.earlier_humidity_percent,
        "earlier-metal": asked.earlier_metal_degC,
    }
    missing = [key for key, value in then.items() if value is None]
    if len(missing) == len(then):
        return Value(words="no earlier readings given")
    if missing:
        sentence = "Fill in all four earlier readings, or none"
        raise Clash(*((key, sentence) for key in missing))
    ago, air, humidity, metal = (value for value in then.values() if value is not None)
    if margin_K < LIMIT_K - _EDGE:
        return Value(words="none: past the limit already")
    fall_K_min = (metal - dew_point_degC(air, humidity) - margin_K) / ago
    if fall_K_min <= 0:
        return Value(words="the margin is not falling")
    left = (margin_K - LIMIT_K) / fall_K_min
    if left > 2 * ago:
        # a straight line through two readings says little beyond a few times their distance
        return Value(words=f"more than {shop_number(2 * ago, 2)} min: measure again by then")
    return Value(left, words=f"{rounded_inward(left, False, 2)} min")


def _cautions(asked: Inputs, margin_K: float) -> tuple[Caution, ...]:
    if margin_K < 0:
        words = (
            "The metal is colder than the dew point: it is wet, or about to be. Do not blast or spray. Warm it and dry it "
            "first."
        )
        return (Caution("stop", words, "metal-temperature", "iso-8502-4"),)
    if margin_K < LIMIT_K - _EDGE:
        words = (
            "Under 5.4 F (3 C) above the dew point a thin film of water forms that nobody sees. Do not blast or spray. Warm the "
            "metal or dry the air, then measure again."
        )
        return (Caution("stop", words, "metal-temperature", "iso-8502-4"),)
    if asked.metal_temperature_degC > HOTTEST_TO_SPRAY_degC + _EDGE:
        words = (
            "The metal is dry, and too hot for powder: over 104 F (40 C) it melts as it lands, and nobody can tell how much is "
            "on. Let it cool first."
        )
        return (Caution("caution", words, "metal-temperature", "common-practice"),)
    if asked.metal_temperature_degC < asked.air_temperature_degC - _EDGE:
        words = (
            "The metal is colder than the air. Each time warm, damp air comes in, its dew point may pass the limit before the "
            "metal has warmed. Measure again every hour, and when a door opens or the weather turns."
        )
        return (Caution("note", words, "metal-temperature"),)
    return ()


def _chart(dew_degC: float, metal_degC: float, margin_K: float) -> Chart:
    def fahrenheit(degC: float) -> float:
        return degC * 1.8 + 32

    # ends on whole ticks; hot metal stands at the upper edge
    low, high = -10.0, 20.0 if margin_K < 9 else 30.0 if margin_K < 15 else 40.0
    shown = min(max(1.8 * margin_K, low), high)
    start, end = fahrenheit(dew_degC) + low, fahrenheit(dew_degC) + high
    return Chart(
        title="How far the metal is above the dew point",
        says="Each degree that the metal is warmer adds a degree of margin. In the red zone water settles on it.",
        x=Axis("metal temperature, F", start, end),
        y=Axis("above the dew point, F", low, high),
        series=(Series("margin in this air", (start, end), (low, high)),),
        marks=(Mark("your metal", fahrenheit(dew_degC) + shown, shown),),
        bands=(
            Band("stop", None, 5.4, "bad"),
            Band("wait", 5.4, 8.0, "near"),
            Band("go", 8.0, None, "good"),
        ),
    )


CALCULATOR = Calculator(
    title="Condensation check",
    question="May I blast or coat in this air?",
    inputs=Inputs,
    solve=solve,
    answers=(
        Out(
            key="margin",
            label="Metal above the dew point",
            meaning="At least 5.4 F (3 C) before you blast or spray; 8 F (4.4 C) leaves room for the instruments.",
            main=True,
            unit="dC",
            shown=("dF", "dC"),
        ),
        Out(
            key="verdict",
            label="Verdict",
            meaning="On stop, warm the metal or dry the air. On wait, do the same, or measure again with better instruments.",
            options=VERDICTS,
            beside=True,
        ),
        Out(
            key="dew-point",
            label="Dew point",
            meaning="Metal at this temperature or colder is wet.",
            unit="degC",
            shown=("degF", "degC"),
            beside=True,
        ),
        Out(
            key="least-metal",
            label="Metal at least",
            meaning="Warm it to this and keep it there until the powder is on.",
            unit="degC",
            shown=("degF", "degC"),
        ),
        Out(
            key="highest-safe-humidity",
            label="Stop at a humidity of",
            meaning="With the air and the metal as warm as now, stop when the hygrometer passes this.",
            unit="percent",
            shown=("percent",),
            digits=2,
        ),
        Out(
            key="warmest-air",
            label="Stop at an air temperature of",
            meaning="If the air gets warmer at this humidity and the metal does not follow, stop here.",
            unit="degC",
            shown=("degF", "degC"),
        ),
        Out(
            key="time-left",
            label="Time until the limit",
            meaning="The change since the earlier readings, carried on in a straight line: measure again at half this time.",
            unit="min",
            shown=("min",),
            digits=2,
        ),
        Out(
            key="humidity-worth",
            label="3 % of humidity is worth",
            meaning="A good hygrometer is seldom better than that, so take this much off the margin in your head.",
            unit="dC",
            shown=("dF", "dC"),
            digits=2,
        ),
    ),
    sources=("iso-8502-4", "magnus-wmo", "tank-holding", "common-practice"),
    version=2,
    reviewed="2026-11-25",
    keywords=(
        "dew point",
        "dewpoint",
        "flash rust",
        "humidity",
        "sweating steel",
        "3 degrees above dew point",
        "weather limits for blasting",
        "surface temperature",
    ),
    limits=(
        "It judges one moment and one place. The coldest corner of the heaviest part decides, not the middle of the shop.",
        "The 5.4 F (3 C) was read on trade pages that quote ISO 8502-4, not in the standard.",
        "The wait zone up to 8 F (4.4 C) is common practice, no source: room for a hygrometer that is 3 % off.",
        "It says nothing of rust by salt or by wet hands: salty steel rusts far above the dew point.",
        "Keeping a blast clean for days takes far drier air: 17 to 25 F (9 to 14 C) above the dew point is asked for in tanks.",
    ),
    vary=Vary(
        "humidity", ("30 %", "50 %", "60 %", "70 %", "80 %", "90 %"), ("dew-point", "margin", "verdict")
    ),
)
