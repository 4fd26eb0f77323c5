"""Ask a calculator as its tests do: fields by keyword, and a number that must be there."""

from __future__ import annotations

from collections.abc import Callable

from calculators import run
from calculators.kit.run import Outcome


def asker(slug: str) -> Callable[..., Outcome]:
    """A function that asks this calculator, fields by keyword with `_` for `-`, and fails where it is refused."""

    def answer(**texts: str) -> Outcome:
        outcome = run(slug, {key.replace("_", "-"): text for key, text in texts.items()})
        assert outcome.ok, outcome.errors
        return outcome

    return answer


def number(outcome: Outcome, key: str) -> float:
    """The number that an answer is; fails where it is none."""
    value = outcome.answers[key].value
    assert isinstance(value, float), (key, outcome.answers[key].text)
    return value
