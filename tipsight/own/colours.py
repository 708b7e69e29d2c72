"""Colours as people tell them, and a reflectance that has one, by colour-science, imported here alone."""

import re
import sys
import warnings
from functools import cache
from typing import Any
from unittest.mock import MagicMock

import numpy as np
import scipy
from numpy.typing import NDArray

from tipsight.errors import Mistake, Mistakes

Array = NDArray[np.float64]

DARKEST, PALEST = 0.012, 0.95
"""Luminous reflectance of the darkest and of the palest paint there is: soot black, barium white."""
MOST_OFF = 2.0
"""How far the colour of a recovered reflectance may be off, CIE 2000: hardly to be seen (judgement)."""
EXAMPLE = "'#ff6a00'"
_HEX = re.compile(r"#?([0-9a-f]{3}|[0-9a-f]{6})")
_THREE = re.compile(r"(rgb|srgb|lab)?\W*([-\d.]+)[\s,]+([-\d.]+)[\s,]+([-\d.]+)\W*")
_MUNSELL = re.compile(
    r"(n\s*[\d.]+/?|[\d.]+\s*(?:r|yr|y|gy|g|bg|b|pb|p|rp)\s*[\d.]+\s*/\s*[\d.]+)"
)


@cache
def library() -> Any:
    """Return colour-science, imported once and without what its import leaves behind.

    Where matplotlib is missing it leaves mocks in its place and sets numpy's print style.
    """
    before = set(sys.modules)
    try:
        with warnings.catch_warnings(), np.printoptions():
            warnings.simplefilter("ignore")
            import colour
    except ImportError:
        why = "this needs colour-science, which is not here: pip install 'tipsight[paints]'"
        raise Mistakes([Mistake("paint", "", why, "")]) from None
    for name in set(sys.modules) - before:
        if isinstance(sys.modules[name], MagicMock):
            del sys.modules[name]
    return colour


def white() -> Array:
    """Return chromaticity x, y of CIE illuminant D65, two-degree observer."""
    found = library().CCS_ILLUMINANTS["CIE 1931 2 Degree Standard Observer"]["D65"]
    return np.asarray(found, dtype=float)


def read(said: str) -> Array:
    """Return a colour in CIE XYZ under D65, white having Y of 1.

    Told as hex or red, green and blue of a screen (IEC 61966-2-1), as L*a*b* under D65 (CIE 15), or
    in Munsell's notation under illuminant C (ASTM D1535), then adapted to D65 (CAT02).

    Raises Mistakes for what is none of these.
    """
    plain = said.strip().lower()
    if found := _HEX.fullmatch(plain):
        digits = found[1] if len(found[1]) == 6 else "".join(2 * one for one in found[1])
        screen = np.array([int(digits[at : at + 2], 16) for at in (0, 2, 4)]) / 255.0
        return np.asarray(library().sRGB_to_XYZ(screen))
    if found := _THREE.fullmatch(plain):
        three = np.array([float(one) for one in found.groups()[1:]])
        if found[1] == "lab" and 0.0 <= three[0] <= 100.0 and np.abs(three[1:]).max() <= 150.0:
            return np.asarray(library().Lab_to_XYZ(three, white()))
        if found[1] != "lab" and three.min() >= 0.0 and three.max() <= 255.0:
            return np.asarray(library().sRGB_to_XYZ(three / 255.0))
    if _MUNSELL.fullmatch(plain):
        return _munsell(plain.upper().replace(" ", ""), said)
    allowed = "say a colour of a screen, 'lab 60 50 40', or Munsell's such as '5YR 6/12'"
    raise Mistakes([Mistake("--colour", said, allowed, EXAMPLE)])


def _munsell(plain: str, said: str) -> Array:
    colour = library()
    try:
        with warnings.catch_warnings():
            warnings.simplefilter("ignore")
            found = np.asarray(colour.munsell_colour_to_xyY(plain), dtype=float)
    except (AssertionError, ValueError):
        found = np.full(3, np.nan)
    if not np.all(np.isfinite(found)):
        allowed = "Munsell's renotation has no such colour"
        raise Mistakes([Mistake("--colour", said, allowed, "'5YR 6/12'")])
    daylight_c = colour.CCS_ILLUMINANTS["CIE 1931 2 Degree Standard Observer"]["C"]
    whites = [colour.xy_to_XYZ(xy) for xy in (daylight_c, white())]
    adapted = colour.chromatic_adaptation(colour.xyY_to_XYZ(found), *whites, method="Von Kries")
    return np.asarray(adapted, dtype=float)


def screen(xyz: Array) -> str:
    """Return a colour as a screen shows it, as near as it can, ``#rrggbb``."""
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        shown = np.clip(library().XYZ_to_sRGB(xyz), 0.0, 1.0)
    return "#" + "".join(f"{round(255 * float(one)):02x}" for one in shown)


@cache
def _eye_in_daylight() -> tuple[Array, Array]:
    """Return wavelengths [nm] and what each adds to CIE XYZ under D65, shapes (n,) and (n, 3)."""
    colour = library()
    shape = colour.SpectralShape(380.0, 780.0, 5.0)
    cmfs = colour.MSDS_CMFS["CIE 1931 2 Degree Standard Observer"].copy().align(shape)
    light = colour.SDS_ILLUMINANTS["D65"].copy().align(shape)
    weights = np.asarray(cmfs.values * light.values[:, None])
    return np.asarray(shape.wavelengths), weights / weights[:, 1].sum()


def colour_of(factors: Array, wavelengths_nm: Array) -> Array:
    """Return CIE XYZ under D65 of what a surface gives back of daylight [-], wavelength by wavelength."""
    at, weights = _eye_in_daylight()
    return np.asarray(np.interp(at, wavelengths_nm, factors) @ weights)


def apart(one: Array, other: Array) -> float:
    """Return how far two colours are apart, CIEDE2000."""
    colour = library()
    labs = [colour.XYZ_to_Lab(xyz, white()) for xyz in (one, other)]
    return float(colour.delta_E(*labs, method="CIE 2000"))


def recovered(xyz: Array, said: str) -> tuple[Array, Array]:
    """Return wavelengths [nm] and a smooth reflectance [-] that has a colour under D65.

    Jakob and Hanika (2019), A low-dimensional function space for efficient spectral upsampling:
    a sigmoid of a parabola of wavelength, so that it stays within 0 and 1. Raises Mistakes for a
    colour that no plain paint has: too dark, too pale, or too pure for how bright it is.
    """
    if not DARKEST <= float(xyz[1]) <= PALEST:
        allowed = (
            f"no paint is so {'dark' if xyz[1] < DARKEST else 'pale'}: they give back "
            f"{100 * DARKEST:.0f} to {100 * PALEST:.0f} % of the light"
        )
        raise Mistakes([Mistake("--colour", said, allowed, EXAMPLE)])
    colour = library()
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        found = colour.XYZ_to_sd(xyz, method="Jakob 2019")
    nm, share = np.asarray(found.wavelengths), np.clip(np.asarray(found.values), 0.0, 1.0)
    if apart(colour_of(share, nm), xyz) > MOST_OFF:
        allowed = "no plain paint is so bright and so pure; if it glows, say so with --glows"
        raise Mistakes([Mistake("--colour", said, allowed, EXAMPLE)])
    return nm, share


def beside(xyz: Array, glow: Array, left: Array, wavelengths_nm: Array) -> Array | None:
    """Return a smooth reflectance [-] that with a glow has a colour under D65; None if there is none.

    Parameters
    ----------
    xyz : numpy.ndarray
        The colour, glow included.
    glow : numpy.ndarray
        What glows over the daylight, wavelength by wavelength [-].
    left : numpy.ndarray
        What the glowing pigment leaves of the light for the reflectance to give back [0 to 1].
    wavelengths_nm : numpy.ndarray
        The wavelengths of both, and of the result [nm].

    Notes
    -----
    The sigmoid of Jakob and Hanika (2019), fitted to the colour by least squares in CIELAB.
    """
    to_lab = library().XYZ_to_Lab
    x = (wavelengths_nm - 580.0) / 200.0
    powers = np.stack([np.ones_like(x), x, x * x])
    wanted = to_lab(xyz, white())

    def reflected(three: Array) -> Array:
        return np.asarray(scipy.special.expit(three @ powers))

    def off(three: Array) -> Array:
        found = colour_of(left * reflected(three) + glow, wavelengths_nm)
        return np.asarray(to_lab(found, white()) - wanted)

    best = scipy.optimize.least_squares(off, [-1.0, 0.0, 0.0], bounds=(-50.0, 50.0), max_nfev=80).x
    share = reflected(best)
    fits = apart(colour_of(left * share + glow, wavelengths_nm), xyz) <= MOST_OFF
    return share if fits else None
