"""The smallest dip of a tip that is noticed."""

import numpy as np
from numpy.typing import ArrayLike, NDArray

from tipsight.checks import within
from tipsight.sight import energy, grades
from tipsight.sight import eye as eyes

Array = NDArray[np.float64]

VERNIER_ARCMIN = 0.08  # five seconds of arc (order of magnitude: Watt 1983; Levi and Klein 1990)
TASK_FACTOR = 3.0  # [-], an untrained watcher who holds the place in mind for a second (judgement)
EDGE_SHARE = 0.94  # [-], of blur over level: where an ideal observer finds a blurred edge
LENGTH_SHARE = 0.04  # [-], Weber fraction of a length (2 to 5 %, from memory)
# share of its light that a tip must lose to be noticed (from memory: contrast discrimination)
LEAST_LOSS, LOSS_POWER = 0.15, -0.4
MEMORY_ARCMIN = 2.2  # place kept in mind for a quarter of a second without a mark near (abstract)


def visible_dip_mm(
    level: ArrayLike,
    showing_mm: ArrayLike,
    ripple_rms_mm: ArrayLike,
    range_m: ArrayLike,
    eye: eyes.Eye,
    adaptation_cd_m2: ArrayLike,
    *,
    looks_away: bool = False,
) -> Array:
    """Return the smallest dip of a tip that is noticed [mm]; nan for one that is not followed.

    Parameters
    ----------
    level : visibility level of the tip, 0 or more [-]
    showing_mm : length out of the water, over 0
    ripple_rms_mm : the tip's own ups and downs against the water
    range_m : eye to tip, 0.1 to 1000
    eye : whose
    adaptation_cd_m2 : luminance to which the eye is adapted; all arrays broadcast
    looks_away : whether the gaze leaves the tip between looks

    Notes
    -----
    Two cues, of which the better counts, in arc minutes. Place: sqrt((3 lab)^2 + (0.04 h)^2 +
    ripple^2), lab = hypot(0.08, 0.94 s/level) times sqrt(s^2 + b^2)/s for acuity: a blurred edge
    found by an ideal observer, not under the vernier limit. Light: h max(0.15, level^-0.4).
    Judgement built on figures partly from memory; no measurement on floats is known.

    Examples
    --------
    >>> visible_dip_mm([39.7, 2.0], 30.0, 0.0, 10.0, eyes.Eye(25.0), 1000.0).round(1)
    array([1.4, nan])
    """
    seen, least_level = within("visibility level", level, 0.0, float("inf")), grades.followed()
    height = energy.arcmin(within("showing length", showing_mm, 1e-3, 1e4, "mm"), range_m)
    ripple = energy.arcmin(within("ripple", ripple_rms_mm, 0.0, 1e4, "mm"), range_m)
    blur = eyes.blur_arcmin(adaptation_cd_m2)
    worth = np.maximum(seen, least_level)
    acuity = np.hypot(blur, eyes.defocus_arcmin(eye.mar_arcmin)) / blur
    lab = acuity * np.hypot(VERNIER_ARCMIN, EDGE_SHARE * blur / worth)
    place = np.sqrt((TASK_FACTOR * lab) ** 2 + (LENGTH_SHARE * height) ** 2 + ripple**2)
    if looks_away:
        place = np.maximum(place, MEMORY_ARCMIN)
    light = height * np.maximum(LEAST_LOSS, worth**LOSS_POWER)
    least = np.minimum(place, light) * energy.MM_PER_ARCMIN_M * np.asarray(range_m, dtype=float)
    return np.where(seen >= least_level, least, np.nan)
