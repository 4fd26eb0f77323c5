"""What the gun shows against what the metal is, for one surface and all that is known of it."""

from __future__ import annotations

from calculators.cure._metal_temperature_inputs import Inputs
from calculators.cure._metal_temperature_sums import Seen
from calculators.kit.chart import Axis, Chart, Mark, Series
from calculators.physics.radiation import gun_reading_degC


def chart(asked: Inputs, found: Seen, verdict: str) -> Chart:
    assert found.low is not None
    assert found.high is not None
    low = min(found.low, asked.reading_degC, found.mirrored_degC)
    high = max(found.high, asked.reading_degC) + 15
    metals = tuple(low + (high - low) * place / 24 for place in range(25))

    def shown(emissivity: float, assumed_degC: float) -> tuple[float, ...]:
        readings = (
            gun_reading_degC(metal, emissivity, found.mirrored_degC, asked.gun_emissivity_ratio, assumed_degC)
            for metal in metals
        )
        return tuple((low if reading is None else reading) * 1.8 + 32 for reading in readings)

    fahrenheit = tuple(metal * 1.8 + 32 for metal in metals)
    ends = [
        shown(emissivity, assumed)
        for emissivity in (found.emissivity_low, found.emissivity_high)
        for assumed in (found.mirrored_degC, asked.shop_degC)
    ]
    lows, highs = (tuple(map(end, *ends)) for end in (min, max))
    reading = asked.reading_degC * 1.8 + 32
    best = found.best if verdict == "can-tell" else None
    marks = [Mark("your reading", y=reading)]
    if best is not None:
        marks.append(Mark("the metal", best * 1.8 + 32, reading))
    return Chart(
        title="What the gun shows against what the metal is",
        says="The band is where this surface can lie. Where your reading crosses it is the metal's temperature; the wider the "
        "crossing, the less the gun can tell.",
        x=Axis("metal, F"),
        y=Axis("gun shows, F"),
        series=(
            Series("this surface, as far as it is known", fahrenheit, lows, highs),
            Series("this surface, middle figure", fahrenheit, shown(found.emissivity, found.mirrored_degC)),
            Series("a gun that is right", fahrenheit, fahrenheit),
        ),
        marks=tuple(marks),
    )
