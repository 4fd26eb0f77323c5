"""The job sheet as a page without scripts: the way of a part through the shop, and what is asked at each step."""

from __future__ import annotations

from html import escape

from calculators.kit import find
from calculators.tables import table


def job_sheet_html(base: str, engine: str) -> str:
    """The element for the page. base: the way to the site's root. engine: the engine's folder, from the page."""
    steps = "".join(_step(place, key, row) for place, (key, row) in enumerate(table("route").items(), 1))
    return (
        f'<job-sheet data-base="{escape(base)}" data-engine="{escape(engine)}" data-search-exclude>'
        '<div class="job-top" data-top></div><p class="job-status" role="status" data-status></p>'
        f"{steps}</job-sheet>"
    )


def _step(place: int, key: str, row: dict[str, object]) -> str:
    known = find.slugs()
    slugs = [slug for slug in row["calculators"] if slug in known]  # type: ignore[attr-defined]
    core = row["core"]
    asks = "".join(
        f'<li data-slug="{slug}" data-version="{find.load(slug).version}" data-title="{escape(find.load(slug).title)}"'
        f"{' data-core' if slug in core else ''}>"  # type: ignore[operator]
        f'<a href="~/{find.stage(slug)}/{slug}/">{escape(find.load(slug).question)}</a></li>'
        for slug in slugs
    )
    return (
        f'<section class="job-step" data-step="{key}"><h2 class="job-name">{place}. {escape(str(row["name"]))}</h2>'
        f'<div class="job-results" data-results></div><div class="job-own" data-own></div>'
        f'<p class="job-asks-title">Still to ask</p><ul class="job-asks">{asks}</ul>'
        f'<p class="job-guide"><a href="~/{row["guide"]}/">How it is done</a></p></section>'
    )
