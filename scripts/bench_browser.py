"""A browser as a visitor has it, to measure by.

What tests drive a browser with watches its network, and the browser keeps all that is watched: tens of megabytes more in
the page's process, and time. So this asks it for nothing but to open pages, run a line of script and type.
"""

from __future__ import annotations

import json
import os
import signal
import subprocess
import sys
import threading
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

from environment_chromium import chromium

OPTIONS = (
    "--headless",
    "--no-sandbox",
    "--no-first-run",
    "--disable-background-networking",
    "--remote-debugging-pipe",
    "about:blank",
)
# Becomes the browser, which takes commands at file number 3 and answers at 4.
START = """import os, sys
os.dup2(int(sys.argv[1]), 3)
os.dup2(int(sys.argv[2]), 4)
os.execv(sys.argv[3], sys.argv[3:])
"""


class BrowserFailed(Exception):
    """The browser did not do what it was told; the message is its own."""


class Browser:
    """One browser with a profile of its own, closed at the end of a `with`."""

    def __init__(self, profile: str) -> None:
        theirs, self._commands = os.pipe()
        self._answers, their_answers = os.pipe()

        program = [str(chromium()), f"--user-data-dir={profile}", *OPTIONS]
        self._process = subprocess.Popen(
            [sys.executable, "-c", START, str(theirs), str(their_answers), *program],
            pass_fds=(theirs, their_answers),
            stderr=subprocess.DEVNULL,
        )
        os.close(theirs)
        os.close(their_answers)
        self._asked = 0
        self._arrived = b""

    def __enter__(self) -> Browser:
        return self

    def __exit__(self, *_: object) -> None:
        if self._process.poll() is None:
            self.tell("Browser.close")
        self._process.wait(30)
        os.close(self._commands)
        os.close(self._answers)

    def tell(self, method: str, session: str = "", **values: object) -> dict[str, Any]:
        """Give a command and wait for its result; what the browser says otherwise is passed over."""
        self._asked += 1
        command = {"id": self._asked, "method": method, "params": values}
        if session:
            command["sessionId"] = session
        os.write(self._commands, json.dumps(command).encode() + b"\0")
        while True:
            said = self._next()
            if said.get("id") == self._asked:
                if "error" in said:
                    raise BrowserFailed(said["error"]["message"])
                result: dict[str, Any] = said["result"]
                return result

    def _next(self) -> dict[str, Any]:
        while b"\0" not in self._arrived:
            some = os.read(self._answers, 1 << 16)
            if not some:
                raise BrowserFailed("The browser has stopped.")
            self._arrived += some
        one, self._arrived = self._arrived.split(b"\0", 1)
        said: dict[str, Any] = json.loads(one)
        return said

    def open(self, address: str, before: str = "") -> Page:
        """A page on its way to an address. before: a script that runs in it before its own."""
        target = self.tell("Target.createTarget", url="about:blank")["targetId"]
        session = self.tell("Target.attachToTarget", targetId=target, flatten=True)["sessionId"]
        if before:
            self.tell("Page.enable", session)
            self.tell("Page.addScriptToEvaluateOnNewDocument", session, source=before)
        self.tell("Page.navigate", session, url=address)
        return Page(self, target, session)


class Page:
    """One page of a browser."""

    def __init__(self, browser: Browser, target: str, session: str) -> None:
        self.browser, self.target, self.session = browser, target, session

    def run(self, script: str) -> Any:
        """The value of a script, or of what it promises."""
        done = self.browser.tell(
            "Runtime.evaluate", self.session, expression=script, awaitPromise=True, returnByValue=True
        )
        if "exceptionDetails" in done:
            raise BrowserFailed(done["exceptionDetails"]["exception"].get("description", script))
        return done["result"].get("value")

    def wait(self, script: str, at_most_s: float = 180) -> None:
        """Until a script's value is true."""
        end = time.monotonic() + at_most_s
        while not self.run(script):
            if time.monotonic() > end:
                raise BrowserFailed(f"After {at_most_s:.0f} s this is still not so: {script}")
            time.sleep(0.05)

    def put(self, field: str, text: str) -> None:
        """Type over what a field holds."""
        self.run(
            f"(field => {{ field.focus(); field.select(); }})(document.querySelector({json.dumps(field)}))"
        )
        self.browser.tell("Input.insertText", self.session, text=text)

    def close(self) -> None:
        self.browser.tell("Target.closeTarget", targetId=self.target)


def page_processes(profile: str) -> list[int]:
    """Process numbers of a browser's page processes, found by its profile's folder."""
    browsers, parents = set(), {}
    renderers = []
    for entry in Path("/proc").iterdir():
        if not entry.name.isdigit():
            continue
        try:
            words = (entry / "cmdline").read_bytes().decode(errors="replace")
            parents[int(entry.name)] = int((entry / "stat").read_text().rsplit(") ", 1)[1].split()[1])
        except (OSError, IndexError):
            continue
        if profile in words and "--type=" not in words:
            browsers.add(int(entry.name))
        if "--type=renderer" in words:
            renderers.append(int(entry.name))

    def descends(process: int) -> bool:
        while process in parents:
            if process in browsers:
                return True
            process = parents[process]
        return False

    return [process for process in renderers if descends(process)]


@contextmanager
def slowed(profile: str, times: int) -> Iterator[None]:
    """The browser's pages slowed so many times, by running one slice of time in so many."""
    if times <= 1:
        yield
        return
    stop = threading.Event()

    def turn() -> None:
        pages, looked = page_processes(profile), time.monotonic()
        while not stop.is_set():
            if time.monotonic() - looked > 0.25:
                pages, looked = page_processes(profile), time.monotonic()
            _signal(pages, signal.SIGSTOP)
            time.sleep(0.008 * (times - 1))
            _signal(pages, signal.SIGCONT)
            time.sleep(0.008)

    worker = threading.Thread(target=turn, daemon=True)
    worker.start()
    try:
        yield
    finally:
        stop.set()
        worker.join()
        _signal(page_processes(profile), signal.SIGCONT)


def _signal(processes: list[int], which: int) -> None:
    for process in processes:
        try:
            os.kill(process, which)
        except ProcessLookupError:
            continue


def memory_MB(profile: str) -> float:
    """The largest page process's memory; what it shares with others is divided among them."""
    sizes = []
    for process in page_processes(profile):
        try:
            text = Path(f"/proc/{process}/smaps_rollup").read_text()
        except OSError:
            continue
        sizes += [int(line.split()[1]) / 1024 for line in text.splitlines() if line.startswith("Pss:")]
    return max(sizes, default=0.0)
