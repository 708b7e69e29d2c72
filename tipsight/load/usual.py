"""What a float is usually given to carry."""

import numpy as np
from numpy.typing import ArrayLike, NDArray

from tipsight import tables
from tipsight.checks import within

Array = NDArray[np.float64]


def most_shot_g(depth_m: ArrayLike, pace_m_s: ArrayLike) -> Array:
    """Return the most shot that a float is usually given for a depth and a pace [g].

    By usual_loads.csv: two grams for each metre of depth at a walk, three in strong flow (common
    practice, no source). A float that takes more is held down by its size alone and shows no bite
    that its swim gives.

    Parameters
    ----------
    depth_m : array_like
        Of the water, 0.1 to 30 [m].
    pace_m_s : array_like
        Of the surface, 0 to 5 [m/s]; the two broadcast.

    Returns
    -------
    numpy.ndarray
        In air [g].

    Raises
    ------
    OutOfRange
        For depths and paces beyond those.

    Examples
    --------
    >>> most_shot_g(1.8, [0.4, 0.8, 1.2]).round(2).tolist()
    [3.6, 4.5, 5.4]
    """
    rows = tables.rows("usual_loads")
    pace, each = (np.array([row[key] for row in rows]) for key in ("pace_m_s", "most_g_per_m"))
    order = np.argsort(pace)
    runs = within("pace", pace_m_s, 0.0, 5.0, "m/s")
    return np.asarray(
        within("depth", depth_m, 0.1, 30.0, "m") * np.interp(runs, pace[order], each[order])
    )
