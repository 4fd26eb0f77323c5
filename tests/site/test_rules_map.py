"""The map of rules: every law and standard that a page names is on it, with the standing of its source."""

from __future__ import annotations

import re
import sys
from html import unescape
from pathlib import Path

import pytest

from calculators.kit.sources import all_sources
from calculators.tables import table

ROOT = Path(__file__).resolve().parents[2]
sys.path.append(str(ROOT / "scripts"))

from rules_map import CITED, DOCS, GROUPS, rules_by_place_html, rules_map_html  # noqa: E402
from site_pages import SEEN  # noqa: E402

ROWS = {
    key: (unescape(rule), unescape(covers), pages, standing)
    for key, rule, covers, pages, standing in re.findall(
        r'<tr><th scope="row"><a href="~/reference/sources/#source-([\w-]+)">(.*?)</a></th>'
        r"<td[^>]*>(.*?)</td><td[^>]*>(.*?)</td><td[^>]*>(.*?)</td></tr>",
        rules_map_html(),
    )
}


@pytest.mark.property
def test_every_law_and_standard_that_a_guide_cites_is_there_and_says_which_guides() -> None:
    for path in DOCS.glob("*/*.md"):
        if path.parent.name == "reference":
            continue
        for words in CITED.findall(path.read_text("utf-8")):
            for key in words.split():
                one = all_sources().get(key)
                if one and one.kind in ("law", "standard"):
                    address = path.relative_to(DOCS).with_suffix("").as_posix()
                    assert f'href="~/{address}/"' in ROWS[key][2], (key, address)


@pytest.mark.property
@pytest.mark.parametrize("key", ROWS)
def test_a_row_claims_no_more_than_its_source(key: str) -> None:
    assert ROWS[key][3] == SEEN[all_sources()[key].seen]


@pytest.mark.property
def test_every_group_has_rules_and_each_law_is_under_law() -> None:
    groups = dict(re.findall(r"<h3>(.*?)</h3>(.*?)(?=<h3>|\Z)", rules_map_html(), re.S))
    assert list(groups) == [name for name, _ in GROUPS]
    first = re.findall(r'<th scope="row"><a[^>]*>(.*?)</a>', groups["At work, US law"])
    assert "29 CFR 1910.134" in first
    assert all(name.startswith(("29 CFR", "OSHA")) for name in first)


@pytest.mark.property
def test_every_rule_of_the_shop_is_there() -> None:
    html = unescape(rules_by_place_html())
    for rule in table("safety_rules").values():
        assert rule["name"] in html
    assert html.count("no rule known to us") == sum(
        not rule["law"] for rule in table("safety_rules").values()
    )
