"""How long does it take to spray? Powder that must leave the guns over what the guns give, weighed by the shop."""

from __future__ import annotations

from dataclasses import dataclass

from calculators.kit.calculator import Calculator, Out, Vary
from calculators.kit.chart import Axis, Chart, Mark, Series
from calculators.kit.fields import Limits, Quantity, Whole, ask
from calculators.kit.numbers import shop_number
from calculators.kit.result import Caution, Clash, Result
from calculators.kit.steps import Step, step
from calculators.physics.film import film_mass_kg
from calculators.spray import _powder_fields as fields

G_MIN = 60.0  # g/min in one g/s
LB_H = fields.LB / 3600  # kg/s
ONE_GUN_lb_h = (0.1, 500.0)  # from a cup gun to far over any one gun
LEAST, MOST = (f"{end:g} lb/h" for end in ONE_GUN_lb_h)


@dataclass(frozen=True)
class Inputs:
    area_m2: float = fields.area_field()
    film_um: float = fields.film_field()
    specific_gravity_ratio: float = fields.specific_gravity_field("The powder")
    transfer_percent: float = fields.transfer_field()
    catch_mass_kg: float = ask(
        Quantity(
            group="The guns",
            label="Powder caught",
            hint="One gun into a weighed bag or bucket, voltage off, as you set it for the job",
            units=("g", "oz", "lb", "kg"),
            default="150",
            limits=Limits("1 g", "50 kg", "what one gun gives in a short catch"),
        )
    )
    catch_time_s: float = ask(
        Quantity(
            label="Time of the catch",
            hint="A minute or more evens out the pulses",
            units=("min", "s"),
            default="1",
            limits=Limits("5 s", "60 min", "long enough to weigh, short enough to catch"),
        )
    )
    gun_output_kg_h: float | None = ask(
        Quantity(
            label="Output of one gun, if known",
            hint="Leave empty to use the catch above; a figure here takes its place",
            units=("lb_h", "g_min", "kg_h", "lb_min"),
            may_be_empty=True,
            limits=Limits(LEAST, MOST, "from a cup gun to far over any one gun"),
            example="20 lb/h",
            meaning="gun-output",
        )
    )
    guns: int = ask(
        Whole(
            label="Guns spraying at once",
            hint="The same powder, each with the output above",
            default="1",
            low=1,
            high=50,
            meaning="guns",
        )
    )


def solve(asked: Inputs) -> Result:
    one_kg_s = _caught(asked) if asked.gun_output_kg_h is None else asked.gun_output_kg_h / 3600
    all_kg_s = one_kg_s * asked.guns
    on_part = film_mass_kg(asked.area_m2, asked.film_um, asked.specific_gravity_ratio)
    sprayed = on_part / (asked.transfer_percent / 100)
    seconds = sprayed / all_kg_s
    return Result(
        answers={
            "spray-time": seconds,
            "lay-rate": asked.area_m2 / (seconds / 60),
            "powder-rate": all_kg_s * 3600,
            "one-gun": one_kg_s * 3600,
            "sprayed": sprayed,
        },
        cautions=(*_cautions(asked), *fields.thick_coat(asked.film_um)),
        steps=_steps(asked, on_part, sprayed, one_kg_s, all_kg_s),
        charts=(_chart(asked, sprayed, one_kg_s),),
    )


def _caught(asked: Inputs) -> float:
    """What one gun gives by the catch, kg/s."""
    caught = asked.catch_mass_kg / asked.catch_time_s
    if not ONE_GUN_lb_h[0] * (1 - 1e-9) <= caught / LB_H <= ONE_GUN_lb_h[1] * (1 + 1e-9):
        raise Clash(
            (
                "catch-mass",
                f"The catch gives {shop_number(caught / LB_H)} lb/h, and one gun gives {LEAST} to {MOST}. "
                "Check the weight, the time and their units",
            )
        )
    return caught


def _cautions(asked: Inputs) -> list[Caution]:
    if asked.gun_output_kg_h is None:
        return []
    words = "The known output is used, not the catch. Empty it to go by the catch."
    return [Caution("note", words, "gun-output")]


def _steps(
    asked: Inputs, on_part: float, sprayed: float, one_kg_s: float, all_kg_s: float
) -> tuple[Step, ...]:
    made = [
        step(
            "Mass of the film",
            "m = A * t * SG",
            "g",
            A=asked.area_m2,
            t=asked.film_um,
            SG=asked.specific_gravity_ratio,
        ),
        step("Powder sprayed", "S = m / TE", "g", m=on_part * 1000, TE=asked.transfer_percent / 100),
    ]
    if asked.gun_output_kg_h is None:
        made.append(
            step(
                "One gun",
                "g = caught / minutes",
                "g/min",
                caught=asked.catch_mass_kg * 1000,
                minutes=asked.catch_time_s / 60,
            )
        )
    made += [
        step("All guns", "G = g * n", "g/min", g=one_kg_s * 1000 * G_MIN, n=asked.guns),
        step("Time with the trigger on", "T = S / G", "min", S=sprayed * 1000, G=all_kg_s * 1000 * G_MIN),
    ]
    return tuple(made)


def _chart(asked: Inputs, sprayed: float, one_kg_s: float) -> Chart:
    here = one_kg_s / LB_H
    rates = tuple(here * (0.4 + 1.6 * place / 24) for place in range(25))
    minutes = tuple(sprayed / (rate * LB_H * asked.guns) / 60 for rate in rates)
    return Chart(
        title="Time against what one gun gives",
        says="Twice the output is half the time, as long as as much of it sticks; turned up, less of it does.",
        x=Axis("output of one gun, lb/h"),
        y=Axis("trigger on, min", 0),
        series=(Series("time", rates, minutes),),
        marks=(Mark("this job", here, sprayed / (one_kg_s * asked.guns) / 60),),
    )


CALCULATOR = Calculator(
    title="Spray time",
    question="How long does it take to spray?",
    inputs=Inputs,
    solve=solve,
    answers=(
        Out(
            key="spray-time",
            label="Trigger on for",
            meaning="Time with powder leaving the guns. Add hanging, turning and touching up to plan the day.",
            main=True,
            quantity="spray-time",
            unit="s",
            shown=("min",),
            digits=2,
        ),
        Out(
            key="lay-rate",
            label="Area coated",
            meaning="At this film and transfer. If you move faster than this, the film comes out thinner.",
            unit="m2_min",
            shown=("ft2_min", "m2_min"),
            digits=2,
            beside=True,
        ),
        Out(
            key="powder-rate",
            label="Powder leaving all guns",
            meaning="Have this much an hour in the hopper; the booth's air is worked out from it as well.",
            unit="kg_h",
            shown=("lb_h", "kg_h"),
        ),
        Out(
            key="one-gun",
            label="One gun gives",
            meaning="Write it on the gun's setting card and weigh again when the film drifts.",
            quantity="gun-output",
            unit="kg_h",
            shown=("lb_h", "g_min"),
        ),
        Out(
            key="sprayed",
            label="Powder sprayed",
            meaning="Film and overspray together. Without the spare that you buy on top.",
            unit="kg",
            shown=("lb", "kg"),
        ),
    ),
    sources=(
        "film-mass-balance",
        "powder-sheets",
        *fields.THICK_COAT_SOURCES,
        "shop-estimate",
        "common-practice",
    ),
    version=1,
    reviewed="2026-11-25",
    keywords=(
        "how fast",
        "gun output",
        "powder feed rate",
        "grams per minute",
        "catch test",
        "square feet per minute",
        "time to coat",
    ),
    limits=(
        "It is trigger time. Hanging, turning, touching up and a colour change come on top, and are often more.",
        "Transfer falls when the output is turned up: weigh both at the setting that you will use.",
        "A gun with a worn insert, another hose or damp powder gives another output at the same setting.",
    ),
    standing=(
        Caution(
            "note",
            "Catch with the voltage off and the booth fan on, into a grounded vessel of bare metal, and wear your dust mask.",
            "catch-mass",
            "common-practice",
        ),
    ),
    vary=Vary(
        "catch-mass", ("75 g", "100 g", "150 g", "200 g", "300 g"), ("spray-time", "lay-rate", "one-gun")
    ),
)
