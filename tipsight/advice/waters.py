"""The waters behind the tip, from light to contrast and noise, over all distances."""

from collections.abc import Sequence
from dataclasses import dataclass, field, replace

import numpy as np
from numpy.typing import NDArray

from tipsight.checks import Outside
from tipsight.inputs.case import Case, Finish, Stretch
from tipsight.scene.look import Look, look
from tipsight.sight import contrast, eye, kernel
from tipsight.sight.clutter import Clutter, outside_domain

Array = NDArray[np.float64]

STREAKS_DOUBT = 2.0
"""The noise power of the streaks may be twice or half what is taken (judgement)."""
COARSE = 16
"""Distances at which the scene is lit; between them its channels are drawn straight."""


@dataclass(frozen=True)
class Water:
    """One water behind the tip, as the eye has it at each distance."""

    name: str
    contrast: Array
    """Of each finish, shape (finish, range, channel) [-]."""
    adaptation_cd_m2: Array
    """Shape (range,)."""
    water: Array
    """Channels of the water, shape (range, 4) [cd/m2]."""
    tips: Array
    """Channels of each finish, shape (finish, range, 4) [cd/m2]."""
    clutter: tuple[Clutter, ...]
    """The streaks at each distance."""
    kernels: kernel.Kernels
    eye: eye.Eye
    outside: tuple[Outside, ...]
    """What lies outside the range of the streaks' model at the asked distance."""
    held: dict[tuple[int, float], kernel.Kernels] = field(default_factory=dict, compare=False)
    """What `at` has worked out."""

    def at(self, here: int, factor: float = 1.0) -> kernel.Kernels:
        """Return the noise at one distance with the power of the streaks multiplied."""
        one = slice(here, here + 1)
        if factor == 1.0:
            return self.kernels[one]
        if (here, factor) not in self.held:
            streaks = [replace(c, factor=factor) for c in self.clutter[one]]
            self.held[here, factor] = kernel.kernels(
                self.kernels.range_m[one], self.adaptation_cd_m2[one], self.eye, streaks
            )
        return self.held[here, factor]


def _between(coarse_m: Array, values: Array, fine_m: Array) -> Array:
    """Return values over distance, the last axis but any channels, straight in log distance."""
    x, at = np.log(fine_m), np.log(coarse_m)
    high = np.clip(np.searchsorted(at, x), 1, at.size - 1)
    share = (x - at[high - 1]) / (at[high] - at[high - 1])
    if values.ndim == 1:
        return np.asarray(values[high - 1] * (1 - share) + values[high] * share)
    return np.asarray(
        values[..., high - 1, :] * (1 - share)[:, None] + values[..., high, :] * share[:, None]
    )


def _streaks(
    seen: Look, coarse_m: Array, fine_m: Array, wavelength_mm: float
) -> tuple[Clutter, ...]:
    facet, sparkle, down = (
        _between(coarse_m, values, fine_m)
        for values in (seen.facet_contrast, seen.sparkle_mm2, seen.look_down_deg)
    )
    return tuple(
        Clutter(
            float(f),
            wavelength_mm,
            seen.slope_rms,
            seen.bank_height_deg,
            float(d),
            float(max(q, 0.0)),
        )
        for f, q, d in zip(facet, sparkle, down, strict=True)
    )


def water(
    case: Case,
    stretch: Stretch,
    finishes: Sequence[Finish],
    range_m: Array,
    here: int,
    eyes: eye.Eye,
    wavelength_mm: float,
) -> Water:
    """Return one water as the eye has it at each distance.

    Parameters
    ----------
    case : Case
        The question.
    stretch : Stretch
        The water behind the tip.
    finishes : sequence of Finish
        Paints as they stand on tips.
    range_m : numpy.ndarray
        Distances, rising [m].
    here : int
        Which of them is asked about.
    eyes : Eye
        Whose.
    wavelength_mm : float
        Length of the ripple [mm].

    Returns
    -------
    Water
        Contrast, adaptation and noise.
    """
    coarse = np.unique(np.append(np.geomspace(range_m[0], range_m[-1], COARSE), range_m[here]))
    seen = look(
        case.light,
        stretch,
        case.wind,
        case.stream,
        case.angler,
        finishes,
        coarse,
        case.place.eye_height_m,
    )
    behind, tips = (_between(coarse, values, range_m) for values in (seen.water, seen.tips))
    glare_lx, angle_deg = seen.sky_glare
    veil = _between(coarse, eye.veil(glare_lx, angle_deg, eyes.age_years).sum(axis=-1), range_m)
    light = contrast.adaptation(behind, veil)
    clutter = _streaks(seen, coarse, range_m, wavelength_mm)
    return Water(
        name=stretch.name,
        contrast=contrast.contrast(tips, behind, veil),
        adaptation_cd_m2=light,
        water=behind,
        tips=tips,
        clutter=clutter,
        kernels=kernel.kernels(range_m, light, eyes, clutter),
        eye=eyes,
        outside=outside_domain(clutter[here]),
    )
