"""Safety rules, each written once in tables/pages/safety_rules.toml: a list on a page, a sentence in prose, a wall sheet."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from html import escape
from typing import Any

from site_pages import SEEN

from calculators.kit.sources import source
from calculators.tables import table

PLACES = {
    "blast-room": "Blast room",
    "compressor": "Compressor",
    "booth": "Booth",
    "oven": "Oven",
    "bench": "Bench",
    "store": "Store",
}
LINES = ("Emergency number", "This address", "First-aider", "Shut-off and extinguisher", "Qualified person")
FIGURE = re.compile(r"\{([^{}]+)\}")


def filled(text: str) -> str:
    """A text with each {table.row.column} turned into that figure. Raises KeyError for one that is not there."""

    def figure(found: re.Match[str]) -> str:
        name, row, column = found[1].split(".")
        return str(table(name)[row][column])

    return FIGURE.sub(figure, text)


def chosen(words: Iterable[str]) -> dict[str, Mapping[str, Any]]:
    """The rules of places and those named by their key, each once, in the order asked. KeyError for a word that is neither."""
    rules = table("safety_rules")
    found: dict[str, Mapping[str, Any]] = {}
    for word in words:
        if word in PLACES:
            found.update({key: rule for key, rule in rules.items() if word in rule["places"]})
        else:
            found[word] = rules[word]
    if not found:
        raise KeyError("no rule is named")
    return found


def rule_text(key: str) -> str:
    """The sentence of one rule, for use inside prose."""
    return escape(filled(table("safety_rules")[key]["rule"]))


def rules_html(words: Iterable[str]) -> str:
    """Rules as a list: what to do, why, and the law with how well it is known."""
    items = "".join(
        f"<li><strong>{escape(rule['name'])}.</strong> {escape(filled(rule['rule']))} "
        f"{escape(filled(rule['why']))}<br><small>{_law(rule)}</small></li>"
        for rule in chosen(words).values()
    )
    return f'<ul class="safety-rules">{items}</ul>'


def sheet_html(place: str) -> str:
    """The rules of one place as a sheet for its wall, with lines for what only this shop knows."""
    if place not in PLACES:
        raise KeyError(place)
    # a rule that belongs here first of all stands above those that hold in several places
    rules = sorted(chosen([place]).values(), key=lambda rule: rule["places"][0] != place)
    items = "".join(
        f"<li><strong>{escape(rule['name'])}.</strong> {escape(filled(rule['rule']))}</li>" for rule in rules
    )
    laws = "; ".join(dict.fromkeys(_short_law(rule) for rule in rules if rule["law"]))
    lines = "".join(f"<li>{words}</li>" for words in LINES)
    return (
        f'<ul class="wall-rules">{items}</ul><ul class="wall-lines">{lines}</ul>'
        f'<p class="wall-law">From: {escape(laws)}. Not all read in full: the safety pages say which. '
        f"Local codes and a qualified person decide.</p>"
    )


def _short_law(rule: Mapping[str, Any]) -> str:
    # a wall needs the number of the rule; how it was read stands on the page
    return filled(str(rule["law"])).split(", by way of")[0].split(" takes ")[0].split(" for ")[0]


def _law(rule: Mapping[str, Any]) -> str:
    one = source(rule["rule_source"])
    law = escape(filled(rule["law"]))
    beside = f" Beside it: {escape(rule['beside'])} (from memory)." if rule["beside"] else ""
    if law:
        return f"{law} ({SEEN[rule['rule_seen']]}).{beside}"
    if one.kind in ("common-practice", "memory"):
        return f"Common practice, no rule known to us.{beside}"
    return f"No rule known to us; from: {escape(one.title)} ({SEEN[rule['rule_seen']]}).{beside}"
