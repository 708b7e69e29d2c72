"""How steep the ripple stands: the spread of the water's slopes along and across the sight."""

import math
from typing import NamedTuple

import numpy as np
import scipy
from numpy.typing import ArrayLike, NDArray

from tipsight.checks import within
from tipsight.inputs.case import Wind
from tipsight.nature import ripple_wind_m_s

# growth of the whole mean square slope with the wind [s/m] (Cox and Munk 1954)
SLOPE_PER_WIND = 5.12e-3
RIVER_SHARE = 0.5  # part of the open sea's slope that the short fetch of a river grows (judgement)
# part of the mean square slope along the wind, in a sea that spreads as the cosine squared: the
# mean of cos^2 weighted by cos^2
ALONG_WIND_SHARE = 0.75
CALM_M_S, FULL_M_S = 1.0, 2.0  # between these winds the ripple fades in (judgement)


class SlopeVariance(NamedTuple):
    """Variances of the water's slope, [-]."""

    along: float
    """Along the line of sight."""
    across: float


def slope_variance(wind: Wind) -> SlopeVariance:
    """Return how far the water's slopes spread along and across the line of sight.

    0.5 x 5.12e-3 U in all, three quarters of it along the wind, turned to the line of sight, plus
    the base on each axis. The law is of the open sea, 1 to 14 m/s (Cox and Munk 1954); the half
    for rivers, the base and the fading in from 1 to 2 m/s are judgement. A ripple that was seen
    has the slopes of `nature.ripple_wind_m_s` and does not fade: it is there. On which side the wind
    stands is not known, so the two slopes are taken as uncorrelated. Raises OutOfRange for a wind
    outside 0 to 25 m/s, a ripple outside 0 to 0.2 m, or a base outside 1e-6 to 0.05.

    >>> [round(v, 5) for v in slope_variance(Wind(speed_m_s=4.0))]
    [0.00788, 0.00276]
    """
    speed = float(within("wind", wind.speed_m_s, 0.0, 25.0, "m/s"))
    grown = min(max((speed - CALM_M_S) / (FULL_M_S - CALM_M_S), 0.0), 1.0)
    if wind.ripple_height_m is not None:
        height = within("ripple height", wind.ripple_height_m, 0.0, 0.2, "m")
        speed, grown = float(ripple_wind_m_s(height)), 1.0
    total = RIVER_SHARE * SLOPE_PER_WIND * speed * grown
    base = float(within("base slope variance", wind.base_slope_variance, 1e-6, 0.05))
    turn = math.cos(math.radians(wind.bearing_deg)) ** 2
    along = ALONG_WIND_SHARE * turn + (1.0 - ALONG_WIND_SHARE) * (1.0 - turn)
    return SlopeVariance(base + total * along, base + total * (1.0 - along))


def shadowing(slope: ArrayLike, slope_rms: ArrayLike) -> NDArray[np.float64]:
    """Return Smith's Λ of a Gaussian surface for a ray of a slope: 1 / (1 + Λ) is in the open.

    Λ = (exp(-ν²) / (ν sqrt π) - erfc ν) / 2, ν = tan δ / (σ sqrt 2), with σ the rms slope along
    the ray (Smith 1967; Bourlier, Berginc and Saillard 2002); no correlation of height and slope.

    >>> float(shadowing(0.0349, 0.0632).round(3))
    0.33
    """
    nu = np.asarray(slope, dtype=float) / (math.sqrt(2.0) * np.asarray(slope_rms, dtype=float))
    tail = np.exp(-(nu**2)) / (nu * math.sqrt(math.pi)) - scipy.special.erfc(nu)
    return np.asarray(np.maximum(tail, 0.0) / 2.0)
