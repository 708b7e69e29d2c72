"""The sky over the swim: how bright it is where, from full day to the end of dusk."""

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray

from tipsight.inputs.case import Light
from tipsight.scene.general_sky import horizontal_sr, nodes, relative
from tipsight.scene.sky_scale import LOWEST_SUN_DEG, beam_normal_lx, diffuse_lx, smoothstep

# between these heights of the sun the sky evens out (judgement)
UNIFORM_FROM_DEG, UNIFORM_AT_DEG = -9.0, -12.0


@dataclass(frozen=True)
class SkyState:
    """A sky with its scale, from `sky_state`."""

    light: Light
    diffuse_lx: float
    """Horizontal illuminance from the sky."""
    beam_normal_lx: float
    """Illuminance from the sun on a plane that faces it, 0 where it does not reach the tip."""
    horizontal_sr: float
    """Horizontal illuminance of this sky for a zenith luminance of one."""
    uniform_share: float
    """How far the sky has evened out at the end of dusk, 0 to 1."""


def sky_state(light: Light) -> SkyState:
    """Return how bright sky and sun are.

    `sky_scale.diffuse_lx` and `sky_scale.beam_normal_lx`; the beam is 0 for a sun that is down.
    The type's shape is undefined for a sun below the horizon and then taken as at 0.01 deg; from
    -9 to -12 deg it drifts to a uniform sky (judgement). Raises OutOfRange for a sun outside -12
    to 90 deg, a turbidity outside 1.5 to 8, a type outside 1 to 15.

    >>> state = sky_state(Light(sky_type=12, beam=True, sun_height_deg=30.0))
    >>> round(state.beam_normal_lx, -2)
    66500.0
    """
    diffuse = diffuse_lx(light)
    sun = light.sun_height_deg
    integral = horizontal_sr(light.sky_type, max(sun, LOWEST_SUN_DEG))
    even = smoothstep((UNIFORM_FROM_DEG - sun) / (UNIFORM_FROM_DEG - UNIFORM_AT_DEG))
    beam = beam_normal_lx(sun, light.turbidity).item() if light.beam and sun > 0.0 else 0.0
    return SkyState(light, diffuse, beam, integral, even)


def luminance(
    state: SkyState, height_deg: ArrayLike, from_sun_deg: ArrayLike
) -> NDArray[np.float64]:
    """Return the luminance of parts of the sky [cd/m2].

    Parameters
    ----------
    state : SkyState
        From `sky_state`.
    height_deg : array_like
        Height above the horizon [deg], 0 to 90; outside it OutOfRange is raised.
    from_sun_deg : array_like
        Azimuth from the sun's [deg], any sign; broadcasts with ``height_deg``.

    Examples
    --------
    >>> float(luminance(sky_state(Light(sun_height_deg=5.0)), 90.0, 0.0).round(1))
    872.5
    """
    sun = max(state.light.sun_height_deg, LOWEST_SUN_DEG)
    shape = relative(state.light.sky_type, height_deg, from_sun_deg, sun) / state.horizontal_sr
    even = state.uniform_share
    return state.diffuse_lx * ((1.0 - even) * shape + even / math.pi)


def vertical_lx(state: SkyState, facing_from_sun_deg: ArrayLike) -> NDArray[np.float64]:
    """Return the illuminance from the sky alone on upright planes [lx], by azimuth from the sun's.

    The integral of L cos h max(0, cos(azimuth - facing)) over the sky.

    >>> state = sky_state(Light(sky_type=5))
    >>> float((vertical_lx(state, 90.0) / state.diffuse_lx).round(2))
    0.5
    """
    height, azimuth, weight = nodes(24, 48)
    part = luminance(state, height, azimuth) * np.cos(np.radians(height)) * weight / 2.0
    facing = np.radians(np.asarray(facing_from_sun_deg, dtype=float))[..., None, None]
    turned = np.radians(azimuth)
    both = sum(np.maximum(np.cos(side * turned - facing), 0.0) for side in (1.0, -1.0))
    return np.asarray(np.sum(part * both, axis=(-2, -1)))


def global_lx(state: SkyState) -> float:
    """Return the horizontal illuminance from sky and sun together [lx]."""
    sine = math.sin(math.radians(max(state.light.sun_height_deg, 0.0)))
    return state.diffuse_lx + state.beam_normal_lx * sine
