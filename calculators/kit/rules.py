"""A table of rules, read into bit masks: which rules fire for a set of facts, what they say, and what would change it.

A rule fires when every fact that it asks about has one of the values it lists. It may say single effects, where the
highest rank decides, and list effects, which add up. One single effect is settled first (a verdict, say), and the rules
that ask about it are read after it. Two rules of one rank that could fire together and say different things are refused
when the table is read, so a reader never meets a contradiction.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from itertools import combinations
from typing import Any

type Says = str | tuple[str, ...]


class RuleError(Exception):
    """The table contradicts itself, names something unknown or leaves a case open; the message says where."""


@dataclass(frozen=True, slots=True)
class Rule:
    """when: fact -> the values it may have. says: a slug for a single effect, slugs for a list. rank: higher decides."""

    id: str
    rank: int
    safety: bool
    when: Mapping[str, frozenset[str]]
    says: Mapping[str, Says]
    reason: str
    sources: tuple[str, ...]

    def can_fire_with(self, other: Rule) -> bool:
        """Whether some facts make both fire: they are apart only if one fact has no value that suits both."""
        return all(values & other.when[key] for key, values in self.when.items() if key in other.when)


@dataclass(frozen=True, slots=True)
class Change:
    """One answer that, changed alone, would settle the first effect otherwise."""

    fact: str
    value: str
    becomes: str


class Ruling:
    """What the rules that fired say together."""

    def __init__(self, table: RuleTable, settled: str, mask: int) -> None:
        self.table, self.settled, self.mask = table, settled, mask
        self.fired = tuple(table.rules_in(mask))

    def one(self, effect: str) -> str:
        """The value that the highest rank says. Raises RuleError where no rule that fired says one."""
        return _str(self.deciding(effect).says[effect])

    def deciding(self, effect: str) -> Rule:
        """The highest rule that says this single effect; of equals, which agree, the first in the table."""
        saying = [rule for rule in self.fired if effect in rule.says]
        if not saying:
            raise RuleError(
                f"no rule says {effect} for these facts; those that fired: {[rule.id for rule in self.fired]}"
            )
        return max(saying, key=lambda rule: rule.rank)

    def all(self, effect: str) -> tuple[str, ...]:
        """The slugs that the rules add up to, each once, in the table's order where it has one."""
        heard = self.fired
        if effect not in self.table.still_heard:
            heard = tuple(rule for rule in self.fired if not self.sets_aside(rule))
        found = dict.fromkeys(slug for rule in heard for slug in _tuple(rule.says.get(effect, ())))
        order = self.table.order.get(effect, ())
        return tuple(sorted(found, key=order.index)) if order else tuple(found)

    def sets_aside(self, rule: Rule) -> bool:
        """Whether a higher rank overruled this rule's word on the effect settled first."""
        return rule.says.get(self.table.first, self.settled) != self.settled


class RuleTable:
    """Rules made ready to be asked often: a fact's value is a mask of the rules that it leaves standing.

    facts: every value that each fact may have. first: the single effect settled first. order: for a list effect, all its
    slugs in the order in which they are given back. still_heard: the list effects to which a rule still adds when a higher
    rank has set aside its word on the first effect; to all others such a rule adds nothing.
    """

    def __init__(
        self,
        facts: Mapping[str, tuple[str, ...]],
        rules: tuple[Rule, ...],
        first: str,
        single: tuple[str, ...],
        order: Mapping[str, tuple[str, ...]],
        still_heard: tuple[str, ...] = (),
    ) -> None:
        self.facts = {key: values for key, values in facts.items() if key != first}
        self.rules, self.first, self.single = rules, first, single
        self.order, self.still_heard = order, still_heard
        self._refuse_contradictions()
        self._standing = {
            key: {
                value: sum(
                    1 << i for i, rule in enumerate(rules) if key not in rule.when or value in rule.when[key]
                )
                for value in values
            }
            for key, values in facts.items()
        }
        self._early = sum(1 << i for i, rule in enumerate(rules) if first not in rule.when)
        by_rank = sorted(
            (i for i, rule in enumerate(rules) if first in rule.says), key=lambda i: -rules[i].rank
        )
        self._first_says = tuple((1 << i, _str(rules[i].says[first])) for i in by_rank)

    @classmethod
    def from_data(cls, data: Mapping[str, Any]) -> RuleTable:
        """Read a table as written in TOML: see the head of tables/blasting_rules.toml. Raises RuleError."""
        facts = {key: tuple(values) for key, values in data["asks"].items()}
        ranks, groups = data["ranks"], data.get("groups", {})
        safety_from = ranks[data["safety"]["from"]]
        single, lists = tuple(data["one"]), tuple(data["lists"])
        rules = []
        for row in data["rule"]:
            when = {
                key: _expand(row["id"], key, values, facts, groups)
                for key, values in row.get("when", {}).items()
            }
            says: dict[str, Says] = {}
            for effect, said in row["says"].items():
                if effect not in single + lists or isinstance(said, str) != (effect in single):
                    raise RuleError(
                        f"rule {row['id']} says {effect} = {said!r}; one value each: {single}, lists: {lists}"
                    )
                says[effect] = said if isinstance(said, str) else tuple(said)
            sources = row["source"]
            rank = ranks[row["rank"]]
            rules.append(
                Rule(
                    id=row["id"],
                    rank=rank,
                    safety=rank >= safety_from,
                    when=when,
                    says=says,
                    reason=row["reason"],
                    sources=(sources,) if isinstance(sources, str) else tuple(sources),
                )
            )
        order = {effect: tuple(data[effect]) for effect in lists if effect in data}
        return cls(facts, tuple(rules), data["decides"], single, order, tuple(data.get("still_heard", ())))

    def settle(self, facts: Mapping[str, str]) -> str:
        """The first effect alone. Raises RuleError for a gap, KeyError for a fact that is missing or unknown."""
        return self.first_of(self.early_mask(facts))

    def ruling(self, facts: Mapping[str, str]) -> Ruling:
        """Everything that the rules say about these facts."""
        mask = self.standing_mask(facts)
        settled = self.first_of(mask & self._early)
        return Ruling(self, settled, mask & self._standing[self.first][settled])

    def changes(self, facts: Mapping[str, str]) -> Iterator[Change]:
        """Every single other answer that would settle the first effect otherwise, each one tried."""
        now = self.settle(facts)
        for key, values in self.facts.items():
            others = self._early
            for other, value in facts.items():
                if other != key:
                    others &= self._standing[other][value]
            for value in values:
                becomes = self.first_of(others & self._standing[key][value])
                if becomes != now:
                    yield Change(key, value, becomes)

    def standing_mask(self, facts: Mapping[str, str]) -> int:
        """The rules that these facts leave standing, those that ask about the first effect included."""
        mask = -1
        for key in self.facts:
            mask &= self._standing[key][facts[key]]
        return mask

    def early_mask(self, facts: Mapping[str, str]) -> int:
        return self.standing_mask(facts) & self._early

    def standing(self, fact: str, value: str) -> int:
        """The mask of one answer: which rules it leaves standing. Masks of several answers are combined with `&`."""
        return self._standing[fact][value]

    def first_of(self, mask: int) -> str:
        """The first effect that the highest standing rule says."""
        for bit, says in self._first_says:
            if mask & bit:
                return says
        raise RuleError(
            f"no rule says {self.first} here; those that stand: {[rule.id for rule in self.rules_in(mask)]}"
        )

    def rules_in(self, mask: int) -> Iterator[Rule]:
        return (rule for i, rule in enumerate(self.rules) if mask >> i & 1)

    def _refuse_contradictions(self) -> None:
        for a, b in combinations(self.rules, 2):
            if a.id == b.id:
                raise RuleError(f"two rules are called {a.id}")
            clash = [
                effect
                for effect in self.single
                if effect in a.says and effect in b.says and a.says[effect] != b.says[effect]
            ]
            if clash and a.rank == b.rank and a.can_fire_with(b):
                raise RuleError(
                    f"{a.id} and {b.id} have one rank and say different things about {clash}: give one a higher rank"
                )
        for rule in self.rules:
            if self.first in rule.when and self.first in rule.says:
                raise RuleError(f"{rule.id} both asks about {self.first} and says it; it can do one of them")


def _expand(
    rule: str,
    key: str,
    values: list[str],
    facts: Mapping[str, tuple[str, ...]],
    groups: Mapping[str, Mapping[str, list[str]]],
) -> frozenset[str]:
    if key not in facts:
        raise RuleError(f"rule {rule} asks about {key!r}, which is not one of {tuple(facts)}")
    named = groups.get(key, {})
    expanded = frozenset(each for value in values for each in named.get(value, [value]))
    unknown = expanded - set(facts[key])
    if unknown or not expanded:
        raise RuleError(
            f"rule {rule}: {key} cannot be {sorted(unknown)}; it can be {facts[key]} or a group {tuple(named)}"
        )
    return expanded


def _str(said: Says) -> str:
    assert isinstance(said, str)
    return said


def _tuple(said: Says) -> tuple[str, ...]:
    assert isinstance(said, tuple)
    return said
