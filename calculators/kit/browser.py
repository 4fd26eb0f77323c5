"""The worker's door: one JSON string in, one out."""

from __future__ import annotations

import json
from dataclasses import asdict
from typing import Any

from calculators.kit.handover import MEANINGS
from calculators.kit.run import Outcome, run


def run_json(request: str) -> str:
    """Run one request of the page: {"slug", "texts"}, or {"job"} for a whole job."""
    asked = json.loads(request)
    if "job" in asked:
        from calculators.kit.job import job_json

        return job_json(request)
    texts = {str(key): str(text) for key, text in asked["texts"].items()}
    return json.dumps(response_of(run(asked["slug"], texts)))


def response_of(outcome: Outcome) -> dict[str, Any]:
    """What the page gets of an outcome: its HTML and text, its numbers, and what it has for other calculators."""
    return {
        "ok": outcome.ok,
        "slug": outcome.slug,
        "version": outcome.version,
        "headline": outcome.headline,
        "html": outcome.html,
        "stop": any(one.level == "stop" for one in outcome.cautions),
        "cautions": [{"level": one.level, "text": one.text} for one in outcome.cautions],
        "errors": [{"key": one.key, "message": one.message} for one in outcome.errors],
        "query": outcome.query,
        "long": list(outcome.long),
        "text": outcome.text,
        "answers": {
            key: {"value": one.value, "low": one.low, "high": one.high, "unit": one.unit, "text": one.text}
            for key, one in dict(outcome.answers).items()
        },
        "gifts": [
            {**asdict(one), "words": MEANINGS[one.meaning].words, "with": list(MEANINGS[one.meaning].with_)}
            for one in outcome.gifts
        ],
    }
