"""The metal behind a reading at the middle and at both ends of what is known of the surface."""

from __future__ import annotations

from dataclasses import dataclass

from calculators.physics.radiation import metal_behind_reading_degC

# Wider than this to a side, no single number is given: 25 F, about the whole margin of a cure schedule.
CANNOT_TELL_K = 25 / 1.8


@dataclass(frozen=True, slots=True)
class Seen:
    """best, low, high: metal, C; None where no metal gives that reading. mirrored_degC: what the surface mirrors."""

    best: float | None
    low: float | None
    high: float | None
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
    better takes that to be; the ends of the range cover both.
    """
    best_emissivity, low_emissivity, high_emissivity = emissivities

    def metal(emissivity: float, assumed_degC: float) -> float | None:
        return metal_behind_reading_degC(
            reading_degC, gun_emissivity, emissivity, mirrored_degC, assumed_degC
        )

    best = metal(best_emissivity, mirrored_degC)
    all_ends = [
        metal(emissivity, assumed)
        for emissivity in emissivities
        for assumed in (mirrored_degC, gun_degC)
    ]  # fmt: skip
    ends = [end for end in all_ends if end is not None]
    whole_span = len(ends) == len(all_ends)
    return Seen(
        best,
        min(ends) if whole_span else None,
        max(ends) if whole_span else None,
        best_emissivity,
        low_emissivity,
        high_emissivity,
        mirrored_degC,
    )
