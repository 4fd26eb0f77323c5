"""Which rule covers what: the laws and standards among the sources, what each is about, and the pages that lean on it."""

from __future__ import annotations

import re
from functools import cache
from html import escape
from pathlib import Path

from mkdocs.utils.meta import get_data
from safety_rules import PLACES, filled
from site_pages import SEEN, named_cells

from calculators.kit import find
from calculators.kit.sources import Source, all_sources
from calculators.tables import table

DOCS = Path(__file__).resolve().parent.parent / "docs"
CITED = re.compile(r"<!-- sources: ([^>]*?) -->")
# By how a source's edition begins; the first that fits. What fits none is a standard of one maker or body: the last.
GROUPS = (
    ("At work, US law", r"29 CFR|OSHA"),
    ("Waste, chemicals, food, transport, US law", r"\d+ CFR"),
    ("States and other countries", None),
    ("Fire and electricity", r"NFPA|NEC|EN 16985|EN 1539|EN 50|IEC|ISO 13577"),
    ("Surface, film and tests", r"ISO|SSPC|ASTM|AMPP|NACE|EN 13438|EN 15773"),
    ("Everything else", r""),
)


def rules_map_html() -> str:
    """Every law and standard that a page or calculator here leans on, by subject."""
    uses = _uses()
    chosen = {
        key: one for key, one in all_sources().items() if one.kind in ("law", "standard") and key in uses
    }
    parts = []
    for group, _ in GROUPS:
        rows = sorted(
            ((one.edition or one.title, key, one) for key, one in chosen.items() if _group(one) == group),
            key=lambda row: [int(part) if part.isdigit() else part for part in re.split(r"(\d+)", row[0])],
        )
        if rows:
            lines = "".join(_line(name, key, one, uses[key]) for name, key, one in rows)
            parts.append(
                f"<h3>{escape(group)}</h3>{_table(group, ('Rule', 'Covers', 'Used on', 'We have'), lines)}"
            )
    return "".join(parts)


def _group(one: Source) -> str:
    for group, pattern in GROUPS:
        if pattern is None:
            if one.kind == "law" and "(US)" not in one.author and "US " not in one.author:
                return group
        elif re.match(pattern, one.edition):
            return group
    raise AssertionError("the last group takes all")


def _line(name: str, key: str, one: Source, pages: list[tuple[str, str]]) -> str:
    links = ", ".join(f'<a href="~/{path}/">{escape(title)}</a>' for path, title in pages)
    return (
        f'<tr><th scope="row"><a href="~/reference/sources/#source-{key}">{escape(name)}</a></th>'
        f"<td>{escape(one.title)}</td><td>{links}</td><td>{SEEN[one.seen]}</td></tr>"
    )


def rules_by_place_html() -> str:
    """The shop's own safety rules with the law behind each and the standard that stands beside it."""
    lines = "".join(
        f'<tr><th scope="row">{escape(rule["name"])}</th><td>{escape(", ".join(PLACES[place] for place in rule["places"]))}</td>'
        f"<td>{escape(filled(rule['law']) or 'no rule known to us')}</td><td>{escape(rule['beside'])}</td>"
        f"<td>{SEEN[rule['rule_seen']] if rule['law'] else ''}</td></tr>"
        for rule in table("safety_rules").values()
    )
    head = ("Rule on the wall", "Place", "Law or code", "Beside it, from memory", "We have it")
    return _table("Safety rules", head, lines)


def _table(name: str, head: tuple[str, ...], lines: str) -> str:
    cells = "".join(f'<th scope="col">{escape(words)}</th>' for words in head)
    return (
        f'<div class="calc-scroll" role="region" tabindex="0" aria-label="{escape(name)}">'
        f'<table class="calc-table rules-map"><thead><tr>{cells}</tr></thead><tbody>{named_cells(lines, head)}</tbody>'
        "</table></div>"
    )


@cache
def _uses() -> dict[str, list[tuple[str, str]]]:
    """By source: the pages that name it, as path and title, in the order of the menu's folders."""
    found: dict[str, list[tuple[str, str]]] = {}
    for path in sorted(DOCS.glob("*/*.md")):
        body, meta = get_data(path.read_text("utf-8"))
        page = (path.relative_to(DOCS).with_suffix("").as_posix(), str(meta.get("title", path.stem)))
        if page[0].startswith("reference/"):
            continue
        for words in CITED.findall(body):
            for word in words.split():
                for key in find.load(word).sources if word in find.slugs() else (word,):
                    if page not in found.setdefault(key, []):
                        found[key].append(page)
    return found
