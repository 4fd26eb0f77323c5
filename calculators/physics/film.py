"""How much powder a film takes: mass balance between the powder bought, the film on the part, and what is lost."""

from __future__ import annotations


def film_mass_kg(area_m2: float, film_um: float, specific_gravity: float) -> float:
    """Mass of the cured film on an area.

        m = A t SG / 1000

    A: area_m2, m2.   t: film_um, um.   SG: specific_gravity, relative to water at 1000 kg/m3.
    Returns m in kg.

    Holds: a film without pores, and a powder that loses next to nothing in the oven.
    Source: definitions (1 um over 1 m2 at SG 1 is 1 g).
    Departs from the source: nothing. Trade tables print 192.3 ft2 mil/lb, which assumes water at 62.4 lb/ft3: 0.04 % apart.

    >>> film_mass_kg(area_m2=1, film_um=1, specific_gravity=1)
    0.001
    """
    return area_m2 * film_um * specific_gravity / 1000


def utilisation(transfer: float, reclaim: float) -> float:
    """Share of the powder bought that ends as film, when caught overspray is sprayed again without end.

        U = TE / (1 - r (1 - TE))

    TE: transfer, the share of sprayed powder that stays on the part in one pass, 0 to 1.
    r: reclaim, the share of the overspray that is caught and sprayed again, 0 to 1.   Returns U, 0 to 1.

    Holds: recovered powder transfers as well as new powder does; in truth it is finer and transfers less.
    Source: sum of the geometric series TE + TE r (1 - TE) + TE r^2 (1 - TE)^2 + ..., worked out.
    Departs from the source: nothing.

    >>> utilisation(transfer=0.6, reclaim=0.5)
    0.75
    """
    return transfer / (1 - reclaim * (1 - transfer))


def coverage_m2_kg(film_um: float, specific_gravity: float, share: float) -> float:
    """Area that a mass of powder covers.

        a = 1000 U / (t SG)

    t: film_um, um.   SG: specific_gravity.   U: share of the powder that ends as film, 0 to 1.   Returns a in m2/kg.

    Holds: as film_mass_kg.
    Source: the mass balance of film_mass_kg, turned round.
    Departs from the source: nothing.

    >>> round(coverage_m2_kg(film_um=63.5, specific_gravity=1.5, share=1), 3)
    10.499
    """
    return 1000 * share / (film_um * specific_gravity)


def film_from_mass_um(mass_kg: float, area_m2: float, specific_gravity: float) -> float:
    """Mean film from the weight that a part gained.

        t = 1000 m / (A SG)

    m: mass_kg, kg.   A: area_m2, m2.   SG: specific_gravity.   Returns t in um.

    Holds: as film_mass_kg. It is the mean over the whole area, and says nothing of where the film is thick or thin.
    Source: the mass balance of film_mass_kg, turned round.
    Departs from the source: nothing.

    >>> film_from_mass_um(mass_kg=0.001, area_m2=1, specific_gravity=1)
    1.0
    """
    return 1000 * mass_kg / (area_m2 * specific_gravity)
