"""Words of the trade from tables/pages/glossary.toml: the glossary, and meanings that open where a guide first uses a word."""

from __future__ import annotations

import re
from collections.abc import Mapping
from functools import cache
from html import escape
from html.parser import HTMLParser
from typing import Any

from page_meta import page_title

from calculators.tables import table

INSIDE = {"p", "li"}
# Where a definition would be in the way, or would put one control into another.
NEVER = {
    "a", "abbr", "button", "caption", "code", "fieldset", "form", "h1", "h2", "h3", "h4", "h5", "h6", "label", "legend", "nav",
    "pre", "script", "style", "summary", "svg", "table", "calc-form",
}  # fmt: skip
NEVER_CLASSES = {
    "admonition",
    "safety-rules",
    "sources",
    "wall-sheet",
    "print-foot",
    "calc-also",
    "main-answers",
}
VOID = {"area", "base", "br", "col", "embed", "hr", "img", "input", "link", "meta", "source", "track", "wbr"}


def glossary_html() -> str:
    """Every word with its other names and its meaning, in the order of the alphabet."""
    rows = sorted(table("glossary").items(), key=lambda item: item[1]["name"].lower())
    items = "".join(
        f'<dt id="word-{key}">{escape(row["name"])}</dt><dd>{_meaning(row)} '
        f'<a href="~/{row["page"]}/">{escape(page_title(row["page"]))}</a>{_other_names(row)}</dd>'
        for key, row in rows
    )
    return f'<dl class="glossary">{items}</dl>'


def _meaning(row: Mapping[str, Any]) -> str:
    return escape(row["meaning"])


def _other_names(row: Mapping[str, Any]) -> str:
    trade = f"In the shop: {escape(row['trade'])}. "
    standard = f"In standards: {escape(row['standard'])}." if row["standard"] else ""
    return f'<br><span class="glossary-names">{trade}{standard}</span>'


@cache
def _pattern() -> tuple[re.Pattern[str], dict[str, str]]:
    """What to look for, longest first, and the word of the table that each belongs to."""
    words = {mark.lower(): key for key, row in table("glossary").items() for mark in row.get("mark", ())}
    choices = "|".join(re.escape(mark) for mark in sorted(words, key=len, reverse=True))
    return re.compile(rf"(?<![\w-])(?:{choices})(?![\w-])", re.IGNORECASE), words


class _Marker(HTMLParser):
    """Gives the page back as it was read, with a button round the first place of each word."""

    def __init__(self, own_page: str) -> None:
        super().__init__(convert_charrefs=False)
        self.out: list[str] = []
        self.used: list[str] = []
        self.open: list[tuple[str, bool]] = []
        self.skip = {key for key, row in table("glossary").items() if row["page"] == own_page}

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.out.append(self.get_starttag_text() or "")
        if tag not in VOID:
            classes = set((dict(attrs).get("class") or "").split())
            self.open.append((tag, tag in NEVER or bool(classes & NEVER_CLASSES)))

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.out.append(self.get_starttag_text() or "")

    def handle_endtag(self, tag: str) -> None:
        self.out.append(f"</{tag}>")
        while self.open:
            if self.open.pop()[0] == tag:
                break

    def handle_data(self, data: str) -> None:
        tags = {tag for tag, _ in self.open}
        if not tags & INSIDE or any(never for _, never in self.open):
            self.out.append(data)
            return
        pattern, words = _pattern()
        self.out.append(pattern.sub(lambda found: self._mark(found[0], words[found[0].lower()]), data))

    def _mark(self, text: str, key: str) -> str:
        if key in self.used or key in self.skip:
            return text
        self.used.append(key)
        return f'<button type="button" class="term" popovertarget="term-{key}">{text}</button>'

    def handle_entityref(self, name: str) -> None:
        self.out.append(f"&{name};")

    def handle_charref(self, name: str) -> None:
        self.out.append(f"&#{name};")

    def handle_comment(self, data: str) -> None:
        self.out.append(f"<!--{data}-->")

    def handle_decl(self, decl: str) -> None:
        self.out.append(f"<!{decl}>")


def marked(html: str, own_page: str) -> str:
    """A guide with the meaning of each marked word behind its first place. own_page: its path below docs, without .md."""
    marker = _Marker(own_page)
    marker.feed(html)
    marker.close()
    rows = table("glossary")
    meanings = "".join(
        f'<div id="term-{key}" class="term-meaning" popover data-search-exclude><p><strong>{escape(rows[key]["name"])}.</strong> '
        f'{_meaning(rows[key])} <a href="~/reference/glossary/#word-{key}">In the glossary</a></p></div>'
        for key in marker.used
    )
    return "".join(marker.out) + meanings
