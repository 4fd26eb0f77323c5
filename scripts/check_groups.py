"""The groups of checks that check.py runs: what each one runs and which other groups it stands on."""

from __future__ import annotations

import subprocess
import sys
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

import environment
from environment import ROOT

SCRIPTS = ROOT / "scripts"
TESTS = ROOT / "tests"
# These test folders need something built first, so they are not part of the unit tests.
APART = ("runtime", "site", "browser", "other_browsers")


class Failed(Exception):
    """A group found something wrong; the message says what in a few words."""


class Skipped(Exception):
    """A group has nothing to check; the message says why."""


@dataclass(frozen=True)
class Group:
    name: str
    what: str
    # gives words for the last lines, where there is more to say than that it passed
    work: Callable[[], str | None]
    needs: tuple[str, ...] = ()


def run(*command: str | Path, problem: str) -> None:
    """Run a command from the project's root with its output in view."""
    sys.stdout.flush()
    done = subprocess.run([str(part) for part in command], cwd=ROOT, stdin=subprocess.DEVNULL)
    if done.returncode != 0:
        raise Failed(problem)


def run_script(name: str, *words: str, problem: str) -> None:
    if not (SCRIPTS / name).is_file():
        raise Failed(f"scripts/{name} is missing")
    run(sys.executable, SCRIPTS / name, *words, problem=problem)


def run_tests(folder: Path, *words: str | Path) -> None:
    if not any(folder.rglob("test_*.py")):
        raise Skipped(f"no tests in {folder.relative_to(ROOT).as_posix()}")
    # Finding no test is an error of its own to pytest, and so a failure here.
    run(sys.executable, "-m", "pytest", "-q", folder, *words, problem="a test failed")


# A process for each of two cores; one that has done its half takes over from the other's.
TWO_AT_A_TIME = ("-n", "2", "--dist", "worksteal")


def lint() -> None:
    ruff = (sys.executable, "-m", "ruff")
    problems = []
    # Both are shown, so that one run tells all there is to mend.
    for words, problem in [
        (("check", "."), "ruff check found something"),
        (("format", "--check", "."), "run: .venv/bin/ruff format ."),
    ]:
        try:
            run(*ruff, *words, problem=problem)
        except Failed as found:
            problems.append(str(found))
    if problems:
        raise Failed("; ".join(problems))


def types() -> None:
    run(sys.executable, "-m", "mypy", problem="mypy found something")


def unit() -> None:
    ignored = [f"--ignore={TESTS / name}" for name in APART]
    run_tests(TESTS, ROOT / "calculators", "--doctest-modules", *ignored, *TWO_AT_A_TIME)


def js() -> None:
    assets = ROOT / "docs" / "assets"
    workers = set(assets.rglob("*.worker.mjs"))
    pages = set(assets.rglob("*.mjs")) - workers
    if not workers | pages:
        raise Skipped("no JavaScript modules in docs/assets")
    compiler = environment.NODE_FOLDER / "node_modules/typescript/bin/tsc"
    # A worker and a page know different globals, so each has its own settings.
    for found, settings in [(pages, "tsconfig.page.json"), (workers, "tsconfig.worker.json")]:
        if found:
            run(
                environment.node(),
                compiler,
                "-p",
                environment.LOCKS / settings,
                problem="tsc found something",
            )


def runtime() -> None:
    run_script("engine.py", "verify", problem="the engine could not be built twice alike")
    run_tests(TESTS / "runtime")


def build() -> None:
    run_script("build.py", problem="the site could not be built")


def site() -> None:
    run_tests(TESTS / "site", *TWO_AT_A_TIME)


def browser() -> None:
    try:
        print(f"Chromium: {environment.chromium()}")
    except environment.SetupFailed as problem:
        print(problem)
        raise Failed("no Chromium to test with") from problem
    run_tests(TESTS / "browser", *TWO_AT_A_TIME)


def other_browsers() -> str | None:
    sys.path.insert(0, str(ROOT))
    from tests.other_browsers import firefox, webkit

    reasons = [(one.NAME, one.why_not()) for one in (webkit, firefox)]
    missing = "; ".join(f"{name} not run: {why}" for name, why in reasons if why)
    if all(why for _, why in reasons):
        raise Skipped(missing)
    run_tests(TESTS / "other_browsers", "-s")
    return missing


def audit() -> None:
    done = subprocess.run([sys.executable, str(SCRIPTS / "audit.py")], cwd=ROOT, stdin=subprocess.DEVNULL)
    if done.returncode == 3:
        raise Skipped("not run, or in part only: see above who gave no answer")
    if done.returncode:
        raise Failed("a package has a known defect, see above")


GROUPS = (
    Group("lint", "ruff: mistakes and format", lint),
    Group("types", "mypy: types of the calculators", types),
    Group("unit", "unit tests and the examples in docstrings", unit),
    Group("js", "tsc: types of the JavaScript modules", js),
    # The unit tests record their calls, and the shipped engine must answer each of them alike.
    Group("runtime", "the engine, built and asked in Node", runtime, needs=("unit",)),
    Group("build", "the site, built strictly", build),
    Group("site", "the built pages", site, needs=("build",)),
    Group("browser", "the built site in a browser", browser, needs=("build",)),
    Group(
        "others", "the built site in WebKitGTK and Firefox, where they are", other_browsers, needs=("build",)
    ),
    Group("audit", "known defects of what the locks name", audit),
)

SETS = {"fast": ("lint", "types", "unit")}


def chosen(only: list[str]) -> list[Group]:
    """The groups asked for, and those they stand on, in order; all of them when none is named."""
    if not only:
        return list(GROUPS)
    wanted = {name for word in only for name in SETS.get(word, (word,))}
    for group in reversed(GROUPS):
        if group.name in wanted:
            wanted.update(group.needs)
    return [group for group in GROUPS if group.name in wanted]
