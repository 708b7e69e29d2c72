"""What the wind does to a tip."""

import numpy as np
from numpy.typing import ArrayLike, NDArray

from tipsight.afloat.stance import cylinder_drag
from tipsight.checks import within
from tipsight.nature import GRAVITY_M_S2

Array = NDArray[np.float64]

AIR_KG_M3 = 1.225  # ISO 2533 (1975) at sea level; from memory


def wind_at_m_s(speed_m_s: ArrayLike, height_m: ArrayLike) -> Array:
    """Return the wind at heights of 0.001 to 10 m above the water, of ten-metre winds [m/s].

    Power law of a seventh (Hellmann 1916, from memory; engineering practice). At 16 mm it gives
    0.40, where the logarithmic law over 0.2 mm of roughness gives 0.405.

    >>> round(float(wind_at_m_s(10.0, 0.016)), 2)
    3.99
    """
    speed = within("wind", speed_m_s, 0.0, 60.0, "m/s")
    height = within("height above the water", height_m, 1e-3, 10.0, "m")
    return np.asarray(speed * (height / 10.0) ** (1.0 / 7.0))


def wind_on_tip_g(speed_m_s: ArrayLike, diameter_mm: ArrayLike, showing_mm: ArrayLike) -> Array:
    """Return the push of a ten-metre wind on what shows of a tip, 2 to 500 mm [gf].

    rho C d L U^2 / 2 with the wind at half the showing height and the drag of the tip with its
    image in the water.

    >>> round(float(wind_on_tip_g(8.0, 3.0, 31.75)), 3)
    0.055
    """
    showing = within("showing", showing_mm, 2.0, 500.0, "mm")
    d = within("tip diameter", diameter_mm, 0.5, 30.0, "mm")
    wind = wind_at_m_s(speed_m_s, 0.5e-3 * showing)
    drag = cylinder_drag(np.maximum(2.0 * showing / d, 1.0))
    return np.asarray(1e3 / GRAVITY_M_S2 * 0.5 * AIR_KG_M3 * drag * 1e-6 * d * showing * wind**2)
