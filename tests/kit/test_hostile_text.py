"""Text that nobody types in good faith is answered or refused in a time that grows as its length does, and never hangs.

Each text is read in a process of its own, which is ended after a time that is many times what reading needs.
"""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]
LONG = 100_000
PATIENCE_S = 60

READ = """
import sys
from calculators.kit.read import Refused, read_field
from tests.kit.test_messages import Form
from tests.kit.test_readings_text import FILM
from tests.kit.test_table_text import BAKES, LOG

for start, middle, end in eval(sys.argv[1]):
    for one in (LOG, BAKES, FILM):
        for unit in ("", middle * {long}):
            try:
                read_field(one, start + middle * {long} + end, unit, [])
            except Refused:
                pass
print("all read")
"""


def read_in_time(texts: list[tuple[str, str, str]]) -> None:
    """Each text: its start, what is said over and over, its end."""
    done = subprocess.run(
        [sys.executable, "-c", READ.replace("{long}", str(LONG)), repr(texts)],
        cwd=ROOT, capture_output=True, text=True, encoding="utf-8", timeout=PATIENCE_S,
    )  # fmt: skip
    assert done.stdout == "all read\n", done.stderr[-2000:]


@pytest.mark.parametrize("start", ["time (", "time [", "time / ", "time_", "time, "])
def test_a_heading_s_unit_is_looked_for_once(start: str) -> None:
    """An open bracket and twenty thousand spaces, in a heading over a table's or a gauge's numbers."""
    read_in_time(
        [
            (start, " ", "x,metal\n0,70\n5,212"),
            (start, " ", "/x,metal\n0,70\n5,212"),
            (f"{start}s),reading (", " ", "x\n1,2\n2,3\n3,4"),
            (f"a;{start}", " ", "x;reading\n1;2\n2;3\n3;4"),
        ]
    )


@pytest.mark.parametrize(
    "sign", [" ", "\u00a0", "1", "1.", "1,", ".1,", "1 ", "½", "²", "(", "( ", "_", "/", "-", "e1", "'", "a", ":", "1:"]
)  # fmt: skip
def test_one_sign_over_and_over(sign: str) -> None:
    read_in_time(
        [
            ("", sign, "x"),
            ("Thickness,Unit\n", sign, "x,mil"),
            ("Thickness;Unit\n1,", sign, "x;mil\n2;mil"),
            ("time (min),metal (F)\n", sign, "x,70\n5,212"),
            ("time (min),metal (F)\n0,", sign, "x\n5,212"),
        ]
    )
