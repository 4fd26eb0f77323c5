"""The service worker of daily builds gives up what this copy of the site keeps, and nothing else of its host."""

from __future__ import annotations

import json
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
sys.path.insert(0, str(ROOT / "scripts"))

import environment  # noqa: E402
import offline_files  # noqa: E402

# The worker runs where the browser's words are stood in for: it is activated, and says which caches are left.
STAGE = """
const names = new Set(JSON.parse(process.argv[1]));
const heard = {}, waited = [];
globalThis.self = {
  addEventListener: (what, act) => (heard[what] = act),
  skipWaiting: () => {},
  registration: { scope: "https://host.example/coating/", unregister: async () => console.log("unregistered") },
};
globalThis.caches = { keys: async () => [...names], delete: async (name) => names.delete(name) };
%s
heard.activate({ waitUntil: (promise) => waited.push(promise) });
Promise.all(waited).then(() => console.log(JSON.stringify([...names])));
"""


def left(folder: Path, names: list[str]) -> list[str]:
    offline_files.let_go(folder)
    script = STAGE % (folder / "service-worker.js").read_text("utf-8")
    done = subprocess.run(
        [environment.node(), "-e", script, json.dumps(names)],
        capture_output=True,
        encoding="utf-8",
        check=True,
    )
    gone, rest = done.stdout.splitlines()
    assert gone == "unregistered"
    return list(json.loads(rest))


def test_what_this_copy_keeps_is_given_up(tmp_path: Path) -> None:
    assert left(tmp_path, ["pages-0f1e2d3c4b5a /coating/", "engine-471dda09d642 /coating/"]) == []


def test_what_others_keep_under_the_same_host_is_left_alone(tmp_path: Path) -> None:
    others = [
        "pages-0f1e2d3c4b5a /",  # copies of this site in other folders
        "engine-471dda09d642 /elsewhere/coating/",
        "pages-0f1e2d3c4b5a /coating/two/",
        "drafts /coating/",  # and what is no copy of it at all
        "photos",
    ]
    assert left(tmp_path, [*others, "pages-0f1e2d3c4b5a /coating/"]) == others
