"""Bodies of revolution: volume, centre, wetted area, and what waves do to each section."""

from dataclasses import dataclass
from functools import cache

import numpy as np
from numpy.typing import ArrayLike, NDArray

from tipsight.checks import within
from tipsight.errors import Mistake, Mistakes

Array = NDArray[np.float64]
_NODES = 3  # of Gauss and Legendre, in each piece
_PIECE_MM = 5.0


@dataclass(frozen=True, eq=False)
class Profile:
    """Outline of a body of revolution, from its top downwards; straight between its points.

    Mistakes where there are fewer than two points, heights rise, or a radius is below nothing.
    """

    z_mm: Array
    """Heights, shape (n,), falling or level; 0 where the tip leaves the body."""
    r_mm: Array
    """Radii, shape (n,); two points at one height make a step."""

    def __post_init__(self) -> None:
        z, r = np.asarray(self.z_mm, dtype=float), np.asarray(self.r_mm, dtype=float)
        wrong = ""
        if z.ndim != 1 or z.shape != r.shape or z.size < 2:
            wrong = "an outline is two or more heights and as many radii"
        elif not (np.isfinite(z).all() and np.isfinite(r).all()):
            wrong = "every height and radius is a number"
        elif (np.diff(z) > 0.0).any() or (r < 0.0).any() or not z[0] > z[-1]:
            wrong = "an outline runs downwards and no radius is below nothing"
        if wrong:
            raise Mistakes([Mistake("outline", "", wrong, "z 0, -60 mm with r 3, 3 mm")])
        object.__setattr__(self, "z_mm", z)
        object.__setattr__(self, "r_mm", r)


def _frusta(profile: Profile) -> tuple[Array, Array, Array, Array]:
    z, r = profile.z_mm, profile.r_mm
    return z[:-1] - z[1:], r[:-1], r[1:], z[:-1]


def volume_mm3(profile: Profile) -> float:
    """Return the volume of a body of revolution [mm3].

    A frustum for each piece, exactly: V = pi h / 3 (r0^2 + r0 r1 + r1^2); solid geometry.

    >>> round(volume_mm3(Profile(np.array([0.0, -60.0]), np.array([3.0, 3.0]))), 1)
    1696.5
    """
    height, r0, r1, _ = _frusta(profile)
    return float((np.pi / 3.0 * height * (r0**2 + r0 * r1 + r1**2)).sum())


def centroid_mm(profile: Profile) -> float:
    """Return the height of the centre of volume [mm], below nothing for what hangs below z = 0.

    Of a frustum: z0 - h (r0^2 + 2 r0 r1 + 3 r1^2) / (4 (r0^2 + r0 r1 + r1^2)); solid geometry.

    >>> round(centroid_mm(Profile(np.array([0.0, -60.0]), np.array([3.0, 3.0]))), 6)
    -30.0
    """
    height, r0, r1, z0 = _frusta(profile)
    volume = np.pi / 3.0 * height * (r0**2 + r0 * r1 + r1**2)
    below = np.pi / 12.0 * height**2 * (r0**2 + 2.0 * r0 * r1 + 3.0 * r1**2)
    return float((volume * z0 - below).sum() / volume.sum())


def wetted_area_mm2(profile: Profile) -> float:
    """Return the surface under water: sides, shoulders of steps, and the flat foot [mm2].

    Frusta: pi (r0 + r1) sqrt(h^2 + (r0 - r1)^2), which is the ring's area where h = 0; and
    pi r^2 of the foot. The cut at the top is not wetted.

    >>> round(wetted_area_mm2(Profile(np.array([0.0, -60.0]), np.array([3.0, 3.0]))), 1)
    1159.2
    """
    height, r0, r1, _ = _frusta(profile)
    sides = np.pi * (r0 + r1) * np.hypot(height, r0 - r1)
    return float(sides.sum() + np.pi * profile.r_mm[-1] ** 2)


@cache
def _gauss() -> tuple[Array, Array]:
    nodes, weights = np.polynomial.legendre.leggauss(_NODES)
    return 0.5 * (1.0 - nodes), 0.5 * weights


def sections(profile: Profile) -> tuple[Array, Array]:
    """Return heights in the outline [mm] and the volume that stands for each [mm3], for sums over depth.

    Gauss-Legendre nodes of pieces of at most 5 mm, section area times weight, shapes (m,); the
    volumes add up to the body's exactly.
    """
    at, weight = _gauss()
    tall = np.diff(profile.z_mm) < 0.0
    height, r0, r1, z0 = (part[tall] for part in _frusta(profile))
    pieces = np.ceil(height / _PIECE_MM).astype(int)
    row = np.repeat(np.arange(height.size), pieces)
    first = np.concatenate([[0], np.cumsum(pieces)[:-1]])
    share = ((np.arange(row.size) - first[row])[:, None] + at) / pieces[row][:, None]
    z = z0[row][:, None] - height[row][:, None] * share
    r = r0[row][:, None] + (r1 - r0)[row][:, None] * share
    return z.ravel(), (np.pi * r**2 * (height / pieces)[row][:, None] * weight).ravel()


def section_integral(
    profile: Profile, wavenumber_rad_m: ArrayLike, waterline_mm: float | None = None
) -> Array:
    """Return the body's volume as waves feel it: the integral of S exp(k (z - waterline)) dz [mm3].

    Of the wavenumber's shape, 0 to 1000 rad/m; the still water stands at the outline's top unless
    told. The Froude-Krylov integral of a slender vertical body in deep water (Newman 1977, Marine
    Hydrodynamics, ch. 6; from memory), by Gauss-Legendre quadrature in each piece of the outline.

    >>> spar = Profile(np.array([0.0, -200.0]), np.array([10.0, 10.0]))
    >>> exact = np.pi * 100.0 * (1.0 - np.exp(-20.0 * 0.2)) / 0.020
    >>> bool(np.isclose(section_integral(spar, 20.0), exact, rtol=1e-6))
    True
    """
    k = within("wavenumber", wavenumber_rad_m, 0.0, 1e3, "rad/m")
    top = float(profile.z_mm[0]) if waterline_mm is None else waterline_mm
    z, volume = sections(profile)
    felt = np.exp(1e-3 * k[..., None] * (z - top))
    return np.asarray(np.einsum("...z,z->...", felt, volume))
