"""Ranges are enforced here and nowhere else."""

from collections.abc import Mapping
from dataclasses import dataclass

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
    # asked tens of thousands of times an answer, nearly always of what is right: quickly, then
    if type(value) is float and low <= value <= high:
        return np.asarray(value)
    array = np.asarray(value, dtype=float)
    least, most = (array, array) if array.ndim == 0 else _ends(array)
    if low <= least and most <= high:
        return array
    bad = ~((array >= low) & (array <= high))
    raise OutOfRange(name, float(array[bad].flat[0]), low, high, unit)


def _ends(array: NDArray[np.float64]) -> tuple[np.float64, np.float64]:
    """Return the least and the greatest of some numbers, nan if any is; of none, what is all right."""
    least, most = np.minimum.reduce, np.maximum.reduce
    return least(array, axis=None, initial=np.inf), most(array, axis=None, initial=-np.inf)


@dataclass(frozen=True)
class Outside:
    """A number that lies outside what a sum was made for or compared with: `beyond` finds it."""

    name: str
    value: float
    low: float
    high: float
    unit: str
    """Of all three numbers, empty for a pure number."""


def beyond(
    domain: Mapping[str, tuple[float, float, str]], values: Mapping[str, float]
) -> tuple[Outside, ...]:
    """Return those of ``values`` that lie outside their (least, most, unit) in ``domain``.

    Examples
    --------
    >>> beyond({"slope_rms": (0.056, 0.107, "")}, {"slope_rms": 0.2})
    (Outside(name='slope_rms', value=0.2, low=0.056, high=0.107, unit=''),)
    """
    return tuple(
        Outside(name, float(values[name]), low, high, unit)
        for name, (low, high, unit) in domain.items()
        if not low <= values[name] <= high
    )
