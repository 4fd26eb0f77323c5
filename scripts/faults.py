"""The fault finder: `<!-- faults -->` in a page becomes the filter, the index and every fault of tables/pages/faults.toml.

It is put in as Markdown, before the page is read as Markdown, so that each fault is a heading that the menu, the search
and links from other pages know.
"""

from __future__ import annotations

import posixpath
import re
from html import escape
from typing import Any

from page_meta import DOCS, page_title

from calculators.kit.sources import source
from calculators.tables import table

COMMENT = re.compile(r"<!--\s*faults\s*-->")
PICTURES = DOCS / "assets" / "pictures" / "faults"
HOME = "inspect"

SEEN = {
    "holes": "Holes, bubbles and craters",
    "skin": "Skin wavy, rough or uneven",
    "film": "Film thin, bare or heavy in places",
    "colour": "Colour or shine wrong",
    "loose": "Soft, chips or comes off",
    "rust": "Rust and blisters in use",
    "marks": "Marks, specks and dirt",
}
WHERE = {
    "everywhere": "All over",
    "spots": "Here and there",
    "edges": "Edges and corners that stick out",
    "recesses": "Inside corners and recesses",
    "joints": "Welds, seams, cut edges, castings",
    "low": "Lower edges and holes",
    "sections": "Only thick or only thin metal",
    "held": "Where it was hung, taped or held",
}
WHEN = {
    "spraying": "While spraying, before the bake",
    "oven": "Out of the oven",
    "handling": "Handled, fitted, packed or tested",
    "use": "Later, in use",
}
FACETS = (
    ("seen", "What you see", SEEN),
    ("where", "Where on the part", WHERE),
    ("when", "When it showed up", WHEN),
)


def put_in(markdown: str) -> str:
    """A page's Markdown with the faults in place of the comment."""
    return COMMENT.sub(lambda _: everything(), markdown)


def everything() -> str:
    faults = table("faults")
    parts = [_filter(len(faults)), _index(faults)]
    for seen, words in SEEN.items():
        here = {key: fault for key, fault in faults.items() if fault["seen"][0] == seen}
        if here:
            parts += [f'<div class="fault-group" data-fault-group markdown="1">\n\n## {words} {{#{seen}}}']
            parts += [_fault(key, fault) for key, fault in here.items()]
            parts.append("</div>")
    return "\n\n".join(parts)


def _filter(count: int) -> str:
    """The filter. It stays hidden where no script can work it."""
    fields = "".join(
        f'<div class="fault-field"><label for="fault-{name}">{label}</label>'
        f'<select id="fault-{name}" name="{name}" autocomplete="off"><option value="">Anything</option>'
        + "".join(f'<option value="{key}">{escape(words)}</option>' for key, words in choices.items())
        + "</select></div>"
        for name, label, choices in FACETS
    )
    return (
        '<form class="fault-filter" data-fault-filter data-search-exclude hidden aria-label="Narrow the faults down">'
        f'<div class="fault-fields">{fields}</div><p class="fault-told"><span role="status" data-fault-count>'
        f'{count} of {count} faults shown.</span> <button type="reset">Show all</button></p></form>'
    )


def _index(faults: dict[str, Any]) -> str:
    """Every fault by its look, as links: the way down the page without scripts, and on a phone."""
    lines = []
    for seen, words in SEEN.items():
        links = "".join(
            f'<li data-fault-link="{key}"><a href="#{key}">{_face(key)}<span>{escape(fault["name"])}</span></a></li>'
            for key, fault in faults.items()
            if fault["seen"][0] == seen
        )
        if links:
            lines.append(f"<div data-fault-list><dt>{escape(words)}</dt><dd><ul>{links}</ul></dd></div>")
    return f'<dl class="fault-index" data-search-exclude>{"".join(lines)}</dl>'


def _face(key: str) -> str:
    """The left half of a fault's drawing, small; its name stands beside it."""
    drawn = (PICTURES / f"{key}.svg").read_text("utf-8")
    shapes = drawn[drawn.index("<g ") : drawn.index("</g>") + 4].replace("\n", "")
    return f'<svg class="pic" viewBox="4 4 168 100" aria-hidden="true">{shapes}</svg>'


def _fault(key: str, fault: dict[str, Any]) -> str:
    for name, _, choices in FACETS:
        unknown = set(fault[name]) - set(choices)
        if unknown or not fault[name]:
            raise ValueError(f"faults.toml, {key}: {name} must be among {', '.join(choices)}")
    facets = " ".join(f'data-{name}="{" ".join(fault[name])}"' for name, _, _ in FACETS)
    causes = "\n".join(
        f"{place}. **{_sentence(why)}**<br>*How to tell:* {tell}<br>*Next time:* {prevent}"
        for place, (why, tell, prevent) in enumerate(fault["cause"], 1)
    )
    return f"""<section class="fault" data-fault="{key}" {facets} markdown="1">

### {fault["name"]} {{#{key}}}

<p class="calc-also">Also asked as: {escape(fault["also"])}.</p>

<!-- picture: faults/{key} -->

{fault["looks"]}

**Likely causes, likeliest first**

{causes}

**Do now:** {fault["now"]}

**Go on to:** {", ".join(map(_link, fault["more"]))}.

<p class="fault-stands">{_standing(fault["sources"])}</p>

</section>"""


def _sentence(words: str) -> str:
    return words if words.endswith((".", "?")) else f"{words}."


def _link(page: str) -> str:
    """A link to a page of the site, named by its own title."""
    return f"[{page_title(page)}]({posixpath.relpath(page, HOME)}.md)"


def _standing(keys: list[str]) -> str:
    """What it stands on, in a line; every key must be a source."""
    for key in keys:
        source(key)
    named = [key for key in keys if key not in ("common-practice", "trade-pages")]
    if not named:
        return "Stands on: common practice, no source."
    links = ", ".join(
        f'<a href="~/reference/sources/#source-{key}">{escape(source(key).title)}</a> ({escape(source(key).standing)})'
        for key in named
    )
    return f"Stands on: {links}; the rest is common practice, no source."
