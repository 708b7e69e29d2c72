"""How long it takes to notice that a tip has gone."""

import numpy as np
from numpy.typing import ArrayLike, NDArray

from tipsight.checks import within
from tipsight.sight import grades

SECONDS = 28.0  # s at level 1; computed: d' 1.52 in Blackwell's six seconds, growing as their root
LOOKS = 9.0  # [-], independent looks at the streaks that `clutter.KAPPA2` holds
# Looks in the first second at 40 yd, and their power over distance and time; computed: counted by
# letting seas run past a drifting tip, to a factor of 1.6 either way
LOOKS_A_SECOND, COUNTED_AT_M, LOOKS_POWER = 2.4, 36.576, 0.8


def notice_s(
    level: ArrayLike, streaks_slope: ArrayLike, range_m: ArrayLike
) -> NDArray[np.float64]:
    """Return the seconds until it is noticed that a tip has gone; nan for one not followed.

    Parameters
    ----------
    level : visibility level of the tip while it shows, 0 or more [-]
    streaks_slope : how fast the level falls with the power of the streaks, -d ln level /
        d ln power, 0 on calm water to 0.5 [-]
    range_m : eye to tip, 0.1 to 1000; all broadcast

    Notes
    -----
    T after which both errors, a miss and a false alarm, are 5 %: T = 28/L^2, where L is the level
    with fewer looks at the streaks, n, than the nine that the level holds: L = level (9/n)^-slope,
    n = max(1, 2.4 (36.576 m/range)^0.8 T^0.8). Solved for T in closed form. 28 from the quarter of
    a second of ModelFest (Watson and Ahumada 2005, J. Vision 5(9):6), which agrees with six
    seconds of Blackwell (1946).

    Examples
    --------
    >>> notice_s([2.0, 5.0, 5.0], [0.0, 0.0, 0.2], 36.576).round(2)
    array([ nan, 1.12, 1.63])
    """
    seen = within("visibility level", level, 0.0, float("inf"))
    slope = within("slope over the streaks", streaks_slope, 0.0, 0.5)
    distance = within("distance", range_m, 0.1, 1000.0, "m")
    followed = grades.followed()
    still_s = SECONDS / np.maximum(seen, followed) ** 2
    first = LOOKS_A_SECOND * (COUNTED_AT_M / distance) ** LOOKS_POWER
    many = (still_s * (LOOKS / first) ** (2 * slope)) ** (1 / (1 + 2 * LOOKS_POWER * slope))
    one = still_s * LOOKS ** (2 * slope)
    taken_s = np.where(first * many**LOOKS_POWER >= 1.0, many, one)
    return np.where(seen >= followed, taken_s, np.nan)
