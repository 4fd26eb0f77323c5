"""The command line: the same door as the page, with words for arguments."""

from __future__ import annotations

import json
import os
import sys
from difflib import get_close_matches
from pathlib import Path
from typing import TextIO

from calculators.kit import find
from calculators.kit.calculator import Calculator
from calculators.kit.fields import Readings, Rows
from calculators.kit.grammar import printable

USAGE = """python -m calculators                            every calculator, by stage
python -m calculators NAME --help                what it asks, with units, limits and examples
python -m calculators NAME --KEY VALUE ...       an answer; what is left out comes from the example
    --steps     show the working        --json    for another program
    --link      the page's address      --csv FILE    one answer row for each row of the file
    --KEY-unit UNIT    the unit of a bare number      --KEY @FILE    a table from a file
python -m calculators job FILE.toml [--json]     every step of a job, each going on with what an earlier one gave
python -m calculators --json                     the catalogue      --version    the version"""

SWITCHES = ("steps", "json", "link", "help")


class Misused(Exception):
    """The words of the command do not fit; the message is the sentence."""


def main(words: list[str]) -> int:
    """Run one command. Returns 0 for an answer, 2 for words or values that were refused."""
    for stream in (sys.stdout, sys.stderr):
        if hasattr(stream, "reconfigure"):
            stream.reconfigure(encoding="utf-8", errors="backslashreplace")
    try:
        return _command(words)
    except Misused as misused:
        _say(str(misused), sys.stderr)
        return 2
    except BrokenPipeError:
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return 0


def _say(text: str, stream: TextIO | None = None) -> None:
    """Print what may hold words of a file or of the command: shown, never obeyed by the terminal."""
    print(printable(text.encode(errors="backslashreplace").decode()), file=stream or sys.stdout)


def _command(words: list[str]) -> int:
    if not words:
        from calculators.kit.cli_help import listing

        print(listing())
        return 0
    first, *rest = words
    if first in ("--help", "-h"):
        print(USAGE)
    elif first == "--version":
        print(version())
    elif first == "--json" and not rest:
        from calculators.kit.cli_help import catalogue

        print(json.dumps(catalogue(), indent=2))
    elif first == "job":
        from calculators.kit.job import JobError
        from calculators.kit.job_file import job_command

        try:
            shown, answered = job_command(rest)
        except JobError as error:
            raise Misused(str(error)) from None
        _say(shown)
        return 0 if answered else 2
    elif first.startswith("-"):
        raise Misused(f"{first} is not known here.\n{USAGE}")
    else:
        return _calculator(first, rest)
    return 0


def version() -> str:
    """The project's version, as the change log has it."""
    return "0.1.0"


def _calculator(slug: str, words: list[str]) -> int:
    if slug not in find.slugs():
        raise Misused(f"There is no calculator {slug}.{_nearest(slug, find.slugs())}")
    calculator = find.load(slug)
    texts, switches, csv = _parse(calculator, words)
    if "help" in switches:
        from calculators.kit.cli_help import help_of

        print(help_of(slug))
        return 0
    if csv:
        from calculators.kit.cli_batch import batch

        return batch(slug, csv, texts, sys.stdout)
    from calculators.kit.run import run
    from calculators.kit.text import json_text, outcome_text

    outcome = run(slug, texts)
    if "json" in switches:
        _say(json_text(outcome.to_json()))
    elif not outcome.ok:
        _say(outcome.text, sys.stderr)
    elif "link" in switches:
        print(f"{os.environ.get('SITE_URL', '/').rstrip('/')}/{find.stage(slug)}/{slug}/?{outcome.query}")
        if outcome.long:
            print(f"Too long for a link, left out: {', '.join(outcome.long)}", file=sys.stderr)
    else:
        _say(outcome_text(outcome, steps="steps" in switches))
    return 0 if outcome.ok else 2


def _nearest(word: str, known: tuple[str, ...] | list[str]) -> str:
    near = get_close_matches(word, known, 1, 0.5)
    return f" The nearest is {near[0]}." if near else ""


def _parse(calculator: Calculator, words: list[str]) -> tuple[dict[str, str], set[str], str]:
    """Texts by key, switches, and the batch file. Every option takes exactly the next word, whatever it starts with."""
    fields = {one.key: one.field for one in calculator.fields}
    known = [*fields, *(f"{key}-unit" for key in fields)]
    texts: dict[str, str] = {}
    switches: set[str] = set()
    csv = ""
    left = list(words)
    while left:
        word = left.pop(0)
        if word == "-h":
            word = "--help"
        if not word.startswith("--"):
            raise Misused(
                f"{word} stands alone. Write an option before it, like --{calculator.fields[0].key} {word}"
            )
        name, given, value = word[2:].partition("=")
        if name in SWITCHES and name not in fields and not given:
            switches.add(name)
            continue
        if name not in known and name != "csv":
            raise Misused(
                f"--{name} is not an option of this calculator.{_nearest(name, [*known, 'csv', *SWITCHES])}"
            )
        if not given:
            if not left:
                raise Misused(f"--{name} needs a value after it")
            value = left.pop(0)
        if name == "csv":
            csv = value
            continue
        field = fields.get(name)
        if isinstance(field, Rows | Readings):
            value = _file_text(value) if value.startswith("@") else value
            texts[name] = f"{texts[name]}\n{value}" if name in texts else value
        elif name in texts:
            raise Misused(f"--{name} is given twice")
        else:
            texts[name] = value
    return texts, switches, csv


def _file_text(word: str) -> str:
    path = Path(word[1:])
    try:
        data = path.read_bytes()
    except OSError as error:
        raise Misused(f"The file {path} could not be read: {error.strerror}") from None
    return decoded(data)


def decoded(data: bytes) -> str:
    """A file's text, whatever a spreadsheet or logger wrote it in."""
    if data[:2] in (b"\xff\xfe", b"\xfe\xff"):
        return data.decode("utf-16", "replace")
    try:
        return data.decode("utf-8-sig")
    except UnicodeDecodeError:
        return data.decode("cp1252", "replace")
