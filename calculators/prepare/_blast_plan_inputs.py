"""What blast-plan asks."""

from __future__ import annotations

from dataclasses import dataclass

from calculators.kit.fields import Choice, Limits, Option, Quantity, Validity, When, ask
from calculators.tables import table

PRESSURE_FED = When("feed", ("pressure",))


def _rows(name: str) -> tuple[Option, ...]:
    return tuple(
        Option(slug, row["name"], tuple(row.get("aliases", ()))) for slug, row in table(name).items()
    )


@dataclass(frozen=True)
class Inputs:
    area_m2: float = ask(
        Quantity(
            group="The job",
            label="Area to blast",
            hint="All parts together",
            units=("ft2", "m2", "in2", "cm2"),
            default="41.2",
            limits=Limits("0.01 ft2", "100000 ft2", "a bracket to a bridge"),
            meaning="coated-area",
        )
    )
    surface: str = ask(Choice(label="What is on it", options=_rows("blast_rates"), default="heavy"))
    test_rate_m2_h: float | None = ask(
        Quantity(
            label="Your own rate",
            hint="Time one square foot and turn it into an hour: 30 s is 120 ft2/h. Empty for the guess",
            units=("ft2_h", "ft2_min", "m2_h", "m2_min"),
            limits=Limits(
                "0.1 ft2/h", "5000 ft2/h", "a cabinet on rust pits to an open blast with the largest nozzle"
            ),
            may_be_empty=True,
            example="40 ft2/h",
        )
    )
    operator_pace_percent: float = ask(
        Quantity(
            label="Share of the hour with the nozzle open",
            hint="Turning parts, filling and looking take the rest; time one hour of yours",
            units=("percent",),
            default="60",
            limits=Limits("5 %", "100 %", "all of the hour is a robot"),
        )
    )
    feed: str = ask(
        Choice(
            group="Nozzle and air",
            label="Feed",
            options=(
                Option("pressure", "Pressure pot", ("pot",)),
                Option("suction", "Suction gun, as in most cabinets", ("siphon",)),
            ),
            default="pressure",
            few=True,
        )
    )
    nozzle: str = ask(
        Choice(
            label="Nozzle",
            hint="The number is sixteenths of an inch of its bore when new",
            options=_rows("nozzles"),
            default="4",
            when=PRESSURE_FED,
        )
    )
    jet_bore_m: float = ask(
        Quantity(
            label="Bore of the air jet",
            hint="The small jet inside the gun, not the nozzle in front",
            units=("in", "mm"),
            default="1/8",
            limits=Limits("0.02 in", "1 in", "a pencil gun to the largest"),
            when=When("feed", ("suction",)),
        )
    )
    pressure_kPa: float = ask(
        Quantity(
            label="Pressure at the nozzle",
            hint="By a needle gauge through the hose, while it blasts",
            units=("psi", "bar", "kPa"),
            default="90",
            limits=Limits(
                "15 psi", "150 psi", "under it the air is not choked; hoses and pots end near the upper"
            ),
            validity=Validity(
                "50 psi",
                "125 psi",
                "nozzle-tables",
                "Past its ends the last two columns are carried on in a straight line.",
            ),
        )
    )
    wear: str = ask(
        Choice(
            label="Wear of the nozzle",
            hint="Try a drill bit of the next size in it",
            options=(
                Option("new", "New, or less than one size"),
                Option("one-size-up", "One size up or more"),
            ),
            default="new",
            few=True,
            when=PRESSURE_FED,
        )
    )
    helmet_air_m3_s: float = ask(
        Quantity(
            label="Air for the helmet",
            hint="A blasting hood takes 6 to 15 cfm of breathing air; 0 at a cabinet",
            units=("cfm", "L_min", "m3_h"),
            default="15",
            limits=Limits("0 cfm", "100 cfm", "a cabinet to several hoods"),
        )
    )
    compressor_m3_s: float = ask(
        Quantity(
            group="Compressor and hose",
            label="Compressor, delivered",
            hint="Cfm at the pressure it runs at, from its plate; not horsepower",
            units=("cfm", "m3_min", "L_s", "L_min", "m3_h"),
            default="150",
            limits=Limits("0.5 cfm", "5000 cfm", "a tyre pump to a plant"),
        )
    )
    tank_m3: float = ask(
        Quantity(
            label="Tank",
            hint="0 for none",
            units=("gal", "L", "ft3", "m3"),
            default="120",
            limits=Limits("0 gal", "10000 gal", "none to a plant's receiver"),
        )
    )
    tank_pressure_kPa: float = ask(
        Quantity(
            label="Tank pressure when full",
            units=("psi", "bar", "kPa"),
            default="125",
            limits=Limits("20 psi", "500 psi", "a small compressor to a high-pressure store"),
        )
    )
    hose_bore_m: float = ask(
        Quantity(
            label="Air hose, inside diameter",
            hint="From the compressor to the machine",
            units=("in", "mm"),
            default="1",
            limits=Limits("0.15 in", "4 in", "a tyre hose to a main"),
        )
    )
    hose_length_m: float = ask(
        Quantity(
            label="Air hose, length",
            units=("ft", "m"),
            default="50",
            limits=Limits("1 ft", "2000 ft", "a whip to a long yard"),
        )
    )
    abrasive: str = ask(
        Choice(group="The abrasive", label="Abrasive", options=_rows("abrasives"), default="garnet")
    )
    bulk_weight_kg_m3: float | None = ask(
        Quantity(
            label="Bulk weight",
            hint="Weigh a measured bucket; empty for the table's",
            units=("lb_ft3", "kg_m3", "g_cm3"),
            limits=Limits("20 lb/ft3", "400 lb/ft3", "nut shell to steel"),
            may_be_empty=True,
            example="140",
        )
    )
    reuse_ratio: float | None = ask(
        Quantity(
            label="Times the abrasive is used",
            hint="1 where it is not caught; empty for the table's",
            units=("ratio",),
            limits=Limits("1", "1000", "once to steel grit in a clean wheel"),
            may_be_empty=True,
            example="4",
        )
    )
    energy_price_money_kWh: float | None = ask(
        Quantity(
            label="Price of power",
            hint="In your own money; empty for no sum",
            units=("money_kWh",),
            may_be_empty=True,
            limits=Limits("0 a kWh", "1000 a kWh", "a price"),
            example="0.15",
        )
    )
