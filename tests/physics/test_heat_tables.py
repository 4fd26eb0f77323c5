"""The tables of metals, finishes, airflow and shading: whole, sourced, and in the range that books give."""

import pytest

from calculators.physics.heat import specific_heat_at_J_kgK
from calculators.tables import table

METALS, FINISHES = table("metals"), table("finishes")
SEEN = {"full-text", "excerpt", "second-hand", "memory"}
NAMES_IN_USE = [
    "carbon-steel",
    "cast-iron",
    "galvanised",
    "stainless",
    "zinc-die-cast",
    "copper-brass",
    "magnesium",
]
NAMES_IN_USE += ["aluminium", "aluminium-wrought", "aluminium-cast", "steel"]


@pytest.mark.parametrize("name", ["metals", "finishes", "airflow", "shading"])
def test_every_figure_has_a_source_and_a_standing(name):
    for slug, row in table(name).items():
        figures = {key.removesuffix("_source") for key in row if key.endswith("_source")}
        assert figures, slug
        for figure in figures:
            assert row[f"{figure}_source"] in table("sources"), (slug, figure)
            assert row[f"{figure}_seen"] in SEEN, (slug, figure)
        for key, value in row.items():
            if isinstance(value, (int, float, list)) and key not in ("aliases", "low", "high"):
                assert any(key.startswith(figure) for figure in figures) or key == "brief_degC", (slug, key)


@pytest.mark.parametrize("name", NAMES_IN_USE)
def test_every_metal_name_in_use_is_one_row(name):
    assert sum(name == slug or name in row["aliases"] for slug, row in METALS.items()) == 1


def test_bare_finishes_are_rows_and_spans_hold_their_figure():
    assert {row["bare_finish"] for row in METALS.values()} <= set(FINISHES)
    for row in FINISHES.values():
        assert 0 < row["low"] <= row["emissivity"] <= row["high"] < 1


@pytest.mark.derived
@pytest.mark.parametrize(
    ("metal", "at_20", "at_200"),
    [
        pytest.param("carbon-steel", 440, 530, id="carbon-steel"),
        pytest.param("aluminium", 911, 985, id="aluminium"),
        pytest.param("stainless", 456, 495, id="stainless"),
        pytest.param("zinc-die-cast", 419, 430, id="zinc-die-cast"),
        pytest.param("copper-brass", 380, 405, id="copper-brass"),
        pytest.param("cast-iron", 490, 540, id="cast-iron"),
        pytest.param("magnesium", 1050, 1130, id="magnesium"),
    ],
)
def test_specific_heat_at_both_ends(metal, at_20, at_200):
    """Ends of the range as recalled from handbooks, or worked from the code's formula; 5 % covers a mean."""
    coefficients = METALS[metal]["specific_heat_J_kgK"]
    assert specific_heat_at_J_kgK(coefficients, 20.0) == pytest.approx(at_20, rel=0.055)
    assert specific_heat_at_J_kgK(coefficients, 200.0) == pytest.approx(at_200, rel=0.055)


@pytest.mark.derived
def test_mean_specific_heat_of_steel():
    """490 J/(kg K) from 20 to 200 C, the integral of the code's cubic worked by hand."""
    steel = METALS["carbon-steel"]["specific_heat_J_kgK"]
    mean = sum(specific_heat_at_J_kgK(steel, 20.0 + 1.8 * place) for place in range(101)) / 101
    assert mean == pytest.approx(490, rel=0.01)


@pytest.mark.published
def test_conductivity_of_stainless_and_steel():
    """Incropera and DeWitt, Table A.1 (from memory): 304 14.9 W/(m K) at 300 K. EN 1993-1-2 (second-hand): carbon
    steel 53 at 20 C, 47 at 200 C."""
    assert specific_heat_at_J_kgK(METALS["stainless"]["conductivity_W_mK"], 27.0) == pytest.approx(
        14.9, rel=0.01
    )
    steel = METALS["carbon-steel"]["conductivity_W_mK"]
    assert specific_heat_at_J_kgK(steel, 20.0) == pytest.approx(53, abs=0.5)
    assert specific_heat_at_J_kgK(steel, 200.0) == pytest.approx(47, abs=0.5)
