"""The log of air-recovery from the door's closing on, and what the fit makes of it."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise

from calculators.cure._air_recovery_inputs import Inputs
from calculators.kit.numbers import shop_number
from calculators.kit.result import Clash
from calculators.physics.recovery import RecoveryFit, fit_recovery

# A thermometer in moving air, read by eye: our estimate, one standard error.
SCATTER_DC = 2 / 1.8
# With a standard error over this share of it, a number is not worth carrying.
LOOSEST = 0.3


@dataclass(frozen=True, slots=True)
class Air:
    """The log from the door's closing on. fit is None where it cannot tell, and why holds the reason."""

    closed_min: float
    times_min: list[float]
    air_degC: list[float]
    fit: RecoveryFit | None
    why: str = ""

    @property
    def settled_degC(self) -> float | None:
        """Mean of the readings once the air should be back; None where there are not two."""
        if self.fit is None:
            return None
        pairs = zip(self.times_min, self.air_degC, strict=True)
        late = [read for at, read in pairs if at >= self.fit.recovery_min]
        return sum(late) / len(late) if len(late) >= 2 else None


def air_of(asked: Inputs) -> Air:
    """The log of these inputs, fitted. Raises Clash where it cannot be read as one."""
    rows = asked.air_log
    for place, (before, after) in enumerate(pairwise(rows), 2):
        if after.minute_min <= before.minute_min:
            raise Clash(
                (
                    "air-log",
                    f"Air log must run forward in time: reading {place} ({shop_number(after.minute_min, 6)} min) does not "
                    f"come after reading {place - 1} ({shop_number(before.minute_min, 6)} min); write the seconds if the "
                    "clock is coarse",
                )
            )
    closed = asked.closed_at_min
    if closed is None:
        closed = min(rows, key=lambda row: row.air_degC).minute_min
    elif not rows[0].minute_min <= closed <= rows[-1].minute_min:
        raise Clash(
            (
                "closed-at",
                f"Door closed at must lie within the log, {shop_number(rows[0].minute_min, 6)} to "
                f"{shop_number(rows[-1].minute_min, 6)} min",
            )
        )
    kept = [row for row in rows if row.minute_min >= closed]
    times, read = [row.minute_min - closed for row in kept], [row.air_degC for row in kept]
    try:
        fit = fit_recovery(times, read, asked.setting_degC, SCATTER_DC)
    except ValueError as reason:
        return Air(closed, times, read, None, str(reason))
    if fit.recovery_spread_min > LOOSEST * fit.recovery_min:
        return Air(closed, times, read, None, "the readings scatter too much, or end before the air is back")
    return Air(closed, times, read, fit)
