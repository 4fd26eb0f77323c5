"""The engine under test is the one that the site ships, built by scripts/engine.py."""

from __future__ import annotations

import json
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]
sys.path.insert(0, str(ROOT / "scripts"))

import engine as engine_script  # noqa: E402
import environment  # noqa: E402

REPORT = pytest.StashKey[list[str]]()


@pytest.fixture(scope="session")
def engine(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The engine's folder."""
    out = tmp_path_factory.mktemp("engine")
    return out / engine_script.build(out).folder_name


@pytest.fixture(scope="session")
def node() -> Callable[..., list[str]]:
    """Run one of scripts/engine/*.mjs; gives the lines that it prints."""

    def run(script: str, *words: object, lines: list[str]) -> list[str]:
        command = [environment.node(), ROOT / "scripts" / "engine" / script, *words]
        done = subprocess.run(
            [str(part) for part in command],
            input="".join(f"{line}\n" for line in lines),
            capture_output=True,
            text=True,
            encoding="utf-8",
        )
        assert done.returncode == 0, done.stderr[-3000:]
        return done.stdout.splitlines()

    return run


@pytest.fixture
def report(request: pytest.FixtureRequest) -> Callable[[str], None]:
    """Say something in the summary of the test run."""
    return request.config.stash.setdefault(REPORT, []).append


def pytest_terminal_summary(terminalreporter: pytest.TerminalReporter) -> None:
    for line in terminalreporter.config.stash.get(REPORT, []):
        terminalreporter.write_line(line)


@pytest.fixture(scope="session")
def manifest(engine: Path) -> dict[str, object]:
    found: dict[str, object] = json.loads((engine / "manifest.json").read_text(encoding="utf-8"))
    return found
