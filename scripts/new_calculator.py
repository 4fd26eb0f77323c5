"""Write the three files of a new calculator from a template.

    python3 scripts/new_calculator.py cure my-question

The template is a small working calculator (the mass of a film), so that every check passes before the first change.
Change it piece by piece: the question, the fields, the formula, the words, and above all the sources and tests.
"""

from __future__ import annotations

import argparse
import datetime
import re
import sys

import environment
from environment import ROOT

CALCULATOR = '''\
"""QUESTION The mass of a film, to be replaced."""

from __future__ import annotations

from dataclasses import dataclass

from calculators.kit.calculator import Calculator, Out
from calculators.kit.fields import Limits, Quantity, ask
from calculators.kit.result import Result
from calculators.kit.steps import step
from calculators.physics.film import film_mass_kg


@dataclass(frozen=True)
class Inputs:
    area_m2: float = ask(
        Quantity(
            group="The job",
            label="Area to coat",
            hint="All parts together, every face that gets powder",
            units=("ft2", "m2"),
            default="10",
            limits=Limits("0.01 ft2", "10000 ft2", "from a small bracket to a long railing"),
            meaning="coated-area",
        )
    )
    film_um: float = ask(
        Quantity(
            label="Film",
            hint="Cured thickness, from the data sheet",
            units=("mil", "um"),
            default="2.5",
            limits=Limits("0.2 mil", "60 mil", "thinner does not close, thicker is not one coat"),
            meaning="film",
        )
    )


def solve(asked: Inputs) -> Result:
    mass = film_mass_kg(asked.area_m2, asked.film_um, SPECIFIC_GRAVITY)
    return Result(
        answers={"film-mass": mass},
        steps=(
            step(
                "Mass of the film",
                "m = A * t * SG / 1000",
                "kg",
                A=asked.area_m2,
                t=asked.film_um,
                SG=SPECIFIC_GRAVITY,
            ),
        ),
    )


SPECIFIC_GRAVITY = 1.5  # replace: a figure belongs in a table with its source

CALCULATOR = Calculator(
    title="TITLE",
    question="QUESTION",
    inputs=Inputs,
    solve=solve,
    answers=(
        Out(
            key="film-mass",
            label="On the parts",
            meaning="Weight that the parts gain. Weigh one before and after to check it.",
            main=True,
            unit="kg",
            shown=("lb", "kg"),
        ),
    ),
    sources=("film-mass-balance",),
    version=1,
    reviewed="TODAY",
    keywords=("replace",),
    limits=("Replace: what this answer must not be trusted for, a sentence each.",),
)
'''

PAGE = """\
---
title: TITLE
description: QUESTION
order: 90
reviewed: TODAY
kind: calculator
---
# TITLE
Replace: one sentence, what you get and when you would want it.

<!-- calculator: SLUG -->

## What the answer means

Replace: how to act on it, and what a bad answer looks like.

## What to enter

<!-- inputs: SLUG -->

## When not to trust it

<!-- limits: SLUG -->

## How it is worked out

Replace: the formula in words, one formula line, and what is assumed.

## Where the numbers come from

<!-- sources: SLUG -->
"""

TESTS = '''\
"""SLUG through the door. Replace each check with one of what the calculator really answers."""

from __future__ import annotations

import pytest

from calculators import run


def film_mass_lb(**texts: str) -> float:
    outcome = run("SLUG", texts)
    assert outcome.ok, outcome.errors
    value = outcome.answers["film-mass"].value
    assert isinstance(value, float)
    return value


@pytest.mark.published
def test_a_pound_covers_the_trade_constant() -> None:
    """NIST SP 811 (2008), Appendix B.9, from memory: water at 1000 kg/m3 is 62.428 lb/ft3; at specific gravity 1.5 and 1 mil

    over 12 000 / 62.428 / 1.5 = 128.15 ft2 lies 1 lb.
    """
    assert film_mass_lb(area="128.15 ft2", film="1 mil") == pytest.approx(1, rel=1e-4)


@pytest.mark.property
@pytest.mark.parametrize("key", ["area", "film"])
def test_twice_as_much_weighs_twice_as_much(key: str) -> None:
    given = {"area": "10 ft2", "film": "2 mil"}
    number, unit = given[key].split()
    twice = given | {key: f"{2 * int(number)} {unit}"}
    assert film_mass_lb(**twice) == pytest.approx(2 * film_mass_lb(**given))
'''


def main() -> int:
    environment.ensure("site")
    sys.path.insert(0, str(ROOT))
    from calculators.kit import find

    parser = argparse.ArgumentParser(description="Write the three files of a new calculator.")
    parser.add_argument("stage", choices=find.STAGES)
    parser.add_argument("slug", help="its name in addresses, like my-question")
    words = parser.parse_args()
    slug = words.slug
    if not re.fullmatch(r"[a-z][a-z0-9]*(-[a-z0-9]+)*", slug):
        print("The name is small letters, digits and single hyphens, like my-question.", file=sys.stderr)
        return 2
    if slug in find.slugs():
        print(f"There is a calculator {slug} already, at the stage {find.stage(slug)}.", file=sys.stderr)
        return 2
    title = slug.replace("-", " ").capitalize()
    stem = slug.replace("-", "_")
    files = {
        ROOT / "calculators" / words.stage / f"{stem}.py": CALCULATOR,
        ROOT / "docs" / words.stage / f"{slug}.md": PAGE,
        ROOT / "tests" / words.stage / f"test_{stem}.py": TESTS,
    }
    there = [path.relative_to(ROOT).as_posix() for path in files if path.exists()]
    if there:
        print(f"Nothing was written, because there is already {' and '.join(there)}.", file=sys.stderr)
        return 2
    day = datetime.datetime.now(datetime.UTC).date().isoformat()
    for path, template in files.items():
        text = template.replace("SLUG", slug).replace("QUESTION", f"{title}?")
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text.replace("TITLE", title).replace("TODAY", day), encoding="utf-8")
        print(path.relative_to(ROOT).as_posix())
    print(
        "Next: change the template, then .venv/bin/python -m tests.contract.record, and check.py --only fast."
    )
    return 0


if __name__ == "__main__":
    sys.exit(main())
