#!/usr/bin/env python3
"""The reading grade of every page of docs/, worst first. `python3 scripts/reading_grade.py [words of a path]`

Flesch-Kincaid: 0.39 x words in a sentence + 11.8 x syllables in a word - 15.59, as J. P. Kincaid and others
published it in 1975. It is a school grade in the US, and a rough one: it knows long words and long sentences,
not hard ideas.
"""

from __future__ import annotations

import re
import sys
from dataclasses import dataclass
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
DOCS = ROOT / "docs"

# What is not read as prose: the words that search sends here, and what stands under the heading of the sources.
FOOT = re.compile(r"^## Sources\b.*?(?=^## |^\*\*Not certain|\Z)", re.M | re.S)
ALSO_ASKED = re.compile(r"^\*Also asked as:.*?\*$", re.M | re.S)
FRONT_MATTER = re.compile(r"\A---\n.*?^---\n", re.M | re.S)
CODE = re.compile(r"^(?P<fence>```+|~~~+).*?^(?P=fence)|`[^`\n]*`", re.M | re.S)
SHORTCODE_OR_TAG = re.compile(r"<!--.*?-->|<(?:script|style|svg)\b.*?</(?:script|style|svg)>|<[^>]+>", re.S)
LINK = re.compile(r"!?\[([^\]]*)\](?:\([^)]*\)|\{[^}]*\})")
# An attribute list of Markdown, and the mark that opens a box.
MARKS = re.compile(r"\{[:#.][^}]*\}|[*_]{1,3}(?=\S)|(?<=\S)[*_]{1,3}")
LIST_ITEM = re.compile(r"(?:[-*+]|\d+\.)\s+(?:\[[ x]\]\s+)?")
WORD = re.compile(r"[A-Za-zÀ-ÿ]+(?:['’][A-Za-z]+)*")
SENTENCE_END = re.compile(r"(?<=[.!?])[\"'”)\]]*\s+(?=[\"'“(\[]*[A-Z0-9])|(?<=[.!?])[\"'”)\]]*$", re.M)


@dataclass(frozen=True)
class Count:
    sentences: int
    words: int
    syllables: int

    @property
    def grade(self) -> float:
        return 0.39 * self.words / self.sentences + 11.8 * self.syllables / self.words - 15.59


# Vowels side by side that are said apart: me-di-a, re-gi-on, ra-di-us, vi-de-o, us-u-al, con-tin-u-ous, qui-et,
# flu-id, a-re-a, cre-ate, be-ing, lay-er; but one in spe-cial, sta-tion, con-scious, square and peo-ple.
APART = re.compile(
    "(?<![ctsgx])i[ao]|^ion|iu|eo(?!p)|(?<!g)ua|uou|uu|iet|cienc|flui|rui|area|idea|creat(?!ur)|react|[eoy]ing|y[eo]r"
)


def syllables(word: str) -> int:
    """By spelling alone: each run of vowels is one. Of these, silent e does not count: at the end (hole), in -es (holes)
    and -ed (baked), and before -ly, -less, -ness, -ful and -ty; it does in ta-ble, edg-es and heat-ed. Vowels that are
    said apart are two. Capitals without a vowel are spelled out. Wrong for the odd word, both ways."""
    if len(word) > 1 and word.isupper() and not re.search("[AEIOUY]", word):
        return len(word)
    low = re.sub("['’].*", "", word.lower()).replace("qu", "q")
    if len(low) > 3 and not re.search("[^aeiouy]le[sd]?$", low):
        low = re.sub("e$|(?<![sxzcgtd])(?<!ch)(?<!sh)es$|(?<=[td])es$|(?<![td])ed$", "", low)
    low = re.sub("(?<=[^aeiouy])e(?=(?:ly|less|ness|ful|ty)$)", "", low)
    return max(1, len(re.findall("[aeiouyà-ÿ]+", low)) + len(APART.findall(low)))


def paragraphs(markdown: str) -> list[str]:
    """The prose of a page: its paragraphs, items and boxes, without headings, tables, code, shortcodes and sources."""
    text = FRONT_MATTER.sub("", markdown)
    for pattern in (CODE, ALSO_ASKED, SHORTCODE_OR_TAG, FOOT):
        text = pattern.sub("", text)
    found: list[list[str]] = [[]]
    for line in text.splitlines():
        bare = line.strip().lstrip("> ")
        if not bare or bare.startswith(("#", "|", "!!!", "???", "===")) or re.fullmatch("[-*_ ]{3,}", bare):
            found.append([])
            continue
        item = LIST_ITEM.match(bare)
        if item:
            found.append([])
            bare = bare[item.end() :]
        found[-1].append(bare)
    prose = [MARKS.sub("", LINK.sub(r"\1", " ".join(lines))) for lines in found if lines]
    # A line that only names a page is a signpost, not a sentence.
    return [one for one in prose if len(WORD.findall(one)) > 3]


def sentences(paragraph: str) -> list[str]:
    return [one for one in SENTENCE_END.split(paragraph) if one and WORD.search(one)]


def count(texts: list[str]) -> Count:
    """Figures and signs are no words; the end of a paragraph or of an item ends a sentence."""
    parts = [one for text in texts for one in sentences(text)]
    words = [word for part in parts for word in WORD.findall(part)]
    return Count(len(parts), len(words), sum(map(syllables, words)))


def pages() -> dict[str, Count]:
    """Every page with a hundred words of prose or more, by its path under docs/; of fewer a grade says nothing."""
    counts = {
        path.relative_to(DOCS).as_posix(): count(paragraphs(path.read_text("utf-8")))
        for path in sorted(DOCS.rglob("*.md"))
    }
    return {name: one for name, one in counts.items() if one.words >= 100}


def main(words: list[str]) -> None:
    print(f"{'grade':>5}  {'words a sentence':>16}  {'syllables a word':>16}  {'words':>5}  page")
    for name, one in sorted(pages().items(), key=lambda item: -item[1].grade):
        if all(word in name for word in words):
            print(
                f"{one.grade:5.1f}  {one.words / one.sentences:16.1f}  {one.syllables / one.words:16.2f}"
                f"  {one.words:5}  {name}"
            )


if __name__ == "__main__":
    main(sys.argv[1:])
