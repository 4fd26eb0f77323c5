"""The command line, word by word."""

from __future__ import annotations

import csv
import io
import json
import subprocess
import sys
from dataclasses import dataclass
from pathlib import Path
from urllib.parse import parse_qs, urlsplit

import pytest

from calculators import slugs
from calculators.kit import cli
from calculators.kit.calculator import Calculator, Out
from calculators.kit.cli_batch import batch
from calculators.kit.fields import Limits, Quantity, Readings, Rows, ask
from calculators.kit.result import Result

ROOT = Path(__file__).resolve().parents[2]


@dataclass(frozen=True)
class Line:
    minute_min: float = ask(Quantity(label="Minute", units=("min",), limits=Limits("0 min", None, "")))
    metal_degC: float = ask(Quantity(label="Metal", units=("degF",), limits=Limits("0 F", None, "")))


@dataclass(frozen=True)
class Inputs:
    start_degC: float = ask(
        Quantity(label="Start", units=("degF", "degC"), default="70", limits=Limits("-40 F", None, ""))
    )
    readings_um: tuple[float, ...] = ask(
        Readings(label="Film", units=("mil",), limits=Limits("0 mil", None, ""))
    )
    log: tuple[Line, ...] = ask(Rows(label="Log", row=Line))


def solve(asked: Inputs) -> Result:
    return Result({"one": 1.0})


MADE_UP = Calculator(
    title="Made up",
    question="Does it read words?",
    inputs=Inputs,
    solve=solve,
    answers=(Out(key="one", label="One", meaning="One.", main=True),),
    sources=(),
    version=1,
    reviewed="2026-11-25",
    keywords=(),
    limits=(),
)


def texts(*words: str) -> dict[str, str]:
    return cli._parse(MADE_UP, list(words))[0]


def test_the_list_holds_every_calculator(capsys: pytest.CaptureFixture[str]) -> None:
    assert cli.main([]) == 0
    shown = capsys.readouterr().out
    assert all(slug in shown for slug in slugs())


def test_the_catalogue(capsys: pytest.CaptureFixture[str]) -> None:
    assert cli.main(["--json"]) == 0
    catalogue = json.loads(capsys.readouterr().out)
    assert tuple(catalogue) == slugs()
    assert catalogue["powder-needed"]["fields"]["film"]["units"] == ["mil", "um", "in", "mm"]
    assert catalogue["powder-needed"]["answers"]["powder"]["unit"] == "lb"


def test_the_version_is_the_project_s(capsys: pytest.CaptureFixture[str]) -> None:
    import tomllib

    assert cli.main(["--version"]) == 0
    assert (
        capsys.readouterr().out.strip()
        == tomllib.loads((ROOT / "pyproject.toml").read_text())["project"]["version"]
    )


def test_help_names_every_field_and_answer(capsys: pytest.CaptureFixture[str]) -> None:
    for words in (["powder-needed", "--help"], ["powder-needed", "-h"]):
        assert cli.main(words) == 0
        shown = capsys.readouterr().out
        for word in ("--area", "--specific-gravity", "41.2", "0.2 mil to 60 mil", "powder ", "utilisation"):
            assert word in shown


@pytest.mark.parametrize("words", [("--start", "-10F"), ("--start=-10F",)])
def test_an_option_takes_the_next_word_whatever_it_starts_with(words: tuple[str, ...]) -> None:
    assert texts(*words) == {"start": "-10F"}
    assert texts("--start", "--odd") == {"start": "--odd"}
    assert texts("--start=a=b") == {"start": "a=b"}
    assert texts("--start=") == {"start": ""}


def test_rows_and_readings_may_be_repeated() -> None:
    assert texts("--log", "5, 240F", "--log", "10, 330F") == {"log": "5, 240F\n10, 330F"}
    assert texts("--readings", "2.1 2.4", "--readings=2.2") == {"readings": "2.1 2.4\n2.2"}


@pytest.mark.parametrize("encoding", ["utf-8", "utf-8-sig", "utf-16", "cp1252"])
def test_a_table_from_a_file(tmp_path: Path, encoding: str) -> None:
    file = tmp_path / "log.csv"
    file.write_bytes("time,°F\n0,70\n".encode(encoding))
    assert texts("--log", f"@{file}") == {"log": "time,°F\n0,70\n"}
    assert texts("--start", "@home") == {"start": "@home"}


@pytest.mark.parametrize(
    ("words", "sentence"),
    [
        (["powder-neded"], "There is no calculator powder-neded. The nearest is powder-needed."),
        (["powder-needed", "--flim", "3"], "--flim is not an option of this calculator. The nearest is film."),
        (["powder-needed", "--film"], "--film needs a value after it"),
        (["powder-needed", "3"], "3 stands alone. Write an option before it, like --area 3"),
        (["powder-needed", "--film", "3", "--film", "4"], "--film is given twice"),
        (["powder-needed", "--fil", "3"], "--fil is not an option of this calculator. The nearest is film."),
        (["powder-needed", "--csv", "nowhere.csv"], "The file nowhere.csv could not be read: No such file or directory"),
    ],
)  # fmt: skip
def test_words_that_do_not_fit(words: list[str], sentence: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert cli.main(words) == 2
    shown = capsys.readouterr()
    assert (shown.out, shown.err.strip()) == ("", sentence)


def test_an_answer_and_what_was_assumed(capsys: pytest.CaptureFixture[str]) -> None:
    assert cli.main(["powder-needed", "--area", "10 m2"]) == 0
    shown = capsys.readouterr().out
    assert shown.startswith("Powder needed: Buy ")
    assert "From the example: parts, film," in shown
    assert "Working" not in shown
    assert cli.main(["powder-needed", "--steps"]) == 0
    assert "U = TE / (1 - r * (1 - TE))" in capsys.readouterr().out


def test_refused_values_go_to_the_error_stream_and_exit_2(capsys: pytest.CaptureFixture[str]) -> None:
    assert cli.main(["powder-needed", "--area", "x", "--film", "999"]) == 2
    shown = capsys.readouterr()
    assert shown.out == ""
    assert shown.err.splitlines() == [
        "Area to coat must be a number, like 41.2 ft2",
        "Film in one coat must be between 0.2 mil and 60 mil",
    ]


def test_refused_values_in_json(capsys: pytest.CaptureFixture[str]) -> None:
    assert cli.main(["powder-needed", "--area", "", "--json"]) == 2
    shown = json.loads(capsys.readouterr().out)
    assert shown["ok"] is False
    assert shown["errors"] == [{"key": "area", "message": "Enter the area to coat"}]


def test_json_of_an_answer(capsys: pytest.CaptureFixture[str]) -> None:
    assert cli.main(["powder-needed", "--film", "3", "--film-unit", "mil", "--json"]) == 0
    shown = json.loads(capsys.readouterr().out)
    assert {
        "ok",
        "slug",
        "version",
        "headline",
        "answers",
        "cautions",
        "errors",
        "steps",
        "assumed",
        "query",
    } == set(shown)
    assert set(shown["answers"]["powder"]) == {"label", "value", "unit", "low", "high", "text", "main"}
    assert shown["answers"]["powder"]["main"] is True
    assert "film" not in shown["assumed"]


def test_the_link_gives_the_same_answer(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("SITE_URL", "/here/")
    assert cli.main(["powder-needed", "--film", "76.2 um", "--link"]) == 0
    link = urlsplit(capsys.readouterr().out.strip())
    assert link.path == "/here/spray/powder-needed/"
    assert parse_qs(link.query)["film"] == ["76.2 um"]


def test_many_jobs_from_one_file(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    file = tmp_path / "jobs.csv"
    file.write_text(
        "Job,Area,film,Specific gravity\nbench,41.2,2.5,1.5\ngate,10 m2,,\nodd,nothing,3,1.5\n\n",
        encoding="utf-8",
    )
    assert cli.main(["powder-needed", "--csv", str(file), "--transfer", "50"]) == 2
    rows = list(csv.DictReader(io.StringIO(capsys.readouterr().out)))
    assert [row["job"] for row in rows] == ["bench", "gate", "odd"]
    assert float(rows[0]["answer:powder"]) > 0
    assert rows[0]["errors"] == ""
    assert rows[2]["errors"] == "Area to coat must be a number, like 41.2 ft2"
    assert rows[2]["answer:powder"] == ""


def test_a_misspelt_heading_is_named(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    file = tmp_path / "jobs.csv"
    file.write_text("area,transfr\n1,2\n", encoding="utf-8")
    assert cli.main(["powder-needed", "--csv", str(file)]) == 2
    assert capsys.readouterr().err.strip() == "The column transfr is not known. The nearest is transfer."


@pytest.mark.parametrize("end", ["\n", "\r\n", "\r"])
def test_a_file_of_jobs_may_end_its_lines_as_any_machine_does(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], end: str
) -> None:
    file = tmp_path / "jobs.csv"
    file.write_bytes(f"job,area{end}bench,41.2{end}gate,10{end}".encode())
    assert cli.main(["powder-needed", "--csv", str(file)]) == 0
    assert [row["job"] for row in csv.DictReader(io.StringIO(capsys.readouterr().out))] == ["bench", "gate"]


@pytest.mark.parametrize(("heading", "cell", "line"), [("job", "x", 3), ("x" * 200_000, "", 1)])
def test_a_cell_too_long_for_a_table_is_named_by_its_line(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], heading: str, cell: str, line: int
) -> None:
    file = tmp_path / "jobs.csv"
    file.write_text(f"{heading},area\nbench,41.2\n{cell * 200_000},10\n", encoding="utf-8")
    assert cli.main(["powder-needed", "--csv", str(file)]) == 2
    shown = capsys.readouterr()
    assert shown.out == ""
    assert shown.err.strip() == (
        f"The file {file} could not be read: line {line} has a cell of more than 131,072 characters"
    )


ORDERS = "a\x1b]0;owned\x07\x1b[31m\x9b31m\u202eb"
IN_TOML = ORDERS.replace("\x1b", r"\u001b").replace("\x07", r"\u0007")


def harmless(shown: str) -> bool:
    return all(line.isprintable() for line in shown.split("\n"))


class Terminal(io.StringIO):
    def isatty(self) -> bool:
        return True


def test_a_file_s_cells_are_kept_in_a_file_and_made_harmless_on_a_terminal(tmp_path: Path) -> None:
    """A cell is carried along as it is, unless it would be obeyed: ESC ] 0 gives a terminal's window a name."""
    file = tmp_path / "jobs.csv"
    file.write_text(f"job,area\n{ORDERS},41.2\n", encoding="utf-8")
    kept, shown = io.StringIO(), Terminal()
    batch("powder-needed", str(file), {}, kept)
    batch("powder-needed", str(file), {}, shown)
    assert ORDERS in kept.getvalue()
    assert harmless(shown.getvalue())
    assert "a]0;owned[31m31mb" in shown.getvalue()


@pytest.mark.parametrize(
    "words",
    [
        ["powder-needed", "--csv", "{file}"],
        ["job", "{job}"],
        ["job", "{job}", "--json"],
        ["job", "{step}"],
        ["job", "{file}"],
        [ORDERS],
        ["powder-needed", f"--{ORDERS}", "1"],
        ["bake-log", "--log", f"time,{ORDERS} air,metal\n0,400,70\n5,400,300\n10,400,350"],
        ["bake-log", "--json", "--log", f"time,{ORDERS} air,metal\n0,400,70\n5,400,300\n10,400,350"],
        ["oven-survey", "--json", "--readings", f"{ORDERS}, 400\nmiddle, 410\nbottom, 390"],
    ],
)
def test_no_words_order_a_terminal_about(
    words: list[str], tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    file = tmp_path / "file"
    file.write_text(f"transfr{ORDERS},{ORDERS}\n1,2\n", encoding="utf-8")
    job, step = tmp_path / "job", tmp_path / "step"
    job.write_text(
        f'name = "{IN_TOML}"\n[[step]]\ncalculator = "bake-log"\nname = "{IN_TOML}"\nnote = "{IN_TOML}"\n'
        f'[[step]]\ncalculator = "cure-plan"\ntake = "all"\n',
        encoding="utf-8",
    )
    step.write_text(f'[[step]]\ncalculator = "bake-log"\n"{IN_TOML}" = 1\n', encoding="utf-8")
    named = {"{file}": str(file), "{job}": str(job), "{step}": str(step)}
    cli.main([named.get(word, word) for word in words])
    shown = capsys.readouterr()
    assert shown.out or shown.err
    assert harmless(shown.out) and harmless(shown.err)


def test_json_loses_no_sign(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    file = tmp_path / "job.toml"
    file.write_text(
        f'name = "{IN_TOML}\U000e0001µ 🔥"\n[[step]]\ncalculator = "bake-log"\n', encoding="utf-8"
    )
    assert cli.main(["job", str(file), "--json"]) == 0
    shown = capsys.readouterr().out
    assert harmless(shown)
    assert "µ 🔥" in shown
    assert json.loads(shown)["name"] == f"{ORDERS}\U000e0001µ 🔥"


def bytes_said(*words: bytes) -> tuple[int, str, str]:
    done = subprocess.run([sys.executable, "-m", "calculators", *words], cwd=ROOT, capture_output=True)
    return done.returncode, done.stdout.decode(), done.stderr.decode()


@pytest.mark.skipif(sys.platform == "win32", reason="arguments are no bytes there")
@pytest.mark.parametrize(
    ("words", "sentence"),
    [
        ([b"cure-plan", b"--thickness", b"1 in\xff"], "Thickness of the heaviest section must be in in, mm or cm"),
        ([b"cure-plan\xff"], "There is no calculator cure-plan\\udcff. The nearest is cure-plan."),
        ([b"cure-plan", b"--shap\xff", b"1"], "--shap\\udcff is not an option of this calculator. The nearest is shape."),
        ([b"cure-plan", b"\xff"], "\\udcff stands alone. Write an option before it, like --metal \\udcff"),
        ([b"bake-log", b"--log", b"@no\xff"], "The file no\\udcff could not be read: No such file or directory"),
        ([b"powder-needed", b"--csv", b"no\xff"], "The file no\\udcff could not be read: No such file or directory"),
        ([b"job", b"no\xff"], "The file no\\udcff could not be read: No such file or directory."),
    ],
)  # fmt: skip
def test_bytes_that_are_no_text_are_answered_with_a_sentence(words: list[bytes], sentence: str) -> None:
    assert bytes_said(*words) == (2, "", f"{sentence}\n")


def test_the_command_itself() -> None:
    done = subprocess.run(
        [sys.executable, "-m", "calculators", "powder-needed", "--film", "-3"],
        cwd=ROOT, capture_output=True, text=True, encoding="utf-8",
    )  # fmt: skip
    assert (done.returncode, done.stdout, done.stderr.strip()) == (
        2, "", "Film in one coat must be between 0.2 mil and 60 mil",
    )  # fmt: skip
