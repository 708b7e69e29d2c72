"""How much light a smooth piece of water mirrors."""

from typing import NamedTuple

import numpy as np
from numpy.typing import ArrayLike, NDArray

from tipsight.checks import within

WATER_INDEX = 1.333  # refractive index of fresh water in the middle of the spectrum
GLOSS_INDEX = 1.5  # refractive index of varnish and gloss paint (common practice, no source)


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
    """Return the shares that a smooth surface mirrors, by the cosine of incidence, 0 to 1.

    r_s = (cos θ - n cos θ') / (cos θ + n cos θ'), r_p = (n cos θ - cos θ') / (n cos θ + cos θ'),
    sin θ = n sin θ' (Fresnel 1823; Born and Wolf, Principles of Optics, 1.5.2, equation 21), n of
    1 to 3. Smooth and transparent materials; water is nearly the same for all colours.

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


def level_reflectance(height_deg: ArrayLike) -> Reflectance:
    """Return the shares that level water mirrors of light from a height of 0 to 90 deg.

    >>> float(level_reflectance(5.0).mean.round(4))
    0.5835
    """
    height = within("height above the horizon", height_deg, 0.0, 90.0, "deg")
    return fresnel(np.minimum(np.sin(np.radians(height)), 1.0))
