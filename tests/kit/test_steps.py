"""Worked lines: what is printed gives what is printed, and nothing typed is run."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calculators.kit.numbers import shop_number
from calculators.kit.steps import evaluate, step


@pytest.mark.derived
@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("1 + 2 * 3", 7),
        ("(1 + 2) * 3", 9),
        ("2 ^ 3 ^ 2", 512),
        ("-2 ^ 2", -4),
        ("(-2) ^ 2", 4),
        ("1,230 / 10", 123),
        ("min(1, 2) + max(1, 2, 3)", 4),
        ("min(1,230, 5)", 5),
        ("exp(0) + ln(1) + sqrt(16) + abs(-3)", 8),
    ],
)
def test_evaluate(text: str, expected: float) -> None:
    """By hand, with the usual order of operations."""
    assert evaluate(text) == pytest.approx(expected)


@pytest.mark.parametrize(
    "text",
    [
        "__import__('os').system('true')", "open('x')", "().__class__", "lambda: 1", "[1][0]", "'a'", "x", "1 if 1 else 2",
        "exec('1')", "exp(x=1)", "(1).real", "1 < 2", "{}", "f'{1}'", "1 // 2", "1 @ 2", "print(1)", "exp.__call__(1)", "1 +", "",
        "1; 2", "x := 1", "True", "1j",
    ],
)  # fmt: skip
def test_evaluate_refuses_code(text: str) -> None:
    with pytest.raises(ValueError):
        evaluate(text)


def test_a_step_prints_symbols_numbers_and_result() -> None:
    line = step("Heat", "Q = m * c * (T2 - T1)", "kJ", m=10, c=0.49, T2=120, T1=20)
    assert str(line) == "Heat: Q = m * c * (T2 - T1) = 10 * 0.49 * (120 - 20) = 490 kJ"


def test_a_negative_number_keeps_its_sign_under_a_power() -> None:
    line = step("Square", "y = x ** 2", x=-5)
    assert line.result == "25"
    assert evaluate(line.numbers) == 25


@pytest.mark.property
@settings(max_examples=200, deadline=None, derandomize=True)
@given(
    st.floats(-1e5, 1e5).filter(lambda x: x == 0 or abs(x) > 1e-5),
    st.floats(-1e5, 1e5).filter(lambda x: abs(x) > 1e-5),
    st.sampled_from(["a + b", "a - b", "a * b", "a / b", "a ** 2 - b ** 2", "(a - b) / b", "-a * b", "min(a, b)", "max(a, 1)"]),
)  # fmt: skip
def test_what_is_printed_gives_what_is_printed(a: float, b: float, expression: str) -> None:
    line = step("Line", f"y = {expression}", a=a, b=b)
    assert shop_number(evaluate(line.numbers), 4) == line.result


def test_a_step_refuses_what_it_cannot_work_out() -> None:
    with pytest.raises(ValueError):
        step("Line", "y = a.b", a=1)
    with pytest.raises(ValueError):
        step("Line", "y = a + b", a=1)
