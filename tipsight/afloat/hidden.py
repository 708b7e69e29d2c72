"""How much of a tip the nearer crests hide from the bank."""

import numpy as np
from numpy.typing import ArrayLike, NDArray

from tipsight.afloat.chop import Sea
from tipsight.checks import within

Array = NDArray[np.float64]

_AT = np.array([0.03, 0.05, 0.1, 0.17, 0.25, 0.5, 0.75, 1.0, 1.5, 2.0, 3.0, 4.0])
_HIGH = np.array(
    [0.758, 0.719, 0.665, 0.623, 0.591, 0.533, 0.501, 0.480, 0.454, 0.439, 0.423, 0.417]
)
"""95th percentile over the significant height, computed: 400 drawn seas for each."""


def _steepness(sea: Sea, range_m: ArrayLike, eye_height_m: ArrayLike) -> Array:
    """Return the line of sight's slope over that of the waves, x of `hidden_mm`."""
    far = within("distance", range_m, 0.5, 500.0, "m")
    high = within("eye height", eye_height_m, 0.1, 30.0, "m")
    return np.asarray(high / far * sea.peak_wavelength_mm / (1e3 * sea.height_m))


def hidden_mm(sea: Sea, range_m: ArrayLike, eye_height_m: ArrayLike) -> tuple[Array, Array]:
    """Return the height of a tip's foot that crests between it and the eye hide [mm].

    Mean and 95th percentile, above the still waterline.

    With x = (eye height / range) (wavelength / significant height): mean = 0.55 Hs
    exp(-1.37 x^0.7), within a tenth for x of 0.04 to 2 of drawn JONSWAP seas that run straight
    to the eye; the 95th percentile is read off such draws, between them by the logarithm of x.
    Where x is below 0.03 or above 4 the percentile stays that of the end (`outside_domain`
    tells); above 4 the sight line clears all crests but that at the tip itself, whose own
    percentile is 0.41 Hs.

    Parameters
    ----------
    sea : the chop
    range_m : eye to tip, along the water, any shape; 0.5 to 500
    eye_height_m : eye above the water, broadcasts; 0.1 to 30

    >>> mean_mm, high_mm = hidden_mm(Sea(0.0181, 0.389, 237.0, 237.0), 36.6, 1.8)
    >>> round(float(mean_mm), 1), round(float(high_mm), 1)
    (3.6, 9.3)
    """
    x, height_mm = _steepness(sea, range_m, eye_height_m), 1e3 * sea.height_m
    mean = 0.55 * height_mm * np.exp(-1.37 * x**0.7)
    percentile = height_mm * np.interp(np.log(x), np.log(_AT), _HIGH)
    return np.asarray(mean), np.asarray(percentile)


def outside_domain(sea: Sea, range_m: ArrayLike, eye_height_m: ArrayLike) -> NDArray[np.bool_]:
    """Tell where the line of sight is flatter or steeper than the draws behind `hidden_mm`.

    >>> outside_domain(Sea(0.0181, 0.389, 237.0, 237.0), [3.0, 36.6], 1.8).tolist()
    [True, False]
    """
    x = _steepness(sea, range_m, eye_height_m)
    return np.asarray((x < _AT[0]) | (x > _AT[-1]))
