"""How the build grows with the number of calculators: pages built with so many copies of one, in a copy of the tree."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
import tempfile
import time
from collections.abc import Iterator, Sequence
from pathlib import Path

from environment import ROOT, VENV

SLUG, STAGE = "powder-needed", "spray"
BUILD = "import sys; sys.path[:0] = ['scripts', '.']; import build; build.build(engine=False, draft=True)"


def copy_tree(to: Path) -> None:
    """The project's own files, without what git leaves out."""
    command = ["git", "ls-files", "--cached", "--others", "--exclude-standard"]
    listed = subprocess.run(command, cwd=ROOT, check=True, capture_output=True, text=True).stdout
    for name in listed.splitlines():
        if (ROOT / name).is_file() and not name.startswith(("tests/", ".venv")):
            (to / name).parent.mkdir(parents=True, exist_ok=True)
            shutil.copy(ROOT / name, to / name)
    (to / ".venv").symlink_to(VENV)


def add(tree: Path, first: int, last: int) -> None:
    """Calculators of other names, each a copy with its page; so many that nothing they share is shared by being one."""
    name = SLUG.replace("-", "_")
    module = (tree / "calculators" / STAGE / f"{name}.py").read_text("utf-8")
    page = (tree / "docs" / STAGE / f"{SLUG}.md").read_text("utf-8")
    for number in range(first, last):
        slug = f"grown-{number}"
        words = f"Grown {number}"
        own = module.replace('title="Powder needed"', f'title="{words}"')
        (tree / "calculators" / STAGE / f"grown_{number}.py").write_text(own, "utf-8")
        own = page.replace("title: Powder needed", f"title: {words}").replace("# Powder needed", f"# {words}")
        own = own.replace(f": {SLUG} -->", f": {slug} -->")
        (tree / "docs" / STAGE / f"{slug}.md").write_text(own, "utf-8")


def measure(counts: Sequence[int]) -> Iterator[tuple[int, float, int]]:
    """Seconds of a build of the pages, and pages built, for so many calculators more than there are."""
    with tempfile.TemporaryDirectory() as folder:
        tree, have = Path(folder) / "tree", 0
        copy_tree(tree)
        for count in counts:
            add(tree, have, count)
            have = count
            began = time.monotonic()
            surroundings = {**os.environ, "PYTHONDONTWRITEBYTECODE": ""}
            done = subprocess.run(
                [sys.executable, "-c", BUILD], cwd=tree, env=surroundings, capture_output=True, text=True
            )
            if done.returncode:
                raise SystemExit(f"The copy was not built:\n{done.stderr[-2000:]}")
            pages = len(list((tree / "site").rglob("index.html")))
            yield count, time.monotonic() - began, pages


def table(counts: Sequence[int] = (0, 50, 100, 300)) -> Iterator[str]:
    yield "| calculators added | pages | build of the pages | for each added |"
    yield "|---|---|---|---|"
    base = 0.0
    for count, seconds, pages in measure(counts):
        base = base or seconds
        each = f"{(seconds - base) / count:.3f} s" if count else ""
        yield f"| {count} | {pages} | {seconds:.1f} s | {each} |"
