"""The drawn water's streaks, brought to the strength with which the answer reckons."""

from dataclasses import dataclass

import numpy as np
import scipy.fft
import scipy.ndimage
from numpy.typing import NDArray

from tipsight.sight.clutter import Clutter, spectra

Array = NDArray[np.float64]

ACROSS_PER_MM = np.array([0.0, 0.003, 0.006, 0.012, 0.024, 0.048])
"""Edges of the bands in which streaks are weighed, by frequency across the picture: from the
longest down to 20 mm; what is finer is grain."""
UP_PER_MM = np.array([0.0, 0.015, 0.03])
"""The same up the picture: what a tip of 30 mm and more passes."""
ENDS_PER_MM = 0.096, 0.06
"""Finer streaks than these, across and up, stay as they were cast."""
NOTHING = 1e-12
"""Share of the told power below which a band is taken as empty: rounding is no streak."""
ROUNDS = 5
"""The light of a facet stays above nothing, so its logarithm is changed, and that by steps."""


@dataclass(frozen=True, eq=False)
class Streaks:
    """How many times brighter each place is drawn than its facet alone would be."""

    factor: Array
    """From the lowest row up, shape (rows, columns)."""
    lowest_mm: float
    """Height of the first row above the tip's foot."""
    up_mm: float
    """Between rows."""
    leftmost_mm: float
    """Place of the first column, right of the tip."""
    across_mm: float
    """Between columns."""

    def at(self, heights_mm: Array, places_mm: Array) -> Array:
        """Return the factor at some heights and places, as a grid of them."""
        rows = (heights_mm - self.lowest_mm) / self.up_mm
        columns = (places_mm - self.leftmost_mm) / self.across_mm
        grid = np.meshgrid(rows, columns, indexing="ij")
        return np.asarray(
            scipy.ndimage.map_coordinates(self.factor, grid, order=1, mode="nearest")
        )


def _bands(values: Array, edges: Array) -> tuple[NDArray[np.intp], Array]:
    """Return the band of each frequency, and its place counted in middles of bands."""
    which = np.searchsorted(edges, values, side="right") - 1
    # the first band starts at nothing, which has no logarithm
    middles = np.sqrt(np.maximum(edges[:-1], 0.25 * edges[1:]) * edges[1:])
    count = np.arange(middles.size, dtype=float)
    return which, np.interp(np.log(np.maximum(values, 1e-9)), np.log(middles), count)


def factor(
    luminance: Array, up_mm: float, across_mm: float, mean: float, clutter: Clutter
) -> Array:
    """Return what to multiply a drawn water by, so that its streaks are those of the answer.

    Parameters
    ----------
    luminance : numpy.ndarray
        As cast, over 0, shape (rows, columns); any unit.
    up_mm, across_mm : float
        Between its rows and columns [mm].
    mean : float
        Luminance that contrast is counted against, in the same unit.
    clutter : Clutter
        The streaks that the answer reckons with.

    Returns
    -------
    numpy.ndarray
        Of the same shape, over 0; the mean luminance stays what it was.

    Notes
    -----
    A cast has the facets' contrast, but its longest streaks hold a quarter to two thirds of the
    power of `clutter.spectra` on open water, and once to twice as much under a bank. Therefore
    each band's power, taken by a cosine transform, is brought to that of the spectrum.
    """
    (rows, columns), (end_across, end_up) = luminance.shape, ENDS_PER_MM
    up = np.arange(rows) / (2.0 * rows * up_mm)
    across = np.arange(columns) / (2.0 * columns * across_mm)
    row, row_place = _bands(up, UP_PER_MM)
    column, column_place = _bands(across, ACROSS_PER_MM)
    shape = UP_PER_MM.size - 1, ACROSS_PER_MM.size - 1
    held = np.ix_(row < shape[0], column < shape[1])
    band = (row[:, None] * shape[1] + column)[held].ravel()

    def sums(power: Array) -> Array:
        power[0, 0] = 0.0
        found = np.bincount(band, power[held].ravel(), shape[0] * shape[1])
        return np.asarray(found, dtype=float).reshape(shape)

    told = sums(np.tile(spectra([clutter], across[None, :]), (rows, 1)))
    to_mm2 = up_mm * across_mm / mean**2
    places = np.meshgrid(row_place, column_place, indexing="ij")
    fade = np.outer(
        np.clip((end_up - up) / (end_up - UP_PER_MM[-1]), 0.0, 1.0),
        np.clip((end_across - across) / (end_across - ACROSS_PER_MM[-1]), 0.0, 1.0),
    )
    waves = scipy.fft.dctn(np.log(luminance), norm="ortho")
    gain, drawn = np.zeros(shape), luminance
    for _ in range(ROUNDS):
        found = sums(scipy.fft.dctn(drawn, norm="ortho") ** 2 * to_mm2)
        known = (told > 0.0) & (found > NOTHING * told)
        gain[known] += 0.5 * np.log(told[known] / found[known])
        passed = fade * scipy.ndimage.map_coordinates(gain, places, order=1, mode="nearest")
        passed[0, 0] = 0.0
        drawn = np.exp(scipy.fft.idctn(waves * np.exp(passed), norm="ortho"))
        drawn *= luminance.mean() / drawn.mean()
    return np.asarray(drawn / luminance)
