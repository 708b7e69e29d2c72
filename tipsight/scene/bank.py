"""The far bank that stands in the water's mirror."""

import numpy as np
from numpy.typing import ArrayLike, NDArray

from tipsight import tables
from tipsight.checks import within
from tipsight.scene import daylight, observer, reflectance, sky

Array = NDArray[np.float64]

GROUND_REFLECTANCE = 0.1
"""Of the water and earth in front of the bank (judgement)."""


@tables.derived
def spectrum(name: str) -> Array:
    """Return the reflectance of a bank by wavelength.

    Parameters
    ----------
    name : str
        A name of banks.csv.

    Returns
    -------
    numpy.ndarray
        Spectral reflectance [-], shape (97,).

    Raises
    ------
    Mistakes
        If no row has that name.
    OutOfRange
        If the row's numbers give a reflectance outside 0 to 1.

    Notes
    -----
    `reflectance.smooth` of the row.

    Examples
    --------
    >>> spectrum("snow").round(2)[[0, -1]].tolist()
    [0.85, 0.85]
    """
    result = reflectance.smooth(tables.row("banks", name, "bank"))
    result.setflags(write=False)
    return result


def self_shade(name: str) -> float:
    """Return what part of the direct sun a bank's own shadows keep off its sunlit face.

    Parameters
    ----------
    name : str
        A name of banks.csv.

    Returns
    -------
    float
        Share, 0 to 1.

    Raises
    ------
    Mistakes
        If no row has that name.
    OutOfRange
        If the row's share is not within 0 to 1.

    Examples
    --------
    >>> self_shade("brick")
    0.0
    """
    return float(
        within(
            f"self shade of {name}",
            float(tables.row("banks", name, "bank")["self_shade"]),
            0.0,
            1.0,
        )
    )


def light_on(
    state: sky.SkyState, name: str, sunlit: bool, facing_from_sun_deg: ArrayLike
) -> Array:
    """Return the light that falls on an upright bank.

    Parameters
    ----------
    state : SkyState
        From `sky.sky_state`.
    name : str
        A name of banks.csv, for its own shadows.
    sunlit : bool
        Whether the sun reaches it where it faces the sun.
    facing_from_sun_deg : array_like
        Azimuth that the bank faces, from the sun's [deg], any sign and shape.

    Returns
    -------
    numpy.ndarray
        Illuminance by light of the basis [lx], shape (..., n).

    Raises
    ------
    Mistakes
        If no row has that name.

    Notes
    -----
    E = E_sun cos h max(0, cos Δ) (1 - self shade) + sky on that face + ρ_ground E_h / 2: a bank
    against the light has no direct part. All the sky's light has the colour of its mean.

    Examples
    --------
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


def bank_channels(
    state: sky.SkyState,
    name: str,
    sunlit: bool,
    facing_from_sun_deg: ArrayLike,
    channels: ArrayLike,
) -> Array:
    """Return what a bank sends to the eye.

    Parameters
    ----------
    state : SkyState
        From `sky.sky_state`.
    name : str
        A name of banks.csv.
    sunlit : bool
        Whether the sun reaches it where it faces the sun.
    facing_from_sun_deg : array_like
        Azimuth that the bank faces, from the sun's [deg], any sign and shape.
    channels : array_like
        From `observer.channels`, shape (97, 4).

    Returns
    -------
    numpy.ndarray
        Channel values [cd/m2], shape (..., 4).

    Raises
    ------
    Mistakes
        If no row has that name.

    Notes
    -----
    Lambert: `light_on` times reflectance over π.

    Examples
    --------
    >>> state = sky.sky_state(sky.Light())
    >>> bank_channels(state, "dark trees", False, 180.0, observer.channels()).shape
    (4,)
    """
    light = light_on(state, name, sunlit, facing_from_sun_deg)
    return np.asarray(light @ observer.reflected(spectrum(name), channels))
