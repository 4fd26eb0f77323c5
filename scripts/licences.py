"""The notices that travel with what the site carries: site/licences."""

from __future__ import annotations

import shutil
from importlib.metadata import distribution
from pathlib import Path

import theme_parts

ROOT = Path(__file__).resolve().parent.parent


def write(folder: Path) -> None:
    """Our own licences and NOTICE, and what the installed packages bring."""
    folder.mkdir()
    for name in ("LICENSE", "LICENSE-CONTENT", "NOTICE"):
        shutil.copy(ROOT / name, folder / f"{name}.txt")
    # those of the other packages inside the engine lie in its calculators.zip; this one is CPython's too
    for name in ("mkdocs-material", "typing-extensions"):
        (text,) = (one for one in distribution(name).files or [] if one.match("*.dist-info/licenses/LICENSE"))
        shutil.copy(str(text.locate()), folder / f"{name}-LICENSE.txt")
    for icons in theme_parts.ICONS:
        (path,) = (theme_parts.templates() / ".icons" / icons).glob("LICENSE*")
        shutil.copy(path, folder / f"icons-{icons}-LICENSE.txt")
    notices = [f"{one.name}\n\n{one.notice}\n" for one in theme_parts.packages() if one.notice]
    (folder / "in-the-themes-scripts.txt").write_text("\n\n".join(notices), "utf-8", newline="\n")
