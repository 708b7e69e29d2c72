"""The water's own streaks: noise of about the tip's size, often the true limit on broken water."""

from dataclasses import dataclass, fields

import numpy as np
from numpy.typing import ArrayLike, NDArray

from tipsight.checks import Outside, beyond, within

Array = NDArray[np.float64]

# Square of the index of detection at level 1 (1.6, from memory) over an efficiency of a half times
# nine independent looks in the few seconds that level 1 allows (judgement). The weakest number of
# the whole sight model: half or twice as much is possible.
KAPPA2 = 2.56 / 4.5
DOMAIN = {
    "peak_wavelength_mm": (78.0, 507.0, "mm"),
    "slope_rms": (0.054, 0.147, ""),
    "bank_height_deg": (0.5, 25.0, "deg"),
    "look_down_deg": (1.5, 9.0, "deg"),
}
"""Over what the fit was made; beyond it the streaks are held at the edge."""
LONGEST_MM = 560.0  # so long a ripple is held at the edge without a word (judgement)
LEAST_CORRELATION = 0.05  # [-], to which a sky is held that hardly goes with the slope
OPEN_DEG, BANKED_DEG = 1.0, 4.0  # skyline up to which water is open, and from which it is banked
# how many times better a tip is seen among waves that run along the sight than among those that
# cross it, under a bank (computed: 1.2 to 1.5); on open water they are the same within 15 %
ALONG_OVER_ACROSS = 1.3
# how far the sea itself leaves the level in doubt, either way: heights, slopes and lengths cannot
# all be kept with a real tail of short waves, so the middle of two such seas is taken (judgement)
OPEN_DOUBT, BANKED_DOUBT = 1.2, 1.35

# rows B0 [mm2], f0 [1/mm], B1 [mm2]; columns c0 to c6; computed: fit to a Monte Carlo of random
# seas with each sight line cast on them. Seas: JONSWAP heights of wind 1.4 to 11 m/s, cos^2
# spread, capillary-gravity waves cut so that their slopes are a river's; four skies (CIE types 1,
# 3, 12, and one that is three times brighter overhead). Rms of the logarithm, by row: open .41
# .11 .29, banked .36 .14 .26; in the level of a tip .89 to 1.10 and .86 to 1.24
_OPEN = np.array(
    [
        [4.660, 1.479, 0.142, 0.837, 0.0, 0.0, 1.635],
        [-4.535, -0.729, -0.122, -0.103, 0.0, 0.0, -0.252],
        [-3.142, 0.376, 0.289, -0.341, 0.0, 0.0, -2.931],
    ]
)
_BANKED = np.array(
    [
        [2.575, 1.186, 0.394, 1.392, 1.081, -0.129, 0.0],
        [-3.701, -0.579, -0.091, -0.135, -0.226, 0.046, 0.0],
        [-2.893, 0.125, 0.106, 0.975, 0.213, 0.010, 0.0],
    ]
)


LIMITS = {
    "facet_contrast": ("contrast of the water's facets", 0.0, 1000.0, ""),
    "peak_wavelength_mm": ("length of the ripple", 1e-3, 1e6, "mm"),
    "slope_rms": ("slope of the ripple", 1e-6, 1.0, ""),
    "bank_height_deg": ("height of the far bank", 0.0, 90.0, "deg"),
    "look_down_deg": ("look-down", 1e-3, 90.0, "deg"),
    "sky_correlation": ("correlation of the sky", 0.0, 1.0, ""),
    "sparkle_mm2": ("density of sparkles", 0.0, 1e12, "mm2"),
    "factor": ("factor on the streaks", 0.0, 1e3, ""),
    "across": ("share of waves across", 0.0, 1.0, ""),
}


@dataclass(frozen=True, eq=False)
class Clutter:
    """Streaks of water as seen from one place or several; its numbers broadcast together.

    `OutOfRange` outside `LIMITS`.
    """

    facet_contrast: ArrayLike  # rms over mean of the facets' luminance [-]
    peak_wavelength_mm: ArrayLike  # of the ripple, at its spectral peak
    slope_rms: ArrayLike  # of the surface along the line of sight [-]
    bank_height_deg: ArrayLike  # skyline of the far bank, seen from the float
    look_down_deg: ArrayLike  # line of sight below level
    sky_correlation: ArrayLike  # of facet luminance with slope along the sight, unsigned
    sparkle_mm2: ArrayLike = 0.0  # of the sun: coverage x (relative luminance)^2 x area of one
    factor: ArrayLike = 1.0  # on the noise power, for its doubt [-]
    across: ArrayLike = 0.0  # sine squared of the angle between the waves' run and the sight [-]

    def __post_init__(self) -> None:
        for name, (said, low, high, unit) in LIMITS.items():
            object.__setattr__(self, name, within(said, getattr(self, name), low, high, unit))

    def __getitem__(self, at: int | slice) -> "Clutter":
        found = object.__new__(Clutter)  # what is part of what was looked at is not looked at again
        for one in fields(self):
            part = np.asarray(getattr(self, one.name))
            object.__setattr__(found, one.name, part[at] if part.ndim else part)
        return found

    @property
    def is_nothing(self) -> bool:
        """Whether this water has no streaks at all."""
        lit = np.add(self.facet_contrast, self.sparkle_mm2) > 0.0
        return not np.any(lit & (np.asarray(self.factor) > 0.0))

    @property
    def is_sparkling(self) -> bool:
        """Whether the sun's sparkles are more of a noise somewhere than the longest streaks."""
        b0, _, b1 = shape(self)
        streaks = np.asarray(self.facet_contrast) ** 2 * (b0 + b1)
        return bool(np.any(np.asarray(self.sparkle_mm2) > streaks))


def _banked(clutter: Clutter) -> Array:
    """Return how far water is banked, 0 to 1."""
    bank = np.asarray(clutter.bank_height_deg)
    return np.asarray(np.clip((bank - OPEN_DEG) / (BANKED_DEG - OPEN_DEG), 0.0, 1.0))


def shape(clutter: Clutter) -> tuple[Array, Array, Array]:
    """Return B0 [mm2], f0 [1/mm] and B1 [mm2] of streaks, held at the edge of `DOMAIN`.

    ln of each = c0 + c1 ln(wavelength/100 mm) + c2 ln(tan look-down / slope) + c3 ln(slope/0.08)
    + c4 z + c5 z^2 + c6 ln r, z = min(half the bank's height / slope, 3), r the sky's correlation,
    0.05 at least. Computed, as `_OPEN` tells. Between open and banked water the logarithms are
    interpolated.

    Examples
    --------
    >>> b0, f0, b1 = shape(Clutter(0.174, 169.0, 0.078, 0.5, 2.5, 0.62))
    >>> float(b0.round()), float(f0.round(4)), float(b1.round(2))
    (95.0, 0.0089, 0.18)
    """
    length, slope, bank, down = (
        np.clip(getattr(clutter, name), low, high) for name, (low, high, _) in DOMAIN.items()
    )
    z = np.minimum(0.5 * np.deg2rad(bank) / slope, 3.0)
    sky = np.maximum(clutter.sky_correlation, LEAST_CORRELATION)
    terms = (
        np.log(length / 100.0),
        np.log(np.tan(np.deg2rad(down)) / slope),
        np.log(slope / 0.08),
        z,
        z**2,
        np.log(sky),
    )
    banked = _banked(clutter)
    b0, f0, b1 = (
        np.exp(sum((c * term for c, term in zip(cs, terms, strict=True)), first))
        for first, *cs in (
            [(1.0 - banked) * a + banked * b for a, b in zip(open_, high, strict=True)]
            for open_, high in zip(_OPEN, _BANKED, strict=True)
        )
    )
    return b0, f0, b1


def spectra(clutter: Clutter, fx_per_mm: ArrayLike) -> Array:
    """Return the two-sided density of contrast squared of streaks, shape (R, F) [mm2].

    Parameters
    ----------
    clutter : of R places, or of one; its `factor` is not in the density
    fx_per_mm : frequencies across the picture [cycles/mm], shape (R, F)

    Notes
    -----
    P = f^2 (B0/(1 + (fx/f0)^2)^2 + B1) + sparkle. Streaks lie flat, so that P hangs on the
    frequency across alone (the real one also up the picture, which the level does not notice).
    Under a bank waves that cross the sight have 1.3^2 times the power.
    """
    b0, f0, b1 = (part[..., None] for part in shape(clutter))
    crossing = np.multiply(_banked(clutter), clutter.across)
    contrast = np.multiply(clutter.facet_contrast, ALONG_OVER_ACROSS**crossing)
    sparkle = np.asarray(clutter.sparkle_mm2)[..., None]
    streak = b0 / (1.0 + (np.asarray(fx_per_mm, dtype=float) / f0) ** 2) ** 2
    return np.asarray(contrast[..., None] ** 2 * (streak + b1) + sparkle)


def sea_doubt(clutter: Clutter) -> float:
    """Return how many times better or worse the sea itself may let a tip be seen [-].

    To be held to what the streaks take: where they take nothing, no sea can change the level.

    Examples
    --------
    >>> sea_doubt(Clutter(0.2, 129.0, 0.064, 0.5, 2.0, 0.6))
    1.2
    """
    banked = float(_banked(clutter))
    return float(OPEN_DOUBT ** (1.0 - banked) * BANKED_DOUBT**banked)


def outside_domain(clutter: Clutter) -> tuple[Outside, ...]:
    """Return what of one water lies outside `DOMAIN`, named as its fields; none without streaks.

    Examples
    --------
    >>> outside_domain(Clutter(0.2, 600.0, 0.09, 0.5, 2.5, 0.7))
    (Outside(name='peak_wavelength_mm', value=600.0, low=78.0, high=507.0, unit='mm'),)
    """
    if clutter.facet_contrast == 0.0 or clutter.factor == 0.0:
        return ()
    found = beyond(DOMAIN, {name: float(np.asarray(getattr(clutter, name))) for name in DOMAIN})
    if DOMAIN["peak_wavelength_mm"][1] < np.asarray(clutter.peak_wavelength_mm) <= LONGEST_MM:
        return tuple(one for one in found if one.name != "peak_wavelength_mm")
    return found
