"""What does water weigh and press as steam in a closed space?

Saturation pressure (IAPWS-IF97 region 4), density of vapour (region 2), density of the liquid at
saturation (IAPWS supplementary release), and the pressure of a given mass of water in a given space.
"""

from functools import lru_cache
from math import sqrt

GAS_CONSTANT_kJ_kgK = 0.461526
CRITICAL_degC = 373.946
CRITICAL_kg_m3 = 322.0
ZERO_degC_K = 273.15
# Region 2 meets the saturation line up to here; a coating oven stays far below.
HOTTEST_degC = 350.0

_REGION_4 = (
    1167.0521452767,
    -724213.16703206,
    -17.073846940092,
    12020.82470247,
    -3232555.0322333,
    14.91510861353,
    -4823.2657361591,
    405113.40542057,
    -0.23855557567849,
    650.17534844798,
)

# I, J, n of the residual part of region 2
_REGION_2 = (
    (1, 0, -0.0017731742473213),
    (1, 1, -0.017834862292358),
    (1, 2, -0.045996013696365),
    (1, 3, -0.057581259083432),
    (1, 6, -0.05032527872793),
    (2, 1, -3.3032641670203e-05),
    (2, 2, -0.00018948987516315),
    (2, 4, -0.0039392777243355),
    (2, 7, -0.043797295650573),
    (2, 36, -2.6674547914087e-05),
    (3, 0, 2.0481737692309e-08),
    (3, 1, 4.3870667284435e-07),
    (3, 3, -3.227767723857e-05),
    (3, 6, -0.0015033924542148),
    (3, 35, -0.040668253562649),
    (4, 1, -7.8847309559367e-10),
    (4, 2, 1.2790717852285e-08),
    (4, 3, 4.8225372718507e-07),
    (5, 7, 2.2922076337661e-06),
    (6, 3, -1.6714766451061e-11),
    (6, 16, -0.0021171472321355),
    (6, 35, -23.895741934104),
    (7, 0, -5.905956432427e-18),
    (7, 11, -1.2621808899101e-06),
    (7, 25, -0.038946842435739),
    (8, 8, 1.1256211360459e-11),
    (8, 36, -8.2311340897998),
    (9, 13, 1.9809712802088e-08),
    (10, 4, 1.0406965210174e-19),
    (10, 10, -1.0234747095929e-13),
    (10, 14, -1.0018179379511e-09),
    (16, 29, -8.0882908646985e-11),
    (16, 50, 0.10693031879409),
    (18, 57, -0.33662250574171),
    (20, 20, 8.9185845355421e-25),
    (20, 35, 3.0629316876232e-13),
    (20, 48, -4.2002467698208e-06),
    (21, 21, -5.9056029685639e-26),
    (22, 53, 3.7826947613457e-06),
    (23, 39, -1.2768608934681e-15),
    (24, 26, 7.3087610595061e-29),
    (24, 40, 5.5414715350778e-17),
    (24, 58, -9.436970724121e-07),
)

_LIQUID = (
    (1 / 3, 1.99274064),
    (2 / 3, 1.09965342),
    (5 / 3, -0.510839303),
    (16 / 3, -1.75493479),
    (43 / 3, -45.5170352),
    (110 / 3, -674694.45),
)


def saturation_pressure_kPa(temperature_degC: float) -> float:
    """Pressure of steam that has liquid water beside it.

    p = [2 C / (-B + sqrt(B^2 - 4 A C))]^4 MPa, with v = T + n9/(T - n10),
    A = v^2 + n1 v + n2, B = n3 v^2 + n4 v + n5, C = n6 v^2 + n7 v + n8

    T: temperature_degC, C (in the formula K).   Returns p in kPa absolute.

    Holds: 0 to 373.9 C.
    Source: IAPWS, Industrial Formulation 1997, eq. 30 and Table 34 (seen: second-hand, an open-source
    program that lists them).
    Departs from the source: nothing.

    >>> round(saturation_pressure_kPa(226.85), 1)
    2638.9
    """
    n = _REGION_4
    kelvin = temperature_degC + ZERO_degC_K
    v = kelvin + n[8] / (kelvin - n[9])
    a = v * v + n[0] * v + n[1]
    b = n[2] * v * v + n[3] * v + n[4]
    c = n[5] * v * v + n[6] * v + n[7]
    return float((2.0 * c / (-b + sqrt(b * b - 4.0 * a * c))) ** 4 * 1000.0)


def vapour_density_kg_m3(temperature_degC: float, pressure_kPa: float) -> float:
    """Density of steam without liquid.

    v = (R T / p) [1 + p sum n I p^(I-1) (tau - 0.5)^J], p in MPa, tau = 540 K / T; density = 1/v

    T: temperature_degC, C.   p: pressure_kPa, kPa absolute, at most saturation.   Returns kg/m3.

    Holds: 0 to 350 C, up to saturation.
    Source: IAPWS, Industrial Formulation 1997, eqs. 15 and 17, Table 11 (seen: second-hand, an
    open-source program that lists them).
    Departs from the source: nothing.

    >>> round(1 / vapour_density_kg_m3(426.85, 30_000), 8)
    0.00542947
    """
    kelvin = temperature_degC + ZERO_degC_K
    p = pressure_kPa / 1000.0
    tau = 540.0 / kelvin - 0.5
    residual = sum(n * i * p**i * tau**j for i, j, n in _REGION_2)
    return pressure_kPa / (GAS_CONSTANT_kJ_kgK * kelvin * (1.0 + residual))


@lru_cache(maxsize=64)
def saturated_vapour_kg_m3(temperature_degC: float) -> float:
    """Density of steam that has liquid water beside it: what fills a hollow before any water is left over.

    vapour_density_kg_m3 at saturation_pressure_kPa

    T: temperature_degC, C.   Returns kg/m3.

    Holds: 0 to 350 C.
    Source: as the two functions.
    Departs from the source: nothing.

    >>> round(saturated_vapour_kg_m3(200.0), 2)
    7.86
    """
    return vapour_density_kg_m3(temperature_degC, saturation_pressure_kPa(temperature_degC))


def saturated_liquid_kg_m3(temperature_degC: float) -> float:
    """Density of liquid water that has steam above it.

    rho = rho_c (1 + sum b tau^e), tau = 1 - T/T_c, T_c = 647.096 K, rho_c = 322 kg/m3

    T: temperature_degC, C.   Returns kg/m3.

    Holds: 0 to 373.9 C.
    Source: IAPWS SR1-86(1992), Revised Supplementary Release on Saturation Properties of Ordinary Water
    Substance, eq. 2 (seen: memory).
    Departs from the source: nothing.

    >>> round(saturated_liquid_kg_m3(25.0), 1)
    997.0
    """
    tau = 1.0 - (temperature_degC + ZERO_degC_K) / (CRITICAL_degC + ZERO_degC_K)
    powers: float = sum(b * tau**e for e, b in _LIQUID)
    return CRITICAL_kg_m3 * (1.0 + powers)


def vapour_pressure_kPa(temperature_degC: float, mass_kg: float, volume_m3: float) -> float:
    """Pressure of a mass of water in a closed space: saturation while liquid is left, else what the vapour makes.

    p such that rho(T, p) = m / V, and at most p_sat(T)

    T: temperature_degC, C.   m: mass_kg, kg.   V: volume_m3, m3, all of it open to the vapour.
    Returns p in kPa absolute, without the air.

    Holds: 0 to 350 C; the room that liquid takes is neglected.
    Source: definition, on the IAPWS relations above.
    Departs from the source: nothing.

    >>> round(vapour_pressure_kPa(200.0, 0.1, 0.00283), 1)
    1554.7
    """
    density = mass_kg / volume_m3
    saturation = saturation_pressure_kPa(temperature_degC)
    if density >= saturated_vapour_kg_m3(temperature_degC):
        return saturation
    # Steam is near an ideal gas, so the ideal pressure corrected by its own miss settles in a few rounds.
    pressure = density * GAS_CONSTANT_kJ_kgK * (temperature_degC + ZERO_degC_K)
    pressure = min(pressure, saturation)
    for _ in range(60):
        if pressure <= 0.0:
            return 0.0
        miss = density / vapour_density_kg_m3(temperature_degC, pressure)
        pressure = min(pressure * miss, saturation)
        if abs(miss - 1.0) < 1e-10:
            break
    return pressure


def liquid_share(temperature_degC: float, mass_kg: float, volume_m3: float) -> float:
    """Share of a closed space that liquid water takes at this temperature, the rest being saturated steam.

    x = (m/V - rho_v) / (rho_l - rho_v), never under 0

    T: temperature_degC, C.   m: mass_kg, kg.   V: volume_m3, m3.   Returns x; over 1 the liquid no longer fits.

    Holds: 0 to 350 C.
    Source: mass balance.
    Departs from the source: nothing.

    >>> round(liquid_share(200.0, 1.0, 0.00283), 2)
    0.4
    """
    vapour = saturated_vapour_kg_m3(temperature_degC)
    share = (mass_kg / volume_m3 - vapour) / (saturated_liquid_kg_m3(temperature_degC) - vapour)
    return max(0.0, share)
