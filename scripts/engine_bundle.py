"""Pack the calculators and the wheels they need, compiled, into the one zip that the browser unpacks.

The packages go through two tools made for this runtime: `pyodide py-compile` turns each wheel's sources into
byte code, and a pyodide-lock file says throughout which packages there are, with which hashes.
"""

from __future__ import annotations

import io
import json
import os
import subprocess
import sys
import zipfile
from email.parser import Parser
from pathlib import Path
from typing import Any

from engine_files import EngineError, sha256
from packaging.requirements import Requirement
from packaging.utils import canonicalize_name
from pyodide_lock import PackageSpec, PyodideLockSpec

ARCHIVE = "calculators.zip"
VERSION = "1.0.0"
# Everything gets the oldest date a zip can hold, so that packing again gives the same bytes.
ZIP_DATE = (1980, 1, 1, 0, 0, 0)
SOURCE_DATE_EPOCH = "315532800"
# A wheel's own tests are never imported; its RECORD no longer fits once the sources are compiled.
LEFT_OUT = ("/testsuite/", ".dist-info/RECORD", ".dist-info/entry_points.txt")


def source_files(calculators: Path) -> list[Path]:
    """The files of the package that are shipped, in a fixed order; tables for pages only are not."""
    return sorted(
        path
        for path in calculators.rglob("*")
        if path.suffix in {".py", ".toml"} and path.is_file() and path.parent.name != "pages"
    )


def bundle(calculators: Path, wheels: list[Path], runtime_lock: Path, scratch: Path) -> dict[str, bytes]:
    """Make calculators.zip and the pyodide-lock.json that describes it."""
    stage = scratch / "stage"
    stage.mkdir()
    for wheel in wheels:
        (stage / wheel.name).write_bytes(wheel.read_bytes())
    requirements = [f"{_metadata(wheel)['Name']}=={_metadata(wheel)['Version']}" for wheel in wheels]
    own = stage / f"calculators-{VERSION}-py3-none-any.whl"
    own.write_bytes(_own_wheel(calculators, requirements))

    info = PyodideLockSpec.from_json(runtime_lock).info
    lock = PyodideLockSpec(info=info, packages={})
    for wheel in sorted(stage.glob("*.whl")):
        package = _package(wheel)
        lock.packages[package.name] = package
    lock.check_wheel_filenames()
    _check_requirements(stage, lock)
    lock.to_json(stage / "pyodide-lock.json")
    _compile(stage)

    compiled = PyodideLockSpec.from_json(stage / "pyodide-lock.json")
    archive = _merge(stage, compiled)
    one = PackageSpec(
        name="calculators",
        version=VERSION,
        file_name=ARCHIVE,
        install_dir="site",
        sha256=sha256(archive),
        imports=sorted(name for package in compiled.packages.values() for name in package.imports),
    )
    shipped = PyodideLockSpec(info=info, packages={one.name: one})
    shipped.to_json(scratch / "pyodide-lock.json")
    return {ARCHIVE: archive, "pyodide-lock.json": (scratch / "pyodide-lock.json").read_bytes()}


def _own_wheel(calculators: Path, requirements: list[str]) -> bytes:
    """The calculators as a wheel, so that they go through the same steps as the packages they stand on."""
    info = f"calculators-{VERSION}.dist-info"
    needs = "".join(f"Requires-Dist: {requirement}\n" for requirement in requirements)
    entries = {
        f"calculators/{path.relative_to(calculators).as_posix()}": path.read_bytes()
        for path in source_files(calculators)
    }
    entries[f"{info}/METADATA"] = (
        f"Metadata-Version: 2.1\nName: calculators\nVersion: {VERSION}\n{needs}".encode()
    )
    entries[f"{info}/WHEEL"] = b"Wheel-Version: 1.0\nRoot-Is-Purelib: true\nTag: py3-none-any\n"
    return _zip(entries, zipfile.ZIP_STORED)


def _metadata(wheel: Path) -> Any:
    with zipfile.ZipFile(wheel) as files:
        (name,) = (name for name in files.namelist() if name.endswith(".dist-info/METADATA"))
        return Parser().parsestr(files.read(name).decode("utf-8"))


def _package(wheel: Path) -> PackageSpec:
    metadata = _metadata(wheel)
    with zipfile.ZipFile(wheel) as files:
        tops = {name.split("/")[0].removesuffix(".py") for name in files.namelist() if name.endswith(".py")}
    return PackageSpec(
        name=canonicalize_name(metadata["Name"]),
        version=metadata["Version"],
        file_name=wheel.name,
        install_dir="site",
        sha256=sha256(wheel.read_bytes()),
        imports=sorted(tops),
        depends=[canonicalize_name(need.name) for need in _needs(metadata)],
    )


def _needs(metadata: Any) -> list[Requirement]:
    """What a package needs in the browser, extras aside."""
    browser = {"sys_platform": "emscripten", "os_name": "posix", "platform_system": "Emscripten", "extra": ""}
    needs = [Requirement(line) for line in metadata.get_all("Requires-Dist") or []]
    return [need for need in needs if need.marker is None or need.marker.evaluate(browser)]


def _check_requirements(stage: Path, lock: PyodideLockSpec) -> None:
    for package in lock.packages.values():
        for need in _needs(_metadata(stage / package.file_name)):
            held = lock.packages.get(canonicalize_name(need.name))
            if held is None or not need.specifier.contains(held.version, prereleases=True):
                there = f"{held.version} is there" if held else "it is not among the browser's wheels"
                raise EngineError(f"{package.name} needs {need}, and {there}: see scripts/locks/browser.in.")


def _compile(stage: Path) -> None:
    """Compile every wheel of the folder in place; the lock there gets the new names and hashes."""
    command = [Path(sys.executable).with_name("pyodide"), "py-compile", "--silent", "--no-keep"]
    done = subprocess.run(
        [*map(str, command), "--compression-level", "0", str(stage)],
        # With a date given, byte code carries a hash of its source in place of the time it was written. Without
        # the columns that tracebacks underline, it is a fifth smaller.
        env={**os.environ, "SOURCE_DATE_EPOCH": SOURCE_DATE_EPOCH, "PYTHONNODEBUGRANGES": "1"},
        capture_output=True,
        text=True,
    )
    if done.returncode != 0:
        raise EngineError(f"The calculators could not be compiled:\n{(done.stdout + done.stderr)[-2000:]}")


def _merge(stage: Path, lock: PyodideLockSpec) -> bytes:
    entries: dict[str, bytes] = {}
    for package in lock.packages.values():
        data = (stage / package.file_name).read_bytes()
        if sha256(data) != package.sha256:
            raise EngineError(f"{package.file_name} does not have the hash its lock gives.")
        with zipfile.ZipFile(io.BytesIO(data)) as files:
            for name in files.namelist():
                if name.endswith("/") or any(part in name for part in LEFT_OUT):
                    continue
                if name in entries:
                    raise EngineError(f"Two packages bring {name}.")
                entries[name] = files.read(name)
    return _zip(entries, zipfile.ZIP_DEFLATED)


def _zip(entries: dict[str, bytes], compression: int) -> bytes:
    packed = io.BytesIO()
    with zipfile.ZipFile(packed, "w", compression, compresslevel=9) as files:
        for name in sorted(entries):
            entry = zipfile.ZipInfo(name, ZIP_DATE)
            entry.compress_type = compression
            entry.external_attr = 0o644 << 16
            entry.create_system = 3  # the same bytes on every system
            files.writestr(entry, entries[name])
    return packed.getvalue()


def read_runtime(folder: Path, hashes: Path) -> dict[str, bytes]:
    """The interpreter's files, each checked against the hash recorded for the pinned version."""
    pinned = json.loads(hashes.read_text(encoding="utf-8"))
    files = {}
    for name, expected in pinned["sha256"].items():
        path = folder / name
        if not path.is_file():
            raise EngineError(
                f"{name} of {pinned['package']} {pinned['version']} is missing: run scripts/check.py."
            )
        files[name] = path.read_bytes()
        if sha256(files[name]) != expected:
            raise EngineError(f"{name} is not the file of {pinned['package']} {pinned['version']}.")
    return files
