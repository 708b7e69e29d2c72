"""What the eye gets: the water behind the tip, and the tip in every paint, over distance."""

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import ArrayLike, NDArray

from tipsight.checks import within
from tipsight.inputs.case import Angler, Finish, Light, Stream, Stretch, Wind
from tipsight.scene import cylinder, facets, mist, observer, paint
from tipsight.scene.fresnel import fresnel
from tipsight.scene.glare import glare
from tipsight.scene.glint import SPARKLE_MM2
from tipsight.scene.glitter import glitter
from tipsight.scene.setting import Setting, around, setting, sky_channels, tip_lx

Array = NDArray[np.float64]


@dataclass(frozen=True)
class Look:
    """One water and the tips before it, at R distances; channels as in `observer.channels`."""

    name: str
    share: float
    range_m: Array
    look_down_deg: Array
    """Line of sight below level, shape (R,)."""
    water: Array
    """Mean water with its glitter, through the mist, shape (R, 4) [cd/m2]."""
    tips: Array
    """Each finish with its gloss, through the mist, shape (P, R, 4) [cd/m2]."""
    air: Array
    """The mist's own light, which water and tips hold already, shape (R, 4) [cd/m2]."""
    facet_contrast: Array
    """Spread of the facets' luminance over that of the mean water, shape (R,) [-]."""
    sky_correlation: Array
    """Of the facets' luminance with their slope along the sight, without its sign, shape (R,)."""
    sparkle_mm2: Array
    """Clutter of the sun's sparkles: coverage x (sparkle / water)² x 0.2 mm², shape (R,)."""
    slope_rms: float
    """Of the water's slopes along the line of sight [-]."""
    bank_height_deg: float
    sky_glare: tuple[Array, Array]
    """Illuminance at the eye [lx] and angle from the line of sight [deg] of the sun and of
    parts of the sky that are brighter than the water, each of shape (R, K)."""

    def with_more(self, other: "Look") -> "Look":
        """Return the same water at another look's distances too, rising, none of them in both."""
        order = np.argsort(np.append(self.range_m, other.range_m))

        def both(one: Array, more: Array, axis: int = 0) -> Array:
            return np.take(np.concatenate([one, more], axis), order, axis)

        (lux, angle), (more_lux, more_angle) = self.sky_glare, other.sky_glare
        return replace(
            self,
            range_m=both(self.range_m, other.range_m),
            look_down_deg=both(self.look_down_deg, other.look_down_deg),
            water=both(self.water, other.water),
            tips=both(self.tips, other.tips, 1),
            air=both(self.air, other.air),
            facet_contrast=both(self.facet_contrast, other.facet_contrast),
            sky_correlation=both(self.sky_correlation, other.sky_correlation),
            sparkle_mm2=both(self.sparkle_mm2, other.sparkle_mm2),
            sky_glare=(both(lux, more_lux), both(angle, more_angle)),
        )


def reflected(here: Setting, crowd: facets.Facets, turn_deg: float = 0.0) -> Array:
    """Return what each facet of a crowd sends to the eye, from above and from below [cd/m2].

    L = R L_in + (1 - R) L_below / (1 - R(0)), each polarised half apart where the tint asks; a
    turn of 180 deg is for one who looks back. Skylight is taken as unpolarised, which may be wrong
    by a third square to the sun.
    """
    mirrored = observer.passed(crowd.upright, crowd.level, here.tint)
    through = observer.passed(1.0 - crowd.upright, 1.0 - crowd.level, here.tint)
    incoming = around(here, crowd.ray_height_deg, crowd.ray_azimuth_deg + turn_deg)
    body = here.below / (1.0 - float(fresnel(1.0).mean))
    incoming *= mirrored[..., None]
    incoming += through[..., None] * body
    return incoming


def shade(
    here: Setting, look_down_deg: ArrayLike, slope_along: ArrayLike, slope_across: ArrayLike
) -> Array:
    """Return what single facets of a drawn surface send to the eye, without the sun's sparkles.

    The very sums whose mean is the water of `look`, before the mist: channel values [cd/m2], shape
    (..., 4). Raises OutOfRange for a look-down outside 0 to 90 deg.

    Parameters
    ----------
    here : Setting
        From `setting`.
    look_down_deg : array_like
        Line of sight below level [deg], 0 to 90.
    slope_along, slope_across : array_like
        Rise of the facet towards the viewer and to the side [-]; all three broadcast.

    Examples
    --------
    >>> here = setting(Light(), Stretch(), Wind(), Stream(), Angler())
    >>> shade(here, 3.0, np.zeros((4, 5)), 0.0).shape
    (4, 5, 4)
    """
    return reflected(here, facets.mirrors(look_down_deg, slope_along, slope_across))


def look(
    light: Light,
    stretch: Stretch,
    wind: Wind,
    stream: Stream,
    angler: Angler,
    finishes: Sequence[Finish],
    range_m: ArrayLike,
    eye_height_m: ArrayLike,
) -> Look:
    """Return the water behind the tip and the tip in every paint, at each distance.

    Water: mean over `facets.visible` of `reflected`, plus `glint.glint` while the sun clears the
    skyline. Tip: `setting.tip_lx` on `paint.paint_channels`; gloss adds what
    `cylinder.gloss_shares` mirrors of the water on either side. Through the mist x becomes T x +
    (1 - T) L_air, L_air being the sky at the horizon ahead. Raises Mistakes for a paint, bank,
    water colour, colour vision or tint that is not known, OutOfRange for a number outside its
    range.

    Parameters
    ----------
    light, stretch, wind, stream, angler : Light, Stretch, Wind, Stream, Angler
        Sky, sun and mist; the mirrored; the ripple; the water's colour; whose eyes.
    finishes : sequence of Finish
        The P paints as they stand.
    range_m : array_like
        Eye to tip, along the water [m], 1 to 300, shape (R,).
    eye_height_m : array_like
        Eye above the water [m], 0.1 to 30, one number or shape (R,).

    Examples
    --------
    >>> seen = look(Light(), Stretch(), Wind(), Stream(), Angler(), [Finish("black")], [20.0], 1.5)
    >>> bool(seen.tips[0, 0, 0] < 0.1 * seen.water[0, 0])
    True
    """
    distance = np.atleast_1d(within("range", range_m, 1.0, 300.0, "m"))
    eye = within("eye height", eye_height_m, 0.1, 30.0, "m")
    down = np.degrees(np.arctan2(eye, distance))
    here = setting(light, stretch, wind, stream, angler)
    crowd = facets.visible(down, here.slopes, stretch.bank_height_deg)
    each = reflected(here, crowd)
    mean = np.einsum("rf,rfc->rc", crowd.weight, each)
    spread = np.sqrt(crowd.mean((each[..., 0] - mean[:, None, 0]) ** 2))
    lane, coverage, sparkle = glitter(here, down)
    clear = mist.transmittance(np.hypot(distance, eye), light.visibility_m)
    horizon = sky_channels(here, 0.0, 0.0)
    air = (1.0 - clear)[:, None] * horizon
    water = clear[:, None] * (mean + lane) + air
    tips = _tips(here, finishes, down, mean)
    ratio = clear * sparkle / water[:, 0]
    return Look(
        name=stretch.name,
        share=stretch.share,
        range_m=distance,
        look_down_deg=down,
        water=water,
        tips=clear[:, None] * tips + air,
        air=air,
        facet_contrast=clear * spread / water[:, 0],
        sky_correlation=np.abs(crowd.correlation(each[..., 0], crowd.slope_along)),
        sparkle_mm2=coverage * ratio**2 * SPARKLE_MM2,
        slope_rms=math.sqrt(here.slopes.along),
        bank_height_deg=stretch.bank_height_deg,
        sky_glare=glare(here, down, water[:, 0]),
    )


def _tips(here: Setting, finishes: Sequence[Finish], down: Array, ahead: Array) -> Array:
    """Channels of each finish before the mist, shape (P, R, 4)."""
    worn = tuple(finishes)
    matt = here.once(worn, lambda: tip_lx(here) @ paint.paint_channels(worn, here.channels))
    tips = np.repeat(matt[:, None, :], len(ahead), axis=1)
    shiny = [finish.gloss for finish in finishes]
    if any(shiny):
        near, far = cylinder.gloss_shares()
        coarse = facets.visible(down, here.slopes, here.stretch.bank_height_deg, nodes=(3, 4))
        back = np.einsum("rf,rfc->rc", coarse.weight, reflected(here, coarse, 180.0))
        tips[shiny] += near * back + far * ahead
    return tips
