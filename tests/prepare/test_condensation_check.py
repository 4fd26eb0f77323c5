"""condensation-check through the door: the 3 C rule, a psychrometrics library, and readings that drift."""

from __future__ import annotations

import re

import psychrolib
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calculators import run
from calculators.kit.run import Outcome
from tests.asking import asker, number

SLUG = "condensation-check"
answer = asker(SLUG)


def verdict(**texts: str) -> object:
    return answer(**texts).answers["verdict"].value


@pytest.mark.published
@pytest.mark.parametrize(
    ("air", "humidity"), [(0, 20), (0, 95), (10, 60), (20, 60), (25, 70), (30, 80), (40, 20), (40, 95)]
)
def test_dew_point__psychrolib(air: int, humidity: int) -> None:
    """psychrolib (ASHRAE Fundamentals 2017, ch. 1), dew point from relative humidity, within 0.2 C = 0.36 F."""
    psychrolib.SetUnitSystem(psychrolib.SI)
    library = psychrolib.GetTDewPointFromRelHum(float(air), humidity / 100) * 1.8 + 32
    outcome = answer(air_temperature=f"{air} C", humidity=str(humidity), metal_temperature="30 C")
    assert number(outcome, "dew-point") == pytest.approx(library, abs=0.36)


@pytest.mark.published
@pytest.mark.parametrize(
    ("metal", "verdict"),
    [("22.1", "stop"), ("22.2", "wait"), ("23.5", "wait"), ("23.6", "go"), ("19", "stop")],
)
def test_three_degrees_above_the_dew_point__iso_8502_4(metal: str, verdict: str) -> None:
    """ISO 8502-4: steel at least 3 C above the dew point (second-hand). At 25 C and 70 % the dew point is 19.15 C, so 22.15 C.

    The upper end of the wait zone, 8 F (4.44 C), is our own.
    """
    outcome = answer(air_temperature="25 C", humidity="70", metal_temperature=f"{metal} C")
    assert outcome.answers["verdict"].value == verdict
    assert any(one.level == "stop" for one in outcome.cautions) == (verdict == "stop")


@pytest.mark.property
def test_exactly_the_limit_is_not_a_stop() -> None:
    """Saturated air has its own temperature for a dew point, so 3 C over it is 3 C of margin."""
    assert (
        answer(air_temperature="20 C", humidity="100", metal_temperature="23 C").answers["verdict"].value
        == "wait"
    )
    assert (
        answer(air_temperature="70 F", humidity="100", metal_temperature="75.4 F").answers["verdict"].value
        == "wait"
    )
    assert (
        answer(air_temperature="70 F", humidity="100", metal_temperature="78 F").answers["verdict"].value
        == "go"
    )
    assert (
        answer(air_temperature="70 F", humidity="100", metal_temperature="75.3 F").answers["verdict"].value
        == "stop"
    )


@pytest.mark.property
@settings(max_examples=40, deadline=None, derandomize=True)
@given(air=st.floats(0, 40), humidity=st.floats(20, 95), metal=st.floats(5, 40))
def test_at_the_highest_humidity_and_at_the_warmest_air_the_margin_is_the_limit(
    air: float, humidity: float, metal: float
) -> None:
    outcome = answer(air_temperature=f"{air!r} C", humidity=f"{humidity!r}", metal_temperature=f"{metal!r} C")
    dew = number(outcome, "dew-point")
    assert number(outcome, "margin") == pytest.approx(metal * 1.8 + 32 - dew)
    assert number(outcome, "least-metal") == pytest.approx(dew + 5.4)
    if isinstance(outcome.answers["highest-safe-humidity"].value, float):
        wettest = min(max(number(outcome, "highest-safe-humidity"), 1), 100)
        there = answer(
            air_temperature=f"{air!r} C", humidity=f"{wettest!r}", metal_temperature=f"{metal!r} C"
        )
        assert number(there, "margin") == pytest.approx(5.4, abs=1e-6) or wettest in (1, 100)
    if isinstance(outcome.answers["warmest-air"].value, float):
        warmest = number(outcome, "warmest-air")
        there = answer(
            air_temperature=f"{warmest!r} F", humidity=f"{humidity!r}", metal_temperature=f"{metal!r} C"
        )
        assert number(there, "margin") == pytest.approx(5.4, abs=1e-6)


def figures(outcome: Outcome, key: str) -> list[str]:
    """The temperatures that an answer quotes, as they would be typed: 61 F and 16.1 C."""
    return re.findall(r"-?\d+(?:\.\d+)? [FC]\b", outcome.answers[key].text)


@pytest.mark.property
@pytest.mark.parametrize("air", range(50, 96))
def test_a_quoted_figure_typed_back_is_no_stop(air: int) -> None:
    """Over 50 to 95 F and 30 to 90 %, in both units; and a tenth of a degree or a percent further it would be one."""
    for humidity in range(30, 91, 3):
        here = {"air_temperature": f"{air} F", "humidity": str(humidity)}
        outcome = answer(**here, metal_temperature="80 F")
        least = figures(outcome, "least-metal")
        assert len(least) == 2
        for text in least:
            degrees, unit = text.split()
            assert verdict(**here, metal_temperature=text) == "wait"
            assert verdict(**here, metal_temperature=f"{float(degrees) - 0.1:.1f} {unit}") == "stop"
        for text in figures(outcome, "warmest-air"):
            degrees, unit = text.split()
            there = {"humidity": str(humidity), "metal_temperature": "80 F"}
            assert verdict(**there, air_temperature=text) != "stop"
            assert verdict(**there, air_temperature=f"{float(degrees) + 0.1:.1f} {unit}") == "stop"
        wettest = outcome.answers["highest-safe-humidity"].text.removesuffix("%")
        if wettest.isdecimal():
            there = {"air_temperature": f"{air} F", "metal_temperature": "80 F"}
            assert verdict(**there, humidity=wettest) != "stop"
            assert int(wettest) == 99 or verdict(**there, humidity=str(int(wettest) + 1)) == "stop"


@pytest.mark.property
def test_a_figure_that_needs_no_rounding_is_quoted_as_it_is() -> None:
    """Saturated air at 70 F has its dew point there: 75.4 F, and the air may get to 70 F under metal of 75.4 F."""
    outcome = answer(air_temperature="70 F", humidity="100", metal_temperature="75.4 F")
    assert figures(outcome, "least-metal")[0] == "75.4 F"
    assert figures(outcome, "warmest-air")[0] == "70 F"


@pytest.mark.derived
def test_drift_in_a_straight_line() -> None:
    """Saturated air: the dew point is the air's temperature. Air from 50 to 54 F in 60 min under metal at 64 F: the margin falls
    from 14 to 10 F, 4 F in 60 min; from 10 to 5.4 F it is 4.6 / 4 x 60 = 69 min.
    """
    then = {"earlier": "60 min", "earlier_air": "50", "earlier_humidity": "100", "earlier_metal": "64"}
    outcome = answer(air_temperature="54", humidity="100", metal_temperature="64", **then)
    assert number(outcome, "time-left") == pytest.approx(69)


@pytest.mark.property
def test_the_time_until_the_limit_is_never_quoted_too_long() -> None:
    for tenths in range(525, 560):
        then = {"earlier": "60 min", "earlier_air": "50", "earlier_humidity": "90", "earlier_metal": "64"}
        outcome = answer(air_temperature=f"{tenths / 10}", humidity="98", metal_temperature="64", **then)
        quoted, unit = outcome.answers["time-left"].text.split()
        assert unit == "min"
        assert 0.9 * number(outcome, "time-left") < float(quoted) <= number(outcome, "time-left") + 1e-6


@pytest.mark.property
def test_drift_that_cannot_be_told_is_said_in_words() -> None:
    then = {"earlier": "1 h", "earlier_air": "50", "earlier_humidity": "100", "earlier_metal": "64"}
    now = {"humidity": "100", "metal_temperature": "64"}
    assert "more than 120 min" in answer(air_temperature="50.5", **now, **then).answers["time-left"].text
    assert "not falling" in answer(air_temperature="49", **now, **then).answers["time-left"].text
    assert "past the limit" in answer(air_temperature="62", **now, **then).answers["time-left"].text
    assert "no earlier" in answer(air_temperature="50", **now).answers["time-left"].text


@pytest.mark.property
def test_half_a_set_of_earlier_readings_is_refused_where_it_is_missing() -> None:
    outcome = run(SLUG, {"earlier": "60", "earlier-air": "70"})
    assert not outcome.ok
    assert {one.key for one in outcome.errors} == {"earlier-humidity", "earlier-metal"}


@pytest.mark.property
def test_wet_metal_and_cold_metal_are_told() -> None:
    assert "wet" in answer(metal_temperature="50").cautions[0].text
    assert [one.level for one in answer(metal_temperature="68").cautions] == ["note"]
    assert answer(metal_temperature="75").cautions == ()


@pytest.mark.property
def test_dry_but_hot_metal_is_not_for_powder() -> None:
    """104 F (40 C) before powder: common practice, no source."""
    cautions = answer(metal_temperature="110").cautions
    assert [(one.level, one.key, one.source) for one in cautions] == [
        ("caution", "metal-temperature", "common-practice")
    ]
    assert answer(metal_temperature="110").answers["verdict"].value == "go"
    assert answer(metal_temperature="104").cautions == ()
