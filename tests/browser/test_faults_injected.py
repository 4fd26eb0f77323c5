"""Faults put into the engine on purpose: the page says what happened, keeps its answer, and loses nothing typed."""

from __future__ import annotations

import gzip
import re
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager

import pytest
from playwright.sync_api import Browser, expect

from calculators import run
from tests.browser.calculator_page import CalculatorOnPage, START_ms
from tests.browser.conftest import Visit
from tests.browser.serving import Server, Trouble

MODE = "performance.getEntriesByName('calc:engine-ready').at(-1).detail.mode"
NO_MEMORY = "WebAssembly.Memory = function () { throw new RangeError('could not allocate memory'); };\n"
NO_INSTANCE = "WebAssembly.instantiate = () => Promise.reject(new RangeError('Out of memory'));\n"
NO_GROWTH = "WebAssembly.Memory.prototype.grow = () => { throw new RangeError('failed to grow memory'); };\n"
READY = "const { run_json, parts_json } ="
# In the worker: cure-plan works as ever, save with an oven at 425.
SPOILT = """
python.runPython(`
from calculators.kit import find
from calculators.cure import cure_plan
plan = find.load("cure-plan")
sound = plan.solve
def spoil():
    %s
def solve(inputs):
    if abs(inputs.oven_degC - 218.33) < 0.1:
        spoil()
    return sound(inputs)
object.__setattr__(plan, "solve", solve)
`);
"""
WORKERS = """
  window.__workers = [];
  window.Worker = class extends Worker {
    constructor(...words) { super(...words); window.__workers.push(this); }
  };
"""


@pytest.fixture(scope="module")
def built_in(chromium: Browser, server: Server) -> dict[str, str]:
    """The answers that the page was made with, from a browser that starts nothing."""
    page = chromium.new_page(java_script_enabled=False)
    page.goto(f"{server.served.address}/cure/cure-plan/")
    answers = CalculatorOnPage(page, "cure-plan").answers()
    page.close()
    return answers


def typed(at: Visit, oven: str = "425") -> CalculatorOnPage:
    """The calculator's page with something typed that asks for the engine."""
    at.goes("cure/cure-plan/")
    calculator = at.calculator("cure-plan")
    calculator.put("oven", oven)
    return calculator


def stands(calculator: CalculatorOnPage, built_in: dict[str, str], *words: str) -> None:
    """No live answer: the example stays, is called the example's, and what was typed is there, after a reload too."""
    calculator.reaches("unavailable")
    expect(calculator.status).to_be_visible()
    for word in ("The live calculator did not start.", "for the example values", *words):
        expect(calculator.status).to_contain_text(word)
    assert calculator.answers() == built_in
    assert "not yours" in calculator.plate.inner_text()
    assert calculator.holds()["oven"] == "425"
    calculator.page.reload()
    assert calculator.holds()["oven"] == "425"


@pytest.mark.parametrize("file", ["pyodide.asm.js", "pyodide.asm.wasm"])
@pytest.mark.parametrize(
    "trouble",
    [
        Trouble(missing=True),
        Trouble(cut_to_bytes=300_000),
        Trouble(wrong_from_byte=200_000),
        Trouble(as_type="text/html"),
    ],
    ids=["missing", "truncated", "other bytes", "another type"],
)
def test_an_interpreter_file_that_is_not_right(
    visit: Callable[..., Visit], built_in: dict[str, str], file: str, trouble: Trouble
) -> None:
    at = visit()
    at.served.troubles[file] = trouble
    calculator = typed(at)
    if file.endswith(".wasm") and trouble.as_type:
        calculator.reaches("live")  # slower to compile, and all there
    else:
        stands(calculator, built_in, "Reload")


def other_image(image: bytes) -> bytes:
    """An image of the right length, soundly packed, that is not the one of this build."""
    data = bytearray(gzip.decompress(image))
    data[20_000_000:20_001_000] = bytes(byte ^ 0x55 for byte in data[20_000_000:20_001_000])
    return gzip.compress(bytes(data), 1)


# A manifest that is refused is as good as none, so from there the slower way is followed to its end only once.
@pytest.mark.parametrize(
    ("file", "trouble", "to_the_end"),
    [
        ("manifest.json", Trouble(missing=True), True),
        ("manifest.json", Trouble(cut_to_bytes=700), False),
        ("manifest.json", Trouble(instead=('"image_bytes": ', '"image_bytes": 1')), True),
        ("manifest.json", Trouble(instead=('sha256": "', 'sha256": "0')), False),
        ("manifest.json", Trouble(instead=('"parts_sha256": "', '"parts_sha256": "0')), False),
        ("image.bin.gz", Trouble(missing=True), True),
        ("image.bin.gz", Trouble(wrong_from_byte=400), True),
        ("image.bin.gz", Trouble(breaks_after_bytes=1_000_000), True),
        ("image.bin.gz", Trouble(body=b"another"), True),
    ],
    ids=str,
)
def test_without_its_image_it_starts_the_slower_way(
    visit: Callable[..., Visit], file: str, trouble: Trouble, to_the_end: bool
) -> None:
    at = visit()
    if trouble.body is not None:
        (image,) = (at.served.root / "assets/engine").glob("*/image.bin.gz")
        trouble = Trouble(body=other_image(image.read_bytes()))
    at.served.troubles[file] = trouble
    calculator = typed(at)
    if to_the_end:
        calculator.reaches("live")
        assert at.page.evaluate(MODE) == "ordinary"
        expected = run("cure-plan", {"oven": "425"}).answers
        assert calculator.answers()["safe-pull"] == expected["safe-pull"].text
    deadline = time.monotonic() + START_ms / 1000
    while not any("memory image cannot be used" in warning for warning in at.warnings):
        assert time.monotonic() < deadline, at.warnings
        at.page.wait_for_timeout(100)
    assert calculator.state in ("starting", "live")


@pytest.mark.parametrize("refusal", [NO_MEMORY, NO_INSTANCE], ids=["memory", "instance"])
def test_no_memory_to_start_with(visit: Callable[..., Visit], built_in: dict[str, str], refusal: str) -> None:
    at = visit()
    at.served.troubles["engine.worker.mjs"] = Trouble(before=refusal)
    stands(typed(at), built_in, "no memory free", "Close other tabs")


@pytest.mark.parametrize("file", ["pyodide.asm.wasm", "pyodide.asm.js"])
@pytest.mark.parametrize("cut", [None, 300_000])
def test_a_damaged_copy_on_the_device_is_fetched_again(
    visit: Callable[..., Visit], file: str, cut: int | None
) -> None:
    """A copy that the browser keeps for a year would stop every visit; a reload does not ask for it anew."""
    at = visit()
    bad = Trouble(cut_to_bytes=cut, wrong_from_byte=None if cut else 200_000, kept=True, times=1)
    at.served.troubles[file] = bad
    calculator = typed(at)
    calculator.reaches("live")
    assert bad.times == 0
    assert calculator.holds()["oven"] == "425"


def test_a_script_that_came_as_another_type_is_fetched_again(visit: Callable[..., Visit]) -> None:
    at = visit()
    bad = Trouble(as_type="text/plain", kept=True, times=1)
    at.served.troubles["pyodide.mjs"] = bad
    typed(at).reaches("live")
    assert bad.times == 0


@pytest.mark.parametrize("file", ["python_stdlib.zip", "pyodide-lock.json"])
def test_the_slower_way_runs_nothing_else_either(
    visit: Callable[..., Visit], built_in: dict[str, str], file: str
) -> None:
    at = visit()
    at.served.troubles["image.bin.gz"] = Trouble(missing=True)
    at.served.troubles[file] = Trouble(wrong_from_byte=100)
    stands(typed(at), built_in, "Reload")


def test_calculate_leads_to_what_happened(visit: Callable[..., Visit]) -> None:
    """The sentence stands under the fields, a screen or two from where somebody types."""
    at = visit(390, 844)
    at.served.troubles["pyodide.asm.js"] = Trouble(missing=True)
    calculator = typed(at)
    calculator.reaches("unavailable")
    expect(calculator.plate).to_contain_text("Did not start: example values, not yours")
    calculator.calculate()
    expect(calculator.status).to_be_focused()
    expect(calculator.status).to_be_in_viewport()


def test_what_is_typed_while_a_failed_engine_rests_is_answered(visit: Callable[..., Visit]) -> None:
    at = visit()
    at.served.troubles["pyodide.asm.js"] = Trouble(missing=True)
    at.page.clock.install()
    calculator = typed(at)
    calculator.reaches("unavailable")
    at.served.troubles.clear()
    calculator.put("oven", "430")
    calculator.reaches("unavailable")
    at.page.clock.run_for(11_000)
    calculator.reaches("live")
    assert calculator.holds()["oven"] == "430"


@contextmanager
def spoilt(
    visit: Callable[..., Visit], how: str, before: str = ""
) -> Iterator[tuple[Visit, CalculatorOnPage]]:
    """A live page whose calculator then meets the one input that it cannot bear; afterwards it must answer others."""
    at = visit()
    at.served.troubles["engine.worker.mjs"] = Trouble(before=before, instead=(READY, SPOILT % how + READY))
    at.page.clock.install()
    calculator = typed(at, "400")
    calculator.reaches("live")
    sound = calculator.answers()
    calculator.put("oven", "425")
    yield at, calculator
    assert calculator.answers() == sound
    assert calculator.holds()["oven"] == "425"
    # a failed engine rests for ten seconds before it is started again
    at.page.clock.run_for(11_000)
    calculator.put("oven", "430")
    calculator.reaches("live")
    assert calculator.answers() != sound


@pytest.mark.parametrize("how", ["raise ZeroDivisionError", "spoil()", "len(bytearray(900_000_000))"])
def test_a_calculator_that_raises(visit: Callable[..., Visit], how: str) -> None:
    with spoilt(visit, how, NO_GROWTH) as (_, calculator):
        calculator.calculate()
        calculator.reaches("errors")
        expect(calculator.summary).to_contain_text("report code")


def test_a_worker_whose_python_raises(visit: Callable[..., Visit]) -> None:
    with spoilt(visit, "raise SystemExit") as (_, calculator):
        calculator.reaches("unavailable")
        expect(calculator.status).to_contain_text("could not work these values out")


def test_a_calculator_that_never_ends(visit: Callable[..., Visit]) -> None:
    with spoilt(visit, "while True: pass") as (at, calculator):
        calculator.reaches("stale")
        at.page.clock.run_for(31_000)
        calculator.reaches("unavailable")
        expect(calculator.status).to_contain_text("stopped")
        expect(calculator.status).to_contain_text("what you typed is kept")


@pytest.mark.parametrize(
    "end",
    [
        "__workers.at(-1).terminate()",
        "__workers.at(-1).dispatchEvent(new ErrorEvent('error', { message: 'gone' }))",
    ],
)
def test_a_worker_killed_in_the_middle_of_an_answer(visit: Callable[..., Visit], end: str) -> None:
    def with_workers(**words: object) -> Visit:
        at = visit(**words)
        at.context.add_init_script(WORKERS)
        return at

    with spoilt(with_workers, "while True: pass") as (at, calculator):
        calculator.reaches("stale")
        at.page.evaluate(end)
        at.page.clock.run_for(31_000)
        calculator.reaches("unavailable")
        expect(calculator.status).to_contain_text("stopped")
        expect(calculator.status).to_contain_text("before your last change")


def test_a_lid_closed_while_it_starts(visit: Callable[..., Visit]) -> None:
    """Clocks jump by hours: the browser then runs each timer that is due once."""
    at = visit()
    at.served.troubles["image.bin.gz"] = Trouble(delay_s=3)
    at.page.clock.install()
    calculator = typed(at)
    calculator.reaches("starting")
    at.page.wait_for_timeout(500)
    at.page.clock.fast_forward("03:00:00")
    assert calculator.state == "starting"
    calculator.reaches("live")
    at.page.clock.set_system_time("2001-02-03T04:05:06")
    calculator.put("oven", "430")
    calculator.reaches("live")


def test_a_network_that_goes_quiet(visit: Callable[..., Visit], built_in: dict[str, str]) -> None:
    at = visit()
    at.served.troubles["image.bin.gz"] = Trouble(quiet_after_bytes=1_000_000)
    at.page.clock.install()
    calculator = typed(at)
    calculator.reaches("starting")
    at.page.wait_for_timeout(2_000)
    at.page.clock.run_for(95_000)
    at.served.over.set()
    stands(calculator, built_in, "Reload")


def test_a_network_that_dies_in_the_middle_and_comes_back(visit: Callable[..., Visit]) -> None:
    at = visit()
    at.served.troubles["image.bin.gz"] = Trouble(breaks_after_bytes=1_000_000)
    at.served.troubles["python_stdlib.zip"] = Trouble(breaks_after_bytes=1_000_000)
    calculator = typed(at)
    calculator.reaches("unavailable")
    expect(calculator.status).to_contain_text("A part of it did not come")
    at.context.set_offline(True)
    calculator.put("oven", "430")
    at.served.troubles.clear()
    at.context.set_offline(False)
    calculator.reaches("live")
    assert calculator.holds()["oven"] == "430"


@pytest.mark.parametrize(
    "hidden",
    [
        "delete window.WebAssembly",
        "WebAssembly.validate = () => false",
        "window.Worker = class extends Worker { constructor(script) { super(script); } }",
    ],
    ids=["no WebAssembly", "an early WebAssembly", "no workers made of modules"],
)
def test_a_browser_that_is_too_old(
    visit: Callable[..., Visit], built_in: dict[str, str], hidden: str
) -> None:
    at = visit()
    at.context.add_init_script(hidden)
    calculator = typed(at)
    stands(calculator, built_in, "too old", "Safari 16.4", "table below")
    assert not any("/assets/engine/" in path for path in at.served.asked)
    at.page.locator(".calc-vary summary").click()
    expect(at.page.locator(".calc-vary table")).to_be_visible()


@pytest.mark.parametrize(
    "trouble",
    [Trouble(missing=True), Trouble(as_type="text/plain"), Trouble(cut_to_bytes=400)],
    ids=["missing", "of another type", "cut off"],
)
@pytest.mark.parametrize("file", ["form", "part"])
def test_the_forms_own_script_does_not_come(
    visit: Callable[..., Visit], built_in: dict[str, str], file: str, trouble: Trouble
) -> None:
    at = visit()
    form = at.served.root / "assets/calculator/calculator-form.mjs"
    part = re.search(r"part-\w+\.mjs", form.read_text("utf-8"))
    assert part
    at.served.troubles[part[0] if file == "part" else form.name] = trouble
    calculator = typed(at)
    expect(calculator.status).to_contain_text("The live calculator did not start.")
    expect(calculator.status).to_be_visible()
    calculator.field("oven").press("Enter")
    at.page.wait_for_timeout(300)
    assert calculator.holds()["oven"] == "425"
    assert calculator.answers() == built_in


def test_a_link_fetches_nothing_in_vain_for_a_browser_that_is_too_old(visit: Callable[..., Visit]) -> None:
    """The page's head starts the engine's worker before its modules are there to look: the worker looks by itself."""
    lacks = "WebAssembly.validate = () => false;\n"
    at = visit()
    at.context.add_init_script(lacks)
    at.served.troubles["engine.worker.mjs"] = Trouble(before=lacks)
    at.goes("cure/cure-plan/?oven=390+F")
    at.calculator("cure-plan").reaches("unavailable")
    at.page.wait_for_timeout(1_000)
    assert any(path.endswith("engine.worker.mjs") for path in at.served.asked)
    assert not [path for path in at.served.asked if "/assets/engine/" in path]
