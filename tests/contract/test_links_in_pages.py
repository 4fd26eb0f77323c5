"""Links in pages that open a calculator filled in: its own version, its own fields, and values that it takes."""

from __future__ import annotations

import re
from html import unescape
from pathlib import Path
from urllib.parse import parse_qsl, urlsplit

import pytest

from calculators import run, slugs
from calculators.kit import find

ROOT = Path(__file__).resolve().parents[2]
LINK = re.compile(
    r'href="~/([a-z]+)/([a-z-]+)/\?([^"]*)"|\]\((?:\.\./)*([a-z]+/)?([a-z-]+)/?(?:\.md)?\?([^)]*)\)'
)


def links() -> list[tuple[str, str, str]]:
    found = []
    for page in sorted((ROOT / "docs").rglob("*.md")):
        for one in LINK.finditer(page.read_text("utf-8")):
            slug, query = one[2] or one[5], unescape(one[3] or one[6])
            found.append((page.relative_to(ROOT / "docs").as_posix(), slug, query))
    for table in sorted((ROOT / "calculators" / "tables").rglob("*.toml")):
        for slug, query in re.findall(r"~/[a-z]+/([a-z-]+)/\?([^\"' ]*)", table.read_text("utf-8")):
            found.append((table.name, slug, unescape(query)))
    return found


LINKS = links()


def test_there_are_such_links() -> None:
    assert len(LINKS) > 20


@pytest.mark.parametrize(
    ("page", "slug", "query"),
    LINKS,
    ids=[f"{page}-{slug}-{place}" for place, (page, slug, _) in enumerate(LINKS)],
)
def test_a_link_opens_a_calculator_as_it_is_now(page: str, slug: str, query: str) -> None:
    assert slug in slugs(), f"{page} links to a calculator {slug}, which is not there"
    calculator = find.load(slug)
    pairs = dict(parse_qsl(urlsplit(f"?{query}").query, keep_blank_values=True))
    assert pairs.pop("v", str(calculator.version)) == str(calculator.version)
    keys = {one.key for one in calculator.fields}
    assert {key for key in pairs if key.removesuffix("-unit") not in keys} == set()
    outcome = run(slug, pairs)
    assert outcome.ok, [one.message for one in outcome.errors]
