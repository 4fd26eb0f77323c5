"""How shares of a table of limits add up: exact at its lines, straight in ln t between them, and cautious outside."""

from __future__ import annotations

from math import exp, log

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calculators.physics.reheating import reheating_limit_min, reheating_used

LINES = [(176.7, 480.0), (190.6, 60.0), (204.4, 30.0), (218.3, 15.0), (232.2, 5.0)]


@pytest.mark.derived
def test_between_the_lines_by_numpy() -> None:
    """numpy.interp on the logarithm of time."""
    temperatures, logs = [line[0] for line in LINES], [log(line[1]) for line in LINES]
    for metal in np.linspace(176.7, 232.2, 57):
        expected = exp(float(np.interp(metal, temperatures, logs)))
        assert reheating_limit_min(LINES, float(metal)) == pytest.approx(expected, rel=1e-9)


@pytest.mark.property
def test_outside_the_lines() -> None:
    assert reheating_limit_min(LINES, 20.0) == 480.0
    assert reheating_limit_min(LINES, 176.7) == 480.0
    assert reheating_limit_min(LINES, 232.2) == pytest.approx(5.0)
    assert reheating_limit_min(LINES, 232.3) is None
    assert reheating_used(LINES, [(180.0, 5.0), (240.0, 0.1)]) is None
    assert reheating_used(LINES, []) == 0.0


@pytest.mark.property
@settings(max_examples=60, deadline=None, derandomize=True)
@given(bakes=st.lists(st.tuples(st.floats(100, 232), st.floats(0, 500)), max_size=8), cut=st.integers(0, 8))
def test_shares_of_parts_add_up_to_the_share_of_the_whole(bakes: list[tuple[float, float]], cut: int) -> None:
    parts = [reheating_used(LINES, some) for some in (bakes[:cut], bakes[cut:])]
    assert None not in parts
    assert reheating_used(LINES, bakes) == pytest.approx(sum(part for part in parts if part is not None))
