"""An answer in the middle of prose, worked out when the site is built, that leads to its calculator with the same values."""

from __future__ import annotations

from collections.abc import Mapping
from html import escape
from urllib.parse import urlencode

from calculators.kit import find
from calculators.kit.result import Answer
from calculators.kit.run import run


def answers(slug: str, texts: Mapping[str, str]) -> Mapping[str, Answer]:
    """What a calculator answers. Raises KeyError with its own sentences where it refuses a text."""
    asked = {one.key for one in find.load(slug).fields}
    if unknown := set(texts) - asked:
        raise KeyError(f"{slug} does not ask for {', '.join(sorted(unknown))}")
    outcome = run(slug, texts)
    if not outcome.ok:
        raise KeyError(f"{slug}: {'; '.join(error.message for error in outcome.errors)}")
    return outcome.answers


def filled_in(slug: str, texts: Mapping[str, str]) -> str:
    """The way to a calculator with these texts in its fields and the example in the rest."""
    query = urlencode({**texts, "v": str(find.load(slug).version)})
    return f"~/{find.stage(slug)}/{slug}/?{escape(query)}"


def worked_html(slug: str, key: str, *pairs: str) -> str:
    """One answer as a link. pairs: field=text, with + for a space; what is left out comes from the example."""
    texts = dict(pair.replace("+", " ").split("=", 1) for pair in pairs)
    text = answers(slug, texts)[key].text
    return f'<a class="worked" href="{filled_in(slug, texts)}">{escape(text)}</a>'
