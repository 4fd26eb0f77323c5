"""Every built page: headings, links, sources, dates, and no request to anybody else."""

from __future__ import annotations

import itertools
import json
import re
from functools import cache
from html.parser import HTMLParser
from pathlib import Path
from urllib.parse import unquote, urljoin, urlsplit

import pytest

from calculators import slugs
from calculators.kit import find

ROOT = Path(__file__).resolve().parents[2]
SITE = ROOT / "site"
PAGES = sorted(path.relative_to(SITE).as_posix() for path in SITE.rglob("*.html"))
CONTENT = [page for page in PAGES if page != "404.html"]


class Seen(HTMLParser):
    """What the checks need of a page: headings, ids, links, and where each stands."""

    def __init__(self) -> None:
        super().__init__()
        self.headings: list[int] = []
        self.ids: list[str] = []
        self.links: list[str] = []
        self.loads: list[str] = []
        self.styled: list[str] = []
        self.forms: list[dict[str, str]] = []
        self.inside = 0

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        at = {name: value or "" for name, value in attrs}
        if re.fullmatch("h[1-6]", tag):
            self.headings.append(int(tag[1]))
        if "id" in at:
            self.ids.append(at["id"])
        if tag == "a" and "href" in at:
            self.links.append(at["href"])
        if tag in ("script", "img", "iframe", "source") and "src" in at:
            self.loads.append(at["src"])
        if tag == "link" and at.get("rel") not in ("canonical", "next", "prev"):
            self.loads.append(at["href"])
        if tag == "calc-form":
            self.forms.append(at)
            self.inside += 1
        if self.inside and (
            "style" in at or tag in ("style", "script") or any(name.startswith("on") for name in at)
        ):
            self.styled.append(f"<{tag} {at}>")

    def handle_endtag(self, tag: str) -> None:
        if tag == "calc-form":
            self.inside -= 1


@cache
def seen(page: str) -> Seen:
    made = Seen()
    made.feed((SITE / page).read_text("utf-8"))
    return made


def test_there_is_a_site():
    assert len(CONTENT) > 8, "build the site first: python3 scripts/build.py"


@pytest.mark.parametrize("page", PAGES)
def test_one_top_heading_and_no_level_left_out(page):
    levels = seen(page).headings
    assert levels.count(1) == 1
    assert all(later <= earlier + 1 for earlier, later in itertools.pairwise(levels)), levels


@pytest.mark.parametrize("page", PAGES)
def test_ids_are_unique(page):
    ids = seen(page).ids
    assert sorted(set(ids)) == sorted(ids)


@pytest.mark.parametrize("page", PAGES)
def test_nothing_is_loaded_from_another_host(page):
    assert [load for load in seen(page).loads if urlsplit(load).netloc] == []


@pytest.mark.parametrize("page", CONTENT)
def test_every_link_on_the_site_leads_somewhere(page):
    dead = []
    for link in seen(page).links:
        parts = urlsplit(link)
        if parts.scheme or parts.netloc:
            continue
        target = unquote(urlsplit(urljoin(f"http://site/{page}", link)).path).lstrip("/")
        path = SITE / target
        file = path / "index.html" if path.is_dir() else path
        if not file.is_file():
            dead.append(link)
        elif parts.fragment and file.suffix == ".html":
            if unquote(parts.fragment) not in seen(file.relative_to(SITE).as_posix()).ids:
                dead.append(link)
    assert dead == []


@pytest.mark.parametrize(
    "page", [page for page in CONTENT if "<calc-form" in (SITE / page).read_text("utf-8")]
)
def test_calculators_hold_to_a_strict_policy(page):
    assert seen(page).styled == []
    for form in seen(page).forms:
        assert "~/" not in form["data-engine"]
        manifest = (SITE / page).parent / form["data-engine"] / "manifest.json"
        assert manifest.resolve().is_file(), "the engine that the form names is not there"


@pytest.mark.parametrize("slug", slugs())
def test_a_calculator_has_its_three_files(slug):
    stage, module = find.stage(slug), slug.replace("-", "_")
    assert (ROOT / "docs" / stage / f"{slug}.md").is_file()
    assert list((ROOT / "tests" / stage).glob(f"test_{module}*.py"))


@pytest.mark.parametrize("slug", slugs())
def test_a_calculators_page_answers_names_its_sources_and_its_date(slug):
    calculator = find.load(slug)
    text = (SITE / find.stage(slug) / slug / "index.html").read_text("utf-8")
    assert f'data-answer="{calculator.main.key}"' in text
    assert text.count("<li>") and 'class="sources"' in text
    assert f"Read against its sources on {calculator.reviewed}" in text
    assert len(re.findall(r"<calc-form", text)) == 1


@pytest.mark.parametrize("page", sorted(path.as_posix() for path in (ROOT / "docs").rglob("*.md")))
def test_guides_and_calculators_say_when_they_were_read_and_from_what(page):
    text = Path(page).read_text("utf-8")
    kind = re.search(r"^kind: (\w+)$", text, re.MULTILINE)
    assert kind and kind[1] in ("guide", "calculator", "tool", "reference")
    if kind[1] in ("guide", "calculator"):
        assert re.search(r"^reviewed: \d{4}-\d\d-\d\d$", text, re.MULTILINE)
        assert "<!-- sources:" in text


def test_search_finds_calculators_by_their_words_and_not_by_example_numbers():
    entries = json.loads((SITE / "search" / "search_index.json").read_text("utf-8"))["docs"]
    text = " ".join(f"{entry['title']} {entry['text']}" for entry in entries)
    for slug in slugs():
        assert find.load(slug).title in text
    from calculators import run

    assert run("cure-plan", {}).answers["touch-after"].text not in text


@pytest.mark.parametrize("slug", slugs())
def test_a_calculators_page_is_light(slug):
    """performance budget: the HTML of a calculator page is at most 60 kB gzip."""
    import gzip

    page = SITE / find.stage(slug) / slug / "index.html"
    assert len(gzip.compress(page.read_bytes(), 6)) <= 60_000
