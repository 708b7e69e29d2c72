"""Fresh water: density, surface tension and viscosity by temperature, 0 to 30 deg C."""

import numpy as np
from numpy.typing import ArrayLike, NDArray

from tipsight.checks import within

Array = NDArray[np.float64]

_CRITICAL_K = 647.096  # IAPWS R1-76(2014)


def _water_c(temperature_c: ArrayLike) -> Array:
    return within("water temperature", temperature_c, 0.0, 30.0, "deg C")


def density_kg_m3(temperature_c: ArrayLike = 10.0) -> Array:
    """Return the density of fresh water of 0 to 30 deg C, any shape [kg/m3].

    Tanaka, Girard, Davis, Peuto and Bignell (2001), Metrologia 38, eq. (1), air-free water at one
    atmosphere, 0 to 40 deg C:
    rho = 999.97495 [1 - (t - 3.983035)^2 (t + 301.797) / (522528.9 (t + 69.34881))].

    >>> round(float(density_kg_m3(10.0)), 2)
    999.7
    """
    t = _water_c(temperature_c)
    return np.asarray(
        999.97495 * (1.0 - (t - 3.983035) ** 2 * (t + 301.797) / (522528.9 * (t + 69.34881)))
    )


def surface_tension_n_m(temperature_c: ArrayLike = 10.0) -> Array:
    """Return the surface tension of clean water against air [N/m].

    IAPWS R1-76(2014), eq. (1), from the triple to the critical point: 0.2358 tau^1.256
    (1 - 0.625 tau), tau = 1 - T / 647.096 K. River water with its film of grease stands lower.
    """
    tau = 1.0 - (_water_c(temperature_c) + 273.15) / _CRITICAL_K
    return np.asarray(0.2358 * tau**1.256 * (1.0 - 0.625 * tau))


def kinematic_viscosity_m2_s(temperature_c: ArrayLike = 10.0) -> Array:
    """Return the kinematic viscosity of fresh water [m2/s].

    IAPWS R12-08 (2008), eq. (36), the simplified formula for liquid water at 0.1 MPa, 253 to
    383 K (coefficients from memory, checked at ten temperatures), over the density here.
    """
    t = _water_c(temperature_c)
    reduced = (t + 273.15) / 300.0
    viscosity_pa_s = 1e-6 * (
        280.68 * reduced**-1.9
        + 511.45 * reduced**-7.7
        + 61.131 * reduced**-19.6
        + 0.45903 * reduced**-40.0
    )
    return np.asarray(viscosity_pa_s / density_kg_m3(t))
