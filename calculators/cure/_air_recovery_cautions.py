"""What a reader of a logged recovery must not miss."""

from __future__ import annotations

from calculators.cure._air_recovery_inputs import Inputs
from calculators.cure._air_recovery_sums import Air
from calculators.cure._schedule import f_and_c
from calculators.kit.numbers import shop_number, whole
from calculators.kit.result import Caution

# Off by more than this, the setting or the model does not fit the air.
POOR_FIT_DC = 8 / 1.8
OFF_SETTING_DC = 6 / 1.8
# What a bake's plan takes.
MOST_RECOVERY_MIN = 120.0


def cautions(asked: Inputs, air: Air) -> tuple[Caution, ...]:
    """Every caution that this log deserves."""
    found, settled = [], air.settled_degC
    if settled is not None and abs(settled - asked.setting_degC) > OFF_SETTING_DC:
        found.append(
            Caution(
                "caution",
                f"The air settles at {f_and_c(settled)}, not at the setting of {f_and_c(asked.setting_degC)}. The metal sees the "
                "air: enter what it settles at as the oven setting, here and in the plan.",
                "setting",
            )
        )
    if air.fit is not None and air.fit.residual_K > POOR_FIT_DC:
        found.append(
            Caution(
                "caution",
                f"The curve misses the readings by {whole(air.fit.residual_K * 1.8)} F. A burner that overshoots, or a door "
                "opened again, does not follow it. Plan with a longer recovery than it says.",
                "air-log",
            )
        )
    over = max(air.air_degC) - asked.setting_degC
    if over > POOR_FIT_DC:
        found.append(
            Caution(
                "caution",
                f"The air went {whole(over * 1.8)} F over the setting. Thin parts see that: check them against the sheet's "
                "hottest point.",
                "air-log",
            )
        )
    if air.fit is not None and air.fit.recovery_min > MOST_RECOVERY_MIN:
        found.append(
            Caution(
                "caution",
                "An oven that takes over two hours to come back cannot carry this load. Load less, or have the heating "
                "looked at.",
                "air-log",
            )
        )
    if asked.closed_at_min is None and air.closed_min != asked.air_log[0].minute_min:
        found.append(
            Caution(
                "note",
                f"The door is taken to have closed at {shop_number(air.closed_min, 4)} min, at the coolest reading. Readings "
                "before that are left out.",
                "closed-at",
            )
        )
    return tuple(found)
