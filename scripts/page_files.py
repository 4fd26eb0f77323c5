"""What a page asks for, put into few and short files: each is a wait of its own on a phone, and work in the page."""

from __future__ import annotations

import json
import subprocess
from collections.abc import Iterable
from dataclasses import dataclass
from pathlib import Path

import environment

FORM = "calculator/calculator-form.mjs"
# On every page, so each is a file that holds all it needs.
EVERY_PAGE = ("search/asked-words.mjs", "offline/keep.mjs")
WORKERS = ("calculator/engine.worker.mjs", "offline/mend.worker.mjs")


@dataclass(frozen=True)
class PageFiles:
    """Texts by path below the assets, in place of what lies there."""

    scripts: dict[str, str]
    sheets: dict[str, str]
    of_calculators: list[str]  # the scripts that a page with a calculator asks for


def made_of(assets: Path, of_pages: Iterable[str], sheets: Iterable[str]) -> PageFiles:
    """Bundle the modules below a folder, and shorten its style sheets.

    of_pages: modules that single pages name, beside the calculators' own.
    """
    # parts that several share lie beside the form, as one of them looks for the worker in its own folder
    pages = {"splitting": True, "minify": True, "chunkNames": "calculator/part-[hash]"}
    builds = [
        {"entryPoints": sorted({FORM, *of_pages}), **pages},
        {"entryPoints": EVERY_PAGE, "minify": True},
        # The first asks for the second only where something is damaged. They stay readable: what fails is said in their words.
        {"entryPoints": WORKERS, "external": ["../offline/*"]},
    ]
    asked = {
        "node": str(environment.NODE_FOLDER),
        "assets": str(assets.resolve()),
        "builds": builds,
        "sheets": {name: (assets / name).read_text("utf-8") for name in sheets},
    }
    command = [str(environment.node()), str(Path(__file__).with_name("bundle.mjs"))]
    done = subprocess.run(
        command, input=json.dumps(asked), stdout=subprocess.PIPE, encoding="utf-8", check=True
    )
    made = json.loads(done.stdout)
    scripts = {name: file for one in made["scripts"] for name, file in one.items()}
    needed = [FORM]
    for name in needed:  # it grows meanwhile
        needed += [one for one in scripts[name]["imports"] if one not in needed]
    return PageFiles({name: file["text"] for name, file in scripts.items()}, made["sheets"], needed)
