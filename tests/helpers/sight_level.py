"""How well single tips are seen at one place, as the tests of several rooms ask for it."""

import numpy as np

from tipsight.sight import kernel


def level_parts(diameter_mm, edges_mm, contrast, *, range_m, adaptation_cd_m2, eye, clutter=None):
    """Return the level by luminance and by colour of tips (...), one place for all of them."""
    held = kernel.kernels(range_m, adaptation_cd_m2, eye, clutter)
    width, edges, seen = (np.asarray(x, dtype=float) for x in (diameter_mm, edges_mm, contrast))
    grey, colour = kernel.level_parts(
        held, diameter_mm=width[..., None], edges_mm=edges[..., None, :],
        contrast=seen[..., None, :, :],
    )  # fmt: skip
    return grey[..., 0], colour[..., 0]


def visibility_level(*tip, **seen):
    """Return the whole level of the same."""
    return np.hypot(*level_parts(*tip, **seen))


def level_grid(diameter_mm, edges_mm, contrast, *, clutter=None, eye, **place):
    """Return the level of every diameter, set of edges and paint scheme at one place."""
    held = kernel.kernels(place["range_m"], place["adaptation_cd_m2"], eye, clutter)
    return kernel.level_grid(held, diameter_mm=diameter_mm, edges_mm=edges_mm, contrast=contrast)
