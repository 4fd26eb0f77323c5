"""Write the three files of a new calculator: its module, its page and its tests.

    python3 scripts/new_calculator.py cure cool-down

Then fill them in. They answer a sum of their own from the start, so that every check already runs on them.
"""

from __future__ import annotations

import argparse
import re
import sys
from datetime import UTC, datetime

import environment
from environment import ROOT

MODULE = '''"""{question} Say here which formulas it uses."""

from __future__ import annotations

from dataclasses import dataclass

from calculators.kit.calculator import Calculator, Out
from calculators.kit.fields import Limits, Quantity, ask
from calculators.kit.result import Result
from calculators.kit.steps import step


@dataclass(frozen=True)
class Inputs:
    mass_kg: float = ask(
        Quantity(
            label="Mass",
            hint="Of one part",
            units=("lb", "kg"),
            default="10",
            limits=Limits("0.1 lb", "1000 lb", "a bracket to a frame"),
        )
    )


def solve(asked: Inputs) -> Result:
    return Result(
        answers={{"double": 2 * asked.mass_kg}},
        steps=(step("Twice the mass", "M = 2 * m", "kg", m=asked.mass_kg),),
    )


CALCULATOR = Calculator(
    title="{title}",
    question="{question}",
    inputs=Inputs,
    solve=solve,
    answers=(
        Out(
            key="double",
            label="Twice the mass",
            meaning="One sentence on how to act on it.",
            main=True,
            unit="kg",
            shown=("lb", "kg"),
        ),
    ),
    sources=("common-practice",),
    version=1,
    reviewed="{today}",
    keywords=("{words}",),
    limits=("What it must not be trusted for, a sentence each.",),
)
'''

PAGE = """---
title: {title}
description: {question}
order: 50
reviewed: {today}
kind: calculator
---
# {title}
One sentence: what you get, and when you would want it.

<!-- calculator: {slug} -->

## What the answer means

How to act on it, and what a bad answer looks like.

## What to enter

<!-- inputs: {slug} -->

## When not to trust it

<!-- limits: {slug} -->

## How it is worked out

The formula in words, one formula line, and what is assumed.

## Where the numbers come from

<!-- sources: {slug} -->

## See also

- [What are you trying to do?](../index.md)
"""

TESTS = '''"""{title}: checks against something outside the project. Replace both."""

import pytest
from calculators import run


@pytest.mark.published
def test_{module}__one_pound_is_0_45359237_kg():
    """International yard and pound agreement, 1959: 1 lb is 0.45359237 kg (from memory)."""
    assert run("{slug}", {{"mass": "0.45359237 kg"}}).answers["double"].value == pytest.approx(2, rel=1e-9)


@pytest.mark.property
def test_{module}__grows_with_mass():
    light, heavy = (run("{slug}", {{"mass": text}}).answers["double"].value for text in ("10 lb", "20 lb"))
    assert heavy == pytest.approx(2 * light)
'''


def main() -> int:
    parser = argparse.ArgumentParser(description="Write the three files of a new calculator.")
    parser.add_argument("stage", help="part, prepare, spray, cure, inspect, safety or job")
    parser.add_argument("slug", help="its name in links and on the command line, like cool-down")
    words = parser.parse_args()
    environment.ensure("checks")
    sys.path.insert(0, str(ROOT))
    from calculators.kit import find

    if words.stage not in find.STAGES:
        print(f"There is no stage {words.stage}; they are {', '.join(find.STAGES)}.", file=sys.stderr)
        return 2
    if not re.fullmatch(r"[a-z]+(-[a-z0-9]+)*", words.slug) or words.slug in find.slugs():
        print(
            "The name must be new, in small letters with hyphens between words, like cool-down.",
            file=sys.stderr,
        )
        return 2
    module = words.slug.replace("-", "_")
    title = words.slug.replace("-", " ").capitalize()
    filled = {
        "slug": words.slug,
        "module": module,
        "title": title,
        "words": words.slug.replace("-", " "),
        "question": "The question, as someone in the shop would ask it?",
        "today": datetime.now(UTC).strftime("%Y-%m-%d"),
    }
    files = {
        ROOT / "calculators" / words.stage / f"{module}.py": MODULE,
        ROOT / "docs" / words.stage / f"{words.slug}.md": PAGE,
        ROOT / "tests" / words.stage / f"test_{module}.py": TESTS,
    }
    there = [path for path in files if path.exists()]
    if there:
        print(f"{there[0].relative_to(ROOT)} is there already.", file=sys.stderr)
        return 2
    for path, text in files.items():
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text.format(**filled), "utf-8")
        print(path.relative_to(ROOT).as_posix())
    print("Fill them in, then: python3 scripts/check.py --only fast, and python -m tests.contract.record")
    return 0


if __name__ == "__main__":
    sys.exit(main())
