"""How well a banded tip is seen: the matched filter that both eye and water set limits to."""

import numpy as np
from numpy.typing import ArrayLike, NDArray

from tipsight.checks import Outside, beyond, within
from tipsight.sight import clutter as streaks
from tipsight.sight import energy, kernel
from tipsight.sight import eye as eyes

Array = NDArray[np.float64]

DOMAIN = {
    "width_arcmin": (0.02, 5.0, "arcmin"),
    "height_arcmin": (0.2, 60.0, "arcmin"),
    "adaptation_cd_m2": (0.04, 5000.0, "cd/m2"),
}
"""Over what the detector was compared with measurements."""


def cut(edges_mm: ArrayLike, hidden_mm: ArrayLike) -> Array:
    """Return the edges of the bands with the part that the crests hide cut off the foot [mm].

    Parameters
    ----------
    edges_mm : array_like
        Edges above the waterline, rising [mm], shape (..., n + 1).
    hidden_mm : array_like
        Height hidden [mm], broadcasts with the edges.

    Returns
    -------
    numpy.ndarray
        Edges, none below the hidden height [mm]; a band that is gone has no height left.

    Examples
    --------
    >>> cut([0.0, 10.0, 30.0], 12.0)
    array([12., 12., 30.])
    """
    return np.asarray(np.maximum(np.asarray(edges_mm, dtype=float), hidden_mm))


def level_parts(
    diameter_mm: ArrayLike,
    edges_mm: ArrayLike,
    contrast: ArrayLike,
    *,
    range_m: ArrayLike,
    adaptation_cd_m2: ArrayLike,
    eye: eyes.Eye,
    clutter: streaks.Clutter | None = None,
) -> tuple[Array, Array]:
    """Return the level that luminance alone gives and the level that colour alone gives.

    Parameters
    ----------
    diameter_mm : array_like
        Painted diameter [mm], shape (...).
    edges_mm : array_like
        Edges of the bands above the waterline, rising [mm], shape (..., n + 1).
    contrast : array_like
        Luminance, red-green and yellow-violet contrast of each band from the foot up [-], shape
        (..., n, 3).
    range_m, adaptation_cd_m2 : array_like
        Eye to tip [m], 0.1 to 1000, and luminance to which the eye is adapted [cd/m2], shape
        (...); among streaks one number each.
    eye : Eye
        Whose.
    clutter : Clutter, optional
        The water's streaks; left out for water without any.

    Returns
    -------
    tuple of numpy.ndarray
        Two levels [-], each of shape (...); all leading axes broadcast.

    Raises
    ------
    OutOfRange
        If a diameter is not positive, edges fall, or light or distance is out of range.
    ValueError
        If bands and contrasts do not fit, or among streaks range or light is not one number.

    Notes
    -----
    See `visibility_level`.

    Examples
    --------
    >>> grey, colour = level_parts(4.0, [0.0, 33.0], [[0.1, 1.5, 0.0]], range_m=36.6,
    ...                            adaptation_cd_m2=300.0, eye=eyes.Eye(25.0))
    >>> bool(colour > grey)
    True
    """
    width, edges = np.asarray(diameter_mm, dtype=float), np.asarray(edges_mm, dtype=float)
    seen, light = np.asarray(contrast, dtype=float), np.asarray(adaptation_cd_m2, dtype=float)
    distance = within("distance", range_m, 0.1, 1000.0, "m")
    if clutter is not None and max(distance.size, light.size) > 1:
        raise ValueError("among streaks distance and light are one number each")
    lead = np.broadcast_shapes(
        width.shape, edges.shape[:-1], seen.shape[:-2], distance.shape, light.shape
    )
    places = lead if clutter is None else (1,)
    held = kernel.kernels(
        np.broadcast_to(distance, places).reshape(-1),
        np.broadcast_to(light, places).reshape(-1),
        eye,
        () if clutter is None else (clutter,),
    )
    # among streaks all tips stand at one place, so they go on an axis of their own
    spare: tuple[int, ...] = (-1,) if clutter is None else (-1, 1)
    grey, colour = kernel.level_parts(
        held,
        diameter_mm=np.broadcast_to(width, lead).reshape(spare),
        edges_mm=np.broadcast_to(edges, lead + edges.shape[-1:]).reshape(spare + edges.shape[-1:]),
        contrast=np.broadcast_to(seen, lead + seen.shape[-2:]).reshape(spare + seen.shape[-2:]),
        eye=eye,
    )
    return grey.reshape(lead), colour.reshape(lead)


def visibility_level(
    diameter_mm: ArrayLike,
    edges_mm: ArrayLike,
    contrast: ArrayLike,
    *,
    range_m: ArrayLike,
    adaptation_cd_m2: ArrayLike,
    eye: eyes.Eye,
    clutter: streaks.Clutter | None = None,
) -> Array:
    """Return the visibility level of banded tips: 1 is seen half the time, given time.

    Parameters
    ----------
    diameter_mm : array_like
        Painted diameter [mm], shape (...).
    edges_mm : array_like
        Edges of the bands above the waterline, rising [mm], shape (..., n + 1); `cut` takes off
        what crests hide.
    contrast : array_like
        Luminance, red-green and yellow-violet contrast of each band from the foot up [-], shape
        (..., n, 3).
    range_m, adaptation_cd_m2 : array_like
        Eye to tip [m], 0.1 to 1000, and luminance to which the eye is adapted [cd/m2], shape
        (...); among streaks one number each.
    eye : Eye
        Whose.
    clutter : Clutter, optional
        The water's streaks; left out for water without any.

    Returns
    -------
    numpy.ndarray
        Level [-], shape (...); all leading axes broadcast.

    Raises
    ------
    OutOfRange
        If a diameter is not positive, edges fall, or light or distance is out of range.
    ValueError
        If bands and contrasts do not fit, or among streaks range or light is not one number.

    Notes
    -----
    A matched filter on the tip blurred by a Gaussian s, in white noise that gives Blackwell's
    (1946) threshold R to a point: e = sqrt(4 pi) s/(R AF) sqrt(E), with E in closed form; among
    streaks their noise joins the eye's, channel by frequency (`kernel.kernels`). Each of the three
    channels is capped by Weber's law, 1/level^2 = 1/e^2 + (C0 AF/C_rms)^2, and they add as squares
    (Ashraf et al. 2024). Compared with measurements within `DOMAIN`; `outside_domain` tells.

    Examples
    --------
    >>> float(visibility_level(2.5, [0.0, 30.0], [[1.0, 0.0, 0.0]], range_m=36.0,
    ...                        adaptation_cd_m2=1000.0, eye=eyes.Eye(25.0)).round(2))
    4.48
    """
    grey, colour = level_parts(
        diameter_mm,
        edges_mm,
        contrast,
        range_m=range_m,
        adaptation_cd_m2=adaptation_cd_m2,
        eye=eye,
        clutter=clutter,
    )
    return np.hypot(grey, colour)


def level_grid(
    diameter_mm: ArrayLike,
    edges_mm: ArrayLike,
    contrast: ArrayLike,
    *,
    range_m: float,
    adaptation_cd_m2: float,
    eye: eyes.Eye,
    clutter: streaks.Clutter | None = None,
) -> Array:
    """Return the level of every diameter with every set of edges in every paint scheme.

    Parameters
    ----------
    diameter_mm : array_like
        Painted diameters [mm], shape (D,).
    edges_mm : array_like
        Sets of edges above the waterline, rising [mm], shape (S, n + 1).
    contrast : array_like
        Of each band from the foot up, for each paint scheme [-], shape (P, n, 3).
    range_m, adaptation_cd_m2 : float
        Eye to tip [m], 0.1 to 1000, and luminance to which the eye is adapted [cd/m2].
    eye : Eye
        Whose.
    clutter : Clutter, optional
        The water's streaks; left out for water without any.

    Returns
    -------
    numpy.ndarray
        Level [-], shape (D, S, P).

    Raises
    ------
    OutOfRange
        If a diameter is not positive, edges fall, or light or distance is out of range.
    ValueError
        If bands and contrasts do not fit.

    Notes
    -----
    The same as `visibility_level`, by matrix products.

    Examples
    --------
    >>> level_grid([3.0, 5.0], [[0.0, 20.0], [0.0, 40.0]], [[[-0.9, 0.0, 0.0]]], range_m=36.6,
    ...            adaptation_cd_m2=300.0, eye=eyes.Eye(60.0)).shape
    (2, 2, 1)
    """
    within("distance", range_m, 0.1, 1000.0, "m")
    held = kernel.kernels(range_m, adaptation_cd_m2, eye, () if clutter is None else (clutter,))
    return kernel.level_grid(
        held, diameter_mm=diameter_mm, edges_mm=edges_mm, contrast=contrast, eye=eye
    )


def outside_domain(
    diameter_mm: float, showing_mm: float, range_m: float, adaptation_cd_m2: float
) -> tuple[Outside, ...]:
    """Return what of a tip in a light lies outside what was compared with measurements.

    Parameters
    ----------
    diameter_mm, showing_mm : float
        Painted diameter and showing length [mm].
    range_m : float
        Eye to tip [m], 0.1 to 1000.
    adaptation_cd_m2 : float
        Luminance to which the eye is adapted [cd/m2].

    Returns
    -------
    tuple of Outside
        Named as `DOMAIN`; empty if all is well.

    Raises
    ------
    OutOfRange
        If the distance is outside that range.

    Notes
    -----
    Out there the sums run on without being held: a nearer, larger tip is limited by Weber's law,
    which Blackwell's discs bear out to six degrees, and a darker one by its flux.

    Examples
    --------
    >>> outside_domain(4.0, 33.0, 36.6, 0.01)
    (Outside(name='adaptation_cd_m2', value=0.01, low=0.04, high=5000.0, unit='cd/m2'),)
    """
    return beyond(
        DOMAIN,
        {
            "width_arcmin": float(energy.arcmin(diameter_mm, range_m)),
            "height_arcmin": float(energy.arcmin(showing_mm, range_m)),
            "adaptation_cd_m2": float(adaptation_cd_m2),
        },
    )
