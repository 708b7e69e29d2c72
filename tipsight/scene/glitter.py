"""The sun's lane on one water: how bright it is, and what of it dazzles who looks into it."""

import numpy as np
from numpy.typing import NDArray

from tipsight.scene import daylight, observer
from tipsight.scene.glint import SUN_SR, glint
from tipsight.scene.setting import Setting

Array = NDArray[np.float64]

GLINT_FROM_DEG = 0.05  # a lower sun glitters no more
BESIDE_FROM_DEG = 0.5
"""What is nearer to the line of sight is the water behind the tip itself (judgement)."""
# to either side and above and below: finer towards the line of sight, as the veil is
_STEPS_DEG = np.concatenate(
    [np.arange(1.0, 5.0) / 8.0, BESIDE_FROM_DEG * 2.0 ** np.arange(0.25, 6.6, 0.25)]
)
_EDGES_DEG = np.concatenate([-_STEPS_DEG[::-1], [0.0], _STEPS_DEG])


def glitter(here: Setting, down_deg: Array, turn_deg: float = 0.0) -> tuple[Array, Array, Array]:
    """Return the glitter's mean channels, its coverage, and the luminance of a sparkle.

    Parameters
    ----------
    here : Setting
        From `setting.setting`.
    down_deg : numpy.ndarray
        Line of sight below level [deg], shape (R,); results have R rows.
    turn_deg : float
        How far to the side is looked [deg].

    Examples
    --------
    >>> from tipsight.inputs.case import Angler, Light, Stream, Stretch, Wind
    >>> from tipsight.scene.setting import setting
    >>> sun = Light(sky_type=12, beam=True, sun_height_deg=20.0)
    >>> here = setting(sun, Stretch(sun_ahead=True), Wind(2.5), Stream(), Angler())
    >>> ahead, aside = (glitter(here, np.array([5.0]), turn)[0][0, 0] for turn in (0.0, 20.0))
    >>> bool(ahead > aside > 0.0)
    True
    """
    sun = here.state.light.sun_height_deg
    if not here.sun_in_view or sun < GLINT_FROM_DEG:
        return np.zeros((down_deg.size, 4)), np.zeros(down_deg.size), np.zeros(down_deg.size)
    found = glint(down_deg, sun, here.sun_azimuth_deg - turn_deg, here.slopes)
    kept = observer.passed(found.upright, found.level, here.tint)
    colour = here.state.beam_normal_lx * (daylight.beam_weights(here.state) @ here.seen)
    mean = found.per_lux * kept * 2.0 / (found.upright + found.level)
    return mean[:, None] * colour, found.coverage, kept * colour[0] / SUN_SR


def beside(here: Setting, look_down_deg: float) -> tuple[Array, Array]:
    """Return the light of the lane beside the line of sight: illuminance [lx] and angle [deg].

    E = L cos(angle) omega of each patch of water, from half a degree out to some 45 degrees; the
    slopes are taken as the same all round. Both of one shape; nothing where no lane is seen.

    Parameters
    ----------
    here : Setting
        From `setting.setting`.
    look_down_deg : float
        Line of sight below level [deg].
    """
    middle, wide = (_EDGES_DEG[1:] + _EDGES_DEG[:-1]) / 2.0, np.radians(np.diff(_EDGES_DEG))
    down = look_down_deg + middle
    seen = (down > GLINT_FROM_DEG) & (down < 89.0)
    down, tall = down[seen], wide[seen]
    bright = np.stack([glitter(here, down, turn)[0][:, 0] for turn in middle], axis=1)
    low, at, turn = np.radians(down)[:, None], np.radians(look_down_deg), np.radians(middle)
    cosine = np.cos(low) * np.cos(at) * np.cos(turn) + np.sin(low) * np.sin(at)
    angle = np.degrees(np.arccos(np.clip(cosine, -1.0, 1.0)))
    lux = bright * np.cos(low) * tall[:, None] * wide * np.maximum(cosine, 0.0)
    out = angle >= BESIDE_FROM_DEG
    return lux[out], angle[out]
