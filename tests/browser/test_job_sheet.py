"""The job sheet: answers go in with a tap, feed the next calculator, go stale, and come back from file, link and paper."""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

import numpy as np
import pytest
import zxingcpp
from playwright.sync_api import Locator, Page, expect
from pypdf import PdfReader

from tests.browser.calculator_page import START_ms, one_line
from tests.browser.conftest import Visit

SHEET = "job/job-sheet/"
SLOW_ms = 40_000


def add(visit: Visit, slug: str, stage: str, **texts: str) -> None:
    visit.goes(f"{stage}/{slug}/")
    calculator = visit.calculator(slug)
    calculator.put_all({key.replace("_", "-"): text for key, text in texts.items()})
    calculator.act("add-to-job")
    expect(calculator.box.locator('[data-about="job"]')).to_be_visible(timeout=START_ms)


def use(visit: Visit, slug: str, key: str) -> None:
    visit.calculator(slug).box.locator(f'[data-field="{key}"] .calc-offer button').click()


def entry(page: Page, name: str) -> Locator:
    return page.locator(f'[data-entry="{name}"]')


def status(page: Page, words: str) -> None:
    expect(page.locator("job-sheet [data-status]")).to_contain_text(words, timeout=SLOW_ms)


def size_and_powder(visit: Visit) -> None:
    add(visit, "part-size", "part")
    visit.goes("spray/powder-needed/")
    use(visit, "powder-needed", "area")
    visit.calculator("powder-needed").reaches("live")
    visit.calculator("powder-needed").act("add-to-job")
    expect(visit.page.locator('[data-about="job"]')).to_be_visible()
    visit.goes(SHEET)
    expect(entry(visit.page, "powder-needed")).to_be_visible()


def test_a_job_end_to_end_offline_and_reloaded(visit: Callable[..., Visit]) -> None:
    """Size, powder and bake of the bench, each going on with the number before it; the network gone, the page reloaded."""
    here = visit(width=390, height=844)
    size_and_powder(here)
    page = here.page
    assert "From Part size: coated area 41.2 ft2" in one_line(entry(page, "powder-needed").inner_text())
    here.goes("cure/cure-plan/")
    page.locator('[data-about="offers"] button').click()
    plan = here.calculator("cure-plan")
    plan.reaches("live")
    assert plan.field("thickness").input_value() == "0.625"
    assert plan.field("shape").input_value() == "both-sides"
    plan.act("add-to-job")
    expect(page.locator('[data-about="job"]')).to_be_visible()
    here.goes(SHEET)
    page.locator("#job-note-bake").fill("Rack 2, left")
    page.locator("#job-tick-spray").check()
    page.reload()
    assert page.locator("#job-note-bake").input_value() == "Rack 2, left"
    assert page.locator("#job-tick-spray").is_checked()
    assert "49 min" in entry(page, "cure-plan").inner_text()
    assert here.errors == [] and here.leaving() == []


def test_an_answer_goes_stale_and_is_worked_out_again(visit: Callable[..., Visit]) -> None:
    here = visit()
    size_and_powder(here)
    page = here.page
    add(here, "part-size", "part", count="8")
    here.goes(SHEET)
    stale = entry(page, "powder-needed")
    assert "Coated area is now 82.3 ft2; this was worked out with 41.2 ft2" in one_line(stale.inner_text())
    before = one_line(stale.locator(".job-headline").inner_text())
    page.locator('[data-act="again"]').click()
    status(page, "All 2 worked out again")
    expect(entry(page, "powder-needed").locator(".job-out")).to_have_count(0)
    after = one_line(entry(page, "powder-needed").locator(".job-headline").inner_text())
    assert (before, after) == ("Buy 1.47 lb (0.668 kg)", "Buy 2.94 lb (1.34 kg)")


def test_opening_an_entry_and_adding_it_again_changes_that_entry(visit: Callable[..., Visit]) -> None:
    here = visit()
    size_and_powder(here)
    page = here.page
    entry(page, "powder-needed").get_by_role("link", name="Open it").click()
    powder = here.calculator("powder-needed")
    powder.reaches("live")
    powder.put("film", "3")
    powder.act("add-to-job")
    expect(page.locator('[data-about="job"]')).to_be_visible()
    here.goes(SHEET)
    expect(page.locator("[data-entry]")).to_have_count(2)
    assert "From Part size: coated area" in one_line(entry(page, "powder-needed").inner_text())


def test_an_entry_too_long_for_a_link_opens_whole(visit: Callable[..., Visit]) -> None:
    here = visit()
    log = "\n".join(f"{minute}, {min(70 + 6 * minute, 398)}" for minute in range(400))
    add(here, "bake-log", "cure", log=log)
    here.goes(SHEET)
    here.page.evaluate("sessionStorage.clear()")
    entry(here.page, "bake-log").get_by_role("link", name="Open it").click()
    here.calculator("bake-log").reaches("live")
    assert here.calculator("bake-log").field("log").input_value() == log


def test_two_tabs_never_write_over_each_other(visit: Callable[..., Visit]) -> None:
    here = visit()
    add(here, "part-size", "part")
    here.goes(SHEET)
    other = here.context.new_page()
    other.goto(f"{here.served.address}/{SHEET}")
    here.page.locator("#job-note-bake").fill("from one")
    other.locator("#job-note-price").fill("from two")
    other.locator("#job-tick-hang").check()
    here.page.locator("#job-tick-check").check()
    expect(here.page.locator("#job-note-price")).to_have_value("from two")
    expect(other.locator("#job-tick-check")).to_be_checked()
    here.page.reload()
    assert here.page.locator("#job-note-bake").input_value() == "from one"
    assert here.page.locator("#job-tick-hang").is_checked()


@pytest.mark.parametrize(
    ("trouble", "words"),
    [
        (
            "Storage.prototype.setItem = () => { throw new DOMException('full', 'QuotaExceededError'); };",
            "no room left for the job",
        ),
        (
            "Object.defineProperty(window, 'localStorage', { get() { throw new DOMException('no', 'SecurityError'); } });",
            "keeps nothing for this site",
        ),
    ],
)
def test_a_device_that_keeps_nothing_says_so_and_the_job_can_be_saved(
    visit: Callable[..., Visit], tmp_path: Path, trouble: str, words: str
) -> None:
    here = visit()
    here.context.add_init_script(trouble)
    here.goes(SHEET)
    page = here.page
    page.locator('[data-act="new"]').click()
    page.locator("dialog input").fill("Gate")
    page.locator('dialog button[value="yes"]').click()
    status(page, words)
    page.locator("#job-note-spray").fill("kept while the page is open")
    page.locator(".job-more summary").click()
    with page.expect_download() as waiting:
        page.locator('[data-act="save"]').click()
    saved = json.loads(Path(waiting.value.path()).read_text("utf-8"))
    assert saved["job"]["notes"] == {"spray": "kept while the page is open"}
    # the theme, not the sheet, stumbles over storage that is refused
    assert set(here.errors) <= {"no"}


def test_a_file_comes_back_as_it_was(visit: Callable[..., Visit], tmp_path: Path) -> None:
    here = visit()
    size_and_powder(here)
    page = here.page
    page.locator("#job-note-bake").fill('<b>not markup</b> & "quotes"')
    page.locator(".job-more summary").click()
    with page.expect_download() as waiting:
        page.locator('[data-act="save"]').click()
    path = tmp_path / "bench.job.json"
    waiting.value.save_as(path)
    other = visit()
    other.goes(SHEET)
    other.page.locator(".job-more summary").click()
    other.page.locator("#job-file").set_input_files(path)
    expect(entry(other.page, "powder-needed")).to_be_visible()
    assert other.page.locator("#job-note-bake").input_value() == '<b>not markup</b> & "quotes"'
    first, second = (
        one_line(one.locator('[data-entry="powder-needed"]').inner_text()) for one in (page, other.page)
    )
    assert first == second


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("{", "not a job, or it is damaged"),
        ('{"kind": "shopping list"}', "not a job of this site"),
        ('{"kind": "coating job", "format": 99, "job": {}}', "made with a newer version"),
        ('{"kind": "coating job", "format": 1, "job": {"entries": [7]}}', "This job is damaged"),
    ],
)
def test_a_file_that_is_no_job_gets_a_sentence_and_changes_nothing(
    visit: Callable[..., Visit], tmp_path: Path, text: str, words: str
) -> None:
    here = visit()
    add(here, "part-size", "part")
    here.goes(SHEET)
    path = tmp_path / "x.json"
    path.write_text(text, encoding="utf-8")
    here.page.locator(".job-more summary").click()
    here.page.locator("#job-file").set_input_files(path)
    status(here.page, words)
    expect(entry(here.page, "part-size")).to_be_visible()
    assert path.read_text("utf-8") == text


def test_a_stored_job_that_cannot_be_read_is_kept(visit: Callable[..., Visit]) -> None:
    here = visit()
    text = '{"kind": "coating job", "format": 2, "job": {"precious": 1}}'
    here.goes("")
    here.page.evaluate("(text) => localStorage.setItem('job:0123456789abcdef', text)", text)
    here.goes(SHEET)
    expect(here.page.locator(".job-unread")).to_contain_text("newer version")
    add(here, "part-size", "part")
    here.goes(SHEET)
    assert here.page.evaluate("localStorage.getItem('job:0123456789abcdef')") == text
    here.page.locator(".job-unread button", has_text="Delete it").click()
    here.page.locator('dialog button[value=""]').click()
    assert here.page.evaluate("localStorage.getItem('job:0123456789abcdef')") == text


def test_the_link_and_the_square_on_paper_hold_the_whole_job(visit: Callable[..., Visit]) -> None:
    here = visit()
    size_and_powder(here)
    page = here.page
    expect(page.locator(".job-code")).to_be_visible()
    pixels = page.evaluate(
        """async () => {
             const svg = document.querySelector(".job-code").cloneNode(true);
             svg.setAttribute("width", "600"); svg.setAttribute("height", "600");
             const url = "data:image/svg+xml," + encodeURIComponent(new XMLSerializer().serializeToString(svg));
             const picture = new Image(); picture.src = url; await picture.decode();
             const canvas = document.createElement("canvas"); canvas.width = canvas.height = 600;
             const draw = canvas.getContext("2d"); draw.drawImage(picture, 0, 0, 600, 600);
             const { data } = draw.getImageData(0, 0, 600, 600);
             return [...data].filter((_, place) => place % 4 === 0);
           }"""
    )
    read = zxingcpp.read_barcodes(np.array(pixels, dtype=np.uint8).reshape(600, 600))
    assert len(read) == 1
    link = read[0].text
    assert link.startswith(f"{here.served.address}/{SHEET}#job=")
    other = visit()
    other.page.goto(link)
    other.page.locator('dialog button[value="yes"]').click()
    status(other.page, "All 2 worked out again")
    assert "#" not in other.page.url
    first, second = (
        one_line(one.locator('[data-entry="powder-needed"]').inner_text()) for one in (page, other.page)
    )
    assert first == second
    # a fragment is never sent
    assert not any("job=" in asked for asked in here.served.asked)


@pytest.mark.parametrize("fragment", ["job=", "job=AAAA", "job=%%%", "job=q80vNzI", "job=" + "A" * 5000])
def test_a_damaged_link_says_so(visit: Callable[..., Visit], fragment: str) -> None:
    here = visit()
    here.goes(f"{SHEET}#{fragment}")
    status(here.page, "holds a job that cannot be read")
    assert here.errors == []


def test_the_printed_sheet_fits_a_clipboard(visit: Callable[..., Visit], tmp_path: Path) -> None:
    here = visit()
    size_and_powder(here)
    here.page.locator("#job-note-bake").fill("Rack 2, left")
    path = tmp_path / "sheet.pdf"
    here.page.pdf(path=path, format="Letter")
    pages = PdfReader(path).pages
    text = " ".join(one.extract_text() for one in pages)
    assert len(pages) <= 2
    for words in ("Buy 1.47 lb", "Coated area 41.2 ft2", "8. Price", "My job, started"):
        assert words in one_line(text), words
    assert "Take it out" not in text and "Save as a file" not in text


def test_deleting_asks_and_every_job_can_be_saved_first(visit: Callable[..., Visit]) -> None:
    here = visit()
    add(here, "part-size", "part")
    here.goes(SHEET)
    page = here.page
    page.locator(".job-more summary").click()
    with page.expect_download() as waiting:
        page.locator('[data-act="export"]').click()
    assert len(json.loads(Path(waiting.value.path()).read_text("utf-8"))["jobs"]) == 1
    page.locator('[data-act="delete"]').click()
    page.locator('dialog button[value=""]').click()
    expect(entry(page, "part-size")).to_be_visible()
    page.locator('[data-act="delete"]').click()
    page.locator('dialog button[value="yes"]').click()
    expect(entry(page, "part-size")).to_have_count(0)
    status(page, "was deleted")


# ---- nothing is cut, nothing is lost ----


def kept(page: Page) -> dict[str, Any]:
    """The one job that this device keeps."""
    text: str = page.evaluate(
        "localStorage.getItem(Object.keys(localStorage).find((one) => one.startsWith('job:')))"
    )
    job: dict[str, Any] = json.loads(text)["job"]
    return job


def keep(page: Page, job: dict[str, Any], name: str = "0000000000000001") -> None:
    text = json.dumps({"kind": "coating job", "format": 1, "job": {"id": name, **job}})
    page.evaluate("([key, text]) => localStorage.setItem(key, text)", [f"job:{name}", text])
    page.evaluate("(id) => localStorage.setItem('job-current', id)", name)


def with_entries(*entries: dict[str, Any]) -> dict[str, Any]:
    return {"name": "Gate", "made": "2026-11-25", "changed": "2026-11-25T12:00:00Z", "entries": list(entries)}


def test_a_log_as_long_as_the_calculator_reads_is_kept_whole(visit: Callable[..., Visit]) -> None:
    here = visit()
    page = here.page
    log = "\n".join(f"{place / 100:.2f}, {min(70 + place * 0.03, 398.0):.2f} F  " for place in range(19_000))
    assert len(log) > 300_000
    here.goes("cure/bake-log/")
    # as a paste brings it: key by key it takes the browser longer than a test waits
    here.calculator("bake-log").field("log").evaluate(
        """(field, text) => { field.value = text;
             for (const kind of ["input", "change"]) field.dispatchEvent(new Event(kind, { bubbles: true })); }""",
        log,
    )
    here.calculator("bake-log").act("add-to-job")
    expect(page.locator('[data-about="job"]')).to_be_visible(timeout=SLOW_ms)
    here.goes(SHEET)
    before = one_line(entry(page, "bake-log").locator(".job-headline").inner_text())
    page.locator("#job-tick-bake").check()
    page.locator('[data-act="again"]').click()
    status(page, "All 1 worked out again")
    assert kept(page)["entries"][0]["texts"]["log"] == log
    assert one_line(entry(page, "bake-log").locator(".job-headline").inner_text()) == before


def test_an_answer_that_does_not_fit_is_not_added_and_nothing_is_lost(visit: Callable[..., Visit]) -> None:
    here = visit()
    page = here.page
    here.goes(SHEET)
    full = with_entries(*({"name": f"part-size-{place}", "slug": "part-size"} for place in range(100)))
    keep(page, full)
    before = kept(page)
    here.goes("spray/powder-needed/")
    powder = here.calculator("powder-needed")
    powder.put("film", "3")
    powder.act("add-to-job")
    expect(powder.box.locator("[data-status]")).to_contain_text(
        "Not added. A job has at most 100 calculations, and this one has 101.", timeout=START_ms
    )
    expect(page.locator('[data-about="job"]')).to_have_count(0)
    assert kept(page) == before
    assert powder.holds()["film"] == "3"


def test_an_answer_for_which_there_is_no_room_is_not_called_added(visit: Callable[..., Visit]) -> None:
    here = visit()
    here.context.add_init_script(
        "Storage.prototype.setItem = () => { throw new DOMException('full', 'QuotaExceededError'); };"
    )
    here.goes("part/part-size/")
    size = here.calculator("part-size")
    size.act("add-to-job")
    expect(size.box.locator("[data-status]")).to_contain_text(
        "Not added. This device has no room left for the job", timeout=START_ms
    )
    expect(here.page.locator('[data-about="job"]')).to_have_count(0)


@pytest.mark.parametrize("take", [None, {"area": None}], ids=str)
def test_a_tab_with_a_damaged_memory_of_its_job_still_adds(visit: Callable[..., Visit], take: Any) -> None:
    here = visit()
    here.goes("part/part-size/")
    text = json.dumps({"name": "part-size", "take": take})
    here.page.evaluate("(text) => sessionStorage.setItem('job-visit:part-size', text)", text)
    here.calculator("part-size").act("add-to-job")
    expect(here.page.locator('[data-about="job"]')).to_be_visible(timeout=START_ms)
    assert here.errors == []


def test_a_link_is_in_the_address_until_its_job_was_taken(visit: Callable[..., Visit]) -> None:
    here = visit()
    page = here.page
    here.goes(SHEET)
    page.locator('[data-act="new"]').click()
    page.locator("dialog input").fill("Gate")
    page.locator('dialog button[value="yes"]').click()
    page.evaluate("navigator.clipboard.writeText = async (text) => { window.copied = text }")
    page.locator(".job-more summary").click()
    page.locator('[data-act="link"]').click()
    status(page, "Link copied")
    link = page.evaluate("copied")
    other = visit()
    dialog = other.page.locator("job-sheet dialog")
    other.page.goto(link)
    expect(dialog).to_be_visible()
    assert other.page.url == link
    dialog.get_by_role("button", name="Leave it").click()
    expect(dialog).to_have_count(0)
    assert other.page.url == link
    other.page.reload()
    dialog.get_by_role("button", name="Open it").click()
    expect(other.page.locator("#job-choice")).to_contain_text("Gate")
    other.page.wait_for_function("location.hash === ''")


def test_every_job_saved_as_one_file_comes_back_with_what_could_not_be_read(
    visit: Callable[..., Visit], tmp_path: Path
) -> None:
    here = visit()
    page = here.page
    here.goes(SHEET)
    keep(page, with_entries({"name": "part-size", "slug": "part-size"}))
    newer = {"kind": "coating job", "format": 2, "job": {**with_entries(), "name": "Newer"}}
    page.evaluate("(text) => localStorage.setItem('job:0000000000000002', text)", json.dumps(newer))
    page.reload()
    page.locator(".job-more summary").click()
    with page.expect_download() as waiting:
        page.locator('[data-act="export"]').click()
    status(page, "Saved as one file: 1 job, and 1 job that could not be opened, as stored.")
    path = tmp_path / "jobs.json"
    waiting.value.save_as(path)

    other = visit()
    other.goes(SHEET)
    other.page.locator(".job-more summary").click()
    other.page.locator("#job-file").set_input_files(path)
    status(
        other.page,
        "jobs.json: 1 of 2 jobs opened. The first of the others: This job was made with a newer version",
    )
    expect(entry(other.page, "part-size")).to_be_visible()
    # a later version of the site reads it, as this one does once it is of a format that it knows
    path.write_text(path.read_text("utf-8").replace(r"\"format\": 2", r"\"format\": 1"), "utf-8")
    other.page.locator("#job-file").set_input_files(path)
    status(other.page, "jobs.json: 2 of 2 jobs opened.")
    expect(other.page.locator("#job-choice")).to_contain_text("Newer")


def test_a_job_that_cannot_be_read_any_more_is_not_called_deleted(visit: Callable[..., Visit]) -> None:
    here = visit()
    page = here.page
    here.goes(SHEET)
    keep(page, with_entries({"name": "part-size", "slug": "part-size"}))
    page.reload()
    expect(entry(page, "part-size")).to_be_visible()
    page.evaluate("localStorage.setItem('job:0000000000000001', 'x'.repeat(4_000_001))")
    page.locator("#job-tick-bake").click()
    status(page, "A job has at most 4,000,000 characters, and this one has more. It was left as it is.")
    assert page.evaluate("localStorage.getItem('job:0000000000000001').length") == 4_000_001
