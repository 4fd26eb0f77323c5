"""Will it still fit? What a film takes from a hole or a slot, and adds to a shaft or a thread."""

from __future__ import annotations

from dataclasses import dataclass

from calculators.kit.calculator import Calculator, Out, Vary
from calculators.kit.chart import Axis, Band, Chart, Mark, Series
from calculators.kit.fields import Choice, Limits, Option, Quantity, When, Whole, ask
from calculators.kit.numbers import shop_number
from calculators.kit.result import Caution, Clash, Result, Value
from calculators.kit.steps import Step, step
from calculators.physics.clearance import allowance_2a_in, film_change, pitch_diameter, thread_change
from calculators.spray._powder_fields import FILM_UNITS

IN = 0.0254  # m
UM = 1e-6  # m
MIL = 25.4  # um
THREAD = "thread-60"
SMALLER = ("hole", "slot")
KINDS = {
    "hole": "Hole or bore",
    "shaft": "Shaft, pin or tab",
    THREAD: "60-degree thread",
    "slot": "Slot or groove",
}
VERDICTS = {
    "fits": "Still fits",
    "tight": "Tight: the film may fill the room",
    "binds": "Will not fit: mask it",
    "not-asked": "No mating size given",
}
PLUGS = {
    "tapered-plug": "Tapered plug, pulled before or after the bake as its maker says",
    "thread-plug": "Threaded or pull plug in a nut thread; cap, sleeve or old nut on a bolt thread",
    "cap": "Cap or sleeve over it",
    "tape": "Tape made for the oven, cut to the slot, or a strip of silicone pressed in",
    "none": "Nothing: it still fits with room to spare",
}
# Share of the room that a film may take before we call it tight: common practice, no source.
SPARE = 0.5


@dataclass(frozen=True)
class Inputs:
    kind: str = ask(
        Choice(
            group="The place",
            label="Kind of place",
            options=tuple(Option(slug, label) for slug, label in KINDS.items()),
            default="hole",
        )
    )
    size_m: float = ask(
        Quantity(
            label="Size",
            hint="Across it, bare; for a thread its nominal diameter",
            units=("in", "mm", "mil"),
            default="0.56",
            limits=Limits("0.02 in", "100 in", "a pin hole to a large bore"),
        )
    )
    pitch_m: float = ask(
        Quantity(
            label="Thread pitch",
            hint="1 in over the threads an inch: 1/13 for 1/2-13",
            units=("in", "mm"),
            default="1/13",
            limits=Limits("0.008 in", "0.5 in", "80 to 2 threads an inch"),
            when=When("kind", (THREAD,)),
        )
    )
    side: str = ask(
        Choice(
            label="Which thread",
            options=(Option("nut", "Inside, as a nut"), Option("bolt", "Outside, as a bolt")),
            default="nut",
            few=True,
            when=When("kind", (THREAD,)),
        )
    )
    film_um: float = ask(
        Quantity(
            group="The film",
            label="Film in one coat",
            hint="As it will lie in this place",
            units=FILM_UNITS,
            default="2.5",
            limits=Limits("0.1 mil", "100 mil", "thinner does not close, thicker is not powder"),
            meaning="film",
        )
    )
    coats: int = ask(Whole(label="Number of coats", default="2", low=1, high=10))
    mating_size_m: float | None = ask(
        Quantity(
            group="What goes in or over it",
            label="Size of the mating part",
            hint="As measured; its own film, if it has one, counted in. Empty to see the change alone",
            units=("in", "mm", "mil"),
            default="1/2",
            limits=Limits("0.02 in", "100 in", "a pin to a large shaft"),
            may_be_empty=True,
            example="1/2",
            when=When("kind", ("hole", "shaft", "slot")),
        )
    )


def solve(asked: Inputs) -> Result:
    film = asked.film_um * asked.coats * UM
    thread = asked.kind == THREAD
    change = thread_change(film) if thread else film_change(film)
    smaller = asked.kind in SMALLER or (thread and asked.side == "nut")
    bare = _bare(asked)
    after = bare - change if smaller else bare + change
    room = _room(asked)
    verdict = _verdict(room, change)
    if after <= 0 or (thread and change >= asked.pitch_m):
        verdict = "binds"
    plug = "none" if verdict == "fits" else _plug(asked.kind)
    closed = after <= 0
    return Result(
        answers={
            "size-after": Value(words="closed: the film fills it") if closed else after,
            "change": change,
            "verdict": verdict,
            "room": Value(words="no mating size given") if room is None else room,
            "room-after": Value(words="no mating size given") if room is None else room - change,
            "plug": plug,
            "most-film": Value(words="no mating size given")
            if room is None
            else max(room, 0.0) / (4 if thread else 2),
        },
        headline=_headline(asked, verdict, after, change, smaller),
        cautions=_cautions(asked, verdict),
        steps=_steps(asked, bare, change, after, smaller, room),
        charts=(_chart(asked, room, change),),
    )


def _bare(asked: Inputs) -> float:
    if asked.kind != THREAD:
        return asked.size_m
    bare = pitch_diameter(asked.size_m, asked.pitch_m)
    if bare <= asked.size_m / 4:
        raise Clash(("pitch", "Thread pitch must be less for a thread of this diameter: check its unit"))
    return bare


def _room(asked: Inputs) -> float | None:
    """What is free between the two parts before any film; for a thread the least that its class leaves."""
    if asked.kind == THREAD:
        return allowance_2a_in(asked.size_m / IN, asked.pitch_m / IN) * IN
    if asked.mating_size_m is None:
        return None
    room = asked.size_m - asked.mating_size_m
    room = room if asked.kind in SMALLER else -room
    if room < -1e-12:
        words = {
            "hole": "Size of the mating part must be no more than the hole, or it does not fit bare",
            "slot": "Size of the mating part must be no more than the slot, or it does not fit bare",
            "shaft": "Size of the mating part must be no less than the shaft, or it does not fit bare",
        }
        raise Clash(("mating-size", words[asked.kind]))
    return max(room, 0.0)


def _verdict(room: float | None, change: float) -> str:
    if room is None:
        return "not-asked"
    if change >= room * (1 - 1e-9):
        return "binds"
    return "tight" if change > SPARE * room * (1 + 1e-9) else "fits"


def _plug(kind: str) -> str:
    return {"hole": "tapered-plug", "shaft": "cap", "slot": "tape", THREAD: "thread-plug"}[kind]


def _headline(asked: Inputs, verdict: str, after: float, change: float, smaller: bool) -> str:
    what = "Pitch diameter" if asked.kind == THREAD else "Size"
    way = "down" if smaller else "up"
    by = f"{shop_number(change / IN * 1000)} mil"
    if after <= 0:
        return f"{VERDICTS[verdict]}. The film closes it: {by} over both faces"
    moved = f"{what} {way} {by} to {shop_number(after / IN, 4)} in ({shop_number(after * 1000, 4)} mm)"
    return moved if verdict == "not-asked" else f"{VERDICTS[verdict]}. {moved}"


def _cautions(asked: Inputs, verdict: str) -> tuple[Caution, ...]:
    made = []
    if asked.kind == THREAD and verdict == "binds":
        words = (
            "Mask the thread. Chasing it afterwards cuts the film to its edge, and rust starts there. A thread that holds a load "
            "or a person is never forced through paint."
        )
        made.append(Caution("caution", words, "kind"))
    elif verdict in ("binds", "tight"):
        words = (
            "Mask it, or make room before the coat. Do not press a part through a film: it tears, and rust starts at the "
            "tear."
        )
        made.append(Caution("caution", words, "mating-size"))
    return tuple(made)


def _steps(
    asked: Inputs, bare: float, change: float, after: float, smaller: bool, room: float | None
) -> tuple[Step, ...]:
    thread = asked.kind == THREAD
    made = [step("Film of all coats", "t = film * n", "mil", film=asked.film_um / MIL, n=asked.coats)]
    film_mil = asked.film_um * asked.coats / MIL
    if thread:
        made.append(
            step(
                "Pitch diameter, bare",
                "d2 = d - 0.649519 * p",
                "in",
                d=asked.size_m / IN,
                p=asked.pitch_m / IN,
            )
        )
        made.append(
            step("Change: 2 films over the sine of 30 degrees", "change = 2 * t / 0.5", "mil", t=film_mil)
        )
    else:
        made.append(step("Change: a film on both faces", "change = 2 * t", "mil", t=film_mil))
    sign = "-" if smaller else "+"
    if after > 0:
        made.append(
            step(
                "After",
                f"after = bare {sign} change / 1000",
                "in",
                bare=bare / IN,
                change=change / IN * 1000,
            )
        )
    if room is not None:
        made.append(
            step(
                "Room left",
                "left = room - change",
                "mil",
                room=room / IN * 1000,
                change=change / IN * 1000,
            )
        )
    return tuple(made)


def _chart(asked: Inputs, room: float | None, change: float) -> Chart:
    factor = 4 if asked.kind == THREAD else 2
    film = asked.film_um * asked.coats / MIL
    top = max(2 * film, 6.0)
    bands: tuple[Band, ...] = ()
    if room is not None:
        limit = min(room / IN * 1000, factor * top)
        half = min(SPARE * room / IN * 1000, factor * top)
        bands = (Band("fits", 0, half, "good"),)
        if limit > half:
            bands = (*bands, Band("tight", half, limit, "near"))
        if limit < factor * top:
            bands = (*bands, Band("will not fit", limit, factor * top, "bad"))
    return Chart(
        title="What the film takes",
        says="A thread loses twice as much of its fit to a film as a hole or a shaft does."
        if asked.kind == THREAD
        else "The size moves by two films, as both faces get one.",
        x=Axis("film of all coats, mil", 0, top),
        y=Axis("change, mil", 0, factor * top),
        series=(Series("change", (0.0, top), (0.0, factor * top)),),
        marks=(Mark("this film", film, change / IN * 1000),),
        bands=bands,
    )


CALCULATOR = Calculator(
    title="Fit after film",
    question="Will it still fit after the coat?",
    inputs=Inputs,
    solve=solve,
    answers=(
        Out(
            key="size-after",
            label="Size after",
            meaning="A thread's is its pitch diameter. Measure the first part of a batch before you do the rest.",
            main=True,
            unit="m",
            shown=("in", "mm"),
            digits=4,
        ),
        Out(
            key="verdict",
            label="Verdict",
            meaning="Tight means the film takes over half of the room: one thick spot and it sticks.",
            options=VERDICTS,
            beside=True,
        ),
        Out(
            key="change",
            label="Moves by",
            meaning="A hole, slot or nut gets smaller, a shaft or bolt larger: by two films, a thread's pitch diameter by four.",
            unit="m",
            shown=("mil", "um"),
            beside=True,
        ),
        Out(
            key="room",
            label="Room before the film",
            meaning="Between the two parts. For a thread, the least between a class 2A bolt and its nut.",
            unit="m",
            shown=("mil", "um"),
        ),
        Out(
            key="room-after",
            label="Room left",
            meaning="Under nothing, mask it. Leave some for the thick spots at edges.",
            unit="m",
            shown=("mil", "um"),
        ),
        Out(
            key="most-film",
            label="Most film that goes in",
            meaning="All coats together, with no room left over. A film under about 2 mil is seldom closed, so mask instead.",
            unit="m",
            shown=("mil", "um"),
        ),
        Out(
            key="plug",
            label="Mask with",
            meaning="Rated above the oven setting for the whole bake. Try one on a part first, and count them in and out.",
            options=PLUGS,
        ),
    ),
    sources=("thread-geometry", "asme-b1-1", "common-practice"),
    version=1,
    reviewed="2026-11-25",
    keywords=(
        "threads",
        "tolerance",
        "clearance",
        "press fit",
        "bolt hole",
        "masking plug",
        "thread chasing",
        "hole gets smaller",
    ),
    limits=(
        "It takes the same film everywhere. At the mouth of a hole it is thicker, deep inside there may be none.",
        "A press fit, a bearing seat, a brake or hub face and a ground point are masked, whatever this says.",
        "The room of a thread is the least of a class 2A bolt in a 2B nut (ASME B1.1, from memory). Metric threads of class 6g "
        "leave about as much; your own pair may leave more. Gauge it.",
        "A film in a clamped joint creeps and the bolt goes loose: leave faces under bolt heads bare where the joint matters.",
    ),
    vary=Vary("film", ("1.5 mil", "2 mil", "2.5 mil", "3 mil", "4 mil"), ("change", "size-after", "verdict")),
)
