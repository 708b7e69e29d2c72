"""How far off a tip is lost."""

from collections.abc import Sequence

import numpy as np
from numpy.typing import ArrayLike, NDArray

from tipsight.checks import within
from tipsight.sight import kernel
from tipsight.sight.clutter import Clutter
from tipsight.sight.eye import Eye

Array = NDArray[np.float64]

_LEAST = 1e-12
"""Keeps the logarithm of a level that is nothing."""


def level_along(
    range_m: ArrayLike,
    *,
    diameter_mm: ArrayLike,
    edges_mm: ArrayLike,
    contrast: ArrayLike,
    adaptation_cd_m2: ArrayLike,
    eye: Eye,
    clutter: Sequence[Clutter] = (),
) -> Array:
    """Return the level of a tip at each of several distances.

    Parameters
    ----------
    range_m : array_like
        Distances [m], 0.1 to 1000, shape (R,).
    diameter_mm : array_like
        Painted diameter [mm], broadcasts to (..., R).
    edges_mm : array_like
        Edges of the bands above the waterline, rising [mm], shape (n + 1,) or (..., R, n + 1).
    contrast : array_like
        Of each band from the foot up [-], shape (n, 3) or (..., R, n, 3).
    adaptation_cd_m2 : array_like
        Luminance to which the eye is adapted [cd/m2], broadcasts to (R,).
    eye : Eye
        Whose.
    clutter : sequence of Clutter
        The water's streaks, one for each distance; none at all leaves them out.

    Returns
    -------
    numpy.ndarray
        Level [-], shape (..., R).

    Raises
    ------
    OutOfRange
        If a diameter is not positive, edges fall, or light or distance is out of range.
    ValueError
        If bands and contrasts, or waters and distances, do not fit.

    Examples
    --------
    >>> levels = level_along([10.0, 20.0, 40.0], diameter_mm=4.0, edges_mm=[0.0, 33.0],
    ...                      contrast=[[-0.95, 0.0, 0.0]], adaptation_cd_m2=733.0, eye=Eye(60.0))
    >>> bool(np.all(np.diff(levels) < 0))
    True
    """
    within("distance", range_m, 0.1, 1000.0, "m")
    held = kernel.kernels(range_m, adaptation_cd_m2, eye, clutter)
    return np.hypot(
        *kernel.level_parts(
            held, diameter_mm=diameter_mm, edges_mm=edges_mm, contrast=contrast, eye=eye
        )
    )


def goes_at(range_m: ArrayLike, level: ArrayLike, wanted: float) -> float | None:
    """Return the nearest distance beyond which the level stays below the one wanted [m].

    Parameters
    ----------
    range_m : array_like
        Distances, rising [m], shape (R,).
    level : array_like
        Level at each [-], shape (R,).
    wanted : float
        The level wanted [-], over 0.

    Returns
    -------
    float or None
        Distance [m]; the first distance if the level is below from there on; None if the level
        still holds at the last distance, that is, if the answer lies beyond the search.

    Raises
    ------
    OutOfRange
        If the distances do not rise, a level is negative or not a number, or none is wanted.
    ValueError
        If there is not one level for each distance.

    Notes
    -----
    Between distances log level runs straight over log distance. The search is from the far end:
    contrast may change sign with look-down, so that a tip may go and come again.

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
    good = np.flatnonzero(levels >= wanted)
    if good.size == 0:
        return float(distance[0])
    last = int(good[-1])
    if last == distance.size - 1:
        return None
    x, y = np.log(distance[last : last + 2]), np.log(np.maximum(levels[last : last + 2], _LEAST))
    return float(np.exp(np.interp(-np.log(wanted), -y, x)))
