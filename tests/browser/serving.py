"""Serve the built site to a browser on this machine, and let a test damage, delay or hide single files of it."""

from __future__ import annotations

import sys
import threading
import time
from dataclasses import dataclass, field
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from typing import Any
from urllib.parse import urlsplit

sys.path.insert(0, str(Path(__file__).resolve().parents[2] / "scripts"))

import policy

# Also served below this, as a site is that has no host of its own.
FOLDER = "/a/folder/"


@dataclass
class Trouble:
    """What goes wrong with a file."""

    missing: bool = False
    cut_to_bytes: int | None = None
    delay_s: float = 0.0
    # The connection breaks, or goes quiet, after so many bytes of a file that was said to be longer.
    breaks_after_bytes: int | None = None
    quiet_after_bytes: int | None = None
    as_type: str = ""
    # Other bytes of the same length, from here on.
    wrong_from_byte: int | None = None
    # JavaScript that runs before the file's own.
    before: str = ""
    # Text in place of other text.
    instead: tuple[str, str] = ("", "")
    # These bytes and no others.
    body: bytes | None = None
    # The browser is told to keep it for a year.
    kept: bool = False
    # Sent in place of what the site's headers file says.
    policy: str = ""
    # How often, before all is well again.
    times: int | None = None


@dataclass
class Served:
    """The site as a browser meets it. `troubles` is by the end of a file's address."""

    root: Path
    address: str = ""
    troubles: dict[str, Trouble] = field(default_factory=dict)
    asked: list[str] = field(default_factory=list)
    over: threading.Event = field(default_factory=threading.Event)
    headers: str = ""

    def trouble(self, path: str) -> Trouble:
        found = next((one for end, one in self.troubles.items() if path.endswith(end)), Trouble())
        if found.times is not None:
            if found.times == 0:
                return Trouble()
            found.times -= 1
        return found


class Handler(SimpleHTTPRequestHandler):
    protocol_version = "HTTP/1.1"
    lasting = False
    policy = ""
    extensions_map = {  # noqa: RUF012
        **SimpleHTTPRequestHandler.extensions_map,
        ".css": "text/css",
        ".gz": "application/gzip",
        ".html": "text/html; charset=utf-8",
        ".js": "text/javascript",
        ".json": "application/json",
        ".mjs": "text/javascript",
        ".svg": "image/svg+xml",
        ".wasm": "application/wasm",
        ".woff2": "font/woff2",
    }

    def __init__(self, *words: Any, served: Served) -> None:
        self.served = served
        super().__init__(*words, directory=str(served.root))

    def translate_path(self, path: str) -> str:
        return super().translate_path("/" + path.removeprefix(FOLDER) if path.startswith(FOLDER) else path)

    def do_GET(self) -> None:
        path = urlsplit(self.path).path
        self.served.asked.append(path)
        trouble = self.served.trouble(path)
        self.policy = trouble.policy
        time.sleep(trouble.delay_s)
        if trouble.missing:
            self.send_error(404)
        elif trouble != Trouble():
            self._send_in_trouble(Path(self.translate_path(path)).read_bytes(), trouble)
        elif not Path(self.translate_path(path)).exists():
            self._send(404, (self.served.root / "404.html").read_bytes(), "text/html; charset=utf-8")
        else:
            super().do_GET()

    def end_headers(self) -> None:
        """A host that reads the headers file sends its policies; how long files keep is each test's own matter."""
        path = urlsplit(self.path).path
        sent = policy.headers_of(self.served.headers, "/" + path.removeprefix(FOLDER).lstrip("/"))
        if rules := self.policy or sent.get("Content-Security-Policy"):
            self.send_header("Content-Security-Policy", rules)
        super().end_headers()

    def _send_in_trouble(self, data: bytes, trouble: Trouble) -> None:
        if trouble.instead[0]:
            assert trouble.instead[0].encode() in data, f"{trouble.instead[0]!r} is not in {self.path}"
            data = data.replace(trouble.instead[0].encode(), trouble.instead[1].encode())
        data = trouble.before.encode() + (data if trouble.body is None else trouble.body)
        if (start := trouble.wrong_from_byte) is not None:
            data = data[:start] + bytes(byte ^ 0xFF for byte in data[start:])
        if trouble.cut_to_bytes is not None:
            data = data[: trouble.cut_to_bytes]
        stop = trouble.breaks_after_bytes or trouble.quiet_after_bytes
        self.lasting = trouble.kept
        self._send(200, data, trouble.as_type, stop)
        if trouble.quiet_after_bytes:
            self.served.over.wait(300)
        if stop:
            self.close_connection = True

    def _send(self, status: int, body: bytes, kind: str = "", stop: int | None = None) -> None:
        """stop: after how many bytes nothing more comes."""
        self.send_response(status)
        self.send_header("Content-Type", kind or self.guess_type(urlsplit(self.path).path))
        self.send_header("Content-Length", str(len(body)))
        if self.lasting:
            self.send_header("Cache-Control", "public, max-age=31536000, immutable")
        self.end_headers()
        self.wfile.write(body[:stop])
        self.wfile.flush()

    def log_message(self, *words: Any) -> None:
        pass


class Server(ThreadingHTTPServer):
    daemon_threads = True

    def __init__(self, root: Path) -> None:
        self.served = Served(root, headers=(root / "_headers").read_text("utf-8"))
        super().__init__(("127.0.0.1", 0), Handler)
        self.served.address = f"http://127.0.0.1:{self.server_port}"
        threading.Thread(target=self.serve_forever, daemon=True).start()

    def finish_request(self, request: Any, client_address: Any) -> None:
        Handler(request, client_address, self, served=self.served)

    def handle_error(self, request: Any, client_address: Any) -> None:
        pass  # a browser that leaves a page breaks its connections off
