"""When the engine is late, damaged or blocked: the page says so and keeps its answer and what was typed."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from playwright.sync_api import expect

from tests.browser.conftest import Visit
from tests.browser.serving import Served, Trouble

MODE = "performance.getEntriesByName('calc:engine-ready')[0].detail.mode"


@pytest.mark.parametrize("blocked", ["pyodide.asm.wasm", "pyodide.mjs", "engine.worker.mjs"])
def test_an_engine_that_cannot_start(visit: Callable[..., Visit], blocked: str) -> None:
    at = visit()
    at.served.troubles[blocked] = Trouble(missing=True)
    at.goes("cure/cure-plan/")
    calculator = at.calculator("cure-plan")
    built_in = calculator.answers()
    calculator.put("oven", "425")
    calculator.reaches("unavailable")
    assert at.page.evaluate("document.documentElement.dataset.engine") == "failed"
    expect(calculator.status).to_contain_text("The live calculator did not start.")
    expect(calculator.status).to_be_visible()
    assert calculator.answers() == built_in
    assert "not yours" in calculator.plate.inner_text()
    assert calculator.holds()["oven"] == "425"


def test_a_damaged_memory_image_means_a_slower_start(visit: Callable[..., Visit]) -> None:
    at = visit()
    (image,) = (at.served.root / "assets/engine").glob("*/image.bin.gz")
    at.served.troubles["image.bin.gz"] = Trouble(cut_to_bytes=image.stat().st_size // 2)
    at.goes("cure/cure-plan/")
    calculator = at.calculator("cure-plan")
    calculator.put("oven", "425")
    calculator.reaches("live")
    assert at.page.evaluate(MODE) == "ordinary"
    assert any("memory image" in warning for warning in at.warnings)

    sound = visit()
    sound.served.troubles.clear()
    sound.goes("cure/cure-plan/")
    other = sound.calculator("cure-plan")
    other.put("oven", "425")
    other.reaches("live")
    assert sound.page.evaluate(MODE) == "image"
    assert not sound.warnings
    assert other.answers() == calculator.answers()


def test_text_typed_before_the_engine_came_is_kept_and_answered(visit: Callable[..., Visit]) -> None:
    at = visit()
    at.served.troubles["pyodide.asm.wasm"] = Trouble(delay_s=2.0)
    at.goes("cure/cure-plan/")
    calculator = at.calculator("cure-plan")
    built_in = calculator.answers()
    calculator.put("oven", "425")
    calculator.reaches("starting", 1500)
    assert calculator.answers() == built_in
    calculator.put("thickness", "1")
    calculator.reaches("live")
    assert calculator.holds()["oven"] == "425"
    assert calculator.holds()["thickness"] == "1"
    assert "oven=425+F" in at.page.url
    assert calculator.answers() != built_in


def test_text_typed_before_the_script_came_is_kept_and_answered(visit: Callable[..., Visit]) -> None:
    at = visit()
    at.served.troubles["calculator-form.mjs"] = Trouble(delay_s=1.5)
    at.goes("cure/cure-plan/", wait_until="commit")
    calculator = at.calculator("cure-plan")
    calculator.put("oven", "425")
    assert at.page.evaluate("customElements.get('calc-form') === undefined")
    calculator.reaches("live")
    assert calculator.holds()["oven"] == "425"
    assert "oven=425+F" in at.page.url


def test_the_engine_comes_by_itself_on_a_calculators_page_and_only_when_used_on_a_guide(
    visit: Callable[..., Visit],
) -> None:
    at = visit()
    at.goes("spray/lay-the-right-film/")
    engine = "document.documentElement.dataset.engine"
    at.page.wait_for_timeout(1500)
    assert at.page.evaluate(engine) == "off"
    at.goes("cure/cure-plan/")
    at.page.wait_for_function(f"{engine} === 'ready'", timeout=40_000)
    # Ready, and nobody asked: the example stands.
    assert at.calculator("cure-plan").state == "example"


def test_a_link_with_values_starts_the_engine_before_the_pages_own_modules(
    visit: Callable[..., Visit], served: Served
) -> None:
    served.troubles["calculator-form.mjs"] = Trouble(delay_s=12)
    at = visit()
    at.goes("cure/cure-plan/?oven=390+F", wait_until="commit")
    for _ in range(110):
        if any(path.endswith("pyodide.asm.wasm") for path in served.asked):
            break
        at.page.wait_for_timeout(100)
    assert at.page.evaluate("customElements.get('calc-form') === undefined")
    assert sum(path.endswith("pyodide.asm.wasm") for path in served.asked) == 1
    at.calculator("cure-plan").reaches("live")
    # the form took that engine over, and started no other
    assert sum(path.endswith("pyodide.asm.wasm") for path in served.asked) == 1
