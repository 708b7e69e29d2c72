"""The best shot for a load, exactly: every way of it is weighed, by sums that leave none out.

Droppers and trims are few, so all ways of them are listed, as rows of counts. For each, only the
best bulk that still fits matters: the fewest pieces that make each possible sum are found once for
the whole bulk, and looked up.
"""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache, reduce
from itertools import combinations_with_replacement
from math import gcd

import numpy as np
from numpy.typing import NDArray

Array = NDArray[np.float64]
Ints = NDArray[np.int64]
Fewest = NDArray[np.int32]
Trace = list[tuple[int, int, NDArray[np.uint8]]]
"""Size, pieces in the bundle, and a bit for each sum that is better with the bundle."""
GRAIN_MG = 0.1
"""Masses in air are told apart to a tenth of a milligram."""
MOST_SUMS = 50_000
"""Sums of the bulk that are told apart; 5 g to a tenth of a milligram (judgement)."""
BULK_COST_MG, DROPPER_COST_MG, TRIM_COST_MG = 0.5, 0.5, 1.5
"""What one more shot is worth, in milligrams of pull left unused."""
_MANY = 10**6


@dataclass(frozen=True)
class Size:
    """One size of shot as the sums take it."""

    mass_g: float
    share: float
    """Part of its weight that it keeps in water."""
    count: int | None
    bulk: bool
    dropper: bool
    trim: bool


@dataclass(frozen=True)
class Rule:
    """What a pattern of shot asks for."""

    bulk_low: float
    bulk_high: float
    """Pull of the bulk as a share of the load."""
    droppers_low: int
    droppers_high: int
    trims_high: int


@dataclass(frozen=True)
class Best:
    """Counts of each size in each place, and their cost."""

    bulk: tuple[int, ...]
    droppers: tuple[int, ...]
    trims: tuple[int, ...]
    cost_mg: float


@lru_cache(maxsize=16)
def _ways(allowed: tuple[bool, ...], low: int, high: int) -> Ints:
    """Return every way of taking ``low`` to ``high`` pieces, as rows of counts."""
    columns = [i for i, yes in enumerate(allowed) if yes]
    picks = [
        pick
        for count in range(low, high + 1)
        for pick in combinations_with_replacement(columns, count)
    ]
    counts = np.zeros((len(picks), len(allowed)), dtype=np.int64)
    for row, pick in enumerate(picks):
        np.add.at(counts[row], list(pick), 1)
    counts.setflags(write=False)
    return counts


def _pull_mg(size: Size) -> float:
    return round(size.mass_g * 1e3 / GRAIN_MG) * GRAIN_MG * size.share


@lru_cache(maxsize=1)
def _light(
    sizes: tuple[Size | None, ...], load_mg: float, rule: Rule
) -> tuple[Ints, Ints, Array, Array]:
    """Return all droppers, all trims, and of each pair its pull and its cost before any bulk."""
    pulls_mg = np.array([0.0 if s is None else _pull_mg(s) for s in sizes])
    droppers = _ways(
        tuple(s is not None and s.dropper for s in sizes), rule.droppers_low, rule.droppers_high
    )
    trims = _ways(tuple(s is not None and s.trim for s in sizes), 0, rule.trims_high)
    light_mg = (droppers @ pulls_mg)[:, np.newaxis] + (trims @ pulls_mg)[np.newaxis, :]
    pieces = (
        DROPPER_COST_MG * droppers.sum(axis=1)[:, np.newaxis]
        + TRIM_COST_MG * trims.sum(axis=1)[np.newaxis, :]
    )
    cost = load_mg - light_mg + pieces  # bulk then lowers it by its pull, see `gain`
    for i, size in enumerate(sizes):
        if size is not None and size.count is not None:
            used = droppers[:, i, np.newaxis] + trims[np.newaxis, :, i]
            cost = np.where(used <= size.count, cost, np.inf)
    for array in (light_mg, cost):
        array.setflags(write=False)
    return droppers, trims, light_mg, cost


def _with(index: int, grain: int, limit: int, fewest: Fewest, trace: Trace) -> None:
    """Offer one more size to the fewest pieces that make each sum."""
    # Bounded change-making by binary splitting: a size with limit c is offered as bundles of 1, 2,
    # 4 ... and the rest, which make every count from 0 to c in log2 c steps.
    left, bundle = min(limit, (fewest.size - 1) // grain), 1
    while left > 0:
        bundle = min(bundle, left)
        taken = fewest[: fewest.size - bundle * grain] + np.int32(bundle)
        better = taken < fewest[bundle * grain :]
        np.copyto(fewest[bundle * grain :], taken, where=better)
        trace.append((index, bundle, np.packbits(better)))
        left -= bundle
        bundle *= 2


@lru_cache(maxsize=1)
def _common(grains: tuple[int, ...], limits: tuple[int, ...], top: int) -> tuple[Fewest, Trace]:
    """Return the fewest pieces of those sizes that all tables of one load have in common."""
    fewest, trace = np.full(top + 1, _MANY, dtype=np.int32), Trace()
    fewest[0] = 0
    for index, (grain, limit) in enumerate(zip(grains, limits, strict=True)):
        _with(index, grain, limit, fewest, trace)
    fewest.setflags(write=False)
    return fewest, trace


def _fewest(
    grains: tuple[int, ...], limits: tuple[int, ...], top: int, shared: int
) -> tuple[Fewest, Trace]:
    """Return the fewest pieces that make each sum up to ``top``, and how to trace them."""
    common, trace = _common(grains[:shared], limits[:shared], top)
    fewest, trace = common.copy(), trace.copy()
    for index in range(shared, len(grains)):
        _with(index, grains[index], limits[index], fewest, trace)
    return fewest, trace


def _traced(total: int, trace: Trace, grains: Sequence[int]) -> list[int]:
    counts = [0] * len(grains)
    for index, bundle, better in reversed(trace):
        before = total - bundle * grains[index]
        if before >= 0 and better[before // 8] >> (7 - before % 8) & 1:
            counts[index] += bundle
            total = before
    return counts


def best(
    load_g: float, sizes: Sequence[Size], rule: Rule, under_mg: float = math.inf
) -> Best | None:
    """Return the counts that come nearest under a load [gf] with the fewest shot; None if none do.

    Only what costs less than ``under_mg``, the cost of another choice, is looked for.

    Least of pull left [mg] + 0.5 a bulk shot or dropper + 1.5 a trim, never over-shot, over all
    ways that keep the rule: droppers and trims by enumeration, the bulk by bounded change-making
    (dynamic programming) on the common grain of the masses; bulk of mixed metals is told apart to
    0.1 mg of pull. Weights of the cost are judgement.

    >>> bb = Size(0.4, 0.8629, None, True, False, False)
    >>> no8 = Size(0.06, 0.8629, None, False, True, True)
    >>> best(1.6, [bb, no8], Rule(0.7, 0.92, 2, 4, 3)).bulk
    (4, 0)
    """
    # In whole grains a sum is an index, and sums of pulls are told apart without rounding.
    pulls_mg = [_pull_mg(s) for s in sizes]
    # Last comes what there may be less of, and what there is one of: a table is made anew only from
    # there on, for what light shot takes and for another olivette.
    few = [s.count is not None and (s.count == 1 or s.dropper or s.trim) for s in sizes]
    bulk_index = sorted((i for i, s in enumerate(sizes) if s.bulk), key=few.__getitem__)
    if not bulk_index:
        return None
    shared = sum(not few[i] for i in bulk_index)
    shares = {sizes[i].share for i in bulk_index}
    # Of one metal, masses in air share a coarse grain (0.01 g); mixed metals have only that of pull.
    share = shares.pop() if len(shares) == 1 else 1.0
    grains = [max(1, round(pulls_mg[i] / share / GRAIN_MG)) for i in bulk_index]
    unit = reduce(gcd, grains)
    load_mg = load_g * 1e3
    # Weights told to the last digit make a fine grain; under a heavy load it is made coarser, and
    # each mass rounded up, so that the float is never over-shot.
    coarser = math.ceil(rule.bulk_high * load_mg / (unit * GRAIN_MG * share) / MOST_SUMS)
    unit *= max(coarser, 1)
    whole_grains = tuple(-(-grain // unit) for grain in grains)
    pull_mg = unit * GRAIN_MG * share
    top = int(np.floor(rule.bulk_high * load_mg / pull_mg + 1e-9))
    low = int(np.ceil(rule.bulk_low * load_mg / pull_mg - 1e-9))
    light = tuple(replace(s, bulk=False) if s.dropper or s.trim else None for s in sizes)
    droppers, trims, light_mg, cost = _light(light, load_mg, rule)
    if not len(droppers) or low > top:
        return None
    limits = np.array([_MANY if s.count is None else s.count for s in sizes])
    # The heaviest bulk that each leaves room for, in units; 1e-9 keeps an exact fit.
    room = np.floor((load_mg - light_mg) / pull_mg + 1e-9).astype(np.int64)
    room = np.where(np.isfinite(cost), np.minimum(room, top), -1)

    tables: dict[tuple[int, ...], tuple[Array, Array, Trace]] = {}

    def bulk_for(left: tuple[int, ...]) -> tuple[Array, Array, Trace]:
        """Return gain and least gain of each sum of bulk that keeps the rule, and its trace."""
        if left in tables:
            return tables[left]
        fewest, trace = _fewest(whole_grains, left, top, shared)
        gain = BULK_COST_MG * fewest[low:] - pull_mg * np.arange(low, top + 1)
        gain[fewest[low:] >= _MANY] = np.inf
        tables[left] = gain, np.minimum.accumulate(gain), trace
        return tables[left]

    # Where the box has few of a size, droppers and trims take from the bulk, and each way needs a
    # table of its own. With all of the box left for the bulk the cost can only be lower, so ways are
    # tried in the order of that bound, and none beyond the best cost found needs its table.
    whole = tuple(int(limits[i]) for i in bulk_index)
    bound = np.where(room >= low, cost + bulk_for(whole)[1][np.maximum(room - low, 0)], np.inf)
    found: Best | None = None

    def by_bound() -> Iterator[int]:
        """Yield the least bound, and only where that is not the cost itself, the others."""
        flat = bound.ravel()
        yield (first := int(np.argmin(flat)))
        close = np.flatnonzero(flat < under_mg - 1e-9)
        yield from (
            i for i in close[np.argsort(flat[close], kind="stable")].tolist() if i != first
        )

    for at in by_bound():
        d, t = divmod(at, bound.shape[1])
        if not bound[d, t] < under_mg - 1e-9:
            break
        taken = droppers[d] + trims[t]
        left = tuple(int(limits[i] - taken[i]) if limits[i] < _MANY else _MANY for i in bulk_index)
        # the table of the whole box will do where its bulk leaves enough
        for box in (left,) if left in tables else (whole, left):
            gain, least, trace = bulk_for(box)
            total_mg = float(cost[d, t] + least[room[d, t] - low])
            if not total_mg < under_mg - 1e-9:
                break
            total = low + int(np.argmin(gain[: room[d, t] - low + 1]))
            bulk = _traced(total, trace, whole_grains)
            if all(used <= most for used, most in zip(bulk, left, strict=True)):
                break
        if not total_mg < under_mg - 1e-9:
            continue
        under_mg = total_mg
        counts = [0] * len(sizes)
        for number, count in zip(bulk_index, bulk, strict=True):
            counts[number] = count
        found = Best(
            tuple(counts),
            tuple(int(n) for n in droppers[d]),
            tuple(int(n) for n in trims[t]),
            total_mg,
        )
    return found
