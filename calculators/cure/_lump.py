"""May a section be counted as one lump of one temperature, and by how much does its core lag if not?"""

from __future__ import annotations

from dataclasses import dataclass

from calculators.physics.biot import biot_number, core_lag_min
from calculators.physics.heat import Part, specific_heat_at_J_kgK
from calculators.tables import table

LUMP_BIOT = 0.1
# Conductivity and specific heat are taken here: about half way through a bake.
_MIDDLE_DEGC = 150.0


@dataclass(frozen=True, slots=True)
class Lump:
    """How far a section is from a lump. core_lag_min: how long its core reaches a temperature after its skin."""

    conductivity_W_mK: float
    biot: float
    core_lag_min: float

    @property
    def too_thick(self) -> bool:
        return self.biot > LUMP_BIOT


def lump_of(metal: str, shape: str, part: Part, whole_W_m2K: float) -> Lump:
    """whole_W_m2K: convection and radiation together."""
    row = table("metals")[metal]
    conductivity = max(1.0, specific_heat_at_J_kgK(row["conductivity_W_mK"], _MIDDLE_DEGC))
    diffusivity = conductivity / (
        part.density_kg_m3 * specific_heat_at_J_kgK(part.specific_heat_J_kgK, _MIDDLE_DEGC)
    )
    return Lump(
        conductivity,
        biot_number(whole_W_m2K, part.heat_path_m, conductivity),
        _core_lag_min(shape, part.heat_path_m, whole_W_m2K / conductivity, diffusivity),
    )


def _core_lag_min(
    shape: str, path_m: float, whole_over_conductivity_per_m: float, diffusivity_m2_s: float
) -> float:
    """Minutes that the core is behind the skin.

    A bar's heat path is a quarter of its width, its core half a width deep. Heated from all round, it lags half as long
    as a slab that deep: exactly so for a square bar, within 4 % for a round one up to a Biot number of 1.
    """
    bar = shape in ("round-bar", "square-bar")
    depth_m = 2 * path_m if bar else path_m
    slab_min = core_lag_min(whole_over_conductivity_per_m * depth_m, depth_m, diffusivity_m2_s)
    return slab_min / 2 if bar else slab_min
