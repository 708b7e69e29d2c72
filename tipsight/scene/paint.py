"""Paint as it stands on the tip: what it mirrors, and what it turns into its own colour."""

from collections.abc import Sequence

import numpy as np
import scipy
from numpy.typing import ArrayLike, NDArray

from tipsight import tables
from tipsight.checks import within
from tipsight.inputs.case import Finish
from tipsight.scene import daylight, observer, reflectance
from tipsight.scene.spectra import STEP_NM, WAVELENGTHS_NM

Array = NDArray[np.float64]

HALF_LIFE_SEASONS = 2.0
"""Seasons of use in which a fluorescent paint loses half its glow (judgement)."""
BARE_STICK = 0.7
"""What is left of a paint's light on a dark stick without white beneath (judgement)."""
ULTRAVIOLET_YIELD = 0.6
"""Yield below 400 nm over that of visible light (judgement)."""
ULTRAVIOLET_EDGE_NM, ULTRAVIOLET_WIDTH_NM = 400.0, 8.0


def is_fluorescent(name: str) -> bool:
    """Return whether a paint glows.

    Parameters
    ----------
    name : str
        A name of paints.csv.

    Returns
    -------
    bool
        True for a fluorescent paint.

    Raises
    ------
    Mistakes
        If no row has that name.

    Examples
    --------
    >>> is_fluorescent("fluorescent red"), is_fluorescent("red")
    (True, False)
    """
    return tables.row("paints", name, "paint")["fluorescent"] == "yes"


@tables.derived
def reflected_part(name: str) -> Array:
    """Return what a fresh paint over white reflects without changing its wavelength.

    Parameters
    ----------
    name : str
        A name of paints.csv.

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
    `reflectance.smooth` times (1 - A), A being what the glowing pigment takes.

    Examples
    --------
    >>> reflected_part("felt pen")[[0, -1]].tolist()
    [0.05, 0.05]
    """
    return reflectance.smooth(tables.row("paints", name, "paint")) * (1.0 - _absorbed(name))


def _absorbed(name: str) -> Array:
    row = tables.row("paints", name, "paint")
    if row["fluorescent"] != "yes":
        return np.zeros_like(WAVELENGTHS_NM)
    most, edge, width = (float(row[k]) for k in ("takes", "takes_edge_nm", "takes_width_nm"))
    gap, gap_nm, gap_width = (float(row[k]) for k in ("gap", "gap_nm", "gap_width_nm"))
    window = gap * np.exp(-0.5 * ((WAVELENGTHS_NM - gap_nm) / gap_width) ** 2)
    taken = most * scipy.special.expit((edge - WAVELENGTHS_NM) / width) * (1.0 - window)
    return within(f"what {name} takes", taken, 0.0, 1.0)


@tables.derived
def glowing_part(name: str) -> Array:
    """Return what a fresh paint over white takes at one wavelength and gives at a longer one.

    Parameters
    ----------
    name : str
        A name of paints.csv.

    Returns
    -------
    numpy.ndarray
        Donaldson matrix without its diagonal, step folded in, shape (97 out, 97 in); zeros for a
        paint that does not glow.

    Raises
    ------
    Mistakes
        If no row has that name.
    OutOfRange
        If more light quanta would leave than come.

    Notes
    -----
    D(λ, μ) = q A(μ) u(μ) e(λ) μ / λ for μ < λ, ∫ e dλ = 1 (Donaldson 1954, with one pigment of
    quantum yield q); e is a two-sided Gaussian. Fitted to chromaticities and luminance factors
    of the standards, not to a measured paint.

    Examples
    --------
    >>> glowing_part("black").any().item(), glowing_part("fluorescent red").any().item()
    (False, True)
    """
    row = tables.row("paints", name, "paint")
    if row["fluorescent"] != "yes":
        return np.zeros((WAVELENGTHS_NM.size, WAVELENGTHS_NM.size))
    peak, short, long, quanta = (
        float(row[k]) for k in ("glow_nm", "glow_short_nm", "glow_long_nm", "quantum_yield")
    )
    within(f"quantum yield of {name}", quanta, 0.0, 1.0)
    away = WAVELENGTHS_NM - peak
    glow = np.exp(-0.5 * (away / np.where(away < 0.0, short, long)) ** 2)
    glow /= glow.sum() * STEP_NM
    edge = (WAVELENGTHS_NM - ULTRAVIOLET_EDGE_NM) / ULTRAVIOLET_WIDTH_NM
    useful = ULTRAVIOLET_YIELD + (1.0 - ULTRAVIOLET_YIELD) * scipy.special.expit(edge)
    taken = quanta * _absorbed(name) * useful * WAVELENGTHS_NM
    matrix = np.outer(glow / WAVELENGTHS_NM, taken) * STEP_NM
    return np.tril(matrix, -1)


def surface(finish: Finish) -> Array:
    """Return the whole matrix of a paint as it now stands.

    Parameters
    ----------
    finish : Finish
        Paint, seasons of use, and whether there is white beneath.

    Returns
    -------
    numpy.ndarray
        Donaldson matrix with the reflectance on its diagonal, shape (97 out, 97 in).

    Raises
    ------
    Mistakes
        If there is no such paint.
    OutOfRange
        For seasons outside 0 to 50.

    Notes
    -----
    The glow halves every two seasons of use; without white beneath all is x 0.7 (judgement).
    Gloss is left to the surroundings: `cylinder.GLOSS_REFLECTANCE`.

    Examples
    --------
    >>> surface(Finish("white")).shape
    (97, 97)
    """
    seasons = float(within("seasons", finish.seasons, 0.0, 50.0))
    left = 2.0 ** (-seasons / HALF_LIFE_SEASONS)
    whole = np.diag(reflected_part(finish.paint)) + left * glowing_part(finish.paint)
    result: Array = whole * (1.0 if finish.undercoat else BARE_STICK)
    return result


def paint_channels(finishes: Sequence[Finish], channels: ArrayLike) -> Array:
    """Return what each paint gives to the eye under a lux of each light of the basis.

    Parameters
    ----------
    finishes : sequence of Finish
        The P paints as they stand.
    channels : array_like
        From `observer.channels`, shape (97, 4).

    Returns
    -------
    numpy.ndarray
        Channel values [cd/m2 per lux], shape (P, n, 4).

    Raises
    ------
    Mistakes
        If a paint is not known.

    Notes
    -----
    `observer.reflected` of `surface`: matt, without the mirroring of gloss.

    Examples
    --------
    >>> paint_channels([Finish("white"), Finish("black")], observer.channels()).shape
    (2, 15, 4)
    """
    result = np.empty((len(finishes), len(daylight.basis().mired), 4))
    for at, finish in enumerate(finishes):
        result[at] = observer.reflected(surface(finish), channels)
    return result
