"""What the site is made of, for whoever has to know: site/sbom.json, in CycloneDX 1.5, from the locks."""

from __future__ import annotations

import json
import re
from pathlib import Path
from typing import Any

LOCKS = Path(__file__).resolve().parent / "locks"
# The other packages of Node build the site, and nothing of theirs is in it.
SHIPPED = ("pyodide", "uqr")
LINE = re.compile(r"^([a-z0-9][a-z0-9._-]*)==([^ ;\\]+)(.*)$")


def components() -> list[dict[str, Any]]:
    """Every package that the site is built with or carries, by name and version, with the hashes of the locks."""
    found: list[dict[str, Any]] = []
    for lock in ("browser.txt", "site.txt"):
        # what the browser gets is shipped; the rest builds the site
        scope = "required" if lock == "browser.txt" else "excluded"
        found += [_python(name, version, hashes, scope) for name, version, hashes in _pinned(LOCKS / lock)]
    packages = json.loads((LOCKS / "package-lock.json").read_text("utf-8"))["packages"]
    for path, row in packages.items():
        if path and not row.get("dev"):
            name = path.removeprefix("node_modules/")
            found.append(
                {
                    "type": "library",
                    "name": name,
                    "version": row["version"],
                    "purl": f"pkg:npm/{name.replace('@', '%40')}@{row['version']}",
                    "scope": "required" if name in SHIPPED else "excluded",
                    "licenses": [{"expression": row["license"]}] if "license" in row else [],
                }
            )
    by_purl = {one["purl"]: one for one in reversed(found)}
    return sorted(by_purl.values(), key=lambda one: one["purl"])


def _pinned(lock: Path) -> list[tuple[str, str, list[str]]]:
    rows: list[tuple[str, str, list[str]]] = []
    for line in lock.read_text("utf-8").splitlines():
        if start := LINE.match(line):
            rows.append((start[1], start[2], []))
        elif (hashed := re.search(r"--hash=sha256:([0-9a-f]{64})", line)) and rows:
            rows[-1][2].append(hashed[1])
    return rows


def _python(name: str, version: str, hashes: list[str], scope: str) -> dict[str, Any]:
    return {
        "type": "library",
        "name": name,
        "version": version,
        "purl": f"pkg:pypi/{name}@{version}",
        "scope": scope,
        "hashes": [{"alg": "SHA-256", "content": one} for one in hashes],
    }


def write(site: Path, version: str) -> None:
    """Write the list beside the site."""
    bill = {
        "bomFormat": "CycloneDX",
        "specVersion": "1.5",
        "version": 1,
        "metadata": {"component": {"type": "application", "name": "bare-metal-to-bake", "version": version}},
        "components": components(),
    }
    (site / "sbom.json").write_text(json.dumps(bill, indent=1, sort_keys=True) + "\n", "utf-8", newline="\n")
