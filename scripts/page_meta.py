"""What a page says of itself at its head."""

from __future__ import annotations

from functools import cache
from pathlib import Path
from typing import Any

from mkdocs.utils.meta import get_data

DOCS = Path(__file__).resolve().parent.parent / "docs"


def page_meta(path: Path) -> dict[str, Any]:
    meta: dict[str, Any] = get_data(path.read_text("utf-8"))[1]
    return meta


@cache
def page_title(page: str) -> str:
    """Its title, for links that say where they lead. page: its path below docs, without .md."""
    return str(page_meta(DOCS / f"{page}.md")["title"])
