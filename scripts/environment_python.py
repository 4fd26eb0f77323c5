"""Find the Python that the project's environment is made with.

Standard library only and written for Python 3.9, because it runs before the environment exists.
"""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

from environment_step import SetupFailed

# The runtime in the browser is a Python 3.13. Compiled files are only good in the version that made them,
# so the same version is used everywhere.
VERSION = (3, 13)
NAME = "{}.{}".format(*VERSION)

PROBE = "import ensurepip, ssl, sys, venv; print('%d.%d' % sys.version_info[:2])"


def answered_version(command: list[str]) -> str | None:
    """The version a candidate prints, or None when it does not run or cannot make an environment."""
    try:
        done = subprocess.run(
            [*command, "-c", PROBE], stdin=subprocess.DEVNULL, capture_output=True, text=True, timeout=20
        )
    except (OSError, subprocess.TimeoutExpired):
        return None
    return done.stdout.strip() if done.returncode == 0 else None


def candidates() -> Iterator[list[str]]:
    """Commands that may start the right Python, likeliest first."""
    yield [sys.executable]
    on_path = shutil.which(f"python{NAME}")
    if on_path:
        # A version manager's shim can be on PATH and fail, which is why each candidate is run.
        yield [on_path]
    launcher = shutil.which("py")
    if launcher:
        yield [launcher, f"-{NAME}"]
    home = Path.home()
    managed = Path(os.environ.get("PYENV_ROOT", home / ".pyenv")) / "versions"
    for pattern_root, pattern in [
        (managed, f"{NAME}.*/bin/python{NAME}"),
        (home / ".local/share/uv/python", f"cpython-{NAME}*/bin/python{NAME}"),
        (Path("/usr/local/bin"), f"python{NAME}"),
        (Path("/usr/bin"), f"python{NAME}"),
        (Path("/opt/homebrew/bin"), f"python{NAME}"),
        (Path("/Library/Frameworks/Python.framework/Versions") / NAME, f"bin/python{NAME}"),
        (
            Path(os.environ.get("LOCALAPPDATA", home)) / "Programs/Python",
            f"Python{NAME.replace('.', '')}/python.exe",
        ),
    ]:
        for found in sorted(pattern_root.glob(pattern), reverse=True):
            yield [str(found)]


def find_python() -> list[str]:
    """The command that starts the right Python; SetupFailed says what to install when there is none."""
    for command in candidates():
        if answered_version(command) == NAME:
            return command
    raise SetupFailed(
        f"This project needs Python {NAME} with its venv module, and none was found on this machine.\n"
        f"  Debian or Ubuntu: apt-get install python{NAME} python{NAME}-venv\n"
        f"  macOS or Windows: the Python {NAME} installer from python.org\n"
        f"  pyenv:            pyenv install {NAME}\n"
        "Then run the same command again."
    )
