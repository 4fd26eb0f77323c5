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
    assert catalogue["powder-needed"]["fields"]["film"]["units"] == ["mil", "um"]
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


def test_the_command_itself() -> None:
    done = subprocess.run(
        [sys.executable, "-m", "calculators", "powder-needed", "--film", "-3"],
        cwd=ROOT, capture_output=True, text=True, encoding="utf-8",
    )  # fmt: skip
    assert (done.returncode, done.stdout, done.stderr.strip()) == (
        2, "", "Film in one coat must be between 0.2 mil and 60 mil",
    )  # fmt: skip
