"""How the eye weighs light in twilight, where rods join the cones: MES2 of CIE 191:2010."""

import numpy as np
from numpy.typing import ArrayLike, NDArray

from tipsight.checks import within

Array = NDArray[np.float64]

ALL_CONES_CD_M2 = 10.0
"""With both luminances above it m is 1, as L_mes lies between the two and log10 L_mes is 1 or more."""
SCOTOPIC_SHARE = 683.0 / 1699.0  # photopic over scotopic peak efficacy, V'(555 nm) of CIE 191:2010


def mesopic_share(photopic_cd_m2: ArrayLike, scotopic_cd_m2: ArrayLike) -> Array:
    """Return the cones' share m of a field's light [-]: 1 from 5 cd/m2 up, 0 in starlight.

    m = 0.7670 + 0.3334 log10 L_mes held to 0 and 1, L_mes as in `mesopic_mix` (CIE 191:2010, for
    the outer field of view: of a tip looked at straight, the most that twilight can do).
    `OutOfRange` if a luminance is not 1e-9 to 1e10 cd/m2.
    """
    photopic = within("photopic luminance", photopic_cd_m2, 1e-9, 1e10, "cd/m2")
    scotopic = within("scotopic luminance", scotopic_cd_m2, 1e-9, 1e10, "cd/m2")
    if min(photopic.min(initial=np.inf), scotopic.min(initial=np.inf)) >= ALL_CONES_CD_M2:
        return np.ones(np.broadcast_shapes(photopic.shape, scotopic.shape))
    low = np.zeros(np.broadcast_shapes(photopic.shape, scotopic.shape))
    high = np.ones_like(low)
    # halving always ends, where the standard's iteration may not at extreme ratios (Gao et al. 2017)
    for _ in range(40):
        m = 0.5 * (low + high)
        aim = 0.7670 + 0.3334 * np.log10(mesopic_mix(photopic, scotopic, m))
        low, high = np.where(aim > m, m, low), np.where(aim > m, high, m)
    m = 0.5 * (low + high)
    return np.where(m > 1.0 - 1e-9, 1.0, np.where(m < 1e-9, 0.0, m))


def mesopic_mix(photopic_cd_m2: ArrayLike, scotopic_cd_m2: ArrayLike, share: ArrayLike) -> Array:
    """Return the mesopic luminance of a thing in a field whose cones' share m is known [cd/m2].

    CIE 191:2010: L_mes = (m L_p + (1 - m) V' L_s)/(m + (1 - m) V'), V' = 683/1699.
    """
    photopic, scotopic = np.asarray(photopic_cd_m2, float), np.asarray(scotopic_cd_m2, float)
    m = np.asarray(share, dtype=float)
    rods = (1.0 - m) * SCOTOPIC_SHARE
    return np.asarray((m * photopic + rods * scotopic) / (m + rods))
