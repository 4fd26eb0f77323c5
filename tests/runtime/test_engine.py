"""What the engine's folder holds, and that either way to start it gives the same answers."""

from __future__ import annotations

import gzip
import hashlib
import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from calculators import slugs
from calculators.kit.browser import run_json

EVERY_EXAMPLE = [json.dumps({"slug": slug, "texts": {}}) for slug in slugs()]
BUDGET_GZIP_MB = 10.0


def test_every_file_is_the_one_that_the_manifest_names(engine: Path, manifest: dict[str, Any]) -> None:
    assert manifest["image"] is True
    for name, entry in manifest["files"].items():
        data = (engine / name).read_bytes()
        assert len(data) == entry["bytes"], name
        assert hashlib.sha256(data).hexdigest() == entry["sha256"], name
    copies = {f"{name}.gz" for name in manifest["files"]}
    present = {path.name for path in engine.iterdir()}
    assert present - copies == {*manifest["files"], "manifest.json"} - copies


def test_compressed_copies_unpack_to_their_originals(engine: Path, manifest: dict[str, Any]) -> None:
    packed = list(engine.glob("*.gz"))
    assert packed
    for path in packed:
        assert gzip.decompress(path.read_bytes()) == path.with_suffix("").read_bytes(), path.name
    image = gzip.decompress((engine / "image.bin.gz").read_bytes())
    assert hashlib.sha256(image).hexdigest() == manifest["image_sha256"]
    assert len(image) == manifest["image_bytes"]
    parts = [hashlib.sha256(image[start : start + 2**20]).digest() for start in range(0, len(image), 2**20)]
    whole = hashlib.sha256(b"".join(parts)).hexdigest()
    assert manifest["files"]["image.bin"]["parts_sha256"] == whole


def test_a_first_visit_stays_within_its_budget_of_bytes(engine: Path, report: Callable[[str], None]) -> None:
    fetched = ("pyodide.mjs", "pyodide.asm.js", "pyodide.asm.wasm", "manifest.json", "image.bin")
    copies = [engine / f"{name}.gz" for name in fetched]
    size_MB = sum(path.stat().st_size for path in copies if path.exists()) / 1e6
    report(f"engine of a first visit, as gzip: {size_MB:.2f} MB of {BUDGET_GZIP_MB:.0f} MB")
    assert size_MB <= BUDGET_GZIP_MB


@pytest.mark.parametrize("mode", ["image", "ordinary"])
def test_every_example_is_answered_as_here(engine: Path, node: Callable[..., list[str]], mode: str) -> None:
    answers = node("answer.mjs", engine, mode, lines=EVERY_EXAMPLE)
    assert [json.loads(json.loads(answer)) for answer in answers] == [
        json.loads(run_json(request)) for request in EVERY_EXAMPLE
    ]


def test_the_lock_names_the_zip_that_is_shipped(engine: Path) -> None:
    lock = json.loads((engine / "pyodide-lock.json").read_text(encoding="utf-8"))
    (package,) = lock["packages"].values()
    archive = (engine / package["file_name"]).read_bytes()
    assert hashlib.sha256(archive).hexdigest() == package["sha256"]
    assert {"calculators", "pint"} <= set(package["imports"])
