"""coverage through the door: the trade's constant, and the same mass balance as powder-needed."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.spray.film_support import answer, number

SLUG = "coverage"


@pytest.mark.published
def test_the_constant() -> None:
    """NIST SP 811 (2008), Appendix B.9, from memory: 1 lb/ft3 = 16.01846 kg/m3, so a pound of water is 12 000 / 62.428 = 192.22
    ft2 at 1 mil."""
    outcome = answer(SLUG, film="1 mil", specific_gravity="1", transfer="100", shelf="2 lb")
    assert number(outcome, "coverage") == pytest.approx(192.22, abs=0.01)
    assert number(outcome, "covers") == pytest.approx(2 * 192.22, abs=0.02)


@pytest.mark.derived
def test_the_demo_powder() -> None:
    """192.22 x 0.6 / (2.5 x 1.5) = 30.76 ft2/lb; 5 lb cover 153.8 ft2; without loss 51.26."""
    outcome = answer(SLUG)
    assert number(outcome, "coverage") == pytest.approx(30.755, abs=5e-3)
    assert number(outcome, "covers") == pytest.approx(153.8, abs=0.05)
    assert number(outcome, "no-loss") == pytest.approx(51.26, abs=0.01)


@pytest.mark.property
@settings(max_examples=50, deadline=None, derandomize=True)
@given(
    film=st.floats(0.2, 60), gravity=st.floats(0.8, 4), transfer=st.floats(5, 100), reclaim=st.floats(0, 99)
)
def test_the_area_that_it_covers_needs_that_powder(
    film: float, gravity: float, transfer: float, reclaim: float
) -> None:
    powder = {
        "film": f"{film!r}", "specific_gravity": f"{gravity!r}", "transfer": f"{transfer!r}", "reclaim": f"{reclaim!r}",
    }  # fmt: skip
    covers = number(answer(SLUG, **powder, shelf="3 lb"), "covers")
    needed = answer("powder-needed", **powder, area=f"{covers!r}", spare="0")
    assert number(needed, "powder") == pytest.approx(3)
