"""A job at its limits and beyond them: whole, or refused with a sentence that names the limit. Never cut to fit."""

from __future__ import annotations

import json
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest

ROOT = Path(__file__).resolve().parents[2]
sys.path.insert(0, str(ROOT / "scripts"))

import environment  # noqa: E402

TOO_LARGE = "A job has at most 4,000,000 characters, and this one has more."
REASONS = {
    "101 calculations": "A job has at most 100 calculations, and this one has 101.",
    "a field too long": "The field log of bake-log has at most 1,000,000 characters, and this one has 1,000,001.",
    "a note too long": "A note has at most 5,000 characters, and this one has 5,001.",
    "a name too long": "The name of a job has at most 80 characters, and this one has 81.",
    "too many notes": "A part of a job has at most 100 fields or notes, and this one has 101.",
    "too large in all": TOO_LARGE,
    "a field that is no text": "This job is damaged.",
}


@pytest.fixture(scope="module")
def found() -> dict[str, Any]:
    script = Path(__file__).with_name("job_limits.mjs")
    done = subprocess.run(
        [str(environment.node()), str(script), str(ROOT / "docs" / "assets")],
        capture_output=True,
        text=True,
        encoding="utf-8",
        timeout=300,
    )
    assert done.returncode == 0, done.stderr[-2000:]
    read: dict[str, Any] = json.loads(done.stdout)
    return read


@pytest.mark.parametrize("name", ["a log of 20,000 lines", "100 calculations"])
def test_what_fits_goes_through_whole(found: dict[str, Any], name: str) -> None:
    """A log of 20,000 lines is as long as a calculator reads (at_most of Readings, calculators/kit/fields.py)."""
    one = found[name]
    assert one == {
        "file": "",
        "whole": True,
        "link": True,
        "put": "",
        "change": "",
        "unchanged": None,
        "on": "",
        "left": None,
    }


@pytest.mark.parametrize("name", REASONS)
def test_what_does_not_fit_is_refused_with_its_limit(found: dict[str, Any], name: str) -> None:
    one, reason = found[name], REASONS[name]
    assert one["file"] == f"{reason} It was left as it is."
    assert one["put"] == reason
    assert one["change"] == reason and one["unchanged"]
    assert one["on"] == f"{reason} It was left as it is." and one["left"]
    assert one["link"] == f"The link holds a job that cannot be read. {reason} Nothing was changed."


def test_a_link_that_would_be_too_long_is_not_made_nor_read(found: dict[str, Any]) -> None:
    assert found["no link"] == ""
    assert "A link has at most 200,000 characters, and this one has more." in found["a long link"]


def test_a_job_that_is_gone_is_told_from_one_that_cannot_be_read(found: dict[str, Any]) -> None:
    assert found["deleted"] == "This job was deleted in another tab."
    assert found["unreadable"] == "This is not a job, or it is damaged: it was left as it is."
    assert found["large"] == f"{TOO_LARGE} It was left as it is."


def test_where_a_page_came_from_is_taken_only_whole(found: dict[str, Any]) -> None:
    assert found["visits"] == ["a", *[""] * 10]
