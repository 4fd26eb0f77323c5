"""The shipped engine answers as the tested code does: the calls that the unit tests made, made again inside it."""

from __future__ import annotations

import json
from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from itertools import zip_longest
from pathlib import Path

from calculators import slugs
from calculators.kit.browser import run_json
from tests.call_codec import alike
from tests.recorder import CALLS, source_hash

CODEC = Path(__file__).resolve().parents[1] / "call_codec.py"
RECORD_FIRST = "run: python3 scripts/check.py --only unit"


def recorded() -> list[str]:
    assert CALLS.is_file(), f"No calls are recorded; {RECORD_FIRST}"
    first, *lines = CALLS.read_text(encoding="utf-8").splitlines()
    of_now = json.loads(first)["sources"] == source_hash()
    assert of_now, f"The recorded calls are of calculators that have changed since; {RECORD_FIRST}"
    return lines


def test_recorded_calls_give_the_same_in_the_shipped_image(
    engine: Path, node: Callable[..., list[str]], report: Callable[[str], None]
) -> None:
    lines = recorded()
    with ThreadPoolExecutor(2) as at_once:  # a process of Node's each; every other line, for the same work
        shares = at_once.map(
            lambda some: node("replay.mjs", engine, CODEC, lines=some), (lines[::2], lines[1::2])
        )
        answered = [json.loads(run_json(line)) if "slug" in json.loads(line) else None for line in lines]
    results = [printed for pair in zip_longest(*shares) for printed in pair if printed is not None]
    assert len(results) == len(lines)
    wrong = []
    seen: dict[str, int] = {}
    formulas: dict[str, int] = {}
    for line, run_here, printed in zip(lines, answered, results, strict=True):
        call, result = json.loads(line), json.loads(printed)
        if "slug" in call:
            seen[call["slug"]] = seen.get(call["slug"], 0) + 1
            here = run_here
            there = json.loads(result["response"]) if "response" in result else result
            differing = [key for key in here if not alike(here[key], there.get(key))]
            if differing:
                wrong.append(
                    f"{call}: {differing}: {here[differing[0]]!r} here, {there.get(differing[0])!r} there"
                )
        else:
            name = f"{call['module']}.{call['function']}"
            formulas[name] = formulas.get(name, 0) + 1
            here = {key: call[key] for key in ("result", "raised", "message") if key in call}
            if not alike(here, result):
                wrong.append(f"{call}: {result} there")
    assert not wrong, f"{len(wrong)} of {len(lines)} calls differ:\n" + "\n".join(
        one[:1500] for one in wrong[:5]
    )
    assert not set(slugs()) - set(seen), f"Never asked in the unit tests; {RECORD_FIRST}"
    assert formulas, f"No call of a formula is recorded; {RECORD_FIRST}"
    report(
        f"replayed in the memory image: {sum(seen.values())} runs of {len(seen)} calculators, "
        f"{sum(formulas.values())} calls of {len(formulas)} formulas"
    )
