"""The charts of booth-air: the three limits side by side, and the exhaust against the air."""

from __future__ import annotations

from math import isinf

from calculators.kit.chart import Axis, Bar, Chart, Mark, Series
from calculators.kit.numbers import shop_number, whole
from calculators.physics.ventilation import mean_cloud_g_m3
from calculators.safety._booth_inputs import Inputs
from calculators.safety._booth_sums import CFM, SHARE_LIMIT, Air, ft_min, said, times_the_limit


def charts(asked: Inputs, air: Air) -> tuple[Chart, ...]:
    share = air.share(asked.explosible_g_m3) / SHARE_LIMIT
    times = times_the_limit(asked, air)
    caught = air.least_m_s / air.mean_m_s if air.mean_m_s > 0 else 9.0
    rows = (
        ("Catching overspray", caught, ft_min(air.mean_m_s)),
        ("Exhaust that burns", share, f"{said(air.cloud_g_m3, 2)} g/m3"),
        ("Breathing", times, f"{said(times, 2)} times"),
    )
    top = 2.0
    bars = Chart(
        title="This booth against its three limits",
        says=f"Over 1 a limit is broken. Speed {ft_min(air.mean_m_s)} of at least {ft_min(air.least_m_s)}; exhaust at "
        f"{said(100 * air.share(asked.explosible_g_m3), 2)} % of a cloud that burns, 50 % allowed; dust up to "
        f"{said(times, 2)} times what may be breathed. Bars are cut off at 2.",
        x=Axis("over the limit, times", 0, top),
        y=Axis("", names=tuple(name for name, _, _ in rows)),
        bars=tuple(
            Bar(name, 0, min(value, top), "good" if value <= 1 else "bad", text) for name, value, text in rows
        ),
        marks=(Mark("limit", x=1.0),),
    )
    if isinf(air.cloud_g_m3) or air.sprayed_g_s <= 0:
        return (bars,)
    widest = max(1.6 * air.flow_m3_s, 1.2 * air.needed_m3_s)
    flows = tuple(widest * (place + 1) / 40 for place in range(40))
    half = SHARE_LIMIT * asked.explosible_g_m3
    curve = Chart(
        title="Powder in the exhaust against air",
        says=f"More air thins the exhaust: at {whole(air.flow_m3_s / CFM)} cfm it holds {shop_number(air.cloud_g_m3, 2)} g/m3 if "
        f"nothing sticks; {shop_number(half, 2)} g/m3 is half of a cloud that burns.",
        x=Axis("air through the booth, cfm", 0, widest / CFM),
        y=Axis("powder in the exhaust, g/m3", 0, max(2 * half, 1.3 * air.cloud_g_m3)),
        series=(
            Series(
                "exhaust",
                tuple(flow / CFM for flow in flows),
                tuple(mean_cloud_g_m3(air.sprayed_g_s, 0.0, flow) for flow in flows),
            ),
        ),
        marks=(
            Mark("this booth", air.flow_m3_s / CFM, air.cloud_g_m3),
            Mark("half of a cloud that burns", y=half),
        ),
    )
    return bars, curve
