"""What respirator-check says beside its sums: filters, air, programme, cautions."""

from __future__ import annotations

from collections.abc import Iterator

from calculators.kit.numbers import shop_number
from calculators.kit.result import Caution
from calculators.safety._respirator_inputs import BLASTING, HOODS, RESPIRATORS, TIGHT, Inputs
from calculators.safety._respirator_sums import Finding
from calculators.tables import table

AIR = table("breathing_air")
PRESUMED_LEAD_MG_M3 = 2.5


def filter_of(asked: Inputs, found: Finding) -> str:
    kind = RESPIRATORS[asked.respirator]["air"]
    if kind in ("supplied", "own-air"):
        return "none: it brings its own air"
    strict = any(one.filter == "p100" for one in found.dusts)
    if kind == "powered":
        return "high-efficiency (HE), the only class for powered units; in Europe TH3 or TM3"
    return (
        "P100 (in Europe P3): for lead, chromate, cadmium, beryllium, silica, TGIC and what is not known"
        if strict
        else "N95 or better (in Europe P2 or P3); R or P where there is oil mist"
    )


def air_quality(asked: Inputs) -> tuple[str, ...]:
    if RESPIRATORS[asked.respirator]["air"] != "supplied":
        return ()
    oxygen = AIR["oxygen"]
    return (
        f"Grade D: oxygen {oxygen['least']:g} to {oxygen['most']:g} %, carbon monoxide {AIR['carbon-monoxide']['most']:,} ppm or "
        f"less, carbon dioxide {AIR['carbon-dioxide']['most']:,} ppm or less, oil {AIR['oil']['most']} mg/m3 or less, no odour",
        "Oil-lubricated compressor: a carbon monoxide or high-temperature alarm or both; with the temperature alarm alone the "
        "air is also tested for carbon monoxide, as often as keeps it under 10 ppm",
        "Any other compressor: carbon monoxide still 10 ppm or less. The intake stands away from engines, ovens and spraying",
        "Water trap, sorbent and filter, changed as their maker says, with a dated and signed tag at the compressor",
        f"Dew point {AIR['dew-point']['least']} F (5.6 C) under the air outside, so that the line does not freeze",
        "Couplings that fit no other line: shop air, oxygen and nitrogen cannot be plugged in by mistake",
        "In Europe: EN 12021 for the air, EN 14594 for the respirator",
    )


def programme(asked: Inputs) -> tuple[str, ...]:
    tight = asked.respirator in TIGHT
    return (
        "A written programme with someone named to run it",
        "A medical check before the first use",
        "A fit test for this wearer, model and size, each year; no beard or stubble where it seals; a seal check each time"
        if tight
        else "No fit test for a hood or loose one; check collar, cape, lens and air flow each time",
        "Training, cleaning, storage away from dust, worn parts changed",
        "Keep it on until out of the dust, the hood brushed or vacuumed first: taking it off inside undoes the shift",
    )


def cautions(asked: Inputs, found: Finding) -> Iterator[Caution]:
    yield from _stops(asked, found)
    lead = any(one.slug == "lead" and one.measured_mg_m3 is None for one in found.dusts)
    if lead and asked.task in BLASTING:
        yield Caution(
            "caution",
            f"Until it is measured, take blasting of lead paint as over {PRESUMED_LEAD_MG_M3:g} mg/m3, 50 times the limit. "
            "That asks for a factor of 1,000 with its proof.",
            "agents",
            "osha-1926-62",
        )
    if asked.respirator in HOODS and asked.proof_1000 == "no":
        yield Caution(
            "caution",
            "A hood counts as 25 until the maker's evidence that this model reaches 1,000 is in your file.",
            "proof-1000",
            "osha-1910-134",
        )
    row = RESPIRATORS[asked.respirator]
    if row["seal"] == "tight" and row["air"] == "filter" and row["factor"] > 10 and asked.fit == "taste":
        yield Caution(
            "caution",
            "A fit test by taste or smell shows a factor of 10 and no more on a mask with filters. For 50 have it tested by "
            "instrument.",
            "fit",
            "osha-1910-134",
        )
    nought = [one.said for one in found.dusts if one.measured_mg_m3 == 0]
    if nought:
        yield Caution(
            "caution",
            f"0 is not a measurement. Write the laboratory's reporting limit for {' and '.join(nought)}, or nothing if nobody "
            "measured.",
            "agents",
        )
    for one in found.dusts:
        if one.measured_mg_m3 is None:
            continue
        if found.verdict == "enough" and one.measured_mg_m3 / found.factor > one.advisory_mg_m3:
            yield Caution(
                "caution",
                f"{one.name}: inside, within the law's limit, and over the stricter advisory one "
                f"({shop_number(one.advisory_mg_m3)} mg/m3).",
                "agents",
                "acgih-tlv",
            )
    acting = [one for one in found.dusts if (one.measured_mg_m3 or 0.0) >= one.action_mg_m3]
    if acting:
        names = " and ".join(f"{one.said} ({shop_number(one.action_mg_m3)} mg/m3)" for one in acting)
        yield Caution(
            "note",
            f"At or over the action level, counted outside the respirator: {names}. Sampling again, medical checks and training "
            "are due.",
            "agents",
        )
    if asked.hours_h > 8:
        yield Caution(
            "note",
            "Limits are cut by 8 over the hours of the shift. That is the lead rule; for the other dusts it is our safe side.",
            "hours",
            "osha-1910-1025",
        )
    if len(found.dusts) > 1:
        yield Caution(
            "note",
            "All dusts are added up as shares of their limits, as if they harmed alike: the safe side. Total and respirable dust "
            "of no special kind count once.",
            "agents",
            "osha-1910-1000",
        )
    if asked.task == "clean-up":
        yield Caution(
            "caution",
            "Mask and filters are for short clean-up only. No dry sweeping and no blowing where that stirs up silica or lead: "
            "wet it, or use a vacuum with a HEPA filter.",
            "task",
            "osha-1910-94",
        )
    if asked.task == "blast-cabinet":
        yield Caution(
            "caution",
            "A cabinet does without a blasting respirator only while it draws air in at every opening and no dust comes out. "
            "Wait until it is clear before you open it.",
            "task",
            "osha-1910-94",
        )


def _stops(asked: Inputs, found: Finding) -> Iterator[Caution]:
    if found.wrong_type:
        yield Caution(
            "stop",
            "Where nozzle and operator share the air, whatever the numbers: an air-line respirator whose label names abrasive "
            "blasting (type CE). Do not blast in anything else.",
            "blasting-approved" if RESPIRATORS[asked.respirator]["air"] == "supplied" else "respirator",
            "osha-1910-94",
        )
    for one in found.in_danger:
        yield Caution(
            "stop",
            f"{one.name} is over {shop_number(one.danger_mg_m3)} mg/m3: immediate danger to life or health. Do not work in "
            "this air in any respirator. Leave it, and change the work.",
            "agents",
            "niosh-idlh",
        )
    if asked.respirator in TIGHT and asked.fit == "none":
        yield Caution(
            "stop",
            "Without a fit test, or with a beard at the seal, nothing is credited. Do not work in it. A hood or loose-fitting "
            "unit needs no fit test.",
            "fit",
            "osha-1910-134",
        )
    elif found.verdict == "not-enough" and not found.in_danger:
        yield Caution(
            "stop",
            f"The air is {found.needs} times what may be breathed, and this respirator counts for "
            f"{shop_number(found.factor)}. Do not work in it: less dust first, then a better class.",
            "respirator",
            "osha-1910-134",
        )
    if found.unmeasured and found.verdict in ("measure-first", "wrong-type"):
        names = ", ".join(one.said for one in found.unmeasured)
        yield Caution(
            "stop",
            f"Not measured: {names}. No respirator can be passed for air that nobody has measured. Do not start until it "
            "has been sampled at the face, by someone who knows how.",
            "agents",
            "osha-1910-134",
        )
