"""Frequencies and weights on which the float's response is summed."""

from functools import cache

import numpy as np
from numpy.typing import NDArray

Array = NDArray[np.float64]
PEAKEDNESS = 3.3
_STEPS = 200


def _weights(x: Array) -> Array:
    """Return trapezoid weights of a grid."""
    step = np.diff(x)
    return np.asarray(0.5 * (np.append(step, 0.0) + np.append(0.0, step)))


@cache
def wave_grid() -> tuple[Array, Array]:
    """Return frequencies of wind waves and the share of the surface's variance at each.

    Returns
    -------
    ratio, share : numpy.ndarray
        Angular frequency over the peak's, 0.5 to 6, and shares that add up to 1, shape (200,).

    Notes
    -----
    JONSWAP (Hasselmann et al. 1973), peakedness 3.3, widths 0.07 and 0.09:
    x^-5 exp(-1.25 x^-4) 3.3^exp(-(x - 1)^2 / (2 s^2)).

    Examples
    --------
    >>> ratio, share = wave_grid()
    >>> round(float(share.sum()), 12), float(ratio[share.argmax()].round(1))
    (1.0, 1.0)
    """
    x = np.geomspace(0.5, 6.0, _STEPS)
    width = np.where(x <= 1.0, 0.07, 0.09)
    peak = PEAKEDNESS ** np.exp(-((x - 1.0) ** 2) / (2.0 * width**2))
    share = x**-5.0 * np.exp(-1.25 * x**-4.0) * peak * _weights(x)
    share = share / share.sum()
    for array in (x, share):
        array.setflags(write=False)
    return x, share


@cache
def boil_grid() -> tuple[Array, Array]:
    """Return frequencies of boils [rad/s], and the edges of the cells that they stand for.

    0.02 to 60 rad/s, shape (200,); edges half way between them, on the logarithm, shape (201,).
    What is slower or faster counts at the ends: there the tip follows a boil as a steady
    current takes it, and here it does not feel one.

    Examples
    --------
    >>> angular_rad_s, edges_rad_s = boil_grid()
    >>> edges_rad_s[[0, 1, -1]].round(4).tolist()
    [0.0, 0.0204, inf]
    """
    omega = np.geomspace(0.02, 60.0, _STEPS)
    edges = np.concatenate([[0.0], np.sqrt(omega[1:] * omega[:-1]), [np.inf]])
    for array in (omega, edges):
        array.setflags(write=False)
    return omega, edges
