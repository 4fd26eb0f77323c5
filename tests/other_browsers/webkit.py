"""WebKitGTK by way of its WebDriver (a W3C standard: JSON over HTTP)."""

from __future__ import annotations

import json
import os
import shutil
import subprocess
import time
import urllib.error
import urllib.request
from pathlib import Path
from typing import Any

from tests.other_browsers.ports import free_port

NAME = "WebKitGTK"
PLACES = ("/usr/lib/*/webkit2gtk-4.1", "/usr/lib/*/webkitgtk-6.0", "/usr/libexec/webkit2gtk-4.1")


def browser() -> Path | None:
    found = [path for place in PLACES for path in Path("/").glob(f"{place[1:]}/MiniBrowser")]
    return found[0] if found else None


def why_not() -> str:
    """Why it cannot be tried on this machine; empty if it can."""
    if shutil.which("WebKitWebDriver") is None or browser() is None:
        return "not installed (Debian: webkit2gtk-driver)"
    if "DISPLAY" not in os.environ and not any(map(shutil.which, ("Xvfb", "broadwayd"))):
        return "no display, and neither Xvfb nor broadwayd to stand in for one"
    return ""


class WebKit:
    def __init__(self) -> None:
        self._port = free_port()
        self._processes: list[subprocess.Popen[bytes]] = []
        surroundings = self._display()
        self._start(["WebKitWebDriver", f"--port={self._port}"], surroundings)
        options = {"binary": str(browser()), "args": ["--automation"]}
        wanted = {"capabilities": {"alwaysMatch": {"webkitgtk:browserOptions": options}}}
        for _ in range(50):
            try:
                made = self._call("POST", "/session", wanted)
                break
            except urllib.error.HTTPError:
                self.close()
                raise
            except urllib.error.URLError:
                time.sleep(0.2)
        else:
            self.close()
            raise RuntimeError("WebKitWebDriver did not start.")
        self._session = f"/session/{made['sessionId']}"
        self.version = f"{NAME} {made['capabilities']['browserVersion']}"

    def _display(self) -> dict[str, str]:
        if "DISPLAY" in os.environ:
            return {}
        number = f":{40 + os.getpid() % 50}"
        if shutil.which("Xvfb"):
            self._start(["Xvfb", number, "-screen", "0", "1280x900x24"], {})
            time.sleep(1)
            return {"DISPLAY": number}
        self._start(["broadwayd", number], {})
        time.sleep(1)
        return {"GDK_BACKEND": "broadway", "BROADWAY_DISPLAY": number}

    def _start(self, command: list[str], surroundings: dict[str, str]) -> None:
        quiet = {"stdout": subprocess.DEVNULL, "stderr": subprocess.DEVNULL, "stdin": subprocess.DEVNULL}
        self._processes.append(subprocess.Popen(command, env={**os.environ, **surroundings}, **quiet))

    def _call(self, method: str, path: str, body: dict[str, Any] | None = None) -> Any:
        request = urllib.request.Request(
            f"http://127.0.0.1:{self._port}{path}",
            method=method,
            data=None if body is None else json.dumps(body).encode(),
            headers={"Content-Type": "application/json"},
        )
        with urllib.request.urlopen(request, timeout=120) as answer:
            return json.load(answer)["value"]

    def goes(self, address: str) -> None:
        self._call("POST", f"{self._session}/url", {"url": address})

    def ask(self, expression: str) -> Any:
        words = {"script": f"return JSON.stringify({expression}) ?? 'null'", "args": []}
        return json.loads(self._call("POST", f"{self._session}/execute/sync", words))

    def close(self) -> None:
        if hasattr(self, "_session"):
            self._call("DELETE", self._session)
        for process in reversed(self._processes):
            process.terminate()
            process.wait(20)
