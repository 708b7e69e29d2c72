"""What a float carries with a tip on it, and what it takes to drown the tip."""

from collections.abc import Sequence

import numpy as np
from numpy.typing import ArrayLike, NDArray

from tipsight import tables
from tipsight.afloat import freshwater
from tipsight.afloat.heave import stiffness_g_per_mm
from tipsight.errors import Mistake, Mistakes
from tipsight.inputs.case import Stock, Tip
from tipsight.load.bored import replaced
from tipsight.load.hull import HOOK_AND_BAIT_G, Hull
from tipsight.load.tips import (
    aloft_g,
    coat_mass_g_per_mm,
    painted_diameter_mm,
    stock_mass_g_per_mm,
)

Array = NDArray[np.float64]


def sink_force_g(
    painted_diameter_mm: ArrayLike, showing_mm: ArrayLike, temperature_c: ArrayLike = 10.0
) -> Array:
    """Return the force that just drowns the showing part, without the meniscus [gf].

    Painted diameter and length out of the water [mm] and water [deg C] broadcast; a dry top takes
    `bite.meniscus_g` more before it floods. Raises OutOfRange for water outside the range of its
    density.

    >>> round(float(sink_force_g(3.0, 31.75)), 4)
    0.2244
    """
    stiffness = stiffness_g_per_mm(painted_diameter_mm, temperature_c)
    return np.asarray(stiffness * np.asarray(showing_mm, dtype=float))


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
    """Return the pull that a float has left for shot, for many tips at once [gf], shape (D, S).

    Archimedes with the waterline at the foot of the showing part; the glued part takes the place of
    body or stem; hook and bait are taken off; no meniscus. Negative where the float sinks by
    itself. Raises OutOfRange if a diameter, the coats or the water are outside their ranges.

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


@tables.lately(512)
def pull_g(hull: Hull, tip: Tip, temperature_c: float = 10.0) -> float:
    """Return the pull in water that a float has left for shot with its tip showing as told [gf].

    Raises Mistakes if more of the tip is glued in than there is float, or the float sinks by itself;
    OutOfRange if the tip's diameter, its coats or the water [deg C] are outside their ranges. Whether
    it stands is another question: `balance.uprighting_g_mm`.

    >>> from tipsight.load import hull, patterns
    >>> float_ = hull.build(patterns.built("quill avon", "12 mm"))
    >>> round(pull_g(float_, patterns.pattern("quill avon").tip), 2)
    2.69
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
    return pull


def _refuse_no_room(hull: Hull, tip: Tip) -> None:
    long_mm = float(-hull.profile.z_mm[-1])
    if tip.glued_mm > long_mm:
        raise Mistakes(
            [
                Mistake(
                    "glued",
                    f"{tip.glued_mm:g} mm",
                    f"the whole float below the tip is only {long_mm:g} mm long: glue in less",
                    "5 mm",
                )
            ]
        )
