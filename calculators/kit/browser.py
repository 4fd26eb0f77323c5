"""The worker's door: one JSON string in, one out."""

from __future__ import annotations

import json

from calculators.kit.run import run


def run_json(request: str) -> str:
    """Run one request of the page: {"slug", "texts"}. The answer holds what the page shows, as HTML and text."""
    asked = json.loads(request)
    texts = {str(key): str(text) for key, text in asked["texts"].items()}
    outcome = run(asked["slug"], texts)
    return json.dumps(
        {
            "ok": outcome.ok,
            "slug": outcome.slug,
            "version": outcome.version,
            "headline": outcome.headline,
            "html": outcome.html,
            "stop": any(one.level == "stop" for one in outcome.cautions),
            "errors": [{"key": one.key, "message": one.message} for one in outcome.errors],
            "query": outcome.query,
            "long": list(outcome.long),
            "text": outcome.text,
        }
    )
