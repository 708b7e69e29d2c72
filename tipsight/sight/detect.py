"""What of a tip is there to be seen, and where the sums of its level were compared with data."""

import numpy as np
from numpy.typing import ArrayLike, NDArray

from tipsight.checks import Outside, beyond
from tipsight.sight import energy

DOMAIN = {
    "width_arcmin": (0.02, 5.0, "arcmin"),
    "height_arcmin": (0.2, 60.0, "arcmin"),
    "adaptation_cd_m2": (0.04, 5000.0, "cd/m2"),
}
"""Over what the detector of `kernel` was compared with measurements."""


def cut(edges_mm: ArrayLike, hidden_mm: ArrayLike) -> NDArray[np.float64]:
    """Return the edges of the bands, shape (..., n + 1) [mm], with what the crests hide cut off.

    The hidden height broadcasts with the edges; a band that is gone has no height left.

    Examples
    --------
    >>> cut([0.0, 10.0, 30.0], 12.0)
    array([12., 12., 30.])
    """
    return np.asarray(np.maximum(np.asarray(edges_mm, dtype=float), hidden_mm))


def outside_domain(
    diameter_mm: float, showing_mm: float, range_m: float, adaptation_cd_m2: float
) -> tuple[Outside, ...]:
    """Return what of a tip (painted diameter) in a light lies outside `DOMAIN`, named as there.

    Out there the sums run on without being held: a nearer, larger tip is limited by Weber's law,
    which Blackwell's (1946) discs bear out to six degrees, and a darker one by its flux.
    `OutOfRange` if the distance is outside 0.1 to 1000 m.

    Examples
    --------
    >>> outside_domain(4.0, 33.0, 36.6, 0.01)
    (Outside(name='adaptation_cd_m2', value=0.01, low=0.04, high=5000.0, unit='cd/m2'),)
    """
    values = {
        "width_arcmin": float(energy.arcmin(diameter_mm, range_m)),
        "height_arcmin": float(energy.arcmin(showing_mm, range_m)),
        "adaptation_cd_m2": float(adaptation_cd_m2),
    }
    return beyond(DOMAIN, values)
