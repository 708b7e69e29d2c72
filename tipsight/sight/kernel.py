"""The eye and one water held ready at many distances, so that each tip costs a matrix product."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray

from tipsight.checks import within
from tipsight.sight.channels import Channel, capped, channels
from tipsight.sight.clutter import KAPPA2, Clutter, spectra
from tipsight.sight.energy import MM_PER_ARCMIN_M, across, upright
from tipsight.sight.eye import Eye

Array = NDArray[np.float64]

NODES = 48  # of Gauss-Legendre, across and up the picture
REACH = 0.6  # frequencies are summed up to this over the blur [cycles per blur length]
_NODE, _WEIGHT = np.polynomial.legendre.leggauss(NODES)


@dataclass(frozen=True)
class Kernels:
    """What the eye and the water do to each frequency, at each of R distances."""

    range_m: Array
    adaptation_cd_m2: Array
    channels: tuple[Channel, Channel, Channel]
    # frequencies, across and up the picture alike, shape (R, F) [1/mm], and quadrature weight
    # over noise, shape (R, F across, F up) [1/mm4]; None for water without streaks
    streaks: tuple[Array, Array] | None

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
    nodes = 0.5 * REACH * (_NODE + 1.0)
    # four quadrants of the frequency plane hold the same energy
    step = 0.5 * REACH / seen_mm[:, None] * _WEIGHT
    weight = 4.0 * step[:, :, None] * step[:, None, :]
    passed = np.exp(-4.0 * np.pi**2 * (nodes[:, None] ** 2 + nodes**2))
    frequency = nodes / seen_mm[:, None]
    own = scale**2 / grey.gain
    water = KAPPA2 * np.asarray(clutter.factor)[..., None] * spectra(clutter, frequency)
    noise = own[:, None, None] + water[:, :, None] * passed
    return Kernels(distance, light, three, (frequency, weight * passed / noise))


def _widths(nodes: Array, weight: Array, diameter_mm: Array) -> Array:
    """Return the filter's gain at each height frequency, shape (..., F) for diameters (...)."""
    spread = (diameter_mm[..., None] * np.sinc(diameter_mm[..., None] * nodes)) ** 2
    return np.asarray((spread[..., None, :] @ weight)[..., 0, :])


def _bands(nodes: Array, edges_mm: Array) -> tuple[Array, Array]:
    """Return real and imaginary spectrum of each band, (..., n, F) for edges (..., n + 1)."""
    height, twice_centre = np.diff(edges_mm), edges_mm[..., 1:] + edges_mm[..., :-1]
    size = height[..., None] * np.sinc(nodes[..., None, :] * height[..., None])
    turn = np.pi * nodes[..., None, :] * twice_centre[..., None]
    return size * np.cos(turn), size * np.sin(turn)


def _shares(edges_mm: Array) -> Array:
    """Return each band's share of the whole height; nothing where nothing shows."""
    height = np.diff(edges_mm)
    whole = height.sum(axis=-1, keepdims=True)
    return np.asarray(np.divide(height, whole, out=np.zeros_like(height), where=whole > 0.0))


def _streaked(
    nodes: Array, weight: Array, diameter_mm: Array, edges_mm: Array, contrast: Array
) -> Array:
    """Return the squared luminance signal among streaks, shape (..., R)."""
    real, imaginary = _bands(nodes, edges_mm)
    power = sum((contrast[..., None, :] @ part)[..., 0, :] ** 2 for part in (real, imaginary))
    gain = _widths(nodes, weight, diameter_mm)
    return np.asarray((power * gain).sum(axis=-1))


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
    width, edges, seen = _checked(diameter_mm, edges_mm, contrast)
    scale = MM_PER_ARCMIN_M * kernel.range_m
    share = _shares(edges)
    area = width / scale * np.diff(edges).sum(axis=-1) / scale
    levels2 = []
    for k, channel in enumerate(kernel.channels):
        c = seen[..., k]
        if k == 0 and kernel.streaks:
            signal2 = _streaked(*kernel.streaks, width, edges, c)
        else:
            blur = channel.seen_blur_arcmin
            q = upright(edges / scale[:, None], blur)
            signal2 = (
                channel.gain
                * across(width / scale, blur)
                * np.maximum(np.einsum("...i,...ij,...j->...", c, q, c), 0.0)
            )
        weber2 = (c**2 * share).sum(axis=-1) / channel.floor**2
        levels2.append(channel.kept(area) ** 2 * capped(signal2, weber2))
    luminance2, colour2 = levels2[0], levels2[1] + levels2[2]
    return np.sqrt(luminance2), np.sqrt(colour2)


def _upper(n: int) -> tuple[NDArray[np.intp], NDArray[np.intp]]:
    """Return the pairs of n bands, each once."""
    return np.triu_indices(n)


def _paired(form: Array) -> Array:
    """Return the pairs of a symmetric form (..., n, n), mixed ones doubled, (..., pairs)."""
    first, second = _upper(form.shape[-1])
    return np.asarray(form[..., first, second] * np.where(first == second, 1.0, 2.0))


def _checked(
    diameter_mm: ArrayLike, edges_mm: ArrayLike, contrast: ArrayLike
) -> tuple[Array, Array, Array]:
    """Return the tip's numbers as arrays, if they make a tip."""
    edges, seen = np.asarray(edges_mm, dtype=float), np.asarray(contrast, dtype=float)
    within("height of a band", np.diff(edges), 0.0, 1e4, "mm")
    bands = edges.shape[-1] - 1
    if seen.shape[-2:] != (bands, 3):
        raise ValueError(f"{bands} bands want 3 contrasts each, not shape {seen.shape[-2:]}")
    return within("diameter", diameter_mm, 1e-3, 1e3, "mm"), edges, seen


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
    signal is a quadratic form in the contrasts, sum_ij C_i C_j T_ij, where T hangs on diameter and
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
    width, edges, seen = _checked(diameter_mm, edges_mm, contrast)
    scale = float(MM_PER_ARCMIN_M * kernel.range_m[0])
    first, second = _upper(seen.shape[1])
    share = _shares(edges)
    area = np.multiply.outer(width, np.diff(edges).sum(axis=-1)) / scale**2
    sums = []
    for k, channel in enumerate(kernel.channels):
        c = seen[:, :, k]
        if k == 0 and kernel.streaks:
            form = _streaked_form(*kernel.streaks, width, edges)
        else:
            blur = channel.seen_blur_arcmin
            lone = channel.gain * across(width / scale, blur)
            form = lone[:, None, None] * _paired(upright(edges / scale, blur))
        weber2 = share @ (c**2).T / channel.floor**2
        sums.append((form, (c[:, first] * c[:, second]).T, weber2, channel.kept(area) ** 2))
    out = np.empty((len(width), len(edges), len(seen)))
    for d in range(len(width)):  # one diameter at a time stays in the processor's cache
        level2 = sum(
            kept2[d][:, None] * capped(np.maximum(form[d] @ product, 0.0), weber2)
            for form, product, weber2, kept2 in sums
        )
        out[d] = np.sqrt(level2)
    return out


def _streaked_form(nodes: Array, weight: Array, width: Array, edges: Array) -> Array:
    """Return the luminance form of each diameter and set of edges, shape (D, S, pairs)."""
    first, second = _upper(edges.shape[-1] - 1)
    real, imaginary = _bands(nodes[0], edges)
    power = real[:, first] * real[:, second] + imaginary[:, first] * imaginary[:, second]
    power *= np.where(first == second, 1.0, 2.0)[:, None]
    gain = _widths(nodes[0], weight[0], width)
    return np.asarray((gain @ power.reshape(-1, NODES).T).reshape(len(width), *power.shape[:2]))
