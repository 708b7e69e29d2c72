"""What slices of a float weigh, and what is bored out of them for a tip."""

from functools import lru_cache

import numpy as np
from numpy.typing import ArrayLike, NDArray

from tipsight.load.solid import Solid

Array = NDArray[np.float64]
CELL_MM = 0.25
"""Depth step of what is bored out."""


def frustum_mm3(height_mm: Array, top_r_mm: Array, foot_r_mm: Array) -> Array:
    """Return the volume of frusta from their height and end radii [mm], broadcast [mm3].

    pi h / 3 (r0^2 + r0 r1 + r1^2); exact (E. W. Weisstein, "Conical Frustum", MathWorld).

    >>> round(float(frustum_mm3(np.array(3.0), np.array(1.0), np.array(1.0))), 4)
    9.4248
    """
    squares = top_r_mm**2 + top_r_mm * foot_r_mm + foot_r_mm**2
    return np.asarray(np.pi / 3.0 * height_mm * squares)


def frustum_centroid_share(top_r_mm: Array, foot_r_mm: Array) -> Array:
    """Return how far below its upper end a frustum's centroid lies, as a share of its height [-].

    (r0^2 + 2 r0 r1 + 3 r1^2) / (4 (r0^2 + r0 r1 + r1^2)); exact (E. W. Weisstein, "Conical
    Frustum", MathWorld, there from the other end). Radii broadcast, not both nothing.

    >>> float(frustum_centroid_share(np.array(0.0), np.array(1.0)))
    0.75
    """
    squares = top_r_mm**2 + top_r_mm * foot_r_mm + foot_r_mm**2
    moment = top_r_mm**2 + 2.0 * top_r_mm * foot_r_mm + 3.0 * foot_r_mm**2
    return np.asarray(moment / (4.0 * squares))


def masses_g(slices: Solid) -> tuple[Array, Array]:
    """Return mass [g] and height [mm, negative] of each slice's two materials, (2, slices).

    The outer material first, then the core.

    >>> from tipsight.inputs.case import Part
    >>> from tipsight.load.solid import solid
    >>> mass, z = masses_g(solid([Part("stem", "cylinder", "balsa", 100, 10, 10),
    ...     Part("body", "cylinder", "balsa", 1, 10, 10)]))
    >>> round(float(mass[0, 0]), 4), float(z[0, 0])
    (1.0996, -50.0)
    """
    height = slices.top_z_mm - slices.foot_z_mm
    whole = frustum_mm3(height, slices.top_r_mm, slices.foot_r_mm)
    middle = 0.5 * (slices.top_z_mm + slices.foot_z_mm)
    whole_z = slices.top_z_mm - height * frustum_centroid_share(slices.top_r_mm, slices.foot_r_mm)
    inner = np.pi * height * slices.core_r_mm**2
    outer = whole - inner
    outer_z = np.where(
        outer > 0.0, (whole * whole_z - inner * middle) / np.maximum(outer, 1e-12), middle
    )
    core = np.pi * height * (slices.core_r_mm**2 - slices.bore_r_mm**2)
    mass = np.array([outer * slices.outer_kg_m3, core * slices.core_kg_m3]) * 1e-6
    return mass, np.array([outer_z, middle])


def replaced(slices: Solid, diameter_mm: ArrayLike, glued_mm: ArrayLike) -> tuple[Array, Array]:
    """Return what a glued tip takes the place of [g], and how much of it stands out [mm3].

    The first is the body (and stem) bored out, the second the volume of the glued part outside a
    body narrower than the tip. Tip's diameter and its length inside the body [mm] broadcast.

    >>> from tipsight.inputs.case import Part
    >>> from tipsight.load.solid import solid
    >>> gone, proud = replaced(solid([Part("body", "cylinder", "balsa", 100, 10, 10)]), 5.0, 10.0)
    >>> round(float(gone), 5), float(proud)
    (0.02749, 0.0)
    """
    if np.ndim(diameter_mm) == np.ndim(glued_mm) == 0:
        return _replaced_by_one(
            slices, float(np.asarray(diameter_mm)), float(np.asarray(glued_mm))
        )
    return _replaced(slices, diameter_mm, glued_mm)


@lru_cache(maxsize=512)
def _replaced_by_one(slices: Solid, diameter_mm: float, glued_mm: float) -> tuple[Array, Array]:
    """Return the same for one tip, which is asked about many times over."""
    return _replaced(slices, diameter_mm, glued_mm)


def _replaced(slices: Solid, diameter_mm: ArrayLike, glued_mm: ArrayLike) -> tuple[Array, Array]:
    diameter, glued = np.broadcast_arrays(
        np.asarray(diameter_mm, dtype=float), np.asarray(glued_mm, dtype=float)
    )
    sizes, which = np.unique(diameter, return_inverse=True)
    mass, proud = _along_mm(slices, sizes / 2.0, float(glued.max()))
    cell = glued / CELL_MM
    before = np.minimum(cell.astype(np.int64), mass.shape[1] - 2)
    rest = cell - before
    row = which.reshape(diameter.shape)
    mass_g, proud_mm3 = (
        table[row, before] + rest * (table[row, before + 1] - table[row, before])
        for table in (mass, proud)
    )
    return np.asarray(mass_g), np.asarray(proud_mm3)


def _along_mm(slices: Solid, radius_mm: Array, to_mm: float) -> tuple[Array, Array]:
    """Return what `replaced` does, from the top down to each cell; one row a radius."""
    cells = int(np.ceil(to_mm / CELL_MM)) + 1
    depth = CELL_MM * (np.arange(cells) + 0.5)
    at = np.searchsorted(-slices.foot_z_mm, depth, side="right")
    at = np.minimum(at, slices.foot_z_mm.size - 1)
    top, foot = slices.top_z_mm[at], slices.foot_z_mm[at]
    share = np.minimum((top + depth) / (top - foot), 1.0)
    outer = slices.top_r_mm[at] + share * (slices.foot_r_mm[at] - slices.top_r_mm[at])
    core, bore = slices.core_r_mm[at], slices.bore_r_mm[at]
    inside = np.minimum(radius_mm[:, np.newaxis], outer)
    ring = np.maximum(inside, core) ** 2 - core**2
    middle = np.maximum(np.minimum(inside, core) ** 2 - bore**2, 0.0)
    mass = ring * slices.outer_kg_m3[at] + middle * slices.core_kg_m3[at]
    proud = np.maximum(radius_mm[:, np.newaxis] ** 2 - outer**2, 0.0)
    start = np.zeros((radius_mm.size, 1))
    running = (
        np.concatenate([start, np.cumsum(CELL_MM * np.pi * each, axis=1)], axis=1)
        for each in (mass * 1e-6, proud)
    )
    mass_g, proud_mm3 = running
    return mass_g, proud_mm3
