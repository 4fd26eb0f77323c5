"""A job: what is handed over, in which order entries run, and the sentences for a job that cannot be run."""

from __future__ import annotations

import json
import subprocess
import sys
from pathlib import Path

import pytest

from calculators import run
from calculators.kit import cli, find
from calculators.kit.browser import run_json
from calculators.kit.handover import MEANINGS
from calculators.kit.job import Entry, JobError, offers, run_job
from calculators.kit.job_file import read_job


def test_an_answer_outranks_what_was_entered() -> None:
    gifts = {one.meaning: one for one in run("powder-needed", {"area": "3 m2"}).gifts}
    assert (gifts["coated-area"].text, gifts["coated-area"].origin) == ("3 m2", "input")
    assert gifts["powder"].origin == "answer"
    assert gifts["powder"].text.endswith(" lb")


def test_a_refused_calculation_gives_nothing() -> None:
    assert run("powder-needed", {"area": "none"}).gifts == ()


def test_a_field_that_is_not_asked_gives_nothing() -> None:
    assert "oven-coefficient" not in {one.meaning for one in run("cure-plan", {}).gifts}


def test_what_is_taken_reaches_the_sum_and_opens_its_field() -> None:
    """The oven's coefficient is asked only where the airflow was measured: taking it says so."""
    plan = Entry("plan", "cure-plan", {"oven": "390 F"}, {"oven-coefficient": "log"})
    log = Entry("log", "bake-log", {})
    done = run_job([plan, log])
    assert [one.entry.name for one in done] == ["plan", "log"]
    assert done[0].texts["airflow"] == "measured"
    assert done[0].texts["oven"] == "390 F"
    gift = done[0].taken[0].gift
    assert gift.text == done[0].texts["oven-coefficient"]
    assert done[0].outcome.answers == run("cure-plan", done[0].texts).answers
    assert done[0].outcome.answers != run("cure-plan", {"oven": "390 F"}).answers


def test_a_source_without_an_answer_is_named_and_the_old_text_kept() -> None:
    log = Entry("log", "bake-log", {"log": "nothing"})
    plan = Entry("plan", "cure-plan", {"thickness": "1 in"}, {"thickness": "log"})
    done = run_job([log, plan])
    assert "log, which has no answer" in done[1].problems[0]
    assert done[1].texts["thickness"] == "1 in"


def test_entries_that_wait_for_each_other_are_named() -> None:
    one = Entry("one", "cure-plan", {}, {"thickness": "two"})
    two = Entry("two", "bake-log", {}, {"thickness": "one"})
    with pytest.raises(JobError, match="one, two"):
        run_job([one, two])


def test_offers_take_nothing_that_means_little_alone() -> None:
    done = run_job([Entry("log", "bake-log", {})])
    found = offers(find.load("cure-plan"), done)
    assert found["thickness"] == found["shape"] == "log"
    for meaning, row in MEANINGS.items():
        assert meaning not in row.with_


def test_the_worker_runs_a_job() -> None:
    request = {
        "job": [
            {"name": "log", "slug": "bake-log", "texts": {}},
            {"name": "plan", "slug": "cure-plan", "texts": {}, "take": {"thickness": "log", "shape": "log"}},
        ]
    }
    answer = json.loads(run_json(json.dumps(request)))
    assert answer["ok"] and len(answer["job"]) == 2
    assert answer["job"][1]["taken"] == {
        "thickness": {"text": "5/8 in", "shown": "5/8 in"},
        "shape": {"text": "both-sides", "shown": "Plate or casting wall, hot air on both sides"},
    }
    assert answer["job"][1]["response"]["ok"]
    refused = json.loads(run_json('{"job": [{"name": "x", "slug": "no-such", "texts": {}}]}'))
    assert refused == {"ok": False, "message": "There is no calculator no-such.", "job": []}


@pytest.mark.parametrize(
    ("text", "sentence"),
    [
        ("name = ", "cannot be read"),
        ('name = "x"', "no [[step]]"),
        ("[[step]]\narea = 1", "Step 1 names no calculator"),
        ('[[step]]\ncalculator = "powder-needed"\ntake = 5', 'Step 1, powder-needed: write take = ["area"]'),
        ('[[step]]\ncalculator = "powder-needed"\ntake = "area"', "no earlier step gives the coated area"),
        ('[[step]]\ncalculator = "powder-needed"\ntake = ["colour"]', "it has no field colour"),
        ('[[step]]\ncalculator = "powder"', "Step 1: there is no calculator powder"),
        ('[[step]]\ncalculator = "powder-needed"\ncolour = "red"', "it does not ask for colour"),
        ('[[step]]\ncalculator = "powder-needed"\ntake = ["area"]', "no earlier step gives the coated area"),
        ('[[step]]\ncalculator = "bake-log"\n[[step]]\ncalculator = "bake-log"', "bake-log is there already"),
    ],
)
def test_a_file_that_cannot_be_run_says_which_step(text: str, sentence: str) -> None:
    with pytest.raises(JobError) as caught:
        read_job(text)
    assert sentence in str(caught.value)


def test_a_step_takes_what_says_nothing_alone_with_the_rest_of_it() -> None:
    """A tube's wall heats from one side: without its shape it would be baked as a plate, for half as long."""
    file = '[[step]]\ncalculator = "part-size"\npieces = "round-tube, 3, , 1/2, 36"\n[[step]]\ncalculator = "cure-plan"\n'
    plan = read_job(file + 'take = "thickness"').done[1]
    assert {one.key for one in plan.taken} == {"thickness", "shape"}
    assert plan.texts["shape"] == "one-side"
    written = read_job(file + 'take = ["thickness"]\nshape = "both-sides"').done[1]
    assert written.texts["shape"] == "both-sides"


def test_the_command_line_runs_a_file(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = tmp_path / "job.toml"
    path.write_text(
        'name = "Gate"\n[[step]]\ncalculator = "bake-log"\n[[step]]\ncalculator = "cure-plan"\ntake = "all"\n',
        encoding="utf-8",
    )
    assert cli.main(["job", str(path)]) == 0
    shown = capsys.readouterr().out
    assert "Gate" in shown and "from bake-log: heaviest section 5/8 in" in shown
    assert cli.main(["job", str(path), "--json"]) == 0
    steps = json.loads(capsys.readouterr().out)["steps"]
    assert steps[1]["taken"]["thickness"] == {"from": "bake-log", "text": "5/8 in"}
    assert cli.main(["job", str(tmp_path / "none.toml")]) == 2
    assert "could not be read" in capsys.readouterr().err


DEEP = [
    "a." * 50 + "b = 1",
    '"a".' * 50 + "b = 1",
    "'a'." * 50 + "b = 1",
    "a . \"a\"\t.'a'." * 20 + "b = 1",
    '"".' * 50 + "b = 1",
    r'"a.\"b".' * 50 + "b = 1",
    "[" + '"a".' * 50 + "b]",
    "[[" + "'a' . " * 50 + "b]]",
    "x = {" + '"a".' * 50 + "b = 1}",
    *(
        f"{before}\n" + '"a".' * 50 + "b = 1"
        for before in ("x = 1.5 # \"'", 'x = "#"', "x = ''''#'''''", r'x = """\"""#"""""')
    ),
]


@pytest.mark.parametrize("text", DEEP)
def test_a_name_of_many_parts_is_refused_however_it_is_quoted(text: str) -> None:
    with pytest.raises(JobError, match="a name in it has too many parts"):
        read_job(text)


@pytest.mark.parametrize(
    "note",
    [
        '"' + "a." * 50 + 'b"',
        "'" + '"a".' * 50 + "'",
        '"""\n' + "'a'." * 50 + 'b\n"""',
        '"a" # ' + '"a".' * 50,
        "[" + '".",' * 50 + "]",
        "[" + "1.5, " * 50 + "]",
        "1979-05-27T07:32:00.999",
    ],
)
def test_points_in_a_text_part_no_name(note: str) -> None:
    assert len(read_job(f'[[step]]\ncalculator = "bake-log"\nnote = {note}\n').done) == 1


def test_millions_of_quotes_and_points_are_looked_through_in_time() -> None:
    """In a process of its own, which is ended after many times what it needs: a search that looks back takes hours."""
    signs = ['"a".', "a.", "'a' . ", '"', "'", r"\"", r'x="""\"', "#", ". ", "a ", '"a" ', '""."".', " . a"]
    script = (
        "import sys\nfrom calculators.kit.job import JobError\nfrom calculators.kit.job_file import LONGEST, read_job\n"
        "for sign in eval(sys.argv[1]):\n    try:\n        read_job((sign * LONGEST)[:LONGEST])\n"
        "    except JobError:\n        pass\nprint('all read')"
    )
    done = subprocess.run(
        [sys.executable, "-c", script, repr(signs)],
        cwd=Path(__file__).resolve().parents[2], capture_output=True, text=True, encoding="utf-8", timeout=200,
    )  # fmt: skip
    assert done.stdout == "all read\n", done.stderr[-2000:]
