"""Find a Chromium for the browser tests, and install one when none is there and it may be installed.

Standard library only and written for Python 3.9, because it runs before the environment exists.
"""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from functools import lru_cache
from pathlib import Path

from environment_step import SetupFailed, run_step, say

# The shell draws the same pages without a browser's own windows, which is less work.
SHELL = "chromium-headless-shell"
SYSTEM_NAMES = (SHELL, "chromium", "chromium-browser")
MAC_APPLICATION = Path("/Applications/Chromium.app/Contents/MacOS/Chromium")
ASK_PLAYWRIGHT = (
    "from playwright.sync_api import sync_playwright\n"
    "with sync_playwright() as p: print(p.chromium.executable_path)"
)


def answers(path: Path) -> bool:
    """Some distributions put a stand-in on PATH that only says how to install the browser: run it to know."""
    try:
        done = subprocess.run(
            [str(path), "--version"], stdin=subprocess.DEVNULL, capture_output=True, text=True, timeout=30
        )
    except (OSError, subprocess.TimeoutExpired):
        return False
    return done.returncode == 0 and "hromium" in done.stdout


def playwrights_own() -> Path | None:
    # Asked in a process of its own, because a test may already have Playwright running in this one.
    done = subprocess.run([sys.executable, "-c", ASK_PLAYWRIGHT], capture_output=True, text=True)
    path = Path(done.stdout.strip()) if done.returncode == 0 and done.stdout.strip() else None
    return path if path is not None and path.is_file() else None


def system_chromium() -> Path | None:
    found = [Path(place) for place in map(shutil.which, SYSTEM_NAMES) if place]
    return next((path for path in [*found, MAC_APPLICATION] if path.exists() and answers(path)), None)


def may_use_apt() -> bool:
    is_root = hasattr(os, "geteuid") and os.geteuid() == 0
    return is_root and Path("/etc/debian_version").exists() and shutil.which("apt-get") is not None


def install_with_apt() -> None:
    advice = "Install the package chromium by hand and run the same command again."
    quiet = {"DEBIAN_FRONTEND": "noninteractive"}
    run_step("Updating the package lists", ["apt-get", "update"], advice, env=quiet)
    try:
        run_step("Installing Chromium", ["apt-get", "install", "-y", SHELL], advice, env=quiet)
    except SetupFailed:  # older distributions have it only with its windows
        run_step("Installing Chromium", ["apt-get", "install", "-y", "chromium"], advice, env=quiet)


def install_with_playwright() -> None:
    advice = "Install a Chromium that starts with the command chromium, and run the same command again."
    run_step(
        "Downloading a Chromium",
        [sys.executable, "-m", "playwright", "install", "chromium"],
        advice,
        limit_s=600.0,
    )


@lru_cache(maxsize=1)
def chromium() -> Path:
    """The path of a Chromium that runs; raises SetupFailed saying what to do when there is none."""
    found = playwrights_own() or system_chromium()
    if found is not None:
        return found
    if may_use_apt():
        try:
            install_with_apt()
        except SetupFailed as problem:
            say(str(problem))
        found = system_chromium()
    if found is None:
        install_with_playwright()
        found = playwrights_own()
    if found is None or not answers(found):
        raise SetupFailed(
            "The browser tests need Chromium, and none could be found or installed. "
            "Install one that starts with the command chromium, and run the same command again."
        )
    return found
