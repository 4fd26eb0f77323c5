"""A mixed load's plan as it is said: the verdict, each part's window, the chart of bars."""

from __future__ import annotations

from collections.abc import Sequence
from math import isfinite

from calculators.cure._mixed_load_search import Search
from calculators.cure._mixed_load_sums import Pull, Section, common_window, loads_apart, pulls_of
from calculators.cure._window import whole_down, whole_up
from calculators.kit.chart import Axis, Bar, Chart, Mark
from calculators.kit.result import Given, Table, Value, Verdict

PLANS = {
    "one-pull": "One pull for all",
    "in-order": "In order, one after another",
    "split": "Split the load",
}
NO_WINDOW = "no window"
# Characters that the plate of a phone, and the room left of a chart's bars, can hold.
LONGEST_PLAN, LONGEST_NAME = 90, 16


class Made:
    """A plan, and how it is said."""

    def __init__(self, load: Sequence[Section], found: Search) -> None:
        self.load, self.found = load, found
        self.window = common_window(load)
        self.pulls: tuple[Pull, ...] = pulls_of(load) or ()
        self.alone = loads_apart(load) if not self.pulls else []
        self.shut = [place for place, section in enumerate(load) if not section.has_window]
        self.earliest = {place: section.earliest_min for place, section in enumerate(load)}
        for pull in self.pulls:
            self.earliest |= dict(zip(pull.places, pull.earliest_min, strict=True))

    @property
    def plan(self) -> str:
        """The verdict's slug; empty where no part has a window."""
        if not self.pulls:
            return "split" if self.alone else ""
        return "one-pull" if len(self.pulls) == 1 else "in-order"

    def verdict(self) -> Verdict | Value:
        """The verdict as it is read at the oven, the minutes with it where they fit on a phone."""
        words = {
            "one-pull": f"One pull for all, at {self.pulls[0].minute:,} min" if self.pulls else "",
            "in-order": f"In order: {'; '.join(self.order())}",
            "split": self._split(),
            "": "No plan: no part has a window at this setting",
        }[self.plan]
        if not self.plan:
            return Value(words=words)
        return Verdict(self.plan, words if len(words) <= LONGEST_PLAN else PLANS[self.plan])

    def _split(self) -> str:
        """How the load is split; a part that no bake serves is not passed over in silence."""
        if self.shut:
            names = f"{PLANS['split']}; no window for {self.names(self.shut)}"
            some = f"{PLANS['split']}; {len(self.shut)} of {len(self.load)} parts "
            some += "has no window" if len(self.shut) == 1 else "have no window"
            return names if len(names) <= LONGEST_PLAN else some
        return f"{PLANS['split']} into {len(self.alone)} bakes" if len(self.alone) > 1 else PLANS["split"]

    def pulled_min(self, place: int) -> float:
        """When a part comes out: by the plan, else as soon as it is cured."""
        for pull in self.pulls:
            if place in pull.places:
                return float(pull.minute)
        return self.earliest[place] or 0.0

    def names(self, places: Sequence[int]) -> str:
        return ", ".join(self.load[place].name for place in places)

    def order(self) -> list[str]:
        if self.pulls:
            return [f"{self.names(pull.places)} at {pull.minute:,} min" for pull in self.pulls]
        loads = [f"load {number}: {self.names(group)}" for number, group in enumerate(self.alone, 1)]
        held = {place for group in self.alone for place in group}
        return loads + [
            f"{section.name}: no window, even alone"
            for place, section in enumerate(self.load)
            if place not in held
        ]

    def headline(self) -> str:
        match self.plan:
            case "one-pull":
                return f"One pull for all: {self.pulls[0].minute:,} min, counted from the closed door"
            case "in-order":
                return f"Pull {', then '.join(self.order())}, counted from the closed door"
            case "split" if self.shut:
                have = "has" if len(self.shut) == 1 else "have"
                return f"Split the load: {self.names(self.shut)} {have} no window, even alone"
            case "split":
                return "Split the load: no pull and no order serves every part"
        return "No plan: no part has a window at this setting"

    def span(self, place: int) -> str:
        """A part's window in words."""
        earliest, latest = self.earliest[place], self.load[place].latest_min
        if earliest is None:
            return "never cured here"
        first = f"{whole_up(earliest):,}"
        if not isfinite(latest):
            return f"from {first} min"
        last = f"{whole_down(latest):,}"
        if whole_up(earliest) > latest:
            return NO_WINDOW
        return f"{first} to {last} min" if first != last else f"at {first} min only"

    def answers(self) -> dict[str, Given]:
        found = self.found
        if found.setting_degC is not None:
            opens = Value(found.setting_degC)
        elif found.low_degF > found.high_degF:
            opens = Value(words="none: the powders have no common range")
        else:
            opens = Value(words=f"none from {found.low_degF} F to {found.high_degF} F")
        window = Value(words="none: no one pull serves all")
        if self.window is not None:
            low, high = self.window
            until = f"{whole_up(low):,} to {whole_down(high):,} min" if isfinite(high) else ""
            window = Value(
                low=low,
                high=high if isfinite(high) else None,
                words=until or f"from {whole_up(low):,} min on",
            )
        one = len(self.pulls) == 1
        return {
            "plan": self.verdict(),
            "order": self.order(),
            "pull": Value(float(self.pulls[0].minute))
            if one
            else Value(words="no one pull serves all: see the order"),
            "window": window,
            "windows": [f"{section.name}: {self.span(place)}" for place, section in enumerate(self.load)],
            "oven-that-opens-one": opens,
            "last-out": Value(float(self.pulls[-1].minute)) if self.pulls else Value(words="no plan"),
        }

    def table(self) -> Table:
        rows = []
        for place, section in enumerate(self.load):
            earliest, latest = self.earliest[place], section.latest_min
            comes_out = f"{self.pulled_min(place):,.0f} min" if self.pulls else "-"
            rows.append(
                (
                    section.name,
                    "never" if earliest is None else f"{whole_up(earliest):,} min",
                    f"{whole_down(latest):,} min" if isfinite(latest) else "never",
                    comes_out,
                )
            )
        return Table(
            "Part by part",
            ("Part", "Cured from, slow end", "May be over-baked after", "Comes out at"),
            tuple(rows),
        )

    def chart(self) -> Chart:
        latest = [section.latest_min for section in self.load if isfinite(section.latest_min)]
        early = [one for one in self.earliest.values() if one is not None]
        # half as much again, so that the words at the right stand clear of the last pull's line
        end = 1.5 * max([*latest, *early, 10.0])
        bars = []
        for place, section in enumerate(self.load):
            earliest = self.earliest[place]
            if earliest is None:
                bars.append(Bar(_short(section.name), 0.0, 0.0, "bad", "never cured here"))
                continue
            # a pull is done at a whole minute: where none lies between the ends, there is nothing to come out in
            if whole_up(earliest) > section.latest_min:
                low, high, tone = section.latest_min, float(whole_up(earliest)), "bad"
            else:
                low, high, tone = earliest, min(section.latest_min, end), "good"
            bars.append(Bar(_short(section.name), low, high, tone, self.span(place)))  # type: ignore[arg-type]
        if self.window is not None:
            says = "There is a minute that is inside every bar, so one pull serves all."
        elif self.pulls:
            says = (
                "No minute is inside every bar, so the parts come out one after another, each inside its own."
            )
        else:
            says = "No minute is inside every bar, and no order keeps each part inside its own."
        if any(bar.text == NO_WINDOW for bar in bars):
            says += f" A bar with {NO_WINDOW} runs from over-baked to cured: nothing comes out right in it."
        return Chart(
            title="When each part may come out",
            says=says,
            x=Axis("minutes from the closed door", 0, end),
            y=Axis("Part", names=tuple(_short(section.name) for section in self.load)),
            bars=tuple(bars),
            marks=tuple(Mark(f"{pull.minute} min", float(pull.minute)) for pull in self.pulls),
        )


def _short(name: str) -> str:
    return name if len(name) <= LONGEST_NAME else f"{name[: LONGEST_NAME - 1]}…"
