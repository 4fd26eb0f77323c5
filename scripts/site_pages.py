"""What the reference pages are made of: tables of figures, the table of rules, sources, and the list of calculators."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping, Sequence
from html import escape
from typing import Any

from calculators.kit import find
from calculators.kit.sources import Source, all_sources, source
from calculators.tables import names, page_names, table

# Figures are in the units that formulas work in, and their names end in them.
UNITS = {
    "kg_m3": "kg/m3",
    "J_kgK": "J/(kg K)",
    "W_mK": "W/(m K)",
    "W_m2K": "W/(m2 K)",
    "degC": "degrees C",
    "degF": "degrees F",
    "mg_m3": "mg/m3",
    "g_m3": "g/m3",
    "mg_L": "mg/L",
    "mg_kg": "mg/kg",
    "mJ": "mJ",
    "pF": "pF",
    "Mohm": "megohm",
    "dBA": "dBA",
    "dB": "dB",
    "ft_min": "ft/min",
    "percent": "%",
    "lb_ft3": "lb/ft3",
    "lb_h": "lb/h",
    "cfm": "cfm",
    "in2": "in2",
    "mil": "mil",
    "psi": "psi",
    "in": "in",
    "h": "h",
}
SEEN = {
    "full-text": "read in full",
    "excerpt": "read in part",
    "second-hand": "second-hand",
    "memory": "from memory",
}


def table_of(name: str) -> str:
    """A table of tables/*.toml as a reader can check it. Raises KeyError for a name that is not there."""
    if name not in (*names(), *page_names()):
        raise KeyError(name)
    read = table(name)
    return _rules(name, read["rule"]) if "rule" in read else _figures(name, read)


def _figures(name: str, rows: Mapping[str, Mapping[str, Any]]) -> str:
    columns = list(dict.fromkeys(column for row in rows.values() for column in row))
    shown = [one for one in columns if one != "name" and not one.endswith(("_source", "_seen", "note"))]
    head = ("Name", *map(_heading, shown))
    body = ["".join(_figure(row, column) for column in shown) for row in rows.values()]
    notes = [
        f"<li><strong>{escape(row['name'])}.</strong> {escape(row[column])}</li>"
        for row in rows.values()
        for column in columns
        if column.endswith("note") and column in row
    ]
    lines = [
        f'<tr><th scope="row">{escape(row["name"])}<br><code>{escape(key)}</code>{_whole_row(row)}</th>{cells}</tr>'
        for (key, row), cells in zip(rows.items(), body, strict=True)
    ]
    return _scrolling(name, head, lines) + (f"<ul>{''.join(notes)}</ul>" if notes else "")


def _heading(column: str) -> str:
    for ending, unit in UNITS.items():
        if column.endswith(f"_{ending}"):
            return f"{column.removesuffix(f'_{ending}').replace('_', ' ').capitalize()}, {unit}"
    return column.replace("_", " ").capitalize()


def _figure(row: Mapping[str, Any], column: str) -> str:
    value = row.get(column, "")
    text = ", ".join(map(str, value)) if isinstance(value, list) else str(value)
    stem = next((column.removesuffix(f"_{one}") for one in UNITS if column.endswith(f"_{one}")), column)
    seen, key = row.get(f"{stem}_seen"), row.get(f"{stem}_source")
    if column not in row or seen is None or key is None:
        return f"<td>{escape(text)}</td>"
    return f"<td>{escape(text)}<br><span>{SEEN[seen]}, {_source_link(key)}</span></td>"


def _whole_row(row: Mapping[str, Any]) -> str:
    """The source of a row whose figures all come from one place."""
    if "all_source" not in row:
        return ""
    return f"<br><span>{SEEN[row['all_seen']]}, {_source_link(row['all_source'])}</span>"


def _source_link(key: str) -> str:
    source(key)  # a key that is not there stops the build
    return f'<a href="~/reference/sources/#source-{key}">{escape(key)}</a>'


def _rules(name: str, rules: list[Mapping[str, Any]]) -> str:
    lines = []
    for rule in rules:
        keys = rule["source"] if isinstance(rule["source"], list) else [rule["source"]]
        cells = (
            _pairs(rule.get("when", {})) or "always",
            _pairs(rule["says"]),
            escape(rule["reason"]),
            ", ".join(map(_source_link, keys)),
        )
        lines.append(
            f'<tr><th scope="row"><code>{escape(rule["id"])}</code><br><span>{escape(rule["rank"])}</span></th>'
            f"{''.join(f'<td>{cell}</td>' for cell in cells)}</tr>"
        )
    return _scrolling(name, ("Rule and rank", "When", "Says", "Because", "Source"), lines)


def _pairs(words: Mapping[str, Any]) -> str:
    return "<br>".join(
        f"{escape(key)}: {escape(', '.join(value) if isinstance(value, list) else str(value))}"
        for key, value in words.items()
    )


def named_cells(lines: str, head: Sequence[str]) -> str:
    """Rows whose cells carry their column's name: a phone shows each row as an entry of its own."""

    def row(line: re.Match[str]) -> str:
        names_left = iter(head[1:])
        return re.sub("<td>", lambda _: f'<td data-head="{escape(next(names_left))}">', line[0])

    return re.sub("<tr>.*?</tr>", row, lines, flags=re.DOTALL)


def _scrolling(name: str, head: Sequence[str], lines: Iterable[str]) -> str:
    cells = "".join(f'<th scope="col">{escape(words)}</th>' for words in head)
    return (
        f'<div class="calc-scroll" role="region" tabindex="0" aria-label="Table {escape(name)}" data-search-exclude>'
        f'<table id="table-{name}" class="calc-table"><thead><tr>{cells}</tr></thead>'
        f"<tbody>{named_cells(''.join(lines), head)}</tbody></table></div>"
    )


def source_list(keys: Iterable[str]) -> str:
    """Some sources, each with how well it was seen."""
    return f'<ul class="sources">{"".join(f"<li>{_source(source(key))}</li>" for key in keys)}</ul>'


def every_source() -> str:
    """All sources with their keys, so that a table can lead to each."""
    items = (
        f'<li id="source-{key}">{_source(one)} <code>{escape(key)}</code></li>'
        for key, one in all_sources().items()
    )
    return f'<ul class="sources">{"".join(items)}</ul>'


def _source(one: Source) -> str:
    address = f' <a href="{escape(one.url)}" rel="noreferrer">{escape(one.url)}</a>' if one.url else ""
    return f"{escape(str(one).rstrip('.'))}. <em>{escape(one.standing)}</em>.{address}"


# In shop order, as the menu names them.
STAGES = {
    "start": "Start here",
    "part": "The part",
    "prepare": "Prepare",
    "spray": "Spray",
    "cure": "Cure",
    "inspect": "Inspect",
    "safety": "Safety",
    "job": "The job",
    "reference": "Reference",
}


def every_calculator() -> str:
    """The question of each calculator with the way to it, by stage in shop order."""
    parts = []
    for stage, words in STAGES.items():
        items = "".join(
            f'<li><a href="~/{stage}/{slug}/">{escape(find.load(slug).question)}</a></li>'
            for slug in find.slugs()
            if find.stage(slug) == stage
        )
        if items:
            parts.append(f"<div><h3>{words}</h3><ul>{items}</ul></div>")
    return f'<div class="calculators">{"".join(parts)}</div>'
