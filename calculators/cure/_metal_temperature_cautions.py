"""What a reader of a corrected reading must not miss."""

from __future__ import annotations

from calculators.cure._metal_temperature_inputs import Inputs
from calculators.cure._metal_temperature_sums import CANNOT_TELL_K, Seen, seen_by
from calculators.cure._schedule import f_and_c
from calculators.kit.numbers import shop_number, whole
from calculators.kit.result import Caution

# A spot should lie well inside the part: half its width, a habit of the trade.
SPOT_SHARE = 0.5
# A cure oven's metal is never hotter: a range that starts above it tells of a wrong surface.
HOTTEST_OVEN_degC = 316.0
# Of an emissivity out of a table: our own estimate.
USUAL_DOUBT = 0.05
_OTHER_STATES = {
    "cast-iron": "The span of 0.63 to 0.66 is for oxidised iron. Iron fresh from the blast is not printed anywhere that we know, "
    "and polished iron has 0.21: use a probe there.",
    "bright-galvanised": "This is for bright zinc. Old, dull zinc is printed at up to 0.85: try Other, or use a probe.",
}


def cautions(asked: Inputs, found: Seen) -> list[Caution]:
    found_here = []
    if found.too_wide:
        span = "so wide that parts of it fit no metal"
        if found.low is not None and found.high is not None:
            span = f"{whole(found.low * 1.8 + 32)} to {whole(found.high * 1.8 + 32)} F"
        found_here.append(
            Caution(
                "caution",
                f"The emissivity of this surface is known only as {shop_number(found.emissivity_low)} to "
                f"{shop_number(found.emissivity_high)}. That makes the metal {span}: more than 25 F to a side, so no single "
                "number is given. Do not time a bake by it. Use a contact probe, or a spot painted with heat-proof matt paint.",
                "surface",
                "ir-tables" if asked.surface not in ("blasted-steel", "other") else "shop-estimate",
            )
        )
    if asked.surface == "cured-powder":
        found_here.append(
            Caution(
                "note",
                "This is for powder without metal flake. Aluminium paint is printed at about 0.4, so on metallics use a probe, "
                "or Other with an emissivity of your own.",
                "surface",
                "ir-tables",
            )
        )
    if asked.surface in _OTHER_STATES:
        found_here.append(Caution("caution", _OTHER_STATES[asked.surface], "surface", "ir-tables"))
    if found.low is not None and found.low > HOTTEST_OVEN_degC:
        found_here.append(
            Caution(
                "caution",
                "Metal from a cure oven is never so hot. The surface gives off more than the table says, as dull, dirty or "
                "oxidised metal does: take nothing from this reading.",
                "reading",
            )
        )
    if asked.surface == "other" and asked.emissivity_doubt_ratio is None and not found.too_wide:
        found_here.append(_no_doubt(asked))
    if asked.surroundings == "oven":
        found_here.append(_in_oven(found))
    return found_here


def _no_doubt(asked: Inputs) -> Caution:
    """The emissivity was taken as exact: what a usual doubt would make of it."""
    usual = seen_by(asked, USUAL_DOUBT)
    metal = "fit no metal at one end"
    if usual.low is not None and usual.high is not None:
        metal = f"make the metal {whole(usual.low * 1.8 + 32)} to {whole(usual.high * 1.8 + 32)} F"
    more = ": more than the gun can tell. Use a contact probe" if usual.too_wide else ""
    return Caution(
        "caution" if usual.too_wide else "note",
        f"The emissivity is taken as exact, so no range is shown. {USUAL_DOUBT:g} either way, as of a printed figure, would "
        f"{metal}{more}.",
        "emissivity-doubt",
    )


def _in_oven(found: Seen) -> Caution:
    """Walls mirrored in the part, and a gun that does not know of them."""
    untold = "no metal fits the reading"
    if found.untold is not None:
        untold = f"the metal is at about {f_and_c(found.untold)}"
    apart = ""
    if found.best is None or found.untold is None or abs(found.best - found.untold) > CANNOT_TELL_K:
        apart = " The two are more than 25 F apart: do not time a bake by it."
    return Caution(
        "caution",
        "Inside the oven the walls are mirrored in the part. The metal given is for a gun that is told how hot they are. Most "
        f"guns take them to be as cool as themselves: then {untold}. Hold the cooler against the sheet.{apart} Shiny metal "
        "cannot be read in there.",
        "surroundings",
    )


def spot_cautions(asked: Inputs, spot_m: float) -> list[Caution]:
    if spot_m <= SPOT_SHARE * asked.part_width_m * (1 + 1e-9):
        return []
    if spot_m > asked.part_width_m * (1 + 1e-9):
        text = (
            "The spot is wider than the part, so the gun mixes in what lies behind. Come closer until the spot is half the "
            "part's width, or use a contact probe."
        )
    else:
        text = "The spot fills more than half of the part's width. A small slip of aim takes in what lies behind: come closer."
    return [Caution("caution", text, "distance", "common-practice")]
