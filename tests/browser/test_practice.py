"""The engine's code is made fast for later visits: once for each version of the browser, in nobody's way."""

from __future__ import annotations

from collections.abc import Callable

from tests.browser.conftest import Visit
from tests.browser.keeping import kept_file, until, wait_until_image_is_kept
from tests.browser.serving import Served, Trouble

VERSION = """navigator.userAgentData.getHighEntropyValues(["fullVersionList"]).then(({ fullVersionList }) =>
  fullVersionList.find(({ brand }) => brand === "Chromium").version)"""
PRACTISED = kept_file("practised")
MARK = f"""async () => {{
  const url = await ({PRACTISED})();
  return url ? (await caches.match(url)).text() : "";
}}"""
IS_MARKED = f"async (text) => (await ({MARK})()) === text"
SET_MARK = f"""async (text) => {{
  const url = await ({PRACTISED})();
  const name = (await caches.keys()).find((one) => one.startsWith(`engine-${{url.split("/").at(-2)}} `));
  await (await caches.open(name)).put(url, new Response(text));
}}"""
QUIET_AND_MORE_ms = 4000


def test_a_later_visit_practises_once_for_each_version_of_the_browser(visit: Callable[..., Visit]) -> None:
    at = visit()
    at.goes("cure/cure-plan/?thickness=1+in&v=1")
    calculator = at.calculator("cure-plan")
    calculator.reaches("live")
    first = calculator.answers()
    wait_until_image_is_kept(at.page)
    assert at.page.evaluate(MARK) == "", "code that came over the network is of no use later"
    version = at.page.evaluate(VERSION)

    at.page.reload()
    until(at.page, IS_MARKED, version)
    assert calculator.answers() == first
    calculator.put("thickness", "2 in")
    calculator.reaches("live")
    assert calculator.answers() != first
    calculator.put("thickness", "1 in")
    calculator.reaches("live")
    assert calculator.answers() == first

    at.page.evaluate(SET_MARK, "1.2.3.4")
    at.page.reload()
    until(at.page, IS_MARKED, version)
    assert at.errors == []


def test_a_browser_of_another_kind_does_not_practise(visit: Callable[..., Visit], served: Served) -> None:
    served.troubles["engine.worker.mjs"] = Trouble(before="delete WorkerNavigator.prototype.userAgentData;")
    at = visit()
    at.goes("cure/cure-plan/?thickness=1+in&v=1")
    at.calculator("cure-plan").reaches("live")
    wait_until_image_is_kept(at.page)
    at.page.reload()
    at.calculator("cure-plan").reaches("live")
    at.page.wait_for_timeout(QUIET_AND_MORE_ms)
    assert at.page.evaluate(MARK) == ""
    assert at.errors == []
