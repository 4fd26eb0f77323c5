"""The sums of blast-plan: what the tables say of a nozzle at a pressure, and what time, air and abrasive come to."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise

from calculators.physics.air import (
    ATMOSPHERE_kPa,
    Choked,
    FREE_AIR_kg_m3,
    choked_flow_kg_s,
    hose_inlet_kPa,
    stored_free_air_m3,
)
from calculators.prepare._blast_plan_inputs import Inputs
from calculators.tables import table

PSI = 6.894757  # kPa
CFM = 4.719474e-4  # m3/s
LB = 0.45359237  # kg
FT2 = 0.09290304  # m2
LB_FT3 = 16.01846  # kg/m3
H = 3600.0  # s
NODES_psi = (50, 60, 70, 80, 90, 100, 125)
NOZZLES = tuple(table("nozzles"))
TABLE_BULK_kg_m3 = 100 * LB_FT3
RESERVE = 1.5
CFM_PER_HP = 4.5  # of the compressors behind the nozzle table
KW_PER_HP = 0.7456999
LOSS_EACH_PSI = 0.015
LOSS_SEEN_TO_psi = 11.1
NOT_BY_HAND = ("plastic", "organic", "silica-sand")


@dataclass(frozen=True)
class Span:
    """A guess with its ends."""

    middle: float
    low: float
    high: float

    def times(self, factor: float) -> Span:
        return Span(self.middle * factor, self.low * factor, self.high * factor)


def straight(row: dict[str, float], ending: str, pressure_psi: float) -> float:
    """A column of the nozzle tables at a pressure: straight lines between the printed ones, carried on past the ends."""
    pairs = tuple(pairwise(NODES_psi))
    low, high = next((pair for pair in pairs if pressure_psi <= pair[1]), pairs[-1])
    at_low, at_high = row[f"at_{low}_psi_{ending}"], row[f"at_{high}_psi_{ending}"]
    return at_low + (at_high - at_low) * (pressure_psi - low) / (high - low)


def nozzle_air_m3_s(nozzle: str, pressure_psi: float) -> float:
    """Free air of a nozzle, by the table; one past its end by the area of its bore."""
    nozzles = table("nozzles")
    if nozzle in nozzles:
        return straight(nozzles[nozzle], "cfm", pressure_psi) * CFM
    last = NOZZLES[-1]
    return nozzle_air_m3_s(last, pressure_psi) * (int(nozzle) / int(last)) ** 2


def orifice_air_m3_s(bore_m: float, pressure_kPa: float) -> float:
    """Free air of an open orifice of that bore, gauge pressure: more than any working nozzle of it takes."""
    return choked_flow_kg_s(bore_m, pressure_kPa + ATMOSPHERE_kPa) / FREE_AIR_kg_m3


@dataclass(frozen=True)
class Plan:
    """Everything that the page shows, in fixed units. None where there is no honest number."""

    jet_air_m3_s: float
    demand_m3_s: float
    upper_m3_s: float
    worn_m3_s: float | None
    worn_pressure_psi: float | None
    margin: float
    open_share: float
    nozzle_time_s: Span | None
    blast_time_s: Span | None
    rate_g_s: Span | None
    through_kg: Span | None
    used_kg: Span | None
    tank_time_s: float | None
    hose_kPa: float | None
    wear_kW: float | None


def plan(asked: Inputs) -> Plan:
    pressure_psi = asked.pressure_kPa / PSI
    suction = asked.feed == "suction"
    if suction:
        jet = upper = orifice_air_m3_s(asked.jet_bore_m, asked.pressure_kPa)
    else:
        jet = nozzle_air_m3_s(asked.nozzle, pressure_psi)
        upper = orifice_air_m3_s(table("nozzles")[asked.nozzle]["bore_in"] * 0.0254, asked.pressure_kPa)
    demand = jet + asked.helmet_air_m3_s
    worn = None if suction else nozzle_air_m3_s(str(int(asked.nozzle) + 1), pressure_psi)
    open_s = _nozzle_time_s(asked, pressure_psi)
    share = _open_share(asked, jet)
    # whichever is slower: the hand, or the compressor filling up again
    pace = min(asked.operator_pace_percent / 100, share)
    blast_s = None if open_s is None or pace <= 0 else open_s.times(1 / pace)
    rate = None if suction else _abrasive_g_s(asked, pressure_psi)
    through = _through_kg(asked, open_s, rate)
    return Plan(
        jet_air_m3_s=jet,
        demand_m3_s=demand,
        upper_m3_s=upper + asked.helmet_air_m3_s,
        worn_m3_s=None if worn is None else worn + asked.helmet_air_m3_s,
        worn_pressure_psi=None if worn is None else _held_psi(asked),
        margin=asked.compressor_m3_s / demand,
        open_share=share,
        nozzle_time_s=open_s,
        blast_time_s=blast_s,
        rate_g_s=rate,
        through_kg=through,
        used_kg=_used_kg(asked, through),
        tank_time_s=_tank_time_s(asked, demand),
        hose_kPa=_hose_kPa(asked, jet),
        wear_kW=None if worn is None else (worn - jet) / CFM / CFM_PER_HP * KW_PER_HP,
    )


def _open_share(asked: Inputs, jet_m3_s: float) -> float:
    """Share of the time that the compressor can feed the nozzle, once the helmet has had its air."""
    return min(1.0, max(0.0, asked.compressor_m3_s - asked.helmet_air_m3_s) / jet_m3_s)


def _nozzle_time_s(asked: Inputs, pressure_psi: float) -> Span | None:
    """How long the nozzle is open: by your own rate, else by the guessed pounds on a square foot."""
    if asked.abrasive in NOT_BY_HAND:
        return None
    if asked.test_rate_m2_h is not None:
        # a patch is cleaned under a watchful eye; the rest of a job has corners
        seconds = asked.area_m2 / asked.test_rate_m2_h * H
        return Span(seconds, seconds, 1.5 * seconds)
    if asked.feed == "suction":
        return None
    # heavier abrasive is credited with no more speed than the table's, as the air, not the weight, does the work
    lb_s = straight(table("nozzle_abrasive")[asked.nozzle], "lb_h", pressure_psi) / H
    low, high = _bulk_kg_m3(asked)
    feet2, row = asked.area_m2 / FT2, table("blast_rates")[asked.surface]

    def seconds_for(pounds: float, bulk: float) -> float:
        return feet2 * pounds / lb_s / min(1.0, bulk / TABLE_BULK_kg_m3)

    return Span(
        seconds_for(row["middle_lb_ft2"], (low + high) / 2),
        seconds_for(row["low_lb_ft2"], high),
        seconds_for(row["high_lb_ft2"], low),
    )


def _bulk_kg_m3(asked: Inputs) -> tuple[float, float]:
    if asked.bulk_weight_kg_m3 is not None:
        return asked.bulk_weight_kg_m3, asked.bulk_weight_kg_m3
    low, high = table("abrasives")[asked.abrasive]["bulk_lb_ft3"]
    return low * LB_FT3, high * LB_FT3


def _abrasive_g_s(asked: Inputs, pressure_psi: float) -> Span | None:
    if asked.abrasive in NOT_BY_HAND:
        return None
    at_100 = straight(table("nozzle_abrasive")[asked.nozzle], "lb_h", pressure_psi) * LB * 1000 / H
    low, high = (bulk / TABLE_BULK_kg_m3 for bulk in _bulk_kg_m3(asked))
    return Span(at_100 * (low + high) / 2, at_100 * low, at_100 * high)


def _through_kg(asked: Inputs, open_s: Span | None, rate: Span | None) -> Span | None:
    if open_s is None or rate is None:
        return None
    return Span(
        open_s.middle * rate.middle / 1000, open_s.low * rate.low / 1000, open_s.high * rate.high / 1000
    )


def _used_kg(asked: Inputs, through: Span | None) -> Span | None:
    if through is None:
        return None
    few, many = _cycles(asked)
    return Span(through.middle / ((few + many) / 2), through.low / many, through.high / few)


def _cycles(asked: Inputs) -> tuple[float, float]:
    if asked.reuse_ratio is not None:
        return asked.reuse_ratio, asked.reuse_ratio
    few, many = table("abrasives")[asked.abrasive]["reuse_cycles"]
    return float(few), float(many)


def _tank_time_s(asked: Inputs, demand_m3_s: float) -> float | None:
    """How long the tank carries what the compressor does not; None where there is nothing to carry."""
    short = demand_m3_s - asked.compressor_m3_s
    if short <= 0:
        return None
    stored = stored_free_air_m3(
        asked.tank_m3, max(asked.tank_pressure_kPa, asked.pressure_kPa), asked.pressure_kPa
    )
    return stored / short


def _hose_kPa(asked: Inputs, jet_m3_s: float) -> float | None:
    """Pressure lost in the air hose at the nozzle's flow; None where the hose cannot carry it."""
    outlet = asked.pressure_kPa + ATMOSPHERE_kPa
    try:
        inlet = hose_inlet_kPa(jet_m3_s * FREE_AIR_kg_m3, asked.hose_bore_m, asked.hose_length_m, outlet)
    except Choked:
        return None
    return inlet - outlet


def _held_psi(asked: Inputs) -> float | None:
    """Pressure that this compressor holds on the nozzle worn by a size; None where it is past the table's low end."""
    worn = str(int(asked.nozzle) + 1)
    free = asked.compressor_m3_s - asked.helmet_air_m3_s
    wanted = asked.pressure_kPa / PSI
    if free >= nozzle_air_m3_s(worn, wanted):
        return wanted
    if wanted <= NODES_psi[0] or free < nozzle_air_m3_s(worn, NODES_psi[0]):
        return None
    low, high = float(NODES_psi[0]), wanted
    for _ in range(50):
        middle = (low + high) / 2
        low, high = (middle, high) if nozzle_air_m3_s(worn, middle) <= free else (low, middle)
    return low


def verdict_of(margin: float) -> str:
    """Whether a compressor carries a nozzle, by its air over the demand."""
    return "enough" if margin >= RESERVE - 1e-9 else "no-reserve" if margin >= 1 - 1e-9 else "short"
