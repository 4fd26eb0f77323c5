"""What can hurt someone who blasts, each rule named, and what the numbers warn of."""

from __future__ import annotations

from collections.abc import Iterator

from calculators.kit.numbers import shop_number
from calculators.kit.result import Caution
from calculators.prepare._blast_plan_inputs import Inputs
from calculators.prepare._blast_plan_sums import CFM, NOT_BY_HAND, PSI, LOSS_SEEN_TO_psi, Plan
from calculators.tables import table

NOT_TO_USE = NOT_BY_HAND

BEFORE = Caution(
    "caution",
    "Before the nozzle opens: old coating tested for lead and chromate, hollows vented, thin sheet tried on a hidden spot, no "
    "magnesium. Blast-or-not asks for each.",
    "",
)
OPERATOR = Caution(
    "caution",
    "A hood with clean supplied air (29 CFR 1910.94(a), 1910.134), a valve that stops the blast when let go (1910.244(b)), a "
    "hose that is grounded and pinned at each coupling, and ear protection (1910.95). Local codes and a qualified person decide.",
    "",
    "osha-1910-94",
)


def cautions(asked: Inputs, made: Plan) -> tuple[Caution, ...]:
    return tuple(_cautions(asked, made))


def _cautions(asked: Inputs, made: Plan) -> Iterator[Caution]:
    yield from _abrasive(asked)
    yield BEFORE
    yield OPERATOR
    yield from _air(asked, made)


def _abrasive(asked: Inputs) -> Iterator[Caution]:
    if asked.abrasive == "silica-sand":
        words = (
            "Do not blast with sand. Broken quartz dust scars lungs for good, and the limit of 0.05 mg/m3 is passed at once "
            "(29 CFR 1910.1053). Take another abrasive."
        )
        yield Caution("stop", words, "abrasive", "osha-1910-1053")
    elif asked.abrasive in NOT_BY_HAND:
        words = (
            "Do not blast with this by hand: its dust burns. Organic abrasive that can burn is for automatic machines only "
            "(29 CFR 1910.94(a)). Take a mineral abrasive."
        )
        yield Caution("stop", words, "abrasive", "osha-1910-94")
    elif asked.abrasive in ("steel-grit", "steel-shot", "slag"):
        words = (
            "For carbon steel and cast iron alone. Iron left in aluminium, stainless or zinc rusts, and iron dust with aluminium "
            "dust in one collector can start a fire (NFPA 660, from memory)."
        )
        yield Caution("caution", words, "abrasive", "nfpa-dust")
    elif asked.abrasive in ("glass-bead", "soda", "mineral-sand"):
        yield Caution("caution", table("abrasives")[asked.abrasive].get("note", "") or _mineral(), "abrasive")


def _mineral() -> str:
    return "It may hold up to 5 % free silica, far past the 1 % that official advice allows. Take another abrasive."


def _air(asked: Inputs, made: Plan) -> Iterator[Caution]:
    if made.open_share <= 0:
        words = (
            "The compressor gives no more than the helmet takes. Do not blast: breathing air comes first, and from a supply that "
            "nothing else can draw down (29 CFR 1910.134(i))."
        )
        yield Caution("stop", words, "helmet-air", "osha-1910-134")
    elif made.margin < 1 - 1e-9:
        words = (
            f"The compressor gives {shop_number(asked.compressor_m3_s / CFM)} cfm and {shop_number(made.demand_m3_s / CFM)} are "
            "taken: pressure falls and work nearly stops. Take a smaller nozzle or a larger compressor. A bigger tank only puts "
            "it off. Breathing air must never be what runs short."
        )
        yield Caution("caution", words, "compressor", "nozzle-tables")
    if asked.wear == "one-size-up" and asked.feed == "pressure":
        words = "A nozzle worn by 1/16 in is worn out, and takes the air of the next size, not the air demand shown. Change it."
        yield Caution("caution", words, "wear", "common-practice")
    if made.hose_kPa is None or made.hose_kPa / PSI > LOSS_SEEN_TO_psi:
        yield Caution(
            "caution", "The air hose is too thin for this air. Take a wider or a shorter one.", "hose-bore"
        )
    if asked.tank_pressure_kPa < asked.pressure_kPa:
        yield Caution(
            "note", "The tank is never as high as the pressure at the nozzle: check both.", "tank-pressure"
        )
