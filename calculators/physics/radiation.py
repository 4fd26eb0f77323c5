"""What does an infrared thermometer see, and what metal temperature lies behind its reading?

Planck's law over the band that the gun takes in, 8 to 14 um. The fourth power of temperature holds for
all wavelengths together, and would make the errors of a gun look smaller than they are.
"""

from math import exp

from calculators.physics.curve import find_share

# First and second radiation constant: 2 h c^2 in W um^4/(m2 sr), h c / k in um K.
FIRST_W_um4_m2sr = 1.191042972e8
SECOND_um_K = 14387.76877
BAND_um = (8.0, 14.0)
ZERO_degC_K = 273.15

# What temperatures are looked for between; a gun for shop work shows nothing outside.
COLDEST_degC, HOTTEST_degC = -100.0, 2000.0


def _below(wavelength_um: float, kelvin: float) -> float:
    """Radiance at all wavelengths up to this one.

    Planck's law integrated term by term: 1/(e^x - 1) is the sum of e^-nx, and each term integrates by parts.
    """
    x = SECOND_um_K / (wavelength_um * kelvin)
    total = 0.0
    for n in range(1, 200):
        term = exp(-n * x) * (x**3 / n + 3.0 * x**2 / n**2 + 6.0 * x / n**3 + 6.0 / n**4)
        total += term
        if term < 1e-12 * total or term == 0.0:
            break
    return FIRST_W_um4_m2sr * (kelvin / SECOND_um_K) ** 4 * total


def _between(shortest_um: float, longest_um: float, kelvin: float) -> float:
    return _below(longest_um, kelvin) - _below(shortest_um, kelvin)


def band_radiance_W_m2sr(temperature_degC: float) -> float:
    """What a black surface sends out between 8 and 14 um.

    f(T) = integral of 2 h c^2 / lambda^5 / (exp(h c / (lambda k T)) - 1) from 8 to 14 um

    T: temperature_degC, C (in the formula K).   Returns f in W/(m2 sr).

    Holds: any temperature here; a gun that takes all of the band alike.
    Source: Planck's law of radiation; constants of the SI of 2019 (seen: memory).
    Departs from the source: nothing.

    >>> round(band_radiance_W_m2sr(200.0), 2)
    311.43
    """
    return _between(*BAND_um, temperature_degC + ZERO_degC_K)


def temperature_of_radiance_degC(radiance_W_m2sr: float) -> float | None:
    """Temperature of the black surface that sends this out; None where no temperature here does.

    T such that f(T) = the radiance

    radiance_W_m2sr: W/(m2 sr), 8 to 14 um.   Returns T in C, -100 to 2000.

    Holds: as band_radiance_W_m2sr.
    Source: as band_radiance_W_m2sr.
    Departs from the source: nothing.

    >>> round(temperature_of_radiance_degC(311.43), 1)
    200.0
    """
    if not band_radiance_W_m2sr(COLDEST_degC) <= radiance_W_m2sr <= band_radiance_W_m2sr(HOTTEST_degC):
        return None
    return find_share(
        lambda temperature: band_radiance_W_m2sr(temperature) - radiance_W_m2sr, COLDEST_degC, HOTTEST_degC
    )


def gun_reading_degC(
    metal_degC: float,
    emissivity: float,
    surroundings_degC: float,
    gun_emissivity: float,
    assumed_surroundings_degC: float | None = None,
) -> float | None:
    """What the gun shows.

    S = eps f(T) + (1 - eps) f(Tr);   reading = T such that es f(T) + (1 - es) f(Tg) = S

    T: metal_degC, C.   eps: emissivity, of the surface.   Tr: surroundings_degC, C, what is mirrored in it.
    es: gun_emissivity, the gun's setting.   Tg: assumed_surroundings_degC, C, what the gun takes Tr to be;
    the same as Tr when left out. Returns C, or None where no reading fits.

    Holds: a surface that lets nothing through; air that neither adds nor takes.
    Source: radiation balance of a grey surface (seen: memory).
    Departs from the source: nothing.

    >>> round(gun_reading_degC(200.0, 0.46, 20.0, 0.95), 1)
    126.4
    """
    assumed_degC = surroundings_degC if assumed_surroundings_degC is None else assumed_surroundings_degC
    signal = emissivity * band_radiance_W_m2sr(metal_degC)
    signal += (1.0 - emissivity) * band_radiance_W_m2sr(surroundings_degC)
    return temperature_of_radiance_degC(
        (signal - (1.0 - gun_emissivity) * band_radiance_W_m2sr(assumed_degC)) / gun_emissivity
    )


def metal_behind_reading_degC(
    reading_degC: float,
    gun_emissivity: float,
    emissivity: float,
    surroundings_degC: float,
    assumed_surroundings_degC: float | None = None,
) -> float | None:
    """Metal temperature behind what the gun shows.

    f(T) = [es f(Tm) + (1 - es) f(Tg) - (1 - eps) f(Tr)] / eps

    Tm: reading_degC, C.   es: gun_emissivity.   eps: emissivity, of the surface.   Tr: surroundings_degC, C.
    Tg: assumed_surroundings_degC, C, what the gun takes Tr to be; the same as Tr when left out.
    Returns T in C, or None where no temperature gives that reading.

    Holds: as gun_reading_degC.
    Source: as gun_reading_degC, solved for the metal.
    Departs from the source: nothing.

    >>> round(metal_behind_reading_degC(150.0, 0.95, 0.80, 25.0), 1)
    166.8
    """
    assumed_degC = surroundings_degC if assumed_surroundings_degC is None else assumed_surroundings_degC
    signal = gun_emissivity * band_radiance_W_m2sr(reading_degC)
    signal += (1.0 - gun_emissivity) * band_radiance_W_m2sr(assumed_degC)
    return temperature_of_radiance_degC(
        (signal - (1.0 - emissivity) * band_radiance_W_m2sr(surroundings_degC)) / emissivity
    )
