"""Rippled water as a crowd of little mirrors, each weighted by how much of it the eye sees."""

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray

from tipsight.checks import within
from tipsight.scene.fresnel import WATER_INDEX, fresnel
from tipsight.scene.slopes import SlopeVariance

Array = NDArray[np.float64]

REACH = 6.0  # slopes are summed this many rms to either side
# where the sum over slopes along the sight is divided besides the bank's edges [rms]
BREAKS = (-3.0, -1.5, 0.0, 1.5, 3.0)
NODES = (6, 6)  # of the sum on each piece along the sight, and across it


@dataclass(frozen=True)
class Facets:
    """Facets of the water as the eye has them; arrays share a shape (..., facets)."""

    weight: Array
    """Share of the picture that each takes; along the last axis they sum to one."""
    ray_height_deg: Array
    """Where the mirrored ray goes, above the horizon; below it, it meets water again."""
    ray_azimuth_deg: Array
    """Round from the line of sight, 0 ahead."""
    upright: Array
    """Reflectance of upright-polarised light."""
    level: Array
    """Reflectance of level-polarised light."""
    slope_along: Array
    """Rise of each towards the viewer [-]."""

    @property
    def reflectance(self) -> Array:
        """Of unpolarised light."""
        return (self.upright + self.level) / 2.0

    def mean(self, values: Array) -> Array:
        """Return the mean over the facets of values of their shape."""
        return np.asarray(np.sum(self.weight * values, axis=-1))

    def correlation(self, values: Array, others: Array) -> Array:
        """Return how far two values of the facets go together, -1 to 1; 0 where one is even."""
        one, other = (v - self.mean(v)[..., None] for v in (values, others))
        spread = np.sqrt(self.mean(one**2) * self.mean(other**2))
        both = self.mean(one * other)
        return np.divide(both, spread, out=np.zeros_like(both), where=spread > 0.0)


def mirrors(
    look_down_deg: ArrayLike,
    slope_along: ArrayLike,
    slope_across: ArrayLike,
    weight: ArrayLike = 1.0,
    index: float = WATER_INDEX,
) -> Facets:
    """Return what facets of given slopes mirror, for a look-down of 0 to 90 deg.

    Slopes are rises towards the viewer and to the side. r = 2 (n·v) n - v with v towards the
    viewer. Upright and level halves are those of the viewer, so a facet that leans sideways mixes
    Fresnel's two: cos² of the turn between the facet's plane of incidence and the upright one. A
    facet that faces away is taken as grazed.

    >>> flat = mirrors(5.0, 0.0, 0.0)
    >>> float(flat.ray_height_deg.round(6)), float(flat.reflectance.round(4))
    (5.0, 0.5835)
    """
    down = np.radians(within("look-down", look_down_deg, 0.0, 90.0, "deg"))
    along, across = np.asarray(slope_along, dtype=float), np.asarray(slope_across, dtype=float)
    sine, cosine = np.sin(down), np.cos(down)
    squared = 1.0 + along**2 + across**2
    facing = np.maximum(sine - along * cosine, 0.0)
    incidence = np.minimum(facing / np.sqrt(squared), 1.0)
    both = fresnel(incidence, index)
    twice = 2.0 * facing / squared
    height = np.arcsin(np.clip(twice - sine, -1.0, 1.0))
    azimuth = np.arctan2(-twice * across, twice * along + cosine)
    sideways = (along * sine + cosine) ** 2 / squared
    turn = sideways / np.maximum(1.0 - incidence**2, 1e-15)
    turn = np.where(incidence > 1.0 - 1e-12, 1.0, np.minimum(turn, 1.0))
    upright = both.perpendicular + turn * (both.parallel - both.perpendicular)
    level = both.parallel + both.perpendicular - upright
    shape = np.broadcast_shapes(upright.shape, np.shape(weight))
    return Facets(
        np.broadcast_to(np.asarray(weight, dtype=float), shape),
        np.degrees(height),
        np.degrees(azimuth),
        upright,
        level,
        np.broadcast_to(along, shape),
    )


def visible(
    look_down_deg: ArrayLike,
    variance: SlopeVariance,
    bank_height_deg: float = 0.0,
    index: float = WATER_INDEX,
    nodes: tuple[int, int] = NODES,
) -> Facets:
    """Return the facets of rippled water that an eye sees, weighted as it sees them.

    Weight P(z) (sin δ - z_x cos δ) for z_x < tan δ, divided by its sum, which is Smith's
    visible-facet average (Ross, Dion and Potvin 2005): the sum itself is sin δ (1 + Λ). Gaussian
    slopes. Gauss-Legendre along the sight on pieces that end exactly where the mirrored ray leaves
    the skyline, the horizon, or the skyline's own mirror image; Gauss-Hermite across it. Raises
    OutOfRange outside the ranges below.

    Parameters
    ----------
    look_down_deg : array_like
        Line of sight below level [deg], 0.05 to 89.9, any shape; the facets get a last axis.
    variance : SlopeVariance
        Spread of the slopes along and across the sight [-].
    bank_height_deg : float
        Skyline in the mirror [deg], 0 to 89, at which the sum is divided.
    index : float
        Refractive index of the water [-].
    nodes : tuple of int
        How fine the sum is, on each piece along the sight and across it.

    Examples
    --------
    >>> water = visible(2.0, SlopeVariance(0.0079, 0.0028), 5.0)
    >>> float(water.mean(water.reflectance).round(2))
    0.49
    """
    down = np.radians(within("look-down", look_down_deg, 0.05, 89.9, "deg"))[..., None, None]
    edge = math.sin(math.radians(float(within("skyline", bank_height_deg, 0.0, 89.0, "deg"))))
    along, across = math.sqrt(variance.along), math.sqrt(variance.across)
    y, weight_y = np.polynomial.hermite_e.hermegauss(nodes[1])
    y = (across * y)[:, None]
    last = np.minimum(np.tan(down), REACH * along)
    cuts = [_slope_for(down, y, sine) for sine in (edge, 0.0, -edge)]
    plain = [np.full_like(cuts[0], along * k) for k in (-REACH, *BREAKS)]
    ends = np.concatenate([*plain, *cuts, np.broadcast_to(last, cuts[0].shape)], axis=-1)
    ends = np.sort(np.clip(ends, -REACH * along, last), axis=-1)[..., None]
    node, weight_x = np.polynomial.legendre.leggauss(nodes[0])
    half = (ends[..., 1:, :] - ends[..., :-1, :]) / 2.0
    x = ends[..., :-1, :] + half * (1.0 + node)
    down, y = down[..., None], y[..., None]
    density = np.exp(-0.5 * (x / along) ** 2) * weight_y[:, None, None] * weight_x * half
    seen = density * np.maximum(np.sin(down) - x * np.cos(down), 0.0)
    flat = (*seen.shape[:-3], -1)
    share = (seen / seen.sum(axis=(-3, -2, -1), keepdims=True)).reshape(flat)
    steep, side = x.reshape(flat), np.broadcast_to(y, x.shape).reshape(flat)
    return mirrors(np.degrees(down[..., 0, 0]), steep, side, share, index)


def _slope_for(down: Array, across: Array, ray_sine: float) -> Array:
    """Return the slope along the sight whose mirrored ray has this sine of its height."""
    a = np.sin(down) + ray_sine
    c = a * (1.0 + across**2) - 2.0 * np.sin(down)
    root = np.sqrt(np.maximum(np.cos(down) ** 2 - a * c, 0.0))
    return np.asarray(-c / (np.cos(down) + root))
