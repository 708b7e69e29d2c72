"""Short waves on a river: what height and period the wind, or the angler's eye, gives them."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray

from tipsight.afloat.freshwater import density_kg_m3, surface_tension_n_m
from tipsight.checks import within
from tipsight.inputs.case import Wind
from tipsight.nature import (
    GRAVITY_M_S2,
    SEEN_FETCH_M,
    SEEN_HEIGHT_M,
    ripple_height_m,
    ripple_wind_m_s,
)

Array = NDArray[np.float64]

CALM_M_S, BREEZE_M_S = 1.0, 2.0  # m/s; chop fades in between, below are cat's-paws; judgement
LEAST_HEIGHT_M = 2e-3  # m; no river is a mirror; judgement
LEAST_PERIOD_S = 0.2  # s; shorter waves are ruled by surface tension; judgement
STEEPEST = 0.10  # significant height over the peak's wavelength, at most; judgement
STILL_WAVELENGTH_MM = 300.0  # mm between the swirls on water that no wind blows on; judgement


@dataclass(frozen=True)
class Sea:
    """The chop at the float."""

    height_m: float
    """Significant height."""
    peak_period_s: float
    peak_wavelength_mm: float
    clutter_wavelength_mm: float
    """What the eye meets: the peak's, or that of slow swirls where no wind blows."""


def jonswap(speed_m_s: ArrayLike, fetch_m: ArrayLike) -> tuple[Array, Array]:
    """Return height [m] and peak period [s] of a young sea that the wind's fetch limits.

    Hasselmann et al. (1973), JONSWAP: with x = g F / U^2, Hs = 4 (U^2 / g) sqrt(1.6e-7 x) and
    Tp = (U / g) / (3.5 x^-0.33), for winds of 0.5 to 60 m/s and fetches of 1 to 5000 m. Fetch laws
    differ by half as much again in height and by 1.3 in period on such short water; this is the
    one whose data reach down to it.

    >>> height_m, peak_period_s = jonswap(5.0, 50.0)
    >>> round(1000 * float(height_m), 1), round(float(peak_period_s), 3)
    (18.1, 0.389)
    """
    speed = within("wind", speed_m_s, 0.5, 60.0, "m/s")
    fetch = within("fetch", fetch_m, 1.0, 5000.0, "m")
    reach = GRAVITY_M_S2 * fetch / speed**2
    return ripple_height_m(speed, fetch), np.asarray(speed / GRAVITY_M_S2 / (3.5 * reach**-0.33))


def wavenumber_rad_m(angular_rad_s: ArrayLike, temperature_c: float = 10.0) -> Array:
    """Return the wavenumber [rad/m] of an angular frequency, 0 to 1000 rad/s, any shape.

    Of waves that gravity and surface tension bring back on deep water, w^2 = g k + (sigma / rho)
    k^3 (Lamb 1932, Hydrodynamics, art. 267; from memory), the one real root by Cardano's formula
    in its hyperbolic form.

    >>> round(2000 * np.pi / float(wavenumber_rad_m(2 * np.pi / 0.2)), 1)
    66.7
    """
    omega = within("angular frequency", angular_rad_s, 0.0, 1000.0, "rad/s")
    kappa = surface_tension_n_m(temperature_c) / density_kg_m3(temperature_c)
    p, q = GRAVITY_M_S2 / kappa, omega**2 / kappa
    root = np.sqrt(p / 3.0)
    return np.asarray(2.0 * root * np.sinh(np.arcsinh(1.5 * q / (p * root)) / 3.0))


def angular_rad_s(wavenumber_rad_m: ArrayLike, temperature_c: float = 10.0) -> Array:
    """Return the angular frequency [rad/s] of a wavenumber, 0 to 10000 rad/m, any shape.

    The relation of `wavenumber_rad_m`.

    >>> round(float(angular_rad_s(2 * np.pi / 0.0173)) * 0.0173 / (2 * np.pi), 4)
    0.2323
    """
    k = within("wavenumber", wavenumber_rad_m, 0.0, 1e4, "rad/m")
    stiff = surface_tension_n_m(temperature_c) / density_kg_m3(temperature_c)
    return np.asarray(np.sqrt(GRAVITY_M_S2 * k + stiff * k**3))


def wavelength_mm(period_s: ArrayLike, temperature_c: float = 10.0) -> Array:
    """Return the wavelength [mm] of waves of a period, 0.01 to 60 s, on deep water.

    >>> round(float(wavelength_mm(0.5)), 1)
    391.1
    """
    period = within("wave period", period_s, 0.01, 60.0, "s")
    return np.asarray(2000.0 * np.pi / wavenumber_rad_m(2.0 * np.pi / period, temperature_c))


def sea(wind: Wind, temperature_c: float = 10.0) -> Sea:
    """Return the chop that a wind makes, or that the angler sees.

    `jonswap`, its height faded in linearly from 1 to 2 m/s. A told height of up to 15 mm gives the
    period that JONSWAP has at that height over 50 m; above it waves keep the steepness of 15 mm, so
    their length grows with their height (judgement). The height is at least 2 mm, and the wind's
    at most a tenth of the peak's wavelength; the period is at least 0.2 s.

    Parameters
    ----------
    wind : the wind, 0 to 30 m/s, and its fetch, 1 to 5000 m; a ripple height that is told, 0 to
        0.5 m, stands in their place
    temperature_c : water, 0 to 30

    >>> made = sea(Wind(speed_m_s=4.0))
    >>> round(1000 * made.height_m, 1), round(made.peak_wavelength_mm)
    (14.4, 204)
    >>> sea(Wind()).clutter_wavelength_mm
    300.0
    """
    speed = float(within("wind", wind.speed_m_s, 0.0, 30.0, "m/s"))
    told, drawn_larger = wind.ripple_height_m, 1.0
    if told is not None:
        height = float(within("ripple height", told, 0.0, 0.5, "m"))
        blowing = height > 0.0
        drawn_larger = max(height / SEEN_HEIGHT_M, 1.0)
        like = float(ripple_wind_m_s(height))
        period = float(jonswap(like, SEEN_FETCH_M)[1]) if like > 0.5 else 0.0
    else:
        blowing = speed >= CALM_M_S
        height = period = 0.0
        if blowing:
            full, long = jonswap(speed, wind.fetch_m)
            fade = min((speed - CALM_M_S) / (BREEZE_M_S - CALM_M_S), 1.0)
            height, period = fade * float(full), float(long)
    period = max(period, LEAST_PERIOD_S)
    length_mm = drawn_larger * float(wavelength_mm(period, temperature_c))
    if drawn_larger > 1.0:
        period = 2.0 * np.pi / float(angular_rad_s(2000.0 * np.pi / length_mm, temperature_c))
    if told is None:
        height = min(height, STEEPEST * length_mm * 1e-3)
    height = max(LEAST_HEIGHT_M, height)
    return Sea(height, period, length_mm, length_mm if blowing else STILL_WAVELENGTH_MM)
