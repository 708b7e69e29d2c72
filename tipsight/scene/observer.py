"""The observer: from spectra to the four channels in which a tip can differ from its water."""

from typing import get_args

import numpy as np
import scipy
from numpy.typing import ArrayLike, NDArray

from tipsight import tables
from tipsight.checks import within
from tipsight.errors import Mistake, Mistakes
from tipsight.inputs.case import ColourVision, Tint
from tipsight.scene import daylight, spectra

# L, M and S of D65 for a luminance of one (the scaling of Ashraf and others 2024)
D65_CONES = (0.6991, 0.3009, 0.0198)
D65_KELVIN = 6504.0  # K (CIE 15:2004)
RED_GREEN_M = 2.3112
# opponent weights that make D65 neutral (Ashraf, Mantiuk, Chapiro and Wuerger 2024)
YELLOW_VIOLET_S = 50.9875
# how far red-weak and green-weak stand on the way to red-blind and green-blind (judgement)
WEAK_SEVERITY = 0.6
# light along over light across a usual sheet polariser (judgement); the least that EN ISO 12312-1
# asks of categories 2 to 4 is 8 (from memory)
POLARISER_RATIO = 100.0


@tables.derived
def cones() -> NDArray[np.float64]:
    """Return the map from power per nm to cones L, M, S [cd/m2 or lux], shape (97, 3).

    CIE 170-1:2006 two-degree fundamentals, scaled so that D65 gives ``D65_CONES``; the step of 5
    nm and 683 lm/W are folded in.

    >>> (spectra.daylight(6504.0) @ cones()).round(4).tolist()
    [0.6991, 0.3009, 0.0198]
    """
    lms = np.stack([spectra.eye(name) for name in ("long", "medium", "short")], axis=-1)
    scaled = lms * (np.array(D65_CONES) / (spectra.daylight(D65_KELVIN) @ lms))
    scaled.setflags(write=False)
    return scaled


def opponents(colour_vision: ColourVision) -> NDArray[np.float64]:
    """Return the map from cones to luminance, red-green and yellow-violet, shape (3, 3).

    Normal: A = L + M, RG = L - 2.3112 M, YV = -(L + M) + 50.9875 S (Ashraf and others 2024).
    Blind: the remaining one of L and M alone makes A, scaled to agree at D65; no RG. Weak: a
    linear blend of the two, 0.6 of the way (judgement).

    >>> opponents("red-blind")[:, 1].tolist()
    [0.0, 0.0, 0.0]
    """
    if colour_vision not in get_args(ColourVision):
        raise Mistakes([_unknown("colour vision", colour_vision, get_args(ColourVision))])
    normal = _opponents((1.0, 1.0), (1.0, -RED_GREEN_M))
    if colour_vision == "normal":
        return normal
    red = colour_vision.startswith("red")
    blind = _opponents((0.0, 1.0 / D65_CONES[1]) if red else (1.0 / D65_CONES[0], 0.0), (0.0, 0.0))
    severity = WEAK_SEVERITY if colour_vision.endswith("weak") else 1.0
    return (1.0 - severity) * normal + severity * blind


def _opponents(bright: tuple[float, float], red: tuple[float, float]) -> NDArray[np.float64]:
    violet = (-bright[0], -bright[1], YELLOW_VIOLET_S)
    return np.array([(*bright, 0.0), (*red, 0.0), violet]).T


@tables.derived
def transmittance(tint: Tint) -> NDArray[np.float64]:
    """Return the transmittance of a tint of tints.csv for unpolarised light [-], shape (97,).

    A smooth edge, scaled to the row's luminous transmittance for D65.

    >>> transmittance("grey").round(3)[:2].tolist()
    [0.15, 0.15]
    """
    row = _tint(tint)
    low, edge, width = (float(row[key]) for key in ("low", "edge_nm", "width_nm"))
    shape = low + (1.0 - low) * scipy.special.expit((spectra.WAVELENGTHS_NM - edge) / width)
    luminous = spectra.luminous(spectra.daylight(D65_KELVIN) * shape)
    scaled = shape * float(row["transmittance"]) / luminous
    within(f"transmittance of the {tint} tint", scaled, 0.0, 1.0 + 1e-9)
    scaled.setflags(write=False)
    return scaled


def _tint(tint: str) -> tables.Row:
    table = {row["name"]: row for row in tables.rows("tints")}
    if tint not in table:
        raise Mistakes([_unknown("tint", tint, tuple(table))])
    return table[tint]


def _unknown(item: str, said: str, words: tuple[str, ...]) -> Mistake:
    return Mistake(item, said, "say " + ", ".join(words), words[0])


def passed(upright: ArrayLike, level: ArrayLike, tint: Tint) -> NDArray[np.float64]:
    """Return what counts of light whose two polarised halves differ, as a tint takes them.

    (p + ε s) / (1 + ε) with ε = 1 / `POLARISER_RATIO`, or the plain mean if the tint is not
    polarised: the reflectance to use with `channels` of the same tint. Unpolarised light is taken
    as p = s, so that it keeps the tint's own transmittance. Raises Mistakes if no row has that
    name.

    Parameters
    ----------
    upright, level : array_like
        Reflectance of each half [-], upright (p on level water) and level (s), any shape.
    tint : str
        A name of tints.csv.

    Examples
    --------
    >>> float(passed(0.0, 0.09, "polarised").round(3)), float(passed(0.0, 0.09, "grey"))
    (0.001, 0.045)
    """
    leak = 1.0 / POLARISER_RATIO if _tint(tint)["polarised"] else 1.0
    p, s = np.asarray(upright, dtype=float), np.asarray(level, dtype=float)
    return (p + leak * s) / (1.0 + leak)


@tables.derived
def channels(colour_vision: ColourVision = "normal", tint: Tint = "none") -> NDArray[np.float64]:
    """Return the map from power per nm to channels of what passes a tint [cd/m2], (97, 4).

    Luminance A, red-green, yellow-violet and scotopic luminance (1700 V'); a spectrum is
    multiplied by it from the left. Raises Mistakes for a word that is not known.

    >>> abs((spectra.daylight(6504.0) @ channels()).round(3)).tolist()
    [1.0, 0.004, 0.01, 2.465]
    """
    photopic = cones() @ opponents(colour_vision)
    scotopic = spectra.SCOTOPIC_LUMEN_PER_WATT * spectra.STEP_NM * spectra.eye("scotopic")
    result = np.column_stack([photopic, scotopic]) * transmittance(tint)[:, None]
    result.setflags(write=False)
    return result


def seen(channels: ArrayLike) -> NDArray[np.float64]:
    """Return the channels of each light of the basis at a luminance of one, shape (n, 4)."""
    result: NDArray[np.float64] = daylight.basis().spectra @ np.asarray(channels, dtype=float)
    return result


def reflected(reflectance: ArrayLike, channels: ArrayLike) -> NDArray[np.float64]:
    """Return a matt surface's channels under a lux of each basis light [cd/m2/lx], shape (n, 4).

    Lambert: luminance = reflectance x illuminance / π. The reflectance is a spectrum (97,) or the
    matrix of a fluorescent surface (97 out, 97 in), the step folded in (Donaldson 1954).

    >>> white = reflected(np.ones(97), channels())
    >>> bool(np.allclose(white, reflected(np.eye(97), channels())))
    True
    """
    surface = np.asarray(reflectance, dtype=float)
    within("dimensions of a reflectance", surface.ndim, 1, 2)
    within("wavelengths of a reflectance", surface.shape, 97, 97)
    lights = daylight.basis().spectra
    leaving = lights * surface if surface.ndim == 1 else lights @ surface.T
    result: NDArray[np.float64] = leaving @ np.asarray(channels, dtype=float) / np.pi
    return result
