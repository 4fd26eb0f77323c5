"""What is the metal really at? The gun's reading, the surface and what it mirrors, through Planck's law over 8 to 14 um."""

from __future__ import annotations

from functools import partial

from calculators.cure._metal_temperature_cautions import SPOT_SHARE, cautions, spot_cautions
from calculators.cure._metal_temperature_chart import chart
from calculators.cure._metal_temperature_inputs import Inputs
from calculators.cure._metal_temperature_sums import CANNOT_TELL_K, Seen, seen_by
from calculators.cure._schedule import f_and_c
from calculators.kit.calculator import Calculator, Out, Vary
from calculators.kit.numbers import whole
from calculators.kit.result import Caution, Clash, Given, Result, Value
from calculators.kit.steps import Step, step
from calculators.physics.radiation import band_radiance_W_m2sr

# Tape printed as 0.96 in this band lets go or changes above 80 to 105 C; the lower figure is used.
TAPE_UP_TO_degC = 80.0


def solve(asked: Inputs) -> Result:
    spot_m = asked.distance_m / asked.spot_ratio_ratio
    if asked.surface == "raw-powder":
        return _raw_powder(asked, spot_m)
    found = seen_by(asked)
    if found.best is None:
        raise Clash(
            (
                "reading",
                "Reading fits no metal temperature on this surface in these surroundings: what the surface mirrors gives more "
                "already, or the metal would have to be hotter than any oven. Check the surface, the surroundings and the "
                "emissivity set in the gun",
            )
        )
    too_wide = found.too_wide
    off_part = spot_m > asked.part_width_m * (1 + 1e-9)
    verdict = "cannot-tell" if too_wide or off_part else "can-tell"
    return Result(
        answers=_answers(asked, found, verdict, off_part, spot_m),
        cautions=(*cautions(asked, found), *spot_cautions(asked, spot_m)),
        steps=_steps(asked, found, spot_m),
        charts=() if found.low is None or found.high is None else (partial(chart, asked, found, verdict),),
        headline=_headline(asked, found, verdict, off_part),
    )


def _headline(asked: Inputs, found: Seen, verdict: str, off_part: bool) -> str:
    if verdict == "can-tell":
        assert found.best is not None
        metal = f"The metal is at about {f_and_c(found.best)}"
        if asked.surroundings == "oven" and found.untold is not None:
            return f"{metal}, or {f_and_c(found.untold)} if the gun is not told how hot the oven is"
        return metal
    if off_part:
        return "Cannot tell: the spot is wider than the part"
    return "Cannot tell: this surface's emissivity is not known closely enough"


def _answers(asked: Inputs, found: Seen, verdict: str, off_part: bool, spot_m: float) -> dict[str, Given]:
    common: dict[str, Given] = {
        "verdict": verdict,
        "spot": spot_m,
        "advice": _advice(asked, found, verdict, off_part),
    }
    if off_part:
        return common | {
            "metal": Value(words="cannot be told: the gun sees past the part"),
            "error": Value(words="cannot be told"),
        }
    low, high = found.low, found.high
    if verdict == "can-tell":
        assert found.best is not None
        assert low is not None
        assert high is not None
        reading = asked.reading_degC
        return common | {
            "metal": Value(found.best, low, high),
            "error": Value(reading - found.best, reading - high, reading - low),
        }
    if low is None or high is None:
        open_ended = Value(
            words="cannot be told: some of the emissivities known for this surface fit no metal"
        )
        return common | {"metal": open_ended, "error": Value(words="cannot be told")}
    return common | {
        "metal": Value(None, low, high),
        "error": Value(None, asked.reading_degC - high, asked.reading_degC - low),
    }


def _advice(asked: Inputs, found: Seen, verdict: str, off_part: bool) -> list[str]:
    advice = []
    if off_part or asked.distance_m / asked.spot_ratio_ratio > SPOT_SHARE * asked.part_width_m * (1 + 1e-9):
        advice.append("come-closer")
    bare = asked.surface != "cured-powder"
    if bare and (found.high is not None and found.high <= TAPE_UP_TO_degC):
        advice.append("tape")
    if bare:
        advice.append("painted-spot")
    if bare or verdict == "cannot-tell" or asked.surroundings == "oven":
        advice.append("contact-probe")
    return advice or ["as-you-do"]


def _raw_powder(asked: Inputs, spot_m: float) -> Result:
    unknown = Value(words="cannot be told: no emissivity of raw powder is known")
    return Result(
        answers={
            "verdict": "cannot-tell",
            "metal": unknown,
            "error": Value(words="cannot be told"),
            "spot": spot_m,
            "advice": ["contact-probe"],
        },
        cautions=(
            Caution(
                "caution",
                "No figure for raw powder is known to us, and it changes as the powder melts. Put a contact probe on bare "
                "metal: the back, a masked place, or a part hung for the purpose.",
                "surface",
            ),
            *spot_cautions(asked, spot_m),
        ),
        steps=(_spot_step(asked),),
        headline="Cannot tell: raw powder needs a contact probe",
    )


def _spot_step(asked: Inputs) -> Step:
    return step(
        "Width of the spot", "spot = d / n", "in", d=asked.distance_m / 0.0254, n=asked.spot_ratio_ratio
    )


def _steps(asked: Inputs, found: Seen, spot_m: float) -> tuple[Step, ...]:
    read, mirrored = band_radiance_W_m2sr(asked.reading_degC), band_radiance_W_m2sr(found.mirrored_degC)
    steps = [
        step(
            "Radiance that reached the gun, 8 to 14 um, from Planck's law at the reading and at the surroundings",
            "S = es * f_read + (1 - es) * f_round",
            "W/m2sr",
            es=asked.gun_emissivity_ratio,
            f_read=read,
            f_round=mirrored,
        ),
        step(
            "Radiance of a black surface as hot as the metal",
            "f = (es * f_read + (1 - es) * f_round - (1 - e) * f_round) / e",
            "W/m2sr",
            es=asked.gun_emissivity_ratio,
            f_read=read,
            f_round=mirrored,
            e=found.emissivity,
        ),
    ]
    if found.best is not None and not found.too_wide:
        steps.append(
            step("Temperature with that radiance", "T = T_C * 1.8 + 32", "F", T_C=round(found.best, 2))
        )
    steps.append(_spot_step(asked))
    return tuple(steps)


CALCULATOR = Calculator(
    title="Metal temperature",
    question="What is the metal really at when my infrared gun shows this?",
    inputs=Inputs,
    solve=solve,
    answers=(
        Out(
            key="metal",
            label="Metal",
            meaning="The temperature of the surface in the spot. Hold this one against the powder's sheet, not the reading.",
            main=True,
            unit="degC",
            shown=("degF", "degC"),
            digits=0,
        ),
        Out(
            key="verdict",
            label="The gun here",
            meaning="Where it cannot tell, do not time a bake by the gun: do what the advice says.",
            options={
                "can-tell": f"can tell, within {whole(CANNOT_TELL_K * 1.8)} F either way for the surface",
                "cannot-tell": "cannot tell: use something else",
            },
            beside=True,
        ),
        Out(
            key="error",
            label="The raw reading is off by",
            meaning="Minus means that the gun reads low. Add the opposite to later readings of the same surface.",
            unit="dC",
            shown=("dF", "dC"),
            digits=0,
        ),
        Out(
            key="spot",
            label="Spot",
            meaning="Width of what the gun takes in. Keep it under half of the part's width.",
            unit="m",
            shown=("in", "mm"),
            digits=2,
            beside=True,
        ),
        Out(
            key="advice",
            label="Do",
            meaning="How to get a temperature that holds, the first that suits your part.",
            options={
                "come-closer": "Come closer, until the spot is half the part's width",
                "tape": "Stick black electrical tape on and aim at it (about 0.96; only under 176 F, 80 C)",
                "painted-spot": "Paint a spot with heat-proof matt paint, let it come to the metal's heat, aim at that",
                "contact-probe": "Use a contact probe on the metal",
                "as-you-do": "Go on so: the same surface, the same distance, square to it",
            },
        ),
    ),
    sources=("planck-band", "ir-tables", "shop-estimate", "common-practice"),
    version=1,
    reviewed="2026-11-25",
    keywords=(
        "infrared gun",
        "ir gun",
        "temp gun",
        "laser thermometer",
        "emissivity",
        "pyrometer",
        "reads low",
        "shiny aluminium",
    ),
    limits=(
        "The range is the doubt of the surface. The gun's own error comes on top: its manual gives it, and says what the gun "
        "takes its surroundings to be.",
        "It holds for guns that take in 8 to 14 um, as most shop guns do. Others see metal differently.",
        "It knows the surface in the spot only. The middle of a thick section may be far cooler.",
        "No emissivity is printed for cured powder or blasted steel: those are our estimates from paint and rolled sheet.",
        "A dirty lens, steam, smoke or a window between gun and part make any reading useless.",
    ),
    standing=(
        Caution(
            "note",
            "Measure from outside the door line with the fan as it runs, in gloves and sleeves rated for the heat. Nobody goes "
            "into a hot oven to take a reading.",
        ),
    ),
    vary=Vary(
        "surface",
        (
            "cured-powder",
            "cast-iron",
            "blasted-steel",
            "blasted-aluminium",
            "bare-aluminium",
            "bright-galvanised",
        ),
        ("metal", "error", "verdict"),
    ),
)
