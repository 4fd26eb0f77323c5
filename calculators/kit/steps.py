"""Worked steps: one string is the formula, the working that is shown, and what a test evaluates again."""

from __future__ import annotations

import ast
import math
import operator
import re
from collections.abc import Callable
from dataclasses import dataclass
from functools import lru_cache

from calculators.kit.numbers import shop_number

_DIGITS = 5
_GROUPING = re.compile(r"(?<=\d),(?=\d{3}(?!\d))")  # the comma of 1,230, not the one of min(1, 2)
_OPERATORS: dict[type[ast.operator], Callable[[float, float], float]] = {
    ast.Add: operator.add,
    ast.Sub: operator.sub,
    ast.Mult: operator.mul,
    ast.Div: operator.truediv,
    ast.Pow: operator.pow,
}
_FUNCTIONS: dict[str, Callable[..., float]] = {
    "exp": math.exp,
    "ln": math.log,
    "sqrt": math.sqrt,
    "min": min,
    "max": max,
    "abs": abs,
}

_NAME = re.compile(r"(?<![\w.])[A-Za-z_]\w*(?!\w|\()")


@dataclass(frozen=True, slots=True)
class Step:
    """One line of working. formula: with symbols. numbers: the same with values in it. result: as printed, with its unit."""

    words: str
    name: str
    formula: str
    numbers: str
    result: str
    unit: str

    def __str__(self) -> str:
        unit = f" {self.unit}" if self.unit else ""
        middle = "" if self.numbers in (self.formula, self.result) else f" = {self.numbers}"
        return f"{self.words}: {self.name} = {self.formula}{middle} = {self.result}{unit}"


def step(words: str, formula: str, unit: str = "", /, **values: float) -> Step:
    """Work one line out. formula: `name = expression` of the values' names, + - * / ** and exp ln sqrt min max abs.

    >>> print(step("Heat", "Q = m * c * (T2 - T1)", "kJ", m=10, c=0.49, T2=120, T1=20))
    Heat: Q = m * c * (T2 - T1) = 10 * 0.49 * (120 - 20) = 490 kJ
    """
    name, expression = (part.strip() for part in formula.split(" = ", 1))
    tree, plain = _parsed(expression)
    # what is printed must give what is printed: the printed, rounded numbers are the ones that are worked with
    shown = {key: _printed(value) for key, value in values.items()}
    numbers = _NAME.sub(lambda found: _put(shown[found[0]]) if found[0] in shown else found[0], plain)
    result = _value(tree, shown)
    return Step(words, name, _spaced(expression), _spaced(numbers), shop_number(result, 4), unit)


def _printed(value: float) -> float:
    return float(shop_number(value, _DIGITS).replace(",", ""))


def _spaced(expression: str) -> str:
    return expression.replace("**", "^").replace(" ^ ", "^")


@lru_cache(maxsize=512)
def _parsed(expression: str) -> tuple[ast.expr, str]:
    """The formula's tree, and its text with one spacing throughout."""
    tree = ast.parse(expression, mode="eval").body
    return tree, ast.unparse(tree)


def _put(value: float) -> str:
    size = abs(value)
    number = repr(int(size) if size == int(size) and size < 1e15 else size)
    # a minus sign of its own gets its brackets, as a power needs them: (-5)^2
    return f"(-{number})" if value < 0 else number


def evaluate(expression: str) -> float:
    """The value of a printed line of working: numbers, + - * / ^, brackets and the functions that steps know.

    Raises ValueError for anything else; nothing is ever run as code.
    """
    plain = _GROUPING.sub("", expression.replace("^", "**"))
    try:
        tree = ast.parse(plain, mode="eval")
    except SyntaxError:
        raise ValueError(f"{expression!r} is not a line of working") from None
    return _value(tree.body, {})


def _value(node: ast.expr, values: dict[str, float]) -> float:
    match node:
        case ast.Constant(value=int() | float() as number) if not isinstance(number, bool):
            return float(number)
        case ast.Name(id=name) if name in values:
            return float(values[name])
        case ast.UnaryOp(op=ast.USub(), operand=inner):
            return -_value(inner, values)
        case ast.BinOp(left=left, op=op, right=right) if type(op) in _OPERATORS:
            return _OPERATORS[type(op)](_value(left, values), _value(right, values))
        case ast.Call(func=ast.Name(id=name), args=args, keywords=[]) if name in _FUNCTIONS:
            return _FUNCTIONS[name](*(_value(one, values) for one in args))
    raise ValueError(f"a step may not hold {ast.unparse(node)}")
