"""The choice: what may be asked of a tip here, and which of all that give it is the least."""

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from tipsight.sight import grades

Array = NDArray[np.float64]
Mask = NDArray[np.bool_]

NEAR_BEST = 0.85
"""Of the best level to be had, what is asked where the wish is out of reach (judgement)."""
NEAR_FORCE = 1.10
"""Sink forces within this of the least count alike (judgement)."""
AS_WELL = 0.85
"""Of those, the tips seen at least so well as the best of them are compared further (judgement)."""


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
    off_mm: Array
    """How far the stock's diameter is from that of the tip in hand, shape (stock,)."""


def best(fields: tuple[Field, ...]) -> float:
    """Return the best level of all that keep their limits, 0 where none does.

    Examples
    --------
    >>> best((_ONE,))
    7.0
    """
    tops = [np.max(f.level, where=f.allowed[..., None], initial=0.0) for f in fields]
    return float(max(tops, default=0.0))


def asked(wish: float, best_level: float) -> float:
    """Return the level that is asked of a tip where the best to be had has a level.

    min(wish, max(0.85 best, min(best, followed))): the wish where it can be had; short of it nearly
    the best, but what can be followed is never given up. It moves smoothly with the swim.

    Examples
    --------
    >>> asked(5.0, 9.0), round(asked(5.0, 4.0), 2), asked(5.0, 2.6), asked(5.0, 1.2)
    (5.0, 3.4, 2.4, 1.2)
    """
    followed = grades.wanted()[0]
    return min(wish, max(NEAR_BEST * best_level, min(best_level, followed)))


def ranked(fields: tuple[Field, ...], wanted: float, ceiling: int = 40) -> Iterator[Pick]:
    """Yield candidates that reach a level and keep all limits but sight, the choice first.

    The least sink force; of all within a tenth of it those seen at least 0.85 times as well as the
    best of them; then fewest bands, the better seen, least change of shot, the diameter nearest to
    the one in hand. What is chosen is taken away and the next chosen from the rest. Forces are
    compared to a hundredth of a milligram, so that equal sums stay equal.

    Examples
    --------
    >>> next(ranked((_ONE,), 5.0)).paints
    1
    """
    rows = []
    for n, field in enumerate(fields):
        i, j, k = np.nonzero((field.level >= wanted) & field.allowed[..., None])
        columns = (
            np.round(field.sink_force_g[i, j], 5),
            np.full(i.size, n),
            -field.level[i, j, k],
            np.round(np.abs(field.change_g[i, j]), 5),
            field.off_mm[i],
            i,
            j,
            k,
        )
        rows.append(np.column_stack(columns))
    table = np.concatenate(rows) if rows else np.empty((0, 8))
    for _ in range(ceiling):
        if not table.size:
            return
        near = np.flatnonzero(table[:, 0] <= NEAR_FORCE * table[:, 0].min())
        seen = -table[near, 2]
        near = near[seen >= AS_WELL * seen.max()]
        chosen = near[np.lexsort(table[near, 4:0:-1].T)[0]]
        yield _pick(fields, table[chosen])
        table = np.delete(table, chosen, axis=0)


def brightest(fields: tuple[Field, ...], ceiling: int = 40) -> Iterator[Pick]:
    """Yield those seen best of all that keep all limits but sight; the least force of equals.

    Examples
    --------
    >>> next(brightest((_ONE,))).level
    7.0
    """
    rows = []
    for n, field in enumerate(fields):
        level = np.where(field.allowed[..., None], field.level, -1.0)
        order = np.argpartition(-level, min(ceiling, level.size) - 1, axis=None)[:ceiling]
        i, j, k = np.unravel_index(order, level.shape)
        columns = (-level[i, j, k], field.sink_force_g[i, j], np.full(i.size, n), i, j, k)
        rows.append(np.column_stack(columns))
    table = np.concatenate(rows) if rows else np.empty((0, 6))
    table = table[table[:, 0] < 0]
    for row in table[np.lexsort(table[:, 1::-1].T)][:ceiling]:
        yield _pick(fields, row[[1, 2, 0, 0, 0, 3, 4, 5]])


def _pick(fields: tuple[Field, ...], row: Array) -> Pick:
    n, i, j, k = (int(row[c]) for c in (1, 5, 6, 7))
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


_ONE = Field(
    np.array([[[6.0, 7.0]]]),
    np.array([[0.1]]),
    np.array([[0.0]]),
    np.array([[True]]),
    np.array([0.0]),
)
"""One piece of stock of one length in two paints, for the examples."""
