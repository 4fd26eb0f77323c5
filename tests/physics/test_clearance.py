"""What a film does to a hole and a thread: geometry, drawn out flank by flank, and a printed thread table."""

from __future__ import annotations

from math import cos, radians, tan

import pytest

from calculators.physics.clearance import allowance_2a_in, film_change, pitch_diameter, thread_change


@pytest.mark.derived
def test_a_thread_flank_moved_outward() -> None:
    """A flank is the line r = x / tan 30 in the plane of the axis. Moved by t at right angles to itself, its distance along
    the axis grows by t / cos 30, so at a fixed x the radius grows by t / cos 30 / tan 30 = 2 t, and the diameter by 4 t.
    """
    film = 3.0
    radius = film / cos(radians(30)) / tan(radians(30))
    assert thread_change(film) == pytest.approx(2 * radius) == pytest.approx(12)


@pytest.mark.derived
def test_two_films_across_a_hole() -> None:
    """A 3 mil film on both sides of a hole: 6 mil less."""
    assert film_change(3) == 6


@pytest.mark.published
@pytest.mark.parametrize(
    ("major", "threads", "basic", "allowance"),
    [
        (0.25, 20, 0.2175, 0.0011),
        (0.375, 16, 0.3344, 0.0013),
        (0.5, 13, 0.4500, 0.0015),
        (1.0, 8, 0.9188, 0.0020),
    ],
    ids=["1/4-20", "3/8-16", "1/2-13", "1-8"],
)
def test_unified_coarse_threads(major: float, threads: int, basic: float, allowance: float) -> None:
    """ASME B1.1, basic pitch diameter and class 2A allowance of UNC threads, from memory."""
    assert pitch_diameter(major, 1 / threads) == pytest.approx(basic, abs=1e-4)
    assert allowance_2a_in(major, 1 / threads) == pytest.approx(allowance, abs=1e-4)


@pytest.mark.published
def test_metric_pitch_diameter() -> None:
    """ISO 724, M10 x 1.5: basic pitch diameter 9.026 mm, from memory."""
    assert pitch_diameter(10, 1.5) == pytest.approx(9.026, abs=5e-4)
