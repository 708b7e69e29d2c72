"""The far bank that stands in the water's mirror."""

import numpy as np
from numpy.typing import ArrayLike, NDArray

from tipsight import tables
from tipsight.scene import daylight, reflectance, sky

Array = NDArray[np.float64]

GROUND_REFLECTANCE = 0.1  # of the water and earth in front of the bank (judgement)


@tables.derived
def spectrum(name: str) -> Array:
    """Return the reflectance of a bank of banks.csv by wavelength [-], shape (97,)."""
    result = reflectance.smooth(tables.row("banks", name, "bank"))
    result.setflags(write=False)
    return result


def self_shade(name: str) -> float:
    """Return what share of the direct sun a bank's own shadows keep off its sunlit face, 0 to 1."""
    return float(tables.row("banks", name, "bank")["self_shade"])


def light_on(
    state: sky.SkyState, name: str, sunlit: bool, facing_from_sun_deg: ArrayLike
) -> Array:
    """Return the light on an upright bank by light of the basis [lx], shape (..., n).

    E = E_sun cos h max(0, cos Δ) (1 - self shade) + sky on that face + ρ_ground E_h / 2, with Δ
    the azimuth that the bank faces from the sun's [deg]: a bank against the light has no direct
    part. All the sky's light has the colour of its mean.

    >>> state = sky.sky_state(sky.Light(sky_type=12, beam=True, sun_height_deg=30.0))
    >>> lit, dim = light_on(state, "brick", True, [0.0, 180.0]).sum(axis=-1)
    >>> bool(lit > 5 * dim)
    True
    """
    facing = np.asarray(facing_from_sun_deg, dtype=float)
    kept = (1.0 - self_shade(name)) if sunlit else 0.0
    height = np.radians(state.light.sun_height_deg)
    toward = np.cos(height) * np.maximum(np.cos(np.radians(facing)), 0.0)
    direct = state.beam_normal_lx * kept * toward
    ground = GROUND_REFLECTANCE * sky.global_lx(state) / 2.0
    return np.asarray(
        direct[..., None] * daylight.beam_weights(state)
        + sky.vertical_lx(state, facing)[..., None] * daylight.diffuse_weights(state)
        + ground * daylight.ground_weights(state)
    )
