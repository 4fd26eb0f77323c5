"""The headers file says the same to a host that reads it and to the two servers here that do."""

from __future__ import annotations

import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
sys.path.insert(0, str(ROOT / "scripts"))

import policy  # noqa: E402

TEXT = "/*\n  A: 1\n  B: 1\n/one.js\n  A: 2\n/folder/*\n  B: 3\n"


def test_the_closer_line_wins() -> None:
    assert policy.headers_of(TEXT, "/one.js") == {"A": "2", "B": "1"}
    assert policy.headers_of(TEXT, "/folder/two.js") == {"A": "1", "B": "3"}
    assert policy.headers_of(TEXT, "/") == {"A": "1", "B": "1"}


def test_only_the_engines_worker_may_compile() -> None:
    text = (ROOT / "site" / "_headers").read_text("utf-8")
    worker = policy.headers_of(text, "/assets/calculator/engine.worker.mjs")
    assert "'wasm-unsafe-eval'" in worker["Content-Security-Policy"]
    for path in ("/", "/service-worker.js", "/assets/calculator/calculator-form.mjs"):
        assert "unsafe" not in policy.headers_of(text, path)["Content-Security-Policy"]
