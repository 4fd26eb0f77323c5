"""What the contract tests share: every calculator, every field, and texts under which a field is asked."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from html.parser import HTMLParser

from calculators.kit.calculator import Calculator
from calculators.kit.fields import Asked, Choice, Quantity, Readings, Rows, Text, When, Whole, asked
from calculators.kit.find import load, slugs
from calculators.kit.run import Outcome
from calculators.kit.units import UNITS, convert

SLUGS = slugs()
FIELDS = [(slug, one) for slug in SLUGS for one in load(slug).fields]
CRASHED = "report code"


def name(value: object) -> str | None:
    return value.key if isinstance(value, Asked) else None


def every(kind: type) -> list[tuple[str, Asked]]:
    """Fields of a kind, those in the columns of tables too."""
    columns = [
        (slug, column)
        for slug, one in FIELDS
        if isinstance(one.field, Rows)
        for column in asked(one.field.row)
    ]
    return [(slug, one) for slug, one in [*FIELDS, *columns] if isinstance(one.field, kind)]


def own(kind: type) -> list[tuple[str, Asked]]:
    """Fields of a kind that stand in the form itself."""
    return [(slug, one) for slug, one in FIELDS if isinstance(one.field, kind)]


def texts_that_ask(calculator: Calculator, key: str) -> dict[str, str]:
    """Texts under which the field is asked, with something in every other field that then must be filled."""
    by_key = {one.key: one for one in calculator.fields}
    texts: dict[str, str] = {}
    when = by_key[key].field.when
    while when is not None:
        texts[when.key] = when.values[0]
        when = by_key[when.key].field.when
    for one in calculator.fields:
        if (
            not one.field.default
            and not getattr(one.field, "may_be_empty", False)
            and _asked(one.field.when, texts, by_key)
        ):
            texts[one.key] = sample(one)
    return texts


def _asked(when: When | None, texts: Mapping[str, str], by_key: Mapping[str, Asked]) -> bool:
    return when is None or texts.get(when.key, by_key[when.key].field.default) in when.values


def sample(one: Asked) -> str:
    """A text that the field takes."""
    field = one.field
    match field:
        case Quantity():
            return field.default or field.example or field.limits.low or field.limits.high or "1"
        case Readings():
            return field.default or " ".join([field.limits.low or field.limits.high or "1"] * field.at_least)
        case Whole() | Choice():
            return field.default
        case Text():
            return field.default or "a name"
        case Rows():
            line = ", ".join(sample(column) for column in asked(field.row))
            return field.default or "\n".join([line] * field.at_least)


def in_unit(number: float, source: str, target: str) -> str:
    """The number in another unit, written in full."""
    return f"{convert(number, source, target):.15g} {UNITS[target].shown}".strip()


def plain(outcome: Outcome) -> dict[str, object]:
    """What must be equal where two texts mean the same."""
    shown = outcome.to_json()
    return {key: shown[key] for key in ("ok", "headline", "cautions", "errors")} | {
        "answers": {key: one["text"] for key, one in shown["answers"].items()}
    }


class _Answers(HTMLParser):
    def __init__(self) -> None:
        super().__init__()
        self.found: dict[str, str] = {}
        self.cautions: list[str] = []
        self.open: list[tuple[str, str]] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        given = dict(attrs)
        assert not {name for name in given if name == "style" or name.startswith("on")}
        assert tag not in ("style", "script")
        if tag not in ("br", "input"):  # these are never closed
            self.open.append((tag, given.get("data-answer") or ""))
        if key := given.get("data-answer"):
            assert key not in self.found, f"{key} stands twice"
            self.found[key] = ""
        if level := given.get("data-caution"):
            self.cautions.append(level)

    def handle_endtag(self, tag: str) -> None:
        opened, _ = self.open.pop()
        assert opened == tag, f"</{tag}> closes <{opened}>"

    def handle_data(self, data: str) -> None:
        for _, key in self.open:
            if key:
                self.found[key] += data


def answers_in_html(html: str) -> tuple[dict[str, str], list[str]]:
    """Text of every answer in the markup, and the levels of its cautions. Fails on unclosed tags, styles and handlers."""
    reader = _Answers()
    reader.feed(html)
    reader.close()
    assert reader.open == []
    return reader.found, reader.cautions


def each_choice(calculator: Calculator) -> Iterator[dict[str, str]]:
    """The example, then the example with one choice changed, for every option of every choice."""
    yield {}
    for one in calculator.fields:
        if isinstance(one.field, Choice):
            for slug in one.field.slugs:
                if slug != one.field.default:
                    texts = texts_that_ask(calculator, one.key) | {one.key: slug}
                    by_key = {other.key: other for other in calculator.fields}
                    for other in calculator.fields:
                        empty = not other.field.default and not getattr(other.field, "may_be_empty", False)
                        if empty and other.key not in texts and _asked(other.field.when, texts, by_key):
                            texts[other.key] = sample(other)
                    yield texts
