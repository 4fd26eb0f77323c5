"""What blast-or-not asks. Every option is a value that the rule table knows; a test holds the two together."""

from __future__ import annotations

from dataclasses import dataclass

from calculators.kit.fields import Choice, Limits, Option, Quantity, When, ask
from calculators.tables import table

DATA = table("blasting_rules")
# Each is asked only of metals on which some rule listens to the answer; a test holds that the hidden ones change nothing.
ASKED = {
    key: When("metal", tuple(DATA["groups"]["metal"][group]))
    for key, group in (
        ("thickness", "worked"),
        ("service", "worked"),
        ("rust", "can-rust"),
        ("oily", "castings"),
    )
}


def _metal(slug: str, label: str) -> Option:
    """The other words for a metal stand in the table that all calculators share."""
    row = table("metals").get(slug, {})
    return Option(slug, label, tuple(row.get("aliases", ())))


@dataclass(frozen=True)
class Inputs:
    metal: str = ask(
        Choice(
            group="The part",
            label="Metal",
            hint="A magnet holds on steel and iron, hardly on most stainless",
            options=(
                _metal("carbon-steel", "Carbon steel"),
                _metal("cast-iron", "Cast iron"),
                Option("aluminium-wrought", "Aluminium, sheet or section", ("aluminum-wrought",)),
                Option("aluminium-cast", "Aluminium, casting", ("aluminum-cast",)),
                _metal("galvanised", "Galvanised steel"),
                _metal("stainless", "Stainless steel"),
                _metal("zinc-die-cast", "Zinc die casting"),
                _metal("copper-brass", "Copper or brass"),
                _metal("magnesium", "Magnesium"),
                Option("other", "Another metal"),
                Option("unknown", "Not sure", ("not-sure",)),
            ),
            default="cast-iron",
        )
    )
    part: str = ask(
        Choice(
            label="Kind of part",
            options=(
                Option("general", "General, none of these"),
                Option("wheel", "Road wheel"),
                Option("safety-part", "Brake, steering, suspension or lifting part"),
                Option("cylinder-or-strut", "Gas cylinder, gas strut or shock absorber"),
                Option("cookware", "Cooking surface"),
                Option("with-rubber-or-bearings", "Has rubber, seals, bearings or magnets in it"),
                Option("not-sure", "Not sure what it carries"),
            ),
            default="general",
        )
    )
    thickness_mm: float | None = ask(
        Quantity(
            label="Thickness",
            hint="The thinnest place that the blast will hit, empty if not sure",
            units=("in", "mm"),
            default="5/8",
            limits=Limits("0.004 in", "40 in", "from shim to the heaviest casting"),
            may_be_empty=True,
            when=ASKED["thickness"],
        )
    )
    service: str = ask(
        Choice(
            label="Where it will stand",
            options=(
                Option("indoors", "Indoors and dry"),
                Option("outdoors", "Outdoors"),
                Option("salt", "Outdoors by the sea or a salted road"),
                Option("not-sure", "Not sure"),
            ),
            default="salt",
            when=ASKED["service"],
        )
    )
    coating: str = ask(
        Choice(
            group="What is on it",
            label="Coating",
            hint="The worst that you can see",
            options=(
                Option("none", "None, bare metal"),
                Option("powder-sound", "Powder, sound all over"),
                Option("paint-sound", "Paint, sound"),
                Option("flaking", "Flaking, chipped or bubbled"),
                Option("unknown", "Not sure", ("not-sure",)),
                Option("chrome-plating", "Chrome plating"),
                Option("yellow-or-cadmium-plating", "Yellow plating or cadmium"),
                Option("anodised", "Anodised", ("anodized",)),
                Option("filler-or-solder", "Body filler or solder"),
            ),
            default="flaking",
        )
    )
    lead_known: str = ask(
        Choice(
            label="Lead and chromate test",
            hint="By a laboratory; swabs miss some",
            options=(
                Option("not-tested", "Not tested, or not sure", ("not-sure",)),
                Option("tested-free", "Tested, none found"),
                Option("lead-found", "Tested, lead or chromate found"),
                Option("never-coated", "Never coated since new"),
            ),
            default="not-tested",
        )
    )
    rust: str = ask(
        Choice(
            label="Rust or scale",
            hint="Mill scale is the blue-grey skin of hot-rolled steel",
            options=(
                Option("none", "None"),
                Option("mill-scale", "Mill scale"),
                Option("light", "Light rust"),
                Option("heavy", "Heavy rust"),
                Option("not-sure", "Not sure"),
            ),
            default="heavy",
            when=ASKED["rust"],
        )
    )
    oily: str = ask(
        Choice(
            label="Oil or grease",
            hint="A casting soaks oil up",
            options=(Option("yes", "Yes, or not sure", ("not-sure",)), Option("no", "No")),
            default="yes",
            few=True,
            when=ASKED["oily"],
        )
    )
    sealed_hollows: str = ask(
        Choice(
            group="What can hurt you",
            label="Hollows",
            hint="Tubes, boxes and castings that are closed all round",
            options=(
                Option("no", "None"),
                Option("vented", "Hollow, with open vents"),
                Option("yes", "Hollow and sealed"),
                Option("not-sure", "Not sure"),
            ),
            default="no",
        )
    )
    held: str = ask(
        Choice(
            label="What it held",
            hint="Tanks, pipes and vessels, ever",
            options=(
                Option("nothing", "Nothing"),
                Option("fuel-or-solvent", "Fuel or solvent"),
                Option("gas-or-pressure", "Gas or anything under pressure"),
                Option("not-sure", "Not sure"),
            ),
            default="nothing",
        )
    )
