"""Several calculations of one job, run in the order in which they need each other, each taking what an earlier one gave."""

from __future__ import annotations

import json
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any

from calculators.kit import find
from calculators.kit.calculator import Calculator
from calculators.kit.fields import Asked
from calculators.kit.handover import MEANINGS, Gift
from calculators.kit.run import Outcome, run


@dataclass(frozen=True, slots=True)
class Entry:
    """One calculation of a job. name: unique in it. take: key of a field -> name of the entry whose gift it takes."""

    name: str
    slug: str
    texts: Mapping[str, str]
    take: Mapping[str, str] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class Taken:
    """A field that another entry filled: its key, from which entry, and what was handed over."""

    key: str
    source: str
    gift: Gift


@dataclass(frozen=True, slots=True)
class Done:
    """An entry that was run. problem: why it could not take what it should; the outcome then uses the entry's own text."""

    entry: Entry
    outcome: Outcome
    taken: tuple[Taken, ...] = ()
    problems: tuple[str, ...] = ()

    @property
    def texts(self) -> dict[str, str]:
        """The texts that were run, those taken included."""
        return _filled(find.load(self.entry.slug), self.entry.texts, self.taken)


class JobError(Exception):
    """A job that cannot be run; the message is the sentence."""


def run_job(entries: Sequence[Entry]) -> tuple[Done, ...]:
    """Run a whole job. Returns the entries in the order given, whatever the order they had to be run in.

    Raises JobError for a calculator that is not there, a name used twice, or entries that wait for each other.
    """
    by_name: dict[str, Entry] = {}
    for entry in entries:
        if entry.slug not in find.slugs():
            raise JobError(f"There is no calculator {entry.slug}.")
        if entry.name in by_name:
            raise JobError(f"Two entries are named {entry.name}.")
        by_name[entry.name] = entry
    done: dict[str, Done] = {}
    waiting = list(entries)
    while waiting:
        ready = [
            one
            for one in waiting
            if not any(name in by_name and name not in done for name in one.take.values())
        ]
        if not ready:
            raise JobError(f"These wait for each other: {', '.join(one.name for one in waiting)}.")
        for entry in ready:
            done[entry.name] = run_entry(entry, done)
            waiting.remove(entry)
    return tuple(done[entry.name] for entry in entries)


def run_entry(entry: Entry, done: Mapping[str, Done]) -> Done:
    """Run one entry with what it takes from those that were run. done: by name, all that it takes from among them."""
    calculator = find.load(entry.slug)
    fields = {one.key: one for one in calculator.fields}
    taken, problems = [], []
    for key, source in entry.take.items():
        one = fields.get(key)
        if one is None or not one.field.meaning:
            problems.append(f"{entry.name} has no field {key} that takes anything.")
        elif source not in done:
            problems.append(
                f"{entry.name} takes {one.field.label.lower()} from {source}, which is not in this job."
            )
        elif not done[source].outcome.ok:
            problems.append(
                f"{entry.name} takes {one.field.label.lower()} from {source}, which has no answer."
            )
        elif gift := _gift(done[source].outcome, one.field.meaning):
            taken.append(Taken(key, source, gift))
        else:
            words = MEANINGS[one.field.meaning].words
            problems.append(f"{source} gives no {words}, which {entry.name} was to take.")
    made = Done(entry, Outcome(False, entry.slug, calculator.version), tuple(taken), tuple(problems))
    return Done(entry, run(entry.slug, made.texts), made.taken, made.problems)


def _gift(outcome: Outcome, meaning: str) -> Gift | None:
    return next((one for one in outcome.gifts if one.meaning == meaning), None)


def _filled(calculator: Calculator, texts: Mapping[str, str], taken: Sequence[Taken]) -> dict[str, str]:
    """The texts with what was taken put in, and with the choices that make each of these fields one that is asked."""
    fields = {one.key: one for one in calculator.fields}
    filled = dict(texts)
    for one in taken:
        filled[one.key] = one.gift.text
        filled.pop(f"{one.key}-unit", None)
    for one in taken:
        _open(fields, fields[one.key], filled)
    return filled


def _open(fields: Mapping[str, Asked], one: Asked, filled: dict[str, str]) -> None:
    when = one.field.when
    if when is None:
        return
    if filled.get(when.key, fields[when.key].field.default) not in when.values:
        filled[when.key] = when.values[0]
    _open(fields, fields[when.key], filled)


def offers(calculator: Calculator, done: Sequence[Done]) -> dict[str, str]:
    """Key of each field that something in the job can fill -> the name of the entry to take it from.

    An answer outranks what was only entered, and a later entry an earlier one. What says nothing alone is offered only
    from an entry that has the rest of it.
    """
    found: dict[str, str] = {}
    for one in calculator.fields:
        meaning = one.field.meaning
        ranked = [
            (gift.origin == "answer", place, each.entry.name)
            for place, each in enumerate(done)
            for gift in each.outcome.gifts
            if gift.meaning == meaning and _complete(each.outcome, meaning)
        ]
        if meaning and ranked:
            found[one.key] = max(ranked)[2]
    return found


def _complete(outcome: Outcome, meaning: str) -> bool:
    have = {gift.meaning for gift in outcome.gifts}
    return all(other in have for other in MEANINGS[meaning].with_)


def job_json(request: str) -> str:
    """The worker's door for a whole job: {"job": [{"name", "slug", "texts", "take"}]} in, its outcomes out."""
    from calculators.kit.browser import response_of

    asked: dict[str, Any] = json.loads(request)
    try:
        entries = [
            Entry(one["name"], one["slug"], _texts(one["texts"]), _texts(one.get("take", {})))
            for one in asked["job"]
        ]
        done = run_job(entries)
    except JobError as error:
        return json.dumps({"ok": False, "message": str(error), "job": []})
    return json.dumps(
        {
            "ok": True,
            "message": "",
            "job": [
                {
                    "name": one.entry.name,
                    "texts": one.texts,
                    "take": {each.key: each.source for each in one.taken},
                    "taken": {
                        each.key: {"text": each.gift.text, "shown": each.gift.shown} for each in one.taken
                    },
                    "problems": list(one.problems),
                    "response": response_of(one.outcome),
                }
                for one in done
            ],
        }
    )


def _texts(texts: Mapping[str, Any]) -> dict[str, str]:
    return {str(key): str(text) for key, text in texts.items()}
