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

# seasons of use in which a fluorescent paint loses half its glow (judgement)
HALF_LIFE_SEASONS = 2.0
# what is left of a paint's light on a dark stick without white beneath (judgement)
BARE_STICK = 0.7
ULTRAVIOLET_YIELD = 0.6  # yield below 400 nm over that of visible light (judgement)
ULTRAVIOLET_EDGE_NM, ULTRAVIOLET_WIDTH_NM = 400.0, 8.0  # of the step between them (judgement)


@tables.derived
def reflected_part(name: str) -> Array:
    """Return what a fresh paint reflects without changing its wavelength [-], shape (97,).

    `reflectance.smooth`, or the measured spectrum of an own row, times (1 - A), over white, A being
    what the glowing pigment takes.

    >>> reflected_part("felt pen")[[0, -1]].tolist()
    [0.05, 0.05]
    """
    row = tables.row("paints", name, "paint")
    if row["spectrum"]:  # held at its ends beyond them
        plain = np.interp(WAVELENGTHS_NM, *tables.spectrum(row["spectrum"]))
    else:
        plain = reflectance.smooth(row)
    return np.asarray(plain * (1.0 - absorbed(name)))


def absorbed(name: str) -> Array:
    """Return what a paint's glowing pigment takes of the light that falls on it [-], shape (97,)."""
    row = tables.row("paints", name, "paint")
    if not row["fluorescent"]:
        return np.zeros_like(WAVELENGTHS_NM)
    most, edge, width = (float(row[k]) for k in ("takes", "takes_edge_nm", "takes_width_nm"))
    gap, gap_nm, gap_width = (float(row[k]) for k in ("gap", "gap_nm", "gap_width_nm"))
    window = gap * np.exp(-0.5 * ((WAVELENGTHS_NM - gap_nm) / gap_width) ** 2)
    taken = most * scipy.special.expit((edge - WAVELENGTHS_NM) / width) * (1.0 - window)
    return np.asarray(taken)


@tables.derived
def glowing_part(name: str) -> Array:
    """Return what a fresh paint takes at one wavelength and gives at a longer, (97 out, 97 in).

    D(λ, μ) = q A(μ) u(μ) e(λ) μ / λ for μ < λ, ∫ e dλ = 1 (Donaldson 1954, with one pigment of
    quantum yield q; u is the yield of ultraviolet), the step folded in; e is a two-sided Gaussian.
    Fitted to chromaticities and luminance factors of the standards, not to a measured paint.

    >>> glowing_part("black").any().item(), glowing_part("fluorescent red").any().item()
    (False, True)
    """
    row = tables.row("paints", name, "paint")
    if not row["fluorescent"]:
        return np.zeros((WAVELENGTHS_NM.size, WAVELENGTHS_NM.size))
    peak, short, long, quanta = (
        float(row[k]) for k in ("glow_nm", "glow_short_nm", "glow_long_nm", "quantum_yield")
    )
    away = WAVELENGTHS_NM - peak
    glow = np.exp(-0.5 * (away / np.where(away < 0.0, short, long)) ** 2)
    glow /= glow.sum() * STEP_NM
    edge = (WAVELENGTHS_NM - ULTRAVIOLET_EDGE_NM) / ULTRAVIOLET_WIDTH_NM
    useful = ULTRAVIOLET_YIELD + (1.0 - ULTRAVIOLET_YIELD) * scipy.special.expit(edge)
    taken = quanta * absorbed(name) * useful * WAVELENGTHS_NM
    matrix = np.outer(glow / WAVELENGTHS_NM, taken) * STEP_NM
    return np.tril(matrix, -1)


def doubt(name: str) -> float:
    """Return how well a paint's contrast is known (x/÷), 1 for no worse than a row of ours."""
    return float(tables.row("paints", name, "paint")["doubt"] or 1.0)


def surface(finish: Finish) -> Array:
    """Return a paint as it now stands: a Donaldson matrix, its reflectance on the diagonal.

    The glow halves every two seasons of use, 0 to 50; without white beneath all is x 0.7
    (judgement). Gloss is left to the surroundings: `cylinder.gloss_shares`.
    """
    seasons = float(within("seasons", finish.seasons, 0.0, 50.0))
    left = 2.0 ** (-seasons / HALF_LIFE_SEASONS)
    whole = np.diag(reflected_part(finish.paint)) + left * glowing_part(finish.paint)
    result: Array = whole * (1.0 if finish.undercoat else BARE_STICK)
    return result


def paint_channels(finishes: Sequence[Finish], channels: ArrayLike) -> Array:
    """Return what paints give to the eye under a lux of each basis light [cd/m2/lx], (P, n, 4).

    Matt, without the mirroring of gloss. Raises Mistakes for a paint that is not known, OutOfRange
    for seasons outside 0 to 50.

    Parameters
    ----------
    finishes : sequence of Finish
        The P paints as they stand.
    channels : array_like
        From `observer.channels`, shape (97, 4).
    """
    result = np.empty((len(finishes), len(daylight.basis().mired), 4))
    for at, finish in enumerate(finishes):
        result[at] = observer.reflected(surface(finish), channels)
    return result
