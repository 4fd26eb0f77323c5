"""Jobs from files and links that nobody wrote in good faith, read by the page's own code in Node."""

from __future__ import annotations

import json
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]
sys.path.insert(0, str(ROOT / "scripts"))

import environment  # noqa: E402


@pytest.mark.property
@pytest.mark.parametrize("seed", [1, 2026])
def test_a_hostile_job_is_a_whole_job_or_a_sentence(seed: int) -> None:
    script = Path(__file__).with_name("hostile_jobs.mjs")
    done = subprocess.run(
        [str(environment.node()), str(script), str(ROOT / "docs" / "assets"), str(seed), "1500"],
        capture_output=True,
        text=True,
        encoding="utf-8",
        timeout=300,
    )
    assert done.returncode == 0, done.stderr[-2000:]
    found = json.loads(done.stdout)
    assert found["faults"] == []
    # both must have happened often, or nothing was tried
    assert found["taken"] > 500
    assert found["refused"] > 500
