"""How the eye weighs light in twilight, where rods join the cones."""

import numpy as np
from numpy.typing import ArrayLike, NDArray

from tipsight.checks import within

Array = NDArray[np.float64]

SCOTOPIC_SHARE = 683.0 / 1699.0
"""Photopic over scotopic peak efficacy, the V'(555 nm) of CIE 191:2010."""


def mesopic_share(photopic_cd_m2: ArrayLike, scotopic_cd_m2: ArrayLike) -> Array:
    """Return the cones' share m in twilight: 1 by day, 0 in starlight.

    Parameters
    ----------
    photopic_cd_m2, scotopic_cd_m2 : array_like
        Photopic and scotopic luminance of the field [cd/m2], over 0 to 1e10; broadcast.

    Returns
    -------
    numpy.ndarray
        m [-], 0 to 1.

    Raises
    ------
    OutOfRange
        Outside that range.

    Notes
    -----
    The recommended system MES2 of CIE 191:2010: m = 0.7670 + 0.3334 log10 L_mes held to 0 and 1,
    L_mes = (m L_p + (1 - m) V' L_s)/(m + (1 - m) V'), V' = 683/1699. Solved by halving, which
    always ends, where the standard's iteration may not at extreme ratios (Gao et al. 2017).

    Examples
    --------
    >>> float(mesopic_share(1.0, 2.3).round(4))
    0.7846
    """
    photopic = within("photopic luminance", photopic_cd_m2, 1e-9, 1e10, "cd/m2")
    scotopic = within("scotopic luminance", scotopic_cd_m2, 1e-9, 1e10, "cd/m2")
    low = np.zeros(np.broadcast_shapes(photopic.shape, scotopic.shape))
    high = np.ones_like(low)
    for _ in range(40):
        m = 0.5 * (low + high)
        aim = 0.7670 + 0.3334 * np.log10(mesopic_mix(photopic, scotopic, m))
        low, high = np.where(aim > m, m, low), np.where(aim > m, high, m)
    m = 0.5 * (low + high)
    return np.where(m > 1.0 - 1e-9, 1.0, np.where(m < 1e-9, 0.0, m))


def mesopic_mix(photopic_cd_m2: ArrayLike, scotopic_cd_m2: ArrayLike, share: ArrayLike) -> Array:
    """Return the mesopic luminance of a thing in a field whose cones' share is known [cd/m2].

    Parameters
    ----------
    photopic_cd_m2, scotopic_cd_m2 : array_like
        Photopic and scotopic luminance of the thing [cd/m2].
    share : array_like
        m of the field, `mesopic_share` [-]; all broadcast.

    Returns
    -------
    numpy.ndarray
        Mesopic luminance [cd/m2].

    Notes
    -----
    CIE 191:2010: L_mes = (m L_p + (1 - m) V' L_s)/(m + (1 - m) V'), V' = 683/1699.

    Examples
    --------
    >>> float(mesopic_mix(1.0, 2.3, 1.0))
    1.0
    """
    photopic, scotopic = np.asarray(photopic_cd_m2, float), np.asarray(scotopic_cd_m2, float)
    m = np.asarray(share, dtype=float)
    rods = (1.0 - m) * SCOTOPIC_SHARE
    return np.asarray((m * photopic + rods * scotopic) / (m + rods))


def mesopic_luminance(photopic_cd_m2: ArrayLike, scotopic_cd_m2: ArrayLike) -> Array:
    """Return the mesopic luminance of a field that the eye is adapted to [cd/m2].

    Parameters
    ----------
    photopic_cd_m2, scotopic_cd_m2 : array_like
        Photopic and scotopic luminance [cd/m2], over 0 to 1e10; broadcast.

    Returns
    -------
    numpy.ndarray
        Mesopic luminance; the photopic one from 5 cd/m2 up [cd/m2].

    Raises
    ------
    OutOfRange
        Outside that range.

    Notes
    -----
    MES2 of CIE 191:2010, see `mesopic_share`. The standard speaks of the outer field of view; for
    a tip that is looked at straight it is the most that twilight can shift the eye to blue.

    Examples
    --------
    >>> float(mesopic_luminance(0.1, 0.23).round(4))
    0.1393
    """
    share = mesopic_share(photopic_cd_m2, scotopic_cd_m2)
    return mesopic_mix(photopic_cd_m2, scotopic_cd_m2, share)
