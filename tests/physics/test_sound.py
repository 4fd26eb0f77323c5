"""Noise: energy that adds up, and times that halve."""

from __future__ import annotations

from math import log10

import pytest

from calculators.physics.sound import allowed_min, average_dBA, derated_dB, dose_percent


@pytest.mark.derived
@pytest.mark.parametrize("level", [86.0, 94.3, 101.7])
def test_the_3_dB_rule_is_equal_energy(level: float) -> None:
    """Sound energy goes with 10^(L/10), so equal energy halves the time every 3.0103 dB: within 2 % here."""
    energy = 480 * 10 ** ((85 - level) / 10)
    assert allowed_min(level, 85, 3) == pytest.approx(energy, rel=0.02)
    assert allowed_min(level, 85, 10 * log10(2)) == pytest.approx(energy)


@pytest.mark.property
@pytest.mark.parametrize(("criterion", "exchange"), [(90, 5), (85, 3)])
@pytest.mark.parametrize("dose", [1.0, 50, 100, 640])
def test_the_average_gives_its_dose_back(criterion: float, exchange: float, dose: float) -> None:
    level = average_dBA(dose, criterion, exchange)
    assert dose_percent([(level, 480)], criterion, exchange, 0) == pytest.approx(dose)


@pytest.mark.property
def test_levels_under_the_threshold_count_nothing() -> None:
    assert dose_percent([(79.9, 480)], 90, 5, 80) == 0
    assert dose_percent([(80, 480)], 90, 5, 80) == pytest.approx(25)


@pytest.mark.property
def test_a_protector_never_adds_noise() -> None:
    assert derated_dB(0) == derated_dB(5) == derated_dB(7) == 0
    assert derated_dB(0, both=True) == 5
