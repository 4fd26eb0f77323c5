"""Each sheet for the wall fits on one page of either paper, and begins a page of its own."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from tests.browser.conftest import Visit

# Paper less the margins of site.css (14 mm at three sides, 16 mm below), in CSS pixels of 1/96 in.
PAPERS = {
    "letter": ((215.9 - 28) / 25.4 * 96, (279.4 - 30) / 25.4 * 96),
    "a4": ((210 - 28) / 25.4 * 96, (297 - 30) / 25.4 * 96),
}


@pytest.mark.property
@pytest.mark.parametrize("paper", PAPERS)
def test_a_sheet_is_one_page(visit: Callable[..., Visit], paper: str) -> None:
    width, height = PAPERS[paper]
    seen = visit()
    seen.page.set_viewport_size({"width": int(width), "height": int(height)})
    seen.page.emulate_media(media="print")
    seen.goes("safety/wall-sheets/")
    sheets = seen.page.eval_on_selector_all(
        ".wall-sheet",
        "all => all.map(one => [one.querySelector('h2').textContent, one.offsetHeight, getComputedStyle(one).breakBefore])",
    )
    assert len(sheets) == 6
    for place, tall, begins in sheets:
        assert tall <= height, f"{place} is {tall} px on {paper}, which has {height:.0f}"
        assert begins == "page"
