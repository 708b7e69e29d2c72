"""Sight lines cast on a drawn sheet of water: which facet each point of the picture shows."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from tipsight.pictures.ripple import Sheet

Array = NDArray[np.float64]


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
        return (np.arange(count) + 0.5) * self.pixel_mm / finer - self.below_mm

    def across_mm(self) -> Array:
        """Return the columns' middles, to the right of the tip."""
        return (np.arange(self.columns) + 0.5 - self.columns / 2.0) * self.pixel_mm


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
    """Return the facets that a picture shows.

    Parameters
    ----------
    sheet : Sheet
        The water; it must reach as far as the picture.
    slope_of_sight : float
        Fall of the line of sight, the tangent of the look-down [-], over 0.
    frame : Frame
        The picture.
    finer : int
        Rows cast for each row of the picture.

    Returns
    -------
    Seen
        Facets, from the lowest row up.

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
    x = (np.arange(points) - sheet.tip_row) * sheet.step_mm
    wanted = frame.heights_mm(finer)
    across = (np.arange(columns) - columns // 2) * sheet.step_mm
    keep = np.abs(across) <= 0.5 * frame.wide_mm + 2.0 * sheet.step_mm
    raised = sheet.height_mm[:, keep] + (x * slope_of_sight)[:, None]
    top = np.maximum.accumulate(raised, axis=0)
    chosen = np.flatnonzero(keep)
    found = np.empty((len(wanted), chosen.size), dtype=np.intp)
    for column in range(chosen.size):
        found[:, column] = np.searchsorted(top[:, column], wanted)
    after = np.clip(found, 1, points - 1)
    lane = np.arange(chosen.size)[None, :]
    low, high = raised[after - 1, lane], raised[after, lane]
    share = np.clip((wanted[:, None] - low) / np.maximum(high - low, 1e-9), 0.0, 1.0)

    def between(values: Array) -> Array:
        kept = values[:, keep]
        return np.asarray(kept[after - 1, lane] * (1.0 - share) + kept[after, lane] * share)

    middle = columns // 2
    crest = float(np.max(sheet.height_mm[: sheet.tip_row + 1, middle]
                         + x[: sheet.tip_row + 1] * slope_of_sight))
    return Seen(between(sheet.rise_away), between(sheet.rise_right), across[keep], crest)
