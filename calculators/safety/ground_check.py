"""Is this hook grounded well enough? Its resistance against the rule, and the spark that it could give."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from math import inf, isinf

from calculators.kit.calculator import Calculator, Out, Vary
from calculators.kit.chart import Axis, Chart, Mark, Series
from calculators.kit.numbers import shop_number
from calculators.kit.result import Caution, Given, Result, Value
from calculators.kit.steps import Step, step
from calculators.physics.electrostatics import (
    charged_to_kV,
    discharge_ms,
    spark_energy_mJ,
    voltage_that_lights_kV,
)
from calculators.safety._ground_inputs import THINGS, Inputs
from calculators.tables import table

OBJECTS = table("electrostatics")
LEAST_TEST_V = 500.0
LOWEST_OHM = 1.0  # less than a meter's leads have: more likely a capital that was left out
DO_NOT = {
    "hook": "Do not spray on it. Its",
    "person": "Do not spray. This person's",
    "bucket": "Do not use it near powder. Its",
    "drum": "Do not use it near powder. Its",
}
NAMES = {"hook": "hook or part", "person": "person", "bucket": "rack or bucket", "drum": "drum"}


@dataclass(frozen=True)
class Spark:
    """What the thing could do: limit and resistance in ohm, voltage in kV, energy in mJ."""

    limit_ohm: float
    capacitance_pF: float
    voltage_kV: float
    energy_mJ: float
    lights_kV: float


def solve(asked: Inputs) -> Result:
    row = OBJECTS[asked.object]
    capacitance = float(row["capacitance_pF"] if asked.capacitance_pF is None else asked.capacitance_pF)
    voltage = charged_to_kV(asked.current_uA, asked.resistance_ohm, asked.gun_voltage_kV)
    spark = Spark(
        row["ground_Mohm"] * 1e6,
        capacitance,
        voltage,
        spark_energy_mJ(capacitance, voltage),
        voltage_that_lights_kV(capacitance, asked.ignition_energy_mJ),
    )
    verdict = _verdict(asked, spark.limit_ohm)
    return Result(
        answers=_answers(asked, spark, verdict),
        cautions=tuple(_cautions(asked, spark, verdict)),
        steps=_steps(asked, spark),
        charts=(_chart(asked, spark),),
        headline=_headline(asked, spark, verdict),
    )


def _verdict(asked: Inputs, limit_ohm: float) -> str:
    if asked.object in THINGS:
        if asked.contact == "film":
            return "retest"
        if isinf(asked.resistance_ohm) and asked.test_voltage_V < LEAST_TEST_V:
            return "retest"
    return "good" if asked.resistance_ohm <= limit_ohm * (1 + 1e-12) else "bad"


def _answers(asked: Inputs, spark: Spark, verdict: str) -> dict[str, Given]:
    discharge = discharge_ms(asked.resistance_ohm, spark.capacitance_pF)
    return {
        "verdict": verdict,
        "voltage": _floored(spark.voltage_kV * 1000, 1.0, "V"),
        "energy": _floored(spark.energy_mJ, 0.001, "mJ"),
        "against-ignition": _floored(spark.energy_mJ / asked.ignition_energy_mJ, 0.001, "times"),
        "limit": spark.limit_ohm / 1e6,
        "lights-from": spark.lights_kV,
        "discharge": Value(words="never: it keeps its charge")
        if discharge == inf
        else _floored(discharge, 0.001, "ms"),
        "why": _why(asked),
    }


def _floored(number: float, least: float, unit: str) -> Value:
    """The number, shown as under the least that means anything where it is smaller."""
    return Value(number, words=f"under {least:g} {unit}" if number < least else "")


def _why(asked: Inputs) -> tuple[str, ...]:
    if asked.object == "person":
        return (
            "On dry soles, or with a glove between hand and gun, a person charges like a part and sparks from a finger",
            "Static-dissipative shoes on a clean conducting floor, and a bare hand or a conducting glove on the grounded handle",
        )
    return (
        "Cured powder insulates. Where it lies between hook and bar, the charge that the gun lays down cannot leave",
        "The hook then climbs until it jumps: a spark, in the one place where there is a cloud of powder",
        "Before it sparks it coats badly: a charged part pushes powder away",
        "Strip the hook bright where it touches, at both ends, or give it sharp edges that cut through. Test it again",
    )


def _headline(asked: Inputs, spark: Spark, verdict: str) -> str:
    limit = f"{spark.limit_ohm / 1e6:g} megohm"
    if verdict == "retest":
        return "Test again: on bare metal, with 500 V or more"
    if verdict == "good":
        return f"Good: no more than {limit} to earth"
    kV = spark.voltage_kV
    climb = f"{shop_number(kV, 2)} kV" if kV >= 1 else f"{shop_number(1000 * kV, 2)} V"
    return f"Bad: over {limit} to earth. It can climb to {climb}"


def _cautions(asked: Inputs, spark: Spark, verdict: str) -> Iterator[Caution]:
    more = spark.energy_mJ / asked.ignition_energy_mJ
    if verdict == "bad":
        energy = (
            f"spark could hold {shop_number(spark.energy_mJ, 2)} mJ, {shop_number(more, 2)} times what lights the powder."
            if more >= 1
            else f"spark stays under what lights this powder ({shop_number(spark.energy_mJ, 2)} of "
            f"{shop_number(asked.ignition_energy_mJ, 2)} mJ) with these figures, but a larger part or a higher current changes "
            "that, and the rule does not ask for the energy."
        )
        yield Caution("stop", f"{DO_NOT[asked.object]} {energy}", "resistance", "nfpa-33")
    if verdict == "good" and more >= 1:
        yield Caution(
            "caution",
            "Within the rule, but if all of the gun's current landed here the spark would hold "
            f"{shop_number(spark.energy_mJ, 2)} mJ, {shop_number(more, 2)} times what lights this powder. "
            "Get the resistance well under the limit.",
            "resistance",
            "spark-energy",
        )
    if 0 < asked.resistance_ohm < LOWEST_OHM:
        yield Caution(
            "caution",
            "That is under 1 ohm, less than a meter's own leads. mohm is a thousandth of an ohm: if the meter showed M for "
            "megohm, write Mohm.",
            "resistance",
        )
    if verdict == "retest":
        why = (
            "The probe stands on cured powder, which insulates: the reading says nothing of the metal under it."
            if asked.contact == "film"
            else "A meter under 500 V can read open through a thin film that the gun's voltage would break."
        )
        yield Caution(
            "stop",
            f"No verdict. Do not spray until it is tested again. {why}",
            "resistance",
            "common-practice",
        )
    if asked.object == "person":
        yield Caution(
            "stop",
            "Never put a person across an insulation tester. Do not test a person with it, at any setting. Use a footwear "
            "tester made for people, which limits the current.",
            "object",
        )
    else:
        yield Caution(
            "stop",
            "The tester is itself a spark source. Do not test while powder is in the air: guns off and locked off, booth air run "
            "until clear, then test. Nobody touches the part.",
            "test-voltage",
        )
    if verdict == "good" and asked.object in THINGS and asked.test_voltage_V < LEAST_TEST_V:
        yield Caution(
            "note",
            "Read with less than 500 V. A low reading on bare metal stands; a later open one must be taken again with 500 V.",
            "test-voltage",
            "common-practice",
        )
    if asked.ignition_energy_mJ < 3:
        yield Caution(
            "caution",
            "Under 3 mJ even weak discharges from insulating surfaces may count, which grounding does not stop. Such a "
            "powder needs its maker's and a specialist's advice.",
            "ignition-energy",
            "iec-60079-32-1",
        )


def _steps(asked: Inputs, spark: Spark) -> tuple[Step, ...]:
    resistance = asked.resistance_ohm
    if isinf(resistance):
        steps = [
            step(
                "Voltage it can climb to: no way to earth, so the gun's own",
                "V = U",
                "kV",
                U=spark.voltage_kV,
            )
        ]
    else:
        steps = [
            step(
                "Voltage it can climb to, at most the gun's",
                "V = min(I * R / 1000, U)",
                "kV",
                I=asked.current_uA,
                R=resistance / 1e6,
                U=asked.gun_voltage_kV,
            )
        ]
    steps.append(
        step(
            "Energy of its spark",
            "E = 0.5 * C * V ** 2 / 1000",
            "mJ",
            C=spark.capacitance_pF,
            V=spark.voltage_kV,
        )
    )
    steps.append(
        step(
            "Voltage from which the spark lights the powder",
            "V_lights = sqrt(2 * MIE * 1000 / C)",
            "kV",
            MIE=asked.ignition_energy_mJ,
            C=spark.capacitance_pF,
        )
    )
    if not isinf(resistance):
        steps.append(
            step(
                "Time in which the charge falls to a third",
                "tau = R * C / 1000",
                "ms",
                R=resistance / 1e6,
                C=spark.capacitance_pF,
            )
        )
    return tuple(steps)


def _chart(asked: Inputs, spark: Spark) -> Chart:
    top = max(asked.gun_voltage_kV, min(1.2 * spark.lights_kV, 2 * asked.gun_voltage_kV))
    volts = tuple(top * place / 40 for place in range(41))
    if spark.lights_kV <= top:
        says = (
            f"The spark grows with the square of the voltage; from {shop_number(spark.lights_kV, 2)} kV it lights this powder. "
            f"As it stands, the {NAMES[asked.object]} can climb to {shop_number(spark.voltage_kV, 2)} kV."
        )
    else:
        says = "The spark grows with the square of the voltage; with these figures it stays under what lights this powder."
    return Chart(
        title="Energy of the spark against voltage",
        says=says,
        x=Axis(f"voltage of the {NAMES[asked.object]}, kV", 0, top),
        y=Axis("energy of its spark, mJ", 0),
        series=(Series("spark", volts, tuple(spark_energy_mJ(spark.capacitance_pF, one) for one in volts)),),
        marks=(
            Mark("this one", spark.voltage_kV, spark.energy_mJ),
            Mark(f"lights this powder, {shop_number(asked.ignition_energy_mJ, 3)} mJ", y=asked.ignition_energy_mJ),
        ),
    )  # fmt: skip


CALCULATOR = Calculator(
    title="Ground check",
    question="Is this hook grounded well enough to spray on?",
    inputs=Inputs,
    solve=solve,
    answers=(
        Out(
            key="verdict",
            label="This ground",
            meaning="Bad: clean or change the hook before any powder. Retest: the reading proves nothing either way.",
            main=True,
            options={"good": "good", "bad": "bad", "retest": "test again"},
        ),
        Out(
            key="voltage",
            label="Can climb to",
            meaning="While the gun's current lands on it. A good ground keeps it under about 100 V.",
            unit="V",
            shown=("V", "kV"),
            beside=True,
        ),
        Out(
            key="energy",
            label="Energy of its spark",
            meaning="All in one spark, because it is metal or a person. Hold it against what lights the powder.",
            unit="mJ",
            beside=True,
        ),
        Out(
            key="against-ignition",
            label="Of what lights the powder",
            meaning="1 or more: one spark is enough where the cloud is thick enough.",
            unit="ratio",
            shown=("ratio",),
        ),
        Out(
            key="limit",
            label="Most resistance allowed",
            meaning="1 megohm for work and equipment, 100 megohm for a person through shoes and floor.",
            unit="Mohm",
        ),
        Out(
            key="lights-from",
            label="Lights the powder from",
            meaning="The voltage at which this thing's spark holds the ignition energy.",
            unit="kV",
        ),
        Out(
            key="discharge",
            label="Loses its charge in",
            meaning="To a third of it, after the gun is off. Well grounded is far under a blink.",
            unit="ms",
        ),
        Out(
            key="why",
            label="What happens and what to do",
            meaning="Read it to whoever hangs parts.",
        ),
    ),
    sources=(
        "nfpa-33",
        "osha-1910-107",
        "iec-60079-32-1",
        "powder-clouds",
        "static-energy-table",
        "spark-energy",
        "common-practice",
    ),
    version=1,
    reviewed="2026-11-25",
    keywords=("ground", "earth", "megohm", "hook", "rack", "static", "spark", "grounding"),
    limits=(
        "It judges one reading at one place. Test each kind of hook at its worst, and again as it gets caked.",
        "Capacitance is a usual figure unless you enter one. A long rack full of parts holds far more than a hook.",
        "It does not say that a booth is safe: powder lights from flames, hot parts, tools and insulators that charge, too.",
        "The ignition energy comes from the powder's safety data sheet; a fine or metallic powder can have far less.",
        "The spark's energy is worked with all of the gun's current landing on the thing, which is the worst case.",
    ),
    vary=Vary(
        "resistance",
        ("0.1 Mohm", "1 Mohm", "10 Mohm", "100 Mohm", "900 Mohm", "OL"),
        ("verdict", "voltage", "energy", "discharge"),
    ),
    standing=(
        Caution(
            "note",
            "US: NFPA 33 and 29 CFR 1910.107 (work through 1 megohm or less); beside them IEC 60079-32-1, EN 50050 and "
            "EN 50177. The rule's text, local codes and a qualified person decide.",
            "",
            "nfpa-33",
        ),
    ),
    default_cautions=(("stop", "test-voltage"), ("stop", "resistance")),
)
