"""What a person may type for a number with a unit, and what it means.

The grammar is ours and small, so that no typed text is ever evaluated or handed to a units library: a sign, thousands
commas, decimals, `1/8`, `1 1/2`, `1e3`, then one of the spellings that this field accepts; or several numbers with units
that add up, such as `5 ft 6 in`. A decimal comma is read where it can mean nothing else.
"""

from __future__ import annotations

import re
import unicodedata
from functools import lru_cache
from itertools import groupby

from calculators.kit.units import UNITS, convert

LONGEST = 200  # characters; a number with a unit never needs more, and a unit less

# 5 ft 6 means inches, 1 h 20 means minutes
_FOLLOWS = {"ft": "in", "h": "min"}

_LOOK_ALIKE = str.maketrans(
    {
        "\u2212": "-", "\u2010": "-", "\u2011": "-", "\u2012": "-", "\u2013": "-", "\ufe63": "-",
        "\u2044": "/", "\u2215": "/", "\uff0f": "/", "\u00d7": "x",
        "\u201c": '"', "\u201d": '"', "\u2033": '"', "\u02ba": '"', "\u2018": "'", "\u2019": "'", "\u2032": "'", "\u02b9": "'",
        "\u00b5": "u", "\u03bc": "u", "\u00ba": "\u00b0",
        "\u200b": None, "\u200c": None, "\u200d": None, "\u2060": None, "\ufeff": None, "\u00ad": None,
        "\u200e": None, "\u200f": None,
    }
)  # fmt: skip

_RAISED, _LOWERED = "⁰¹²³⁴⁵⁶⁷⁸⁹", "₀₁₂₃₄₅₆₇₈₉"
_ON_THE_LINE = str.maketrans(_RAISED + _LOWERED, "0123456789" * 2)
_POWERS = str.maketrans(_RAISED, "0123456789")
_SMALL_SIGNS = "⁺⁻₊₋"
_SMALL_FRACTION = re.compile(f"(?:(?<![{_RAISED}])([{_RAISED}]+)/|⅟)([{_LOWERED}]+)")

# a whole number before a fraction only with a space or hyphen between, so that 11/2 stays eleven halves
_NUMBER = re.compile(
    r"""(?P<sign>[+-]?)\s?
    (?: (?P<whole>\d{1,9})[ -](?P<top>\d{1,6})\s?/\s?(?P<bottom>\d{1,6})(?![\d.,])
      | (?P<top2>\d{1,9})\s?/\s?(?P<bottom2>\d{1,6})(?![\d.,])
      | (?P<grouped>[1-9]\d{0,2}(?:,\d{3})+(?:\.\d*)?)(?:e(?P<power1>[+-]?\d{1,3}))?(?![\d,])
      | (?P<european>[1-9]\d{0,2}(?:\.\d{3})+,\d+)(?![\d.,])
      | (?P<comma>\d+,\d+)(?:e(?P<power3>[+-]?\d{1,3}))?(?![\d.,])
      | (?P<plain>\d+\.?\d*|\.\d+)(?:e(?P<power2>[+-]?\d{1,3}))?(?![\d.,])
    )""",
    re.VERBOSE | re.IGNORECASE,
)

_PLAIN = re.compile(r"-?[0-9]{1,12}(?:\.[0-9]{1,12})?")


class NotANumber(Exception):
    """The text is not a number."""


class SmallDigit(NotANumber):
    """The number has a raised, lowered or encircled digit: 10³ is not 103."""


class UnclearComma(Exception):
    """The text has a comma that could mean thousands, a decimal point or a gap between numbers."""


class NotAUnit(Exception):
    """There is a number, followed by something that is not a unit of this field."""


def tidy(text: str) -> str:
    """One spelling for signs that look alike, one space for every gap. A fraction of one sign or of small digits gets a space
    on either side: 1 1/2. Other small digits stay as they are, so that they are not taken for digits of the number beside them.
    """
    if text.isascii():
        return " ".join(text.split())
    plain = _SMALL_FRACTION.sub(_on_the_line, text.translate(_LOOK_ALIKE))
    spaced = "".join(f" {sign} " if _is_fraction(sign) else sign for sign in plain)
    folded = "".join(
        "".join(run) if small else unicodedata.normalize("NFKC", "".join(run))
        for small, run in groupby(spaced, _is_small)
    )
    return " ".join(folded.translate(_LOOK_ALIKE).split())


def _on_the_line(fraction: re.Match[str]) -> str:
    return f" {fraction[1] or 1}/{fraction[2]} ".translate(_ON_THE_LINE)


def _is_fraction(sign: str) -> bool:
    return unicodedata.category(sign) == "No" and "FRACTION" in unicodedata.name(sign, "")


def _is_small(sign: str) -> bool:
    return sign in _SMALL_SIGNS or (unicodedata.category(sign) == "No" and not _is_fraction(sign))


def printable(text: str) -> str:
    """The text without the signs that a terminal, a page or a file would obey and not show. Its lines stay lines."""
    if text.isascii() and text.isprintable():
        return text
    return "".join(
        sign if sign.isprintable() or sign == "\n" else " " if sign.isspace() else "" for sign in text
    )


@lru_cache(maxsize=256)
def _spellings(units: tuple[str, ...]) -> dict[str, str]:
    known: dict[str, str] = {}
    for slug in units:
        for spelling in UNITS[slug].spellings:
            known.setdefault(_fold(spelling), slug)
    return known


def _squeeze(spelling: str) -> str:
    return (
        spelling.translate(_LOOK_ALIKE).translate(_POWERS).replace("°", "").replace("·", "").replace(" ", "")
    )


def _fold(spelling: str) -> str:
    return _squeeze(spelling).casefold()


@lru_cache(maxsize=1)
def _case_matters() -> dict[str, dict[str, str]]:
    """Spellings that differ from another unit's of their kind in capitals alone (mohm, Mohm): exact text to slug."""
    folded: dict[tuple[str, str], dict[str, str]] = {}
    for unit in UNITS.values():
        for spelling in unit.spellings:
            exact = _squeeze(spelling)
            folded.setdefault((unit.kind, exact.casefold()), {})[exact] = unit.slug
    return {fold: exact for (_, fold), exact in folded.items() if len(set(exact.values())) > 1}


def unit_named(spelling: str, units: tuple[str, ...]) -> str | None:
    """The slug of the unit that is spelled so, among a field's units, or None. Capitals count only where they must."""
    if len(spelling) > LONGEST:
        return None
    exact = _squeeze(tidy(spelling))
    slug = _spellings(units).get(exact.casefold())
    alike = _case_matters().get(exact.casefold())
    if slug is None or not alike or slug not in alike.values():
        return slug
    meant = alike.get(exact)
    return meant if meant in units else None


def read_measure(text: str, units: tuple[str, ...], bare: str, target: str) -> tuple[float, str]:
    """A number in the target unit, and the slug of the unit that it was typed in.

    text: what was typed, at most LONGEST characters. units: slugs that the field accepts. bare: the unit of a number
    without one. target: the unit to give back. Raises NotANumber (SmallDigit among it), UnclearComma or NotAUnit.

    >>> read_measure("1 1/2 in", ("in", "mm"), "in", "in")
    (1.5, 'in')
    >>> read_measure("5 ft 6 in", ("in", "ft"), "in", "in")
    (66.0, 'ft')
    """
    if _PLAIN.fullmatch(text):  # most cells of a long log
        return convert(float(text), bare, target), bare
    if len(text) > LONGEST:
        raise NotANumber
    rest = tidy(text)
    total, used, negative = 0.0, "", False
    while rest:
        if _is_small(rest.lstrip("+-0123456789.,/eE ")[:1] or "x"):
            raise SmallDigit
        number, rest, negative_part = _take_number(rest)
        if used and negative_part:
            raise NotANumber
        spelling, rest = _take_unit(rest, units)
        unit = unit_named(spelling, units) if spelling else _FOLLOWS.get(used, "") if used else bare
        if not unit:
            raise NotANumber if spelling[:1].isdigit() or not spelling else NotAUnit
        if used and (unit not in units or not _smaller(unit, used)):
            raise NotANumber
        total += convert(number, unit, target)
        negative, used = negative or negative_part, used or unit
    if not used:
        raise NotANumber
    return (_negated(total, used, target) if negative else total), used


def _negated(total: float, unit: str, target: str) -> float:
    # a scale with an offset (degrees) is not symmetrical about zero, so the sign belongs to the number typed
    zero = convert(0.0, unit, target)
    return 2 * zero - total


def _smaller(unit: str, than: str) -> bool:
    if UNITS[unit].kind not in ("length", "mass", "time") or unit == than:
        return False
    return convert(1, unit, than) < 1


def _take_number(text: str) -> tuple[float, str, bool]:
    found = _NUMBER.match(text)
    if not found:
        raise UnclearComma if re.match(r"[+-]?\s?\d[\d.]*,[\d.,]*\d", text) else NotANumber
    part = found.groupdict()
    top, bottom = part["top"] or part["top2"], part["bottom"] or part["bottom2"]
    if bottom:
        if int(bottom) == 0:
            raise NotANumber
        number = int(part["whole"] or 0) + int(top) / int(bottom)
    else:
        digits = part["plain"] or (part["grouped"] or "").replace(",", "") or _decimal_comma(part)
        power = part["power1"] or part["power2"] or part["power3"] or "0"
        number = float(f"{digits}e{power}")
        if number > 1e100:
            raise NotANumber
    return number, text[found.end() :].lstrip(), part["sign"] == "-"


def _decimal_comma(part: dict[str, str | None]) -> str:
    if part["european"]:
        return part["european"].replace(".", "").replace(",", ".")
    comma = part["comma"] or ""
    return comma.replace(",", ".")


def _take_unit(text: str, units: tuple[str, ...]) -> tuple[str, str]:
    """The unit's spelling at the start of the text, and what is left: nothing, or a further, smaller part."""
    if unit_named(text, units):
        return text, ""
    for start in re.finditer(r"(?<![\d./,])[+-]?\d", text):
        spelling, left = text[: start.start()].strip(), text[start.start() :]
        clear = re.search(r"[ \"']$", text[: start.start()]) or re.search(r"[a-z\"']", left, re.IGNORECASE)
        if spelling and clear and unit_named(spelling, units):
            return spelling, left
    return text, ""
