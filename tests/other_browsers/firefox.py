"""Firefox by way of WebDriver BiDi (a W3C standard: JSON over a WebSocket), which it speaks by itself."""

from __future__ import annotations

import json
import shutil
import subprocess
import tempfile
import time
from pathlib import Path
from typing import Any

from tests.other_browsers.ports import free_port
from tests.other_browsers.web_socket import WebSocket

NAME = "Firefox"
PROGRAMS = ("firefox-esr", "firefox")
# A profile for tests: nothing is fetched but what the test opens.
SETTINGS = {
    "app.normandy.enabled": False,
    "app.update.enabled": False,
    "browser.aboutConfig.showWarning": False,
    "browser.shell.checkDefaultBrowser": False,
    "datareporting.policy.dataSubmissionEnabled": False,
    "extensions.update.enabled": False,
    "network.captive-portal-service.enabled": False,
    "network.connectivity-service.enabled": False,
    "services.settings.server": "data:,",
    "toolkit.telemetry.reportingpolicy.firstRun": False,
}


def program() -> str | None:
    return next((found for name in PROGRAMS if (found := shutil.which(name))), None)


def why_not() -> str:
    """Why it cannot be tried on this machine; empty if it can."""
    return "" if program() else "not installed (Debian: firefox-esr)"


class Firefox:
    def __init__(self) -> None:
        self._profile = tempfile.TemporaryDirectory(ignore_cleanup_errors=True)
        lines = [f"user_pref({json.dumps(name)}, {json.dumps(value)});\n" for name, value in SETTINGS.items()]
        (Path(self._profile.name) / "user.js").write_text("".join(lines), "utf-8")
        port = free_port()
        self._process = subprocess.Popen(
            [
                str(program()),
                *("--headless", "--no-remote", "--profile", self._profile.name),
                *("--remote-debugging-port", str(port), "about:blank"),
            ],
            stdin=subprocess.DEVNULL,
            stdout=subprocess.DEVNULL,
            stderr=subprocess.DEVNULL,
        )
        self._last = 0
        try:
            self._socket = self._connect(port)
            made = self._call("session.new", {"capabilities": {}})
            self.version = f"{NAME} {made['capabilities']['browserVersion']}"
            self._context = self._call("browsingContext.getTree", {})["contexts"][0]["context"]
        except Exception:
            self._process.kill()
            raise

    def _connect(self, port: int) -> WebSocket:
        end = time.monotonic() + 90
        while time.monotonic() < end:
            try:
                return WebSocket("127.0.0.1", port, "/session")
            except OSError:
                time.sleep(0.3)
        raise RuntimeError("Firefox did not start.")

    def _call(self, method: str, words: dict[str, Any]) -> Any:
        self._last += 1
        self._socket.send(json.dumps({"id": self._last, "method": method, "params": words}))
        while True:
            heard = json.loads(self._socket.receive())
            if heard.get("id") == self._last:
                assert heard["type"] == "success", heard
                return heard["result"]

    def goes(self, address: str) -> None:
        self._call("browsingContext.navigate", {"context": self._context, "url": address, "wait": "complete"})

    def ask(self, expression: str) -> Any:
        words = {
            "expression": f"JSON.stringify({expression}) ?? 'null'",
            "target": {"context": self._context},
            "awaitPromise": False,
        }
        answer = self._call("script.evaluate", words)
        assert answer["type"] == "success", answer
        return json.loads(answer["result"]["value"])

    def close(self) -> None:
        self._socket.close()
        self._process.terminate()
        self._process.wait(30)
        self._profile.cleanup()
