"""What stands beyond the tip, squeezed into a strip: sky, far bank and the water up to it."""

import numpy as np
from numpy.typing import NDArray

from tipsight.pictures.cast import Frame
from tipsight.pictures.stage import Scene
from tipsight.scene import mist
from tipsight.scene.look import look
from tipsight.scene.setting import around, sky_channels

Array = NDArray[np.float64]

ABOVE_PX, WATER_PX = 20, 12
"""Rows over the water's edge, and rows of the water up to it."""
ROW_DEG = 1.0
"""Height that a row over the water's edge takes in (judgement: a wood as high as most)."""
PARTS = 20
"""Directions whose light is mixed in each row over the edge."""
EDGE_M = 300.0
"""Where the far water ends in the strip: as far as the sums of the water go."""


def strip(of: Scene, frame: Frame) -> Array:
    """Return the light of what stands beyond a picture, top row first, shape (rows, columns, 4).

    Parameters
    ----------
    of : Scene
        The water.
    frame : Frame
        The picture over which it stands.

    Returns
    -------
    numpy.ndarray
        The bank to its skyline and the sky over it (`setting.around`, straight ahead), then the
        mean water (`look.look`) from `EDGE_M` down to the top of the picture; the mist before all
        but the sky, the sun's disc left out [cd/m2].
    """
    edge_m = max(EDGE_M, of.case.place.range_m)
    height = (np.arange(ABOVE_PX * PARTS) + 0.5) * ROW_DEG / PARTS
    beyond = around(of.here, height, 0.0)
    bank = height < of.here.stretch.bank_height_deg
    clear = float(mist.transmittance(edge_m, of.case.light.visibility_m))
    horizon = sky_channels(of.here, 0.0, 0.0)
    beyond[bank] = clear * beyond[bank] + (1.0 - clear) * horizon
    above = beyond.reshape(ABOVE_PX, PARTS, 4).mean(axis=1)[::-1]
    rows = np.concatenate([above, _water(of, frame, edge_m)])
    return np.repeat(rows[:, None], frame.columns, axis=1)


def _water(of: Scene, frame: Frame, edge_m: float) -> Array:
    """Return the mean water from the far edge to the top of a picture, the far one first."""
    place, case = of.case.place, of.case
    over_mm = frame.tall_mm - frame.below_mm
    near_m = place.range_m / max(1.0 - over_mm * 1e-3 / place.eye_height_m, place.range_m / edge_m)
    fall = np.linspace(place.eye_height_m / edge_m, place.eye_height_m / near_m, WATER_PX)
    parts = case.light, of.stretch, case.wind, case.stream, case.angler
    ranges = np.minimum(place.eye_height_m / fall, edge_m)
    return np.asarray(look(*parts, of.finishes, ranges, place.eye_height_m).water)
