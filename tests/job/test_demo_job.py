"""The bench job from its file, step by step, against numbers worked by hand; each step goes on with the one before."""

from __future__ import annotations

from pathlib import Path

import pytest

from calculators.kit.job_file import Job, read_job

FILE = Path(__file__).resolve().parents[2] / "docs" / "assets" / "job" / "park-benches.toml"


@pytest.fixture(scope="module")
def job() -> Job:
    return read_job(FILE.read_text("utf-8"))


def answer(job: Job, name: str, key: str) -> float:
    value = next(one for one in job.done if one.entry.name == name).outcome.answers[key].value
    assert isinstance(value, float)
    return value


def test_every_step_has_an_answer_and_takes_what_it_was_to_take(job: Job) -> None:
    assert [one.entry.name for one in job.done if not one.outcome.ok or one.problems] == []
    # everything after the first look goes on with something, but for the weather and the film of another day
    alone = [one.entry.name for one in job.done if not one.taken]
    assert alone == ["part-size", "blast-or-not", "condensation-check", "film-readings"]


@pytest.mark.derived
def test_the_size_of_four_benches(job: Job) -> None:
    """Ends: 2 x 22.1 lb = 20.049 kg of iron at 7200 kg/m3 and 5/8 in: A = 2 m / (rho t) = 0.35081 m2 = 3.7761 ft2.

    Straps: 6 x (2 x 48 x 1.5 + 2 x 48 x 0.125 + 2 x 1.5 x 0.125) in2 = 6 x 156.375 in2 = 6.5156 ft2. Four of both: 41.167 ft2.
    """
    assert answer(job, "part-size", "area") == pytest.approx(41.167, rel=1e-4)


@pytest.mark.derived
def test_the_powder(job: Job) -> None:
    """3.8245 m2 x 63.5 um x 1.5 = 364.28 g on the parts; over 0.6 and with a tenth spare 667.85 g = 1.4724 lb."""
    assert answer(job, "powder-needed", "powder") == pytest.approx(1.4724, rel=1e-3)


@pytest.mark.derived
def test_the_time_on_the_trigger(job: Job) -> None:
    """364.28 g over 0.6 is 607.1 g sprayed, at 150 g a minute 4.05 min."""
    assert answer(job, "spray-time", "spray-time") == pytest.approx(607.1 / 150, rel=1e-3)


def test_the_bake_is_that_of_the_section_handed_over(job: Job) -> None:
    plan = next(one for one in job.done if one.entry.name == "cure-plan")
    assert {key: plan.texts[key] for key in ("thickness", "shape", "thinnest", "metal")} == {
        "thickness": "0.625 in",
        "shape": "both-sides",
        "thinnest": "0.125 in",
        "metal": "cast-iron",
    }


@pytest.mark.derived
def test_the_price(job: Job) -> None:
    """Its own minutes (130), blasting and spraying as taken, at 30 an hour; powder at 9, abrasive at 0.6 a pound; 8 for plugs;
    the oven's minutes at 12 an hour; one change of 7.50. Then x 1.25, x (1 + 2.5 x 0.05 / 0.95), over 0.7.
    """
    taken = {one.gift.meaning: float(one.gift.text.split()[0]) for one in job.done[-1].taken}
    work = (60 + 30 + 20 + 20 + 0) + taken["blast-time"] * 60 + taken["spray-time"]
    direct = (
        work * 0.5 + 7.5 + taken["powder"] * 9 + taken["abrasive-used"] * 0.6 + 8 + taken["oven-time"] * 0.2
    )
    assert answer(job, "job-price", "price") == pytest.approx(
        direct * 1.25 * (1 + 0.125 / 0.95) / 0.7, rel=1e-4
    )
