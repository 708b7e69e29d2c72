"""How much light a smooth piece of water mirrors."""

from typing import NamedTuple

import numpy as np
from numpy.typing import ArrayLike, NDArray

from tipsight.checks import within

WATER_INDEX = 1.333
"""Refractive index of fresh water in the middle of the spectrum."""
GLOSS_INDEX = 1.5
"""Refractive index of varnish and gloss paint (common practice, no source)."""


class Reflectance(NamedTuple):
    """Shares of light mirrored, by its polarisation to the plane of incidence."""

    parallel: NDArray[np.float64]
    """In the plane of incidence (p): upright light on level water."""
    perpendicular: NDArray[np.float64]
    """Across the plane of incidence (s): level light on level water."""

    @property
    def mean(self) -> NDArray[np.float64]:
        """Of unpolarised light."""
        return (self.parallel + self.perpendicular) / 2.0


def fresnel(cos_incidence: ArrayLike, index: float = WATER_INDEX) -> Reflectance:
    """Return the share of light that a smooth surface mirrors.

    Parameters
    ----------
    cos_incidence : array_like
        Cosine of the angle between light and the surface's normal [-], 0 to 1, any shape.
    index : float
        Refractive index beyond the surface over that of the air [-], 1 to 3.

    Returns
    -------
    Reflectance
        Both polarisations, each of the shape of ``cos_incidence``.

    Raises
    ------
    OutOfRange
        Outside those ranges.

    Notes
    -----
    r_s = (cos θ - n cos θ') / (cos θ + n cos θ'), r_p = (n cos θ - cos θ') / (n cos θ + cos θ'),
    sin θ = n sin θ' (Fresnel 1823; Born and Wolf, Principles of Optics, 1.5.2, equation 21).
    Smooth and transparent materials; water is nearly the same for all colours.

    Examples
    --------
    >>> float(fresnel(1.0).mean.round(5))
    0.02037
    """
    cosine = within("cosine of the angle of incidence", cos_incidence, 0.0, 1.0 + 1e-12)
    within("refractive index", index, 1.0, 3.0)
    inside = np.sqrt(np.maximum(1.0 - (1.0 - cosine**2) / index**2, 0.0))
    with np.errstate(invalid="ignore"):
        across = (cosine - index * inside) / (cosine + index * inside)
        along = (index * cosine - inside) / (index * cosine + inside)
    return Reflectance(_held(along), _held(across))


def _held(amplitude: NDArray[np.float64]) -> NDArray[np.float64]:
    """Square; light that grazes a surface of index one meets nothing (0/0)."""
    return np.asarray(np.nan_to_num(amplitude, nan=0.0) ** 2)


def level_reflectance(height_deg: ArrayLike, index: float = WATER_INDEX) -> Reflectance:
    """Return the share mirrored by level water of light from a height above the horizon.

    Parameters
    ----------
    height_deg : array_like
        Height of the light above the horizon [deg], 0 to 90, any shape.
    index : float
        Refractive index [-], 1 to 3.

    Returns
    -------
    Reflectance
        Both polarisations.

    Raises
    ------
    OutOfRange
        Outside those ranges.

    Notes
    -----
    `fresnel` at an incidence of 90 deg less the height.

    Examples
    --------
    >>> float(level_reflectance(5.0).mean.round(4))
    0.5835
    """
    height = within("height above the horizon", height_deg, 0.0, 90.0, "deg")
    return fresnel(np.minimum(np.sin(np.radians(height)), 1.0), index)
