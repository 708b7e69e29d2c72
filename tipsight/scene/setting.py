"""All that surrounds one water: sky and bank by direction, light on the tip, light from below."""

import math
from collections.abc import Callable
from dataclasses import dataclass, field

import numpy as np
from numpy.typing import ArrayLike, NDArray

from tipsight import tables
from tipsight.checks import within
from tipsight.few import Few
from tipsight.inputs.case import Angler, Light, Stream, Stretch, Tint, Wind
from tipsight.scene import bank, cylinder, daylight, observer, sky, slopes, water_body
from tipsight.scene.fresnel import level_reflectance

Array = NDArray[np.float64]

BANK_STEP_DEG = 10.0  # between the faces of the bank whose light is worked out beforehand
HELD = 8
"""Of what each setting has worked out for those who asked."""


@dataclass(frozen=True)
class Setting:
    """One water with its light, for one pair of eyes; made by `setting`.

    Azimuths are from the line of sight, 0 ahead. Channels are those of `observer.channels`.
    """

    state: sky.SkyState
    stretch: Stretch
    sun_azimuth_deg: float
    sun_in_view: bool
    """Whether the direct sun clears the bank and reaches tip, water and eye."""
    slopes: slopes.SlopeVariance
    tint: Tint
    channels: Array
    """From spectrum to channels, shape (97, 4)."""
    seen: Array
    """Channels of each light of the basis, shape (n, 4)."""
    bank_lx: Array
    """Light on the bank by light of the basis and by how far its face turns from the sun, every
    10 deg from 0 to 180, shape (19, n)."""
    bank_cd_m2: Array
    """Channels of the bank, likewise, shape (19, 4)."""
    bank_factor: float
    """Luminance of the bank over its illuminance [1/sr], the grey that lights the tip."""
    below: Array
    """Channels of the light from inside the water, seen straight down, shape (4,)."""
    below_factor: float
    """Its luminance factor."""

    held: Few[object, Array] = field(default_factory=lambda: Few(HELD), init=False, repr=False)
    """What the same at any distance was worked out for those who asked, by what they are."""

    def once(self, what: object, work: Callable[[], Array]) -> Array:
        """Return what some work comes to, which hangs on this setting and on ``what`` alone."""
        found = self.held.get(what)
        if found is None:
            found = self.held[what] = work()
        return found


KEPT = 24
"""Settings kept in mind: what is asked next is mostly of the same waters at another distance."""


@tables.lately(KEPT)
def setting(light: Light, stretch: Stretch, wind: Wind, stream: Stream, angler: Angler) -> Setting:
    """Return one water with its light, ready for any distance.

    The bank stands at the same height all round what the water mirrors. Raises Mistakes for a bank,
    water colour, colour vision or tint that is not known, OutOfRange for a sun, sky, skyline or
    wind outside its range.

    Parameters
    ----------
    light, stretch, wind, stream, angler : Light, Stretch, Wind, Stream, Angler
        Sky and sun; the mirrored; the ripple; the water's colour; colour vision and tint.

    Examples
    --------
    >>> here = setting(Light(), Stretch(), Wind(), Stream(), Angler())
    >>> here.sun_in_view
    False
    """
    state = sky.sky_state(light)
    within("skyline", stretch.bank_height_deg, 0.0, 89.0, "deg")
    azimuth = 0.0 if stretch.sun_ahead else light.sun_bearing_deg
    sun_in_view = state.beam_normal_lx > 0.0 and not in_shade(light, stretch)
    channels = observer.channels(angler.colour_vision, angler.tint)
    facing = np.arange(0.0, 180.0 + BANK_STEP_DEG, BANK_STEP_DEG)
    lit = bank.light_on(state, stretch.bank, stretch.bank_sunlit, facing)
    bank_reflects = observer.reflected(bank.spectrum(stretch.bank), channels)
    grey = bank_reflects[:, 0] / observer.seen(channels)[:, 0]
    ground = daylight.ground_weights(state)
    body = observer.reflected(water_body.spectrum(stream.water_colour), channels)
    return Setting(
        state=state,
        stretch=stretch,
        sun_azimuth_deg=azimuth,
        sun_in_view=sun_in_view,
        slopes=slopes.slope_variance(wind),
        tint=angler.tint,
        channels=channels,
        seen=observer.seen(channels),
        bank_lx=lit,
        bank_cd_m2=lit @ bank_reflects,
        bank_factor=float(ground @ grey),
        below=sky.global_lx(state) * (ground @ body),
        below_factor=water_body.luminance_factor(stream.water_colour),
    )


def in_shade(light: Light, stretch: Stretch) -> bool:
    """Return whether the bank's shadow lies on the float.

    It does while the sun stands in the half circle ahead, lower than the skyline.

    >>> low = Light(beam=True, sun_height_deg=12.0, sun_bearing_deg=40.0)
    >>> in_shade(low, Stretch(bank_height_deg=15.0)), in_shade(low, Stretch(bank_height_deg=5.0))
    (True, False)
    """
    azimuth = 0.0 if stretch.sun_ahead else light.sun_bearing_deg
    ahead = abs((azimuth + 180.0) % 360.0 - 180.0) <= 90.0
    return ahead and light.sun_height_deg < stretch.bank_height_deg


def _from_sun(here: Setting, azimuth_deg: ArrayLike) -> Array:
    return np.asarray(azimuth_deg, dtype=float) - here.sun_azimuth_deg


def _bank_at(here: Setting, azimuth_deg: ArrayLike, table: Array) -> Array:
    """Read a table of the bank's face, which looks back along the azimuth."""
    turn = np.abs(_from_sun(here, azimuth_deg) % 360.0 - 180.0)
    knots = BANK_STEP_DEG * np.arange(len(table))
    result = np.empty((*turn.shape, table.shape[1]))
    for column in range(table.shape[1]):
        result[..., column] = np.interp(turn, knots, table[:, column])
    return result


def sky_channels(here: Setting, height_deg: ArrayLike, azimuth_deg: ArrayLike) -> Array:
    """Return what parts of the sky, 0 to 90 deg up, send to the eye [cd/m2], shape (..., 4).

    `sky.luminance` in the colour of `daylight.sky_mired`; the same as mixing `observer.seen` by
    `daylight.sky_weights`.
    """
    turn = _from_sun(here, azimuth_deg)
    bright = sky.luminance(here.state, height_deg, turn)
    nodes = daylight.basis().mired
    mired = np.clip(daylight.sky_mired(here.state, bright, height_deg, turn), nodes[0], nodes[-1])
    result = np.empty((*bright.shape, 4))
    if np.all(mired == mired.flat[0]):
        result[:] = bright[..., None] * (daylight.weights(mired.flat[0]) @ here.seen)
        return result
    for channel in range(4):
        result[..., channel] = bright * np.interp(mired, nodes, here.seen[:, channel])
    return result


def around(here: Setting, height_deg: ArrayLike, azimuth_deg: ArrayLike) -> Array:
    """Return what comes to the water from a direction without the sun's disc [cd/m2], (..., 4).

    The bank below the skyline, above it the sky, -90 to 90 deg high: from below the horizon, water
    is taken to mirror what stands as high above. Azimuths run round from the line of sight.

    >>> here = setting(Light(), Stretch(bank_height_deg=20.0), Wind(), Stream(), Angler())
    >>> bank_, sky_ = around(here, [19.0, 21.0], 0.0)[:, 0]
    >>> bool(bank_ < 0.1 * sky_)
    True
    """
    height, azimuth = np.broadcast_arrays(
        np.abs(within("height above the horizon", height_deg, -90.0, 90.0, "deg")),
        np.asarray(azimuth_deg, dtype=float),
    )
    result = np.empty((*height.shape, 4))
    is_bank = height < here.stretch.bank_height_deg
    result[is_bank] = _bank_at(here, azimuth[is_bank], here.bank_cd_m2)
    if not is_bank.all():
        result[~is_bank] = sky_channels(here, height[~is_bank], azimuth[~is_bank])
    return result


def tip_lx(here: Setting) -> Array:
    """Return the light on the seen side of an upright tip by light of the basis [lx], shape (n,).

    E = E_sun cos h G (1 + R) + ∫ L cos e G (1 + R) dω + β E_h / 2, averaged over the width as
    seen, G of `cylinder.seen_share`: sun, sky and the bank ahead, each with its image in level
    water of reflectance R, and the light from inside the water. The half circle behind the viewer
    is taken as open; the bank and the water's body light the tip as greys.

    >>> here = setting(Light(sky_type=5), Stretch(bank_height_deg=0.0), Wind(), Stream(), Angler())
    >>> round(float(tip_lx(here).sum() / here.state.diffuse_lx), 2)
    0.62
    """
    state, skyline = here.state, here.stretch.bank_height_deg
    height, azimuth, weight = _tip_nodes(skyline)
    image = 1.0 + level_reflectance(height).mean
    share = weight * np.cos(np.radians(height)) * cylinder.seen_share(180.0 - azimuth) * image
    is_bank = (height < skyline) & (np.abs(azimuth) <= 90.0)
    dark = share[is_bank] @ _bank_at(here, azimuth[is_bank], here.bank_lx) * here.bank_factor
    height, turn, share = (a[~is_bank] for a in (height, _from_sun(here, azimuth), share))
    bright = sky.luminance(state, height, turn)
    open_sky = (share * bright) @ daylight.sky_weights(state, bright, height, turn)
    ground = daylight.ground_weights(state)
    total = dark + open_sky + here.below_factor * sky.global_lx(state) / 2.0 * ground
    if here.sun_in_view:
        sun = state.light.sun_height_deg
        direct = state.beam_normal_lx * math.cos(math.radians(sun))
        direct *= float(1.0 + level_reflectance(sun).mean)
        direct *= float(cylinder.seen_share(180.0 - here.sun_azimuth_deg))
        total = total + direct * daylight.beam_weights(state)
    return np.asarray(total)


def _tip_nodes(skyline_deg: float) -> tuple[Array, Array, Array]:
    """Directions over the sky, divided at the skyline and square to the line of sight."""
    node, part = np.polynomial.legendre.leggauss(10)
    ends = np.radians([0.0, skyline_deg, skyline_deg + (90.0 - skyline_deg) / 3.0, 90.0])
    half = np.diff(ends)[:, None] / 2.0
    height = (ends[:-1, None] + half * (1.0 + node)).ravel()
    up = (half * part).ravel() * np.cos(height)
    quarter = math.pi / 4.0
    azimuth = (np.arange(-4, 4, 2)[:, None] * quarter + quarter * (1.0 + node)).ravel()
    round_ = np.tile(quarter * part, 4)
    grid = np.meshgrid(np.degrees(height), np.degrees(azimuth), indexing="ij")
    return grid[0].ravel(), grid[1].ravel(), np.outer(up, round_).ravel()
