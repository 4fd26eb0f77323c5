"""Record what each calculator says of its example: `python -m tests.contract.record`.

New calculators are added, and those whose version went up are written anew. An outcome that changed under the same version
is left as it is, and named: raise the calculator's version, or mend the change.
"""

from __future__ import annotations

import json
import sys
from pathlib import Path
from typing import Any

from calculators import run, slugs

FILE = Path(__file__).with_name("default_outcomes.json")


def outcome_of(slug: str) -> dict[str, Any]:
    """What stays the same as long as the version does."""
    shown = run(slug, {}).to_json()
    return {
        "version": shown["version"],
        "headline": shown["headline"],
        "answers": {key: one["text"] for key, one in shown["answers"].items()},
        "cautions": [[one["level"], one["key"]] for one in shown["cautions"]],
    }


def recorded() -> dict[str, Any]:
    found: dict[str, Any] = json.loads(FILE.read_text(encoding="utf-8")) if FILE.is_file() else {}
    return found


def main() -> int:
    old, new, held = recorded(), {}, []
    for slug in slugs():
        new[slug] = outcome_of(slug)
        if slug in old and old[slug]["version"] == new[slug]["version"] and old[slug] != new[slug]:
            held.append(slug)
            new[slug] = old[slug]
    FILE.write_text(json.dumps(new, indent=1, ensure_ascii=False) + "\n", encoding="utf-8")
    for slug in held:
        print(
            f"{slug}: its example's outcome changed under version {old[slug]['version']}. Raise the version."
        )
    return 1 if held else 0


if __name__ == "__main__":
    sys.exit(main())
