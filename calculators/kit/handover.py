"""What answers mean, so that any calculator that asks for one can be offered it: declared once, no calculator named.

A field says what it asks for with `meaning=`, an answer what it is with `quantity=`. Where both use the same word they fit
together, whatever their keys and units. A word stands for one thing measured in one way: the thickness of a plate that is
heated from both sides is not half of it, and a film that was measured is not the film that was wanted.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal

from calculators.kit.fields import Asked, Choice, Quantity, Whole
from calculators.kit.numbers import shop_number, whole
from calculators.kit.units import UNITS

if TYPE_CHECKING:
    from calculators.kit.calculator import Calculator, Out
    from calculators.kit.result import Answer


@dataclass(frozen=True, slots=True)
class Meaning:
    """What can be handed over. words: as a sentence names it. kind: of its units, `choice` or `whole`.

    with_: meanings that say nothing without each other, so that they are taken together.
    """

    words: str
    kind: str
    with_: tuple[str, ...] = ()


MEANINGS: dict[str, Meaning] = {
    "coated-area": Meaning("coated area", "area"),
    "parts": Meaning("number of parts", "whole"),
    "part-mass": Meaning("mass of all parts", "mass"),
    "metal": Meaning("metal", "choice"),
    "section-shape": Meaning("how the heaviest section is heated", "choice", ("thickest-section",)),
    "thickest-section": Meaning("heaviest section", "length", ("section-shape",)),
    "thinnest-section": Meaning("thinnest section", "length"),
    "film": Meaning("film of one coat", "length"),
    "film-measured": Meaning("measured film", "length"),
    "specific-gravity": Meaning("specific gravity of the powder", "share"),
    "transfer": Meaning("first-pass transfer", "share"),
    "reclaim": Meaning("overspray sprayed again", "share"),
    "powder": Meaning("powder to buy", "mass"),
    "gun-output": Meaning("what a gun sprays", "mass flow"),
    "guns": Meaning("number of guns", "whole"),
    "finish": Meaning("surface", "choice"),
    "airflow": Meaning("airflow of the oven", "choice"),
    "shading": Meaning("how the parts hang", "choice"),
    "oven-coefficient": Meaning("oven's measured heat transfer", "heat transfer coefficient"),
    "oven-setting": Meaning("oven setting", "temperature"),
    "dip": Meaning("dip of the oven's air", "temperature difference", ("recovery",)),
    "recovery": Meaning("time the oven's air takes to come back", "time", ("dip",)),
    "schedule-temperature": Meaning("temperature of the data sheet", "temperature", ("schedule-time",)),
    "schedule-time": Meaning("time of the data sheet", "time", ("schedule-temperature",)),
    "shop-temperature": Meaning("temperature of the shop", "temperature"),
    "oven-time": Meaning("time in the oven", "time"),
    "blast-time": Meaning("time to blast", "time"),
    "abrasive-used": Meaning("abrasive used", "mass"),
    "spray-time": Meaning("time to spray", "time"),
    "oven-share": Meaning("share of the oven load", "share"),
    "exhaust-flow": Meaning("air that leaves by the stack", "flow"),
}


@dataclass(frozen=True, slots=True)
class Gift:
    """What one calculation has to hand over. text: as it is typed into a field. shown: as a reader sees it."""

    meaning: str
    text: str
    shown: str
    origin: Literal["answer", "input"]


def gifts(
    calculator: Calculator, answers: Mapping[str, Answer], texts: Mapping[str, str]
) -> tuple[Gift, ...]:
    """What a calculation hands over: its answers, and what was entered, by meaning. An answer outranks an input.

    texts: the fields that were asked, with their units, as a link holds them.
    """
    found: dict[str, Gift] = {}
    for one in calculator.fields:
        text = texts.get(one.key, "").strip()
        if one.field.meaning and text:
            found[one.field.meaning] = Gift(one.field.meaning, text, _shown(one, text), "input")
    for out in calculator.answers:
        text = _typed(out, answers[out.key]) if out.quantity else ""
        if text:
            found[out.quantity] = Gift(out.quantity, text, _as_read(out, answers[out.key]), "answer")
    return tuple(found.values())


def _shown(one: Asked, text: str) -> str:
    if isinstance(one.field, Choice):
        return next((option.label for option in one.field.options if option.slug == text), text)
    return text


def _typed(out: Out, answer: Answer) -> str:
    if isinstance(answer.value, str):
        return answer.value
    if not isinstance(answer.value, float):
        return ""
    # six digits: the figures that a reader never sees still agree when the next calculator goes on with them
    unit = UNITS[(out.shown or (out.unit,))[0]].shown if out.unit else ""
    return f"{shop_number(answer.value, 6).replace(',', '')} {unit}".strip()


def _as_read(out: Out, answer: Answer) -> str:
    if not isinstance(answer.value, float):
        return answer.text
    number = shop_number(answer.value, out.digits) if out.digits else whole(answer.value)
    return f"{number} {answer.unit}".strip()


def misfit(meaning: str, side: Asked | Out) -> str:
    """Why a field or an answer cannot bear this meaning; empty where it can."""
    if meaning not in MEANINGS:
        return f"{side.key}: {meaning!r} is not in kit/handover.py"
    wanted = MEANINGS[meaning].kind
    if isinstance(side, Asked):
        field = side.field
        kind = {Choice: "choice", Whole: "whole"}.get(type(field), "")
        kind = UNITS[side.unit].kind if isinstance(field, Quantity) else kind
    else:
        kind = UNITS[side.unit].kind if side.unit else "choice" if side.options else "whole"
    return "" if kind == wanted else f"{side.key}: {meaning} is a {wanted}, not a {kind or 'list'}"
