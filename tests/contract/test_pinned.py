"""A calculator's example says the same until its version goes up."""

from __future__ import annotations

import pytest

from tests.contract.record import outcome_of, recorded
from tests.contract.support import SLUGS

HOW = "raise the calculator's version, then run: python -m tests.contract.record"


@pytest.mark.pin
@pytest.mark.parametrize("slug", SLUGS)
def test_the_example_changes_only_with_the_version(slug: str) -> None:
    assert slug in recorded(), "not recorded yet; run: python -m tests.contract.record"
    assert outcome_of(slug) == recorded()[slug], HOW


def test_nothing_is_recorded_of_calculators_that_are_gone() -> None:
    assert set(recorded()) <= set(SLUGS)
