"""The tip as an upright stick: how much light falls on the side that the eye sees."""

import math

import numpy as np
from numpy.typing import ArrayLike, NDArray

from tipsight.scene.fresnel import GLOSS_INDEX, fresnel

Array = NDArray[np.float64]


def seen_share(turn_deg: ArrayLike) -> Array:
    """Return the light on the seen side of an upright stick over that on a plane facing it [-].

    G(φ) = ½ ∫ cos a max(0, cos(a - φ)) da = ((π - φ) cos φ + sin φ) / 4, averaged over the width
    as it is seen, with φ of 0 to π between the azimuths of light and viewer: a matt round stick,
    seen and lit from afar and level. Times cos h for a light at height h.

    >>> seen_share([0.0, 90.0, 180.0]).round(4).tolist()
    [0.7854, 0.25, 0.0]
    """
    turn = np.abs((np.asarray(turn_deg, dtype=float) + 180.0) % 360.0 - 180.0)
    turn = np.radians(turn)
    share: Array = ((math.pi - turn) * np.cos(turn) + np.sin(turn)) / 4.0
    return np.maximum(share, 0.0)


def gloss_shares(index: float = GLOSS_INDEX) -> tuple[float, float]:
    """Return the parts of the light around, near and far, that a glossy upright stick mirrors [-].

    ∫ cos a R(a) da from 0 to 45 deg, and on to 90: light seen at the angle a round the stick comes
    from 2a round it, from the viewer's side and from beyond. An upright stick keeps a ray's
    height, so that one who looks down on it sees water in it. Fresnel for unpolarised light; level
    sight.

    >>> near, far = gloss_shares()
    >>> round(near + far, 3)
    0.068
    """

    def part(low: float, high: float) -> float:
        node, weight = np.polynomial.legendre.leggauss(32)
        angle = low + (high - low) * (node + 1.0) / 2.0
        mirrored = np.cos(angle) * fresnel(np.cos(angle), index).mean
        return float(mirrored @ weight * (high - low) / 2.0)

    return part(0.0, math.pi / 4.0), part(math.pi / 4.0, math.pi / 2.0)
