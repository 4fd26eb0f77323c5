"""What the two clients print is read as found, as sound, or as not asked; silence is never taken for sound."""

from __future__ import annotations

import json
import sys
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[2] / "scripts"))

from audit import lines, read_npm, read_pip_audit


def pip_said(*packages: dict[str, object]) -> str:
    return json.dumps({"dependencies": list(packages), "fixes": []})


SOUND = {"name": "sound", "version": "1", "vulns": []}
BAD = {"name": "bad", "version": "2", "vulns": [{"id": "CVE-0", "fix_versions": ["2.1"], "aliases": []}]}
UNKNOWN = {"name": "unknown", "skip_reason": "could not be audited"}


def test_a_known_defect_is_found() -> None:
    answer = read_pip_audit(pip_said(SOUND, BAD))
    assert answer.found == ["bad 2: CVE-0, mended in 2.1"]
    npm = read_npm(
        '{"vulnerabilities": {"bad": {"range": "<2", "severity": "high"}}, "metadata": {"dependencies": {"total": 9}}}'
    )
    assert npm.found == ["bad <2: high"]
    assert lines([answer, npm])[1] == "  bad 2: CVE-0, mended in 2.1"


def test_all_asked_and_nothing_known() -> None:
    npm = read_npm('{"vulnerabilities": {}, "metadata": {"dependencies": {"total": 9}}}')
    assert lines([read_pip_audit(pip_said(SOUND)), npm]) == [
        "Python packages: nothing known against 1",
        "Node packages: nothing known against 9",
    ]


def test_no_answer_is_not_run() -> None:
    for text in ("", "[]", "no JSON", "{}", pip_said(UNKNOWN)):
        (line,) = lines([read_pip_audit(text)])
        assert line.startswith("Python packages: not run: ")
    for text in ("", "{}", '{"message": "405 - POST https://example.org/audit", "error": {"summary": ""}}'):
        (line,) = lines([read_npm(text)])
        assert line.startswith("Node packages: not run: ")
        assert "example.org" not in line


def test_half_an_answer_says_so() -> None:
    assert lines([read_pip_audit(pip_said(SOUND, UNKNOWN))])[-1] == (
        "Python packages: in part not run: 1 of 2 packages could not be looked up"
    )
