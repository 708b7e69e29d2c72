"""A drawn sheet of rippled water: random waves with the very spread of slopes the answer uses."""

import math
from dataclasses import dataclass

import numpy as np
import scipy
from numpy.typing import NDArray

from tipsight.afloat import chop
from tipsight.checks import within
from tipsight.inputs.case import Wind
from tipsight.scene.slopes import SlopeVariance

Array = NDArray[np.float64]

STEP_MM, WIDEST_STEP_MM = 3.0, 5.0
"""Between the points of a sheet: for a near picture, and at most for one with coarse pixels."""
SHORTEST_RAD_M = 400.0
"""Waves with more radians to the metre are left out: they are shorter than 16 mm."""
LONGEST = 0.2
"""Share of the peak's wavenumber below which nothing is drawn."""
GENTLEST_CUT = 0.05
"""Share of the peak's wavenumber below which the cut of the short waves is not sought."""
PEAKEDNESS = 3.3


@dataclass(frozen=True, eq=False)
class Sheet:
    """Water around the tip; rows run away from the viewer, columns to his right."""

    height_mm: Array
    rise_away: Array
    """Slope of the water along the line of sight, upwards with distance [-]."""
    rise_right: Array
    """Slope across it [-]."""
    step_mm: float
    tip_row: int
    """The row on which the tip stands."""


def heights_spectrum(peak_rad_m: float, wavenumber_rad_m: Array) -> Array:
    """Return how a young sea shares its height among wavenumbers [rad/m], to any scale.

    Notes
    -----
    JONSWAP (Hasselmann et al. 1973), peakedness 3.3, carried to wavenumbers by the dispersion of
    gravity and surface tension: S(k) = S(w) dw/dk.

    Examples
    --------
    >>> k = np.linspace(10.0, 200.0, 1901)
    >>> bool(abs(k[heights_spectrum(50.0, k).argmax()] - 50.0) < 2.0)
    True
    """
    omega = chop.angular_rad_s(wavenumber_rad_m)
    x = omega / chop.angular_rad_s(peak_rad_m)
    width = np.where(x <= 1.0, 0.07, 0.09)
    peak = PEAKEDNESS ** np.exp(-((x - 1.0) ** 2) / (2.0 * width**2))
    step = 1e-4 * wavenumber_rad_m
    speed = chop.angular_rad_s(wavenumber_rad_m + step) - omega
    return np.asarray(x**-5.0 * np.exp(-1.25 * x**-4.0) * peak * speed / step)


def cut(sea: chop.Sea, slope_variance: float) -> tuple[float, float, float]:
    """Return what takes so many short waves from a sea that the wanted slopes are left.

    Parameters
    ----------
    sea : Sea
        The chop; its length as the eye meets it.
    slope_variance : float
        Along and across together [-], over 0.

    Returns
    -------
    peak_rad_m, cut_rad_m, scale_m2 : float
        Height density = scale x `heights_spectrum` x exp(-k / cut), up to 400 rad/m.

    Raises
    ------
    OutOfRange
        If the slope variance is not over 0.

    Notes
    -----
    Height, slopes and length of the waves cannot all be kept with a tail like a real one: the
    heights of the fetch law and half of Cox and Munk's slopes do not go together. So the sea that
    has the law's height loses short waves, and some height with them, which is not given back
    (judgement: given back it would have 3.5 times the long streaks; a lowered tail a third).
    A sea too gentle for the slopes is raised until it has them; so are the swirls of water without
    wind, whose height is not known, cut at their own length.
    """
    within("slope variance", slope_variance, 1e-9, 1.0)
    peak = 2e3 * math.pi / sea.clutter_wavelength_mm
    k = np.geomspace(LONGEST * peak, SHORTEST_RAD_M, 2000)
    shape = heights_spectrum(peak, k)
    scale = (sea.height_m / 4.0) ** 2 / float(np.trapezoid(shape, k))

    def slopes(log_cut: float) -> float:
        return float(np.trapezoid(k**2 * shape * np.exp(-k / math.exp(log_cut)), k))

    low, high = math.log(GENTLEST_CUT * peak), math.log(1e6)
    if sea.clutter_wavelength_mm != sea.peak_wavelength_mm:
        found = math.log(peak)
    elif scale * slopes(high) < slope_variance:
        found = high
    else:
        found = scipy.optimize.brentq(
            lambda log_cut: scale * slopes(log_cut) - slope_variance, low, high, xtol=1e-6
        )
    return peak, math.exp(found), slope_variance / slopes(found)


@dataclass(frozen=True, eq=False)
class Waves:
    """A random sea around the tip as a sum of waves, each of which runs before the wind."""

    height: NDArray[np.complex128]
    """Of each wave at the start, shape (rows, half the columns)."""
    away_rad_m: Array
    right_rad_m: Array
    omega_rad_s: Array
    """Below nothing for those that run against the wavenumber they are written at."""
    columns: int
    step_mm: float
    tip_row: int

    def at(self, time_s: float = 0.0) -> Sheet:
        """Return the water at a time [s], as it is found by one who drifts with the stream."""
        now = self.height * np.exp(-1j * self.omega_rad_s * time_s) if time_s else self.height
        shape = now.shape[0], self.columns
        height, rise_away, rise_right = (
            scipy.fft.irfft2(now * by, s=shape)
            for by in (1e3, 1j * self.away_rad_m, 1j * self.right_rad_m)
        )
        return Sheet(height, rise_away, rise_right, self.step_mm, self.tip_row)

    def along_mm(self, share: NDArray[np.complex128], times_s: Array, across_mm: float) -> Array:
        """Return what goes up and down at a point of the tip's row by a share of each wave [mm].

        Parameters
        ----------
        share : numpy.ndarray
            Of each wave, shape of ``height``, for a wave that goes as exp(-i omega t).
        times_s : numpy.ndarray
            When, shape (T,) [s].
        across_mm : float
            Right of the middle column [mm].
        """
        rows = self.height.shape[0]
        column = self.columns // 2 + round(across_mm / self.step_mm)
        place = self.step_mm * 1e-3 * (self.away_rad_m * self.tip_row + self.right_rad_m * column)
        single = self.right_rad_m == 0.0
        if self.columns % 2 == 0:
            single = single | (self.right_rad_m == self.right_rad_m.max())
        fold = np.where(single, 1.0, 2.0)
        # a wave that runs backwards is the mirrored one, whose share is the conjugate
        felt = np.where(self.omega_rad_s < 0.0, share.conj(), share)
        held = np.abs(self.height) > 0.0
        each = (self.height * felt * np.exp(1j * place) * fold)[held]
        omega = self.omega_rad_s[held]
        found: Array = np.array(
            [float((each * np.exp(-1j * omega * t)).real.sum()) for t in times_s]
        )
        return np.asarray(found * 1e3 / (rows * self.columns))


def waves(
    sea: chop.Sea,
    wind: Wind,
    slopes: SlopeVariance,
    *,
    near_mm: float,
    far_mm: float,
    wide_mm: float,
    seed: int = 0,
    step_mm: float = STEP_MM,
) -> Waves:
    """Return a random sea around the tip, which repeats at its edges.

    Parameters
    ----------
    sea : Sea
        The chop.
    wind : Wind
        For its bearing to the line of sight, and the slopes that stand without it.
    slopes : SlopeVariance
        Along and across the line of sight, as the scene has them.
    near_mm, far_mm, wide_mm : float
        How far it reaches towards the viewer, away from him, and in all across [mm].
    seed : int
        Which of all possible seas.
    step_mm : float
        Between its points [mm].

    Notes
    -----
    Gaussian; the wind's waves spread as cos² about its line, the slopes without wind all round.
    Each runs at the speed of deep water, by `chop.angular_rad_s`.

    Examples
    --------
    >>> water = waves(chop.sea(Wind()), Wind(), SlopeVariance(2e-4, 2e-4),
    ...               near_mm=300.0, far_mm=2000.0, wide_mm=600.0).at()
    >>> bool(0.3 < water.rise_away.var() / 2e-4 < 3.0)
    True
    """
    total = slopes.along + slopes.across
    peak, cut_rad_m, scale = cut(sea, total)
    rows = scipy.fft.next_fast_len(math.ceil((near_mm + far_mm) / step_mm), real=True)
    columns = scipy.fft.next_fast_len(math.ceil(wide_mm / step_mm), real=True)
    step_m = 1e-3 * step_mm
    away = np.asarray(2.0 * np.pi * np.fft.fftfreq(rows, step_m)[:, None], dtype=np.float64)
    right = np.asarray(2.0 * np.pi * np.fft.rfftfreq(columns, step_m)[None, :], dtype=np.float64)
    k = np.hypot(away, right)
    inside = (k > LONGEST * peak) & (k <= SHORTEST_RAD_M)
    held = k[inside]
    turn = np.arctan2(*np.broadcast_arrays(right, away))[inside] - math.radians(wind.bearing_deg)
    calm = min(2.0 * wind.base_slope_variance / total, 1.0)
    spread = (1.0 - calm) * np.cos(turn) ** 2 / math.pi + calm / (2.0 * math.pi)
    density = scale * heights_spectrum(peak, held) * np.exp(-held / cut_rad_m) * spread / held
    gain = np.zeros(k.shape)
    gain[inside] = np.sqrt(density) * 2.0 * math.pi / step_m
    noise = np.random.default_rng(seed).standard_normal((rows, columns))
    height = scipy.fft.rfft2(noise) * gain
    # crests run towards where the wind blows; each is written once, with its mirror image
    ahead = np.zeros(k.shape)
    ahead[inside] = np.where(np.cos(turn) >= 0.0, 1.0, -1.0)
    omega = np.zeros(k.shape)
    omega[inside] = chop.angular_rad_s(held)
    return Waves(height, away, right, ahead * omega, columns, step_mm, round(near_mm / step_mm))
