"""Calculator pages: three files each, the built-in answer, the sources, and what the search can find."""

from __future__ import annotations

import json
import re
from html import escape, unescape

import pytest

from calculators import run, slugs
from calculators.kit import find
from calculators.kit.sources import source
from tests.site.conftest import ROOT, SITE, Built, built

SLUGS = slugs()


def page_of(slug: str) -> Built:
    return built(f"{find.stage(slug)}/{slug}/index.html")


def words_of(html: str) -> str:
    return " ".join(unescape(re.sub(r"<[^>]*>", "", html)).split())


@pytest.mark.parametrize("slug", SLUGS)
def test_a_calculator_has_its_three_files(slug: str) -> None:
    stem, stage = slug.replace("-", "_"), find.stage(slug)
    for path in (
        f"calculators/{stage}/{stem}.py",
        f"docs/{stage}/{slug}.md",
        f"tests/{stage}/test_{stem}.py",
    ):
        assert (ROOT / path).is_file(), f"{path} is missing"


@pytest.mark.parametrize("slug", SLUGS)
def test_its_form_comes_first_on_its_page_and_holds_the_answer(slug: str) -> None:
    page = page_of(slug)
    forms = [attributes for tag, attributes, _ in page.tags if tag == "calc-form"]
    assert forms[0]["slug"] == slug
    assert forms[0]["data-base"] == "../../"
    shown = dict(re.findall(r'data-answer="([^"]+)"[^>]*>(.*?)</(?:span|strong)>', page.text))
    main = find.load(slug).main.key
    assert words_of(shown[main]) == run(slug, {}).answers[main].text
    assert "assets/calculator/calculator-form.mjs" in page.text


@pytest.mark.parametrize("slug", SLUGS)
def test_the_engine_that_it_names_is_there(slug: str) -> None:
    form = next(attributes for tag, attributes, _ in page_of(slug).tags if tag == "calc-form")
    folder = form["data-engine"].removeprefix("../../")
    assert (SITE / folder / "manifest.json").is_file(), "built without the engine: run scripts/build.py"


@pytest.mark.parametrize("slug", SLUGS)
def test_its_sources_and_limits_are_on_its_page(slug: str) -> None:
    text = words_of(page_of(slug).text)
    for key in find.load(slug).sources:
        assert source(key).title in text
        assert source(key).standing in text
    for sentence in find.load(slug).limits:
        assert " ".join(sentence.split()) in text


@pytest.mark.parametrize("slug", SLUGS)
def test_a_table_stands_in_where_the_engine_cannot_start(slug: str) -> None:
    vary = find.load(slug).vary
    if vary is None:
        assert f'id="{slug}-vary"' not in page_of(slug).text
        return
    table = re.search(rf'<table id="{slug}-vary".*?</table>', page_of(slug).text, re.DOTALL)
    assert table
    for text in vary.texts:
        for key in vary.answers:
            assert escape(run(slug, {vary.key: text}).answers[key].text) in table[0]


def test_pages_without_a_form_load_no_script_of_it() -> None:
    assert "calculator-form.mjs" not in built("reference/sources/index.html").text


def test_the_first_page_asks_every_question_and_tells_the_true_number() -> None:
    home = built("index.html").text
    for slug in SLUGS:
        assert escape(find.load(slug).question) in home
    told = re.search(r"for 12 min:\s*<strong>(.*?)</strong>", home)
    assert told
    outcome = run(
        "cure-plan",
        {
            "metal": "cast-iron", "thickness": "5/8 in", "oven": "400 F", "airflow": "fan",
            "schedule-temperature": "375 F", "schedule-time": "20 min",
            "second-temperature": "400 F", "second-time": "12 min",
        },
    )  # fmt: skip
    assert told[1] == outcome.answers["safe-pull"].text


def test_the_search_finds_questions_and_not_the_numbers_of_examples() -> None:
    documents = json.loads((SITE / "search" / "search_index.json").read_text("utf-8"))["docs"]
    everything = " ".join(words_of(one["text"]) for one in documents)
    for slug in SLUGS:
        assert find.load(slug).question in everything
        address = f"{find.stage(slug)}/{slug}/"
        own = " ".join(words_of(one["text"]) for one in documents if one["location"].startswith(address))
        assert own
        assert "Back to the example" not in own
        # sentences of the outcome stand nowhere but inside the element
        for out in find.load(slug).answers:
            assert out.meaning not in own


@pytest.mark.parametrize("slug", slugs())
def test_the_search_finds_a_calculator_by_the_trades_words(slug: str) -> None:
    documents = json.loads((SITE / "search" / "search_index.json").read_text("utf-8"))["docs"]
    own = " ".join(
        one["text"] for one in documents if one["location"].startswith(f"{find.stage(slug)}/{slug}/")
    )
    for words in find.load(slug).keywords:
        assert words in own
