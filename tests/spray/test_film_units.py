"""A film is typed in mil or micrometres in the shop, and stands in inches or millimetres on many drawings."""

from __future__ import annotations

import pytest

from calculators import run
from calculators.kit.fields import Asked, Quantity, Readings
from calculators.kit.find import load
from tests.contract.support import in_unit, name, plain, texts_that_ask

SLUGS = (
    "comb-to-cured",
    "coverage",
    "film-from-weight",
    "film-readings",
    "fit-after-film",
    "powder-needed",
    "spray-time",
)
FILMS = [
    (slug, one)
    for slug in SLUGS
    for one in load(slug).fields
    if isinstance(one.field, Quantity | Readings) and one.unit == "um"
]


@pytest.mark.property
def test_each_of_them_asks_for_a_film() -> None:
    assert {slug for slug, _ in FILMS} == set(SLUGS)


@pytest.mark.property
@pytest.mark.parametrize(("slug", "one"), FILMS, ids=name)
def test_a_film_may_be_typed_as_a_drawing_has_it(slug: str, one: Asked) -> None:
    """The shop's unit stands first, and a figure in another means the same."""
    field = one.field
    assert isinstance(field, Quantity | Readings)
    assert field.units == ("mil", "um", "in", "mm")
    pair = {"raw-known": "6.5 mil", "cured-known": "3.1 mil"} if one.key.endswith("-known") else {}
    texts = texts_that_ask(load(slug), one.key) | pair
    first = (field.default or getattr(field, "example", "")).split()
    in_mil = run(slug, texts | {one.key: "\n".join(f"{each} mil" for each in first)})
    assert in_mil.ok, in_mil.errors
    for unit in ("in", "mm"):
        typed = "\n".join(in_unit(float(each), "mil", unit) for each in first)
        assert plain(run(slug, texts | {one.key: typed})) == plain(in_mil)


@pytest.mark.derived
@pytest.mark.parametrize("film", ["0.0025 in", "1/400 in", "0.0635 mm", "63.5 um", "2.5"])
def test_two_and_a_half_mil_however_it_is_typed(film: str) -> None:
    """1 in = 1,000 mil = 25.4 mm."""
    assert plain(run("powder-needed", {"film": film})) == plain(run("powder-needed", {}))


@pytest.mark.parametrize("film", ["3 mm", "0.12 in"])
def test_a_film_too_thick_for_powder_is_refused_in_the_unit_typed(film: str) -> None:
    (error,) = run("powder-needed", {"film": film}).errors
    assert error.key == "film"
    assert f"{film.split()[1]}" in error.message and "between" in error.message


@pytest.mark.property
def test_a_gauge_s_file_in_millimetres_is_read_as_such() -> None:
    file = "No,Thickness (mm)\n1,0.066\n2,0.069\n3,0.071\n"
    outcome = run("film-readings", {"readings": file, "per-spot": "3", "area": ""})
    assert outcome.ok, outcome.errors
    assert outcome.answers["mean"].text == "2.7 mil (68.7 um)"
