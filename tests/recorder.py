"""Record what the tests ask of the calculators, so that the shipped engine can be asked the same.

A pytest plugin. It wraps `run` and the public functions of `calculators.physics` while the tests run, and adds the
calls to .cache/replay/calls.jsonl; tests/runtime replays them. Calls made inside a recorded call are left out: they
are replayed with it. Of very many calls to one function an even sample is kept.
"""

from __future__ import annotations

import bisect
import contextlib
import hashlib
import importlib
import inspect
import json
import pkgutil
import types
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest

from tests.call_codec import NotPlain, encode

ROOT = Path(__file__).resolve().parent.parent
CALLS = ROOT / ".cache" / "replay" / "calls.jsonl"
# A run takes some milliseconds in the engine, a formula next to nothing.
KEPT_PER_CALCULATOR = 120
KEPT_PER_FORMULA = 200
LONGEST_LINE = 50_000
# Tests of built things: these replay, and do not record.
APART = {"runtime", "site", "browser"}


def source_hash() -> str:
    """Tells whether a record belongs to the calculators as they are now."""
    digest = hashlib.sha256()
    for path in sorted((ROOT / "calculators").rglob("*")):
        if path.suffix in {".py", ".toml"}:
            digest.update(path.relative_to(ROOT).as_posix().encode() + b"\0" + path.read_bytes())
    return digest.hexdigest()


class Sample:
    """The calls with the smallest hashes: which ones are kept depends on neither order nor repetition."""

    def __init__(self, size: int) -> None:
        self.size = size
        self.hashes: list[str] = []
        self.lines: dict[str, str] = {}

    def wants(self, digest: str) -> bool:
        room = len(self.hashes) < self.size or digest < self.hashes[-1]
        return room and digest not in self.lines

    def add(self, digest: str, line: str) -> None:
        if not self.wants(digest) or len(line) > LONGEST_LINE:
            return
        bisect.insort(self.hashes, digest)
        self.lines[digest] = line
        if len(self.hashes) > self.size:
            del self.lines[self.hashes.pop()]


class Recorder:
    def __init__(self) -> None:
        self.samples: dict[str, Sample] = {}
        self.recording = False  # while a test runs that is to be recorded
        self.inside = False  # within a recorded call

    def note(self, call: dict[str, Any], result: Callable[[], dict[str, Any]] | None = None) -> None:
        name = call.get("slug") or f"{call['module']}:{call['function']}"
        kept = KEPT_PER_CALCULATOR if "slug" in call else KEPT_PER_FORMULA
        sample = self.samples.setdefault(name, Sample(kept))
        digest = hashlib.sha256(json.dumps(call).encode()).hexdigest()
        if sample.wants(digest):
            sample.add(digest, json.dumps(call | (result() if result else {})))

    def load(self, path: Path) -> None:
        """Go on with a record so far, unless the calculators have changed since."""
        if not path.is_file():
            return
        first, *lines = path.read_text(encoding="utf-8").splitlines()
        if json.loads(first).get("sources") != source_hash():
            return
        for line in lines:
            call = json.loads(line)
            self.note(
                {key: call[key] for key in call if key not in ("result", "raised", "message")},
                lambda c=call: c,
            )

    def save(self, path: Path) -> None:
        lines = [
            sample.lines[digest] for _, sample in sorted(self.samples.items()) for digest in sample.hashes
        ]
        if not lines:
            return
        path.parent.mkdir(parents=True, exist_ok=True)
        writing = path.with_suffix(".writing")
        writing.write_text("\n".join([json.dumps({"sources": source_hash()}), *lines, ""]), encoding="utf-8")
        writing.replace(path)

    def wrap_all(self) -> None:
        physics = importlib.import_module("calculators.physics")
        for found in pkgutil.iter_modules(physics.__path__, "calculators.physics."):
            # One module after the other, so that a later one already imports the wrapped functions.
            module = importlib.import_module(found.name)
            for name, function in list(vars(module).items()):
                if inspect.isfunction(function) and function.__module__ == found.name and name[0] != "_":
                    setattr(module, name, self._wrapped(module, function, self._note_formula))
        door = importlib.import_module("calculators.kit.run")
        door.run = self._wrapped(door, door.run, self._note_run)

    def _wrapped(self, module: types.ModuleType, function: Any, note: Callable[..., None]) -> Any:
        recorder = self

        def recorded(*args, **kwargs):  # type: ignore[no-untyped-def]
            if not recorder.recording or recorder.inside:
                return function(*args, **kwargs)
            recorder.inside = True
            try:
                return note(function, args, kwargs)
            finally:
                recorder.inside = False

        # With the module's own globals, or doctest takes the function for one imported from elsewhere.
        wrapped = types.FunctionType(
            recorded.__code__, vars(module), function.__name__, None, recorded.__closure__
        )
        wrapped.__wrapped__ = function  # type: ignore[attr-defined]
        for name in ("__doc__", "__module__", "__qualname__", "__annotations__"):
            setattr(wrapped, name, getattr(function, name))
        return wrapped

    def _note_run(self, function: Any, args: Any, kwargs: Any) -> Any:
        bound = inspect.signature(function).bind(*args, **kwargs).arguments
        texts = dict(bound["texts"])
        outcome = function(*args, **kwargs)  # a slug that is not there raises here, and is no call to replay
        if all(isinstance(one, str) for pair in texts.items() for one in pair):
            self.note({"slug": bound["slug"], "texts": texts})
        return outcome

    def _note_formula(self, function: Any, args: Any, kwargs: Any) -> Any:
        try:
            # Before the call, which may change a list that it is given.
            call = {
                "module": function.__module__,
                "function": function.__name__,
                "args": encode(list(args)),
                "kwargs": encode(kwargs),
            }
        except NotPlain:
            return function(*args, **kwargs)
        try:
            result = function(*args, **kwargs)
        except Exception as error:
            raised = {"raised": type(error).__name__, "message": str(error)}
            self.note(call, lambda: raised)
            raise
        with contextlib.suppress(NotPlain):
            self.note(call, lambda: {"result": encode(result)})
        return result


RECORDER = Recorder()


def pytest_configure() -> None:
    RECORDER.wrap_all()
    RECORDER.load(CALLS)


@pytest.hookimpl(wrapper=True)
def pytest_runtest_protocol(item: pytest.Item) -> Iterator[None]:
    RECORDER.recording = not APART & set(item.path.relative_to(ROOT).parts)
    try:
        return (yield)
    finally:
        RECORDER.recording = False


def pytest_sessionfinish(session: pytest.Session) -> None:
    """Each of several processes leaves its part; the one that started them, which ends last, puts them together."""
    if worker := getattr(session.config, "workerinput", {}).get("workerid"):
        RECORDER.save(CALLS.with_name(f"part-{worker}.jsonl"))
        return
    parts = sorted(CALLS.parent.glob("part-*.jsonl"))
    for part in parts:
        RECORDER.load(part)
    RECORDER.save(CALLS)
    for part in parts:
        part.unlink()
