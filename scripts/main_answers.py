"""The main answers of several calculators on one page, side by side at its top, each leading to its form."""

from __future__ import annotations

from html import escape

from calculators.kit import find
from calculators.kit.run import run


def main_answers_html(slugs: tuple[str, ...]) -> str:
    """Links to the headings of that name on the page, each with the example's main answer; a module keeps them in step."""
    items = []
    for slug in slugs:
        calculator = find.load(slug)
        text = run(slug, {}).answers[calculator.main.key].text
        items.append(
            f'<li><a href="#{slug}" data-main-of="{slug}" data-state="example"><span>{escape(calculator.title)}</span> '
            f"<strong>{escape(text)}</strong></a></li>"
        )
    return (
        '<nav class="main-answers" aria-label="Answers on this page" data-search-exclude>'
        f"<ul>{''.join(items)}</ul></nav>"
    )
