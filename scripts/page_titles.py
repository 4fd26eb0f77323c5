"""A page's own title, for links that say where they lead."""

from __future__ import annotations

from functools import cache
from pathlib import Path

from mkdocs.utils.meta import get_data

DOCS = Path(__file__).resolve().parent.parent / "docs"


@cache
def page_title(page: str) -> str:
    """page: its path below docs, without .md."""
    title: str = get_data((DOCS / f"{page}.md").read_text("utf-8"))[1]["title"]
    return title
