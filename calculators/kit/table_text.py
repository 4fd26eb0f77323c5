"""A table as people and instruments write it: pasted lines, a spreadsheet's text, a data logger's file.

Columns are split by tab or semicolon if the line has one, else by comma. A comma never groups thousands here, and is a
decimal comma only beside a tab or semicolon. A file's own headings say which column is which and in what unit.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from datetime import date

from calculators.kit.fields import Asked, Quantity, Rows
from calculators.kit.grammar import tidy, unit_named
from calculators.kit.units import UNITS

_TIME_NAMES = {
    "time",
    "elapsed",
    "elapsed time",
    "t",
    "timestamp",
    "date time",
    "datetime",
    "date/time",
    "clock",
    "time stamp",
}
_SKIP_NAMES = {
    "no",
    "no.",
    "nr",
    "#",
    "index",
    "sample",
    "record",
    "row",
    "point",
    "status",
    "alarm",
    "event",
    "events",
    "battery",
}
_AIR_WORDS = ("air", "ambient", "oven", "setpoint", "set point", "humidity", "rh")
_HEAD_UNIT = re.compile(r"[(\[]([^()\[\]]+)[)\]]|[/,_]([^/,_]+)$")
_CLOCK = re.compile(r"(\d{1,3}):(\d{2})(?::(\d{2}(?:[.,]\d+)?))?\s*([ap]\.?m\.?)?", re.IGNORECASE)
_ISO_DATE = re.compile(r"(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})")
_LOCAL_DATE = re.compile(r"(\d{1,2})[-/.](\d{1,2})[-/.](\d{4})")
_STARTS_NUMBER = re.compile(r"\s*[+-]?[.,]?\d")
_DAY = 24 * 60.0
_MOST_COLUMNS = 200  # more than a logger has; each line gets a cell for each column of the headings
# the strongest first: a line that holds one is not split by those after it
SEPARATORS = ("\t", ";", ",")


class Unreadable(Exception):
    """The table cannot be read; the message is the sentence."""


@dataclass(slots=True)
class TableText:
    """Cells a line, in the order of the declared columns, with the number of each line in the text."""

    lines: list[tuple[int, list[str]]]
    units: dict[str, str] = field(default_factory=dict)
    notes: list[str] = field(default_factory=list)


def table_of(text: str, rows: Rows, columns: tuple[Asked, ...]) -> TableText:
    """Split a table's text into cells by the declared columns. Raises Unreadable."""
    lines = [
        (number, _cells(line, len(columns)))
        for number, line in enumerate(text.lstrip("\ufeff").splitlines()[: rows.at_most + 100], 1)
        if line.strip(" \t\r,;\ufeff")
    ]
    head = _heading_line(lines, rows, columns)
    if head is None:
        table = TableText(lines)
    else:
        table = _by_headings(lines[head][1], lines[head + 1 :], rows, columns)
    if rows.clock:
        _clock_to_minutes(table, columns)
    return table


def _cells(line: str, count: int) -> list[str]:
    separator = next((one for one in SEPARATORS if one in line), SEPARATORS[-1])
    cells = [
        cell.strip().strip('"').strip() if cell.count('"') != 1 else cell.strip()
        for cell in line.split(separator)
    ]
    if separator != ",":
        cells = [cell.replace(",", ".") if re.search(r"\d,\d", cell) else cell for cell in cells]
    words = line.split()
    if (
        len(cells) == 1
        and count > 1
        and len(words) >= count
        and all(_STARTS_NUMBER.match(word) for word in words)
    ):
        cells = words
    while len(cells) > count and not cells[-1]:
        cells.pop()
    return cells


def _heading_line(lines: list[tuple[int, list[str]]], rows: Rows, columns: tuple[Asked, ...]) -> int | None:
    """Which line holds the headings: for a log, the last line of words before the first line of numbers."""
    known = {name for column in columns for name in (column.key, tidy(column.field.label).casefold())}
    if not rows.clock:
        first = {cell.casefold() for cell in lines[0][1]} if lines else set()
        return 0 if first and first <= known else None
    for place, (_, cells) in enumerate(lines[:60]):
        if sum(bool(_STARTS_NUMBER.match(cell)) for cell in cells) >= 2 or (
            place == 0 and _STARTS_NUMBER.match(cells[0])
        ):
            return place - 1 if place and not _STARTS_NUMBER.match(lines[place - 1][1][0]) else None
    return None


def _head(cell: str) -> tuple[str, str]:
    found = _HEAD_UNIT.search(cell)
    unit = (found.group(1) or found.group(2)).strip() if found else ""
    return tidy(_HEAD_UNIT.sub("", cell)).casefold().strip(" ._-:"), unit


def _by_headings(
    headings: list[str], lines: list[tuple[int, list[str]]], rows: Rows, columns: tuple[Asked, ...]
) -> TableText:
    if len(headings) > _MOST_COLUMNS:
        raise Unreadable(
            f"The headings name {len(headings):,} columns, and more than {_MOST_COLUMNS} are not read"
        )
    table = TableText([])
    by_name = {
        name: column.key for column in columns for name in (column.key, tidy(column.field.label).casefold())
    }
    places: dict[str, list[tuple[int, str]]] = {column.key: [] for column in columns}
    dates: list[int] = []
    for place, cell in enumerate(headings):
        name, unit = _head(cell)
        if name in by_name:
            places[by_name[name]].append((place, unit))
        elif rows.clock and name == "date":
            dates.append(place)
        elif rows.clock and (
            name in _TIME_NAMES or name in ("minute", "minutes", "min", "second", "seconds", "s")
        ):
            places[rows.clock].append((place, unit or (name if unit_named(name, ("min", "s", "h")) else "")))
        elif name in _SKIP_NAMES or not name:
            continue
        elif (
            rows.repeats
            and any(re.search(rf"\b{word}\b", name) for word in _AIR_WORDS)
            and "metal" not in name
        ):
            table.notes.append(
                f"The column “{cell[:40]}” was left out: it reads as the oven's air or a setting, not as metal."
            )
        elif rows.repeats and _numeric(lines, place):
            places[rows.repeats].append((place, unit))
    if rows.clock and not places[rows.clock] and dates:
        places[rows.clock], dates = [(dates[0], "")], []
    for column in columns:
        if not places[column.key] and (column.key in (rows.clock, rows.repeats)):
            raise Unreadable(
                f"The headings name no column for the {column.field.label.lower()}: name it “{column.field.label}”"
            )
    for number, cells in lines:
        row: list[str] = []
        for column in columns:
            for place, unit in places[column.key] or [(-1, "")]:
                cell = cells[place] if 0 <= place < len(cells) else ""
                if column.key == rows.clock and dates and dates[0] < len(cells):
                    cell = f"{cells[dates[0]]} {cell}"
                row.append(_with_unit(cell, unit, column))
        table.lines.append((number, row))
    return table


def _numeric(lines: list[tuple[int, list[str]]], place: int) -> bool:
    return any(place < len(cells) and _STARTS_NUMBER.match(cells[place]) for _, cells in lines[:200])


def _with_unit(cell: str, unit: str, column: Asked) -> str:
    if (
        unit
        and isinstance(column.field, Quantity)
        and re.fullmatch(r"[+-]?[\d.]+(e[+-]?\d+)?", cell, re.IGNORECASE)
    ):
        slug = unit_named(unit, column.field.units)
        return f"{cell} {UNITS[slug].shown}" if slug else cell
    return cell


def _clock_to_minutes(table: TableText, columns: tuple[Asked, ...]) -> None:
    """Replace clock times by minutes from the first row. A day's end is passed where the clock falls by over 12 hours."""
    first: float | None = None
    last, days = 0.0, 0.0
    for place, (number, cells) in enumerate(table.lines):
        if not cells:
            continue
        if (
            re.fullmatch(rf"{_ISO_DATE.pattern}|{_LOCAL_DATE.pattern}", cells[0])
            and len(cells) > 1
            and ":" in cells[1]
        ):
            cells = [f"{cells[0]} {cells[1]}", *cells[2:]]
        minutes, dated = _clock_minutes(cells[0])
        if minutes is None:
            table.lines[place] = (number, cells)
            continue
        if not dated and minutes + days < last - _DAY / 2:
            days += _DAY
        minutes += days
        first = minutes if first is None else first
        last = minutes
        table.lines[place] = (number, [f"{minutes - first:.6f} min", *cells[1:]])
    if first is not None:
        table.notes.append("Clock times were read as minutes from the first line.")


def _clock_minutes(cell: str) -> tuple[float | None, bool]:
    found = _CLOCK.search(cell)
    if not found:
        return None, False
    hours, minutes, seconds, half = found.groups()
    hour = int(hours)
    if half:
        hour = hour % 12 + (12 if half[0].lower() == "p" else 0)
    total = hour * 60 + int(minutes) + float((seconds or "0").replace(",", ".")) / 60
    before = cell[: found.start()]
    iso, local = _ISO_DATE.search(before), _LOCAL_DATE.search(before)
    try:
        if iso:
            return total + _DAY * date(*map(int, iso.groups())).toordinal(), True
        if local:
            month, day, year = map(int, local.groups())
            month, day = (day, month) if month > 12 else (month, day)
            return total + _DAY * date(year, month, day).toordinal(), True
    except ValueError:
        return None, False
    return (None, False) if before.strip(" T") else (total, False)
