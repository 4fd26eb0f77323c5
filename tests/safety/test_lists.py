"""Lists of the safety calculators: one line in a terminal or a message, so no item ends in a full stop before the next."""

from __future__ import annotations

import pytest

from calculators import run


@pytest.mark.parametrize(
    ("slug", "texts"),
    [
        ("respirator-check", {}),
        ("respirator-check", {"task": "spraying", "respirator": "half-air-purifying"}),
        ("ground-check", {}),
        ("ground-check", {"object": "person"}),
        ("oven-purge", {}),
        ("oven-purge", {"heat": "electric"}),
        ("waste-screen", {}),
        ("waste-screen", {"metals": "lead, 1"}),
    ],
)
def test_a_list_reads_as_one_line(slug: str, texts: dict[str, str]) -> None:
    for one in run(slug, texts).answers.values():
        assert ".; " not in one.text, one.key
