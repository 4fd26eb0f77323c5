"""Tables that a tradesperson might check or correct, read once and kept: the browser's image has no files.

Those in pages/ are what the site's pages are made of. No calculator reads them, so the engine does not carry them.
"""

from __future__ import annotations

import tomllib
from functools import cache
from importlib import resources
from typing import Any


@cache
def table(name: str) -> dict[str, Any]:
    """The table tables/<name>.toml, or tables/pages/<name>.toml. Raises FileNotFoundError for a name that is not there."""
    folder = resources.files(__package__)
    path = folder.joinpath(f"{name}.toml")
    if not path.is_file():
        path = folder.joinpath("pages", f"{name}.toml")
    return tomllib.loads(path.read_text("utf-8"))


def names() -> tuple[str, ...]:
    """The names of the tables that calculators may read, in order."""
    return _names("")


def page_names() -> tuple[str, ...]:
    """The names of the tables for pages only, in order."""
    return _names("pages")


def _names(folder: str) -> tuple[str, ...]:
    found = (entry.name for entry in resources.files(__package__).joinpath(folder).iterdir())
    return tuple(sorted(name.removesuffix(".toml") for name in found if name.endswith(".toml")))
