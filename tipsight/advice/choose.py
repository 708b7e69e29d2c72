"""The choice: least sink force, then least change in shot, then fewest bands."""

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

Array = NDArray[np.float64]
Mask = NDArray[np.bool_]


@dataclass(frozen=True)
class Pick:
    """One candidate: its stock, its set of edges, its paints, and in which group of schemes."""

    scheme: int
    stock: int
    edges: int
    paints: int
    level: float
    sink_force_g: float
    change_g: float


@dataclass(frozen=True)
class Field:
    """All candidates with the same number of bands, with what the choice looks at."""

    level: Array
    """Worst of the waters, shape (stock, edges, paints)."""
    sink_force_g: Array
    """Shape (stock, edges)."""
    change_g: Array
    """Shot on or off, whichever, shape (stock, edges)."""
    allowed: Mask
    """All limits but sight, shape (stock, edges)."""


def ranked(fields: tuple[Field, ...], wanted: float, ceiling: int = 40) -> Iterator[Pick]:
    """Yield candidates that reach the wanted level, best first.

    Parameters
    ----------
    fields : tuple of Field
        One for each number of bands, fewest first.
    wanted : float
        Level to be reached [-].
    ceiling : int
        How many to yield at the most.

    Yields
    ------
    Pick
        In the order of sink force, change in shot, bands, and the higher level.

    Notes
    -----
    Forces and shot are compared to a hundredth of a milligram, so that equal sums stay equal.

    Examples
    --------
    >>> one = Field(np.array([[[6.0, 7.0]]]), *np.array([[[0.1]], [[0.0]]]), np.array([[True]]))
    >>> next(ranked((one,), 5.0)).paints
    1
    """
    rows = []
    for n, field in enumerate(fields):
        good = (field.level >= wanted) & field.allowed[..., None]
        i, j, k = np.nonzero(good)
        rows.append(
            np.column_stack(
                [
                    np.round(field.sink_force_g[i, j], 5),
                    np.round(np.abs(field.change_g[i, j]), 5),
                    np.full(i.size, n),
                    -field.level[i, j, k],
                    i,
                    j,
                    k,
                ]
            )
        )
    table = np.concatenate(rows) if rows else np.empty((0, 7))
    if table.shape[0] > ceiling:  # only the least sink forces can come first
        cut = np.partition(table[:, 0], ceiling - 1)[ceiling - 1]
        table = table[table[:, 0] <= cut]
    order = np.lexsort(table[:, 3::-1].T)[:ceiling]
    for row in table[order]:
        yield _pick(fields, row)


def brightest(fields: tuple[Field, ...], ceiling: int = 40) -> Iterator[Pick]:
    """Yield the candidates seen best among those that keep all limits but sight.

    Parameters
    ----------
    fields : tuple of Field
        One for each number of bands.
    ceiling : int
        How many to yield at the most.

    Yields
    ------
    Pick
        The best seen first; of those seen alike, the least sink force.

    Examples
    --------
    >>> one = Field(np.array([[[6.0, 7.0]]]), *np.array([[[0.1]], [[0.0]]]), np.array([[True]]))
    >>> next(brightest((one,))).level
    7.0
    """
    rows = []
    for n, field in enumerate(fields):
        level = np.where(field.allowed[..., None], field.level, -1.0)
        order = np.argpartition(-level, min(ceiling, level.size) - 1, axis=None)[:ceiling]
        i, j, k = np.unravel_index(order, level.shape)
        rows.append(
            np.column_stack(
                [-level[i, j, k], field.sink_force_g[i, j], np.full(i.size, n), i, i, j, k]
            )
        )
    table = np.concatenate(rows) if rows else np.empty((0, 7))
    table = table[table[:, 0] < 0]
    for row in table[np.lexsort(table[:, 1::-1].T)][:ceiling]:
        yield _pick(fields, row)


def _pick(fields: tuple[Field, ...], row: Array) -> Pick:
    n, i, j, k = (int(row[c]) for c in (2, 4, 5, 6))
    field = fields[n]
    return Pick(
        n,
        i,
        j,
        k,
        float(field.level[i, j, k]),
        float(field.sink_force_g[i, j]),
        float(field.change_g[i, j]),
    )
