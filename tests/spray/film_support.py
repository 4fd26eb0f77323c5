"""What the tests of the film calculators share."""

from __future__ import annotations

from calculators import run
from calculators.kit.run import Outcome


def answer(slug: str, **texts: str) -> Outcome:
    """An outcome that must not be refused; underscores in keys stand for hyphens."""
    outcome = run(slug, {key.replace("_", "-"): text for key, text in texts.items()})
    assert outcome.ok, outcome.errors
    return outcome


def refused(slug: str, **texts: str) -> dict[str, str]:
    """The sentences of a refusal by key."""
    outcome = run(slug, {key.replace("_", "-"): text for key, text in texts.items()})
    assert not outcome.ok
    return {error.key: error.message for error in outcome.errors}


def number(outcome: Outcome, key: str) -> float:
    value = outcome.answers[key].value
    assert isinstance(value, float), f"{key}: {value!r}"
    return value


def cautions(outcome: Outcome) -> list[tuple[str, str]]:
    """Level and field of each, without what always stands there."""
    return [(one.level, one.key) for one in outcome.cautions]
