"""The sums of booth-air: speed into the opening, powder in the exhaust, dust against what may be breathed."""

from __future__ import annotations

from dataclasses import dataclass
from math import inf, isinf
from statistics import fmean

from calculators.kit.numbers import shop_number, whole
from calculators.physics.ventilation import face_velocity_m_s, mean_cloud_g_m3
from calculators.safety._booth_inputs import Inputs
from calculators.tables import table

BOOTH = table("booth_limits")
DUST = table("exposure_limits")
FT_MIN = 0.00508  # m/s
CFM = 4.719474432e-4  # m3/s
SHARE_LIMIT = BOOTH["exhaust"]["share_percent"] / 100
TOO_FAST_M_S = BOOTH["too-fast"]["velocity_ft_min"] * FT_MIN
STILL_M_S = FT_MIN  # slower than 1 ft/min: the air stands, the cloud has no mean and grows


@dataclass(frozen=True)
class Air:
    """What the air does. Speeds in m/s, flows in m3/s, clouds in g/m3; a cloud in air that stands still is infinite."""

    area_m2: float
    least_m_s: float
    mean_m_s: float
    low_m_s: float
    high_m_s: float
    flow_m3_s: float
    sprayed_g_s: float
    cloud_g_m3: float
    breathed_g_m3: float
    needed_m3_s: float

    def share(self, explosible_g_m3: float) -> float:
        return self.cloud_g_m3 / explosible_g_m3


def air_of(asked: Inputs) -> Air:
    area = asked.opening_width_m * asked.opening_height_m
    readings = asked.velocity_readings_m_s
    mean = fmean(readings) if readings else face_velocity_m_s(asked.fan_flow_m3_s, area)
    flow = mean * area
    least = (
        BOOTH["electrostatic" if asked.electrostatic == "yes" else "open-face"]["velocity_ft_min"] * FT_MIN
    )
    sprayed = asked.guns * asked.gun_output_g_s

    def cloud(transfer: float) -> float:
        if not sprayed:
            return 0.0
        return mean_cloud_g_m3(sprayed, transfer, flow) if mean > STILL_M_S else inf

    thinnest = sprayed / (SHARE_LIMIT * asked.explosible_g_m3)
    return Air(
        area, least, mean, min(readings, default=mean), max(readings, default=mean), flow, sprayed,
        cloud(0.0), cloud(asked.transfer_percent / 100), max(least * area, thinnest),
    )  # fmt: skip


def verdict_of(asked: Inputs, air: Air) -> str:
    if air.share(asked.explosible_g_m3) > SHARE_LIMIT * (1 + 1e-12):
        return "too-rich"
    if air.mean_m_s < air.least_m_s * (1 - 1e-9):
        return "too-slow"
    if air.mean_m_s > TOO_FAST_M_S:
        return "too-fast"
    return "enough"


def dust_limits(asked: Inputs) -> list[tuple[str, float, float]]:
    """What is breathed against each limit: name, limit in mg/m3, share of the dust that it is about."""
    rows = [
        ("dust in all", float(DUST["dust-total"]["limit_mg_m3"]), 1.0),
        ("dust in all, advisory", float(DUST["dust-total"]["advisory_mg_m3"]), 1.0),
    ]
    if asked.tgic_percent > 0:
        rows.append(("TGIC in it, advisory", float(DUST["tgic"]["limit_mg_m3"]), asked.tgic_percent / 100))
    return rows


def times_the_limit(asked: Inputs, air: Air) -> float:
    limits = [row for row in dust_limits(asked) if row[0] != "dust in all, advisory"]
    return max(1000 * air.breathed_g_m3 * share / limit for _, limit, share in limits)


def ft_min(speed_m_s: float) -> str:
    return f"{whole(speed_m_s / FT_MIN)} ft/min"


def said(number: float, digits: int = 3) -> str:
    return "no end of" if isinf(number) else shop_number(number, digits)
