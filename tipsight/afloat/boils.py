"""The river's own ups and downs: boils, from depth, pace and bed."""

import numpy as np
from numpy.typing import ArrayLike, NDArray

from tipsight.checks import within
from tipsight.inputs.case import Stream
from tipsight.nature import GRAVITY_M_S2

Array = NDArray[np.float64]
MOST_BOIL = 10.0  # times the boils of an even glide; a weir has 3


def shear_velocity_m_s(stream: Stream) -> float:
    """Return the shear velocity of a stream [m/s], which scales all its turbulence.

    Manning's equation with the depth as hydraulic radius, u* = U n sqrt(g) / h^(1/6) (Henderson
    1966, Open Channel Flow, ch. 4, from memory; SI units).

    >>> round(shear_velocity_m_s(Stream(depth_m=1.5, pace_m_s=0.6)), 4)
    0.0615
    """
    depth = float(within("depth of water", stream.depth_m, 0.1, 20.0, "m"))
    pace = float(within("pace of the stream", stream.pace_m_s, 0.0, 5.0, "m/s"))
    roughness = float(within("Manning's n", stream.manning_n, 0.01, 0.15))
    return float(pace * roughness * np.sqrt(GRAVITY_M_S2) / depth ** (1.0 / 6.0))


def vertical_rms_m_s(stream: Stream, below_surface_m: ArrayLike) -> Array:
    """Return the rms of the water's vertical velocity at depths [m], any shape [m/s].

    Nezu and Nakagawa (1993), Turbulence in Open-Channel Flows: w' = 1.27 u* exp(-y / h), y from
    the bed; times the boil factor: 1 on an even glide, 2 where it boils, 3 below a weir
    (judgement). That the surface damps w' close under it is left to stand against local boils.

    >>> round(float(vertical_rms_m_s(Stream(depth_m=1.5, pace_m_s=0.6), 0.75)), 4)
    0.0474
    """
    below = within("depth below the surface", below_surface_m, 0.0, stream.depth_m, "m")
    factor = float(within("boil factor", stream.boil_factor, 0.0, MOST_BOIL))
    from_bed = 1.0 - below / stream.depth_m
    return np.asarray(factor * 1.27 * shear_velocity_m_s(stream) * np.exp(-from_bed))


def time_scale_s(stream: Stream) -> float:
    """Return how long a drifting float feels one boil [s]; infinite where nothing flows.

    The Lagrangian integral time scale 0.1 h / u*: vertical diffusivity 0.067 h u* (Fischer et al.
    1979, eq. (5.3); from memory) over the depth mean of w'^2 of Nezu and Nakagawa (1993), 0.697
    u*^2. It puts the spectrum's peak at 6 to 8 h / U, where Jackson (1976) counted boils at 7.6
    h / U (from memory).

    >>> round(time_scale_s(Stream(depth_m=1.5, pace_m_s=0.6)), 2)
    2.44
    """
    shear = shear_velocity_m_s(stream)
    return 0.1 * stream.depth_m / shear if shear > 0.0 else float("inf")


def variance_shares(edges_rad_s: ArrayLike, time_scale_s: float) -> Array:
    """Return the shares of variance [-], shape (n,), in bands of frequency, edges (n + 1,).

    Of an exponential correlation, whose one-sided density is (2 / pi) T / (1 + w^2 T^2) (Tennekes
    and Lumley 1972, A First Course in Turbulence; from memory): between two frequencies the
    difference of (2 / pi) atan(w T), from 0 to infinity 1. T is 0.001 to 10000 s, or infinite,
    where nothing flows and all are 0.

    >>> variance_shares([0.0, 0.5, np.inf], 2.0).round(6).tolist()
    [0.5, 0.5]
    """
    edges = np.asarray(edges_rad_s, dtype=float)
    if np.isinf(time_scale_s):
        return np.zeros(edges.size - 1)
    scale = float(within("time scale of boils", time_scale_s, 1e-3, 1e4, "s"))
    return np.asarray(2.0 / np.pi * np.diff(np.arctan(edges * scale)))
