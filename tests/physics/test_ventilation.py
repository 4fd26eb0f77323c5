"""Air through booths and ovens, against an ODE solver."""

from __future__ import annotations

import pytest
from scipy.integrate import solve_ivp

from calculators.physics.ventilation import face_velocity_m_s, left_share, mean_cloud_g_m3, purge_s


@pytest.mark.derived
@pytest.mark.parametrize("changes", [1, 4, 7.5])
def test_dilution_by_an_ode(changes: float) -> None:
    """V dc/dt = -Q c, solved by scipy for 12 m3 at 0.25 m3/s over the purge time."""
    volume, flow = 12.0, 0.25
    done = solve_ivp(
        lambda t, c: -flow / volume * c, (0, purge_s(volume, changes, flow)), [1.0], rtol=1e-9, atol=1e-12
    )
    assert left_share(changes) == pytest.approx(done.y[0][-1], rel=1e-6)


@pytest.mark.derived
def test_a_booth_settles_at_the_mean_cloud() -> None:
    """V dc/dt = m (1 - TE) - Q c, solved by scipy for 20 m3, 3.333 g/s, 40 % sticking, 2 m3/s: after 200 s it is steady."""
    done = solve_ivp(lambda t, c: (200 / 60 * 0.6 - 2 * c) / 20, (0, 200), [0.0], rtol=1e-9, atol=1e-12)
    assert mean_cloud_g_m3(200 / 60, 0.4, 2) == pytest.approx(done.y[0][-1], rel=1e-6)


@pytest.mark.derived
def test_air_speed_in_shop_units() -> None:
    """4,200 cfm into 8 x 7 ft is 75 ft/min, which is 75 x 0.3048 / 60 = 0.381 m/s."""
    speed = face_velocity_m_s(4200 * 0.3048**3 / 60, 56 * 0.3048**2)
    assert speed == pytest.approx(0.381)
