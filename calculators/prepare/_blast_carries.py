"""Where blast-or-not leads on to: the next calculators, filled in with what was answered."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from calculators.kit.result import Carry
from calculators.kit.rules import Ruling

# Rust or coating that takes longest counts.
_HEAVY = {"rust": ("heavy",), "coating": ("flaking", "unknown", "paint-sound", "powder-sound")}
_SCALE = ("mill-scale", "not-sure")
_LOW_PRESSURE = ("zinc", "thin", "not-measured", "soft")


def carries(facts: Mapping[str, str], ruling: Ruling) -> Iterator[Carry]:
    """Nothing leads on from a part that is refused or sent out, but for the heat that a wheel has had."""
    if facts["part"] in ("wheel", "safety-part") and facts["metal"].startswith("aluminium"):
        yield Carry("bake-history", "Add up the bakes that it has had", {})
    if ruling.settled in ("blast", "sweep"):
        yield Carry("blast-plan", "Plan the blast: time, air and abrasive", _blast_texts(facts, ruling))
    if ruling.settled in ("blast", "sweep", "clean-only"):
        if "prebake" in ruling.all("after"):
            yield Carry("prebake-plan", "Plan the bake before powder", {"metal": facts["metal"]})
        yield Carry("cure-plan", "Plan the cure", {"metal": _cure_metal(facts["metal"])})


def _blast_texts(facts: Mapping[str, str], ruling: Ruling) -> dict[str, str]:
    never = ruling.all("abrasive-never")
    texts = {
        "surface": _surface(facts, ruling),
        "abrasive": next(one for one in ruling.all("abrasive") if one not in never),
    }
    if ruling.one("pressure") in _LOW_PRESSURE:
        texts["pressure"] = "40 psi"
    return texts


def _surface(facts: Mapping[str, str], ruling: Ruling) -> str:
    if ruling.settled == "sweep":
        return "light"
    if any(facts[key] in values for key, values in _HEAVY.items()):
        return "heavy"
    return "mill-scale" if facts["rust"] in _SCALE else "light"


def _cure_metal(metal: str) -> str:
    return "aluminium" if metal.startswith("aluminium") else metal
