"""The worker's door: one JSON string in, one out."""

from __future__ import annotations

import json
from collections.abc import Iterator
from dataclasses import asdict
from typing import Any

from calculators.kit.handover import MEANINGS
from calculators.kit.html import figures_html, outcome_html
from calculators.kit.run import Outcome, run


def run_json(request: str) -> str:
    """Run one request of the page: {"slug", "texts"}, or {"job"} for a whole job."""
    asked = json.loads(request)
    if "job" in asked:
        from calculators.kit.job import job_json

        return job_json(request)
    return json.dumps(response_of(_outcome(asked)))


def parts_json(request: str) -> Iterator[str]:
    """The answer to a form, and then its charts' HTML and its text, as {"figures": [...], "text": ...}: nobody waits for those.

    The first part has each chart's place, and says in "later" whether there is a second, which there is unless values were
    refused.
    """
    outcome = _outcome(json.loads(request))
    html = outcome_html(outcome, drawn=False) if outcome.ok else ""
    yield json.dumps({**_numbers(outcome), "html": html, "later": outcome.ok})
    if outcome.ok:
        yield json.dumps({"figures": list(figures_html(outcome)), "text": outcome.text})


def _outcome(asked: dict[str, Any]) -> Outcome:
    return run(asked["slug"], {str(key): str(text) for key, text in asked["texts"].items()})


def response_of(outcome: Outcome) -> dict[str, Any]:
    """What the page gets of an outcome: its HTML and text, its numbers, and what it has for other calculators."""
    return {**_numbers(outcome), "html": outcome.html, "text": outcome.text}


def _numbers(outcome: Outcome) -> dict[str, Any]:
    return {
        "ok": outcome.ok,
        "slug": outcome.slug,
        "version": outcome.version,
        "headline": outcome.headline,
        "stop": any(one.level == "stop" for one in outcome.cautions),
        "cautions": [{"level": one.level, "text": one.text} for one in outcome.cautions],
        "errors": [{"key": one.key, "message": one.message} for one in outcome.errors],
        "query": outcome.query,
        "long": list(outcome.long),
        "answers": {
            key: {"value": one.value, "low": one.low, "high": one.high, "unit": one.unit, "text": one.text}
            for key, one in dict(outcome.answers).items()
        },
        "gifts": [
            {**asdict(one), "words": MEANINGS[one.meaning].words, "with": list(MEANINGS[one.meaning].with_)}
            for one in outcome.gifts
        ],
    }
