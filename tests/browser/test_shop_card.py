"""The shop card: one screen at a desk, no wider than a phone, one sheet or half of one on paper, all without scripts."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from tests.browser.conftest import Visit
from tests.browser.test_wall_sheets import PAPERS

PAGE = "start/shop-card/"


@pytest.mark.property
def test_all_cards_are_on_one_screen_at_a_desk(visit: Callable[..., Visit]) -> None:
    here = visit(width=1280, height=900, java_script_enabled=False)
    here.goes(PAGE)
    boxes = [one.bounding_box() for one in here.page.locator(".shop-card section").all()]
    assert len(boxes) == 9
    assert max(box["y"] + box["height"] for box in boxes if box) <= 900


@pytest.mark.property
def test_nothing_is_wider_than_a_phone(visit: Callable[..., Visit]) -> None:
    here = visit(width=360, height=740)
    here.goes(PAGE)
    assert here.page.evaluate("document.documentElement.scrollWidth") <= 360
    wide = here.page.eval_on_selector_all(
        ".shop-card section", "all => all.filter(one => one.scrollWidth > one.clientWidth).map(one => one.id)"
    )
    assert wide == []


@pytest.mark.property
@pytest.mark.parametrize("paper", PAPERS)
@pytest.mark.parametrize(("size", "share"), [("wall", 1.0), ("half", 0.5)])
def test_it_fits_its_paper(visit: Callable[..., Visit], paper: str, size: str, share: float) -> None:
    width, height = PAPERS[paper]
    here = visit(width=int(width), height=int(height))
    here.goes(PAGE)
    here.page.locator(f'[name="card-paper"][value="{size}"]').check()
    here.page.emulate_media(media="print")
    assert here.page.evaluate("document.querySelector('.md-content').offsetHeight") <= share * height
