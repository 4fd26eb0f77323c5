"""How far does the oven's air fall under a cold load, and when is it back? An estimate from two lumps.

The oven's inner steel and its air are one lump, the load another. The burner gives all it can until the air is back at
its setting, and after that as much as holds it there.
"""

from dataclasses import dataclass
from math import exp

_STEPS_IN_A_TIME_CONSTANT = 200
_MOST_STEPS = 20_000
# A fall smaller than this is none.
_SMALL_K = 0.5


@dataclass(frozen=True, slots=True)
class Loaded:
    """An oven with a load in it. Everything between load and air goes by one coefficient, load_W_K.

    input_W: most that comes into the oven.   loss_W_K: exhaust and walls, for each K over the shop.
    """

    setting_degC: float
    shop_degC: float
    air_degC: float
    load_degC: float
    input_W: float
    loss_W_K: float
    load_W_K: float
    load_J_K: float
    oven_J_K: float


@dataclass(frozen=True, slots=True)
class Dip:
    """dip_K: the deepest fall.   recovery_min: so long that dip exp(-3 t / recovery) loses as many degree-minutes.

    back_min: when the air is at its setting for good.
    """

    dip_K: float
    recovery_min: float
    back_min: float


def dip_of(oven: Loaded) -> Dip | None:
    """The air's fall and return after a load went in, in the two figures by which a bake is planned.

    C_o Ta' = P - k (Ta - T_shop) - G (Ta - Tm),   C_m Tm' = G (Ta - Tm),   Ta <= T_set
    recovery = 3 (integral of (T_set - Ta) dt) / dip

    Returns None where the oven cannot hold its setting, or is not back in any reasonable time.

    Holds: as an estimate. The load is one lump, the oven's steel is as hot as its air, the burner answers at once.
    Source: heat balance of two lumps, our own model; backward Euler steps (numerical method).
    Departs from the source: nothing.

    >>> bare = Loaded(200.0, 20.0, 200.0, 20.0, 10_000.0, 20.0, 50.0, 50_000.0, 0.0)
    >>> round(dip_of(bare).dip_K, 1)  # 50 (Ta - 20) = 10,000 - 20 (Ta - 20): the burner feeds load and losses
    37.1
    """
    hold_W = oven.loss_W_K * (oven.setting_degC - oven.shop_degC)
    if oven.input_W < hold_W:
        return None
    air, load = oven.air_degC, oven.load_degC
    draws = oven.load_W_K > 0.0 and oven.load_J_K > 0.0
    conductance = oven.load_W_K if draws else 0.0
    if oven.oven_J_K <= 0.0 and (conductance + oven.loss_W_K <= 0.0 or not draws):
        return Dip(0.0, 0.0, 0.0)
    constant_s = oven.load_J_K / conductance if draws else max(oven.oven_J_K / max(oven.loss_W_K, 1.0), 60.0)
    step_s = constant_s / _STEPS_IN_A_TIME_CONSTANT
    settles = 1.0 - exp(-step_s * conductance / oven.load_J_K) if draws else 0.0
    # air alone has no heat of its own worth counting, so without steel it starts where the burner can hold it
    deepest = max(0.0, oven.setting_degC - air) if oven.oven_J_K > 0.0 else 0.0
    lost_K_s, seconds = 0.0, 0.0
    before = oven.setting_degC - air
    for _ in range(_MOST_STEPS):
        over = oven.oven_J_K / step_s
        free = (over * air + oven.input_W + oven.loss_W_K * oven.shop_degC + conductance * load) / (
            over + oven.loss_W_K + conductance
        )
        air = min(free, oven.setting_degC)
        load += settles * (air - load)
        missing = oven.setting_degC - air
        seconds += step_s
        # with no steel to slow it the air falls at once
        lost_K_s += step_s * (missing if over == 0.0 else 0.5 * (before + missing))
        before = missing
        deepest = max(deepest, missing)
        if missing == 0.0 and conductance * (oven.setting_degC - load) <= oven.input_W - hold_W:
            break
    else:
        return None
    if deepest < _SMALL_K:
        return Dip(0.0, 0.0, 0.0)
    return Dip(deepest, 3.0 * lost_K_s / deepest / 60.0, seconds / 60.0)
