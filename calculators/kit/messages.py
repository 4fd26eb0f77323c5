"""The words of every refusal. Labels are nouns, so that the sentences read; nothing here names an attribute."""

from __future__ import annotations


def lower_first(label: str) -> str:
    """The label inside a sentence: an abbreviation keeps its capitals."""
    return label if label[:2].isupper() else label[:1].lower() + label[1:]


def empty(label: str) -> str:
    return f"Enter the {lower_first(label)}"


def not_a_number(label: str, example: str) -> str:
    return f"{label} must be a number, like {example}"


def not_whole(label: str, example: str) -> str:
    return f"{label} must be a whole number, like {example}"


def unclear_comma(label: str, example: str) -> str:
    return f"{label} has a comma that could be read two ways. Write it with a point, like {example}"


def small_digit(label: str, example: str) -> str:
    return f"{label} has a raised, lowered or encircled digit. Write it in plain digits, like {example}"


def wrong_unit(label: str, shown: list[str]) -> str:
    if not any(shown):
        return f"{label} must be a number without a unit"
    return f"{label} must be in {any_of(shown)}"


def outside(label: str, low: str | None, high: str | None) -> str:
    if low is not None and high is not None:
        return f"{label} must be between {low} and {high}"
    return f"{label} must be {low} or more" if low is not None else f"{label} must be {high} or less"


def no_choice(label: str) -> str:
    return f"Select the {lower_first(label)}"


_MOST_NAMED = 8


def unknown_choice(label: str, known: list[str], nearest: list[str]) -> str:
    """nearest: the few of them that are most like what was typed. Where there are many, only those are named."""
    if len(known) <= _MOST_NAMED:
        return f"{label} must be one of: {', '.join(known)}"
    if not nearest:
        return f"{label} must be one of {len(known)} choices, such as {any_of(known[:3])}"
    return f"{label} must be one of {len(known)} choices. Nearest to what was typed: {any_of(nearest)}"


def too_long(label: str, most: int) -> str:
    return f"{label} must have {most} characters or fewer"


def too_few(label: str, least: int) -> str:
    return f"{label} must have at least {least} {'line' if least == 1 else 'lines'}"


def too_many(label: str, most: int) -> str:
    return f"{label} must have {most:,} lines or fewer"


LINE = "Line"


def in_line(line: int, sentence: str) -> str:
    return f"{LINE} {line}: {lower_first(sentence)}"


def beginnings(label: str) -> tuple[str, ...]:
    """How the sentences about one column begin inside `in_line`."""
    inside = lower_first(label)
    return (
        f"{inside} must ",
        f"{inside} has a ",
        lower_first(empty(label)),
        lower_first(no_choice(label)),
    )


def beyond_source(label: str, end: str, limit: str, source: str, beyond: str) -> str:
    side, edge = ("above", "top") if end == "high" else ("below", "bottom")
    reach = f"the {edge} of what its source covers ({source})"
    return f"{label} is {side} {limit}, {reach}. {beyond} Treat the answer as an estimate."


def any_of(words: list[str]) -> str:
    return words[0] if len(words) == 1 else f"{', '.join(words[:-1])} or {words[-1]}"


def crashed(code: str) -> str:
    return f"This calculator could not work with these values. Change one of them, and report code {code}"
