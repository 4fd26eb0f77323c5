"""Whatever stands in a job's file or in a job that the page hands over, a job comes back, or one sentence."""

from __future__ import annotations

import io
import json
import time
from contextlib import redirect_stderr
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from calculators.kit.browser import run_json
from calculators.kit.find import load
from calculators.kit.job import JobError
from calculators.kit.job_file import OWN_KEYS, job_outcomes, job_text, read_job
from tests.contract.support import CRASHED, SLUGS

FUZZ = settings(
    max_examples=60, deadline=None, derandomize=True, suppress_health_check=[HealthCheck.too_slow]
)
KEYS = sorted({one.key for slug in SLUGS for one in load(slug).fields} | set(OWN_KEYS))
WORDS = st.one_of(
    st.text(max_size=20),
    st.sampled_from(["all", "1e999", "-0", "\x00", "<img src=x onerror=alert(1)>", "9" * 400, *SLUGS[:6]]),
)
VALUES = st.recursive(
    st.one_of(WORDS, st.integers(), st.floats(), st.booleans()),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(WORDS, inner, max_size=3),
    max_leaves=6,
)
STEPS = st.dictionaries(
    st.sampled_from(KEYS) | st.text(max_size=8),
    VALUES,
    max_size=4,
).flatmap(lambda step: st.sampled_from(SLUGS).map(lambda slug: {"calculator": slug, **step}) | st.just(step))


def toml(value: Any) -> str:
    """A value as TOML writes it. Only what JSON writes alike, and tables in one line."""
    if isinstance(value, dict):
        return "{" + ", ".join(f"{json.dumps(key)} = {toml(one)}" for key, one in value.items()) + "}"
    if isinstance(value, list):
        return "[" + ", ".join(map(toml, value)) + "]"
    if isinstance(value, float):
        return str(value)
    return json.dumps(value).replace("\x7f", "\\u007f")


def outcome_of(text: str) -> str:
    """The job that a file holds, as a terminal shows it, or the sentence that refuses it. Anything else is a defect."""
    said, job, refused = io.StringIO(), None, ""
    try:
        with redirect_stderr(said):
            job = read_job(text)
    except JobError as error:
        refused = str(error)
    if job is None:
        assert refused.endswith(".")
        assert len(refused) < 1000
        return refused
    assert CRASHED not in said.getvalue()
    json.dumps(job_outcomes(job), allow_nan=False)
    return job_text(job)


@pytest.mark.property
@FUZZ
@given(st.text(max_size=200) | st.text("[]{}=\"'#\n step,.1e_-+:TZcalculator²１", max_size=200))
def test_any_text_as_a_job_file(text: str) -> None:
    outcome_of(text)


@pytest.mark.property
@FUZZ
@given(VALUES, st.lists(STEPS, min_size=1, max_size=3))
def test_any_steps_in_a_job_file(name: Any, steps: list[dict[str, Any]]) -> None:
    body = "".join(
        "\n[[step]]\n" + "".join(f"{json.dumps(key)} = {toml(value)}\n" for key, value in step.items())
        for step in steps
    )
    outcome_of(f"name = {toml(name)}\n{body}")


STEP = '[[step]]\ncalculator = "powder-needed"\n'


@pytest.mark.parametrize(
    "text",
    [
        "x = " + "[" * 100_000,
        "x = " + "{a=" * 100_000,
        "a." * 50_000 + "b = 1",
        "[" + "a . " * 50_000 + "b]",
        "x = {" + "a." * 50_000 + "b = 1}",
        '"a".' * 50_000 + "b = 1",
        "[" + "'a' . " * 50_000 + "b]",
        f"{STEP}film = {'9' * 5_000}",
        f"{STEP}film = 0x{'f' * 5_000}",
        f"{STEP}film = 1e400",
        f"{STEP}film = 0001-01-01T00:00:00",
        f"{STEP}take = 5",
        f"{STEP}take = [[1]]",
        f"{STEP}take = [{{a = 1}}]",
        f'{STEP}take = "area"',
        f"{STEP}name = [1]",
        f"{STEP}note = {{a = 1}}",
        '[[step]]\ncalculator = ["powder-needed"]',
        "step = 1",
        "step = [1]",
        "\ufeff" + STEP,
        STEP.replace("\n", "\r"),
        'name = "' + "x" * 5_000_000 + '"\n' + STEP,
    ],
    ids=lambda text: text[:24] + text[-24:],
)
def test_hostile_job_files_get_a_sentence_or_a_job(text: str) -> None:
    assert outcome_of(text)


def test_a_job_file_of_fifty_thousand_steps_does_not_hang() -> None:
    began = time.monotonic()
    assert "100" in outcome_of("".join(f'{STEP}name = "{place}"\n' for place in range(50_000)))
    assert time.monotonic() - began < 300


def answered(request: dict[str, Any]) -> dict[str, Any]:
    said = io.StringIO()
    with redirect_stderr(said):
        response = json.loads(run_json(json.dumps(request)))
    assert CRASHED not in json.dumps(response), said.getvalue()[-1500:]
    assert isinstance(response["ok"], bool)
    return dict(response)


TEXTS = st.dictionaries(st.sampled_from([*KEYS, "film-unit", "__proto__"]) | WORDS, WORDS, max_size=4)
ENTRIES = st.fixed_dictionaries(
    {
        "name": st.sampled_from(["one", "two", "three", "", "__proto__"]) | WORDS,
        "slug": st.sampled_from(SLUGS) | st.sampled_from(["", "..", "no-such", "calculators.kit.find"]),
        "texts": TEXTS,
    },
    optional={"take": st.dictionaries(st.sampled_from(KEYS), st.sampled_from(["one", "two", "three", "x"]))},
)


@pytest.mark.property
@FUZZ
@given(st.lists(ENTRIES, max_size=4))
def test_any_job_that_the_page_hands_over(entries: list[dict[str, Any]]) -> None:
    response = answered({"job": entries})
    assert bool(response["message"]) != response["ok"]
    assert len(response["job"]) == (len(entries) if response["ok"] else 0)
    assert "<img" not in "".join(one["response"]["html"] for one in response["job"])


@pytest.mark.property
@FUZZ
@given(st.sampled_from(SLUGS), TEXTS)
def test_any_texts_that_the_page_hands_over(slug: str, texts: dict[str, str]) -> None:
    response = answered({"slug": slug, "texts": texts})
    assert response["ok"] != bool(response["errors"])
    assert "<img" not in response["html"]


def test_entries_that_wait_for_each_other_are_refused() -> None:
    ring = [
        {"name": name, "slug": "powder-needed", "texts": {}, "take": {"area": other}}
        for name, other in (("a", "b"), ("b", "c"), ("c", "a"))
    ]
    assert "wait for each other" in answered({"job": ring})["message"]
