"""ground-check through the door: the megohm rule, what a bad ground climbs to, and a meter that reads open."""

from __future__ import annotations

import json
import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calculators import run
from calculators.kit.steps import evaluate
from calculators.physics.electrostatics import spark_energy_mJ, voltage_that_lights_kV
from tests.asking import asker, number

SLUG = "ground-check"
answer = asker(SLUG)


def verdict(**texts: str) -> object:
    return answer(**texts).answers["verdict"].value


@pytest.mark.published
@pytest.mark.parametrize(
    ("capacitance_pF", "voltage_kV", "low_mJ", "high_mJ"),
    [(10, 10, 0.5, 0.5), (20, 15, 2, 2.3), (200, 20, 40, 40), (200, 10, 10, 10)],
    ids=["flange", "scoop", "drum", "person"],
)
def test_spark_energies_of_a_leaflet(
    capacitance_pF: float, voltage_kV: float, low_mJ: float, high_mJ: float
) -> None:
    """A pigment maker's safety leaflet (read) prints 0.5, 2, 40 and 10 to 30 mJ for flange, scoop, 200 L drum and person.

    The scoop works out at 2.25, which the leaflet rounds to 2; the person at 200 pF and 10 kV is its low end.
    Capacitance and voltage of each are from memory of IEC 60079-32-1's annex.
    """
    energy = spark_energy_mJ(capacitance_pF, voltage_kV)
    assert low_mJ <= energy <= high_mJ


@pytest.mark.published
@pytest.mark.parametrize("thing", ["hook", "bucket", "drum"])
def test_one_megohm(thing: str) -> None:
    """NFPA 33 in the words of NEC 2008, 516.10 (an extract was read): parts grounded through a resistance of 1 megohm or less."""
    assert verdict(object=thing, resistance="1 Mohm") == "good"
    assert verdict(object=thing, resistance="1.001 Mohm") == "bad"
    assert number(answer(object=thing), "limit") == 1


@pytest.mark.published
def test_a_person_through_shoes() -> None:
    """IEC TS 60079-32-1, from memory: at most 1e8 ohm from a person through footwear to earth."""
    assert verdict(object="person", resistance="100 Mohm") == "good"
    assert verdict(object="person", resistance="101 Mohm") == "bad"
    assert verdict(object="person", resistance="OL") == "bad"


@pytest.mark.derived
@pytest.mark.parametrize(
    ("capacitance", "ignition", "kV"),
    [("15 pF", "3", 20.0), ("50 pF", "3", 10.95), ("200 pF", "3", 5.48), ("200 pF", "10", 10.0), ("200 pF", "20", 14.1)],
)  # fmt: skip
def test_voltage_that_lights(capacitance: str, ignition: str, kV: float) -> None:
    """V = sqrt(2 MIE / C), by hand: sqrt(2 x 3e-3 / 15e-12) = 20,000 V, and so on."""
    outcome = answer(capacitance=capacitance, ignition_energy=ignition)
    assert number(outcome, "lights-from") == pytest.approx(kV, rel=4e-3)


@pytest.mark.derived
@pytest.mark.parametrize(
    ("resistance", "volts", "ms"), [("1 Mohm", 100, 0.2), ("100 Mohm", 10_000, 20), ("900 Mohm", 80_000, 180)]
)
def test_ohms_law_and_time_constant(resistance: str, volts: float, ms: float) -> None:
    """100 uA x 1 megohm = 100 V, x 100 megohm = 10 kV, x 900 would be 90 kV, over the gun's 80. 1 megohm x 200 pF = 0.2 ms."""
    outcome = answer(resistance=resistance, current="100 uA", capacitance="200 pF", gun_voltage="80 kV")
    assert number(outcome, "voltage") == pytest.approx(volts)
    assert number(outcome, "discharge") == pytest.approx(ms)


@pytest.mark.property
@pytest.mark.parametrize("word", ["OL", "ol", " O.L ", "0L", "open", "over range"])
def test_a_meter_that_reads_open_gives_no_infinite_number(word: str) -> None:
    outcome = answer(resistance=word, test_voltage="1000")
    assert outcome.answers["verdict"].value == "bad"
    assert number(outcome, "voltage") == 80_000
    assert outcome.answers["discharge"].value is None
    assert outcome.answers["discharge"].text.startswith("never")
    said = json.dumps(outcome.to_json(), allow_nan=False) + outcome.html + outcome.text
    for line in outcome.steps:
        assert math.isfinite(evaluate(line.numbers))
    assert not [bad for bad in ("inf ", "nan", "Infinity", "=inf") if bad in said.casefold()]
    # and the link still says what was typed
    assert "resistance=" in outcome.query
    assert run(SLUG, {"resistance": word, "test-voltage": "1000"}).headline == outcome.headline


@pytest.mark.property
def test_a_weak_meter_or_film_proves_nothing() -> None:
    assert verdict(resistance="OL", test_voltage="9 V") == "retest"
    assert verdict(resistance="OL", test_voltage="499 V") == "retest"
    assert verdict(resistance="OL", test_voltage="500 V") == "bad"
    assert verdict(resistance="0.2 Mohm", test_voltage="9 V") == "good"
    assert verdict(resistance="20 Mohm", test_voltage="9 V") == "bad"
    for resistance in ("0 ohm", "0.2 Mohm", "OL"):
        assert verdict(resistance=resistance, contact="film") == "retest"


@pytest.mark.property
def test_capitals_count() -> None:
    assert verdict(resistance="300 mohm") == verdict(resistance="0.3 Mohm") == "good"
    assert verdict(resistance="300 Mohm") == "bad"
    assert number(answer(resistance="300 Mohm"), "voltage") == pytest.approx(30_000)
    assert number(answer(resistance="300 mohm"), "voltage") == pytest.approx(3e-5)


@pytest.mark.property
@settings(max_examples=40, deadline=None, derandomize=True)
@given(
    resistance=st.floats(0, 1e14), current=st.floats(0, 1000), gun=st.floats(1, 150), capacitance=st.floats(1, 1e5),
)  # fmt: skip
def test_it_never_climbs_over_the_gun_and_energy_goes_with_the_square(
    resistance: float, current: float, gun: float, capacitance: float
) -> None:
    outcome = answer(
        resistance=f"{resistance!r} ohm", current=f"{current!r}", gun_voltage=f"{gun!r}",
        capacitance=f"{capacitance!r} pF",
    )  # fmt: skip
    volts = number(outcome, "voltage")
    assert 0 <= volts <= gun * 1000 * (1 + 1e-9)
    assert number(outcome, "energy") == pytest.approx(
        0.5 * capacitance * 1e-12 * volts**2 * 1000, rel=1e-9, abs=1e-300
    )
    lights = voltage_that_lights_kV(capacitance, 3)
    assert spark_energy_mJ(capacitance, lights) == pytest.approx(3)


def test_it_stops_before_the_tester_is_used() -> None:
    good = answer(resistance="0.1 Mohm")
    texts = [one.text for one in good.cautions if one.level == "stop"]
    assert any("guns off" in text and "spark source" in text for text in texts)
    person = answer(object="person", resistance="10 Mohm")
    texts = [one.text for one in person.cautions if one.level == "stop"]
    assert any("Never put a person across an insulation tester" in text for text in texts)
    bad = answer(resistance="OL")
    assert bad.cautions[0].level == "stop"
    assert bad.cautions[0].text.startswith("Do not spray")


def test_words_that_are_no_resistance_are_refused() -> None:
    outcome = run(SLUG, {"resistance": "fine"})
    assert outcome.errors[0].message == "Resistance to earth must be a number, like 0.4 Mohm"
    assert "resistance=fine" in outcome.query


def test_thousandths_of_an_ohm_are_questioned() -> None:
    """900 mohm typed for 900 Mohm would read as the best of grounds."""
    told = answer(resistance="900 mohm")
    assert told.answers["verdict"].value == "good"
    assert any(one.level == "caution" and "Mohm" in one.text for one in told.cautions)
    for plain in ("0", "4 ohm", "0.4 Mohm", "OL"):
        assert not any("thousandth" in one.text for one in answer(resistance=plain).cautions)


@pytest.mark.parametrize(
    ("thing", "words"),
    [("hook", "Do not spray on it."), ("person", "Do not spray."), ("bucket", "Do not use it near powder."),
     ("drum", "Do not use it near powder.")],
)  # fmt: skip
def test_the_stop_speaks_of_what_was_tested(thing: str, words: str) -> None:
    stop = next(
        one for one in answer(object=thing, resistance="900 Mohm").cautions if one.key == "resistance"
    )
    assert stop.level == "stop" and stop.text.startswith(f"{words} Its spark" if thing != "person" else words)
    assert "on it" not in stop.text or thing == "hook"


def test_within_the_limit_and_still_able_to_light_it_is_said() -> None:
    """100 Mohm x 100 uA is 10 kV; 0.5 x 200 pF x (10 kV)^2 is 10 mJ, over 3 mJ, at a resistance that the rule allows."""
    told = answer(object="person", resistance="100 Mohm")
    assert told.answers["verdict"].value == "good"
    assert any(one.level == "caution" and "10 mJ" in one.text for one in told.cautions)
    assert not any(one.level == "caution" for one in answer(object="person", resistance="1 Mohm").cautions)


def test_a_low_voltage_is_said_in_volts() -> None:
    assert answer(object="drum", resistance="2", current="10").headline.endswith("It can climb to 20 V")
    assert answer(resistance="900 Mohm").headline.endswith("It can climb to 80 kV")
