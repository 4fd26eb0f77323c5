"""Write every lock file in this folder again, from the .in files and package.json.

    python3 scripts/locks/refresh.py            keep the pinned versions where they still fit
    python3 scripts/locks/refresh.py --upgrade  take the newest versions the .in files allow

Then run `python3 scripts/check.py`. The locks name versions and hashes but no address, so that they work
with whatever package index a machine is set up for.
"""

from __future__ import annotations

import re
import subprocess
import sys
from pathlib import Path

LOCKS = Path(__file__).resolve().parent
sys.path.insert(0, str(LOCKS.parent))

import environment

UV = "uv==0.13.9"
UV_FOLDER = environment.CACHE / "lock-tools"
HEADER = "# Written by scripts/locks/refresh.py from {name}.in. Do not edit by hand.\n"


def names_in(lock: Path) -> list[str]:
    return re.findall(r"^([a-z0-9][a-z0-9._-]*)==", lock.read_text(encoding="utf-8"), re.MULTILINE)


def lock_python(name: str, *flags: str) -> None:
    """Resolve NAME.in for every platform and write NAME.txt."""
    out = LOCKS / f"{name}.txt"
    command = [UV_FOLDER / "bin/uv", "pip", "compile", f"{name}.in", "--output-file", out.name]
    command += ["--python-version", "3.13", "--universal", "--generate-hashes", "--no-header", "--quiet"]
    command += ["--no-emit-index-url", "--no-emit-find-links", "--no-annotate", *flags]
    subprocess.run([str(part) for part in command], cwd=LOCKS, check=True)
    out.write_text(HEADER.format(name=name) + out.read_text(encoding="utf-8"), encoding="utf-8", newline="\n")


def lock_node() -> None:
    # A leftover lock keeps only this platform's optional packages, so start from none.
    (LOCKS / "package-lock.json").unlink(missing_ok=True)
    environment.npm("install", "--package-lock-only", "--ignore-scripts", cwd=LOCKS)


def refuse_addresses() -> None:
    """A lock with an address or a path of one machine would not work on another."""
    for lock in [*LOCKS.glob("*.txt"), LOCKS / "package-lock.json"]:
        for number, line in enumerate(lock.read_text(encoding="utf-8").splitlines(), 1):
            if re.search(r'file:|"resolved"|--(extra-)?index-url|--find-links| @ ', line):
                sys.exit(f"{lock.name} line {number} holds an address: {line.strip()}")


def main() -> None:
    environment.ensure("site")
    subprocess.run(
        [sys.executable, "-m", "pip", "install", "--quiet", "--target", UV_FOLDER, "--upgrade", UV],
        check=True,
    )
    upgrade = ["--upgrade"] if "--upgrade" in sys.argv[1:] else []
    lock_python("site", *upgrade)
    # checks.txt is installed on top of site.txt, so it leaves out what site.txt already names.
    already = [flag for name in names_in(LOCKS / "site.txt") for flag in ("--no-emit-package", name)]
    lock_python("checks", "--constraint", "site.txt", *already, *upgrade)
    lock_python("browser", "--constraint", "site.txt", *upgrade)
    lock_python("audit", *upgrade)
    lock_node()
    refuse_addresses()
    print("Locks written. Next: python3 scripts/check.py")


if __name__ == "__main__":
    main()
