"""The closed list of comments in a page that are put in place when the site is built. An unknown one stops the build."""

from __future__ import annotations

import re
from collections.abc import Callable
from html import escape
from pathlib import Path

from bake_beside import bake_beside_html
from glossary import glossary_html
from job_sheet import job_sheet_html
from main_answers import main_answers_html
from rules_map import rules_by_place_html, rules_map_html
from safety_rules import rule_text, rules_html, sheet_html
from self_check import self_check_html
from shop_card import shop_card_html
from site_pages import every_calculator, every_source, source_list, table_of
from worked import worked_html

from calculators.kit import find
from calculators.kit.cli_help import kind_of, limits_of
from calculators.kit.fields import Quantity, Rows, asked
from calculators.kit.form import calculator_html
from calculators.kit.html import table_html
from calculators.kit.result import Table
from calculators.kit.run import run
from calculators.kit.sources import source
from calculators.tables import table

COMMENT = re.compile(r"<!--\s*(?P<name>[a-z-]+):?\s*(?P<words>[^>]*?)\s*-->")
PICTURES = Path(__file__).resolve().parent.parent / "docs" / "assets" / "pictures"


class Unknown(Exception):
    """A comment that is not on the list, or words in it that name nothing; the message says which."""


class Page:
    """What a shortcode may need to know of its page. base: the way to the site's root; slug: of the page's own address."""

    def __init__(self, base: str, slug: str, engine: str) -> None:
        self.base, self.slug, self.engine = base, slug, engine
        self.calculators: list[str] = []
        self.pictures = 0


def put_in(text: str, page: Page) -> str:
    """A page's HTML with every shortcode in place. Raises Unknown."""

    def put(found: re.Match[str]) -> str:
        name, words = found["name"], found["words"].split()
        if name not in SHORTCODES:
            raise Unknown(f"<!-- {name} --> is not a shortcode; they are {', '.join(sorted(SHORTCODES))}")
        try:
            return SHORTCODES[name](page, *words)
        except (KeyError, TypeError, FileNotFoundError) as error:
            raise Unknown(f"{found[0]}: {error!r}") from error

    return COMMENT.sub(put, text)


def _calculator(page: Page, slug: str) -> str:
    page.calculators.append(slug)
    engine = f"{page.base}assets/engine/{page.engine}/"
    return calculator_html(slug, page.base, engine) + _vary(slug) + (_also(slug) if slug == page.slug else "")


def _also(slug: str) -> str:
    """The question and the trade's words for it, in sight, for the site's search to find."""
    calculator = find.load(slug)
    words = ", ".join(calculator.keywords)
    return f'<p class="calc-also">{escape(calculator.question)} Also asked as: {escape(words)}.</p>'


def _vary(slug: str) -> str:
    """The table that serves without the engine."""
    calculator = find.load(slug)
    vary = calculator.vary
    if vary is None:
        return ""
    field = next(one.field for one in calculator.fields if one.key == vary.key)
    labels = {out.key: out.label for out in calculator.answers}
    rows = []
    for text in vary.texts:
        outcome = run(slug, {vary.key: text})
        rows.append((text, *(outcome.answers[key].text for key in vary.answers)))
    made = Table(
        f"The example with another {field.label.lower()}",
        (field.label, *(labels[key] for key in vary.answers)),
        tuple(rows),
    )
    return (
        f'<details class="calc-vary" data-search-exclude><summary>Without the live calculator: the example with another '
        f"{escape(field.label.lower())}</summary>{table_html(made, f'{slug}-vary')}</details>"
    )


def _inputs(page: Page, slug: str) -> str:
    rows = []
    for one in find.load(slug).fields:
        rows.append((one.field.label, kind_of(one), limits_of(one), one.field.hint))
        if isinstance(one.field, Rows):
            rows += [
                (f"in it: {c.field.label}", kind_of(c), limits_of(c), c.field.hint)
                for c in asked(one.field.row)
            ]
    return table_html(
        Table("What to enter", ("Field", "Takes", "From, to", "What it is"), tuple(rows)), f"{slug}-inputs"
    )


def _limits(page: Page, slug: str) -> str:
    calculator = find.load(slug)
    items = [f"<li>{escape(words)}</li>" for words in calculator.limits]
    for one in calculator.fields:
        if isinstance(one.field, Quantity) and one.field.validity:
            validity = one.field.validity
            span = " to ".join(end for end in (validity.low, validity.high) if end)
            items.append(
                f"<li>{escape(one.field.label)} outside {escape(span)}, the range of "
                f"{escape(source(validity.source).title)}: {escape(validity.beyond)}</li>"
            )
    return f"<ul>{''.join(items)}</ul>"


def _sources(page: Page, *words: str) -> str:
    return source_list(find.load(words[0]).sources if words[0] in find.slugs() else words)


def _picture(page: Page, name: str) -> str:
    svg = (PICTURES / f"{name}.svg").read_text("utf-8")
    page.pictures += 1
    mark = f"p{page.pictures}-"
    svg = re.sub(r'\bid="', f'id="{mark}', svg)
    svg = re.sub(
        r'aria-labelledby="([^"]*)"',
        lambda m: f'aria-labelledby="{" ".join(mark + i for i in m[1].split())}"',
        svg,
    )
    svg = re.sub(r"url\(#", f"url(#{mark}", svg)
    svg = re.sub(r'href="#', f'href="#{mark}', svg)
    return f'<div class="picture">{re.sub(r"<[?]xml[^>]*>", "", svg).strip()}</div>'


def _value(page: Page, words: str) -> str:
    name, row, column = words.split(".")
    return escape(str(table(name)[row][column]))


SHORTCODES: dict[str, Callable[..., str]] = {
    "calculator": _calculator,
    "inputs": _inputs,
    "limits": _limits,
    "self-check": lambda page: self_check_html(),
    "shop-card": lambda page: shop_card_html(),
    "sources": _sources,
    "all-sources": lambda page: every_source(),
    "picture": _picture,
    "value": _value,
    "table": lambda page, name: table_of(name),
    "calculators": lambda page: every_calculator(),
    "bake-beside": lambda page: bake_beside_html(),
    "glossary": lambda page: glossary_html(),
    "job-sheet": lambda page: job_sheet_html(page.base, f"{page.base}assets/engine/{page.engine}/"),
    "main-answers": lambda page, *slugs: main_answers_html(slugs),
    "rule": lambda page, key: rule_text(key),
    "rules": lambda page, *words: rules_html(words),
    "rules-by-place": lambda page: rules_by_place_html(),
    "rules-map": lambda page: rules_map_html(),
    "wall-sheet": lambda page, place: sheet_html(place),
    "worked": lambda page, *words: worked_html(*words),
}
