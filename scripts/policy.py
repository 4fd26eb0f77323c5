"""The site's content security policy: on each page what that page may run, and a headers file for the host."""

from __future__ import annotations

import base64
import hashlib
import re
from pathlib import Path

SCRIPT = re.compile(r"<script\b([^>]*)>(.*?)</script>", re.DOTALL)
HEAD = re.compile(r"<head>", re.IGNORECASE)
WORKER = "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; connect-src 'self'"
WORKER_FILE = "/assets/calculator/engine.worker.mjs"
SERVICE_WORKER = "default-src 'none'; script-src 'self'; connect-src 'self'"
SERVICE_WORKER_FILE = "/service-worker.js"
COMMON = {
    "default-src": ["'none'"],
    "script-src": ["'self'"],
    "style-src": ["'self'"],
    "img-src": ["'self'", "data:"],
    "font-src": ["'self'"],
    "connect-src": ["'self'"],
    "worker-src": ["'self'"],
    "manifest-src": ["'self'"],
    "base-uri": ["'none'"],
    "form-action": ["'self'"],
}


def policy_of(html: str) -> str:
    """The policy of one page: its own files, and the inline scripts that stand in it by their hashes."""
    hashes = []
    for attributes, text in SCRIPT.findall(html):
        if "src=" in attributes or "application/json" in attributes or not text.strip():
            continue
        digest = base64.b64encode(hashlib.sha256(text.encode()).digest()).decode()
        hashes.append(f"'sha256-{digest}'")
    rules = {**COMMON, "script-src": [*COMMON["script-src"], *dict.fromkeys(hashes)]}
    return "; ".join(f"{name} {' '.join(values)}" for name, values in rules.items())


def write(site: Path) -> None:
    """Put each page's policy into its head, and the host's part into site/_headers."""
    for path in sorted(site.rglob("*.html")):
        html = path.read_text("utf-8")
        meta = f'<meta http-equiv="Content-Security-Policy" content="{policy_of(html)}">'
        head, rest = HEAD.split(html, maxsplit=1)
        path.write_text(f"{head}<head>{meta}{rest}", "utf-8", newline="\n")
    (site / "_headers").write_text(headers(site), "utf-8", newline="\n")


def headers_of(text: str, path: str) -> dict[str, str]:
    """What a host that reads this text sends with a path. Where several lines set one header, such hosts join the values.

    >>> headers_of("/*\\n  A: 1\\n  B: 1\\n/one.js\\n  A: 2\\n", "/one.js")
    {'A': '1, 2', 'B': '1'}
    """
    found: dict[str, str] = {}
    meant = False
    for line in text.splitlines():
        if line.startswith("/"):
            meant = path.startswith(line[:-1]) if line.endswith("*") else path == line
        elif meant:
            name, value = line.strip().split(": ", 1)
            found[name] = f"{found[name]}, {value}" if name in found else value
    return found


def headers(site: Path) -> str:
    """Headers for hosts that read such a file; any other host can be told the same lines.

    Hosts join what several lines say of one header, so no two may. What is asked for anew each time is named folder by
    folder, apart from the engine; and framing is refused by X-Frame-Options, as a policy for all would join the workers'.
    """
    rules = {
        "/*": [
            "Referrer-Policy: no-referrer",
            "X-Content-Type-Options: nosniff",
            "X-Frame-Options: DENY",
            "Permissions-Policy: camera=(), microphone=(), geolocation=()",
        ],
        **{place: ["Cache-Control: no-cache"] for place in _renewed(site)},
        "/assets/engine/*": ["Cache-Control: public, max-age=31536000, immutable"],
    }
    for place, allowed in ((WORKER_FILE, WORKER), (SERVICE_WORKER_FILE, SERVICE_WORKER)):
        rules[place] = [*rules.get(place, []), f"Content-Security-Policy: {allowed}"]
    return "".join("\n  ".join([place, *lines]) + "\n" for place, lines in rules.items())


def _renewed(site: Path) -> list[str]:
    """Everything but the engine: the site's files and folders, and those in assets."""
    found = {"/", SERVICE_WORKER_FILE}  # the latter is made last, from all others
    for path in [*site.iterdir(), *(site / "assets").iterdir()]:
        address = f"/{path.relative_to(site).as_posix()}"
        if address not in ("/assets", "/assets/engine"):
            found.add(f"{address}/*" if path.is_dir() else address)
    return sorted(found)
