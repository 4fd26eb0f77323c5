"""Whatever is typed, an Outcome comes back: an answer, or sentences that belong to fields. Nothing typed becomes markup."""

from __future__ import annotations

import io
import json
from contextlib import redirect_stderr

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from calculators import run
from calculators.kit.fields import Asked, Rows
from calculators.kit.find import load
from calculators.kit.run import Outcome
from tests.contract.support import CRASHED, FIELDS, SLUGS, name, sample, texts_that_ask

TEXTS = st.one_of(
    st.text(st.characters(), max_size=40),  # halves of surrogate pairs among them, which text() leaves out
    st.text("0123456789 ,./-+e'\"ftinmCF%µ½⅝×°:;\n\t", max_size=20),
    st.text("12 ,./½¹²³₂⁄⁻①１２．，／in\n\x1b\u202e\ud800\udcff", max_size=16),
    st.floats(allow_nan=True).map(str),
    st.integers(-10, 100_000).map(str),
    st.sampled_from(
        ["", " ", "0", "-1", "1e9", "nan", "9" * 10_000, "🔥" * 300, "\x00", "<b>", "none", "not-sure"]
    ),
)
MARKUP = "<img src=x onerror=alert(1)>\"'&"
FUZZ = settings(
    max_examples=20, deadline=None, derandomize=True, suppress_health_check=[HealthCheck.too_slow]
)


def held(slug: str, texts: dict[str, str]) -> Outcome:
    said = io.StringIO()
    with redirect_stderr(said):
        outcome = run(slug, texts)
    keys = {"", *(one.key for one in load(slug).fields)}
    assert outcome.ok != bool(outcome.errors)
    for error in outcome.errors:
        assert CRASHED not in error.message, said.getvalue()[-1500:]
        assert error.key in keys
        assert error.message
    json.dumps(outcome.to_json(), allow_nan=False)
    assert outcome.query.encode()
    if outcome.ok:
        assert outcome.html.encode()
        assert outcome.text.encode()
    return outcome


@pytest.mark.property
@pytest.mark.parametrize(("slug", "one"), FIELDS, ids=name)
def test_any_text_in_one_field(slug: str, one: Asked) -> None:
    asked = texts_that_ask(load(slug), one.key)

    @FUZZ
    @given(TEXTS)
    def check(text: str) -> None:
        held(slug, asked | {one.key: text})

    check()


@pytest.mark.property
@pytest.mark.parametrize("slug", SLUGS)
def test_any_texts_in_all_fields(slug: str) -> None:
    keys = [key for one in load(slug).fields for key in (one.key, f"{one.key}-unit")]

    @FUZZ
    @given(st.dictionaries(st.sampled_from([*keys, "other"]), TEXTS))
    def check(texts: dict[str, str]) -> None:
        held(slug, texts)

    check()


@pytest.mark.property
@pytest.mark.parametrize(("slug", "one"), FIELDS, ids=name)
def test_typed_markup_comes_back_as_text(slug: str, one: Asked) -> None:
    calculator = load(slug)
    texts = texts_that_ask(calculator, one.key)
    tries = [MARKUP, f"{sample(one)} {MARKUP}"]
    if isinstance(one.field, Rows):
        tries += [f"{MARKUP},{line}" for line in sample(one).splitlines()[:1]]
        tries += [f"time,{MARKUP} air,metal\n0,1,70\n5,1,300", sample(one).replace(",", f"{MARKUP},", 1)]
    for text in tries:
        outcome = held(slug, texts | {one.key: text})
        assert "<img" not in outcome.html
        assert "<img" not in outcome.query


@pytest.mark.parametrize("slug", SLUGS)
def test_keys_that_it_does_not_have_are_ignored(slug: str) -> None:
    assert run(slug, {"no-such-key": MARKUP}).to_json() == run(slug, {}).to_json()
