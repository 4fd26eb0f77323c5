"""Run one long set-up command, showing how long it has taken and, if it fails, what to do.

Standard library only and written for Python 3.9, because it runs before the environment exists.
"""

from __future__ import annotations

import os
import subprocess
import sys
import tempfile
import time
from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import Union

Command = Sequence[Union[str, Path]]
QUIET_REPORT_S = 15.0


class SetupFailed(Exception):
    """A set-up step did not work; the message says what to do about it."""


def say(text: str, end: str = "\n") -> None:
    print(text, end=end, file=sys.stderr, flush=True)


def run_step(
    label: str,
    command: Command,
    advice: str,
    cwd: Path | None = None,
    env: Mapping[str, str] | None = None,
    limit_s: float = 1800.0,
) -> None:
    """Run a command quietly, counting seconds; SetupFailed holds its last lines if it fails."""
    on_screen = sys.stderr.isatty()
    started = time.monotonic()
    next_report_s = QUIET_REPORT_S
    if not on_screen:
        say(f"{label} ...")
    with tempfile.TemporaryFile() as log:
        try:
            process = subprocess.Popen(
                [str(part) for part in command],
                stdin=subprocess.DEVNULL,
                stdout=log,
                stderr=subprocess.STDOUT,
                cwd=None if cwd is None else str(cwd),
                env={**os.environ, **(env or {})},
            )
        except OSError as problem:
            raise SetupFailed(f"{label} could not start ({problem}). {advice}") from problem
        try:
            while process.poll() is None:
                elapsed_s = time.monotonic() - started
                if elapsed_s > limit_s:
                    process.kill()
                    process.wait()
                    raise SetupFailed(f"{label} was stopped after {elapsed_s:.0f} s. {advice}")
                if on_screen:
                    say(f"\r{label} ... {elapsed_s:.0f} s", end="")
                elif elapsed_s >= next_report_s:
                    say(f"  still at it after {elapsed_s:.0f} s")
                    next_report_s += QUIET_REPORT_S
                time.sleep(0.2)
        except KeyboardInterrupt:
            process.terminate()
            process.wait()
            raise
        elapsed_s = time.monotonic() - started
        if process.returncode != 0:
            log.seek(0)
            last_lines = log.read().decode("utf-8", "replace").splitlines()[-25:]
            raise SetupFailed(
                "\n".join([*last_lines, "", f"{label} failed after {elapsed_s:.0f} s. {advice}"])
            )
    say(f"\r{label}: done in {elapsed_s:.0f} s" if on_screen else f"  done in {elapsed_s:.0f} s")
