"""What a float carries with a tip on it, and what it takes to drown the tip."""

from collections.abc import Sequence

import numpy as np
from numpy.typing import ArrayLike, NDArray

from tipsight.afloat import bite, freshwater
from tipsight.afloat.heave import stiffness_g_per_mm
from tipsight.errors import Mistake, Mistakes
from tipsight.inputs.case import Stock, Tip
from tipsight.load.balance import displaced_mm3, float_mass_g, uprighting_g_mm
from tipsight.load.bored import replaced
from tipsight.load.hull import HOOK_AND_BAIT_G, Hull
from tipsight.load.tips import (
    SLEEVE_MM,
    aloft_g,
    coat_mass_g_per_mm,
    painted_diameter_mm,
    stock_mass_g_per_mm,
    tip_mass_g,
)

__all__ = [
    "HOOK_AND_BAIT_G",
    "SLEEVE_MM",
    "displaced_mm3",
    "float_mass_g",
    "meniscus_g",
    "painted_diameter_mm",
    "pull_g",
    "pull_grid",
    "sink_force_g",
    "stiffness_g_per_mm",
    "tip_mass_g",
    "uprighting_g_mm",
]

Array = NDArray[np.float64]


def sink_force_g(
    painted_diameter_mm: ArrayLike, showing_mm: ArrayLike, temperature_c: ArrayLike = 10.0
) -> Array:
    """Return the force that just drowns the showing part, without the meniscus.

    Parameters
    ----------
    painted_diameter_mm, showing_mm : array_like
        Diameter and length out of the water [mm], broadcast.
    temperature_c : array_like
        Water [deg C], broadcast.

    Returns
    -------
    numpy.ndarray
        Force [gf]; a dry top takes `meniscus_g` more before it floods.

    Raises
    ------
    OutOfRange
        If the water is outside the range of the density formula.

    Examples
    --------
    >>> round(float(sink_force_g(3.0, 31.75)), 4)
    0.2244
    """
    stiffness = stiffness_g_per_mm(painted_diameter_mm, temperature_c)
    return np.asarray(stiffness * np.asarray(showing_mm, dtype=float))


def meniscus_g(painted_diameter_mm: ArrayLike, temperature_c: ArrayLike = 10.0) -> Array:
    """Return the most that the water's skin can pull on a tip.

    Parameters
    ----------
    painted_diameter_mm : array_like
        Diameter [mm], any shape.
    temperature_c : array_like
        Water [deg C], broadcast.

    Returns
    -------
    numpy.ndarray
        Force [gf] at a contact angle of 0 deg (or 180, upwards); loads take 90 deg: none.

    Raises
    ------
    OutOfRange
        If the water is outside the range of the surface tension formula.

    Notes
    -----
    Circumference times surface tension (J. B. Keller, Phys. Fluids 10, 3009, 1998, from memory;
    exact for a vertical cylinder).

    Examples
    --------
    >>> round(float(meniscus_g(3.0)), 4)
    0.0713
    """
    return bite.meniscus_g(painted_diameter_mm, 0.0, temperature_c)


def pull_grid(
    hull: Hull,
    stocks: Sequence[Stock],
    showing_mm: ArrayLike,
    wet_mm: ArrayLike = 10.0,
    glued_mm: ArrayLike = 5.0,
    *,
    coats: int = 3,
    aloft_g: ArrayLike = 0.0,
    temperature_c: float = 10.0,
) -> Array:
    """Return the pull that a float has left for shot, for many tips at once.

    Parameters
    ----------
    hull : Hull
        The float without its tip.
    stocks : sequence of Stock
        D pieces of tip stock, the first axis.
    showing_mm, wet_mm, glued_mm : array_like
        Lengths out of the water, in it, and inside the body [mm]; broadcast against (D, S), so
        that a plain row of showing lengths makes the second axis.
    coats : int
        Of paint on the tip.
    aloft_g : array_like
        What the tip carries above the water besides itself [g], broadcast against (D, S).
    temperature_c : float
        Water [deg C].

    Returns
    -------
    numpy.ndarray
        Pull [gf], shape (D, S); negative where the float sinks by itself.

    Raises
    ------
    OutOfRange
        If a diameter, the coats or the water are outside their ranges.

    Notes
    -----
    Archimedes with the waterline at the foot of the showing part; the glued part takes the place
    of body or stem; hook and bait (0.03 g) are taken off; no meniscus.

    Examples
    --------
    >>> from tipsight.load import hull, patterns, materials
    >>> float_ = hull.build(patterns.built("bolo type"))
    >>> pull_grid(float_, materials.shelf()[:3], [20, 30]).shape
    (3, 2)
    """
    bare_mm = np.array([piece.diameter_mm for piece in stocks])[:, np.newaxis]
    showing = np.asarray(showing_mm, dtype=float)
    wet, glued = np.asarray(wet_mm, dtype=float), np.asarray(glued_mm, dtype=float)
    gone_g, proud_mm3 = replaced(hull.slices, *np.broadcast_arrays(bare_mm, glued))
    area_mm2 = np.pi / 4.0 * painted_diameter_mm(bare_mm, coats) ** 2
    outside = showing + wet
    tip_g = stock_mass_g_per_mm(stocks)[:, np.newaxis] * (outside + glued)
    tip_g = tip_g + coat_mass_g_per_mm(bare_mm, coats) * outside + np.asarray(aloft_g)
    water = freshwater.density_kg_m3(temperature_c) * 1e-6
    lift_g = water * (hull.volume_mm3 + proud_mm3 + area_mm2 * wet)
    return np.asarray(lift_g - (hull.mass_g + tip_g - gone_g) - HOOK_AND_BAIT_G)


def pull_g(hull: Hull, tip: Tip, temperature_c: float = 10.0) -> float:
    """Return the pull that a float has left for shot with its tip showing as told.

    Parameters
    ----------
    hull : Hull
        The float without its tip.
    tip : Tip
        Its tip.
    temperature_c : float
        Water [deg C].

    Returns
    -------
    float
        Weight in water of the shot that it takes [gf].

    Raises
    ------
    Mistakes
        If the tip has no room in the body, the float sinks by itself, or it falls over.
    OutOfRange
        If the tip's diameter, its coats or the water are outside their ranges.

    Examples
    --------
    >>> from tipsight.load import hull, patterns
    >>> float_ = hull.build(patterns.built("quill avon", "12 mm"))
    >>> 2.0 < pull_g(float_, patterns.pattern("quill avon").tip) < 4.0
    True
    """
    _refuse_no_room(hull, tip)
    grid = pull_grid(
        hull,
        [tip.stock],
        [[tip.showing_mm]],
        tip.wet_mm,
        tip.glued_mm,
        coats=tip.coats,
        aloft_g=aloft_g(tip),
        temperature_c=temperature_c,
    )
    pull = float(grid[0, 0])
    piece = f"{tip.stock.diameter_mm:g} mm {tip.stock.kind}, {tip.showing_mm:g} mm showing"
    if pull <= 0.0:
        raise Mistakes(
            [
                Mistake(
                    "tip",
                    piece,
                    f"the float sinks by itself, {-pull:.2f} g too heavy: "
                    "take a lighter or shorter tip, or a bigger body",
                    "thin tube",
                )
            ]
        )
    if uprighting_g_mm(hull, tip, temperature_c) <= 0.0:
        raise Mistakes(
            [
                Mistake(
                    "tip",
                    piece,
                    "the float falls over with all its shot on: take a lighter or shorter tip, "
                    "a heavier or longer stem, or a bigger body",
                    "thin tube",
                )
            ]
        )
    return pull


def _refuse_no_room(hull: Hull, tip: Tip) -> None:
    wrong = []
    if tip.glued_mm > hull.body_length_mm:
        wrong.append(
            Mistake(
                "glued",
                f"{tip.glued_mm:g} mm",
                f"the body is only {hull.body_length_mm:g} mm long: glue in less of the tip",
                "5 mm",
            )
        )
    if tip.stock.diameter_mm > hull.body_diameter_mm:
        wrong.append(
            Mistake(
                "tip",
                f"{tip.stock.diameter_mm:g} mm",
                f"the body is only {hull.body_diameter_mm:.1f} mm thick and has no room for it: "
                "take a thinner tip or a thicker body",
                f"{np.floor(hull.body_diameter_mm):g} mm",
            )
        )
    if wrong:
        raise Mistakes(wrong)
