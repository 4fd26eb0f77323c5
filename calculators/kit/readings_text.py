"""A list of readings as people type it, and as a gauge's file holds it: which of its numbers are the readings.

A file is told from a list by a heading that names its readings, or by a first column that counts 1, 2, 3. Everything else is
a list of numbers, and what is not a number in it is left for the reader of numbers to refuse.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from calculators.kit.grammar import tidy, unit_named

_NAMES = {"reading", "value", "measurement", "result", "thickness", "dft", "film", "peak", "velocity"}
_COUNTS = {"no", "no.", "nr", "number", "#", "id", "index", "count"}
_SEVERAL = re.compile(r"(?:r|reading|value|measurement) ?\d{1,2}", re.IGNORECASE)
_SUMMARY = re.compile(
    r"(mean|average|avg|st\.?d|std|sd|s\.d|max|min|high|low|count|total|range|n$|cv|cov)", re.IGNORECASE
)
_HEAD_UNIT = re.compile(r"[(\[]([^()\[\]]+)[)\]]")
_LONGEST_HEAD = 40  # lines of a file before its readings
_NUMBER = re.compile(r"[+-]?[.,]?\d")
_POINTS = re.compile(r"[+-]?\d*\.\d+(?:,[+-]?\d*\.\d+)+")


def readings_of(text: str, units: tuple[str, ...], label: str) -> tuple[list[str], list[str]]:
    """The numbers with their units, in order, and notes on how a file was taken.

    text: as typed, pasted or read from a file. units: slugs that the field accepts. label: the field's own name, which a
    column may bear.
    """
    lines = [line for line in text[:400_000].lstrip("\ufeff").splitlines() if line.strip(" \t,;\ufeff")]
    if len(lines) > 1:
        taken = _by_heading(lines, units, label) or _by_count(lines)
        if taken:
            return taken
    return list(_words(lines, units)), []


def _cells(line: str) -> list[str]:
    separator = "\t" if "\t" in line else ";" if ";" in line else ","
    cells = [cell.strip().strip('"').strip() for cell in line.split(separator)]
    return cells if separator == "," else [re.sub(r"(\d),(\d)", r"\1.\2", cell) for cell in cells]


def _heading(cell: str) -> tuple[str, str]:
    found = _HEAD_UNIT.search(cell)
    return tidy(_HEAD_UNIT.sub(" ", cell)).casefold().strip(" ._-:"), found.group(1).strip() if found else ""


def _names_readings(name: str, label: str) -> bool:
    words = name.split()
    if not words or any(word in _COUNTS for word in words):
        return False
    return name == label.casefold() or any(
        word in _NAMES or word.removesuffix("s") in _NAMES for word in words
    )


def _by_heading(lines: list[str], units: tuple[str, ...], label: str) -> tuple[list[str], list[str]] | None:
    for place, line in enumerate(lines[:_LONGEST_HEAD]):
        heads = [_heading(cell) for cell in _cells(line)]
        several = [at for at, (name, _) in enumerate(heads) if _SEVERAL.fullmatch(name)]
        columns = several or [at for at, (name, _) in enumerate(heads) if _names_readings(name, label)][:1]
        if columns and not any(_NUMBER.match(cell) for cell in _cells(line)) and place + 1 < len(lines):
            return _column(lines[place + 1 :], heads, columns, units)
    return None


def _column(
    lines: list[str], heads: list[tuple[str, str]], columns: list[int], units: tuple[str, ...]
) -> tuple[list[str], list[str]]:
    own_unit = next((at for at, (name, _) in enumerate(heads) if name in ("unit", "units")), -1)
    words, left_out = [], 0
    for line in lines:
        cells = _cells(line)
        if cells[0] and not _NUMBER.match(cells[0]) and _SUMMARY.match(cells[0]):
            left_out += 1
            continue
        for at in columns:
            cell = cells[at] if at < len(cells) else ""
            unit = heads[at][1] or (cells[own_unit] if 0 <= own_unit < len(cells) else "")
            if cell:
                words.append(f"{cell} {unit}" if _is_bare(cell) and unit_named(unit, units) else cell)
    names = ", ".join(f"“{heads[at][0][:30]}”" for at in columns)
    notes = [
        f"Readings were taken from the column {names}."
        if len(columns) == 1
        else f"Readings were taken from {names}."
    ]
    if left_out:
        notes.append(f"{left_out} summary {'line was' if left_out == 1 else 'lines were'} left out.")
    return words, notes


def _is_bare(cell: str) -> bool:
    return re.fullmatch(r"[+-]?(?:\d+(?:\.\d+)?|\.\d+)", cell) is not None


def _by_count(lines: list[str]) -> tuple[list[str], list[str]] | None:
    rows = [_cells(line) for line in lines]
    width = len(rows[0])
    if len(rows) < 3 or width < 2 or any(len(row) != width for row in rows):
        return None
    if [row[0] for row in rows] != [str(count) for count in range(1, len(rows) + 1)]:
        return None
    if not all(_NUMBER.match(cell) for row in rows for cell in row):
        return None
    return [cell for row in rows for cell in row[1:]], ["The first column counts 1, 2, 3 and was left out."]


def _words(lines: list[str], units: tuple[str, ...]) -> Iterator[str]:
    """The numbers of a list with their units: `2.1, 2.4 mil` is two words. A comma without a space is a decimal comma, but
    for one between numbers that have a point already: `2.1,2.4` is two words as well.
    """
    text = "\n".join(lines)[:200_000]
    for line in text.replace("\t", "\n").replace(";", "\n").replace(", ", "\n").splitlines():
        held = ""
        # word by word: the gap that 1½ gets when it is tidied does not part it
        for word in filter(None, map(tidy, line.strip().strip(",，").split())):
            if held and unit_named(word, units) and not unit_named(held.split()[-1], units):
                held = f"{held} {word}"
                continue
            if held:
                yield held
            *before, held = word.split(",") if _POINTS.fullmatch(word) else [word]
            yield from before
        if held:
            yield held
