"""Which few of many serve most: exact, by mixed-integer linear programming on who serves what."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

Mask = NDArray[np.bool_]
Array = NDArray[np.float64]
Indices = NDArray[np.intp]

AS_LIGHT = 1.1
"""A float that wants no more than so many times the force to sink shows bites as light (judgement)."""
LONG_S = 60.0
"""After so long a search is broken off, and the gap that is left is told."""


@dataclass(frozen=True)
class Chosen:
    """A few that serve much."""

    which: tuple[int, ...]
    """The one that serves most first, then whatever adds most to those before it."""
    worth: float
    """Sum of the weights of what they serve."""
    adds: tuple[float, ...]
    """What each adds to those before it."""
    could_be: float
    """What no choice of as many goes beyond; as ``worth`` where the search came to its end."""


def undominated(serves: Mask) -> Indices:
    """Return which rows serve anything and are no part of another row, of equal rows the first.

    Examples
    --------
    >>> undominated(np.array([[1, 0, 0], [1, 1, 0], [0, 0, 1], [0, 0, 1], [0, 0, 0]], bool)).tolist()
    [1, 2]
    """
    bits = np.packbits(serves, axis=1)
    counts = serves.sum(axis=1)
    order = np.argsort(-counts, kind="stable")
    kept = np.empty((0, bits.shape[1]), dtype=np.uint8)
    found = []
    for row in order[counts[order] > 0]:
        if not ((kept & bits[row]) == bits[row]).all(axis=1).any():
            kept = np.vstack([kept, bits[row]])
            found.append(row)
    return np.sort(np.array(found, dtype=np.intp))


def worth(serves: Mask, weight: Array, which: tuple[int, ...]) -> float:
    """Return the sum of the weights of all that some rows serve."""
    return float(weight[serves[list(which)].any(axis=0)].sum()) if which else 0.0


def in_order(serves: Mask, weight: Array, which: tuple[int, ...], could_be: float) -> Chosen:
    """Return rows with the one that adds most first; those that add nothing are left out."""
    left, open_ = list(which), weight.astype(float).copy()
    order, adds = [], []
    while left:
        gains = serves[left] @ open_
        best = int(np.argmax(gains))
        if gains[best] <= 0.0:
            break
        row = left.pop(best)
        order.append(row)
        adds.append(float(gains[best]))
        open_[serves[row]] = 0.0
    return Chosen(tuple(order), float(sum(adds)), tuple(adds), could_be)


def most(serves: Mask, weight: Array, count: int, long_s: float = LONG_S) -> Chosen:
    """Return the rows, ``count`` at the most, that serve the greatest sum of weights.

    max sum w_s y_s with y_s <= sum of x_c over the rows that serve s, sum x_c <= count, x whole
    (maximal covering; Church and ReVelle 1974, from memory), by HiGHS in scipy.

    Parameters
    ----------
    serves : numpy.ndarray
        Which row serves what, shape (C, S).
    weight : numpy.ndarray
        Of each column, none below nothing, shape (S,).
    count : int
        How many rows may be taken.
    long_s : float
        When to break off [s].

    Returns
    -------
    Chosen
        An optimum, or the best that was found in time.

    Examples
    --------
    >>> three = np.array([[1, 1, 1, 1, 0, 0], [1, 1, 0, 0, 1, 0], [0, 0, 1, 1, 0, 1]], bool)
    >>> most(three, np.ones(6), 1).which, most(three, np.ones(6), 2).which
    ((0,), (1, 2))
    """
    from scipy.optimize import Bounds, LinearConstraint, milp
    from scipy.sparse import block_array, csr_array, eye_array

    rows, columns = undominated(serves), np.flatnonzero(serves.any(axis=0) & (weight > 0.0))
    if not rows.size or not columns.size or count < 1:
        return Chosen((), 0.0, (), 0.0)
    part = serves[np.ix_(rows, columns)]
    (c, s), total = part.shape, float(weight[columns].sum())
    # weights as shares of all, so that the solver's tolerances mean the same for any unit
    gain = weight[columns] / total
    served = block_array([[csr_array(-part.T.astype(float)), eye_array(s)]])
    few = csr_array(np.concatenate([np.ones(c), np.zeros(s)])[None, :])
    found = milp(
        np.concatenate([np.zeros(c), -gain]),
        integrality=np.concatenate([np.ones(c), np.zeros(s)]).astype(np.intp),
        bounds=Bounds(0.0, 1.0),
        constraints=[
            LinearConstraint(served, -np.inf, 0.0),
            LinearConstraint(few, 0.0, float(count)),
        ],
        options={"time_limit": long_s, "mip_rel_gap": 0.0},
    )
    if found.x is None:  # broken off before anything was found
        return _greedy(serves, weight, count, total)
    which = tuple(int(row) for row in rows[found.x[:c] > 0.5])
    bound = total * -float(found.mip_dual_bound)
    chosen = in_order(serves, weight, which, bound)
    ended = found.status == 0
    return Chosen(chosen.which, chosen.worth, chosen.adds, chosen.worth if ended else bound)


def _greedy(serves: Mask, weight: Array, count: int, bound: float) -> Chosen:
    whole = in_order(serves, weight, tuple(range(len(serves))), bound)
    adds = whole.adds[:count]
    return Chosen(whole.which[:count], float(sum(adds)), adds, bound)


def fewest(
    serves: Mask, weight: Array, long_s: float = LONG_S, force: Array | None = None
) -> tuple[Chosen, int]:
    """Return the fewest rows that serve all that any row serves, and how many it takes at least.

    min sum x_c (1 + f_c / 2F) with at least one row for each column that can be served, x whole,
    F the sum of all f (set covering; Karp 1972, from memory): the second term never comes to a
    whole row, so that of choices as few it takes the one that is sunk most easily.

    Parameters
    ----------
    serves : numpy.ndarray
        Which row serves what, shape (C, S).
    weight : numpy.ndarray
        Of each column, by which the rows are put in order, shape (S,).
    long_s : float
        When to break off [s].
    force : numpy.ndarray, optional
        What sinks each row, shape (C,) [gf]; without it any of the fewest will do.

    Returns
    -------
    tuple
        The rows, and the least count that was proved; the two agree where the search came to its
        end.

    Examples
    --------
    >>> three = np.array([[1, 1, 1, 1, 0, 0], [1, 1, 0, 0, 1, 0], [0, 0, 1, 1, 0, 1]], bool)
    >>> fewest(three, np.ones(6))[0].which
    (1, 2)
    """
    from scipy.optimize import Bounds, LinearConstraint, milp

    columns = np.flatnonzero(serves.any(axis=0))
    if not columns.size:
        return Chosen((), 0.0, (), 0.0), 0
    # of what is sunk more easily than another some may serve less, and still be the better choice
    rows = undominated(serves) if force is None else np.flatnonzero(serves.any(axis=1))
    part = serves[np.ix_(rows, columns)].astype(float)
    over = np.zeros(rows.size) if force is None else force[rows] / (2.0 * force[rows].sum())
    found = milp(
        1.0 + over,
        integrality=np.ones(rows.size, dtype=np.intp),
        bounds=Bounds(0.0, 1.0),
        constraints=LinearConstraint(part.T, 1.0, np.inf),
        options={"time_limit": long_s, "mip_rel_gap": 0.0},
    )
    # swims that are never fished are served all the same: they count for a trifle in the order
    counted = np.maximum(weight, 1e-9)
    if found.x is None:
        whole = _greedy(serves, counted, len(serves), float(counted.sum()))
        return whole, 1
    which = tuple(int(row) for row in rows[found.x > 0.5])
    least = int(np.ceil(float(found.mip_dual_bound) - (0.0 if force is None else 0.5) - 1e-6))
    return in_order(serves, counted, which, float(counted[columns].sum())), least


def spare(
    serves: Mask, force: Array | None = None, merits: Indices | None = None
) -> dict[int, int | None]:
    """Return each row that nothing needs, with one that serves all it serves; None if it serves none.

    Of equal rows the first is kept, and what stands in is itself no spare. Where ``force`` tells what
    sinks each, only one that is sunk as easily, within `AS_LIGHT`, may stand in; where ``merits``,
    shape (C, S, K), tell how good each is in each column, only one that is in no merit worse
    wherever the other serves.

    Examples
    --------
    >>> spare(np.array([[1, 0, 0], [1, 1, 0], [1, 1, 0], [0, 0, 0]], bool))
    {0: 1, 2: 1, 3: None}
    >>> spare(np.array([[1, 0], [1, 1]], bool), np.array([0.2, 0.5]))
    {}
    """
    sinks = np.zeros(len(serves)) if force is None else force
    good = np.where(serves[..., None], 0 if merits is None else merits, 0)
    kept: list[int] = []
    found: dict[int, int | None] = {}
    # what serves more, is better or is sunk more easily stands before what it may stand in for
    order = np.lexsort(
        (np.arange(len(serves)), sinks, -good.sum(axis=(1, 2)), -serves.sum(axis=1))
    )
    for row in order:
        if not serves[row].any():
            found[int(row)] = None
            continue
        as_good = serves[kept] & (good[kept] >= good[row]).all(axis=-1)
        over = np.flatnonzero(
            (as_good | ~serves[row]).all(axis=1) & (sinks[kept] <= AS_LIGHT * sinks[row])
        )
        if over.size:
            found[int(row)] = kept[int(over[0])]
        else:
            kept.append(int(row))
    return dict(sorted(found.items()))
