"""The headers file says the same to a host that reads it and to the two servers here that do."""

from __future__ import annotations

import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]
SITE = ROOT / "site"
sys.path.insert(0, str(ROOT / "scripts"))

import policy  # noqa: E402

TEXT = "/*\n  A: 1\n  B: 1\n/one.js\n  A: 2\n/folder/*\n  B: 3\n"


@pytest.fixture(scope="module")
def text() -> str:
    return (SITE / "_headers").read_text("utf-8")


def addresses() -> list[str]:
    """Every file of the site as it is asked for; a host gives the pages' compressed copies under the pages' addresses."""
    files = [path.relative_to(SITE).as_posix() for path in SITE.rglob("*") if path.is_file()]
    files = [name for name in files if name.startswith("assets/engine/") or not name.endswith((".gz", ".br"))]
    plain = [f"/{name}" for name in files if name != "_headers"]
    return plain + [name.removesuffix("index.html") for name in plain if name.endswith("/index.html")]


def test_values_of_one_header_are_joined() -> None:
    assert policy.headers_of(TEXT, "/one.js") == {"A": "1, 2", "B": "1"}
    assert policy.headers_of(TEXT, "/folder/two.js") == {"A": "1", "B": "1, 3"}
    assert policy.headers_of(TEXT, "/") == {"A": "1", "B": "1"}


def test_no_file_is_sent_one_header_twice(text: str) -> None:
    """Some hosts send both values, others the last: what two lines say of one header is then one thing here and another there."""
    rules: dict[str, list[str]] = {}
    for line in text.splitlines():
        if line.startswith("/"):
            # a second block for one address would be as bad
            assert line not in rules
            names = rules[line] = []
        else:
            names.append(line.strip().split(": ")[0])
    for address in addresses():
        sent = [
            name
            for rule, names in rules.items()
            if address == rule or (rule.endswith("*") and address.startswith(rule[:-1]))
            for name in names
        ]
        assert len(sent) == len(set(sent)), address


def test_the_engine_is_kept_for_a_year_and_all_else_asked_for_anew(text: str) -> None:
    found = addresses()
    assert any(address.startswith("/assets/engine/") for address in found) and "/cure/cure-plan/" in found
    for address in found:
        kept = policy.headers_of(text, address)["Cache-Control"]
        year = "public, max-age=31536000, immutable"
        assert kept == (year if address.startswith("/assets/engine/") else "no-cache"), address


def test_only_workers_are_sent_a_policy_and_only_the_engines_may_compile(text: str) -> None:
    sent = {
        address: rules
        for address in addresses()
        if (rules := policy.headers_of(text, address).get("Content-Security-Policy"))
    }
    assert sent == {policy.WORKER_FILE: policy.WORKER, policy.SERVICE_WORKER_FILE: policy.SERVICE_WORKER}
    assert "'wasm-unsafe-eval'" in policy.WORKER and "unsafe" not in policy.SERVICE_WORKER


def test_no_page_may_be_framed(text: str) -> None:
    assert {policy.headers_of(text, address)["X-Frame-Options"] for address in addresses()} == {"DENY"}
