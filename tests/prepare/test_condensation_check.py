"""condensation-check through the door: the 3 C rule, a psychrometrics library, and readings that drift."""

from __future__ import annotations

import psychrolib
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calculators import run
from tests.asking import asker, number

SLUG = "condensation-check"
answer = asker(SLUG)


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


@pytest.mark.derived
def test_drift_in_a_straight_line() -> None:
    """Saturated air: the dew point is the air's temperature. Air from 50 to 54 F in 60 min under metal at 64 F: the margin falls
    from 14 to 10 F, 4 F in 60 min; from 10 to 5.4 F it is 4.6 / 4 x 60 = 69 min.
    """
    then = {"earlier": "60 min", "earlier_air": "50", "earlier_humidity": "100", "earlier_metal": "64"}
    outcome = answer(air_temperature="54", humidity="100", metal_temperature="64", **then)
    assert number(outcome, "time-left") == pytest.approx(69)


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
