"""The glossary and the meanings that open in guides: one meaning a word, no page changed but for the marks, no dead way."""

from __future__ import annotations

import re
import sys
from pathlib import Path

import pytest
from markdown import markdown

from calculators.tables import table

ROOT = Path(__file__).resolve().parents[2]
sys.path.append(str(ROOT / "scripts"))

from glossary import glossary_html, marked  # noqa: E402
from shortcodes import Page, put_in  # noqa: E402

DOCS = ROOT / "docs"
WORDS = table("glossary")
GUIDES = [
    pytest.param(path, id=path.stem)
    for path in sorted(DOCS.glob("*/*.md"))
    if "\nkind: guide\n" in path.read_text("utf-8") and "<!-- faults" not in path.read_text("utf-8")
]
BUTTON = re.compile(r'<button type="button" class="term" popovertarget="term-([\w-]+)">(.*?)</button>')
MEANINGS = re.compile(
    r'(?:<div id="term-[\w-]+" class="term-meaning" popover data-search-exclude>.*?</div>)*\Z'
)


def html_of(path: Path) -> str:
    body = path.read_text("utf-8").split("---\n", 2)[2]
    made = markdown(body, extensions=["admonition", "attr_list", "md_in_html", "tables"])
    return put_in(made, Page("../../", path.stem, "none"))


@pytest.mark.property
@pytest.mark.parametrize("path", GUIDES)
def test_a_guide_is_the_same_but_for_the_marks(path: Path) -> None:
    before = html_of(path)
    after = marked(before, path.relative_to(DOCS).with_suffix("").as_posix())
    assert BUTTON.sub(lambda found: found[2], MEANINGS.sub("", after)) == before
    used = [key for key, _ in BUTTON.findall(after)]
    assert len(used) == len(set(used)), "a word is marked where it first stands, and nowhere else"
    assert sorted(used) == sorted(re.findall(r'<div id="term-([\w-]+)"', after))


@pytest.mark.property
@pytest.mark.parametrize(
    ("html", "times"),
    [
        ("<p>Above the dew point, and the dew point again.</p>", 1),
        ("<p>Above the <strong>dew point</strong> of this air.</p>", 1),
        ('<p><a href="x">dew point</a> and <code>dew point</code></p>', 0),
        ("<h2>Dew point</h2><table><tr><td>dew point</td></tr></table>", 0),
        ('<div class="admonition danger"><p>dew point</p></div><p>x</p>', 0),
        ('<form><p>dew point</p></form><ul class="safety-rules"><li>dew point</li></ul>', 0),
        ("<p>dew pointing, sub-dew point-ish</p>", 0),
        ("<p>5 &lt; 7 &amp; &#176; dew point<br><img src='a'></p>", 1),
    ],
)
def test_where_a_word_is_marked(html: str, times: int) -> None:
    made = marked(html, "somewhere/else")
    assert len(BUTTON.findall(made)) == times
    assert BUTTON.sub(lambda found: found[2], MEANINGS.sub("", made)) == html


@pytest.mark.property
def test_a_page_does_not_explain_its_own_word() -> None:
    assert marked("<p>the dew point</p>", WORDS["condensation"]["page"]) == "<p>the dew point</p>"


@pytest.mark.property
@pytest.mark.parametrize("key", WORDS)
def test_a_word_is_whole(key: str) -> None:
    row = WORDS[key]
    assert row["meaning"].endswith(".")
    assert len(row["meaning"]) < 200, "a meaning is read at one glance"
    assert row["trade"]
    assert (DOCS / f"{row['page']}.md").is_file(), row["page"]
    assert f'id="word-{key}"' in glossary_html()


@pytest.mark.property
def test_each_name_and_each_mark_means_one_thing() -> None:
    names = [row["name"].lower() for row in WORDS.values()]
    marks = [mark.lower() for row in WORDS.values() for mark in row.get("mark", ())]
    assert len(names) == len(set(names))
    assert len(marks) == len(set(marks))


@pytest.mark.property
def test_figures_in_meanings_agree_with_the_tables() -> None:
    assert f"{table('electrostatics')['hook']['ground_Mohm']} megohm or less" in WORDS["ground"]["meaning"]
    assert f"at most {table('surface_grades')['sp10']['remains_percent']} %" in WORDS["near-white"]["meaning"]
    assert f"{table('surface_grades')['sp6']['unit_area_in2']} square inches" in WORDS["unit-area"]["meaning"]
