"""Contrast energy of an upright banded rectangle after the eye's Gaussian blur, in closed form."""

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
    return 2.0 * (_ramp(w, s) - _ramp(np.zeros_like(w), s))


def upright(edges: ArrayLike, blur: ArrayLike) -> Array:
    """Return what each pair of bands shares of the energy along the height, Q (..., n, n).

    Edges (..., n + 1) rise and have the blur's unit; the energy is E_x sum_ij C_i C_j Q_ij with
    Q_ij = K(b - c) - K(a - c) - K(b - d) + K(a - d) for bands [a, b] and [c, d], K as in `across`.

    Examples
    --------
    >>> q = upright([0.0, 3.0, 5.0, 9.0], 1.3)
    >>> c = np.array([1.5, -0.8, 0.4])
    >>> float((across(0.5, 1.3) * (c @ q @ c)).round(6))
    0.159334
    """
    at, s = np.asarray(edges, dtype=float), np.asarray(blur, dtype=float)
    k = _ramp(at[..., :, None] - at[..., None, :], s[..., None, None])
    return k[..., 1:, :-1] - k[..., :-1, :-1] - k[..., 1:, 1:] + k[..., :-1, 1:]
