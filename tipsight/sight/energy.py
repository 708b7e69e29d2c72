"""Contrast energy of an upright banded rectangle after the eye's Gaussian blur, in closed form."""

from functools import lru_cache

import numpy as np
import scipy
from numpy.typing import ArrayLike, NDArray

from tipsight.checks import within

Array = NDArray[np.float64]

MM_PER_ARCMIN_M = np.pi / 180.0 / 60.0 * 1000.0  # mm that an arc minute spans a metre of distance


def arcmin(length_mm: ArrayLike, range_m: ArrayLike) -> Array:
    """Return the angle that a length square to the sight takes up at a distance [arcmin].

    Small angles: 3437.75 arcmin a radian; `OutOfRange` for a distance outside 0.1 to 1000 m.
    """
    distance = within("distance", range_m, 0.1, 1000.0, "m")
    return np.asarray(length_mm, dtype=float) / (MM_PER_ARCMIN_M * distance)


def _ramp(t: Array, blur: Array) -> Array:
    """Return K, whose second derivative is the Gaussian of variance 2 blur^2."""
    u = t / (2.0 * blur)
    return np.asarray(0.5 * t * scipy.special.erf(u) + blur / np.sqrt(np.pi) * np.exp(-(u**2)))


def across(width: ArrayLike, blur: ArrayLike) -> Array:
    """Return the width's factor E_x of the energy, for a blur (s) over 0, all in one unit.

    E_x = 2 (K(w) - K(0)), K(t) = t/2 erf(t/2s) + s/sqrt(pi) exp(-t^2/4s^2): the integral of the
    square of a blurred bar (plain calculus). w^2/(2 sqrt(pi) s) when thin, w when wide.
    """
    w, s = np.asarray(width, dtype=float), np.asarray(blur, dtype=float)
    return np.asarray(2.0 * (_ramp(w, s) - s / np.sqrt(np.pi)))


def apart(edges: ArrayLike) -> Array:
    """Return how far every two of the edges (..., n + 1) are apart, each pair once, (..., pairs)."""
    at = np.asarray(edges, dtype=float)
    first, second = pairs(at.shape[-1])
    return np.asarray(at[..., second] - at[..., first])


def steps(contrast: ArrayLike) -> Array:
    """Return the products of every two steps of contrast from band to band, (..., pairs).

    The steps of bands (..., n) are those at their n + 1 edges, from nothing and to nothing: they add
    up to nothing, so that only unlike edges count: the energy of a stick is the sum over pairs of
    edges of this, its sign turned, times that of a bar as tall as the two are apart. So it is for
    every quadratic energy that does not change as the stick is moved (plain calculus).
    """
    bands = np.asarray(contrast, dtype=float)
    step = np.zeros((*bands.shape[:-1], bands.shape[-1] + 1))
    step[..., :-1] = bands
    step[..., 1:] -= bands
    first, second = pairs(step.shape[-1])
    return np.asarray(-step[..., first] * step[..., second])


def upright(edges: ArrayLike, contrast: ArrayLike, blur: ArrayLike) -> Array:
    """Return the height's factor of the energy of a banded stick, for a blur over 0.

    Edges (..., n + 1) rise and have the blur's unit; contrasts (..., n) are those of the bands.

    Examples
    --------
    >>> float((across(0.5, 1.3) * upright([0.0, 3.0, 5.0, 9.0], [1.5, -0.8, 0.4], 1.3)).round(6))
    0.159334
    """
    bars = across(apart(edges), np.asarray(blur, dtype=float)[..., None])
    return np.asarray((steps(contrast) * bars).sum(axis=-1))


@lru_cache
def pairs(edges: int) -> tuple[NDArray[np.intp], NDArray[np.intp]]:
    """Return the two of each pair of so many edges."""
    first, second = np.triu_indices(edges, 1)
    return first, second
