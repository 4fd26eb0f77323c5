"""Points of Student's t, against scipy."""

import pytest
from scipy.stats import t

from calculators.physics.confidence import student_t_95


@pytest.mark.published
@pytest.mark.parametrize("freedom", range(1, 31))
def test_points_of_student_t(freedom):
    """scipy.stats.t.ppf at 0.975, a general-purpose library, to the three decimals of a printed table."""
    assert student_t_95(freedom) == pytest.approx(t.ppf(0.975, freedom), abs=0.00051)


@pytest.mark.property
def test_beyond_the_table_it_claims_no_less_than_due():
    assert all(student_t_95(freedom) >= t.ppf(0.975, freedom) for freedom in (31, 60, 1000))


def test_no_readings_to_spare():
    with pytest.raises(ValueError, match="more readings"):
        student_t_95(0)
