"""What to make: every float that could be built from his stock, and the few that close most."""

from collections.abc import Callable, Sequence
from concurrent.futures import Executor
from dataclasses import dataclass, replace
from functools import partial, reduce

import numpy as np
from numpy.typing import NDArray

from tipsight import tables
from tipsight.advice.bench import LONGEST_MM, Shelf, painted
from tipsight.advice.candidates import Schemes, bands_of, showing_lengths_mm
from tipsight.advice.limits import ENOUGH, Measures, kept, least_glued_mm, least_wet_mm
from tipsight.advice.swim import FRESH_COATS, Swim, swim
from tipsight.errors import Mistakes
from tipsight.inputs.case import Band, Box, Stock
from tipsight.inputs.question import Question
from tipsight.inputs.settle import settle
from tipsight.load import budget, materials, patterns, tips
from tipsight.season.covering import LONG_S, Chosen, most, undominated
from tipsight.season.served import MOST_SHARE, served, shot_share
from tipsight.season.swims import Fished

Array = NDArray[np.float64]
Mask = NDArray[np.bool_]
Bytes = NDArray[np.uint8]
Progress = Callable[[int, int], None]
Hull = tuple[str, str]
"""Pattern and size."""


@dataclass(frozen=True)
class Candidate:
    """One float that could be made."""

    pattern: str
    size: str
    stock: Stock
    showing_mm: float
    wet_mm: float
    glued_mm: float
    bands: tuple[Band, ...]
    sink_force_g: float

    def question(self) -> Question:
        """Return it as it would be told, for its bench sheet."""
        bands = ", ".join(
            f"{band.paint} {round(band.from_top_mm, 1):g}-{round(band.to_top_mm, 1):g} mm"
            for band in self.bands
        )
        return Question(
            pattern=self.pattern,
            size=self.size,
            stock=self.stock.kind,
            diameter=self.stock.diameter_mm,
            bore=self.stock.bore_mm or None,
            showing=self.showing_mm,
            wet=self.wet_mm,
            glued=self.glued_mm,
            paint=bands if len(self.bands) > 1 else self.bands[0].paint,
            tip_coats=FRESH_COATS,
        )


@dataclass(frozen=True)
class Worth:
    """The best that so many new floats can do."""

    count: int
    floats: tuple[Candidate, ...]
    """The one that closes most first; fewer than ``count`` where a next one adds nothing."""
    closes: tuple[tuple[int, ...], ...]
    """Which swims each closes that those before it leave open."""
    chosen: Chosen


@dataclass(frozen=True)
class Makings:
    """What to make, for every number of floats up to the one asked for."""

    tried: int
    """How many floats were weighed against each other."""
    open: tuple[int, ...]
    """Swims that no float of the box serves, or only one that takes more shot than is usual there."""
    never: tuple[int, ...]
    """Those of them that none of all these would serve."""
    by_count: tuple[Worth, ...]


@dataclass(frozen=True)
class _Sightings:
    """Every tip that is seen in some swim, each as the swims in which it is, packed by eights."""

    stock: NDArray[np.intp]
    length: NDArray[np.intp]
    which: NDArray[np.intp]
    """Group of schemes, set of edges and paints, shape (K, 3)."""
    seen: Bytes


def make(
    swims: Sequence[Fished],
    floats: Sequence[Question],
    count: int,
    *,
    with_bank: bool = False,
    executor: Executor | None = None,
    progress: Progress | None = None,
    long_s: float = LONG_S,
) -> Makings:
    """Return the floats to make that close the most of what a box leaves open: the exact optimum.

    Of every pattern in every size, with every piece of stock, length and paint scheme that the
    first swim says he has, in swims for which it takes no more shot than is usual: a larger one
    would serve more of them, and nobody would fish it there. Each is as wet below as the roughest
    of the open swims wants; its ride and load are the bench's. The few that win are looked at
    closely, and what the close look takes from one is taken from it before the choice is made again.

    Parameters
    ----------
    swims : sequence of Fished
        The season.
    floats : sequence of Question
        The box; may be empty.
    count : int
        How many to make at the most.
    with_bank : bool
        Whether a swim counts as closed where a float of the box would do with something done at
        the bank.
    executor : concurrent.futures.Executor, optional
        Looks at the swims side by side.
    progress : callable, optional
        Told how many parts of the work are done, and of how many.
    long_s : float
        When to break off a search [s].

    Returns
    -------
    Makings
        For each number up to ``count``; the best few are not always the best many less one.
    """
    have = served(floats, swims, with_bank=with_bank, executor=executor) if floats else None
    # a swim that only a heavy float serves is open for one that is not
    fit = have.with_bank & (have.shot_share <= MOST_SHARE) if have else None
    open_ = [s for s in range(len(swims)) if fit is None or not fit[:, s].any()]
    if not open_:
        return Makings(0, (), (), ())
    pool, serves, tried = candidates([swims[s] for s in open_], executor, progress)
    weight = np.array([swims[s].often for s in open_])
    looked: set[int] = set()
    by_count: list[Worth] = []
    n = 1
    while n <= count:
        chosen = most(serves, weight, n, long_s)
        new = [c for c in chosen.which if c not in looked]
        if new:
            close = served([pool[c].question() for c in new], [swims[s] for s in open_])
            changed = (serves[new] & ~close.passes).any()
            serves[new] &= close.passes
            looked.update(new)
            if changed:  # also for the smaller numbers, of which one may have taken it
                n, by_count = 1, []
                continue
        by_count.append(_worth(n, chosen, pool, serves, open_))
        if len(chosen.which) < n:
            break
        n += 1
    never = tuple(s for n, s in enumerate(open_) if not serves[:, n].any())
    return Makings(tried, tuple(open_), never, tuple(by_count))


def _worth(
    n: int, chosen: Chosen, pool: Sequence[Candidate], serves: Mask, open_: Sequence[int]
) -> Worth:
    left = np.ones(len(open_), dtype=bool)
    closes = []
    for c in chosen.which:
        closes.append(tuple(open_[int(s)] for s in np.flatnonzero(serves[c] & left)))
        left &= ~serves[c]
    return Worth(n, tuple(pool[c] for c in chosen.which), tuple(closes), chosen)


def hulls() -> tuple[Hull, ...]:
    """Return every pattern in every size."""
    names = [row["name"] for row in tables.rows("patterns")]
    return tuple((name, size) for name in names for size in patterns.sizes(name))


def candidates(
    swims: Sequence[Fished], executor: Executor | None = None, progress: Progress | None = None
) -> tuple[list[Candidate], Mask, int]:
    """Return the floats worth a thought, which of some swims each serves, and how many were tried.

    Of those of one pattern and size that serve the same swims only the one that is sunk most easily
    is kept, and none that serves no swim.
    """
    box = settle(swims[0].question).box
    stock = tuple(dict.fromkeys((*box.stock, *box.inserts))) or materials.shelf()
    box = replace(box, stock=stock, inserts=())
    bodies, own, steps = hulls(), tables.in_use(), 2 * len(swims)
    at_m = min(settle(one.question).place.range_m for one in swims)
    spread = map if executor is None else executor.map
    wet = np.full((len(bodies), len(stock)), -np.inf)
    for s, one in enumerate(spread(partial(_wet_here, own, box), swims)):
        wet = np.fmax(wet, one)
        if progress:
            progress(s + 1, steps)
    allowed, seen, schemes = [], [], None
    for s, found in enumerate(spread(partial(_fits_here, own, box, wet, at_m), swims)):
        allowed.append(found[0])
        seen.append(found[1])
        schemes = found[2]
        if progress:
            progress(len(swims) + s + 1, steps)
    if schemes is None:
        return [], np.zeros((0, len(swims)), dtype=bool), 0
    lengths = _lengths()
    sightings = _sightings(stock, schemes, seen)
    fits = np.packbits(np.stack(allowed), axis=0)
    each = len(stock) * sum(len(g.edges_mm) * len(g.paints) for g in schemes)
    warm = settle(swims[0].question).stream.temperature_c
    bare = np.array([s.diameter_mm for s in stock])
    force = budget.sink_force_g(
        tips.painted_diameter_mm(bare, FRESH_COATS)[:, None], lengths, warm
    )
    paints = [name for name in box.paints if name != "felt pen"]
    pool, rows = [], []
    for h, (name, size) in enumerate(bodies):
        both = sightings.seen & fits[:, h, sightings.stock, sightings.length].T
        for k in _least(both, force[sightings.stock, sightings.length]):
            t, i = sightings.stock[k], sightings.length[k]
            group, e, p = sightings.which[k]
            worn = [paints[f] for f in schemes[group].paints[p]]
            outside = float(lengths[i] + wet[h, t])
            pool.append(
                Candidate(
                    name,
                    size,
                    stock[t],
                    float(lengths[i]),
                    float(wet[h, t]),
                    float(least_glued_mm(outside)),
                    bands_of(worn, schemes[group].edges_mm[e]),
                    float(force[t, i]),
                )
            )
            rows.append(np.unpackbits(both[k], count=len(swims)))
    serves = np.array(rows, dtype=bool).reshape(len(rows), len(swims))
    by_force = np.argsort([one.sink_force_g for one in pool], kind="stable")
    return [pool[k] for k in by_force], serves[by_force], each * len(bodies)


def _lengths() -> Array:
    return showing_lengths_mm(LONGEST_MM)


def _least(both: Bytes, force: Array) -> NDArray[np.intp]:
    """Return of each set of swims the one tip that is sunk most easily; none that serves none."""
    some = np.flatnonzero(both.any(axis=1))
    some = some[np.argsort(force[some], kind="stable")]
    _, at = np.unique(both[some], axis=0, return_index=True)
    return np.asarray(some[np.sort(at)])


def _bodies(fished: Fished, box: Box) -> list[Swim | None]:
    """Return one swim with each pattern in each size; None for one that sinks with its own tip."""
    base = settle(fished.question)
    found: list[Swim | None] = []
    for name, size in hulls():
        tip = patterns.pattern(name).tip
        made = patterns.built(name, size)
        case = replace(base, float_=made, weighed_tip=tip, tip=tip, box=box)
        try:
            found.append(swim(case))
        except Mistakes:
            found.append(None)
    return found


def _wet_here(own: tables.Tables | None, box: Box, fished: Fished) -> Array:
    """Return the length that must stay wet of each piece of stock on each body, shape (H, T)."""
    with tables.using(own):
        bare = np.array([s.diameter_mm for s in box.stock])
        thick = tips.painted_diameter_mm(bare, FRESH_COATS)
        none = [np.nan] * len(bare)
        return np.array(
            [
                none if one is None else [least_wet_mm(one.wave_rms_mm(float(d))) for d in thick]
                for one in _bodies(fished, box)
            ]
        )


def _fits_here(
    own: tables.Tables | None, box: Box, wet_mm: Array, at_m: float, fished: Fished
) -> tuple[Mask, list[Mask], tuple[Schemes, ...]]:
    """Return what fits each body and rides here, what is seen here, and the schemes of that.

    Shapes (H, T, L), and (T, S, P) of each group of schemes.
    """
    with tables.using(own):
        bodies, lengths = _bodies(fished, box), _lengths()
        fits = np.zeros((len(bodies), len(box.stock), len(lengths)), dtype=bool)
        shelf = None
        for h, one in enumerate(bodies):
            if one is None:
                continue
            if shelf is None:
                shelf = Shelf(one, box.stock, lengths, *painted(one, lengths, at_m))
            fits[h] = _fits(replace(shelf, swim=one), wet_mm[h])
        if shelf is None:
            return fits, [], ()
        which = np.unique(shelf.painted_mm, return_inverse=True)[1]
        enough = ENOUGH * shelf.swim.case.wanted.level
        return fits, [(level >= enough)[which] for level in shelf.levels], shelf.schemes


def _fits(shelf: Shelf, wet_mm: Array) -> Mask:
    """Return which pieces keep all limits but sight and balance, and take no more shot than is usual.

    The wet part is told.
    """
    here, warm = shelf.swim, shelf.swim.case.stream.temperature_c
    outside = shelf.showing_mm[None, :] + wet_mm[:, None]
    glued_mm = least_glued_mm(outside)
    pull_g = budget.pull_grid(
        here.hull,
        shelf.stock,
        shelf.showing_mm,
        wet_mm[:, None],
        glued_mm,
        coats=shelf.coats,
        temperature_c=warm,
    )
    told = Measures(
        ride_margin=shelf.ride_margin,
        sink_force_g=shelf.sink_force_g,
        pull_g=pull_g,
        diameter_mm=np.array([s.diameter_mm for s in shelf.stock])[:, None],
        showing_mm=shelf.showing_mm,
        glued_mm=glued_mm,
    )
    fair = shot_share(here, pull_g) <= MOST_SHARE
    return reduce(np.logical_and, kept(here, told).values(), shelf.usual & fair)


def _sightings(
    stock: Sequence[Stock], schemes: Sequence[Schemes], seen: Sequence[Sequence[Mask]]
) -> _Sightings:
    """Return of each piece and length what is seen in no part of the swims of another of its paints."""
    lengths = len(_lengths())
    groups = [np.stack([one[g] for one in seen], axis=-1) for g in range(len(schemes))]
    alike: dict[bytes, NDArray[np.intp]] = {}
    found: list[tuple[int, int, int, int, int]] = []
    rows: list[Mask] = []
    for t in range(len(stock)):
        for i in range(lengths):
            here, at = [], []
            for g, scheme in enumerate(schemes):
                for e in np.flatnonzero(scheme.showing_index == i):
                    here.append(groups[g][t, e])
                    at += [(g, int(e), p) for p in range(len(scheme.paints))]
            if not here:
                continue
            all_ = np.concatenate(here)
            key = all_.tobytes()
            if key not in alike:
                alike[key] = undominated(all_)
            for k in alike[key]:
                found.append((t, i, *at[k]))
                rows.append(all_[k])
    table = np.array(found, dtype=np.intp).reshape(len(found), 5)
    packed = np.packbits(np.array(rows, dtype=bool).reshape(len(rows), len(seen)), axis=1)
    return _Sightings(table[:, 0], table[:, 1], table[:, 2:], packed)
