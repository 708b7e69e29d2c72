"""How far off a tip is lost."""

import numpy as np
from numpy.typing import ArrayLike

from tipsight.checks import within

_LEAST = 1e-12  # keeps the logarithm of a level that is nothing


def goes_at(range_m: ArrayLike, level: ArrayLike, wanted: float) -> float | None:
    """Return the nearest distance beyond which the level stays below the one wanted [m].

    Distances rise, shape (R,), with a level at each, and log level runs straight over log distance
    between them. The first distance if the level is below from there on; None if it still holds at
    the last, that is, if the answer lies beyond the search. `OutOfRange` if distances do not rise
    or a level is none, `ValueError` if there is not one level for each distance.

    Examples
    --------
    >>> round(goes_at([10.0, 20.0, 40.0], [16.0, 4.0, 1.0], 2.0), 3)
    28.284
    """
    distance, levels = np.asarray(range_m, dtype=float), np.asarray(level, dtype=float)
    if distance.shape != levels.shape or distance.ndim != 1 or distance.size == 0:
        raise ValueError(f"{levels.size} levels do not fit {distance.size} distances")
    within("step between distances", np.diff(distance), 1e-9, 1e6, "m")
    within("first distance", distance[0], 1e-3, 1e6, "m")
    within("visibility level", levels, 0.0, float("inf"))
    within("level wanted", wanted, 1e-6, 1e6)
    # from the far end: contrast may change sign with look-down, so a tip may go and come again
    good = np.flatnonzero(levels >= wanted)
    if good.size == 0:
        return float(distance[0])
    last = int(good[-1])
    if last == distance.size - 1:
        return None
    x, y = np.log(distance[last : last + 2]), np.log(np.maximum(levels[last : last + 2], _LEAST))
    return float(np.exp(np.interp(-np.log(wanted), -y, x)))
