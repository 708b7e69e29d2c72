"""Contrast of the tip with the water behind it, as the eye has it."""

import numpy as np
from numpy.typing import ArrayLike, NDArray

from tipsight.sight import twilight

Array = NDArray[np.float64]


def _field(water: ArrayLike, veil_cd_m2: ArrayLike) -> tuple[Array, Array, Array]:
    """Return photopic and scotopic luminance of the veiled field, and the cones' share in it."""
    behind, veil = np.asarray(water, dtype=float), np.asarray(veil_cd_m2, dtype=float)
    photopic, scotopic = behind[..., 0] + veil, behind[..., 3] + veil
    return photopic, scotopic, twilight.mesopic_share(photopic, scotopic)


def adaptation(water: ArrayLike, veil_cd_m2: ArrayLike = 0.0) -> Array:
    """Return the luminance to which the eye is adapted [cd/m2]; `OutOfRange` without any light.

    Parameters
    ----------
    water : channels of the water around the tip: luminance, red-green, yellow-violet and
        scotopic luminance [cd/m2], shape (..., 4)
    veil_cd_m2 : of glare, shape (...); taken as white with a scotopic ratio of 1

    Notes
    -----
    L = L_water + L_veil (CIE 146:2002), mesopic below 5 cd/m2 (MES2 of CIE 191:2010). Steady
    adaptation: an eye that has just left a bright sky needs seconds to minutes.

    Examples
    --------
    >>> float(adaptation([200.0, 0.0, 0.0, 460.0], 50.0))
    250.0
    """
    return twilight.mesopic_mix(*_field(water, veil_cd_m2))


def contrast(tip: ArrayLike, water: ArrayLike, veil_cd_m2: ArrayLike = 0.0) -> Array:
    """Return luminance, red-green and yellow-violet contrast of a tip with its water, (..., 3).

    Parameters
    ----------
    tip, water : channels as in `adaptation` [cd/m2], shape (..., 4); broadcast
    veil_cd_m2 : of glare, lies over both and only weakens; broadcasts with the leading axes

    Notes
    -----
    Weber contrast (L_tip - L_water)/(L_water + L_veil); luminance is mesopic in a field below
    5 cd/m2 (MES2 of CIE 191:2010), with the field's share of cones for both. Opponent contrasts
    are differences over the field's photopic luminance (channels of Ashraf et al. 2024, J. Vision
    24(4):5).

    Examples
    --------
    >>> contrast([300.0, 20.0, 0.0, 600.0], [200.0, 0.0, 0.0, 460.0])
    array([0.5, 0.1, 0. ])
    """
    return _contrast(np.asarray(tip, dtype=float), water, *_field(water, veil_cd_m2))


def both(tip: ArrayLike, water: ArrayLike, veil_cd_m2: ArrayLike = 0.0) -> tuple[Array, Array]:
    """Return `contrast` and `adaptation` of one water, whose field is worked out once."""
    field = _field(water, veil_cd_m2)
    return _contrast(np.asarray(tip, dtype=float), water, *field), twilight.mesopic_mix(*field)


def _contrast(
    painted: Array, water: ArrayLike, photopic: Array, scotopic: Array, share: Array
) -> Array:
    more = painted - np.asarray(water, dtype=float)
    grey = twilight.mesopic_mix(more[..., 0], more[..., 3], share)
    grey = grey / twilight.mesopic_mix(photopic, scotopic, share)
    colour = np.broadcast_to(more[..., 1:3] / photopic[..., None], (*grey.shape, 2))
    return np.concatenate([grey[..., None], colour], axis=-1)
