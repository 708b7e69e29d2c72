"""Ranges are enforced here and nowhere else."""

import numpy as np
from numpy.typing import ArrayLike, NDArray

from tipsight.errors import OutOfRange


def within(
    name: str, value: ArrayLike, low: float, high: float, unit: str = ""
) -> NDArray[np.float64]:
    """Return ``value`` as a float array if all of it lies within the range.

    Parameters
    ----------
    name : str
        What the number is, for the error's text.
    value : array_like
        The number or numbers.
    low, high : float
        The range, ends included.
    unit : str
        Their unit.

    Returns
    -------
    numpy.ndarray
        The same numbers, as floats; a scalar gives a 0-d array.

    Raises
    ------
    OutOfRange
        If any number is outside, or not a number.

    Examples
    --------
    >>> float(within("range", 20, 3, 100, "m"))
    20.0
    """
    array = np.asarray(value, dtype=float)
    bad = ~((array >= low) & (array <= high))
    if bad.any():
        raise OutOfRange(name, float(array[bad].flat[0]), low, high, unit)
    return array
