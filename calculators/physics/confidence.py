"""How far off may a fitted number be, when only a few readings stand behind it?"""

# Two-sided 95 % points of Student's t, from 1 degree of freedom on.
_T_95 = (
    12.706, 4.303, 3.182, 2.776, 2.571, 2.447, 2.365, 2.306, 2.262, 2.228,
    2.201, 2.179, 2.160, 2.145, 2.131, 2.120, 2.110, 2.101, 2.093, 2.086,
    2.080, 2.074, 2.069, 2.064, 2.060, 2.056, 2.052, 2.048, 2.045, 2.042,
)  # fmt: skip


def student_t_95(freedom: int) -> float:
    """How many standard errors hold 95 % of the cases, both sides together.

    t such that P(|T| <= t) = 0.95, T with Student's distribution

    freedom: degrees of freedom: readings less fitted numbers, at least 1.   Returns t, no unit.

    Holds: readings that scatter evenly and apart from each other.
    Source: table of Student's t in any text on statistics (seen: memory; a test holds it to scipy).
    Departs from the source: over 30 degrees of freedom it stays at the value for 30, which is a little more than due.

    >>> student_t_95(2), student_t_95(28), student_t_95(500)
    (4.303, 2.048, 2.042)
    """
    if freedom < 1:
        raise ValueError("a spread needs more readings than fitted numbers")
    return _T_95[min(freedom, len(_T_95)) - 1]
