"""The built pages, read once."""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from functools import cache
from html.parser import HTMLParser
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]
SITE = ROOT / "site"


class Reader(HTMLParser):
    """Every tag with its attributes and the calc-form it lies in, and the words of headings."""

    def __init__(self) -> None:
        super().__init__()
        self.tags: list[tuple[str, dict[str, str], bool]] = []
        self.headings: list[tuple[int, str]] = []
        self._form = 0
        self._heading = False

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self._form += tag == "calc-form"
        self.tags.append((tag, {key: value or "" for key, value in attrs}, self._form > 0))
        if re.fullmatch("h[1-6]", tag):
            self.headings.append((int(tag[1]), ""))
            self._heading = True

    def handle_endtag(self, tag: str) -> None:
        self._form -= tag == "calc-form"
        if re.fullmatch("h[1-6]", tag):
            self._heading = False

    def handle_data(self, data: str) -> None:
        if self._heading:
            level, words = self.headings[-1]
            self.headings[-1] = (level, words + data)


@dataclass
class Built:
    """A built page. path: below the site, like cure/cure-plan/index.html."""

    path: str
    text: str
    tags: list[tuple[str, dict[str, str], bool]]
    headings: list[tuple[int, str]]
    ids: list[str] = field(default_factory=list)


@cache
def built(path: str) -> Built:
    text = (SITE / path).read_text("utf-8")
    reader = Reader()
    reader.feed(text)
    ids = [attributes["id"] for _, attributes, _ in reader.tags if attributes.get("id")]
    return Built(path, text, reader.tags, reader.headings, ids)


def paths() -> list[str]:
    """Every built page, or the first one where the site is not built, so that its tests fail and say so."""
    return sorted(path.relative_to(SITE).as_posix() for path in SITE.rglob("*.html")) or ["index.html"]


@pytest.fixture(scope="session", autouse=True)
def site_is_built() -> None:
    if not (SITE / "index.html").is_file():
        pytest.fail("The site is not built: run python3 scripts/build.py, or check.py --only site.", False)


def pytest_generate_tests(metafunc: pytest.Metafunc) -> None:
    if "page" in metafunc.fixturenames:
        metafunc.parametrize("page", paths(), indirect=True)


@pytest.fixture
def page(request: pytest.FixtureRequest) -> Built:
    return built(request.param)
