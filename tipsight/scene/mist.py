"""Mist: how much of what leaves the tip gets through the air."""

import math

import numpy as np
from numpy.typing import ArrayLike, NDArray

from tipsight.checks import within

# contrast left at the meteorological optical range (WMO-No. 8; CIE S 017, 17-25-072)
RANGE_THRESHOLD = 0.05


def transmittance(range_m: ArrayLike, visibility_m: ArrayLike) -> NDArray[np.float64]:
    """Return the share of light that crosses the air from the tip to the eye.

    T = 0.05^(range / visibility) (Koschmieder 1924 with the 5 % of WMO-No. 8; the older 2 % would
    give a thicker mist for the same word). What is lost is made up by air light: a thing seen
    through it has T L + (1 - T) L_air. Raises OutOfRange outside the ranges below.

    Parameters
    ----------
    range_m : array_like
        Eye to tip [m], 0 to 1000.
    visibility_m : array_like
        Meteorological optical range [m], 20 to 300000; broadcasts with ``range_m``.

    Examples
    --------
    >>> float(transmittance(60, 1000).round(4))
    0.8355
    """
    distance = within("range", range_m, 0.0, 1000.0, "m")
    visibility = within("visibility", visibility_m, 20.0, 300000.0, "m")
    return np.exp(math.log(RANGE_THRESHOLD) * distance / visibility)
