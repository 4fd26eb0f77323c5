"""Run the demo job in the terminal, build the site, and serve it on this machine; build again when a file changes.

python3 scripts/serve.py             then open the address that it prints
python3 scripts/serve.py --build     build into site/ and stop
python3 scripts/serve.py --port 8080
"""

from __future__ import annotations

import argparse
import functools
import http.server
import mimetypes
import subprocess
import sys
import threading
import time
from pathlib import Path
from urllib.parse import urlsplit

import environment
import policy

TYPES = {
    ".mjs": "text/javascript",
    ".js": "text/javascript",
    ".wasm": "application/wasm",
    ".svg": "image/svg+xml",
}


@functools.cache
def _headers(folder: str) -> str:
    """The headers file of a built site."""
    return (Path(folder) / "_headers").read_text("utf-8")


class SiteHandler(http.server.SimpleHTTPRequestHandler):
    """Files of the built site, in their compressed copies where the browser takes them."""

    protocol_version = "HTTP/1.1"

    def __init__(self, *words: object, quiet: bool = False, **named: object) -> None:
        self.quiet = quiet
        self.encoding = ""
        super().__init__(*words, **named)

    def translate_path(self, path: str) -> str:
        plain = super().translate_path(path)
        self.encoding = ""
        file = Path(plain)
        if file.is_dir() and urlsplit(path).path.endswith("/"):
            file = file / "index.html"
        accepts = self.headers.get("Accept-Encoding", "")
        for name, ending in (("br", ".br"), ("gzip", ".gz")):
            copy = file.with_name(file.name + ending)
            if name in accepts and file.is_file() and copy.is_file():
                self.encoding, self.plain_type = name, self.guess_type(str(file))
                return str(copy)
        return plain

    def guess_type(self, path: str) -> str:
        if self.encoding:
            return self.plain_type
        ending = Path(path).suffix
        return TYPES.get(ending) or mimetypes.guess_type(path)[0] or "application/octet-stream"

    def end_headers(self) -> None:
        if self.encoding:
            self.send_header("Content-Encoding", self.encoding)
            self.send_header("Vary", "Accept-Encoding")
        for name, value in policy.headers_of(_headers(self.directory), urlsplit(self.path).path).items():
            self.send_header(name, value)
        super().end_headers()

    def handle_one_request(self) -> None:
        try:
            super().handle_one_request()
        except (BrokenPipeError, ConnectionResetError):  # the browser has gone to another page
            self.close_connection = True

    def send_error(self, code: int, message: str | None = None, explain: str | None = None) -> None:
        self.encoding = ""
        page = Path(self.directory) / "404.html"
        if code != 404 or not page.is_file():
            super().send_error(code, message, explain)
            return
        body = page.read_bytes()
        self.send_response(404)
        self.send_header("Content-Type", "text/html; charset=utf-8")
        self.send_header("Content-Length", str(len(body)))
        self.end_headers()
        if self.command != "HEAD":
            self.wfile.write(body)

    def log_message(self, words: str, *values: object) -> None:
        if not self.quiet:
            super().log_message(words, *values)


def handler(site: Path) -> functools.partial:
    """The handler for a folder."""
    return functools.partial(SiteHandler, directory=str(site))


def _newest() -> float:
    """When the newest of the files that the site is made of was written."""
    root = environment.ROOT
    files = [path for folder in ("calculators", "docs", "scripts") for path in (root / folder).rglob("*")]
    written = [0.0]
    for path in [*files, root / "mkdocs.yml"]:
        try:
            if path.is_file() and path.suffix != ".pyc":
                written.append(path.stat().st_mtime)
        except OSError:  # an editor has taken its own file away
            continue
    return max(written)


def build_again_on_change() -> None:
    """Look each second, and build in a process of its own: this one has the old calculators in memory."""
    seen = _newest()
    while True:
        time.sleep(1)
        newest = _newest()
        if newest != seen:
            seen = newest
            print("A file has changed.", flush=True)
            subprocess.run([sys.executable, str(environment.ROOT / "scripts" / "build.py")], check=False)


def main() -> int:
    parser = argparse.ArgumentParser(description="Build the site and serve it on this machine.")
    parser.add_argument("--build", action="store_true", help="build into site/ and stop")
    parser.add_argument("--port", type=int, default=8000)
    words = parser.parse_args()
    environment.ensure("site")
    sys.path.insert(0, str(environment.ROOT))
    from build import SITE, build

    from calculators.kit.job_file import job_text, read_job

    demo = environment.ROOT / "docs" / "assets" / "job" / "park-benches.toml"
    print(job_text(read_job(demo.read_text("utf-8"))), end="\n\n", flush=True)
    build()
    if words.build:
        return 0
    try:
        server = http.server.ThreadingHTTPServer(
            ("127.0.0.1", words.port), functools.partial(handler(SITE), quiet=True)
        )
    except OSError as error:
        print(
            f"Port {words.port} is not free ({error.strerror}). Choose another with --port.", file=sys.stderr
        )
        return 2
    print(f"Open http://127.0.0.1:{server.server_port}/   (stop with Ctrl-C)", flush=True)
    threading.Thread(target=build_again_on_change, daemon=True).start()
    try:
        server.serve_forever()
    except KeyboardInterrupt:
        print()
    return 0


if __name__ == "__main__":
    sys.exit(main())
