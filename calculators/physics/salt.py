"""How much salt came off an area of steel, by the conductivity of the water that took it up?"""

from __future__ import annotations

# Mass of salt in a volume of thin solution for each S/m: the mixed-salt figure of ISO 8502-9, from memory.
MIXED_kg_m2S = 5.0
# Chloride in the same, were it all sodium chloride: 35.45 g/mol over 126.4 S cm2/mol at 25 C (CRC handbook, from memory).
CHLORIDE_kg_m2S = 2.805


def salt_kg_m2(rise_S_m: float, water_m3: float, area_m2: float, per_S_m: float = MIXED_kg_m2S) -> float:
    """Salt on an area.

        s = c V G / A

    G: rise_S_m, conductivity of the water over that of the blank, S/m.   V: water_m3, m3.   A: area_m2, m2.
    c: per_S_m, kg/(m2 S).   Returns s, kg/m2.

    Holds: thin solutions, at 25 C or corrected to it; all the salt that matters dissolved.
    Source: ISO 8502-9, from memory. c = 5 is a convention for mixed salts.
    Departs from the source: nothing.

    >>> round(salt_kg_m2(rise_S_m=8e-4, water_m3=15e-6, area_m2=12.5e-4) * 1e6, 6)
    48.0
    """
    return per_S_m * water_m3 * rise_S_m / area_m2
