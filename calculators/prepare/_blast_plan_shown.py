"""The working and the picture of blast-plan."""

from __future__ import annotations

from calculators.kit.chart import Axis, Bar, Chart, Mark, Tone
from calculators.kit.numbers import shop_number
from calculators.kit.steps import Step, step
from calculators.prepare._blast_plan_inputs import Inputs
from calculators.prepare._blast_plan_sums import (
    CFM,
    FT2,
    LB,
    NOZZLES,
    PSI,
    H,
    NODES_psi,
    Plan,
    nozzle_air_m3_s,
    verdict_of,
)
from calculators.tables import table


def steps(asked: Inputs, made: Plan) -> tuple[Step, ...]:
    lines = []
    pressure = asked.pressure_kPa / PSI
    if asked.feed == "suction":
        lines.append(
            step(
                "Air of the jet, choked flow at 530 R and 0.07494 lb/ft3",
                "cfm = 0.5318 * 0.7854 * d**2 * (p + 14.696) / sqrt(530) / 0.07494 * 60",
                "cfm",
                d=asked.jet_bore_m / 0.0254,
                p=pressure,
            )
        )
    else:
        lines.append(_node_step(asked, pressure))
    lines.append(
        step(
            "Air in all",
            "demand = nozzle + helmet",
            "cfm",
            nozzle=made.jet_air_m3_s / CFM,
            helmet=asked.helmet_air_m3_s / CFM,
        )
    )
    lines.append(
        step(
            "Compressor over demand",
            "margin = 100 * compressor / demand",
            "%",
            compressor=asked.compressor_m3_s / CFM,
            demand=made.demand_m3_s / CFM,
        )
    )
    if made.tank_time_s:
        lines.append(
            step(
                "Tank, in free air over the shortfall",
                "time = tank * (full - nozzle) / 14.696 / (demand - compressor)",
                "min",
                tank=asked.tank_m3 * 35.31467,
                full=asked.tank_pressure_kPa / PSI,
                nozzle=pressure,
                demand=made.demand_m3_s / CFM,
                compressor=asked.compressor_m3_s / CFM,
            )
        )
    if made.nozzle_time_s is not None and asked.test_rate_m2_h is None:
        row = table("blast_rates")[asked.surface]
        lines.append(
            step(
                "Abrasive for the area, middle guess, at 100 lb/ft3",
                "m = area * pounds",
                "lb",
                area=asked.area_m2 / FT2,
                pounds=row["middle_lb_ft2"],
            )
        )
    if made.nozzle_time_s is not None and made.blast_time_s is not None:
        lines.append(
            step(
                "Time on the clock, by the slower of hand and compressor",
                "blast = open / min(share, fed) * 100",
                "min",
                open=made.nozzle_time_s.middle / 60,
                share=asked.operator_pace_percent,
                fed=100 * made.open_share,
            )
        )
    if made.rate_g_s is not None and made.nozzle_time_s is not None and made.through_kg is not None:
        lines.append(
            step(
                "Abrasive through the nozzle",
                "through = rate * open / 60",
                "lb",
                rate=made.rate_g_s.middle / 1000 * H / LB,
                open=made.nozzle_time_s.middle / 60,
            )
        )
    if made.wear_kW is not None and made.worn_m3_s is not None:
        lines.append(
            step(
                "Power that a size of wear takes, at 4.5 cfm a horsepower",
                "P = (worn - demand) / 4.5 * 0.7457",
                "kW",
                worn=made.worn_m3_s / CFM,
                demand=made.demand_m3_s / CFM,
            )
        )
    return tuple(lines)


def _node_step(asked: Inputs, pressure: float) -> Step:
    low = max((node for node in NODES_psi[:-1] if node <= pressure), default=NODES_psi[0])
    high = NODES_psi[NODES_psi.index(low) + 1]
    row = table("nozzles")[asked.nozzle]
    return step(
        "Air of the nozzle, between two lines of the table",
        "cfm = a + (b - a) * (p - p1) / (p2 - p1)",
        "cfm",
        a=row[f"at_{low}_psi_cfm"],
        b=row[f"at_{high}_psi_cfm"],
        p=pressure,
        p1=low,
        p2=high,
    )


def chart(asked: Inputs, made: Plan) -> Chart:
    pressure = asked.pressure_kPa / PSI
    helmet, compressor = asked.helmet_air_m3_s / CFM, asked.compressor_m3_s / CFM
    bars = []
    for slug in NOZZLES:
        demand = nozzle_air_m3_s(slug, pressure) / CFM + helmet
        tones: dict[str, Tone] = {"enough": "good", "no-reserve": "near", "short": "bad"}
        yours = "yours, " if asked.feed == "pressure" and slug == asked.nozzle else ""
        bore = table("nozzles")[slug]["name"].partition(", ")[2]
        tone = tones[verdict_of(compressor / demand)]
        bars.append(Bar(bore, 0, demand, tone, f"{yours}{shop_number(demand)} cfm"))
    if asked.feed == "suction":
        demand = made.demand_m3_s / CFM
        bars.insert(0, Bar("jet", 0, demand, "plain", f"yours, at most {shop_number(demand)} cfm"))
    return Chart(
        title=f"Air by nozzle at {shop_number(pressure)} psi, helmet counted",
        says="Bars that end left of the line can be fed without a stop. Green keeps half again in hand for wear.",
        x=Axis("free air, cfm", 0, None),
        y=Axis("Nozzle"),
        bars=tuple(bars),
        marks=(Mark("compressor", compressor),),
    )
