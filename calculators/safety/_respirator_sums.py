"""The sums of respirator-check: each dust against its limit, added up, and what a class of respirator may be used in."""

from __future__ import annotations

from dataclasses import dataclass
from math import inf

from calculators.kit.messages import lower_first
from calculators.kit.numbers import shop_number
from calculators.kit.result import Clash
from calculators.safety._respirator_inputs import BLASTING, DUSTS, HOODS, RESPIRATORS, TIGHT, Inputs

FULL_SHIFT_H = 8.0
TASTE_CAPS_AT = 10.0  # (f)(6): such a test shows a fit of 100, which stands for a factor of 10
SAME_DUST = ("dust-total", "dust-respirable")  # two readings of one dust


@dataclass(frozen=True)
class Dust:
    """One dust of the list. limit: for this shift. danger: where life is in danger, infinite if not known."""

    slug: str
    name: str
    measured_mg_m3: float | None
    limit_mg_m3: float
    danger_mg_m3: float
    action_mg_m3: float
    advisory_mg_m3: float
    filter: str

    @property
    def said(self) -> str:
        """Its name inside a sentence."""
        return lower_first(self.name)

    @property
    def times(self) -> float:
        """How many times its limit is in the air; 0 if not measured."""
        return 0.0 if self.measured_mg_m3 is None else self.measured_mg_m3 / self.limit_mg_m3

    def most_mg_m3(self, factor: float) -> float:
        return min(factor * self.limit_mg_m3, self.danger_mg_m3)


@dataclass(frozen=True)
class Finding:
    """dusts: one a kind. ruling: the dust that decides. needed: factor, None while something is not measured."""

    dusts: tuple[Dust, ...]
    ruling: Dust
    added: float
    needed: float | None
    factor: float
    wrong_type: bool
    in_danger: tuple[Dust, ...]
    verdict: str

    @property
    def unmeasured(self) -> tuple[Dust, ...]:
        return tuple(one for one in self.dusts if one.measured_mg_m3 is None)

    @property
    def needs(self) -> str:
        """The factor that the air needs, in enough digits not to look like one that would do."""
        short = self.added > self.factor * (1 + 1e-9)
        digits = 3
        while short and digits < 9 and shop_number(self.added, digits) == shop_number(self.factor, digits):
            digits += 1
        return shop_number(self.added, digits)


def shift_share(hours_h: float) -> float:
    """What a limit shrinks by on a long shift: 8 over the hours, never more than 1."""
    return FULL_SHIFT_H / max(hours_h, FULL_SHIFT_H)


def dusts_of(asked: Inputs) -> tuple[Dust, ...]:
    """The list with limits of this shift; of two measured lines for one dust the higher counts. Raises Clash."""
    found: list[Dust] = []
    for line, row in enumerate(asked.agents, 1):
        known = DUSTS.get(row.agent, {})
        limits = [one for one in (known.get("limit_mg_m3"), row.limit_mg_m3) if one is not None]
        if not limits:
            raise Clash(
                (
                    "agents",
                    f"Line {line}: write its limit after the concentration, from its safety data sheet, like other, 2, 5",
                )
            )
        found.append(
            Dust(
                row.agent if row.agent != "other" else f"other-{line}",
                known.get("name", f"Another dust, line {line}"),
                row.concentration_mg_m3,
                min(limits) * shift_share(asked.hours_h),
                known.get("danger_mg_m3", inf),
                known.get("action_mg_m3", inf),
                known.get("advisory_mg_m3", inf),
                known.get("filter", "p100"),
            )
        )
    kept: dict[tuple[str, bool], Dust] = {}
    for one in found:
        key = (one.slug, one.measured_mg_m3 is None)
        if key not in kept or one.times > kept[key].times:
            kept[key] = one
    return tuple(kept.values())


def added(dusts: tuple[Dust, ...]) -> float:
    """Sum of concentration over limit. Total and respirable dust of no special kind are one dust, counted once."""
    single = sum(one.times for one in dusts if one.slug not in SAME_DUST)
    return single + max((one.times for one in dusts if one.slug in SAME_DUST), default=0.0)


def factor_of(respirator: str, proof: bool, fit: str) -> float:
    """The assigned factor that this wearer has in this respirator: 1 without a fit test where it must seal."""
    row = RESPIRATORS[respirator]
    factor = float(row["proven"] if respirator in HOODS and proof else row["factor"])
    if respirator not in TIGHT:
        return factor
    if fit == "none":
        return 1.0
    if fit == "taste" and row["air"] == "filter":
        return min(factor, TASTE_CAPS_AT)
    return factor


def fits_task(respirator: str, task: str, approved: bool) -> bool:
    """In blasting without an enclosure between nozzle and operator only an air-line respirator approved for it will do."""
    return task not in BLASTING or (approved and RESPIRATORS[respirator]["air"] == "supplied")


def finding(asked: Inputs) -> Finding:
    dusts = dusts_of(asked)
    measured = [one for one in dusts if one.measured_mg_m3 is not None]
    ruling = (
        max(measured, key=lambda one: one.times) if measured else min(dusts, key=lambda one: one.limit_mg_m3)
    )
    total = added(dusts)
    factor = factor_of(asked.respirator, asked.proof_1000 == "yes", asked.fit)
    wrong = not fits_task(asked.respirator, asked.task, asked.blasting_approved == "yes")
    danger = tuple(one for one in measured if (one.measured_mg_m3 or 0.0) > one.danger_mg_m3)
    all_measured = len(measured) == len(dusts)
    no_fit = asked.respirator in TIGHT and asked.fit == "none"
    if wrong:
        verdict = "wrong-type"
    elif danger or no_fit or total > factor * (1 + 1e-9):
        verdict = "not-enough"
    elif not all_measured:
        verdict = "measure-first"
    else:
        verdict = "enough"
    return Finding(
        dusts, ruling, total, total if all_measured else None, factor, wrong, danger, verdict
    )  # fmt: skip


@dataclass(frozen=True)
class Class:
    """A class of respirator that would be enough, and the most of the ruling dust it may be used in."""

    slug: str
    factor: float
    most_mg_m3: float
    proven: bool


def classes(asked: Inputs, found: Finding) -> tuple[Class, ...]:
    """Every class that the task allows, weakest first, each as its wearer could have it: fit-tested; hoods both ways."""
    rows = []
    for slug in RESPIRATORS:
        if not fits_task(slug, asked.task, True):
            continue
        for proven in (False, True) if slug in HOODS else (False,):
            factor = factor_of(slug, proven, "instrument")
            rows.append(Class(slug, factor, found.ruling.most_mg_m3(factor), proven))
    return tuple(sorted(rows, key=lambda one: one.factor))
