"""The shot on the line, and the fewest pieces of it to touch for another load.

To move shot along the line alters no load, so a change is what comes off and what goes on.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import cached_property, lru_cache

import numpy as np
from numpy.typing import NDArray

from tipsight import tables
from tipsight.inputs.case import Fixing, Hung, Shot
from tipsight.load import plan
from tipsight.load.shot import is_olivette

Array = NDArray[np.float64]
Counts = NDArray[np.int64]

NEAR_MM = 2.0
"""How much more of the tip than asked may show: nobody sets it nearer (judgement)."""
LOSS = 0.5
"""Where none comes so near, fewer pieces stand before a loss of this share of it (judgement)."""
MOST_ON = 4
"""Pieces put on in any mixture; beyond, runs of the heaviest with two others (judgement)."""
MOST_RUN = 40
MANY_SIZES = 20
"""With more sizes to choose from, as olivettes are, a piece fewer in a mixture is tried."""
MOST_WAYS = 20_000
"""Ways to take shot off that are tried; of more, those of the fewest pieces, and the heaviest off."""
HEAVIER = 1.5
"""How many times heavier than what hung in a place heavy shot may be that goes there (judgement)."""
_EDGE_G = 1e-9
Counted = tuple[tuple[str, int], ...]
"""Names of shot and how many of each, heaviest first."""


@dataclass(frozen=True)
class ShotChange:
    """Shot to put on and take off."""

    on: Counted
    off: Counted
    change_g: float
    """What it comes to, in air; negative when shot comes off."""
    left_g: float
    """What was asked for and no shot makes up, in air."""


@dataclass(frozen=True)
class Ways:
    """Handfuls of shot: how many of each size, their mass in air and how many pieces, by mass."""

    counts: Counts
    mass_g: Array
    pieces: Counts

    @cached_property
    def by_pieces(self) -> tuple[tuple[NDArray[np.intp], Array], ...]:
        """Which have none, one, two pieces and so on, the lightest first, and their mass."""
        most = int(self.pieces.max(initial=0))
        which = [np.flatnonzero(self.pieces == pieces) for pieces in range(most + 1)]
        return tuple((these, self.mass_g[these]) for these in which)


def _ways(counts: Counts, masses_g: Sequence[float]) -> Ways:
    return _by_mass(counts, counts @ np.asarray(masses_g, dtype=float))


def _by_mass(counts: Counts, mass: Array) -> Ways:
    order = np.argsort(mass, kind="stable")
    return Ways(counts[order], mass[order], counts[order].sum(axis=1))


def _handfuls(limits: Sequence[int], most: int) -> Counts:
    """Return every handful of at most so many pieces, within the limit of each size."""
    found = np.zeros((1, 0), dtype=np.int64)
    for limit in limits:
        each = np.arange(min(limit, most) + 1)
        rows = np.repeat(found, each.size, axis=0)
        found = np.column_stack([rows, np.tile(each, len(found))])
        found = found[found.sum(axis=1) <= most]
    return found


@lru_cache(maxsize=32)
def _to_put_on(masses_g: tuple[float, ...], limits: tuple[int, ...]) -> Ways:
    few = MOST_ON if len(limits) <= MANY_SIZES else MOST_ON - 1
    return _ways(_handfuls(limits, few), masses_g)


@lru_cache(maxsize=8)
def _runs(masses_g: tuple[float, ...], limits: tuple[int, ...]) -> Ways:
    """Return runs of more than four of the heaviest with up to two others: of lighter nobody does."""
    heaviest = int(np.argmax(masses_g))
    few = _handfuls(limits, 2)
    others = few[few[:, heaviest] == 0]
    rows = [np.zeros((0, len(limits)), dtype=np.int64)]
    for count in range(MOST_ON - 1, min(limits[heaviest], MOST_RUN) + 1):
        run = others.copy()
        run[:, heaviest] = count
        rows.append(run[run.sum(axis=1) > MOST_ON])
    return _ways(np.concatenate(rows), masses_g)


def _number(limits: Sequence[int], most: int) -> float:
    """Return how many handfuls of at most so many pieces there are."""
    ways = np.ones(1)
    for limit in limits:
        ways = np.convolve(ways, np.ones(min(limit, most) + 1))[: most + 1]
    return float(ways.sum())


@lru_cache(maxsize=32)
def _to_take_off(masses_g: tuple[float, ...], limits: tuple[int, ...]) -> Ways:
    """Return what may come off, of sizes from the heaviest on."""
    most = sum(limits)
    while _number(limits, most) > MOST_WAYS:
        most -= 1
    found = _handfuls(limits, most)
    # All may have to come off, or else what is left would be too much.
    ends = np.cumsum(limits, dtype=np.int64)
    many = np.arange(most + 1, sum(limits) + 1)[:, np.newaxis]
    heaviest = np.clip(many - (ends - np.asarray(limits, dtype=np.int64)), 0, limits)
    return _ways(np.concatenate([found, heaviest]), masses_g)


@tables.lately(64)
def hanging(
    told: tuple[Hung, ...],
    pull_g: float,
    shots: tuple[Shot, ...],
    fixing: Fixing = "bulk",
    temperature_c: float = 10.0,
) -> tuple[Hung, ...]:
    """Return the shot that hangs on the line now: as it was told, else the plan for the load.

    Parameters
    ----------
    told : tuple of Hung
        What he says hangs there, nothing if he does not say. Of what he names no place for, heavy
        shot is taken for the bulk, light for droppers.
    pull_g : float
        Of the float as it is [gf].
    shots : tuple of Shot
        What he has.
    fixing : str
        How the float is shotted.
    temperature_c : float
        Water [deg C].

    Examples
    --------
    >>> from tipsight.load.shot import sizes
    >>> [(one.count, one.name, one.where) for one in hanging((), 1.6, sizes())]
    [(1, 'SSG', 'bulk'), (1, 'No 5', 'dropper'), (1, 'No 6', 'dropper')]
    """
    if told:
        return _gathered(
            [replace(h, where=h.where or _usual_place(h.mass_g, fixing)) for h in told]
        )
    masses = {shot.name: shot.mass_g for shot in shots}
    planned = plan.plan(pull_g, shots, fixing, temperature_c)
    return tuple(Hung(name, n, where, masses[name]) for name, n, where in planned.shot)


_PLACES = (plan.BULK, plan.STRING, plan.DROPPER, plan.TRIM)


def _usual_place(mass_g: float, fixing: Fixing) -> str:
    if fixing != "bulk":
        return plan.STRING
    return plan.BULK if mass_g >= plan.BULK_LEAST_G - _EDGE_G else plan.DROPPER


def mass_g(hung: Sequence[Hung]) -> float:
    """Return what shot weighs in air [g]."""
    return sum(one.mass_g * one.count for one in hung)


def touch(
    hung: tuple[Hung, ...], to_g: float, near_g: float, shots: Sequence[Shot]
) -> tuple[ShotChange, tuple[Hung, ...]]:
    """Return the fewest shot to take off and put on for a load, and what then hangs.

    It lands at the load or so little under it, never over it. Of equal numbers: those of the bulk
    before droppers, bigger before smaller, then fewer sizes, then the nearest. Where none lands
    there, the nearest below, and of those within half as much again the fewest. Olivettes stay
    where they are unless nothing else lands there. Exact within `MOST_ON`, `MOST_RUN` and `MOST_WAYS`.

    Parameters
    ----------
    hung : tuple of Hung
        What hangs now.
    to_g : float
        Load in air, not under nothing [g].
    near_g : float
        How far under it may land, in air [g].
    shots : sequence of Shot
        What may be put on; their counts hold what hangs too.

    Examples
    --------
    >>> from tipsight.load.shot import sizes
    >>> now = (Hung("SSG", 1, "bulk", 1.6), Hung("BB", 1, "bulk", 0.4))
    >>> step, then = touch(now, 1.92, 0.03, sizes())
    >>> step.off, step.on, [one.name for one in then]
    ((('BB', 1),), (('No 1', 1),), ['SSG', 'No 1'])
    """
    have = mass_g(hung)
    if have <= to_g + _EDGE_G and to_g - have <= near_g + _EDGE_G:
        return ShotChange((), (), 0.0, to_g - have), hung
    first = _tried(hung, to_g, near_g, [one for one in shots if not is_olivette(one.name)], False)
    if first[0].left_g >= -_EDGE_G and first[0].left_g <= near_g + _EDGE_G:
        return first
    if any(map(is_olivette, [*(h.name for h in hung), *(s.name for s in shots)])):
        second = _tried(hung, to_g, near_g, shots, True)
        over = first[0].left_g < -_EDGE_G
        if over or second[0].left_g < first[0].left_g - LOSS * near_g:
            return second
    return first


def _tried(
    hung: tuple[Hung, ...], to_g: float, near_g: float, shots: Sequence[Shot], olivettes: bool
) -> tuple[ShotChange, tuple[Hung, ...]]:
    """Return what `touch` does, olivettes left where they are or not."""
    more_g = to_g - mass_g(hung)
    loose = _by_size([one for one in hung if olivettes or not is_olivette(one.name)])
    on_line = {one.name: one.count for one in loose}
    useful = [
        (shot, 10**6 if shot.count is None else shot.count - on_line.get(shot.name, 0))
        for shot in shots
    ]
    useful = [(shot, left) for shot, left in useful if left > 0]
    off = _to_take_off(tuple(o.mass_g for o in loose), tuple(o.count for o in loose))
    sizes = tuple(shot.mass_g for shot, _ in useful), tuple(left for _, left in useful)
    on = _to_put_on(*sizes)
    elsewhere = _not_droppers(hung, loose)
    found = _fewest(off, on, more_g, near_g, elsewhere)
    if found is None and useful and more_g > on.mass_g[-1]:
        runs = _runs(*sizes)
        counts, mass = ([on.counts, runs.counts], [on.mass_g, runs.mass_g])
        on = _by_mass(np.concatenate(counts), np.concatenate(mass))
        found = _fewest(off, on, more_g, near_g, elsewhere)
    i, j = found or _nearest(off, on, more_g, LOSS * near_g)
    taken = tuple((o.name, int(n)) for o, n in zip(loose, off.counts[i], strict=True) if n)
    put = [(shot, int(n)) for (shot, _), n in zip(useful, on.counts[j], strict=True) if n]
    put.sort(key=lambda pair: -pair[0].mass_g)
    change = float(on.mass_g[j] - off.mass_g[i])
    step = ShotChange(tuple((shot.name, n) for shot, n in put), taken, change, more_g - change)
    return step, _after(hung, dict(taken), put)


def _by_size(hung: Sequence[Hung]) -> list[Hung]:
    """Return what hangs by size alone, the heaviest first."""
    found: dict[str, Hung] = {}
    for one in sorted(hung, key=lambda one: -one.mass_g):
        before = found.get(one.name)
        count = one.count + (before.count if before else 0)
        found[one.name] = Hung(one.name, count, "", one.mass_g)
    return list(found.values())


def _not_droppers(hung: Sequence[Hung], loose: Sequence[Hung]) -> Counts:
    """Return how many of each size hang elsewhere than as droppers: those come off first."""
    count = {one.name: 0 for one in loose}
    for one in hung:
        if one.name in count and one.where != plan.DROPPER:
            count[one.name] += one.count
    return np.array(list(count.values()), dtype=np.int64)


def _fewest(
    off: Ways, on: Ways, more_g: float, near_g: float, elsewhere: Counts
) -> tuple[int, int] | None:
    """Return which handfuls to take off and put on, None where none lands within reach."""
    most_off, most_on = len(off.by_pieces) - 1, len(on.by_pieces) - 1
    for total in range(1, most_off + most_on + 1):
        best: tuple[tuple[float, ...], tuple[int, int]] | None = None
        for away in range(max(total - most_on, 0), min(total, most_off) + 1):
            (these, off_g), (those, on_g) = off.by_pieces[away], on.by_pieces[total - away]
            wanted = more_g + off_g
            low = np.searchsorted(on_g, wanted - near_g - _EDGE_G, side="left")
            high = np.searchsorted(on_g, wanted + _EDGE_G, side="right")
            for n in np.flatnonzero(high > low):
                i = int(these[n])
                droppers = float(np.maximum(off.counts[i] - elsewhere, 0).sum())
                for m in range(low[n], high[n]):
                    j = int(those[m])
                    key = (
                        droppers,
                        -float(off_g[n] + on_g[m]),
                        float(np.count_nonzero(off.counts[i]) + np.count_nonzero(on.counts[j])),
                        float(wanted[n] - on_g[m]),
                    )
                    if best is None or key < best[0]:
                        best = key, (i, j)
        if best is not None:
            return best[1]
    return None


def _nearest(off: Ways, on: Ways, more_g: float, near_g: float) -> tuple[int, int]:
    """Return the handfuls that come nearest below, the fewest of those within reach of it."""
    wanted = more_g + off.mass_g
    found: list[Array] = []
    for pieces, (those, on_g) in enumerate(on.by_pieces):
        at = np.searchsorted(on_g, wanted + _EDGE_G, side="right") - 1
        i = np.flatnonzero(at >= 0)
        j = at[i]
        found.append(np.array([wanted[i] - on_g[j], pieces + off.pieces[i], i, those[j]]))
    short, touched, these, those_on = np.concatenate(found, axis=1)
    if not short.size:  # what cannot come off is too much already
        return int(off.mass_g.argmax()), 0
    near = np.flatnonzero(short <= short.min() + near_g + _EDGE_G)
    best = near[np.lexsort((short[near], touched[near]))[0]]
    return int(these[best]), int(those_on[best])


def _after(
    hung: Sequence[Hung], taken: dict[str, int], put: Sequence[tuple[Shot, int]]
) -> tuple[Hung, ...]:
    """Return what hangs after a change; what goes on takes the place of what came off."""
    order = (plan.TRIM, plan.BULK, plan.STRING, plan.DROPPER)
    freed: list[Hung] = []
    left: list[Hung] = []
    gone = dict(taken)
    for one in sorted(hung, key=lambda one: (order.index(one.where), -one.mass_g)):
        away = min(one.count, gone.get(one.name, 0))
        gone[one.name] = gone.get(one.name, 0) - away
        freed += [one] * away
        left.append(replace(one, count=one.count - away))
    rest = plan.STRING if any(one.where == plan.STRING for one in hung) else plan.BULK
    places = iter(sorted(freed, key=lambda one: (_PLACES.index(one.where), -one.mass_g)))
    for shot, count in put:  # the heaviest first, to where the bulk hung
        for _ in range(count):
            where = _where(shot.mass_g, next(places, None), rest)
            left.append(Hung(shot.name, 1, where, shot.mass_g))
    return _gathered(left)


def _where(mass_g: float, before: Hung | None, rest: str) -> str:
    """Return where shot goes that takes the place of other shot, or of none."""
    light = mass_g <= plan.TRIM_MOST_G + _EDGE_G
    if before is None or before.where == plan.TRIM:
        return plan.TRIM if light else rest
    heavy = mass_g >= plan.BULK_LEAST_G - _EDGE_G and mass_g > HEAVIER * before.mass_g + _EDGE_G
    return rest if heavy else before.where


def _gathered(hung: Sequence[Hung]) -> tuple[Hung, ...]:
    found: dict[tuple[str, str], Hung] = {}
    for one in hung:
        at = (one.name, one.where)
        count = one.count + (found[at].count if at in found else 0)
        found[at] = Hung(one.name, count, one.where, one.mass_g)
    kept = [one for one in found.values() if one.count]
    return tuple(sorted(kept, key=lambda one: (_PLACES.index(one.where), -one.mass_g)))
