"""The job sheet's way through the shop."""

from __future__ import annotations

from calculators import slugs
from calculators.tables import table


def test_each_calculator_stands_at_one_step() -> None:
    placed = [slug for step in table("route").values() for slug in step["calculators"]]
    assert sorted(placed) == sorted(slugs())


def test_what_every_job_wants_is_among_what_is_asked() -> None:
    assert all(set(step["core"]) <= set(step["calculators"]) for step in table("route").values())
