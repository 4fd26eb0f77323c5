"""The memory image, made where tables of functions come out one way, starts in browsers where they come out another."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from tests.browser.conftest import Visit
from tests.browser.serving import Trouble

MODE = "performance.getEntriesByName('calc:engine-ready')[0].detail.mode"
# By this the runtime knows a telephone on which it leaves out the function that counts arguments.
PHONE = "Mozilla/5.0 (iPhone; CPU iPhone OS 18_0 like Mac OS X) AppleWebKit/605.1.15 Version/18.0 Mobile Safari/604.1"
# As WebKit does: what a module put into a table itself comes out of it with another identity than among the exports.
OTHER_IDENTITY = """{
  const { get, set } = WebAssembly.Table.prototype;
  const placed = new WeakMap(), twins = new WeakMap();
  const placesIn = (table) => placed.get(table) ?? placed.set(table, new Set()).get(table);
  WebAssembly.Table.prototype.set = function (place, one) { placesIn(this).add(place); return set.call(this, place, one); };
  WebAssembly.Table.prototype.get = function (place) {
    const one = get.call(this, place);
    if (!one || placesIn(this).has(place)) return one;
    if (!twins.has(one)) twins.set(one, (...words) => one(...words));
    return twins.get(one);
  };
}
"""


def answers_from_the_image(at: Visit) -> dict[str, str]:
    at.goes("cure/cure-plan/?oven=425+F&v=1")
    plan = at.calculator("cure-plan")
    plan.reaches("live")
    assert at.page.evaluate(MODE) == "image", at.warnings
    return plan.answers()


@pytest.fixture
def usual(visit: Callable[..., Visit]) -> dict[str, str]:
    at = visit()
    answers = answers_from_the_image(at)
    assert not any(path.endswith("functions.json") for path in at.served.asked)
    return answers


def test_a_telephone_without_the_function_that_counts(
    visit: Callable[..., Visit], usual: dict[str, str]
) -> None:
    at = visit(user_agent=PHONE)
    at.served.troubles["engine.worker.mjs"] = Trouble(
        before=f"if (navigator.userAgent !== '{PHONE}') throw new Error('not the telephone');\n"
    )
    assert answers_from_the_image(at) == usual


def test_a_browser_whose_functions_have_two_identities(
    visit: Callable[..., Visit], usual: dict[str, str]
) -> None:
    at = visit()
    at.served.troubles["engine.worker.mjs"] = Trouble(before=OTHER_IDENTITY)
    assert answers_from_the_image(at) == usual
    assert any(path.endswith("functions.json") for path in at.served.asked)
