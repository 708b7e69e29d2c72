"""Every tip worth a thought: all stock, all lengths, all ways to divide it between the paints."""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from tipsight.inputs.case import Band
from tipsight.sight.energy import MM_PER_ARCMIN_M

Array = NDArray[np.float64]

LEAST_BAND_MM = 5.0
LEAST_BAND_ARCMIN = 1.0
DIVISIONS: tuple[tuple[float, ...], ...] = ((), (1 / 2,), (1 / 3,), (2 / 3,))
"""Where bands meet, as shares of the showing part from the top (judgement)."""


def showing_lengths_mm(longest_mm: float) -> Array:
    """Return the lengths that a person would measure out: 1 mm steps under 15, then 5 mm.

    Examples
    --------
    >>> showing_lengths_mm(25)[-4:]
    array([14., 15., 20., 25.])
    """
    lengths = np.concatenate([np.arange(2.0, 15.0), np.arange(15.0, longest_mm + 1e-9, 5.0)])
    return lengths[lengths <= longest_mm]


@dataclass(frozen=True)
class Schemes:
    """All tips with the same number of bands: their edges and their paints, to be combined."""

    showing_index: NDArray[np.intp]
    """Which showing length each set of edges has, shape (S,)."""
    edges_mm: Array
    """Above the waterline, rising, shape (S, n + 1)."""
    paints: NDArray[np.intp]
    """Finish of each band from the foot up, shape (P, n)."""

    @property
    def bands(self) -> int:
        """Number of bands."""
        return int(self.paints.shape[1])


def pairings(families: Sequence[str], black: int | None) -> list[tuple[int, int]]:
    """Return which finishes may stand over each other: black with one other, either way up.

    Two of one family do not stand out from each other, and red goes black at a distance, so that
    it is in no pair (judgement).

    Examples
    --------
    >>> pairings(["dark", "pale", "red", "dark"], black=0)
    [(0, 1), (1, 0)]
    """
    if black is None:
        return []
    others = [i for i, family in enumerate(families) if family not in ("dark", "red")]
    return [pair for other in others for pair in ((black, other), (other, black))]


def schemes(
    showing_mm: Array, singles: Sequence[int], pairs: Sequence[tuple[int, int]], range_m: float
) -> tuple[tuple[Schemes, ...], int]:
    """Return all band schemes, and how many were left out because a band would be too small.

    ``showing_mm`` are the lengths out of the water [mm], ``singles`` and ``pairs`` the finishes that
    may stand alone or together; a band must span an arc minute at ``range_m`` [m].

    Examples
    --------
    >>> found, left_out = schemes(np.array([10.0, 30.0]), [0, 1], [(0, 1)], 36.0)
    >>> [s.bands for s in found], left_out
    ([1, 2], 5)
    """
    least = max(LEAST_BAND_MM, LEAST_BAND_ARCMIN * MM_PER_ARCMIN_M * range_m)
    out, left_out = [], 0
    for n, paints in ((1, [(one,) for one in singles]), (2, list(pairs))):
        index, edges = [], []
        for cuts in (c for c in DIVISIONS if len(c) == n - 1):
            shares = np.array([0.0, *(1 - c for c in reversed(cuts)), 1.0])
            for i, length in enumerate(showing_mm):
                heights = shares * length
                if n > 1 and np.diff(heights).min() < least - 1e-9:
                    left_out += 1
                    continue
                index.append(i)
                edges.append(heights)
        if index and paints:
            out.append(Schemes(np.array(index), np.array(edges), np.array(paints)))
    return tuple(out), left_out


def bands_of(names: list[str], edges_mm: Array) -> tuple[Band, ...]:
    """Return bands from the top down for paints and edges given from the foot up.

    Examples
    --------
    >>> bands_of(["orange", "black"], np.array([0.0, 10.0, 30.0]))[0]
    Band(paint='black', from_top_mm=0.0, to_top_mm=20.0)
    """
    tops = edges_mm[-1] - edges_mm
    return tuple(
        Band(names[i], float(tops[i + 1]), float(tops[i])) for i in reversed(range(len(names)))
    )
