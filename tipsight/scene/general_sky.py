"""The fifteen skies of the CIE: where each is bright, and how much light falls from it."""

import math
from functools import cache
from typing import NamedTuple

import numpy as np
from numpy.typing import ArrayLike, NDArray

from tipsight import tables
from tipsight.checks import within
from tipsight.errors import OutOfRange


class Nodes(NamedTuple):
    """Directions over the sky and their weights, which sum to 2π sr."""

    height_deg: NDArray[np.float64]
    from_sun_deg: NDArray[np.float64]
    weight_sr: NDArray[np.float64]


@cache
def nodes(heights: int = 24, azimuths: int = 24) -> Nodes:
    """Return Gauss-Legendre directions, shape (heights, azimuths), that add up over the whole sky.

    Azimuths run from the sun round to the point opposite: each stands for its mirror image too.

    >>> round(float(nodes().weight_sr.sum() / math.pi), 12)
    2.0
    """
    x, wx = np.polynomial.legendre.leggauss(heights)
    y, wy = np.polynomial.legendre.leggauss(azimuths)
    height, azimuth = (x + 1.0) * math.pi / 4.0, (y + 1.0) * math.pi / 2.0
    area = np.outer(wx * np.cos(height) * math.pi / 4.0, wy * math.pi)
    grid = np.meshgrid(np.degrees(height), np.degrees(azimuth), indexing="ij")
    return Nodes(grid[0], grid[1], area)


def relative(
    sky_type: int, height_deg: ArrayLike, from_sun_deg: ArrayLike, sun_height_deg: float
) -> NDArray[np.float64]:
    """Return the luminance of a part of the sky over that of the zenith [-].

    L / Lz = f(χ) φ(Z) / (f(Zs) φ(0)), φ(Z) = 1 + a exp(b / cos Z), φ(90°) = 1, f(χ) = 1 + c
    (exp(dχ) - exp(dπ/2)) + e cos²χ (CIE S 011/E:2003, equations 1 to 7), for heights of part and
    sun of 0 to 90 deg.

    >>> float(relative(1, 45.0, 0.0, 30.0).round(7))
    0.8325846
    """
    row = row_of("general_sky", sky_type)
    a, b, c, d, e = (float(row[key]) for key in "abcde")
    height = np.radians(within("height above the horizon", height_deg, 0.0, 90.0, "deg"))
    sun = math.radians(within("height of the sun", sun_height_deg, 0.0, 90.0, "deg").item())
    azimuth = np.radians(np.asarray(from_sun_deg, dtype=float))
    sin_h = np.sin(height)
    gradation = 1.0 + a * np.exp(b / np.maximum(sin_h, 1e-6))

    def indicatrix(cosine: NDArray[np.float64]) -> NDArray[np.float64]:
        cosine = np.clip(cosine, -1.0, 1.0)
        glow = np.exp(d * np.arccos(cosine)) - math.exp(d * math.pi / 2.0)
        return 1.0 + c * glow + e * cosine**2

    apart = math.sin(sun) * sin_h + math.cos(sun) * np.cos(height) * np.cos(azimuth)
    overhead = (1.0 + a * math.exp(b)) * indicatrix(np.asarray(math.sin(sun)))
    return indicatrix(apart) * gradation / overhead


def row_of(table: str, sky_type: int) -> tables.Row:
    """Return the row of a table with a column ``type`` that belongs to a type of sky, 1 to 15.

    >>> row_of("general_sky", 12)["c"]
    10.0
    """
    for row in tables.rows(table):
        if row["type"] == sky_type:
            return row
    raise OutOfRange("type of sky", sky_type, 1, 15)


def horizontal_sr(sky_type: int, sun_height_deg: float) -> float:
    """Return the horizontal illuminance from a sky whose zenith has a luminance of one [sr]."""
    height, azimuth, weight = nodes()
    shape = relative(sky_type, height, azimuth, sun_height_deg)
    return float(np.sum(shape * np.sin(np.radians(height)) * weight))
