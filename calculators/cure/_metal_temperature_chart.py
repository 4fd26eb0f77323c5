"""What one reading makes of the metal, whatever the surface's emissivity may be, with the span that is known of it."""

from __future__ import annotations

from calculators.cure._metal_temperature_inputs import Inputs
from calculators.cure._metal_temperature_sums import Seen
from calculators.kit.chart import Axis, Band, Chart, Mark, Series
from calculators.physics.radiation import metal_behind_reading_degC

POINTS = 12


def chart(asked: Inputs, found: Seen, verdict: str) -> Chart:
    """Metal against emissivity for this reading. A steep curve or a wide span means that the gun cannot tell."""
    start = max(0.05, 0.75 * found.emissivity_low)

    def curve(name: str, assumed_degC: float) -> Series:
        points = []
        for place in range(POINTS + 1):
            emissivity = start + (1 - start) * place / POINTS
            metal = metal_behind_reading_degC(
                asked.reading_degC, asked.gun_emissivity_ratio, emissivity, found.mirrored_degC, assumed_degC
            )
            if metal is not None:
                points.append((emissivity, metal * 1.8 + 32))
        return Series(name, tuple(x for x, _ in points), tuple(y for _, y in points))

    series = [curve("metal behind this reading", found.mirrored_degC)]
    if asked.surroundings == "oven":
        series.append(curve("the same, if the gun takes the oven for the shop", asked.shop_degC))
    marks = []
    if verdict == "can-tell" and found.best is not None:
        marks.append(Mark("the metal", found.emissivity, found.best * 1.8 + 32))
    return Chart(
        title="What this reading makes of the metal",
        says="Where the curve crosses the shaded span lies the metal. A shinier surface stands further to the left, where a "
        "small change of the surface changes the answer most.",
        x=Axis("emissivity of the surface"),
        y=Axis("metal, F"),
        series=tuple(one for one in series if one.xs),
        marks=tuple(marks),
        bands=(Band("known span", found.emissivity_low, found.emissivity_high, "good", "x"),),
    )
