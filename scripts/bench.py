"""Measure how soon the site answers, beside an ordinary start of the same runtime in the same run.

    python3 scripts/bench.py                 native cost, first and repeat visits, recalculation
    python3 scripts/bench.py --runs 5        more runs; medians are shown
    python3 scripts/bench.py --native        only the native cost of each calculator
    python3 scripts/bench.py --growth        only how the build grows with the number of calculators
    python3 scripts/bench.py --traffic       only the bytes that a visit moves

Trust the ratios: seconds are those of the machine it ran on. The processor is slowed by stopping and continuing the
browser's page processes, which slows workers as well.
"""

from __future__ import annotations

import argparse
import functools
import statistics
import sys
import tempfile
import threading
import time
from collections import defaultdict
from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager
from http.server import ThreadingHTTPServer
from pathlib import Path

import environment
from bench_browser import Browser, BrowserFailed, Page, memory_MB, slowed

QUERY = "?thickness=1+in&v=1"
SLUG, STAGE = "cure-plan", "cure"


def native(runs: int = 30) -> list[tuple[str, float]]:
    """Milliseconds of one native `run` of each calculator, median, HTML not counted.

    A log that was fitted a moment ago is not fitted again, so bake-log is asked in both ways.
    """
    from calculators import run, slugs
    from calculators.cure._bake_log_inputs import EXAMPLE_LOG

    def median_ms(slug: str, fields: Sequence[dict[str, str]]) -> float:
        times = []
        for texts in fields:
            began = time.perf_counter()
            run(slug, texts)
            times.append(1000 * (time.perf_counter() - began))
        return statistics.median(times[1:])

    rows = [(slug, median_ms(slug, [{}] * (runs + 1))) for slug in slugs()]
    logs = [{"log": EXAMPLE_LOG.replace("383", f"{382 + count / 10}")} for count in range(runs + 1)]
    return [*rows, ("bake-log, a new log each time", median_ms("bake-log", logs))]


@contextmanager
def served(site: Path) -> Iterator[str]:
    """The built site on a free port of this machine."""
    from serve import handler

    server = ThreadingHTTPServer(("127.0.0.1", 0), functools.partial(handler(site), quiet=True))
    threading.Thread(target=server.serve_forever, daemon=True).start()
    try:
        yield f"http://127.0.0.1:{server.server_port}"
    finally:
        server.shutdown()


# A reader comes back later than a script does: by then the device has what it keeps.
KEPT = """(async () => {
  const kept = await navigator.serviceWorker.getRegistration();
  const found = await Promise.all((await caches.keys()).map(async (name) => (await (await caches.open(name)).keys())));
  return kept?.active?.state === "activated" && found.flat().some((one) => one.url.endsWith("image.laid"));
})()"""
# An ordinary page keeps nothing but what the browser's own cache does.
ORDINARY = "localStorage['calc-engine'] = 'ordinary'; delete Navigator.prototype.serviceWorker;"
# A person reads the first answer before changing a field, and a quick typist takes so long from key to key.
READING_s, BETWEEN_KEYS_s = 1.5, 0.15
# And stays a while: the browser may keep compiled code once there has been nothing to compile for two seconds.
STAYING_s = 6
# Left alone, the browser gives back what was used on the way: half a minute after the last of it was kept.
RESTING_s = 45
STEPS = """{
  const {startTime, detail: {steps}} = performance.getEntriesByName("calc:engine-ready")[0];
  ({...steps, "page asks": performance.getEntriesByName("calc:engine-start")[0].startTime, ready: startTime,
    answer: performance.getEntriesByName("calc:answer")[0].startTime});
}"""
LIVE = "document.querySelector('[data-outcome]')?.dataset.state === 'live'"


def visit(browser: Browser, address: str, before: str) -> tuple[Page, float]:
    """A page with its live answer, and milliseconds to it from the start of navigation."""
    page = browser.open(f"{address}/{STAGE}/{SLUG}/{QUERY}", before)
    page.wait(LIVE)
    return page, page.run("performance.getEntriesByName('calc:answer')[0].startTime")


def recalculations(page: Page, count: int) -> list[float]:
    """Milliseconds from key press to new text, so many times."""
    time.sleep(READING_s)
    for place in range(count):
        time.sleep(BETWEEN_KEYS_s)
        page.put("[name=oven]", str(395 + place % 40))
        page.wait(LIVE)
    times: list[float] = page.run(
        "performance.getEntriesByName('calc:answer-time').map(entry => entry.duration)"
    )
    if len(times) < count:
        raise BrowserFailed(f"Of {count} changes only {len(times)} brought a new answer.")
    return times[-count:]


COMING_BACK = 3


def visits(address: str, mode: str, slow: int) -> dict[str, list[float]]:
    """One new device: a first visit, answers to changed fields, then coming back."""
    found: dict[str, list[float]] = defaultdict(list)
    before = ORDINARY if mode == "ordinary" else ""
    with tempfile.TemporaryDirectory() as profile, Browser(profile) as browser:
        with slowed(profile, slow):
            page, ms = visit(browser, address, before)
            found["first"].append(ms)
            found["again"] += recalculations(page, 12)
        found["memory_MB"].append(memory_MB(profile))
        time.sleep(RESTING_s)
        found["memory_at_rest_MB"].append(memory_MB(profile))
        if mode == "image":
            page.wait(KEPT)
        found["bytes"].append(engine_bytes(page))
        for _ in range(COMING_BACK):
            page.close()
            with slowed(profile, slow):
                page, ms = visit(browser, address, before)
                found["repeat"].append(ms)
                for step, reached_ms in page.run(STEPS).items():
                    found[f"step {step}"].append(reached_ms)
                found["again_later"] += recalculations(page, 6)
            found["memory_later_MB"].append(memory_MB(profile))
            time.sleep(STAYING_s)
        time.sleep(RESTING_s)
        found["memory_later_at_rest_MB"].append(memory_MB(profile))
    return found


def browsing(address: str, runs: int, slow: int) -> dict[tuple[str, int], dict[str, float]]:
    """Medians by way to start; the ways take turns, so that a busy minute of the machine falls on both."""
    found: dict[str, dict[str, list[float]]] = {mode: defaultdict(list) for mode in ("image", "ordinary")}
    for _ in range(runs):
        for mode, so_far in found.items():
            for name, values in visits(address, mode, slow).items():
                so_far[name] += values
    return {
        (mode, slow): {name: statistics.median(values) for name, values in so_far.items()}
        | {"again_most": max(so_far["again"])}
        for mode, so_far in found.items()
    }


def engine_bytes(page: Page) -> float:
    """Bytes of the engine's files as they travel, in gzip."""
    count: float = page.run(
        """(async () => {
          const base = new URL(document.querySelector("calc-form").dataset.engine, location.href);
          const names = ["pyodide.mjs", "pyodide.asm.js", "pyodide.asm.wasm", "image.bin"];
          let total = 0;
          for (const name of names) {
            const answer = await fetch(new URL(name + ".gz", base), { method: "HEAD" });
            if (answer.ok) total += Number(answer.headers.get("content-length") ?? 0);
          }
          return total;
        })()"""
    )
    return count


def table(results: dict[tuple[str, int], dict[str, float]]) -> Iterator[str]:
    yield "| visit | processor | our start | ordinary start | ratio |"
    yield "|---|---|---|---|---|"
    for slow in sorted({key[1] for key in results}):
        ours, plain = results["image", slow], results["ordinary", slow]
        speed = "normal" if slow == 1 else f"slowed {slow} times"
        for name, words in (
            ("first", "first visit to a live answer"),
            ("repeat", "repeat visit to a live answer"),
        ):
            yield f"| {words} | {speed} | {ours[name]:,.0f} ms | {plain[name]:,.0f} ms | {plain[name] / ours[name]:.1f} |"
        yield (
            f"| next answer, key press to new text | {speed} | {ours['again']:.0f} ms, at most {ours['again_most']:.0f} "
            f"| {plain['again']:.0f} ms | |"
        )
        yield f"| the same on a repeat visit | {speed} | {ours['again_later']:.0f} ms | {plain['again_later']:.0f} ms | |"
        for name, words in (
            ("memory_MB", "memory of the page's process, straight after these"),
            ("memory_at_rest_MB", "the same, left alone"),
            ("memory_later_MB", "on a repeat visit, straight after"),
            ("memory_later_at_rest_MB", "the same, left alone"),
        ):
            yield f"| {words} | {speed} | {ours[name]:.0f} MB | {plain[name]:.0f} MB | |"
    yield f"| engine files, gzip | | {results['image', 1]['bytes'] / 1e6:.1f} MB | | |"
    steps = sorted(
        (ms, name.removeprefix("step "))
        for name, ms in results["image", 1].items()
        if name.startswith("step ")
    )
    yield ""
    yield "Coming back, ms from the start of navigation: " + ", ".join(
        f"{name} {ms:.0f}" for ms, name in steps
    )


def show(lines: Iterator[str], out: Callable[[str], object] = print) -> None:
    for line in lines:
        out(line)


def main() -> int:
    parser = argparse.ArgumentParser(description="Measure how soon the site answers.")
    parser.add_argument("--runs", type=int, default=3)
    parser.add_argument("--native", action="store_true", help="only the native cost of each calculator")
    parser.add_argument("--growth", action="store_true", help="only the build with more calculators")
    parser.add_argument("--traffic", action="store_true", help="only the bytes that a visit moves")
    words = parser.parse_args()
    environment.ensure("checks")
    sys.path.insert(0, str(environment.ROOT))
    if words.growth:
        import bench_growth

        show(bench_growth.table())
        return 0
    if words.traffic:
        import bench_traffic

        show(bench_traffic.table(environment.ROOT / "site"))
        return 0
    print("| calculator | native run |\n|---|---|")
    show(f"| {slug} | {ms:.1f} ms |" for slug, ms in native())
    if words.native:
        return 0
    site = environment.ROOT / "site"
    if not site.is_dir():
        print("Build the site first: python3 scripts/serve.py --build", file=sys.stderr)
        return 2
    results = {}
    with served(site) as address:
        for slow in (1, 4):
            results |= browsing(address, words.runs, slow)
    print()
    show(table(results))
    return 0


if __name__ == "__main__":
    sys.exit(main())
