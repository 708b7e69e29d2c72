"""The sun's glitter on rippled water: its mean light and how much of the water sparkles."""

import math
from typing import NamedTuple

import numpy as np
from numpy.typing import ArrayLike, NDArray

from tipsight.checks import within
from tipsight.scene.facets import mirrors
from tipsight.scene.fresnel import WATER_INDEX
from tipsight.scene.slopes import SlopeVariance, shadowing

Array = NDArray[np.float64]

SUN_SR = 6.8e-5  # solid angle of the sun's disc, 32 arcmin across (computed)
SUN_RADIUS_DEG = 0.267  # half of 32 arcmin
SPARKLE_MM2 = 0.2  # size of one sparkle as the eye's clutter has it (judgement)


class Glint(NamedTuple):
    """Glitter of the sun; arrays have the shape of the look-down."""

    per_lux: Array
    """Mean luminance over the sun's normal illuminance [1/sr], both polarisations together."""
    coverage: Array
    """Share of the water that sparkles, 0 to 1."""
    upright: Array
    """Reflectance for upright-polarised light."""
    level: Array
    """Reflectance for level-polarised light."""


def glint(
    look_down_deg: ArrayLike,
    sun_height_deg: float,
    sun_azimuth_deg: float,
    variance: SlopeVariance,
    index: float = WATER_INDEX,
    sun_radius_deg: float = SUN_RADIUS_DEG,
) -> Glint:
    """Return how the sun glitters in rippled water.

    L = E R(ω) P(z) S / (4 sin δ n_z⁴) for the one slope that mirrors the sun to the eye, S = 1 /
    (1 + Λ(eye) + Λ(sun)) (Cox and Munk 1954, equation 9, with the shadowing of Smith 1967); the
    coverage is the same without E R, times the sun's solid angle, and never over one. The sun's
    disc widens P by the slopes that mirror parts of it: a quarter of its radius squared on each
    axis, carried over by dz/ds. At grazing that matters, because a facet must lean far to turn the
    ray aside. Gaussian slopes. Raises OutOfRange outside the ranges below.

    Parameters
    ----------
    look_down_deg : array_like
        Line of sight below level [deg], 0.05 to 89.9, any shape.
    sun_height_deg, sun_azimuth_deg : float
        Height of the sun, 0.05 to 90, and its azimuth from the line of sight [deg].
    variance : SlopeVariance
        Spread of the slopes along and across the sight [-].
    index : float
        Refractive index of the water [-].
    sun_radius_deg : float
        Of the sun's disc, 0 for a sun that is a point [deg].

    Examples
    --------
    >>> float(glint(5.0, 5.0, 0.0, SlopeVariance(0.00512, 0.00512)).coverage.round(4))
    0.0055
    """
    down = np.radians(within("look-down", look_down_deg, 0.05, 89.9, "deg"))
    high = math.radians(float(within("sun height", sun_height_deg, 0.05, 90.0, "deg")))
    turn = math.radians(sun_azimuth_deg)
    rise = np.sin(down) + math.sin(high)
    along = -(np.cos(down) - math.cos(high) * math.cos(turn)) / rise
    across = -math.cos(high) * math.sin(turn) / rise
    facet = mirrors(np.degrees(down), along, across, index=index)
    up = (
        -(math.sin(high) * math.cos(turn) + along * math.cos(high)) / rise,
        (math.sin(high) * math.sin(turn) - across * math.cos(high)) / rise,
    )
    side = -math.sin(turn) / rise, -math.cos(turn) / rise
    disc = math.radians(sun_radius_deg) ** 2 / 4.0
    xx = variance.along + disc * (up[0] ** 2 + side[0] ** 2)
    yy = variance.across + disc * (up[1] ** 2 + side[1] ** 2)
    xy = disc * (up[0] * up[1] + side[0] * side[1])
    area = xx * yy - xy**2
    away = (along**2 * yy - 2.0 * along * across * xy + across**2 * xx) / area
    density = np.exp(-0.5 * away) / (2.0 * math.pi * np.sqrt(area))
    toward_sun = variance.along * math.cos(turn) ** 2 + variance.across * math.sin(turn) ** 2
    hidden_eye = shadowing(np.tan(down), math.sqrt(variance.along))
    hidden_sun = shadowing(math.tan(high), math.sqrt(toward_sun))
    tilt = (1.0 + along**2 + across**2) ** 2
    share = density * tilt / (4.0 * np.sin(down) * (1.0 + hidden_eye + hidden_sun))
    coverage = np.minimum(share * SUN_SR, 1.0)
    return Glint(coverage / SUN_SR * facet.reflectance, coverage, facet.upright, facet.level)
