"""How large a picture must be on a screen to take up the angle that the real thing does."""

import math

import numpy as np
from numpy.typing import NDArray

from tipsight.checks import within
from tipsight.pictures.panels import LOOK_FROM_M, PIXELS_PER_MM

Array = NDArray[np.float64]

CARD_MM = 85.60
"""Width of a bank card (ISO/IEC 7810, ID-1)."""
READ_FROM_M = 0.4
"""From the eyes to what is read (common practice, no source)."""


def of_card(card_px: float) -> float:
    """Return the pixels to the millimetre of a screen on which a bank card is so wide [px].

    Examples
    --------
    >>> round(of_card(323.5), 2)
    3.78
    """
    return float(within("width of a bank card", card_px, 100.0, 4000.0, "pixels")) / CARD_MM


def of_screen(wide_mm: float, wide_px: float) -> float:
    """Return the pixels to the millimetre of a screen so wide [mm], with so many pixels across.

    Examples
    --------
    >>> of_screen(480.0, 1920.0)
    4.0
    """
    across = float(within("width of the screen", wide_px, 200.0, 20000.0, "pixels"))
    return across / float(within("width of the screen", wide_mm, 40.0, 3000.0, "mm"))


def times_too_large(
    pixels_per_mm: float = PIXELS_PER_MM, read_from_m: float = READ_FROM_M
) -> float:
    """Return how many times larger than true the wide panels are for one who reads a screen.

    A pixel of them takes up the true angle at 96 to the inch from 5 m.

    Parameters
    ----------
    pixels_per_mm : float
        Of the screen, 0.5 to 100.
    read_from_m : float
        From the eyes to the screen, 0.1 to 5 [m].

    Examples
    --------
    >>> times_too_large()
    12.5
    """
    fine = float(within("pixels to the millimetre", pixels_per_mm, 0.5, 100.0))
    away = float(within("distance to the screen", read_from_m, 0.1, 5.0, "m"))
    return LOOK_FROM_M * PIXELS_PER_MM / (away * fine)


def about(times: float) -> str:
    """Return how many times as a number in words has it, to two figures.

    Examples
    --------
    >>> about(12.5), about(3.4996), about(104.2)
    ('12', '3.5', '100')
    """
    return f"{round(times, 1 - math.floor(math.log10(times))):g}"


def shrunk(light: Array, times: float) -> Array:
    """Return a picture so many times smaller, each pixel the mean light of what it takes in.

    Examples
    --------
    >>> shrunk(np.arange(8.0).reshape(2, 4, 1), 2.0)[..., 0].tolist()
    [[2.5, 4.5]]
    """
    from PIL import Image

    rows, columns, _ = light.shape
    size = max(1, round(columns / times)), max(1, round(rows / times))
    layers = (
        Image.fromarray(light[..., k].astype(np.float32)).resize(size, Image.Resampling.BOX)
        for k in range(light.shape[-1])
    )
    return np.stack([np.asarray(layer, dtype=float) for layer in layers], axis=-1)
