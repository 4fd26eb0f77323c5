"""One commit makes one site: two builds are the same to the byte."""

from __future__ import annotations

import hashlib
import os
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]


def digests(folder: Path) -> dict[str, str]:
    return {
        path.relative_to(folder).as_posix(): hashlib.sha256(path.read_bytes()).hexdigest()
        for path in sorted(folder.rglob("*"))
        if path.is_file()
    }


def test_two_builds_are_the_same_to_the_byte(tmp_path: Path) -> None:
    """Pages, styles, lists and compressed copies; the engine has a check of its own in tests/runtime."""
    made = []
    for place, chance in (("first", "1"), ("second/deeper", "2")):
        folder = tmp_path / place
        settings = {**os.environ, "SOURCE_DATE_EPOCH": "1767225600", "PYTHONHASHSEED": chance}
        subprocess.run(
            [sys.executable, ROOT / "scripts" / "build.py", "--no-engine", "--out", folder],
            cwd=ROOT,
            env=settings,
            check=True,
        )
        made.append(digests(folder))
    assert made[0] == made[1]
    assert len(made[0]) > 100
