"""Where figures come from: rows of tables/sources.toml."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache

from calculators.tables import table

KINDS = {
    "standard": "standard",
    "law": "law",
    "handbook": "handbook",
    "paper": "paper",
    "datasheet": "data sheet",
    "derived": "worked out from definitions",
    "common-practice": "common practice, no source",
    "memory": "from memory, not checked",
}
SEEN = {
    "full-text": "read in full",
    "excerpt": "read in part",
    "second-hand": "seen on a page that quotes it",
    "memory": "from memory, not seen",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Source:
    """One source. where: table, equation, clause or page. kind: a key of KINDS. seen: a key of SEEN, our own reading of it."""

    title: str
    kind: str
    seen: str
    author: str = ""
    year: str = ""
    edition: str = ""
    where: str = ""
    url: str = ""

    @property
    def standing(self) -> str:
        if self.kind in ("common-practice", "memory", "derived"):
            return KINDS[self.kind]
        return f"{KINDS[self.kind]}, {SEEN[self.seen]}"

    def __str__(self) -> str:
        parts = [self.author, self.title, self.edition, str(self.year), self.where]
        return ", ".join(part for part in parts if part)


@cache
def source(key: str) -> Source:
    """The source of that key. Raises KeyError for a key that the table does not have."""
    row = {name: str(value) for name, value in table("sources")[key].items()}
    made = Source(**row)
    if made.kind not in KINDS or made.seen not in SEEN:
        raise ValueError(
            f"sources.toml, {key}: kind must be one of {sorted(KINDS)} and seen one of {sorted(SEEN)}"
        )
    return made


def all_sources() -> dict[str, Source]:
    """Every source by its key, by title."""
    found = {key: source(key) for key in table("sources")}
    return dict(sorted(found.items(), key=lambda item: str(item[1]).casefold()))
