"""Hash, compress and keep the files an engine is made of."""

from __future__ import annotations

import gzip
import hashlib
import os
import shutil
import time
from pathlib import Path

from environment import CACHE

COMPRESSED = CACHE / "compressed"


class EngineError(Exception):
    """The engine cannot be built; the message says why."""


def sha256(data: bytes) -> str:
    return hashlib.sha256(data).hexdigest()


PART_bytes = 1 << 20


def parts_sha256(data: bytes) -> str:
    """Hash of the hashes of a file's parts of a MiB: the browser takes each while the rest is on its way."""
    parts = (data[start : start + PART_bytes] for start in range(0, len(data), PART_bytes))
    return sha256(b"".join(hashlib.sha256(part).digest() for part in parts))


def compressed(data: bytes, kind: str) -> bytes:
    """Data compressed as far as it goes, kept by content because the image takes a minute with brotli."""
    kept = COMPRESSED / f"{sha256(data)}.{kind}"
    if not kept.is_file():
        if kind == "br":
            import brotli

            packed = brotli.compress(data, quality=11, lgwin=24)
        else:
            packed = gzip.compress(data, 9, mtime=0)
        COMPRESSED.mkdir(parents=True, exist_ok=True)
        writing = kept.with_suffix(f".{os.getpid()}")
        writing.write_bytes(packed)
        writing.replace(kept)
        prune(COMPRESSED, keep=40)
    os.utime(kept)
    return kept.read_bytes()


def prune(folder: Path, keep: int) -> None:
    """Remove all but the latest used entries; what is being made now is left alone."""
    hour_ago = time.time() - 3600
    entries = sorted(folder.iterdir(), key=lambda path: path.stat().st_mtime, reverse=True)
    for path in entries[keep:]:
        if path.name.startswith("making-") and path.stat().st_mtime > hour_ago:
            continue
        if path.is_dir():
            shutil.rmtree(path)
        else:
            path.unlink(missing_ok=True)
