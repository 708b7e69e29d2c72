"""From channels of light to the colours of a screen, as the eyes asked about would have them."""

import numpy as np
import scipy
from numpy.typing import NDArray

from tipsight import tables
from tipsight.scene import daylight, observer, spectra
from tipsight.scene.setting import Setting, tip_lx

Array = NDArray[np.float64]

LMS_TO_XYZ = np.array(
    [
        [1.94735469, -1.41445123, 0.36476327],
        [0.68990272, 0.34832189, 0.0],
        [0.0, 0.0, 1.93485343],
    ]
)
"""From cones with a peak of one to XYZ, two degrees (CIE 170-2:2015)."""
XYZ_TO_RGB = np.array(
    [
        [3.2406, -1.5372, -0.4986],
        [-0.9689, 1.8758, 0.0415],
        [0.0557, -0.2040, 1.0570],
    ]
)
"""To the linear primaries of a screen (IEC 61966-2-1)."""
WHITE_REFLECTANCE = 0.85
"""Of white paint (row of paints.csv)."""


@tables.derived
def cones_to_rgb() -> Array:
    """Return the map from the cones of `observer.cones` to linear screen colours, shape (3, 3).

    D65 of luminance one gives (1, 1, 1), each cone scaled so.

    Examples
    --------
    >>> (np.array(observer.D65_CONES) @ cones_to_rgb()).round(6).tolist()
    [1.0, 1.0, 1.0]
    """
    peaks = np.stack([spectra.eye(name) for name in ("long", "medium", "short")], axis=-1)
    peaks = peaks / peaks.max(axis=0)
    scale = (spectra.daylight(observer.D65_KELVIN) @ peaks) / np.array(observer.D65_CONES)
    plain = np.diag(scale) @ LMS_TO_XYZ.T @ XYZ_TO_RGB.T
    return np.asarray(plain / (np.array(observer.D65_CONES) @ plain))


def cones_of(channels: Array) -> Array:
    """Return the cones L, M and S of a person of normal sight who gets the same opponent values.

    Takes channels of shape (..., 4): luminance, red-green, yellow-violet and whatever follows.

    Notes
    -----
    For eyes that miss a difference the opponent value is small or nought already, so that a
    person of normal sight who looks at the screen misses it too.

    Examples
    --------
    >>> cones_of(np.array([1.0, 0.0, 0.0, 0.0])).round(4).tolist()
    [0.698, 0.302, 0.0196]
    """
    bright, red, violet = (channels[..., k] for k in range(3))
    medium = (bright - red) / (1.0 + observer.RED_GREEN_M)
    return np.stack(
        [bright - medium, medium, (violet + bright) / observer.YELLOW_VIOLET_S], axis=-1
    )


def white_cones(here: Setting) -> Array:
    """Return the cones of the level light of a scene, scaled to a luminance of one.

    It is what an eye that has settled down takes for white.
    """
    light = daylight.ground_weights(here.state) @ here.seen
    cones = cones_of(light)
    return np.asarray(cones / light[0])


def dulled(channels: Array, water: Array, share: float, blur_px: float) -> Array:
    """Return a picture with its contrast to the water lowered and its detail blurred.

    Parameters
    ----------
    channels : numpy.ndarray
        The picture, shape (rows, columns, 4).
    water : numpy.ndarray
        The mean water, shape (4,).
    share : float
        How much of the contrast is left, 0 to 1.
    blur_px : float
        Standard deviation of the blur [pixels].
    """
    found = water + share * (channels - water)
    if blur_px > 0.0:
        found = scipy.ndimage.gaussian_filter(found, (blur_px, blur_px, 0.0), mode="nearest")
    return np.asarray(found)


def linear(channels: Array, white: Array) -> Array:
    """Return a picture [cd/m2] in the linear primaries of a screen, before it is fitted to one.

    Notes
    -----
    Von Kries: each cone over that of the scene's white. Some values are below nought, or far
    apart, where a screen has no such colour.
    """
    adapted = cones_of(channels) / white * np.array(observer.D65_CONES)
    return np.asarray(adapted @ cones_to_rgb())


def exposure_cd_m2(here: Setting, white: Array, water: Array, tips: Array) -> float:
    """Return the luminance that the screen shows in full.

    Notes
    -----
    The brightest of (judgement): all but a hundredth of the water; its mean, which in the sun's
    lane a few sparkles lift far over all else, and towards which `dulled` takes what is lost; each
    primary of each paint, so that its colour fits; a third of white paint in the tip's light, so
    that dark water stays dark.
    """
    lit = float(tip_lx(here).sum()) * WHITE_REFLECTANCE / np.pi
    return max(
        float(np.quantile(water[..., 0], 0.99)),
        float(water[..., 0].mean()),
        float(linear(tips, white).max(initial=0.0)),
        lit / 3.0,
    )


def rgb(channels: Array, white: Array, brightest_cd_m2: float) -> NDArray[np.uint8]:
    """Return a picture in screen colours, 0 to 255; what is brighter than the brightest is cut off.

    Notes
    -----
    See `linear`. Colours beyond the screen are drawn towards grey until they fit, so that
    luminance, on which sight hangs most, stays true. The curve is sRGB's (IEC 61966-2-1).

    Examples
    --------
    >>> grey = np.array([0.5, 0.0, 0.0, 1.0])
    >>> rgb(grey, cones_of(np.array([1.0, 0.0, 0.0, 0.0])), 1.0).tolist()
    [188, 188, 188]
    """
    bright = np.clip(channels[..., :1] / brightest_cd_m2, 0.0, 1.0)
    away = linear(channels, white) / brightest_cd_m2 - bright
    room = np.where(
        away > 0.0, (1.0 - bright) / np.maximum(away, 1e-12), bright / np.maximum(-away, 1e-12)
    )
    fit = np.minimum(room.min(axis=-1, keepdims=True), 1.0)
    held = np.clip(bright + fit * away, 0.0, 1.0)
    curved = np.where(held <= 0.0031308, 12.92 * held, 1.055 * held ** (1.0 / 2.4) - 0.055)
    return np.asarray(np.rint(255.0 * curved), dtype=np.uint8)
