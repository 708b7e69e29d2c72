"""Sight lines cast on a drawn sheet of water: which facet each point of the picture shows."""

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from tipsight.pictures.ripple import Sheet

Array = NDArray[np.float64]

SHIFT = 89
"""Columns by which a sheet is moved sideways each time it repeats; every other time it is mirrored too."""


@dataclass(frozen=True)
class Frame:
    """A picture in the upright plane through the tip; its foot stands at the middle, height 0.

    Lengths are those of the tip itself, so that a tip of 30 mm is 30 mm tall in it.
    """

    pixel_mm: float
    columns: int
    rows: int
    below_mm: float
    """How far the picture reaches below the foot of the tip."""

    @property
    def wide_mm(self) -> float:
        """Width of what it shows."""
        return self.columns * self.pixel_mm

    @property
    def tall_mm(self) -> float:
        """Height of what it shows."""
        return self.rows * self.pixel_mm

    def heights_mm(self, finer: int = 1) -> Array:
        """Return the heights of the rows' middles above the tip's foot, rising."""
        count = self.rows * finer
        return np.asarray((np.arange(count) + 0.5) * self.pixel_mm / finer - self.below_mm)

    def across_mm(self) -> Array:
        """Return the columns' middles, to the right of the tip."""
        return np.asarray((np.arange(self.columns) + 0.5 - self.columns / 2.0) * self.pixel_mm)


@dataclass(frozen=True, eq=False)
class Seen:
    """What the picture's rows show on each column of the sheet."""

    rise_away: Array
    rise_right: Array
    """Both of shape (rows, columns of the sheet)."""
    across_mm: Array
    """Where those columns stand to the right of the tip."""
    crest_mm: float
    """Height that the water at and before the tip covers of it."""


def cast(sheet: Sheet, slope_of_sight: float, frame: Frame, finer: int = 2) -> Seen:
    """Return the facets that a picture shows, from the lowest row up.

    Parameters
    ----------
    sheet : Sheet
        The water; where it does not reach as far as the picture, it repeats.
    slope_of_sight : float
        Fall of the line of sight, the tangent of the look-down [-], over 0.
    frame : Frame
        The picture.
    finer : int
        Rows cast for each row of the picture.

    Notes
    -----
    A point at distance x beyond the tip and height h stands at u = h + x tan(look-down) in the
    picture, and is seen where u is a running maximum from the viewer's side (lines of sight taken
    as parallel, which holds while the patch is short against the distance).

    Examples
    --------
    >>> flat = Sheet(np.zeros((900, 4)), np.zeros((900, 4)), np.zeros((900, 4)), 3.0, 300)
    >>> cast(flat, 0.05, Frame(1.0, 8, 40, 10.0)).crest_mm
    0.0
    """
    points, columns = sheet.height_mm.shape
    wanted = frame.heights_mm(finer)
    across = (np.arange(columns) - columns // 2) * sheet.step_mm
    chosen = np.flatnonzero(np.abs(across) <= 0.5 * frame.wide_mm + 2.0 * sheet.step_mm)
    low, high = float(sheet.height_mm.min()), float(sheet.height_mm.max())
    nearest = (float(wanted[0]) - high) / slope_of_sight / sheet.step_mm - 2.0
    farthest = (float(wanted[-1]) - low) / slope_of_sight / sheet.step_mm + 2.0
    before = max(0, math.ceil((-nearest - sheet.tip_row) / points))
    beyond = max(1, math.ceil((farthest + sheet.tip_row) / points))
    tip_row = sheet.tip_row + before * points
    lift = (np.arange((before + beyond) * points) - tip_row) * sheet.step_mm * slope_of_sight
    rounds = np.arange(-before, beyond)

    def stands(column: NDArray[np.intp] | int, times: NDArray[np.intp]) -> NDArray[np.intp]:
        """Return which column of the sheet stands there, when it repeats for that time."""
        moved = (column + times * SHIFT) % columns
        return np.asarray(np.where(times % 2, columns - 1 - moved, moved))

    after = np.empty((len(wanted), chosen.size), dtype=np.intp)
    share = np.empty(after.shape)
    for lane, column in enumerate(chosen):
        raised = sheet.height_mm[:, stands(int(column), rounds)].T.ravel() + lift
        found = np.searchsorted(np.maximum.accumulate(raised), wanted)
        found = np.clip(found, 1, raised.size - 1)
        start, end = raised[found - 1], raised[found]
        share[:, lane] = np.clip((wanted - start) / np.maximum(end - start, 1e-9), 0.0, 1.0)
        after[:, lane] = found

    def at(values: Array, row: NDArray[np.intp], turned: float) -> Array:
        times = rounds[row // points]
        found = values[row % points, stands(chosen, times)]
        return np.asarray(np.where(times % 2, turned * found, found))

    def between(values: Array, turned: float = 1.0) -> Array:
        first, then = at(values, after - 1, turned), at(values, after, turned)
        return np.asarray(first * (1.0 - share) + then * share)

    middle = sheet.height_mm[:, stands(columns // 2, rounds)].T.ravel()[: tip_row + 1]
    crest = float(np.max(middle + lift[: tip_row + 1]))
    return Seen(between(sheet.rise_away), between(sheet.rise_right, -1.0), across[chosen], crest)
