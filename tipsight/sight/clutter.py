"""The water's own streaks: noise of about the tip's size, often the true limit on broken water."""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray

from tipsight.checks import Outside, beyond, within

Array = NDArray[np.float64]

# Square of the index of detection at level 1 (1.6, from memory) over an efficiency of a half times
# nine independent looks in the few seconds that level 1 allows (judgement). The weakest number of
# the whole sight model: half or twice as much is possible.
KAPPA2 = 2.56 / 4.5
DOMAIN = {
    "peak_wavelength_mm": (74.0, 480.0, "mm"),
    "slope_rms": (0.056, 0.107, ""),
    "bank_height_deg": (0.5, 20.0, "deg"),
    "look_down_deg": (1.5, 9.0, "deg"),
}
"""Over what the fit was made; beyond it the streaks are held at the edge."""
OPEN_DEG, BANKED_DEG = 1.0, 4.0  # skyline up to which water is open, and from which it is banked

# rows B0 [mm2], f0 [1/mm], B1 [mm2]; columns c0 to c5; computed: fit to a Monte Carlo of random
# seas (JONSWAP, cos^2 spread) with each sight line cast on them, rms of the logarithm 0.1 to 0.35
_OPEN = np.array(
    [
        [5.677, 1.541, 0.399, 2.146, 0.0, 0.0],
        [-5.061, -0.726, -0.102, -0.554, 0.0, 0.0],
        [0.111, -0.293, -0.224, -1.123, 0.0, 0.0],
    ]
)
_BANKED = np.array(
    [
        [3.407, 0.996, 0.490, 1.875, 1.957, -0.373],
        [-4.055, -0.605, -0.140, -0.312, -0.552, 0.129],
        [0.091, -0.293, -0.305, -0.198, -1.575, 0.386],
    ]
)


@dataclass(frozen=True)
class Clutter:
    """The streaks of one water as seen from one place; `OutOfRange` as `__post_init__` has it."""

    facet_contrast: float  # rms over mean of the facets' luminance [-]
    peak_wavelength_mm: float  # of the ripple, at its spectral peak
    slope_rms: float  # of the surface along the line of sight [-]
    bank_height_deg: float  # skyline of the far bank, seen from the float
    look_down_deg: float  # line of sight below level
    sparkle_mm2: float = 0.0  # of the sun: coverage x (relative luminance)^2 x area of one
    factor: float = 1.0  # on the noise power, for its doubt [-]

    def __post_init__(self) -> None:
        within("contrast of the water's facets", self.facet_contrast, 0.0, 1000.0)
        within("length of the ripple", self.peak_wavelength_mm, 1e-3, 1e6, "mm")
        within("slope of the ripple", self.slope_rms, 1e-6, 1.0)
        within("height of the far bank", self.bank_height_deg, 0.0, 90.0, "deg")
        within("look-down", self.look_down_deg, 1e-3, 90.0, "deg")
        within("density of sparkles", self.sparkle_mm2, 0.0, 1e12, "mm2")
        within("factor on the streaks", self.factor, 0.0, 1e3)

    @property
    def is_nothing(self) -> bool:
        """Whether this water has no streaks at all."""
        return self.factor == 0.0 or (self.facet_contrast == 0.0 and self.sparkle_mm2 == 0.0)


def shape(clutters: Sequence[Clutter]) -> tuple[Array, Array, Array]:
    """Return B0 [mm2], f0 [1/mm] and B1 [mm2] of each of R waters, held at the edge of `DOMAIN`.

    ln of each = c0 + c1 ln(wavelength/100 mm) + c2 ln(tan look-down / slope) + c3 ln(slope/0.08)
    + c4 z + c5 z^2, z = min(half the bank's height / slope, 3). Computed: a fit to a Monte Carlo
    of wind 1.5 to 6 m/s. Between open and banked water the logarithms are interpolated.

    Examples
    --------
    >>> b0, f0, b1 = shape([Clutter(0.185, 167.0, 0.077, 0.5, 2.5)])
    >>> float(b0[0].round()), float(f0[0].round(4)), float(b1[0].round(2))
    (473.0, 0.0047, 1.14)
    """
    length, slope, bank, down = (
        np.clip([float(getattr(one, name)) for one in clutters], low, high)
        for name, (low, high, _) in DOMAIN.items()
    )
    z = np.minimum(0.5 * np.deg2rad(bank) / slope, 3.0)
    terms = np.stack(
        [
            np.ones_like(length),
            np.log(length / 100.0),
            np.log(np.tan(np.deg2rad(down)) / slope),
            np.log(slope / 0.08),
            z,
            z**2,
        ]
    )
    banked = np.clip((bank - OPEN_DEG) / (BANKED_DEG - OPEN_DEG), 0.0, 1.0)
    b0, f0, b1 = np.exp((1.0 - banked) * (_OPEN @ terms) + banked * (_BANKED @ terms))
    return b0, f0, b1


def spectra(clutters: Sequence[Clutter], fx_per_mm: ArrayLike) -> Array:
    """Return the two-sided density of contrast squared of each of several waters, (R, F) [mm2].

    Parameters
    ----------
    clutters : R waters; their `factor` is not in the density
    fx_per_mm : frequencies across the picture [cycles/mm], shape (R, F)

    Notes
    -----
    P = f^2 (B0/(1 + (fx/f0)^2)^2 + B1) + sparkle. Streaks lie flat, so that P hangs on the
    frequency across alone; true up the picture to about 0.06 cycles/mm, halved by 0.15.
    """
    b0, f0, b1 = (part[:, None] for part in shape(clutters))
    power = np.array([[one.facet_contrast**2] for one in clutters])
    sparkle = np.array([[one.sparkle_mm2] for one in clutters])
    streak = b0 / (1.0 + (np.asarray(fx_per_mm, dtype=float) / f0) ** 2) ** 2
    return np.asarray(power * (streak + b1) + sparkle)


def outside_domain(clutter: Clutter) -> tuple[Outside, ...]:
    """Return what of a water lies outside `DOMAIN`, named as its fields; none without streaks.

    Examples
    --------
    >>> outside_domain(Clutter(0.2, 600.0, 0.09, 0.5, 2.5))
    (Outside(name='peak_wavelength_mm', value=600.0, low=74.0, high=480.0, unit='mm'),)
    """
    if clutter.facet_contrast == 0.0 or clutter.factor == 0.0:
        return ()
    return beyond(DOMAIN, vars(clutter))
