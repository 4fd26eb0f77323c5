"""What a reader of booth-air must not miss."""

from __future__ import annotations

from collections.abc import Iterator
from math import inf

from calculators.kit.numbers import shop_number, whole
from calculators.kit.result import Caution
from calculators.physics.ventilation import face_velocity_m_s
from calculators.safety._booth_inputs import Inputs
from calculators.safety._booth_sums import CFM, Air, ft_min, times_the_limit

FAN_APART = 0.2  # readings and fan further apart than this need an explanation


def cautions(asked: Inputs, air: Air, verdict: str) -> Iterator[Caution]:
    if verdict == "too-rich":
        yield Caution(
            "stop",
            "The mean of the exhaust alone is over half of a cloud that burns. Do not spray. Fewer guns, less output or more air "
            f"(at least {whole(air.needed_m3_s / CFM)} cfm), proven before powder flows again.",
            "gun-output",
            "nfpa-33",
        )
    if air.mean_m_s < air.least_m_s * (1 - 1e-9):
        yield Caution(
            "stop",
            f"The air is too slow to hold overspray. Do not spray until it is at least {ft_min(air.least_m_s)}: clean "
            "or change filters, look for a slipping belt, close part of the opening.",
            "velocity-readings" if asked.velocity_readings_m_s else "fan-flow",
            "osha-1910-107",
        )
    elif air.low_m_s < air.least_m_s * (1 - 1e-9):
        yield Caution(
            "caution",
            f"The mean is enough, but the slowest place has {ft_min(air.low_m_s)}: powder will come out there. Clean the filter "
            "behind it or move the part.",
            "velocity-readings",
            "osha-1910-107",
        )
    if verdict == "too-fast":
        yield Caution(
            "caution",
            "Air this fast pulls powder off the part and away from recesses. The figure (150 ft/min) is our estimate: watch the "
            "cloud, and slow the air only if the mean stays over the least.",
            "fan-flow",
            "shop-estimate",
        )
    if air.sprayed_g_s > 0:
        yield Caution(
            "caution",
            "Near the gun the cloud is always thick enough to burn: the sum is the exhaust's mean. Grounding, no flame, no hot "
            "part and a clean booth keep it from lighting.",
            "gun-output",
            "nfpa-33",
        )
    times = times_the_limit(asked, air)
    if 1 < times < inf:
        yield Caution(
            "caution",
            f"This air holds up to {shop_number(times, 2)} times a dust limit. Air speed is a fire rule, not a health one: "
            "stay upwind, outside the booth, and have the breathing zone measured before choosing a respirator.",
            "transfer",
            "osha-1910-1000",
        )
    if asked.velocity_readings_m_s:
        expected = face_velocity_m_s(asked.fan_flow_m3_s, air.area_m2)
        if abs(expected - air.mean_m_s) > FAN_APART * max(expected, air.mean_m_s):
            yield Caution(
                "caution",
                f"The readings say {ft_min(air.mean_m_s)}, the fan's figure would be {ft_min(expected)}. The readings rule; find "
                "out why they differ: loaded filters, leaks, or too few readings.",
                "fan-flow",
            )
        if len(asked.velocity_readings_m_s) < 9:
            yield Caution(
                "note",
                "Fewer than nine readings can miss a dead corner.",
                "velocity-readings",
                "common-practice",
            )
    else:
        yield Caution(
            "note",
            "No air speed was read: the fan's figure is taken on trust. Filters that load up take a third of it and more.",
            "velocity-readings",
            "common-practice",
        )
