"""Light beside the line of sight that scatters in the eye: the sun and the brighter sky."""

import math

import numpy as np
from numpy.typing import NDArray

from tipsight.scene import daylight
from tipsight.scene.setting import Setting, sky_channels

Array = NDArray[np.float64]

# patches of sky begin this far above the skyline; the last ends overhead
ABOVE_DEG = (0.0, 2.0, 5.0, 12.0, 25.0, 50.0)
# patches end this far to either side of the line of sight
BESIDE_DEG = (0.0, 2.0, 6.0, 15.0, 35.0, 60.0, 90.0)


def glare(here: Setting, look_down_deg: Array, water_cd_m2: Array) -> tuple[Array, Array]:
    """Return the sources of glare about the line of sight: illuminance [lx] and angle [deg].

    The sun if it clears the skyline; and of each patch of sky ahead the part by which it is
    brighter than the water: E = (L - L_water) cos θ ω, square to the line of sight and through the
    tint. What is behind the plane of the eye counts nothing.

    Parameters
    ----------
    here : Setting
        From `setting.setting`.
    look_down_deg : numpy.ndarray
        Line of sight below level [deg], shape (R,); both results are of shape (R, K).
    water_cd_m2 : numpy.ndarray
        Luminance of the water that the eye has adapted to [cd/m2], shape (R,).
    """
    height, azimuth, solid = _patches(here.stretch.bank_height_deg)
    bright = here.once("patches", lambda: sky_channels(here, height, azimuth)[:, 0])
    cosine = _cosine(look_down_deg, height, azimuth)
    excess = np.maximum(bright - water_cd_m2[:, None], 0.0)
    lux = excess * np.maximum(cosine, 0.0) * solid
    if here.sun_in_view:
        sun = here.state.light.sun_height_deg
        toward = _cosine(look_down_deg, np.array([sun]), np.array([here.sun_azimuth_deg]))
        colour = float(daylight.beam_weights(here.state) @ here.seen[:, 0])
        disc = here.state.beam_normal_lx * colour * np.maximum(toward, 0.0)
        lux, cosine = np.hstack([disc, lux]), np.hstack([toward, cosine])
    return lux, np.degrees(np.arccos(np.clip(cosine, -1.0, 1.0)))


def _cosine(down_deg: Array, height_deg: Array, azimuth_deg: Array) -> Array:
    """Cosine of the angle between the line of sight and directions, shape (R, K)."""
    down, height = np.radians(down_deg)[:, None], np.radians(height_deg)
    level = np.cos(down) * np.cos(height) * np.cos(np.radians(azimuth_deg))
    return np.asarray(level - np.sin(down) * np.sin(height))


def _patches(skyline_deg: float) -> tuple[Array, Array, Array]:
    """Middles and solid angles of the patches of sky ahead."""
    up = np.array([skyline_deg + a for a in ABOVE_DEG if skyline_deg + a < 90.0] + [90.0])
    side = np.array(BESIDE_DEG)
    middle = (side[1:] + side[:-1]) / 2.0
    height, azimuth = np.meshgrid(
        (up[1:] + up[:-1]) / 2.0, np.concatenate([-middle, middle]), indexing="ij"
    )
    tall = np.diff(np.sin(np.radians(up)))
    wide = np.tile(np.diff(side), 2) * math.pi / 180.0
    return height.ravel(), azimuth.ravel(), np.outer(tall, wide).ravel()
