"""What ground-check asks."""

from __future__ import annotations

from dataclasses import dataclass
from math import inf

from calculators.kit.fields import Choice, Limits, Option, Quantity, When, ask

THINGS = ("hook", "bucket", "drum")
# what meters show in place of a number when no current gets through
OPEN_WORDS = ("OL", "0L", "O.L", "0.L", "O.L.", "open", "over", "over range", "infinite", "infinity")


@dataclass(frozen=True)
class Inputs:
    object: str = ask(
        Choice(
            group="The reading",
            label="What is tested",
            options=(
                Option("hook", "Hook or part", ("hanger", "part")),
                Option("person", "Person", ("operator", "sprayer")),
                Option("bucket", "Rack, bucket or small drum", ("rack", "hopper")),
                Option("drum", "Drum", ("barrel",)),
            ),
            default="hook",
        )
    )
    resistance_ohm: float = ask(
        Quantity(
            label="Resistance to earth",
            hint="From bare metal of the part to earth. OL if the meter reads open. Mohm is a million ohm, mohm a thousandth",
            units=("Mohm", "ohm", "kohm", "Gohm", "mohm"),
            default="900 Mohm",
            limits=Limits("0 ohm", "100000 Gohm", "more is what no meter reads"),
            example="0.4 Mohm",
            words=tuple((word, inf) for word in OPEN_WORDS),
        )
    )
    test_voltage_V: float = ask(
        Quantity(
            label="Test voltage",
            hint="Of the tester: 500 V or more for hooks; a pocket meter has about 9 V",
            units=("V", "kV"),
            default="500",
            limits=Limits("0.1 V", "5000 V", "from a pocket meter to a large insulation tester"),
            when=When("object", THINGS),
        )
    )
    contact: str = ask(
        Choice(
            label="Probe on",
            options=(
                Option("bare-metal", "Bare metal", ("bare", "metal")),
                Option("film", "Cured powder", ("powder", "paint", "coated")),
            ),
            default="bare-metal",
            few=True,
            when=When("object", THINGS),
        )
    )
    current_uA: float = ask(
        Quantity(
            group="What could happen",
            label="Current from the gun",
            hint="What the gun's display shows; all of it is taken to land on this thing",
            units=("uA", "mA"),
            default="100",
            limits=Limits("0 uA", "1000 uA", "more than a powder gun gives"),
        )
    )
    gun_voltage_kV: float = ask(
        Quantity(
            label="Gun voltage",
            hint="Nothing climbs higher than this",
            units=("kV", "V"),
            default="80",
            limits=Limits("1 kV", "150 kV", "what powder guns give"),
        )
    )
    capacitance_pF: float | None = ask(
        Quantity(
            label="Capacitance",
            hint="Empty takes a usual one: hook 20, rack or bucket 100, drum or person 200 pF",
            units=("pF", "nF"),
            limits=Limits("1 pF", "100000 pF", "from a screw to a large machine"),
            may_be_empty=True,
            example="20 pF",
        )
    )
    ignition_energy_mJ: float = ask(
        Quantity(
            label="Ignition energy of the powder",
            hint="From its safety data sheet (MIE). Ordinary powder 3 to 20, with bare metal flake under 1",
            units=("mJ", "joule"),
            default="3",
            limits=Limits("0.01 mJ", "10000 mJ", "from the touchiest dust to one that hardly burns"),
            example="3 mJ",
        )
    )
