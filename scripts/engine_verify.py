"""Show that building the engine again, somewhere else, gives the same bytes, and none that tell where."""

from __future__ import annotations

import io
import tempfile
import zipfile
from concurrent.futures import ProcessPoolExecutor
from pathlib import Path

import engine
import environment
from engine_bundle import source_files
from engine_files import EngineError
from environment import ROOT


def verify() -> str:
    """Build from two copies of the sources in two places: the bytes must be the same, and no place be in them.

    What was built so is what the site then gets.
    """
    key = engine.key_of_sources(image=True)
    with tempfile.TemporaryDirectory() as first, tempfile.TemporaryDirectory() as second:
        places = [Path(first) / "a", Path(second) / "another-place" / "with a space"]
        for path in [*source_files(ROOT / "calculators"), *(ROOT / engine.NODE_SCRIPTS).iterdir()]:
            data = path.read_bytes()
            for place in places:
                copy = place / path.relative_to(ROOT)
                copy.parent.mkdir(parents=True, exist_ok=True)
                copy.write_bytes(data)
        with ProcessPoolExecutor(len(places)) as at_once:
            made = list(at_once.map(_assemble, places))
        contents = [{path.name: path.read_bytes() for path in folder.iterdir()} for folder in made]
        for name in sorted(contents[0].keys() | contents[1].keys()):
            if contents[0].get(name) != contents[1].get(name):
                raise EngineError(f"{name} differs between two builds of the same sources.")
        if made[0].name != made[1].name:
            raise EngineError("Two builds of the same sources got different names.")
        named = [
            str(path).encode() for path in (first, second, ROOT, environment.VENV, Path.home() / ".pyenv")
        ]
        for name, data in _readable(contents[0]).items():
            for path in named:
                if path in data:
                    raise EngineError(f"{name} holds a path of this machine: {path.decode()}")
        lines = "".join(f"{path.decode()}\n" for path in named)
        held = engine.run_node(ROOT, "held-texts.mjs", made[0], doing="search the memory image", typed=lines)
        if held:
            raise EngineError(f"The memory image holds a path of this machine: {held}")
        if engine.key_of_sources(image=True) == key:
            engine.keep(made[0].parent, key)
    image = contents[0][engine.IMAGE]
    packed = contents[0][f"{engine.IMAGE}.gz"]
    return (
        f"{len(contents[0])} files built twice, byte for byte alike; image {len(image) / 1e6:.1f} MB, "
        f"{len(packed) / 1e6:.2f} MB as gzip"
    )


def _assemble(place: Path) -> Path:
    return engine.assemble(place, place / "made", image=True)


def _readable(files: dict[str, bytes]) -> dict[str, bytes]:
    """The files as they are once unpacked, with each zip's members beside."""
    found = {}
    for name, data in files.items():
        if name.endswith(".zip"):
            with zipfile.ZipFile(io.BytesIO(data)) as members:
                found |= {f"{name}: {member}": members.read(member) for member in members.namelist()}
        elif not name.endswith(".gz"):
            found[name] = data
    return found
