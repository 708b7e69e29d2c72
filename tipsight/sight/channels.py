"""The three opponent channels of the detector, and how colour fades on small things."""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property

import numpy as np
from numpy.typing import ArrayLike, NDArray

from tipsight.checks import within
from tipsight.sight import eye

Array = NDArray[np.float64]

DISC_RATIO = (
    2.35  # thresholds of the coloured discs over Blackwell's, by that laboratory's grey ones
)


@dataclass(frozen=True)
class Channel:
    """One channel at some lights, in angles; threshold and floor are those of the angler's eye.

    Several channels stand together as one, `together`, with an axis more.
    """

    blur_arcmin: Array  # the eye's own blur s
    seen_blur_arcmin: Array  # the same with poor acuity added
    flux_arcmin2: Array  # threshold R of a point, contrast times area
    floor: Array  # Weber floor C0 [-]
    fade_arcmin2: ArrayLike  # area at which colour is down to a half; 0 for luminance

    @cached_property
    def gain(self) -> Array:
        """What turns energy [arcmin2] into squared signal, 4 pi s^2/R^2 [1/arcmin2]."""
        return 4.0 * np.pi * (self.blur_arcmin / self.flux_arcmin2) ** 2

    def __getitem__(self, at: slice) -> "Channel":
        return Channel(
            self.blur_arcmin[at],
            self.seen_blur_arcmin[at],
            self.flux_arcmin2[at],
            self.floor[at],
            self.fade_arcmin2,
        )

    def kept(self, area_arcmin2: ArrayLike) -> Array:
        """Return how much of the level a thing of that area keeps in this channel [-]."""
        area = np.asarray(area_arcmin2, dtype=float)
        if np.ndim(self.fade_arcmin2) == 0 and self.fade_arcmin2 == 0.0:
            return np.ones_like(area)
        return np.asarray(area / (area + self.fade_arcmin2))


def together(some: Sequence[Channel]) -> Channel:
    """Return channels as one, their axis behind that of the lights."""
    blur, seen_blur, flux, floor = (
        np.stack([getattr(one, name) for one in some], axis=-1)
        for name in ("blur_arcmin", "seen_blur_arcmin", "flux_arcmin2", "floor")
    )
    return Channel(blur, seen_blur, flux, floor, np.array([one.fade_arcmin2 for one in some]))


def channels(adaptation_cd_m2: ArrayLike, eyes: eye.Eye) -> tuple[Channel, Channel, Channel]:
    """Return the luminance, red-green and yellow-violet channel of an eye in a light.

    Luminance as in `eye`, from Blackwell (1946). Red-green: s = 2.5', R = 0.22 g, C0 = 0.0018 g,
    g = (1 + 21.6/L)^0.53; yellow-violet: s = 4', R = 2.6 g, C0 = 0.0185 g, g = (1 + 6/L)^0.62, all
    over 2.35; fitted to discs of 5', 15' and 60' radius, 0.02 to 200 cd/m2, of the castleCSF data
    (Ashraf et al. 2024, J. Vision 24(4):5). The areas at which colour fades, 10 and 50 arcmin2,
    are judgement (3 to 30 and 20 to 100 would do): no data below a disc of 10' across. Age and
    own eyes stand on R and C0, so that they do not make the water's streaks any weaker.

    Examples
    --------
    >>> grey, red, violet = channels(100.0, eye.Eye(25.0))
    >>> float(red.kept(10.0)), float(violet.kept(50.0))
    (0.5, 0.5)
    """
    light = within("luminance", adaptation_cd_m2, 1e-6, 1e10, "cd/m2")
    worse = eye.age_factor(eyes.age_years, light) / np.asarray(eyes.own_factor, dtype=float)
    defocus = eye.defocus_arcmin(eyes.mar_arcmin)

    def channel(blur: Array, flux: Array, floor: Array, fade: float) -> Channel:
        return Channel(blur, np.hypot(blur, defocus), flux * worse, floor * worse, fade)

    red = (1.0 + 21.6 / light) ** 0.53 / DISC_RATIO
    violet = (1.0 + 6.0 / light) ** 0.62 / DISC_RATIO
    return (
        channel(eye.blur_arcmin(light), eye.flux_threshold(light), eye.weber_floor(light), 0.0),
        channel(np.full_like(light, 2.5), 0.22 * red, 0.0018 * red, 10.0),
        channel(np.full_like(light, 4.0), 2.6 * violet, 0.0185 * violet, 50.0),
    )


def capped(signal2: ArrayLike, rms_over_floor2: ArrayLike) -> Array:
    """Return a channel's squared level, 1/level^2 = 1/signal^2 + 1/(rms contrast over floor)^2.

    The power of two is fitted to Blackwell (1946).
    """
    e2, v2 = np.asarray(signal2), np.asarray(rms_over_floor2)
    return np.asarray(e2 * v2 / (e2 + v2 + 1e-300))
