"""What a page asks for: few files, all there, and each asked for at once and not when another has come."""

from __future__ import annotations

import posixpath
import re
from pathlib import Path

import pytest

from tests.site.conftest import ROOT, SITE, Built

IMPORT = re.compile(r"""(?:^|[;}\s])(?:import|export)[^'"();]*?["'](\.{1,2}/[^"']+)["']""")
SCRIPTS = sorted(
    path for path in (SITE / "assets").rglob("*.mjs") if not {"engine", "vendor"} & set(path.parts)
) or [Path("none")]


def imports(script: Path) -> list[Path]:
    return [(script.parent / name).resolve() for name in IMPORT.findall(script.read_text("utf-8"))]


def test_the_pattern_finds_imports() -> None:
    text = 'import{a as b}from"./one.mjs";import "./two.mjs";\nexport { c } from "../three.mjs";import("./not.mjs")'
    assert IMPORT.findall(text) == ["./one.mjs", "./two.mjs", "../three.mjs"]


@pytest.mark.parametrize("script", SCRIPTS, ids=lambda path: path.name)
def test_what_a_script_imports_is_there(script: Path) -> None:
    assert [path for path in imports(script) if not path.is_file()] == []


@pytest.mark.parametrize(
    "name", ["search/asked-words.mjs", "offline/keep.mjs", "calculator/engine.worker.mjs"]
)
def test_what_every_page_or_a_worker_runs_is_one_file(name: str) -> None:
    assert imports(SITE / "assets" / name) == []


def test_a_page_with_a_form_asks_at_once_for_all_that_the_form_imports(page: Built) -> None:
    needed = [SITE / "assets/calculator/calculator-form.mjs"] if "<calc-form" in page.text else []
    for script in needed:
        needed += [one for one in imports(script) if one not in needed]
    folder = posixpath.dirname(page.path)
    asked = [
        (SITE / posixpath.normpath(posixpath.join(folder, attributes["href"])))
        for tag, attributes, _ in page.tags
        if tag == "link" and attributes.get("rel") == "modulepreload"
    ]
    assert sorted(asked) == sorted(needed)
    # six at a time is what a browser asks an older host for
    assert len(asked) <= 6


def test_one_style_sheet_for_all_pages(page: Built) -> None:
    sheets = [
        attributes["href"]
        for tag, attributes, _ in page.tags
        if tag == "link" and attributes.get("rel") == "stylesheet"
    ]
    assert sheets[0].endswith("assets/style.css")
    # a page that is a tool of its own brings its own sheet
    assert len(sheets) <= 2


def test_our_styles_stand_after_the_themes_so_that_they_win() -> None:
    style = (SITE / "assets" / "style.css").read_text("utf-8")
    places = [style.find(words) for words in (".md-header{", ".print-foot{", ".calc-plate{")]
    assert -1 not in places and places == sorted(places)
    for sheet in ("site.css", "calculator/calculator.css"):
        text = re.sub(r"/\*.*?\*/", "", (ROOT / "docs/assets" / sheet).read_text("utf-8"), flags=re.DOTALL)
        names = set(re.findall(r"\.([a-z][a-z-]+)", text))
        assert [name for name in names if f".{name}" not in style] == []


def test_rules_of_the_theme_that_no_page_needs_are_left_out() -> None:
    style = (SITE / "assets" / "style.css").read_text("utf-8")
    assert ".tabbed-labels" not in style and "[data-md-color-switching]" not in style
    assert style.count("{") == style.count("}")


def test_no_page_has_the_content_tabs_whose_rules_are_left_out(page: Built) -> None:
    assert "tabbed-" not in page.text
