"""The site's search over what people ask: the page that answers stands among the first three results."""

from __future__ import annotations

import re
import tomllib
from collections.abc import Callable
from pathlib import Path
from urllib.parse import urlsplit

from playwright.sync_api import Page, expect

from tests.browser.conftest import Visit

ASKED = tomllib.loads(Path(__file__).with_name("questions.toml").read_text("utf-8"))
QUESTIONS, WORDS = ASKED["question"], ASKED["word"]
WANTED = 0.90


def first_three(page: Page, words: str) -> list[str]:
    field = page.locator(".md-search__input")
    field.fill("")
    # the search listens to keys
    field.press("End")
    expect(page.locator(".md-search-result__link")).to_have_count(0)
    field.fill(words)
    field.press("End")
    # a word that is nowhere on the site finds nothing, and says so
    expect(page.locator(".md-search-result__meta")).to_have_text(re.compile("matching document"))
    page.wait_for_timeout(100)
    links = page.locator(".md-search-result__link").evaluate_all("(all) => all.map((one) => one.href)")
    return list(dict.fromkeys(urlsplit(link).path.strip("/") for link in links))[:3]


def searching(here: Visit, address: str = "", words: str = "oven") -> Visit:
    """The search opened on a page, with something found: the index is fetched and built at the first use."""
    here.goes(address)
    here.page.locator(".md-search__input").click()
    here.page.locator(".md-search__input").fill(words)
    expect(here.page.locator(".md-search-result__link").first).to_be_visible()
    return here


def test_every_page_that_should_answer_is_there(site_folder: Path) -> None:
    missing = {
        page
        for one in [*QUESTIONS, *WORDS]
        for page in one["pages"]
        if not (site_folder / page / "index.html").is_file()
    }
    assert missing == set()


def test_questions_find_their_page(visit: Callable[..., Visit]) -> None:
    here = searching(visit())
    lost = []
    for one in QUESTIONS:
        found = first_three(here.page, one["asks"])
        if not set(found) & set(one["pages"]):
            lost.append(f"{one['asks']}\n    found {', '.join(found)}\n    wanted {', '.join(one['pages'])}")
    share = 1 - len(lost) / len(QUESTIONS)
    print(f"\n{share:.0%} of {len(QUESTIONS)} questions find their page. Not found:")
    print("\n".join(lost))
    assert share >= WANTED, "\n".join(lost)


def test_a_word_or_two_find_their_page(visit: Callable[..., Visit]) -> None:
    """What is typed with one thumb; and each form of a word finds the others."""
    here = searching(visit())
    lost = {}
    for one in WORDS:
        found = first_three(here.page, one["asks"])
        if not set(found) & set(one["pages"]):
            lost[one["asks"]] = found
    assert lost == {}


def test_the_index_is_read_once_someone_searches(visit: Callable[..., Visit]) -> None:
    here = visit()
    here.goes("cure/run-a-bake/", wait_until="networkidle")
    read = [url for url in here.requests if url.endswith("search_index.json")]
    assert read == []
    here.page.keyboard.press("/")
    here.page.locator(".md-search__input").fill("oven")
    expect(here.page.locator(".md-search-result__link").first).to_be_visible()
    assert sum(url.endswith("search_index.json") for url in here.requests) == 1


def test_an_address_with_a_question_searches_at_once(visit: Callable[..., Visit]) -> None:
    here = visit()
    here.goes("?q=oven")
    expect(here.page.locator(".md-search-result__link").first).to_be_visible()


def test_where_storage_is_blocked_the_search_works(visit: Callable[..., Visit]) -> None:
    here = visit()
    here.context.add_init_script(
        "Object.defineProperty(window, 'localStorage', { get() { throw new DOMException('no', 'SecurityError'); } });"
    )
    searching(here, "cure/run-a-bake/", "respirator")
    assert here.errors == []
