"""Ask whether anything that the locks name has a known defect. Says so plainly where nobody answers.

    python3 scripts/audit.py

Both questions go out through the ordinary clients of the package registries, npm and pip-audit. A registry without
advisories, or a machine without a network, is no answer: then that part is "not run", which is not the same as sound.
"""

from __future__ import annotations

import json
import subprocess
import sys
import tempfile
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

import environment

TOOLS = environment.CACHE / "audit-tools"
PYTHON_LOCKS = ("browser.txt", "site.txt", "checks.txt")
# Where no network answers, it would go on waiting package by package.
LIMIT_s = 120


@dataclass(frozen=True)
class Answer:
    """What one client said. asked: of how many packages it knew anything, sound or not."""

    what: str
    asked: int = 0
    found: list[str] = field(default_factory=list)
    why_not: str = ""


def read_npm(text: str) -> Answer:
    """The JSON that `npm audit --json` prints."""
    said = _json(text)
    if "vulnerabilities" not in said:
        error = said.get("message") or said.get("error", {}).get("summary") or "npm gave no answer"
        return Answer("Node packages", why_not=_without_address(str(error)))
    found = [
        f"{name} {one.get('range', '')}: {one.get('severity', 'severity unknown')}"
        for name, one in sorted(said["vulnerabilities"].items())
    ]
    count = said.get("metadata", {}).get("dependencies", {}).get("total", 0)
    return Answer("Node packages", count, found, "" if count else "npm counted no packages")


def read_pip_audit(text: str) -> Answer:
    """The JSON that `pip-audit --format json` prints. It also ends well where it could look up nothing at all."""
    said = _json(text).get("dependencies", [])
    known = [one for one in said if "skip_reason" not in one]
    found = [
        f"{one['name']} {one['version']}: {defect['id']}, mended in {', '.join(defect['fix_versions']) or 'no version yet'}"
        for one in known
        for defect in one["vulns"]
    ]
    missed = len(said) - len(known)
    why_not = f"{missed} of {len(said)} packages could not be looked up" if missed else ""
    return Answer("Python packages", len(known), found, why_not if said else "pip-audit gave no answer")


def _json(text: str) -> dict[str, Any]:
    try:
        said = json.loads(text)
    except ValueError:
        return {}
    return said if isinstance(said, dict) else {}


def _without_address(words: str) -> str:
    return " ".join(word for word in words.split() if "://" not in word)[:200]


def ask_npm() -> Answer:
    with tempfile.TemporaryDirectory() as folder:
        for name in environment.NODE_FILES:
            (Path(folder) / name).write_bytes((environment.LOCKS / name).read_bytes())
        return read_npm(_output(environment.npm_command("audit", "--json"), folder))


def ask_pip_audit() -> Answer:
    lock = environment.LOCKS / "audit.txt"
    stamp = TOOLS / "stamp"
    if not stamp.is_file() or stamp.read_bytes() != lock.read_bytes():
        flags = ["--quiet", "--require-hashes", "--no-deps", "--upgrade", "--target", str(TOOLS)]
        done = subprocess.run(
            [sys.executable, "-m", "pip", "install", *flags, "-r", str(lock)], capture_output=True
        )
        if done.returncode:
            return Answer("Python packages", why_not="pip-audit could not be installed")
        stamp.write_bytes(lock.read_bytes())
    command = [sys.executable, "-m", "pip_audit", "--disable-pip", "--require-hashes", "--timeout", "15"]
    command += ["--progress-spinner", "off", "--format", "json"]
    command += [word for name in PYTHON_LOCKS for word in ("-r", str(environment.LOCKS / name))]
    return read_pip_audit(_output(command, str(TOOLS)))


def _output(command: list[str], folder: str) -> str:
    try:
        # both end with 1 where they found something
        done = subprocess.run(command, cwd=folder, capture_output=True, text=True, timeout=LIMIT_s)
    except (OSError, subprocess.TimeoutExpired):
        return ""
    return done.stdout


def lines(answers: list[Answer]) -> list[str]:
    said = []
    for one in answers:
        if one.found:
            said += [f"{one.what}: known defects:", *(f"  {found}" for found in one.found)]
        elif not one.why_not:
            said.append(f"{one.what}: nothing known against {one.asked}")
        if one.why_not:
            said.append(f"{one.what}: {'in part ' if one.asked else ''}not run: {one.why_not}")
    return said


def main() -> int:
    """0: all was asked and nothing is known; 1: a defect is known; 3: not all could be asked."""
    environment.ensure("checks")
    answers = [ask_npm(), ask_pip_audit()]
    print("\n".join(lines(answers)))
    if any(one.found for one in answers):
        return 1
    return 3 if any(one.why_not for one in answers) else 0


if __name__ == "__main__":
    sys.exit(main())
