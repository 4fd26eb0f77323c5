"""The tables of nozzles, abrasives, surface grades and profile grades: whole, sourced, and as they are printed elsewhere."""

from __future__ import annotations

from itertools import pairwise

import pytest

from calculators.tables import table

SEEN = {"full-text", "excerpt", "second-hand", "memory"}
NAMES = ("nozzles", "nozzle_abrasive", "abrasives", "surface_grades", "profile_grades", "blast_rates")
PLAIN = {"name", "aliases", "family", "hand", "hardness_scale", "note"}


@pytest.mark.property
@pytest.mark.parametrize("name", NAMES)
def test_every_figure_has_a_source_and_a_standing(name: str) -> None:
    for slug, row in table(name).items():
        stems = {key.removesuffix("_source") for key in row if key.endswith("_source")}
        assert stems, slug
        for stem in stems:
            assert row[f"{stem}_source"] in table("sources"), (slug, stem)
            assert row[f"{stem}_seen"] in SEEN, (slug, stem)
        for key in set(row) - PLAIN:
            if not key.endswith(("_source", "_seen")):
                assert "all" in stems or any(key.startswith(stem) for stem in stems), (slug, key)


@pytest.mark.published
@pytest.mark.parametrize(("grade", "in2"), [("sp5", 0.0), ("sp10", 0.45), ("sp6", 2.97)])
def test_stain_on_a_unit_area(grade: str, in2: float) -> None:
    """SSPC-SP 5, 10 and 6: no stain, 5 % and 33 % of 9 in2 (cross-tables; the 9 in2 from the foreword of SP 6)."""
    row = table("surface_grades")[grade]
    assert row["remains_percent"] / 100 * 9 == pytest.approx(in2)


@pytest.mark.published
@pytest.mark.parametrize(
    ("grade", "iso"),
    [
        ("sp5", "Sa 3"),
        ("sp10", "Sa 2 1/2"),
        ("sp6", "Sa 2"),
        ("sp7", "Sa 1"),
        ("sp2", "St 2"),
        ("sp3", "St 3"),
    ],
)
def test_nearest_iso_grades(grade: str, iso: str) -> None:
    """ISO 8501-1 beside the SSPC grades (cross-tables, second-hand)."""
    assert table("surface_grades")[grade]["iso_grade"] == iso


@pytest.mark.published
@pytest.mark.parametrize(
    ("family", "low", "high"), [("silica-sand", 100, 100), ("mineral-sand", 128, 128), ("garnet", 130, 147)]
)
def test_bulk_weight_as_a_dealer_prints_it(family: str, low: float, high: float) -> None:
    """A dealer's table of abrasives: bulk weight of sand, staurolite and garnet in lb/ft3 (excerpt)."""
    assert table("abrasives")[family]["bulk_lb_ft3"] == [low, high]


@pytest.mark.property
def test_a_nozzle_s_number_is_its_bore_in_sixteenths_and_more_pressure_takes_more() -> None:
    for name in ("nozzles", "nozzle_abrasive"):
        for slug, row in table(name).items():
            figures = [value for key, value in row.items() if key.startswith("at_")]
            assert all(low < high for low, high in pairwise(figures)), slug
            assert len(figures) == 7
    for slug, row in table("nozzles").items():
        assert row["bore_in"] == int(slug) / 16
    assert set(table("nozzles")) == set(table("nozzle_abrasive"))


@pytest.mark.property
def test_no_abrasive_both_may_and_may_never_touch_a_metal() -> None:
    metals = set(table("metals"))
    for slug, row in table("abrasives").items():
        may, never = set(row["may_touch"]), set(row["never_touch"])
        assert may | never <= metals, slug
        assert not may & never, slug
        assert "magnesium" in never, slug
        if slug.startswith("steel"):
            assert {"aluminium", "stainless", "galvanised"} <= never
        assert all(low <= high for low, high in (row["bulk_lb_ft3"], row["reuse_cycles"]))
    assert table("abrasives")["silica-sand"]["may_touch"] == []
    assert {slug for slug, row in table("abrasives").items() if row["hand"] == "no"} == {
        "plastic",
        "organic",
        "silica-sand",
    }
