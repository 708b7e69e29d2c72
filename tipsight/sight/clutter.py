"""The water's own streaks: noise of about the tip's size, often the true limit on broken water."""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray

from tipsight.checks import Outside, beyond, within

Array = NDArray[np.float64]

KAPPA2 = 2.56 / 4.5
"""Square of the index of detection at level 1 (1.6, from memory) over an efficiency of a half
times nine independent looks in the few seconds that level 1 allows (judgement). The weakest number
of the whole sight model: half or twice as much is possible."""

DOMAIN = {
    "peak_wavelength_mm": (74.0, 480.0, "mm"),
    "slope_rms": (0.056, 0.107, ""),
    "bank_height_deg": (0.5, 20.0, "deg"),
    "look_down_deg": (1.5, 9.0, "deg"),
}
"""Over what the fit was made; beyond it the streaks are held at the edge."""
OPEN_DEG, BANKED_DEG = 1.0, 4.0
"""Skyline up to which water counts as open, and from which as banked."""

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
    """The streaks of one water as seen from one place.

    Parameters
    ----------
    facet_contrast : float
        Root mean square over mean of the facets' luminance [-], 0 to 1000.
    peak_wavelength_mm : float
        Length of the ripple at its spectral peak [mm], over 0.
    slope_rms : float
        Of the surface along the line of sight [-], over 0 to 1.
    bank_height_deg : float
        Skyline of the far bank, seen from the float [deg], 0 to 90.
    look_down_deg : float
        Line of sight below level [deg], over 0 to 90.
    sparkle_mm2 : float
        Flat density of sun sparkles: coverage times square of relative luminance times the area
        of one [mm2].
    factor : float
        Multiplies the noise power, for its doubt [-].

    Raises
    ------
    OutOfRange
        Outside those ranges.

    Examples
    --------
    >>> Clutter(0.165, 127.0, 0.064, 0.5, 2.5).factor
    1.0
    """

    facet_contrast: float
    peak_wavelength_mm: float
    slope_rms: float
    bank_height_deg: float
    look_down_deg: float
    sparkle_mm2: float = 0.0
    factor: float = 1.0

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
    """Return B0 [mm2], f0 [1/mm] and B1 [mm2] of each of several waters.

    Parameters
    ----------
    clutters : sequence of Clutter
        R waters; what is outside the fit's domain is held at its edge (`outside_domain` tells).

    Returns
    -------
    tuple of numpy.ndarray
        Three arrays of shape (R,).

    Notes
    -----
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
        for name, (low, high, *_) in DOMAIN.items()
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
    """Return the noise density of each of several waters, each at its own frequencies [mm2].

    Parameters
    ----------
    clutters : sequence of Clutter
        R waters.
    fx_per_mm : array_like
        Frequencies across the picture [cycles/mm], shape (R, F).

    Returns
    -------
    numpy.ndarray
        Two-sided density, shape (R, F) [mm2]; `factor` is not in it.

    Notes
    -----
    P = f^2 (B0/(1 + (fx/f0)^2)^2 + B1) + sparkle. Streaks lie flat, so that P hangs on the
    frequency across alone; true up the picture to about 0.06 cycles/mm, halved by 0.15.

    Examples
    --------
    >>> spectra([Clutter(0.0, 127.0, 0.064, 0.5, 2.5, sparkle_mm2=3.0)], [[0.0, 0.1]])
    array([[3., 3.]])
    """
    b0, f0, b1 = (part[:, None] for part in shape(clutters))
    power = np.array([[one.facet_contrast**2] for one in clutters])
    sparkle = np.array([[one.sparkle_mm2] for one in clutters])
    streak = b0 / (1.0 + (np.asarray(fx_per_mm, dtype=float) / f0) ** 2) ** 2
    return np.asarray(power * (streak + b1) + sparkle)


def spectrum(clutter: Clutter, fx_per_mm: ArrayLike, fu_per_mm: ArrayLike = 0.0) -> Array:
    """Return the noise density of one water [mm2].

    Parameters
    ----------
    clutter : Clutter
        The water.
    fx_per_mm, fu_per_mm : array_like
        Frequencies across and up the picture [cycles/mm]; broadcast.

    Returns
    -------
    numpy.ndarray
        Two-sided density of contrast squared [mm2]; `factor` is not in it.

    Notes
    -----
    See `spectra`. Integrated over both frequencies it is the square of the facets' contrast.

    Examples
    --------
    >>> float(spectrum(Clutter(0.2, 203.0, 0.089, 0.5, 2.5), 0.0).round(1))
    32.9
    """
    fx = np.asarray(fx_per_mm, dtype=float)
    fx = np.broadcast_to(fx, np.broadcast_shapes(fx.shape, np.shape(fu_per_mm)))
    return spectra([clutter], fx.reshape(1, -1)).reshape(fx.shape)


def outside_domain(clutter: Clutter) -> tuple[Outside, ...]:
    """Return what of a water lies outside `DOMAIN`, and so is held at its edge.

    Parameters
    ----------
    clutter : Clutter
        The water.

    Returns
    -------
    tuple of Outside
        Named as the fields of `Clutter`; empty if all is well, or if the water has no streaks.

    Examples
    --------
    >>> outside_domain(Clutter(0.2, 600.0, 0.09, 0.5, 2.5))
    (Outside(name='peak_wavelength_mm', value=600.0, low=74.0, high=480.0, unit='mm'),)
    """
    if clutter.facet_contrast == 0.0 or clutter.factor == 0.0:
        return ()
    return beyond(DOMAIN, vars(clutter))
