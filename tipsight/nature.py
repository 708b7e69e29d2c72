"""What nature gives every room: gravity, a ripple of the wind, how old eyes are known to be."""

import numpy as np
from numpy.typing import ArrayLike, NDArray

OLDEST_YEARS = 85.0  # up to which the age of eyes is followed; beyond nobody measured (judgement)
GRAVITY_M_S2 = 9.81  # m/s2; also what turns newtons into grams as force
VARIANCE_GROWTH = 1.6e-7
"""Of the water's height with the fetch, both counted in the wind's own length U² / g (Hasselmann
et al. 1973)."""
SEEN_FETCH_M = 50.0
"""Open water over which a ripple that is only seen is taken to have grown [m] (judgement)."""
SEEN_HEIGHT_M = 0.015
"""Up to which a ripple that is only seen is taken to be the wind's [m] (judgement)."""


def ripple_height_m(wind_m_s: ArrayLike, fetch_m: ArrayLike) -> NDArray[np.float64]:
    """Return the significant height of a ripple that the wind's fetch limits.

    Parameters
    ----------
    wind_m_s : array_like
        Ten-metre wind [m/s], 0 or more, any shape.
    fetch_m : array_like
        Water that the wind has blown over [m], 0 or more, broadcasts.

    Returns
    -------
    numpy.ndarray
        Significant height [m].

    Notes
    -----
    Hs = 4 U sqrt(1.6e-7 F / g) (Hasselmann et al. 1973, JONSWAP, fetch law of the variance).

    Examples
    --------
    >>> round(1000 * float(ripple_height_m(5.0, 50.0)), 1)
    18.1
    """
    grown = np.sqrt(VARIANCE_GROWTH * np.asarray(fetch_m, dtype=float) / GRAVITY_M_S2)
    return np.asarray(4.0 * np.asarray(wind_m_s, dtype=float) * grown)


def ripple_wind_m_s(ripple_height_m: ArrayLike) -> NDArray[np.float64]:
    """Return the wind whose ripple over 50 m is as steep as one that is seen.

    Up to 15 mm it is the one that raises such a ripple; higher waves are those of 15 mm drawn larger,
    as the bed makes them in a run without wind. So it stands for a steepness and is no wind to be
    told, nor one that leans a tip.

    Parameters
    ----------
    ripple_height_m : array_like
        Significant height [m], 0 or more, any shape.

    Returns
    -------
    numpy.ndarray
        Ten-metre wind [m/s].

    Notes
    -----
    The law of `ripple_height_m`, solved for U up to `SEEN_HEIGHT_M`; what lies above is judgement.

    Examples
    --------
    >>> ripple_wind_m_s([0.005, 0.015, 0.04]).round(2).tolist()
    [1.38, 4.15, 4.15]
    """
    per_wind = 4.0 * np.sqrt(VARIANCE_GROWTH * SEEN_FETCH_M / GRAVITY_M_S2)
    height = np.minimum(np.asarray(ripple_height_m, dtype=float), SEEN_HEIGHT_M)
    return np.asarray(height / per_wind)
