"""Write a call's arguments and result as JSON, and compare two results: for calls that are recorded and replayed.

Standard library only, as the engine under test reads this file too.
"""

from __future__ import annotations

import dataclasses
import math
import sys
from typing import Any

RELATIVE = 1e-9
ABSOLUTE = 1e-12  # where a difference of near equals should be nothing


class NotPlain(TypeError):
    """The value cannot be written down: a function, say, or an object with a life of its own."""


def encode(value: Any) -> Any:
    if value is None or isinstance(value, bool | str):
        return value
    if isinstance(value, int):
        return int(value)
    if isinstance(value, float):
        return float(value)
    if isinstance(value, list):
        return [encode(one) for one in value]
    if isinstance(value, tuple) and type(value) is tuple:
        return {"tuple": [encode(one) for one in value]}
    if isinstance(value, dict):
        return {"dict": [[encode(key), encode(one)] for key, one in value.items()]}
    if dataclasses.is_dataclass(value) and not isinstance(value, type):
        fields = {field.name: encode(getattr(value, field.name)) for field in dataclasses.fields(value)}
        return {"object": f"{type(value).__module__}:{type(value).__qualname__}", "fields": fields}
    raise NotPlain(f"{type(value).__name__} cannot be recorded")


def decode(written: Any) -> Any:
    if isinstance(written, list):
        return [decode(one) for one in written]
    if not isinstance(written, dict):
        return written
    if "tuple" in written:
        return tuple(decode(one) for one in written["tuple"])
    if "dict" in written:
        return {decode(key): decode(one) for key, one in written["dict"]}
    module, name = written["object"].split(":")
    made = object.__new__(getattr(sys.modules[module], name))
    for field, value in written["fields"].items():
        object.__setattr__(made, field, decode(value))
    return made


def call(module: str, function: str, args: Any, kwargs: Any) -> dict[str, Any]:
    """Call a function with arguments as written down; its result, or what it raised, in the same form."""
    try:
        found = getattr(sys.modules[module], function)
        return {"result": encode(found(*decode(args), **decode(kwargs)))}
    except Exception as error:
        return {"raised": type(error).__name__, "message": str(error)}


def alike(one: Any, other: Any) -> bool:
    """Whether two written results are the same, floats to 1e-9."""
    if isinstance(one, bool) or isinstance(other, bool):
        return one is other
    if isinstance(one, int | float) and isinstance(other, int | float):
        both_nan = math.isnan(one) and math.isnan(other)
        return both_nan or math.isclose(one, other, rel_tol=RELATIVE, abs_tol=ABSOLUTE)
    if isinstance(one, list) and isinstance(other, list):
        return len(one) == len(other) and all(map(alike, one, other))
    if isinstance(one, dict) and isinstance(other, dict):
        return one.keys() == other.keys() and all(alike(one[key], other[key]) for key in one)
    return type(one) is type(other) and one == other
