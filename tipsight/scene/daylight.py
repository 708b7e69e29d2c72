"""The colour of light, carried as shares of a few fixed spectra."""

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray

from tipsight import tables
from tipsight.scene import general_sky, sky, spectra
from tipsight.scene.sky_scale import smoothstep

# nodes on the CIE daylight locus, 25000 to 4100 K
DAYLIGHT_MIRED = (40.0, 55.0, 75.0, 100.0, 125.0, 1e6 / 6504.0, 185.0, 215.0, 244.0)
# nodes of the low sun, 3900 to 1533 K
PLANCK_MIRED = (256.0, 300.0, 360.0, 440.0, 540.0, 1e6 / 1533.0)
# change of mired over a tenfold luminance (Chain, Dumortier and Fontoynont 1999)
CHAIN_SLOPE = 59.77
# between these heights of the sun the colour begins to follow the luminance (judgement)
VARIED_FROM_DEG, VARIED_AT_DEG = 0.0, 10.0
# between these the mean colour passes from twilight_colour.csv to `blue_mired` (judgement)
DAY_FROM_DEG, DAY_AT_DEG = 10.0, 45.0
# extent of the glow where the sun went down (judgement)
GLOW_HEIGHT_DEG, GLOW_WIDTH_DEG = 8.0, 40.0


@dataclass(frozen=True)
class LightBasis:
    """The fixed spectra, each of luminance (or illuminance) one."""

    spectra: NDArray[np.float64]
    """Shape (n, 97)."""
    mired: NDArray[np.float64]
    """Shape (n,), a million over the correlated colour temperature; ascending."""


@tables.derived
def basis() -> LightBasis:
    """Return the spectra that lights are mixed from: CIE daylight, from 3900 K black bodies."""
    mired = np.array(DAYLIGHT_MIRED + PLANCK_MIRED)
    day = spectra.daylight(1e6 / np.array(DAYLIGHT_MIRED))
    return LightBasis(np.vstack([day, spectra.planck(1e6 / np.array(PLANCK_MIRED))]), mired)


def weights(mired: ArrayLike) -> NDArray[np.float64]:
    """Return the shares of the basis that make a light of a colour temperature, shape (..., n).

    Linear in mired between the two neighbouring nodes and held outside 40 to 652: a sky bluer than
    25000 K, where the daylight locus ends, has the colour of that.

    >>> weights(47.5)[:3].tolist()
    [0.5, 0.5, 0.0]
    """
    nodes = basis().mired
    value = np.clip(np.asarray(mired, dtype=float), nodes[0], nodes[-1])
    below = np.clip(np.searchsorted(nodes, value, side="right") - 1, 0, nodes.size - 2)
    share = (value - nodes[below]) / (nodes[below + 1] - nodes[below])
    rows = np.zeros((value.size, nodes.size))
    index = np.arange(value.size)
    rows[index, below.ravel()] = 1.0 - share.ravel()
    rows[index, below.ravel() + 1] = share.ravel()
    return rows.reshape(*value.shape, nodes.size)


def blue_mired(luminance_cd_m2: ArrayLike) -> NDArray[np.float64]:
    """Return the colour [mired] of a part of the clear sky in full daylight from its luminance.

    T = 1e6 / (-132.1 + 59.77 log10 L) (Chain, Dumortier and Fontoynont 1999, CIE type 12), fitted
    to clear skies in full daylight; not for a low sun.

    >>> round(1e6 / float(blue_mired(5000.0)))
    11238
    """
    mired: NDArray[np.float64] = -132.1 + CHAIN_SLOPE * np.log10(
        np.asarray(luminance_cd_m2, dtype=float)
    )
    return mired


def sky_mired(
    state: sky.SkyState, luminance: ArrayLike, height_deg: ArrayLike, from_sun_deg: ArrayLike
) -> NDArray[np.float64]:
    """Return the colour of parts of the sky [mired].

    Blue sky: above a sun of 45 deg `blue_mired`; lower its slope about a mean that passes to
    twilight_colour.csv, since the formula makes the whole sky too blue under a low sun (half as
    hot again at 10 deg as the spectral model of Bird and Riordan 1986), with a glow over the sun
    at dusk (judgement); held at 40. Cloud: 6514 K by day. The two are mixed in mired by the type's
    share of blue (judgement).

    >>> state = sky.sky_state(sky.Light(sky_type=1, sun_height_deg=30.0))
    >>> float(sky_mired(state, 5000.0, 45.0, 0.0))
    153.5
    """
    sun = state.light.sun_height_deg
    table = tables.columns("twilight_colour")
    low_sky, low_cloud, glow, glow_share = (
        float(np.interp(sun, table["sun_height_deg"], table[key]))
        for key in ("sky_mired", "cloud_mired", "glow_mired", "glow_share")
    )
    clear = float(general_sky.row_of("kittler", state.light.sky_type)["blue_share"])
    daily = smoothstep((sun - DAY_FROM_DEG) / (DAY_AT_DEG - DAY_FROM_DEG))
    varied = smoothstep((sun - VARIED_FROM_DEG) / (VARIED_AT_DEG - VARIED_FROM_DEG))
    even = state.diffuse_lx / math.pi
    mean = daily * float(blue_mired(even)) + (1.0 - daily) * low_sky
    odds = np.log10(np.asarray(luminance, dtype=float) / even)
    blue = np.maximum(mean + varied * CHAIN_SLOPE * odds, DAYLIGHT_MIRED[0])
    if glow_share > 0.0:
        height = np.asarray(height_deg, dtype=float) / GLOW_HEIGHT_DEG
        away = (np.asarray(from_sun_deg, dtype=float) + 180.0) % 360.0 - 180.0
        share = glow_share * np.exp(-(height**2) - (away / GLOW_WIDTH_DEG) ** 2)
        blue = blue + share * (glow - blue)
    return np.asarray(low_cloud + clear * (blue - low_cloud))


def sky_weights(
    state: sky.SkyState, luminance: ArrayLike, height_deg: ArrayLike, from_sun_deg: ArrayLike
) -> NDArray[np.float64]:
    """Return parts of the sky as shares of the basis, shape (..., n): `weights` of `sky_mired`."""
    return weights(sky_mired(state, luminance, height_deg, from_sun_deg))


def beam_weights(state: sky.SkyState) -> NDArray[np.float64]:
    """Return the direct sun as shares of the basis, shape (n,).

    sun_colour.csv, linear in mired over the logarithm of (height + 1 deg); for a sun that is down
    (and gives nothing) as at the horizon. The table is of a clear day; haze reddens more.

    >>> state = sky.sky_state(sky.Light(sky_type=12, beam=True, sun_height_deg=30.0))
    >>> round(1e6 / float(beam_weights(state) @ basis().mired))
    4868
    """
    table = tables.columns("sun_colour")
    place = math.log(max(state.light.sun_height_deg, 0.0) + 1.0)
    return weights(
        np.interp(place, np.log(table["sun_height_deg"] + 1.0), 1e6 / table["temperature_k"])
    )


def diffuse_weights(state: sky.SkyState) -> NDArray[np.float64]:
    """Return what the sky alone sheds on level ground as shares of the basis, shape (n,)."""
    height, azimuth, area = general_sky.nodes()
    bright = sky.luminance(state, height, azimuth)
    part = bright * np.sin(np.radians(height)) * area
    mixed: NDArray[np.float64] = part.ravel() @ sky_weights(
        state, bright.ravel(), height.ravel(), azimuth.ravel()
    )
    return np.asarray(mixed / part.sum())


def ground_weights(state: sky.SkyState) -> NDArray[np.float64]:
    """Return what sky and sun together shed on level ground as shares of the basis, shape (n,)."""
    share = state.diffuse_lx / sky.global_lx(state)
    return share * diffuse_weights(state) + (1.0 - share) * beam_weights(state)
