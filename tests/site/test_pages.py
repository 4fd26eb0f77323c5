"""Every built page: its headings, its links, its ids, and no way to another host."""

from __future__ import annotations

import itertools
import posixpath
import re
from urllib.parse import unquote, urlsplit

import yaml

from tests.site.conftest import ROOT, SITE, Built, built

# What a browser fetches by itself; a link that a reader follows may lead elsewhere.
FETCHES = {"script": "src", "img": "src", "iframe": "src", "link": "href", "source": "src", "use": "href"}


def test_one_first_heading_and_none_skipped(page: Built) -> None:
    levels = [level for level, _ in page.headings]
    assert levels.count(1) == 1
    assert levels[0] == 1
    for above, below in itertools.pairwise(levels):
        assert below <= above + 1, page.headings
    assert all(words.strip() for _, words in page.headings)


def test_ids_are_unique(page: Built) -> None:
    assert sorted({one for one in page.ids if page.ids.count(one) > 1}) == []


def test_nothing_is_fetched_from_another_host(page: Built) -> None:
    fetched = [
        attributes.get(FETCHES[tag], "")
        for tag, attributes, _ in page.tags
        if tag in FETCHES and not (tag == "link" and attributes.get("rel") in ("canonical", "prev", "next"))
    ]
    assert [one for one in fetched if urlsplit(one).netloc] == []
    assert re.findall(r"url\(\s*['\"]?(?:https?:)?//", page.text) == []
    assert any(attributes.get("name") == "referrer" for _, attributes, _ in page.tags)


# Read out by themselves, as by a screen reader's list of links, these say nothing.
SAYS_NOTHING = {
    "",
    "more",
    "read more",
    "learn more",
    "here",
    "click here",
    "right here",
    "this",
    "link",
    "go",
    "start",
}


def test_links_say_where_they_lead(page: Built) -> None:
    links = re.findall(r"<a\b([^>]*)>(.*?)</a>", page.text, re.DOTALL)
    assert links
    unclear = [
        text
        for head, text in links
        if "aria-label" not in head and re.sub(r"<[^>]+>", "", text).strip().lower() in SAYS_NOTHING
    ]
    assert unclear == []


def test_links_lead_somewhere(page: Built) -> None:
    dead = []
    for tag, attributes, _ in page.tags:
        link = attributes.get({"a": "href"}.get(tag) or FETCHES.get(tag, ""), "")
        parts = urlsplit(link)
        if not link or parts.scheme or parts.netloc:
            continue
        # Links work under any folder, but for the page of what is not there: it is shown at any depth.
        assert page.path == "404.html" or not link.startswith("/"), link
        where = posixpath.normpath(posixpath.join(posixpath.dirname(page.path), unquote(parts.path)))
        where = page.path if not parts.path else where.lstrip("/") or "."
        file = SITE / where
        if file.is_dir():
            file = file / "index.html"
            where = posixpath.normpath(posixpath.join(where, "index.html"))
        anchor = unquote(parts.fragment) if file.suffix == ".html" else ""
        if not file.is_file() or (anchor and anchor not in built(where).ids):
            dead.append(link)
    assert dead == []


def test_the_element_holds_no_style_and_no_script(page: Built) -> None:
    for tag, attributes, in_form in page.tags:
        if in_form:
            assert tag not in ("style", "script")
            assert not [name for name in attributes if name == "style" or name.startswith("on")], attributes
            assert not (re.fullmatch("h[1-6]", tag) and "id" in attributes)


def test_no_shortcode_and_no_home_link_is_left(page: Built) -> None:
    assert "~/" not in re.sub(r'data-address="~/[^"]*"', "", page.text)
    assert re.findall(r"<!--\s*(?:calculator|inputs|limits|sources|picture|table|value)\b", page.text) == []


def test_nothing_of_the_template_of_a_new_calculator_is_left(page: Built) -> None:
    assert "Replace:" not in page.text


def test_pages_say_when_they_were_read_against_their_sources() -> None:
    for source in sorted((ROOT / "docs").rglob("*.md")):
        meta = yaml.safe_load(source.read_text("utf-8").split("---\n")[1])
        assert meta["title"], source
        assert meta["description"], source
        assert meta["kind"] in ("guide", "calculator", "tool", "reference"), source
        name = source.relative_to(ROOT / "docs").with_suffix("").as_posix()
        text = built("index.html" if name == "index" else f"{name}/index.html").text
        if name != "index":
            assert f"Read against its sources on {meta['reviewed']}." in text, source
        assert "Found a wrong number?" in text, source


def test_every_word_of_a_page_lies_in_a_paragraph(page: Built) -> None:
    """A figure put in at the start of a line ends its paragraph in Markdown and stands alone, out of its sentence."""
    article = page.text.partition("<article")[2].partition('<div class="print-foot"')[0]
    assert re.findall(r"</(?:p|ul|ol|dl|table|h[1-6])>\s*([^<\s][^<]*)", article) == []
