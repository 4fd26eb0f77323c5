"""How much charge a thing that is not well grounded holds, and what its spark is worth."""

from __future__ import annotations

from math import inf, sqrt


def spark_energy_mJ(capacitance_pF: float, voltage_kV: float) -> float:
    """Energy that a charged conductor can give to one spark.

        E = C V^2 / 2

    C: capacitance_pF, pF.   V: voltage_kV, kV against earth.   Returns E in mJ.

    Holds: a conductor (metal, a person) that gives all its charge at once. An insulating surface gives only a part.
    Source: energy of a charged capacitor, worked out from its definition.
    Departs from the source: nothing.

    >>> spark_energy_mJ(capacitance_pF=200, voltage_kV=20)
    40.0
    """
    return 0.5 * capacitance_pF * voltage_kV**2 / 1000


def voltage_that_lights_kV(capacitance_pF: float, ignition_energy_mJ: float) -> float:
    """Voltage at which that conductor's spark holds an ignition energy.

        V = sqrt(2 MIE / C)

    MIE: ignition_energy_mJ, mJ.   C: capacitance_pF, pF.   Returns V in kV.

    Holds: as spark_energy_mJ.
    Source: spark_energy_mJ, turned round.
    Departs from the source: nothing.

    >>> round(voltage_that_lights_kV(capacitance_pF=200, ignition_energy_mJ=10), 2)
    10.0
    """
    return sqrt(2 * ignition_energy_mJ * 1000 / capacitance_pF)


def charged_to_kV(current_uA: float, resistance_ohm: float, gun_voltage_kV: float) -> float:
    """Voltage that a conductor climbs to while a current flows onto it and leaks off through a resistance.

        V = I R, at most the voltage of the source

    I: current_uA, uA.   R: resistance_ohm, ohm, infinite where there is no way to earth.   Returns V in kV.

    Holds: in the steady state, with all of the current landing on it.
    Source: Ohm's law; the source cannot charge anything above its own voltage.
    Departs from the source: nothing.

    >>> charged_to_kV(current_uA=100, resistance_ohm=1e6, gun_voltage_kV=80)
    0.1
    """
    if current_uA == 0:
        return 0.0
    if resistance_ohm == inf:
        return gun_voltage_kV
    return min(current_uA * 1e-6 * resistance_ohm / 1000, gun_voltage_kV)


def discharge_ms(resistance_ohm: float, capacitance_pF: float) -> float:
    """Time in which a charge falls to about a third (1/e) through the resistance to earth.

        tau = R C

    R: resistance_ohm, ohm.   C: capacitance_pF, pF.   Returns tau in ms; infinite where R is.

    Holds: one resistance, one capacitance.
    Source: discharge of a capacitor through a resistance, worked out.
    Departs from the source: nothing.

    >>> round(discharge_ms(resistance_ohm=1e6, capacitance_pF=200), 3)
    0.2
    """
    return resistance_ohm * capacitance_pF * 1e-12 * 1000
