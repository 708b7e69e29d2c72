"""The eye itself: threshold, blur, Weber floor, age, acuity and glare."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray

from tipsight.checks import within
from tipsight.nature import OLDEST_YEARS

Array = NDArray[np.float64]

YOUNGEST_YEARS = 25.0  # younger eyes count as of this age
BRIGHTEST_CD_M2 = 3500.0  # from here up the thresholds no longer change (Blackwell 1946)
FARTHEST_GLARE_DEG = 100.0  # light from farther round does not enter an eye that looks at the tip


@dataclass(frozen=True)
class Eye:
    """Whose eyes look; `OutOfRange` outside 5 to 85 years, 0.3 to 10 arcmin, 0.1 to 10."""

    age_years: float
    mar_arcmin: float = 1.0  # smallest detail with the spectacles worn; under 1 counts as 1
    # contrast that eyes of this age need over what these need: over 1 for better ones [-]
    own_factor: ArrayLike = 1.0

    def __post_init__(self) -> None:
        age_factor(self.age_years, BRIGHTEST_CD_M2)
        defocus_arcmin(self.mar_arcmin)
        within("own-eye factor", self.own_factor, 0.1, 10.0)


def _light(luminance_cd_m2: ArrayLike) -> Array:
    """Return the luminance as the formulas take it; `OutOfRange` outside 1e-6 to 1e10 cd/m2."""
    return np.minimum(within("luminance", luminance_cd_m2, 1e-6, 1e10, "cd/m2"), BRIGHTEST_CD_M2)


def age_factor(age_years: ArrayLike, luminance_cd_m2: ArrayLike) -> Array:
    """Return how many times the contrast of a trained young observer eyes of an age need [-].

    AF = 10^(0.006 (a - 25)) (1 + 0.26 (a - 25)/35 L^-0.38) over 25 years, 1 below. First part:
    between the slopes a year of NIOSH (1975, .010 in log10), Ashraf et al. (2020, .0094), Mantiuk
    and Ramponi (2018, .0054), Wilkins et al. (1988, .0046), Choi et al. (2024, .0045), Silvestre
    et al. (2019, .0042) and Puell et al. (2004, .004). Second part, computed: the pupil shrinks
    and the lens takes light, through `flux_threshold`, to 4 %. Known to 1.2 times either way to
    65 years, 1.35 times at 75 (judgement). It holds lens, pupil and nerve together: do not scale
    the light as well. `OutOfRange` under 5 and over 85 years, for which there is no figure.

    Examples
    --------
    >>> age_factor([25, 60, 70], 1000.0).round(2)
    array([1.  , 1.65, 1.91])
    """
    older = np.maximum(within("age", age_years, 5.0, OLDEST_YEARS, "years") - YOUNGEST_YEARS, 0.0)
    return 10.0 ** (0.006 * older) * (1.0 + 0.26 * older / 35.0 * _light(luminance_cd_m2) ** -0.38)


def flux_threshold(luminance_cd_m2: ArrayLike) -> Array:
    """Return R, contrast times area of a point that is seen half the time [arcmin2].

    R = 0.1163 + 0.050 L^-1/4 + 0.481 L^-1/2 + 0.0607/L, fitted to Blackwell (1946, J. Opt. Soc.
    Am. 36, 624, Table VIII as smoothed by Clark 1990) from 0.04 to 3500 cd/m2. Above, the figure
    for 3500 stands (R is flat there). Below, the formula runs on, which lets the threshold in
    luminance level off as a dark-adapted cone does; `detect.outside_domain` says so.
    """
    light = _light(luminance_cd_m2)
    return 0.1163 + 0.050 * light**-0.25 + 0.481 * light**-0.5 + 0.0607 / light


def blur_arcmin(luminance_cd_m2: ArrayLike) -> Array:
    """Return the width s of the Gaussian over which the eye adds up light [arcmin].

    s = 1.7 (L/100)^-0.08 between 1.3 and 2.3, fitted with the threshold to Blackwell (1946).
    """
    return np.clip(1.7 * (_light(luminance_cd_m2) / 100.0) ** -0.08, 1.3, 2.3)


def weber_floor(luminance_cd_m2: ArrayLike) -> Array:
    """Return C0, the contrast below which even a large tip is not seen half the time [-].

    C0 = 0.00262 (1 + 0.613 L^-1/2), fitted to the large discs of Blackwell (1946).
    """
    return 0.00262 * (1.0 + 0.613 * _light(luminance_cd_m2) ** -0.5)


def defocus_arcmin(mar_arcmin: ArrayLike) -> Array:
    """Return the blur b that poor acuity adds in quadrature to a good eye's own [arcmin].

    b = 0.5 (MAR^2 - 1)^1/2, from the intrinsic blur of half an arc minute of Levi and Klein (1990,
    Vision Res. 30, 1971); a smallest detail under 1 counts as 1; `OutOfRange` outside 0.3 to 10
    arcmin (6/60).
    """
    mar = np.maximum(within("smallest detail", mar_arcmin, 0.3, 10.0, "arcmin"), 1.0)
    return 0.5 * np.sqrt(mar**2 - 1.0)


def veil(
    illuminance_lx: ArrayLike, angle_deg: ArrayLike, age_years: ArrayLike, pigment: float = 0.5
) -> Array:
    """Return the veil of light that a glare source spreads over what is looked at [cd/m2].

    Parameters
    ----------
    illuminance_lx : of the source at the eye, square to the line of sight, 0 to 2e5
    angle_deg : between the source and the line of sight, 0.1 to 180; beyond 100 deg nothing
    age_years : 5 to 100; all broadcast
    pigment : of the eyes: 0 black, 0.5 brown, 1 light, 1.2 very light [-]

    Notes
    -----
    General disability glare equation of CIE 146:2002, 0.1 to 100 deg: L/E = 10/a^3
    + (5/a^2 + 0.1 p/a)(1 + (age/62.5)^4) + 0.0025 p. Coefficients from memory.

    Examples
    --------
    >>> veil(1.0, [5.0, 30.0], 60.0).round(4)
    array([0.4696, 0.015 ])
    """
    light = within("illuminance", illuminance_lx, 0.0, 2e5, "lx")
    angle = within("angle", angle_deg, 0.1, 180.0, "deg")
    age = within("age", age_years, 5.0, 100.0, "years")
    p = float(within("pigment", pigment, 0.0, 1.2))
    older = 1.0 + (age / 62.5) ** 4
    spread = 10.0 / angle**3 + (5.0 / angle**2 + 0.1 * p / angle) * older + 0.0025 * p
    return light * np.where(angle <= FARTHEST_GLARE_DEG, spread, 0.0)
