"""Frequencies and weights on which the float's response is summed."""

from functools import cache

import numpy as np
from numpy.typing import NDArray

Array = NDArray[np.float64]
PEAKEDNESS = 3.3  # of JONSWAP's mean spectrum
_STEPS = 200


@cache
def wave_grid() -> tuple[Array, Array]:
    """Return frequencies of wind waves over the peak's, 0.5 to 6, and their shares of variance.

    JONSWAP (Hasselmann et al. 1973), peakedness 3.3, widths 0.07 and 0.09: x^-5 exp(-1.25 x^-4)
    3.3^exp(-(x - 1)^2 / (2 s^2)), by the trapezoid rule; both of shape (200,).

    >>> ratio, share = wave_grid()
    >>> round(float(share.sum()), 12), float(ratio[share.argmax()].round(1))
    (1.0, 1.0)
    """
    x = np.geomspace(0.5, 6.0, _STEPS)
    width = np.where(x <= 1.0, 0.07, 0.09)
    peak = PEAKEDNESS ** np.exp(-((x - 1.0) ** 2) / (2.0 * width**2))
    step = np.diff(x)
    weight = 0.5 * (np.append(step, 0.0) + np.append(0.0, step))
    share = x**-5.0 * np.exp(-1.25 * x**-4.0) * peak * weight
    share = share / share.sum()
    for array in (x, share):
        array.setflags(write=False)
    return x, share


@cache
def boil_grid() -> tuple[Array, Array]:
    """Return frequencies of boils, 0.02 to 60 rad/s, and the edges of the bands they stand for.

    Shapes (200,) and (201,) [rad/s]; edges half way on the logarithm.

    >>> angular_rad_s, edges_rad_s = boil_grid()
    >>> edges_rad_s[[0, 1, -1]].round(4).tolist()
    [0.0, 0.0204, inf]
    """
    omega = np.geomspace(0.02, 60.0, _STEPS)
    # what is slower or faster counts at the ends: there a tip follows a boil as if it stood for
    # ever, and here it does not follow at all
    edges = np.concatenate([[0.0], np.sqrt(omega[1:] * omega[:-1]), [np.inf]])
    for array in (omega, edges):
        array.setflags(write=False)
    return omega, edges
