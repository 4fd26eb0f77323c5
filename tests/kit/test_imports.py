"""Who may import whom."""

from __future__ import annotations

import ast
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest

from calculators.kit.find import STAGES

ROOT = Path(__file__).resolve().parents[2]
SHIPPED = sorted((ROOT / "calculators").rglob("*.py"))


def imported(path: Path) -> Iterator[str]:
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Import):
            yield from (one.name for one in node.names)
        elif isinstance(node, ast.ImportFrom):
            assert node.level == 0, f"{path.name}: a relative import"
            yield node.module or ""
            yield from (f"{node.module}.{one.name}" for one in node.names)


def roots(path: Path) -> set[str]:
    return {name.split(".")[0] for name in imported(path)}


def home(path: Path) -> str:
    return path.relative_to(ROOT / "calculators").parts[0]


@pytest.mark.parametrize("path", SHIPPED, ids=lambda path: path.relative_to(ROOT).as_posix())
def test_the_lines_between_the_parts_hold(path: Path) -> None:
    outside = roots(path) - set(sys.stdlib_module_names) - {"calculators"}
    allowed = {"pint"} if path == ROOT / "calculators/kit/units.py" else set()
    assert outside <= allowed, "shipped code stands on the standard library; only kit/units.py imports pint"
    inside = {name.split(".")[1] for name in imported(path) if name.startswith("calculators.")}
    match home(path):
        case "physics":
            assert inside <= {"physics"}
        case "tables":
            assert inside <= {"tables"}
        case "kit":
            assert not inside & {*STAGES, "physics"}
        case stage if stage in STAGES:
            assert inside <= {"kit", "physics", "tables", stage}


def test_only_scripts_import_mkdocs() -> None:
    found = [
        path for folder in ("calculators", "tests") for path in (ROOT / folder).rglob("*.py")
        if {"mkdocs", "material"} & roots(path) and "site" not in path.parts
    ]  # fmt: skip
    assert found == []


def test_pint_is_imported_inside_a_function() -> None:
    tree = ast.parse((ROOT / "calculators/kit/units.py").read_text(encoding="utf-8"))
    top = [node for node in tree.body if isinstance(node, ast.Import)]
    assert not [one.name for node in top for one in node.names if one.name.startswith("pint")]
