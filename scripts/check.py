"""Run the project's checks.

    python3 scripts/check.py               every check
    python3 scripts/check.py --only fast   lint, types and unit tests, for daily use
    python3 scripts/check.py --only js     one group and what it stands on

The first run makes the environment in .venv. Every chosen group runs, even after one has failed.
"""

from __future__ import annotations

import argparse
import sys
import time
from collections.abc import Sequence

import environment
from check_groups import GROUPS, SETS, Failed, Group, Skipped, chosen


def arguments(words: Sequence[str] | None = None) -> argparse.Namespace:
    names = [*SETS, *(group.name for group in GROUPS)]
    held = "\n".join(f"  {group.name:8} {group.what}" for group in GROUPS)
    parser = argparse.ArgumentParser(
        description="Run the project's checks.",
        formatter_class=argparse.RawDescriptionHelpFormatter,
        epilog=f"groups:\n{held}\n  {'fast':8} {', '.join(SETS['fast'])}",
    )
    parser.add_argument(
        "--only", nargs="+", default=[], choices=names, metavar="GROUP", help="run these groups only"
    )
    return parser.parse_args(words)


def outcome_of(group: Group, failed: set[str]) -> tuple[str, str]:
    """Run one group: passed, failed or skipped, and a few words why."""
    stands_on = [name for name in group.needs if name in failed]
    if stands_on:
        return "failed", f"not run, because {stands_on[0]} failed"
    try:
        return "passed", group.work() or ""
    except Failed as problem:
        return "failed", str(problem)
    except Skipped as reason:
        return "skipped", str(reason)


def main() -> int:
    only = arguments().only
    environment.ensure("checks")
    outcomes: dict[str, str] = {}
    lines = []
    for group in chosen(only):
        print(f"\n== {group.name}: {group.what}", flush=True)
        started = time.monotonic()
        failed = {name for name, outcome in outcomes.items() if outcome == "failed"}
        outcome, why = outcome_of(group, failed)
        outcomes[group.name] = outcome
        line = f"{group.name:8} {outcome:8} {time.monotonic() - started:6.1f} s  {why}".rstrip()
        print(line, flush=True)
        lines.append(line)
    print("\n== all groups", *lines, sep="\n")
    passed, failed_count, skipped = (
        list(outcomes.values()).count(word) for word in ("passed", "failed", "skipped")
    )
    print(f"groups: {passed} passed, {failed_count} failed" + (f", {skipped} skipped" if skipped else ""))
    return 1 if failed_count else 0


if __name__ == "__main__":
    try:
        sys.exit(main())
    except KeyboardInterrupt:
        sys.exit("\nStopped.")
