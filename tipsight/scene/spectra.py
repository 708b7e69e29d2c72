"""Spectra: one row of wavelengths for the whole house, and what the eye weighs them with."""

import numpy as np
from numpy.typing import ArrayLike, NDArray

from tipsight import tables
from tipsight.checks import within

# wavelengths of every spectrum, shape (97,); sight begins at 360, fluorescence at 300
WAVELENGTHS_NM: NDArray[np.float64] = np.arange(300.0, 781.0, 5.0)
WAVELENGTHS_NM.setflags(write=False)
STEP_NM = 5.0
LUMEN_PER_WATT = 683.0  # lm/W at the peak of V (CIE)
SCOTOPIC_LUMEN_PER_WATT = 1700.0  # lm/W at the peak of V' (CIE)
PLANCK_C2_NM_K = 1.438777e7  # nm K, second radiation constant (CODATA 2018)


@tables.derived
def eye(column: str) -> NDArray[np.float64]:
    """Return a column of cones.csv on the wavelengths of the house, 0 below 360 nm, shape (97,).

    >>> float(eye("photopic")[WAVELENGTHS_NM == 555][0])
    1.0
    """
    table = tables.columns("cones")
    values = np.interp(WAVELENGTHS_NM, table["wavelength_nm"], table[column], left=0.0)
    values.setflags(write=False)
    return values


def luminous(spectra: ArrayLike) -> NDArray[np.float64]:
    """Return the photopic measure of spectra (..., 97): lux from W/m2/nm, cd/m2 from W/sr/m2/nm.

    683 times the sum of V E dλ every 5 nm (CIE 15).

    >>> float(luminous(np.where(WAVELENGTHS_NM == 555, 1 / 683 / 5, 0.0)).round(12))
    1.0
    """
    total: NDArray[np.float64] = np.asarray(spectra, dtype=float) @ eye("photopic")
    return LUMEN_PER_WATT * STEP_NM * total


def normalised(spectra: ArrayLike) -> NDArray[np.float64]:
    """Return spectra (..., 97) scaled to a luminance or illuminance of one."""
    array = np.asarray(spectra, dtype=float)
    return array / luminous(array)[..., None]


def daylight(temperature_k: ArrayLike) -> NDArray[np.float64]:
    """Return the CIE daylight spectrum of a colour temperature, of luminance one, shape (..., 97).

    S = S0 + M1 S1 + M2 S2, with M1 and M2 from the chromaticity of the daylight locus (CIE
    15:2004, equations 3.2 to 3.7). Valid from 4000 to 25000 K.
    """
    xy = daylight_xy(temperature_k)
    x, y = xy[..., 0], xy[..., 1]
    m = 0.0241 + 0.2562 * x - 0.7341 * y
    m1 = (-1.3515 - 1.7703 * x + 5.9114 * y) / m
    m2 = (0.0300 - 31.4424 * x + 30.0717 * y) / m
    series = tables.columns("d_series")
    return normalised(series["s0"] + m1[..., None] * series["s1"] + m2[..., None] * series["s2"])


def daylight_xy(temperature_k: ArrayLike) -> NDArray[np.float64]:
    """Return CIE 1931 x and y of the daylight locus, 4000 to 25000 K, shape (..., 2).

    CIE 15:2004, equations 3.2 to 3.4: a cubic in 1/T with a joint at 7000 K.

    >>> daylight_xy(6504).round(4).tolist()
    [0.3127, 0.3291]
    """
    kelvin = within("colour temperature", temperature_k, 4000.0, 25000.0, "K")
    inverse = 1e3 / kelvin
    warm = 0.244063 + inverse * (0.09911 + inverse * (2.9678 - 4.6070 * inverse))
    cool = 0.237040 + inverse * (0.24748 + inverse * (1.9018 - 2.0064 * inverse))
    x = np.where(kelvin <= 7000.0, warm, cool)
    return np.stack([x, -3.0 * x**2 + 2.870 * x - 0.275], axis=-1)


def planck(temperature_k: ArrayLike) -> NDArray[np.float64]:
    """Return the spectrum of a black body of 1000 to 25000 K, of luminance one, shape (..., 97).

    Planck's law, power per nm ∝ λ^-5 / (exp(c2 / λT) - 1).
    """
    kelvin = within("colour temperature", temperature_k, 1000.0, 25000.0, "K")[..., None]
    power = (WAVELENGTHS_NM / 560.0) ** -5 / np.expm1(PLANCK_C2_NM_K / (WAVELENGTHS_NM * kelvin))
    return normalised(power)
