"""How long to blow fresh air through an oven before its burner is lit? Changes of the oven's volume over the air by the stack."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from math import ceil

from calculators.kit.calculator import Calculator, Out, Vary
from calculators.kit.chart import Axis, Band, Chart, Mark, Series
from calculators.kit.fields import Choice, Limits, Option, Quantity, ask
from calculators.kit.result import Caution, Result, Value
from calculators.kit.steps import step
from calculators.physics.ventilation import left_share, purge_s

SIDE = Limits("0.5 ft", "200 ft", "from a bench oven to a hall of an oven")
FT3 = 0.028316846592  # m3
CFM = 4.719474432e-4  # m3/s
BATCH_LONG_MIN = 15.0


@dataclass(frozen=True)
class Inputs:
    oven_width_m: float = ask(
        Quantity(
            group="The oven's inside",
            label="Oven width",
            hint="Of the whole heating chamber, and any duct that the air goes round in",
            units=("ft", "in", "m", "cm"),
            default="8",
            limits=SIDE,
        )
    )
    oven_depth_m: float = ask(
        Quantity(label="Oven depth", units=("ft", "in", "m", "cm"), default="8", limits=SIDE)
    )
    oven_height_m: float = ask(
        Quantity(label="Oven height", units=("ft", "in", "m", "cm"), default="10", limits=SIDE)
    )
    exhaust_flow_m3_s: float = ask(
        Quantity(
            group="The air",
            label="Fresh air by the stack",
            hint="Measured in the stack, dampers as they stand when lighting; never the circulating fan",
            units=("cfm", "m3_h", "m3_min", "m3_s", "L_s"),
            default="600",
            limits=Limits("1 cfm", "200000 cfm", "from a bench oven's vent to a large exhaust fan"),
            meaning="exhaust-flow",
        )
    )
    changes_ratio: float = ask(
        Quantity(
            label="Volume changes",
            hint="At least 4; more if the oven's manual says so",
            units=("ratio",),
            default="4",
            limits=Limits("4", "50", "the fire code's least, to far more than any manual asks"),
            example="4",
        )
    )
    heat: str = ask(
        Choice(
            label="Heated by",
            options=(
                Option("gas", "Gas", ("natural-gas", "propane", "lpg")),
                Option("oil", "Oil"),
                Option("electric", "Electric"),
                Option("infrared", "Electric infrared", ("ir",)),
            ),
            default="gas",
        )
    )


def solve(asked: Inputs) -> Result:
    volume = asked.oven_width_m * asked.oven_depth_m * asked.oven_height_m
    changes = asked.changes_ratio
    minutes = purge_s(volume, changes, asked.exhaust_flow_m3_s) / 60
    shown = ceil(minutes - 1e-9)
    burner = asked.heat in ("gas", "oil")
    before = "before lighting" if burner else "before the heaters come on"
    headline = f"At least {shown:,} min of fresh air {before}, {changes:g} volumes"
    words = f"{shown:,} min"
    if _circulating(minutes, changes):
        headline, words = (
            "No purge time: that much air is a circulating fan's, not the stack's",
            "none by this figure",
        )
    return Result(
        answers={
            "purge": Value(minutes, words=words),
            "air": volume * changes,
            "volume": volume,
            "left": left_share(changes) * 100,
            "prove": _prove(burner),
        },
        cautions=tuple(_cautions(asked, minutes)),
        steps=(
            step(
                "Volume of the oven",
                "V = w * d * h",
                "ft3",
                w=asked.oven_width_m / 0.3048,
                d=asked.oven_depth_m / 0.3048,
                h=asked.oven_height_m / 0.3048,
            ),
            step("Fresh air to go through", "air = n * V", "ft3", n=changes, V=volume / FT3),
            step(
                "Time at least",
                "t = air / Q",
                "min",
                air=volume * changes / FT3,
                Q=asked.exhaust_flow_m3_s / CFM,
            ),
            step("Left of the first air, if stirred all the time", "left = 100 * exp(0 - n)", "%", n=changes),
        ),
        charts=(_chart(minutes, changes, shown),),
        headline=headline,
    )


def _circulating(minutes: float, changes: float) -> bool:
    """Whether so much air can only be what goes round in the oven: over ten changes a minute."""
    return minutes < 0.1 * changes * (1 - 1e-9)


def _prove(burner: bool) -> tuple[str, ...]:
    first = (
        "The exhaust fan runs and its air flow is proven by a switch, not by a lamp",
        "Dampers are open as they stood when the flow was measured",
        "The circulating fan runs too, so that corners are swept; it brings no fresh air itself",
        "Fresh air can get into the room as fast as the stack takes it out",
    )
    fuel = (
        "The fuel's shut-off valves are closed and proven tight. A smell of gas ends the try: shut the supply off, leave, call",
        "The timer that holds the burner back starts anew after any stop of the air",
    )
    electric = (
        "The same air runs as long as coated parts heat: powder gives off vapour in every kind of oven",
    )
    return first + (fuel if burner else electric)


def _cautions(asked: Inputs, minutes: float) -> Iterator[Caution]:
    if asked.heat in ("gas", "oil"):
        yield Caution(
            "caution",
            "If lighting fails once, purge the whole time again before the next try. If you smell gas: touch no switch, "
            "shut the supply off outside, leave and call from outside.",
            "heat",
        )
    else:
        yield Caution(
            "caution",
            "No burner does not mean no purge: what powder, cleaner or a trapped solvent gives off can gather in a closed "
            "electric oven too. Run the exhaust first, and all through the bake.",
            "heat",
        )
    if minutes > BATCH_LONG_MIN:
        yield Caution(
            "caution",
            "This is long for a batch oven: the fresh air is small for its volume. Have the stack's flow measured, and ask "
            "whether it is enough for the vapours of the cure.",
            "exhaust-flow",
        )
    if _circulating(minutes, asked.changes_ratio):
        yield Caution(
            "stop",
            "The air would change more than 10 times a minute. That is a circulating fan's figure, and circulating air purges "
            "nothing. Do not light by this time. Enter only the fresh air that leaves by the stack, measured there.",
            "exhaust-flow",
        )


def _chart(minutes: float, changes: float, shown: int) -> Chart:
    top = max(minutes * 1.5, 0.01)
    times = tuple(top * place / 30 for place in range(31))
    return Chart(
        title="What is left of the air that stood in the oven",
        says=f"Fresh air thins what stood in the oven bit by bit: after {shown:,} min at least {changes:g} volumes have gone "
        f"through, and about {100 * left_share(changes):.1f} % is left if the air is stirred.",
        x=Axis("minutes of fresh air", 0, top),
        y=Axis("left of the first air, %", 0, 100),
        series=(Series("left", times, tuple(100 * left_share(changes * time / minutes) for time in times)),),
        marks=(Mark(f"{changes:g} volumes", x=minutes),),
        bands=(Band("", 0, minutes, "bad", "x"), Band("", minutes, top, "good", "x")),
    )


CALCULATOR = Calculator(
    title="Oven purge",
    question="How long must fresh air go through the oven before I light it?",
    inputs=Inputs,
    solve=solve,
    answers=(
        Out(
            key="purge",
            label="Fresh air for at least",
            meaning="From proven air flow to the first try to light. Not a timer setting: the oven's listing has that.",
            main=True,
            unit="min",
            shown=("min",),
        ),
        Out(
            key="air",
            label="Fresh air that has then gone through",
            meaning="Compare it with the stack's flow on the plate or in the test report.",
            unit="m3",
            shown=("ft3", "m3"),
            beside=True,
        ),
        Out(
            key="prove",
            label="Proven first",
            meaning="Each of these before the time counts. If one cannot be proven, do not light.",
            beside=True,
        ),
        Out(
            key="volume",
            label="Oven volume",
            meaning="The chamber as entered. Add the ducts and the heater box that share its air.",
            unit="m3",
            shown=("ft3", "m3"),
        ),
        Out(
            key="left",
            label="Left of the first air, if stirred",
            meaning="Why four: one change of stirred air still leaves more than a third. Dead corners keep more.",
            unit="percent",
            digits=2,
        ),
    ),
    sources=("nfpa-86", "osha-1910-107", "en-1539"),
    version=1,
    reviewed="2026-11-25",
    keywords=(
        "purge",
        "pre-ignition",
        "gas oven",
        "burner",
        "air changes",
        "ventilate oven",
        "stack",
        "light the oven",
    ),
    limits=(
        "A check, not the setting of a purge timer: the oven's listing, its manual and a qualified person give that.",
        "It knows only the air that leaves by the stack. The circulating fan moves ten times as much and changes none of it.",
        "Hot air is thinner: a flow measured hot is less cold air than it seems. The code counts standard cubic feet.",
        "It does not say how much fresh air the cure itself needs; that depends on what the powder gives off.",
    ),
    vary=Vary(
        "exhaust-flow",
        ("150 cfm", "300 cfm", "600 cfm", "900 cfm", "1200 cfm", "2000 cfm"),
        ("purge", "air"),
    ),
    standing=(
        Caution(
            "caution",
            "US: NFPA 86 asks for at least four volumes of fresh air before lighting; in Europe EN 1539 and ISO 13577-2 stand "
            "beside it. The rule's text, the oven's listing, local codes and a qualified person decide.",
            "",
            "nfpa-86",
        ),
    ),
    default_cautions=(("caution", "heat"), ("caution", "")),
)
