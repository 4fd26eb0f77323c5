"""What makes the built site work without a network: the worker with its list of files, and the app's description."""

from __future__ import annotations

import base64
import hashlib
import json
from pathlib import Path

SCRIPTS = Path(__file__).resolve().parent
# What a start from the memory image asks for.
ENGINE = (
    "manifest.json",
    "pyodide.mjs",
    "pyodide.asm.js",
    "pyodide.asm.wasm",
    "functions.json",
    "image.bin.gz",
)
# Built for servers or for the browser's own start, never asked for by a page.
LEFT_OUT = (".gz", ".br", ".xml", ".map")
NEVER = ("service-worker.js", "sbom.json", "_headers", "vendor/uqr-LICENSE.txt")


def write(site: Path, engine: str) -> dict[str, int]:
    """Write site/service-worker.js. engine: the engine's folder below site/assets/engine. Returns bytes by kind."""
    files, size = {}, 0
    for path in sorted(site.rglob("*")):
        name = path.relative_to(site).as_posix()
        if not path.is_file() or path.suffix in LEFT_OUT or name.endswith(NEVER):
            continue
        if name.startswith(("assets/engine/", "licences/")):
            continue
        data = path.read_bytes()
        size += len(data)
        address = name.removesuffix("index.html") if name.endswith("index.html") else name
        files[address] = _hash(data)
    folder = site / "assets" / "engine" / engine
    engine_files = {name: _hash((folder / name).read_bytes()) for name in ENGINE}
    engine_size = sum(_moved(folder / name) for name in ENGINE)
    listed, engine_listed = (
        json.dumps(one, sort_keys=True, separators=(",", ":")) for one in (files, engine_files)
    )
    text = (SCRIPTS / "offline" / "service-worker.js").read_text("utf-8")
    version = hashlib.sha256((listed + engine_listed + engine + text).encode()).hexdigest()[:12]
    text = text.replace('"%ENGINE_FILES%"', engine_listed).replace("%BYTES%", str(size))
    text = text.replace("%ENGINE_BYTES%", str(engine_size))
    text = text.replace('"%FILES%"', listed).replace("%VERSION%", version)
    text = text.replace("%ENGINE%", f"assets/engine/{engine}")
    (site / "service-worker.js").write_text(text, "utf-8", newline="\n")
    return {"files": len(files), "bytes": size}


def _moved(path: Path) -> int:
    """Bytes that a host moves for it: of its copy in gzip, where there is one."""
    packed = path.with_name(f"{path.name}.gz")
    return (packed if packed.exists() else path).stat().st_size


def _hash(data: bytes) -> str:
    return base64.b64encode(hashlib.sha256(data).digest()).decode()


def let_go(site: Path) -> None:
    """A worker for daily building, which gives up what an earlier one kept: a kept page would hide the newest.

    What others keep under the same host it leaves alone: the names are those of offline/service-worker.js.
    """
    (site / "service-worker.js").write_text(
        "self.addEventListener('install', () => self.skipWaiting());\n"
        "self.addEventListener('activate', (event) => event.waitUntil((async () => {\n"
        "  const folder = ` ${new URL(self.registration.scope).pathname}`;\n"
        "  const isOurs = (name) => /^(pages|engine)-/.test(name) && name.endsWith(folder);\n"
        "  for (const name of await caches.keys()) if (isOurs(name)) await caches.delete(name);\n"
        "  await self.registration.unregister();\n"
        "})()));\n",
        "utf-8",
        newline="\n",
    )
