"""Many jobs from one file: a row of inputs in, the same row with its answers out."""

from __future__ import annotations

import csv
import io
from collections.abc import Mapping
from difflib import get_close_matches
from pathlib import Path
from typing import TextIO

from calculators.kit import find
from calculators.kit.cli import Misused, decoded
from calculators.kit.grammar import printable
from calculators.kit.run import run


def batch(slug: str, path: str, common: Mapping[str, str], out: TextIO) -> int:
    """Answer every row of a file whose headings are keys. Errors stand in their own column.

    common: texts by key that hold for every row. Returns 0 if every row was answered, else 2. Raises Misused for a file
    that cannot be read or a heading that is not a key.
    """
    try:
        text = decoded(Path(path).read_bytes())
    except OSError as error:
        raise Misused(f"The file {path} could not be read: {error.strerror}") from None
    heads, *rows = _rows(text, path) or [[]]
    headings = [cell.strip().lower().replace(" ", "-").replace("_", "-") for cell in heads]
    calculator = find.load(slug)
    keys = [one.key for one in calculator.fields]
    known = [*keys, *(f"{key}-unit" for key in keys)]
    # a column that no field has (a job's name) is carried along, unless it looks like a misspelt key
    for heading in headings:
        near = get_close_matches(heading, known, 1, 0.8)
        if heading not in known and near:
            raise Misused(f"The column {heading} is not known. The nearest is {near[0]}.")
    if not set(headings) & set(known):
        raise Misused(f"No column of {path} is a key of {slug}. The keys are: {', '.join(keys)}")
    # a file keeps what it carries along, a terminal is not to obey it
    shown = printable if out.isatty() else str
    writer = csv.writer(out, lineterminator="\n")
    answers = []
    for answer in calculator.answers:
        answers += (
            [answer.key, f"{answer.key}-low", f"{answer.key}-high", f"{answer.key}-text"]
            if not answer.options
            else [answer.key]
        )
    writer.writerow([*map(shown, headings), *(f"answer:{name}" for name in answers), "cautions", "errors"])
    refused = 0
    for cells in rows:
        if not any(cell.strip() for cell in cells):
            continue
        texts = dict(common) | {
            key: cell for key, cell in zip(headings, cells, strict=False) if key in known and cell.strip()
        }
        outcome = run(slug, texts)
        refused += not outcome.ok
        given = outcome.to_json()["answers"]
        values = []
        for answer in calculator.answers:
            one = given.get(answer.key, {})
            value = one.get("value", "")
            value = "; ".join(value) if isinstance(value, list) else value
            values += (
                [value]
                if answer.options
                else [value, one.get("low", ""), one.get("high", ""), one.get("text", "")]
            )
        writer.writerow(
            [
                *map(shown, (cells + [""] * len(headings))[: len(headings)]),
                *("" if value is None else value for value in values),
                " | ".join(one.text for one in outcome.cautions),
                " | ".join(one.message for one in outcome.errors),
            ]
        )
    return 2 if refused else 0


def _rows(text: str, path: str) -> list[list[str]]:
    first = text.splitlines()[0] if text.strip() else ""
    separator = "\t" if "\t" in first else ";" if ";" in first else ","
    rows = csv.reader(io.StringIO(text, newline=None), delimiter=separator)
    try:
        return list(rows)
    except csv.Error:  # of a file read so, its one complaint
        longest = csv.field_size_limit()
        raise Misused(
            f"The file {path} could not be read: line {rows.line_num} has a cell of more than {longest:,} characters"
        ) from None
