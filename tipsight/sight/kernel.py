"""The eye and one water held ready at many distances, so that each tip costs a matrix product."""

from dataclasses import dataclass
from functools import cached_property

import numpy as np
from numpy.typing import ArrayLike, NDArray

from tipsight.checks import within
from tipsight.sight.channels import Channel, capped, channels, together
from tipsight.sight.clutter import KAPPA2, Clutter, spectra
from tipsight.sight.energy import MM_PER_ARCMIN_M, across, apart, steps
from tipsight.sight.eye import Eye

Array = NDArray[np.float64]

NODES = 48  # of Gauss-Legendre, across and up the picture
REACH = 0.6  # frequencies are summed up to this over the blur [cycles per blur length]
_NODE, _WEIGHT = np.polynomial.legendre.leggauss(NODES)
_NODES = 0.5 * REACH * (_NODE + 1.0)
_PASSED = np.exp(-4.0 * np.pi**2 * (_NODES[:, None] ** 2 + _NODES**2))
# four quadrants of the frequency plane hold the same energy; the squares belong to the sines of bars
_SHARE = np.multiply.outer(_WEIGHT / _NODES**2, _WEIGHT / _NODES**2) * _PASSED * REACH**2 / np.pi**4


@dataclass(frozen=True)
class Kernels:
    """What the eye and the water do to each frequency, at each of R distances."""

    range_m: Array
    adaptation_cd_m2: Array
    channels: tuple[Channel, Channel, Channel]
    # pi times frequency, across and up the picture alike, shape (R, F) [1/mm], and quadrature weight
    # over noise and both squared, shape (R, F across, F up) [-]; None for water without streaks
    streaks: tuple[Array, Array] | None

    @cached_property
    def colours(self) -> Channel:
        """Both channels of colour together, shape (R, 2)."""
        return together(self.channels[1:])

    def __getitem__(self, at: slice) -> "Kernels":
        held = self.streaks and (self.streaks[0][at], self.streaks[1][at])
        grey, red, violet = (channel[at] for channel in self.channels)
        return Kernels(self.range_m[at], self.adaptation_cd_m2[at], (grey, red, violet), held)


def kernels(
    range_m: ArrayLike, adaptation_cd_m2: ArrayLike, eye: Eye, clutter: Clutter | None = None
) -> Kernels:
    """Return the eye and one water at each of several distances; a slice of it picks distances.

    Parameters
    ----------
    range_m : eye to tip, 0.1 to 1000, shape (R,)
    adaptation_cd_m2 : luminance to which the eye is adapted, broadcasts to (R,)
    eye : whose; its own factor broadcasts to (R,)
    clutter : the water's streaks, broadcasts to (R,); or none at all

    Notes
    -----
    A matched filter on the tip blurred by a Gaussian s, in white noise that gives Blackwell's
    (1946) threshold R to a point, and in the water's own. Weight over noise, w_x w_u / (N0/G^2 +
    kappa^2 P), N0 = (R AF m/G)^2/(4 pi s^2), m the millimetres in an arc minute, G^2 = exp(-4 pi^2
    s^2 (fx^2 + fu^2)), on 48 x 48 Gauss-Legendre nodes up to 0.6/s.

    Examples
    --------
    >>> kernels([10.0, 20.0], 300.0, Eye(25.0))[0:1].range_m
    array([10.])
    """
    distance = np.atleast_1d(within("distance", range_m, 0.1, 1000.0, "m"))
    light = np.broadcast_to(np.asarray(adaptation_cd_m2, dtype=float), distance.shape)
    three = channels(light, eye)
    if clutter is None or clutter.is_nothing:
        return Kernels(distance, light, three, None)
    grey, scale = three[0], MM_PER_ARCMIN_M * distance
    seen_mm = grey.seen_blur_arcmin * scale
    frequency = _NODES / seen_mm[:, None]
    own = scale**2 / grey.gain
    water = KAPPA2 * np.asarray(clutter.factor)[..., None] * spectra(clutter, frequency)
    noise = water[:, :, None] * _PASSED
    noise += own[:, None, None]
    weight = (seen_mm**2)[:, None, None] * _SHARE
    weight /= noise
    return Kernels(distance, light, three, (np.pi * frequency, weight))


def _widths(turn: Array, weight: Array, diameter_mm: Array) -> Array:
    """Return the filter's gain at each height frequency, shape (..., F) for diameters (...)."""
    spread = np.sin(diameter_mm[..., None] * turn) ** 2
    return np.asarray((spread[..., None, :] @ weight)[..., 0, :])


def _shares(height_mm: Array) -> Array:
    """Return each band's share of the whole height; nothing where nothing shows."""
    whole = height_mm.sum(axis=-1, keepdims=True)
    return np.asarray(np.divide(height_mm, whole, out=np.zeros_like(height_mm), where=whole > 0.0))


def _steps(contrast: Array) -> Array:
    """Return the products of every two steps in each channel, (..., pairs, 3) of (..., n, 3)."""
    return steps(contrast.swapaxes(-1, -2)).swapaxes(-1, -2)


def level_parts(
    kernel: Kernels, *, diameter_mm: ArrayLike, edges_mm: ArrayLike, contrast: ArrayLike
) -> tuple[Array, Array]:
    """Return the level by luminance and the level by colour of tips, each of shape (..., R).

    Parameters
    ----------
    kernel : eye and water at R distances
    diameter_mm : painted, broadcasts to (..., R)
    edges_mm : of the bands above the waterline, rising, shape (..., R, n + 1)
    contrast : of each band from the foot up [-], shape (..., R, n, 3)

    Returns
    -------
    tuple of numpy.ndarray
        Visibility levels [-]: 1 is seen half the time, given time; the whole is their hypotenuse.

    Notes
    -----
    Luminance: `kernels`; without streaks its closed form, e = sqrt(4 pi) s G/(R AF) sqrt(E), E as in
    `energy`. Colour knows no streaks. Each channel is capped by Weber's law, 1/level^2 = 1/e^2 +
    (C0 AF/G/C_rms)^2, and they add as squares (Ashraf et al. 2024). Compared with measurements
    within `detect.DOMAIN`. `OutOfRange` if edges do not rise or a diameter is not positive,
    `ValueError` if bands and contrasts do not fit.

    Examples
    --------
    >>> far = kernels([36.0], 1000.0, Eye(25.0))
    >>> grey, colour = level_parts(far, diameter_mm=2.5, edges_mm=[[0.0, 30.0]],
    ...                            contrast=[[[1.0, 0.0, 0.0]]])
    >>> grey.round(2), colour
    (array([4.51]), array([0.]))
    """
    width, edges, height, seen = _checked(diameter_mm, edges_mm, contrast)
    scale = MM_PER_ARCMIN_M * kernel.range_m
    share = _shares(height)
    area = width / scale * (edges[..., -1] - edges[..., 0]) / scale
    tall, wide = apart(edges), width / scale
    products, squares = _steps(seen), (seen**2 * share[..., None]).sum(axis=-2)
    grey, colours = kernel.channels[0], kernel.colours
    if kernel.streaks:
        turn, weight = kernel.streaks
        bars = np.sin(tall[..., None] * turn[:, None, :]) ** 2
        power = (products[..., None, :, 0] @ bars)[..., 0, :]
        luminance2 = (power * _widths(turn, weight, width)).sum(axis=-1)
    else:
        blur = grey.seen_blur_arcmin
        upright = (products[..., 0] * across(tall / scale[:, None], blur[:, None])).sum(axis=-1)
        luminance2 = grey.gain * across(wide, blur) * upright
    blur = colours.seen_blur_arcmin
    bars = across((tall / scale[:, None])[..., None], blur[:, None, :])
    upright = (products[..., 1:] * bars).sum(axis=-2)
    colour2 = colours.gain * across(wide[..., None], blur) * upright
    # steps that balance may leave a rounding below nothing
    luminance2 = capped(np.maximum(luminance2, 0.0), squares[..., 0] / grey.floor**2)
    colour2 = capped(np.maximum(colour2, 0.0), squares[..., 1:] / colours.floor**2)
    colour2 = (colours.kept(area[..., None]) ** 2 * colour2).sum(axis=-1)
    return np.sqrt(luminance2), np.sqrt(colour2)


def _checked(
    diameter_mm: ArrayLike, edges_mm: ArrayLike, contrast: ArrayLike
) -> tuple[Array, Array, Array, Array]:
    """Return the tip's numbers as arrays, heights of bands among them, if they make a tip."""
    edges, seen = np.asarray(edges_mm, dtype=float), np.asarray(contrast, dtype=float)
    height = within("height of a band", edges[..., 1:] - edges[..., :-1], 0.0, 1e4, "mm")
    bands = edges.shape[-1] - 1
    if seen.shape[-2:] != (bands, 3):
        raise ValueError(f"{bands} bands want 3 contrasts each, not shape {seen.shape[-2:]}")
    return within("diameter", diameter_mm, 1e-3, 1e3, "mm"), edges, height, seen


def level_grid(
    kernel: Kernels, *, diameter_mm: ArrayLike, edges_mm: ArrayLike, contrast: ArrayLike
) -> Array:
    """Return the level of every diameter, set of edges and paint scheme at one distance.

    Parameters
    ----------
    kernel : eye and water at one distance
    diameter_mm : painted, shape (D,)
    edges_mm : sets of edges above the waterline, rising, shape (S, n + 1)
    contrast : of each band from the foot up, for each paint scheme [-], shape (P, n, 3)

    Returns
    -------
    numpy.ndarray
        Visibility level [-], shape (D, S, P).

    Notes
    -----
    As `level_parts`; `ValueError` also if the kernel holds more than one distance. The squared
    signal is the sum over pairs of edges of T times `energy.steps`, where T hangs on diameter and
    edges alone: one frequency sum a diameter, then matrix products.

    Examples
    --------
    >>> water = kernels([20.0], 300.0, Eye(25.0))
    >>> level_grid(water, diameter_mm=[3.0, 4.0], edges_mm=[[0.0, 20.0], [0.0, 40.0], [0.0, 60.0]],
    ...            contrast=[[[-0.9, 0.0, 0.0]]]).shape
    (2, 3, 1)
    """
    if kernel.range_m.shape != (1,):
        raise ValueError(f"the grid is for one distance, not {kernel.range_m.size}")
    width, edges, height, seen = _checked(diameter_mm, edges_mm, contrast)
    scale = float(MM_PER_ARCMIN_M * kernel.range_m[0])
    share, tall = _shares(height), apart(edges)
    area = np.multiply.outer(width, edges[:, -1] - edges[:, 0]) / scale**2
    sums = []
    for k, channel in enumerate(kernel.channels):
        c = seen[:, :, k]
        if k == 0 and kernel.streaks:
            turn, weight = kernel.streaks[0][0], kernel.streaks[1][0]
            bars = np.sin(tall[..., None] * turn) ** 2
            gain = _widths(turn, weight, width)
            form = (gain @ bars.reshape(-1, NODES).T).reshape(len(width), *tall.shape)
        else:
            blur = channel.seen_blur_arcmin
            lone = channel.gain * across(width / scale, blur)
            form = lone[:, None, None] * across(tall / scale, blur)
        weber2 = share @ (c**2).T / channel.floor**2
        sums.append((form, steps(c).T, weber2, channel.kept(area) ** 2))
    out = np.empty((len(width), len(edges), len(seen)))
    for d in range(len(width)):  # one diameter at a time stays in the processor's cache
        level2 = sum(
            kept2[d][:, None] * capped(np.maximum(form[d] @ product, 0.0), weber2)
            for form, product, weber2, kept2 in sums
        )
        out[d] = np.sqrt(level2)
    return out
