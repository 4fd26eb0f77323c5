"""A job as a file: a name, and a step for each calculation, in the order of the work.

    name = "Four park benches"

    [[step]]
    calculator = "part-size"
    pieces = ["plate, 24, 16, 5/8, , , 2, no"]

    [[step]]
    calculator = "powder-needed"
    take = ["area"]
    film = "2.5 mil"

A value is text as it is typed into the form, a number, or a list of lines. `take` names the fields that an earlier step
fills, `take = "all"` every field that one can. What is neither given nor taken comes from the calculator's example.
"""

from __future__ import annotations

import re
import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from calculators.kit import find
from calculators.kit.calculator import Calculator
from calculators.kit.grammar import printable
from calculators.kit.handover import MEANINGS
from calculators.kit.job import Done, Entry, JobError, offers, run_entry

OWN_KEYS = ("calculator", "name", "take", "note")
# Far more than any job has; a file that holds more was not written as one.
LONGEST = 4_000_000
MOST_STEPS = 100
# The reader of TOML takes minutes over a name of tens of thousands of parts, and long over many names of fewer. A job's
# names have one part, and a number two. What stands in a text or in a comment is no name, so all before is passed over whole.
_PART = r"""(?:[\w-]++|"(?:[^"\\\n]++|\\.)*+"|'[^'\n]*+')"""
_NEXT_PART = rf"[ \t]*+\.[ \t]*+{_PART}"
_LONG_TEXT = r"""\"{3}(?:[^"\\]++|\\[\s\S]|"(?!""))*+(?:"{3,5}|\Z)|'{3}(?:[^']++|'(?!''))*+(?:'{3,5}|\Z)"""
_MOST_PARTS = 10
MANY_PARTS = re.compile(
    rf"(?:{_LONG_TEXT}|\#[^\n]*+|{_PART}(?:{_NEXT_PART}){{0,{_MOST_PARTS - 1}}}+(?!{_NEXT_PART})|[^\w\"'\#-]++)*+"
    rf"{_PART}(?:{_NEXT_PART}){{{_MOST_PARTS}}}"
)


@dataclass(frozen=True, slots=True)
class Job:
    """A job that was read and run. notes: by the name of a step."""

    name: str
    done: tuple[Done, ...]
    notes: Mapping[str, str]


def read_job(text: str) -> Job:
    """Read a job's file and run it. Raises JobError with a sentence that says which step is wrong."""
    if len(text) > LONGEST:
        raise JobError("The job's file is longer than any job.")
    if MANY_PARTS.match(text):
        raise JobError("The job's file cannot be read: a name in it has too many parts.")
    try:
        table = tomllib.loads(text)
    except (ValueError, RecursionError) as error:  # a number of thousands of digits is a ValueError alone
        why = "it is nested too deep" if isinstance(error, RecursionError) else _short(str(error), 200)
        raise JobError(f"The job's file cannot be read: {why}.") from None
    steps = table.get("step")
    if not isinstance(steps, list) or not steps or not all(isinstance(one, dict) for one in steps):
        raise JobError("The job's file holds no [[step]].")
    if len(steps) > MOST_STEPS:
        raise JobError(f"The job's file holds {len(steps)} steps; more than {MOST_STEPS} are not read.")
    done: dict[str, Done] = {}
    notes: dict[str, str] = {}
    for number, step in enumerate(steps, 1):
        entry = _entry(step, number, done)
        if "note" in step:
            notes[entry.name] = _text(step["note"])
        done[entry.name] = run_entry(entry, done)
    return Job(_text(table.get("name", "A job without a name")), tuple(done.values()), notes)


def _entry(step: Mapping[str, Any], number: int, done: Mapping[str, Done]) -> Entry:
    slug = _text(step.get("calculator", ""))
    if not slug:
        raise JobError(f"Step {number} names no calculator.")
    if slug not in find.slugs():
        raise JobError(f"Step {number}: there is no calculator {_short(slug)}.")
    calculator = find.load(slug)
    known = {one.key for one in calculator.fields}
    unknown = [key for key in step if key not in OWN_KEYS and key.removesuffix("-unit") not in known]
    if unknown:
        raise JobError(f"Step {number}, {slug}: it does not ask for {_short(', '.join(unknown), 200)}.")
    name = _text(step.get("name", slug))
    if name in done:
        raise JobError(f"Step {number}: {_short(name)} is there already. Give this one a name of its own.")
    possible = offers(calculator, tuple(done.values()))
    keys = _wanted(step.get("take", []), possible, calculator, f"Step {number}, {slug}")
    texts = {key: _text(value) for key, value in step.items() if key not in OWN_KEYS}
    return Entry(name, slug, texts, {key: possible[key] for key in keys if key not in texts})


def _wanted(take: Any, possible: Mapping[str, str], calculator: Calculator, where: str) -> list[str]:
    """Keys of the fields that a step takes, and of those without which they say nothing."""
    if take == "all":
        return list(possible)
    keys = [take] if isinstance(take, str) else take
    if not isinstance(keys, list) or not all(isinstance(key, str) for key in keys):
        raise JobError(f'{where}: write take = ["area"], with the fields that it takes, or take = "all".')
    meanings = {one.key: one.field.meaning for one in calculator.fields}
    for key in keys:
        if key not in meanings:
            raise JobError(f"{where}: it has no field {_short(key)} that could be taken.")
        if key not in possible:
            words = MEANINGS[meanings[key]].words if meanings[key] else key
            raise JobError(f"{where}: no earlier step gives the {words}.")
    rest = {other for key in keys for other in MEANINGS[meanings[key]].with_}
    return [*keys, *(key for key in possible if meanings[key] in rest and key not in keys)]


def _short(text: str, longest: int = 60) -> str:
    return text if len(text) <= longest else f"{text[: longest - 1]}…"


def _text(value: Any) -> str:
    if isinstance(value, int) and abs(value) >= 10**300:
        return "1e300"  # no field takes as much, and its digits cannot all be written
    if isinstance(value, list):
        return "\n".join(map(_text, value))
    return {True: "yes", False: "no"}[value] if isinstance(value, bool) else str(value)


def job_text(job: Job) -> str:
    """The job as a terminal shows it."""
    from calculators.kit.text import wrapped

    name = " ".join(printable(job.name).split())
    lines = [name, "=" * len(name)]
    for one in job.done:
        calculator, outcome = find.load(one.entry.slug), one.outcome
        lines += ["", f"{calculator.title}: {outcome.headline if outcome.ok else 'no answer'}"]
        for taken in one.taken:
            words = MEANINGS[taken.gift.meaning].words
            lines += wrapped(f"    from {taken.source}: {words} {taken.gift.shown}", 6)
        for problem in (*one.problems, *(error.message for error in outcome.errors)):
            lines += wrapped(f"    Not done: {problem}", 6)
        for caution in outcome.cautions:
            if caution.level == "stop":
                lines += wrapped(f"    Stop. {caution.text}", 6)
        if one.entry.name in job.notes:
            lines += wrapped(f"    Note: {job.notes[one.entry.name]}", 6)
    return "\n".join(lines)


def job_outcomes(job: Job) -> dict[str, Any]:
    """The job as --json prints it."""
    return {
        "ok": all(one.outcome.ok and not one.problems for one in job.done),
        "name": job.name,
        "steps": [
            {
                "name": one.entry.name,
                "taken": {each.key: {"from": each.source, "text": each.gift.text} for each in one.taken},
                "problems": list(one.problems),
                "note": job.notes.get(one.entry.name, ""),
                **one.outcome.to_json(),
            }
            for one in job.done
        ],
    }


def job_command(words: list[str]) -> tuple[str, bool]:
    """`job FILE.toml [--json]`: what to print, and whether every step has an answer. Raises JobError."""
    files = [word for word in words if not word.startswith("-")]
    switches = [word for word in words if word.startswith("-")]
    if len(files) != 1 or switches not in ([], ["--json"]):
        raise JobError("Write: python -m calculators job FILE.toml [--json]")
    try:
        text = Path(files[0]).read_text("utf-8")
    except (OSError, UnicodeDecodeError) as error:
        reason = error.strerror if isinstance(error, OSError) else "it is not text in UTF-8"
        raise JobError(f"The file {files[0]} could not be read: {reason}.") from None
    from calculators.kit.text import json_text

    job = read_job(text)
    outcomes = job_outcomes(job)
    shown = json_text(outcomes) if switches else job_text(job)
    return shown, bool(outcomes["ok"])
