"""Links that nobody made in good faith: nothing of them runs, the page stays whole, and it answers afterwards."""

from __future__ import annotations

import base64
import zlib
from collections.abc import Callable
from urllib.parse import quote

import pytest
from playwright.sync_api import expect

from tests.browser.conftest import Visit

MARKUP = quote("<img src=x onerror='window.__ran=1'><script>window.__ran=1</script>")
UNTOUCHED = (
    "window.__ran === undefined && ({}).polluted === undefined && Object.keys(Object.prototype).length === 0"
)


def packed(text: bytes) -> str:
    made = zlib.compressobj(9, zlib.DEFLATED, -15)
    return base64.urlsafe_b64encode(made.compress(text) + made.flush()).decode().rstrip("=")


@pytest.mark.parametrize(
    "query",
    [
        f"film={MARKUP}&finish={MARKUP}&{MARKUP}=1",
        "__proto__=polluted&__proto__[polluted]=1&constructor.prototype.polluted=1&film=3",
        "film=" + "9" * 50_000,
        "&".join(f"name{place}=1" for place in range(3_000)),
        "&".join("film=1" for _ in range(3_000)),
        "v=-1&v=1e99&v=NaN&film-unit=parsec&film=%00%ff%C0%80",
    ],
    ids=lambda query: query[:24],
)
def test_a_hostile_link_to_a_calculator(visit: Callable[..., Visit], query: str) -> None:
    at = visit(bypass_csp=False)
    at.goes(f"spray/powder-needed/?{query}")
    powder = at.calculator("powder-needed")
    expect(powder.outcome).not_to_have_attribute("data-state", "starting", timeout=40_000)
    assert at.page.evaluate(UNTOUCHED)
    assert at.page.locator("calc-form img, calc-form script").count() == 0
    powder.act("reset")
    powder.put("film", "3")
    powder.reaches("live")
    assert at.errors == []
    assert at.leaving() == []


MARKED = packed(
    b'[1,"<img src=x onerror=window.__ran=1>","",[["a","part-size",1,{"__proto__":"x"},[]]],{"__proto__":"x"},[]]'
)


@pytest.mark.parametrize(
    "fragment",
    [
        packed(b"\x00" * 100_000_000),
        packed(b"[" * 3_000_000),
        MARKED,
        "%00" * 5_000,
        "A" * 1_000_000,
    ],
    ids=["zeros", "nested", "markup", "signs", "long"],
)
def test_a_hostile_link_to_a_job(visit: Callable[..., Visit], fragment: str) -> None:
    at = visit(bypass_csp=False)
    at.goes(f"job/job-sheet/#job={fragment}")
    sheet = at.page.locator("job-sheet")
    if fragment == MARKED:
        expect(sheet).to_contain_text("<img src=x", timeout=20_000)
    else:
        expect(sheet.locator("[data-status]")).to_contain_text("cannot be read", timeout=20_000)
    assert at.page.evaluate(UNTOUCHED)
    assert at.page.locator("job-sheet img, job-sheet script").count() == 0
    assert at.errors == []
    assert at.leaving() == []
