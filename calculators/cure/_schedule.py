"""A powder's cure schedule as its data sheet gives it: the fields that ask for it, and the cure speed that follows."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Protocol

from calculators.kit.fields import Limits, Quantity
from calculators.kit.numbers import whole
from calculators.kit.result import Clash
from calculators.kit.steps import Step, step
from calculators.physics.cure import Kinetics, activation_energy_kJ_mol

DEFAULT_KJ_MOL, DEFAULT_LOW, DEFAULT_HIGH = 80.0, 60.0, 120.0
BAND_KJ_MOL = 25.0
LOWEST_KJ_MOL, HIGHEST_KJ_MOL = 30.0, 180.0
F_DIGITS = ".6g"

_TEMPERATURE_LIMITS = Limits("200 F", "550 F", "no coating powder cures outside this")
_TIME_LIMITS = Limits("0.5 min", "240 min", "no coating powder's schedule lies outside this")


def schedule_temperature(group: str = "The powder's data sheet") -> Quantity:
    """The field for the schedule's metal temperature."""
    return Quantity(
        group=group,
        label="Schedule temperature",
        hint="Metal temperature on the powder's data sheet",
        units=("degF", "degC"),
        default="375",
        limits=_TEMPERATURE_LIMITS,
        meaning="schedule-temperature",
    )


def schedule_time() -> Quantity:
    """The field for the schedule's minutes."""
    return Quantity(
        label="Schedule time",
        hint="Minutes at that metal temperature",
        units=("min", "h", "s"),
        default="20",
        limits=_TIME_LIMITS,
        meaning="schedule-time",
    )


def second_temperature(default: str = "400") -> Quantity:
    """The field for a second point of the same sheet."""
    return Quantity(
        label="Second point, temperature",
        hint="Another line of the same sheet; leave both empty if there is none",
        units=("degF", "degC"),
        default=default,
        limits=_TEMPERATURE_LIMITS,
        may_be_empty=True,
        example="400 F",
    )


def second_time(default: str = "12") -> Quantity:
    """The field for a second point's minutes."""
    return Quantity(
        label="Second point, time",
        hint="Minutes at the second temperature",
        units=("min", "h", "s"),
        default=default,
        limits=_TIME_LIMITS,
        may_be_empty=True,
        example="12 min",
    )


def longest_time() -> Quantity:
    """The field for the longest time at schedule temperature before over-bake."""
    return Quantity(
        label="Longest time at schedule temperature",
        hint="From the sheet; empty takes twice the schedule time, which is a guess",
        units=("min", "h", "s"),
        default="",
        limits=Limits("1 min", "960 min", "over-bake is a matter of minutes to hours"),
        may_be_empty=True,
        example="40 min",
    )


def per_kelvin(symbol: str) -> str:
    """One over an absolute temperature, for a line of working with the temperature in F.

    Sheets and ovens are set in whole degrees F, so the few digits of a printed line hold them exactly. Two kelvins rounded so
    would put a thousandth of error into the difference of their inverses.
    """
    return f"1.8 / ({symbol} + 459.67)"


def f_and_c(degC: float) -> str:
    """A temperature as a sentence says it, the shop's unit first."""
    return f"{whole(degC * 1.8 + 32)} F ({whole(degC)} C)"


@dataclass(frozen=True, slots=True)
class Schedule:
    """A schedule with its cure speed: best, and the low and high end of its doubt."""

    schedule_degC: float
    schedule_min: float
    coolest_degC: float
    hottest_degC: float
    activation_kJ_mol: float
    activation_low: float
    activation_high: float
    longest_min: float
    two_points: bool
    longest_is_guess: bool
    activation_step: Step | None

    def kinetics(self, activation_kJ_mol: float | None = None) -> Kinetics:
        """Cure speed with the best activation energy, or with the one given."""
        return Kinetics(self.schedule_degC, activation_kJ_mol or self.activation_kJ_mol, self.hottest_degC)

    @property
    def all_kinetics(self) -> tuple[Kinetics, Kinetics, Kinetics]:
        """Cure speed at the best, the low and the high activation energy."""
        return self.kinetics(), self.kinetics(self.activation_low), self.kinetics(self.activation_high)


class _Asked(Protocol):
    """Inputs that have the fields above."""

    @property
    def schedule_temperature_degC(self) -> float: ...
    @property
    def schedule_time_min(self) -> float: ...
    @property
    def second_temperature_degC(self) -> float | None: ...
    @property
    def second_time_min(self) -> float | None: ...
    @property
    def longest_time_min(self) -> float | None: ...


def schedule_asked(asked: _Asked) -> Schedule:
    """The schedule of a form that has these fields. Raises Clash as schedule_of."""
    return schedule_of(
        asked.schedule_temperature_degC,
        asked.schedule_time_min,
        asked.second_temperature_degC,
        asked.second_time_min,
        asked.longest_time_min,
    )


def schedule_of(
    first_degC: float,
    first_min: float,
    second_degC: float | None,
    second_min: float | None,
    longest_min: float | None,
) -> Schedule:
    """The schedule that a sheet's one or two points give. Raises Clash where they cannot both be of one powder."""
    longest = 2 * first_min if longest_min is None else longest_min
    if longest < first_min:
        raise Clash(
            ("longest-time", "Longest time at schedule temperature must be no shorter than schedule time")
        )
    if second_degC is None and second_min is None:
        return Schedule(
            first_degC,
            first_min,
            first_degC,
            first_degC,
            DEFAULT_KJ_MOL,
            DEFAULT_LOW,
            DEFAULT_HIGH,
            two_points=False,
            longest_min=longest,
            longest_is_guess=longest_min is None,
            activation_step=None,
        )
    if second_degC is None:
        raise Clash(("second-temperature", "Enter the second point, temperature, or leave both empty"))
    if second_min is None:
        raise Clash(("second-time", "Enter the second point, time, or leave both empty"))
    if abs(second_degC - first_degC) < 1e-6:
        raise Clash(("second-temperature", "Second point, temperature must differ from schedule temperature"))
    hotter_first = first_degC > second_degC
    if (first_min >= second_min) if hotter_first else (second_min >= first_min):
        raise Clash(
            (
                "second-time",
                "Second point, time does not fit: the hotter point of a data sheet must take less time than the cooler",
            )
        )
    activation = activation_energy_kJ_mol(first_degC, first_min, second_degC, second_min)
    if not LOWEST_KJ_MOL <= activation <= HIGHEST_KJ_MOL:
        far = "far less" if activation > HIGHEST_KJ_MOL else "hardly less"
        raise Clash(
            (
                "second-time",
                f"Second point, time does not fit: the hotter point takes {far} time than any coating powder's would. "
                "Check that both points are of the same powder and are metal temperatures",
            )
        )
    working = step(
        "Activation energy from the sheet's two points, in F",
        f"Ea = 0.0083145 * ln(t1 / t2) / ({per_kelvin('T1')} - {per_kelvin('T2')})",
        "kJ/mol",
        t1=first_min,
        t2=second_min,
        T1=first_degC * 1.8 + 32,
        T2=second_degC * 1.8 + 32,
    )
    return Schedule(
        first_degC,
        first_min,
        min(first_degC, second_degC),
        max(first_degC, second_degC),
        activation,
        activation - BAND_KJ_MOL,
        activation + BAND_KJ_MOL,
        two_points=True,
        longest_min=longest,
        longest_is_guess=longest_min is None,
        activation_step=working,
    )
