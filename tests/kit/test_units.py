"""The table of units: definitions, kinds, and that no spelling means two things."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest

from calculators.kit.grammar import unit_named
from calculators.kit.units import UNITS, convert, registry

ROOT = Path(__file__).resolve().parents[2]


@pytest.mark.published
@pytest.mark.parametrize(
    ("number", "source", "target", "expected"),
    [
        (3, "mil", "um", 76.2),
        (1, "in", "mm", 25.4),
        (1, "ft", "m", 0.3048),
        (1, "lb", "kg", 0.45359237),
        (1, "oz", "g", 28.349523125),
        (1, "ft2", "m2", 0.09290304),
        (1, "in2", "cm2", 6.4516),
        (1, "in2", "mm2", 645.16),
        (212, "degF", "degC", 100),
        (32, "degF", "degC", 0),
        (-40, "degC", "degF", -40),
        (50, "dF", "dC", 27.7777777778),
        (1, "h", "s", 3600),
        (1, "Btu_hft2F", "W_m2K", 5.678263),
        (50, "percent", "ratio", 0.5),
        (1, "ft2_lb", "m2_kg", 0.2048161),
        (1, "Btu", "joule", 1055.056),
        (1, "kWh", "MJ", 3.6),
        (1, "Btu_h", "W", 0.2930711),
        (1, "hp", "W", 745.6999),
        (1, "lbf", "N", 4.448222),
        (1, "psi", "kPa", 6.894757),
        (1, "bar", "kPa", 100),
        (1, "gal", "L", 3.785412),
        (1, "ft3", "m3", 0.02831685),
        (1, "cfm", "m3_s", 4.719474e-4),
        (1, "ft_min", "m_s", 0.00508),
        (1, "lb_h", "kg_h", 0.45359237),
        (1, "lb_ft3", "kg_m3", 16.01846),
        (1, "lb_ft2", "kg_m2", 4.882428),
        (1, "oz_ft2", "g_m2", 305.1517),
        (1, "lb_ft", "kg_m", 1.488164),
        (1, "ug_cm2", "mg_m2", 10),
        (1, "mg_L", "g_m3", 1),
        (1, "therm", "MJ", 105.505585262),
    ],
)
def test_conversion__nist_sp_811_appendix_b8(
    number: float, source: str, target: str, expected: float
) -> None:
    """NIST Special Publication 811 (2008), Appendix B.8, factors to its printed digits; quoted from memory."""
    assert convert(number, source, target) == pytest.approx(expected, rel=1e-6, abs=1e-9)


@pytest.mark.property
@pytest.mark.parametrize("slug", UNITS)
def test_there_and_back(slug: str) -> None:
    for other in UNITS.values():
        if other.kind == UNITS[slug].kind:
            assert convert(convert(123.4, slug, other.slug), other.slug, slug) == pytest.approx(
                123.4, rel=1e-12
            )


def test_kinds_agree_with_pint() -> None:
    """Within one kind all dimensions are the same, and a kind of its own has a dimension or a reason."""
    dimensions: dict[str, set[str]] = {}
    for unit in UNITS.values():
        dimensions.setdefault(unit.kind, set()).add(str(registry().Unit(unit.slug).dimensionality))
    assert {kind: found for kind, found in dimensions.items() if len(found) != 1} == {}
    alike = {kind for kind, found in dimensions.items() if found == dimensions["temperature"]}
    assert alike == {"temperature", "temperature difference"}
    others = [next(iter(found)) for kind, found in dimensions.items() if kind != "temperature difference"]
    assert len(others) == len(set(others))


def test_one_spelling_means_one_unit_of_its_kind() -> None:
    for kind in {unit.kind for unit in UNITS.values()}:
        alike = tuple(unit.slug for unit in UNITS.values() if unit.kind == kind)
        for slug in alike:
            for spelling in UNITS[slug].spellings:
                if spelling:
                    assert unit_named(spelling, alike) == slug, spelling


@pytest.mark.parametrize(
    ("text", "units", "expected"),
    [
        ("mohm", ("ohm", "mohm", "Mohm"), "mohm"),
        ("Mohm", ("ohm", "mohm", "Mohm"), "Mohm"),
        ("MOHM", ("ohm", "mohm", "Mohm"), None),
        ("M\u2126", ("ohm", "mohm", "Mohm"), "Mohm"),
        ("m\u03a9", ("ohm", "mohm", "Mohm"), "mohm"),
        ("mohm", ("ohm", "Mohm"), None),
        ("Megohms", ("ohm", "Mohm"), "Mohm"),
        ("KOHM", ("ohm", "kohm", "Mohm"), "kohm"),
        ("mJ", ("mJ", "MJ"), "mJ"),
        ("MJ", ("mJ", "joule"), None),
        ("PSI", ("psi", "bar"), "psi"),
    ],
)
def test_capitals_count_where_they_change_the_size(
    text: str, units: tuple[str, ...], expected: str | None
) -> None:
    assert unit_named(text, units) == expected


def test_pint_waits_for_the_first_conversion() -> None:
    code = (
        "import sys\n"
        "from calculators import run, slugs\n"
        "from calculators.kit import cli, find\n"
        "assert cli.main([]) == 0 and cli.main(['--help']) == 0 and cli.main(['--json']) == 0\n"
        "for slug in slugs(): assert cli.main([slug, '--help']) == 0\n"
        "assert not [name for name in sys.modules if name.split('.')[0] == 'pint'], 'pint was imported'\n"
        "assert run('powder-needed', {}).ok and 'pint' in sys.modules\n"
    )
    done = subprocess.run(
        [sys.executable, "-c", code], cwd=ROOT, capture_output=True, text=True, encoding="utf-8"
    )
    assert done.returncode == 0, done.stderr[-2000:]
