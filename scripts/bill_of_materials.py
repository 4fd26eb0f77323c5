"""What the site is made of, for whoever has to know: site/sbom.json, in CycloneDX 1.5, from what is locked and installed.

"required" is what the site carries, "excluded" what only builds it. A component has a hash where it is one file: of what
the site was built with, Python's locks allow several, and they stay in scripts/locks.
"""

from __future__ import annotations

import base64
import json
import re
from importlib.metadata import distribution
from pathlib import Path
from typing import Any

import environment
import theme_parts
from engine_files import sha256

# The other packages build the site, and nothing of theirs is in it.
CARRIED_PYTHON = ("mkdocs-material",)
CARRIED_NODE = ("pyodide", "uqr")
PINNED = re.compile(r"^([a-z0-9][a-z0-9._-]*)==([^ ;\\]+)", re.MULTILINE)
# What SPDX, and so CycloneDX, calls a licence by; other words of a package stay words.
SPDX = ("Apache-2.0", "BSD-3-Clause", "MIT", "MPL-2.0", "PSF-2.0")

# Inside Pyodide beside CPython: licence (recalled, as no installed file says it), and where the compiled file says a version.
IN_PYODIDE = {
    "bzip2": ("bzip2-1.0.6", rb"(\d+\.\d+\.\d+), \d+-\w+-\d{4}"),
    "emscripten": ("MIT OR NCSA", None),
    "error-stack-parser": ("MIT", None),
    "expat": ("MIT", rb"expat_(\d+\.\d+\.\d+)"),
    "libffi": ("MIT", None),
    "libmpdec": ("BSD-2-Clause", None),
    "stackframe": ("MIT", None),
    "zlib": ("Zlib", rb"deflate (\d+\.\d+(?:\.\d+)*) Copyright"),
}


def components(engine: bool) -> list[dict[str, Any]]:
    """Every package that the site is built with or carries, in order. engine: whether the site has one."""
    found = _building()
    found += [*_theme(), *(_engine() if engine else [])]
    by_purl = {one["purl"]: one for one in found}
    return [by_purl[purl] for purl in sorted(by_purl)]


def _building() -> list[dict[str, Any]]:
    """What the locks name for building."""
    found = []
    for name, version in _pinned("site.txt"):
        scope = "required" if name in CARRIED_PYTHON else "excluded"
        found.append(_component(f"pkg:pypi/{name}", version, _stated(name), scope))
    packages = json.loads((environment.LOCKS / "package-lock.json").read_text("utf-8"))["packages"]
    for path, row in packages.items():
        if path and not row.get("dev"):
            name = path.removeprefix("node_modules/")
            algorithm, _, digest = row["integrity"].partition("-")
            made = _component(
                f"pkg:npm/{name.replace('@', '%40')}",
                row["version"],
                [{"expression": row["license"]}],
                "required" if name in CARRIED_NODE else "excluded",
                name=name,
            )
            made["hashes"] = [
                {"alg": algorithm.upper().replace("SHA", "SHA-"), "content": base64.b64decode(digest).hex()}
            ]
            found.append(made)
    return found


def _theme() -> list[dict[str, Any]]:
    found = [
        _component(f"pkg:npm/{one.name}", one.version, [{"expression": theme_parts.LICENCES[one.name]}])
        for one in theme_parts.packages()
    ]
    for folder, (name, licence) in theme_parts.ICONS.items():
        found.append(_component(f"pkg:generic/{folder}-icons", "", [{"expression": licence}], name=name))
    return found


def _engine() -> list[dict[str, Any]]:
    """The wheels that are compiled into it, and what Pyodide is made of."""
    found = []
    for (name, version), wheel in zip(_pinned("browser.txt"), environment.browser_wheels(), strict=True):
        made = _component(f"pkg:pypi/{name}", version, _stated(name))
        made["hashes"] = [{"alg": "SHA-256", "content": sha256(wheel.read_bytes())}]
        found.append(made)
    runtime = environment.NODE_FOLDER / "node_modules" / "pyodide"
    info = json.loads((runtime / "pyodide-lock.json").read_text("utf-8"))["info"]
    python = _component("pkg:generic/cpython", info["python"], [{"expression": "PSF-2.0"}])
    python["description"] = "The interpreter and its standard library, inside Pyodide"
    python["cpe"] = f"cpe:2.3:a:python:python:{info['python']}:*:*:*:*:*:*:*"
    found.append(python)
    compiled = (runtime / "pyodide.asm.wasm").read_bytes()
    for name, (licence, pattern) in IN_PYODIDE.items():
        said = re.search(pattern, compiled) if pattern else None
        version = said[1].decode() if said else ""
        if name == "emscripten":
            version = info["platform"].removeprefix("emscripten_").replace("_", ".")
        made = _component(f"pkg:generic/{name}", version, [{"expression": licence}])
        made["description"] = "Inside Pyodide"
        found.append(made)
    return found


def _pinned(lock: str) -> list[tuple[str, str]]:
    return PINNED.findall((environment.LOCKS / lock).read_text("utf-8"))


def _stated(name: str) -> list[dict[str, Any]]:
    """The licence as the installed package states it: by expression, in words, or as one of the index's classes."""
    metadata = distribution(name).metadata
    if expression := metadata.get("License-Expression"):
        return [{"expression": expression}]
    words = next(iter(metadata.get("License", "").splitlines()), "")
    classes = [one.split(" :: ")[-1] for one in metadata.get_all("Classifier", []) if "License ::" in one]
    named = [words] if words not in ("", "UNKNOWN") else classes
    return [{"license": {"id" if one in SPDX else "name": one}} for one in named]


def _component(
    purl: str, version: str, licences: list[dict[str, Any]], scope: str = "required", *, name: str = ""
) -> dict[str, Any]:
    made: dict[str, Any] = {
        "type": "library",
        "name": name or purl.rsplit("/", 1)[-1],
        "purl": f"{purl}@{version}" if version else purl,
        "scope": scope,
        "licenses": licences,
    }
    return {**made, "version": version} if version else made


def write(site: Path, version: str, *, engine: bool) -> None:
    """Write the list beside the site."""
    bill = {
        "bomFormat": "CycloneDX",
        "specVersion": "1.5",
        "version": 1,
        "metadata": {"component": {"type": "application", "name": "bare-metal-to-bake", "version": version}},
        "components": components(engine),
    }
    (site / "sbom.json").write_text(json.dumps(bill, indent=1, sort_keys=True) + "\n", "utf-8", newline="\n")
