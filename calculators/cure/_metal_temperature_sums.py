"""The metal behind a reading at the middle and at both ends of what is known of the surface."""

from __future__ import annotations

from dataclasses import dataclass

from calculators.cure._metal_temperature_inputs import SURFACES, Inputs
from calculators.physics.radiation import metal_behind_reading_degC
from calculators.tables import table

# Wider than this to a side, no single number is given: 25 F, about the whole margin of a cure schedule.
CANNOT_TELL_K = 25 / 1.8


@dataclass(frozen=True, slots=True)
class Seen:
    """best, low, high: metal, C; None where no metal gives that reading. mirrored_degC: what the surface mirrors.

    untold: the metal, C, if the gun takes its surroundings to be as cool as itself; None where no metal gives that reading.
    """

    best: float | None
    low: float | None
    high: float | None
    untold: float | None
    emissivity: float
    emissivity_low: float
    emissivity_high: float
    mirrored_degC: float

    @property
    def too_wide(self) -> bool:
        """Whether the doubt is wider than a single number may hide."""
        if self.best is None or self.low is None or self.high is None:
            return True
        return max(self.high - self.best, self.best - self.low) > CANNOT_TELL_K


def seen(
    reading_degC: float,
    gun_emissivity: float,
    emissivities: tuple[float, float, float],
    mirrored_degC: float,
    gun_degC: float,
) -> Seen:
    """The metal behind a reading.

    emissivities: best, low and high of the surface. mirrored_degC: what lies round the part. gun_degC: what a gun that knows no
    better takes that to be.
    """
    best_emissivity, low_emissivity, high_emissivity = emissivities

    def metal(emissivity: float, assumed_degC: float) -> float | None:
        return metal_behind_reading_degC(
            reading_degC, gun_emissivity, emissivity, mirrored_degC, assumed_degC
        )

    best = metal(best_emissivity, mirrored_degC)
    all_ends = [metal(emissivity, mirrored_degC) for emissivity in emissivities]
    ends = [end for end in all_ends if end is not None]
    whole_span = len(ends) == len(all_ends)
    return Seen(
        best,
        min(ends) if whole_span else None,
        max(ends) if whole_span else None,
        metal(best_emissivity, gun_degC),
        best_emissivity,
        low_emissivity,
        high_emissivity,
        mirrored_degC,
    )


def seen_by(asked: Inputs, doubt: float | None = None) -> Seen:
    """What these inputs make of the metal. doubt: of an emissivity of the reader's own, in place of the one typed."""
    if asked.surface == "other":
        best = asked.emissivity_ratio
        either_way = (asked.emissivity_doubt_ratio or 0.0) if doubt is None else doubt
        span = (best, max(best - either_way, 0.01), min(best + either_way, 1.0))
    else:
        row = table("finishes")[SURFACES[asked.surface]]
        span = (row["emissivity"], row["low"], row["high"])
    mirrored = asked.shop_degC if asked.surroundings == "shop" else asked.oven_degC
    return seen(asked.reading_degC, asked.gun_emissivity_ratio, span, mirrored, asked.shop_degC)
