"""Thick and thin parts in one bake: one pull, an order of pulls, or a load to split. No cure after a pull is counted."""

from __future__ import annotations

from collections.abc import Sequence
from math import inf, isfinite

from calculators.cure._bake_cautions import VENT_FIRST, too_cool
from calculators.cure._mixed_load_cautions import cautions
from calculators.cure._mixed_load_inputs import Inputs, schedules_asked
from calculators.cure._mixed_load_search import Search, search
from calculators.cure._mixed_load_sums import (
    Oven,
    Pull,
    Section,
    common_window,
    load_of,
    loads_apart,
    pulls_of,
    whole_up,
)
from calculators.cure._oven_fields import convection_W_m2K
from calculators.cure._schedule import F_DIGITS, Schedule
from calculators.kit.calculator import Calculator, Out, Vary
from calculators.kit.chart import Axis, Bar, Chart, Mark
from calculators.kit.result import Carry, Caution, Given, Result, Table, Value, Verdict
from calculators.kit.steps import Step, step
from calculators.tables import table

PLANS = {
    "one-pull": "One pull for all",
    "in-order": "In order, one after another",
    "split": "Split the load",
}
# Characters that the plate of a phone, and the room left of a chart's bars, can hold.
LONGEST_PLAN, LONGEST_NAME = 90, 16
NOTHING = "none: the oven is too cool for this powder"


def solve(asked: Inputs) -> Result:
    common, schedules = schedules_asked(asked)
    cool = next((one for one in schedules if asked.oven_degC <= one.coolest_degC), None)
    if cool is not None:
        return Result(
            answers={out.key: Value(words=NOTHING) for out in CALCULATOR.answers},
            cautions=(too_cool(cool),),
            headline="No pull time: the oven is too cool",
        )
    oven = Oven(
        asked.oven_degC,
        convection_W_m2K(asked.airflow, asked.oven_coefficient_W_m2K),
        table("shading")[asked.shading]["exposure"],
        asked.dip_dC,
        asked.recovery_min,
        asked.door_dC,
        asked.start_degC,
        asked.oven_doubt_percent / 100,
    )
    names = [row.name or f"part {line}" for line, row in enumerate(asked.load, 1)]
    load = load_of(
        [
            (name, row.metal, row.shape, row.thickness_m, schedule)
            for name, row, schedule in zip(names, asked.load, schedules, strict=True)
        ],
        oven,
    )
    made = Made(load, search(load, asked.oven_degC))
    return Result(
        answers=made.answers(),
        cautions=cautions(asked, common, load, [made.pulled_min(place) for place in range(len(load))]),
        steps=_steps(asked, common, made),
        charts=(made.chart(),),
        tables=(made.table(),),
        carries=(_carry(asked, common, made),),
        headline=made.headline(),
    )


class Made:
    """A plan, and how it is said."""

    def __init__(self, load: Sequence[Section], found: Search) -> None:
        self.load, self.found = load, found
        self.window = common_window(load)
        self.pulls: tuple[Pull, ...] = pulls_of(load) or ()
        self.alone = loads_apart(load) if not self.pulls else []
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
            "split": f"Split the load into {len(self.alone)} bakes"
            if len(self.alone) > 1 and all(section.has_window for section in self.load)
            else PLANS["split"],
            "": "No plan: no part has a window at this setting",
        }[self.plan]
        if not self.plan:
            return Value(words=words)
        return Verdict(self.plan, words if len(words) <= LONGEST_PLAN else PLANS[self.plan])

    def pulled_min(self, place: int) -> float:
        """When a part comes out: by the plan, else as soon as it is surely cured."""
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
        last = f"{int(latest + 1e-9):,}"
        if whole_up(earliest) > latest:
            return "no window"
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
            until = f"{whole_up(low):,} to {int(high + 1e-9):,} min" if isfinite(high) else ""
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
                    f"{int(latest + 1e-9):,} min" if isfinite(latest) else "never",
                    comes_out,
                )
            )
        return Table(
            "Part by part",
            ("Part", "Surely cured from", "May be over-baked after", "Comes out at"),
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
            ends = (earliest, min(section.latest_min, end))
            tone = "good" if ends[0] <= ends[1] else "bad"
            bars.append(Bar(_short(section.name), min(ends), max(ends), tone, self.span(place)))  # type: ignore[arg-type]
        if self.window is not None:
            says = "There is a minute that is inside every bar, so one pull serves all."
        elif self.pulls:
            says = (
                "No minute is inside every bar, so the parts come out one after another, each inside its own."
            )
        else:
            says = "No minute is inside every bar, and no order keeps each part inside its own."
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


def _slowest(made: Made) -> int:
    return max(range(len(made.load)), key=lambda place: made.load[place].earliest_min or inf)


def _carry(asked: Inputs, common: Schedule, made: Made) -> Carry:
    row = asked.load[_slowest(made)]
    schedule = made.load[_slowest(made)].schedule
    texts = {
        "metal": row.metal,
        "shape": row.shape,
        "thickness": f"{row.thickness_m / 0.0254:.6g} in",
        "oven": f"{asked.oven_degC * 1.8 + 32:{F_DIGITS}} F",
        "airflow": asked.airflow,
        "shading": asked.shading,
        "schedule-temperature": f"{schedule.schedule_degC * 1.8 + 32:{F_DIGITS}} F",
        "schedule-time": f"{schedule.schedule_min:g} min",
    }
    if asked.airflow == "measured":
        texts["oven-coefficient"] = f"{asked.oven_coefficient_W_m2K:.4g} W/m2K"
        texts["oven-doubt"] = f"{asked.oven_doubt_percent:g} %"
    second, time = asked.second_temperature_degC, asked.second_time_min
    if schedule is common and second is not None and time is not None:
        texts |= {
            "second-temperature": f"{second * 1.8 + 32:{F_DIGITS}} F",
            "second-time": f"{time:g} min",
        }
    else:
        texts |= {"second-temperature": "", "second-time": ""}
    return Carry("cure-plan", "See the slowest part's bake alone", texts)


def _steps(asked: Inputs, common: Schedule, made: Made) -> tuple[Step, ...]:
    slowest = made.load[_slowest(made)]
    thickness_mm = asked.load[_slowest(made)].thickness_m * 1000
    steps = [
        step(
            f"Heat path of the slowest part ({slowest.name})",
            "L = t / n",
            "mm",
            t=thickness_mm,
            n=round(thickness_mm / 1000 / slowest.part.heat_path_m),
        )
    ]
    if common.activation_step is not None:
        steps.append(common.activation_step)
    steps += [
        step(
            "Slow end of the airflow",
            "h_slow = (1 - doubt / 100) * h",
            "W/m2K",
            doubt=asked.oven_doubt_percent,
            h=slowest.oven.convection_W_m2K,
        ),
        step(
            "Fast end of the airflow",
            "h_fast = (1 + doubt / 100) * h",
            "W/m2K",
            doubt=asked.oven_doubt_percent,
            h=slowest.oven.convection_W_m2K,
        ),
    ]
    if asked.recovery_min > 0 and asked.door_dC > 0:
        steps.append(
            step(
                "Air still missing 2 min after an opening",
                "missing = door * exp(-3 * 2 / recovery)",
                "F",
                door=asked.door_dC * 1.8,
                recovery=asked.recovery_min,
            )
        )
    if len(made.pulls) > 1:
        last = made.pulls[-1]
        place = last.places[last.earliest_min.index(max(last.earliest_min))]
        steps.append(
            step(
                f"What the openings cost the last part ({made.load[place].name})",
                "delay = opened - shut",
                "min",
                opened=max(last.earliest_min),
                shut=made.load[place].earliest_min or 0.0,
            )
        )
    return tuple(steps)


CALCULATOR = Calculator(
    title="Mixed load",
    question="How do I bake thick and thin parts in one load?",
    inputs=Inputs,
    solve=solve,
    answers=(
        Out(
            key="plan",
            label="Plan",
            meaning="Follow it by the clock from the closed door. What comes out must already be cured: nothing here counts on "
            "heat after the pull.",
            main=True,
            options=PLANS,
        ),
        Out(
            key="order",
            label="What comes out when",
            meaning="Open the door at these minutes and no others. Where the load is split, each line is a bake of its own.",
            beside=True,
        ),
        Out(
            key="pull",
            label="One pull at",
            meaning="The first whole minute that serves every part. Pull all of it then.",
            unit="min",
            digits=0,
        ),
        Out(
            key="window",
            label="Window for all",
            meaning="From the last part surely cured to the first that may be over-baked. The wider it is, the calmer the pull.",
            unit="min",
            digits=0,
        ),
        Out(
            key="windows",
            label="Each part's window",
            meaning="From surely cured to may be over-baked, door openings counted. Each part must come out inside its own.",
        ),
        Out(
            key="oven-that-opens-one",
            label="Oven setting with one pull for all",
            meaning="The setting nearest to yours at which one pull serves all. Set it, and plan again.",
            unit="degC",
            shown=("degF", "degC"),
            digits=0,
        ),
        Out(
            key="last-out",
            label="Last part out",
            meaning="How long the oven is taken. Plan the next load from it.",
            quantity="oven-time",
            unit="min",
            digits=0,
        ),
    ),
    sources=(
        "en-1993-1-2",
        "en-1999-1-2",
        "incropera",
        "arrhenius-sheet",
        "ea-default",
        "cure-schedules",
        "shop-estimate",
        "common-practice",
    ),
    version=1,
    reviewed="2026-11-25",
    keywords=(
        "thick and thin",
        "mixed parts",
        "one load",
        "batch",
        "pull order",
        "over-bake",
        "oven door",
        "sheet and casting",
    ),
    limits=(
        "It knows a part by its heaviest section. A thin place on the same part is a line of its own here.",
        "It does not know how much the load weighs. A load too heavy for the burner heats later: see the oven load.",
        "What an opened door costs is what you enter. Watch your own oven's air once.",
        "The powder's own data sheet rules. Over-bake is counted from twice the schedule time until the sheet says more.",
    ),
    vary=Vary(
        "oven",
        ("390 F", "395 F", "400 F", "410 F", "420 F"),
        ("plan", "order", "windows"),
    ),
    standing=(
        Caution("caution", VENT_FIRST, ""),
        Caution(
            "caution",
            "Opening a hot oven: gloves and sleeves rated for its heat, a face shield, a clear way to the rack. Its manual says "
            "what the burner and the fan must do while the door is open; never bridge the door switch.",
            "door",
        ),
    ),
    default_cautions=(("caution", ""), ("caution", "door")),
)
