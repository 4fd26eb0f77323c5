"""What others than its makers wrote in the theme's files: packages inside its scripts and styles, and sets of icons."""

from __future__ import annotations

import json
import re
from dataclasses import dataclass
from importlib.metadata import distribution
from pathlib import Path

PACKAGE = re.compile(r"node_modules/((?:@[^/]+/)?[^/]+)/")
HEAD = re.compile(r"\s*/\*.*?\*/", re.DOTALL)
VERSION = re.compile(r"\bv?(\d+\.\d+\.\d+)\b")
# As the packages themselves state them to npm: the theme is installed without their descriptions.
LICENCES = {
    "clipboard": "MIT",
    "escape-html": "MIT",
    "focus-visible": "W3C",
    "lunr": "MIT",
    "material-design-color": "MIT",
    "rxjs": "Apache-2.0",
    "tslib": "0BSD",
}
# The sets that a page or the style sheet has an icon of, by their folders in the theme, as the licences there say.
ICONS = {
    "fontawesome": ("Font Awesome Free icons", "CC-BY-4.0"),
    "material": ("Material Design Icons", "Apache-2.0"),
    "octicons": ("Octicons", "MIT"),
}


@dataclass(frozen=True)
class Package:
    name: str
    version: str  # none where no installed file says it
    notice: str  # what it says of its rights at the head of its files


def templates() -> Path:
    return Path(str(distribution("mkdocs-material").locate_file("material/templates")))


def packages() -> list[Package]:
    """The packages that the theme's source maps name, in order."""
    notices: dict[str, set[str]] = {}
    for path in sorted((templates() / "assets").rglob("*.map")):
        made = json.loads(path.read_text("utf-8"))
        texts = made.get("sourcesContent") or [""] * len(made["sources"])
        for source, text in zip(made["sources"], texts, strict=True):
            if package := PACKAGE.search(source):
                held = notices.setdefault(package[1], set())
                if (head := HEAD.match(text)) and re.search(r"licen[cs]e|copyright", head[0], re.IGNORECASE):
                    held.add(head[0].strip())
    found = []
    for name, held in sorted(notices.items()):
        notice = "\n".join(sorted(held))
        version = VERSION.search(notice)
        found.append(Package(name, version[1] if version else "", notice))
    return found
