"""How a tip is seen: its level on each water over distance, and what each doubt does to it."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property

import numpy as np
from numpy.typing import ArrayLike, NDArray

from tipsight.advice.answer import Run, Sight, Visibility
from tipsight.advice.facts import Doubt
from tipsight.advice.swim import LADDER_YD, Swim, finish_of
from tipsight.advice.waters import STREAKS_DOUBT, Times, Water
from tipsight.inputs.case import Tip
from tipsight.load.tips import showing_diameter_mm
from tipsight.scene import paint
from tipsight.sight import detect, grades, kernel, notice, reach
from tipsight.sight.clutter import sea_doubt
from tipsight.units import YARD_M

Array = NDArray[np.float64]

WATER_CONTRAST_DOUBT = 1.2
"""The contrast with the water is known to a fifth (judgement)."""
CRESTS_LEAVE = 0.4
"""Of the level that the highest crests leave at the least: they stand before it only at times."""
FLOOR = 1e-6
"""Keeps the logarithm of a level that is nothing."""

Spread = tuple[float, float]
"""Natural logarithm of the level with one doubt against it and with the same doubt for it."""


@dataclass(frozen=True)
class Seen:
    """One tip against one water: the level over distance, and what each doubt does to it."""

    water: str
    level: Array
    colour_share: float
    streaks_slope: float
    """How fast the level falls with the power of the streaks, -d ln level / d ln power [-]."""
    doubts: dict[Doubt, Spread]

    def band(self, here: int, without: Doubt | None = None) -> tuple[float, float]:
        """Return low and high level at the asked distance, one doubt left out if named."""
        kept = [spread for doubt, spread in self.doubts.items() if doubt is not without]
        down, up = (
            float(np.sqrt(sum(min(0.0, s * side) ** 2 for s in ends)))
            for side, ends in ((1, [min(k) for k in kept]), (-1, [max(k) for k in kept]))
        )
        level = float(self.level[here])
        return level * np.exp(-down), level * np.exp(up)


def blocks_of(swim: Swim, tip: Tip) -> tuple[Array, list[int]]:
    """Return the band edges above the waterline, rising, and the finish of each band."""
    edges, finishes = [0.0], []
    for band in reversed(tip.bands):
        top = tip.showing_mm - band.from_top_mm
        if top > edges[-1]:
            edges.append(top)
            finishes.append(swim.finishes.index(finish_of(tip, band.paint)))
    return np.array(edges), finishes


def counted(level: ArrayLike, in_crests: ArrayLike) -> Array:
    """Return the level that counts, from those with the mean and with the highest crests before it.

    What is kept in view on the whole must still be followed while the highest crests stand before
    its foot: min(L, 2.08 L_crest), not under 0.4 L, with 2.08 = kept in view over followed
    (judgement).
    """
    followed, kept, *_ = grades.wanted()
    whole = np.asarray(level)
    crests = kept / followed * np.asarray(in_crests)
    return np.asarray(np.maximum(CRESTS_LEAVE * whole, np.minimum(whole, crests)))


@dataclass(frozen=True)
class Along:
    """The level of one tip against one water over distance."""

    plain: Array
    """With the mean crests before its foot."""
    crests: Array
    """With the highest."""
    colour: Array
    """The part of ``plain`` that is by colour; the whole is the hypotenuse."""

    @cached_property
    def level(self) -> Array:
        """The level that counts."""
        return counted(self.plain, self.crests)


def along(swim: Swim, water: Water, tip: Tip) -> Along:
    """Return the level of ``tip`` against ``water`` at all distances."""
    asked = id(water), tip
    if asked not in swim.alongs:
        swim.alongs[asked] = _along(swim, water, tip)
    return Along(*swim.alongs[asked])


def _along(swim: Swim, water: Water, tip: Tip) -> tuple[Array, Array, Array]:
    edges, finishes = blocks_of(swim, tip)
    hidden_mm = np.stack([swim.hidden_mm, swim.hidden_high_mm])
    grey, colour = kernel.level_parts(
        water.kernels,
        diameter_mm=showing_diameter_mm(tip),
        edges_mm=detect.cut(edges, hidden_mm[..., None]),
        contrast=water.contrast[finishes].swapaxes(0, 1),
    )
    plain, crests = np.hypot(grey, colour)
    return plain, crests, colour[0]


def _here(
    swim: Swim,
    water: Water,
    tip: Tip,
    streaks: Times = (1.0,),
    eyes: Times = (1.0,),
    gain: ArrayLike = 1.0,
) -> Array:
    """Return the level at the asked distance with streaks, eyes or contrasts multiplied."""
    edges, finishes = blocks_of(swim, tip)
    gains = np.asarray(gain, dtype=float)[..., None, None]
    parts = kernel.level_parts(
        water.at(swim.here, streaks, eyes),
        diameter_mm=showing_diameter_mm(tip),
        edges_mm=detect.cut(edges, swim.hidden_mm[swim.here]),
        contrast=gains * water.contrast[finishes, swim.here],
    )
    return np.hypot(*parts)


def contrast_doubt(tip: Tip) -> float:
    """Return how well the contrast of a tip with the water is known (x/÷): water and own paints."""
    own = max((paint.doubt(band.paint) for band in tip.bands), default=1.0)
    return math.exp(math.hypot(math.log(WATER_CONTRAST_DOUBT), math.log(own)))


def seen(swim: Swim, water: Water, tip: Tip, levels: Along | None = None) -> Seen:
    """Return how ``tip`` is seen against ``water``, at all distances and with each doubt alone."""
    here, place = swim.here, swim.case.place
    levels = levels or along(swim, water, tip)
    plain, crests, level = levels.plain[here], levels.crests[here], levels.level
    logs = np.log(np.maximum(level, FLOOR))
    moved = swim.range_m[here] * (1 + place.range_doubt * np.array([1.0, -1.0]))
    far, near = np.interp(np.log(moved), np.log(swim.range_m), logs) - logs[here]
    own = swim.case.angler.own_eye_doubt
    paler = contrast_doubt(tip)
    # in turn: eyes worse, better; streaks strong, weak; water pale, sharp against the tip; no streaks
    rerun = _here(
        swim,
        water,
        tip,
        streaks=(1.0, 1.0, STREAKS_DOUBT, 1 / STREAKS_DOUBT, 1.0, 1.0, 0.0),
        eyes=(1 / own, own, 1.0, 1.0, 1.0, 1.0, 1.0),
        gain=(1.0, 1.0, 1.0, 1.0, 1 / paler, paler, 1.0),
    )
    # the re-runs are of the level with the mean crests: each doubt is what it does to that
    whole, hidden = (float(x) for x in np.log(np.maximum([plain, crests], FLOOR)))
    ratios = np.log(np.maximum(rerun, FLOOR)) - whole
    worse, better, strong, weak, pale, sharp, calm = (float(x) for x in ratios)
    sea = min(math.log(sea_doubt(water.clutter[here])), max(calm, 0.0))
    doubts = {
        Doubt.DISTANCE: (float(far), float(near)),
        Doubt.EYES: (worse, better),
        Doubt.STREAKS: (strong, weak),
        Doubt.SEA: (-sea, sea),
        Doubt.WATER: (pale, sharp),
        Doubt.RIPPLE: (hidden - float(logs[here]), whole - float(logs[here])),
    }
    slope = min(max((weak - strong) / (2 * math.log(STREAKS_DOUBT)), 0.0), 0.5)
    share = float(levels.colour[here] ** 2 / max(plain**2, FLOOR))
    return Seen(water.name, level, share, slope, doubts)


def quick_level(swim: Swim, tip: Tip) -> float:
    """Return the worst level of ``tip`` over the judged waters at the asked distance."""
    return quick_levels(swim, [tip])[0]


def quick_levels(swim: Swim, tips: Sequence[Tip]) -> list[float]:
    """Return the same for many tips, those with as many bands worked out together."""
    split = [blocks_of(swim, tip) for tip in tips]
    hidden = np.array([swim.hidden_mm[swim.here], swim.hidden_high_mm[swim.here]])
    levels = np.zeros(len(tips))
    for bands in {len(finishes) for _, finishes in split}:
        which = [i for i, (_, finishes) in enumerate(split) if len(finishes) == bands]
        whole = np.stack([split[i][0] for i in which])
        edges = detect.cut(whole, hidden[:, None, None])[:, :, None, :]
        finishes = np.array([split[i][1] for i in which])
        width = np.array([[showing_diameter_mm(tips[i])] for i in which])
        levels[which] = np.min(
            [_both(water, swim.here, width, edges, finishes) for water in _judged(swim)], axis=0
        )
    return [float(level) for level in levels]


def _both(water: Water, here: int, width: Array, edges: Array, finishes: Array) -> Array:
    """Return the level that counts of many tips, their edges cut by mean and by high crests."""
    parts = kernel.level_parts(
        water.at(here),
        diameter_mm=width,
        edges_mm=edges,
        contrast=water.contrast[finishes, here][:, None],
    )
    plain, crests = np.hypot(*parts)[..., 0]
    return counted(plain, crests)


def _judged(swim: Swim) -> Iterator[Water]:
    return (swim.waters[key] for key in swim.judged)


def streaks_share(swim: Swim, tip: Tip) -> float:
    """Return the share of the worst level that the streaks of the ripple take."""
    with_, without = (
        min(float(_here(swim, water, tip, streaks=(power,))[0]) for water in _judged(swim))
        for power in (1.0, 0.0)
    )
    return 1 - with_ / max(without, 1e-9)


def visibility(swim: Swim, tip: Tip) -> Visibility:
    """Return how well a tip is seen: on the worst of the waters, and on each of them.

    Of one stretch in several lights, or by patches, the worst counts. Where the angler does not
    know the water, the range spans all that it might be.
    """
    here = swim.here
    by_name: dict[str, list[tuple[Along, Water]]] = {}
    for water in _judged(swim):
        by_name.setdefault(water.name, []).append((along(swim, water, tip), water))
    each = [_sight(swim, tip, group) for group in by_name.values()]
    worst = np.min([one.level for group in by_name.values() for one, _ in group], axis=0)
    highs = [one.high for one in each]
    level = float(worst[here])
    slowest = [one.notice_s for one in each]
    return Visibility(
        level,
        min(one.low for one in each),
        max(highs) if swim.unsure else min(highs),
        grades.grade(level),
        reach.goes_at(swim.range_m, worst, swim.case.wanted.level),
        reach.goes_at(swim.range_m, worst, 1.0),
        None if None in slowest else max(s for s in slowest if s is not None),
        tuple(each),
    )


def _sight(swim: Swim, tip: Tip, group: Sequence[tuple[Along, Water]]) -> Sight:
    """Return how a tip is seen on one stretch, from all that the stretch may be."""
    here, wanted = swim.here, swim.case.wanted.level
    # only the worst is looked at with its doubts, which cost more than the level itself
    levels, water = min(group, key=lambda one: float(one[0].level[here]))
    worst = seen(swim, water, tip, levels)
    least = np.min([one.level for one, _ in group], axis=0)
    level = float(worst.level[here])
    low, high = worst.band(here)
    noticed = float(notice.notice_s(level, worst.streaks_slope, swim.range_m[here]))
    return Sight(
        worst.water,
        level,
        low,
        high,
        grades.grade(level),
        reach.goes_at(swim.range_m, least, wanted),
        reach.goes_at(swim.range_m, least, 1.0),
        None if math.isnan(noticed) else noticed,
        worst.colour_share,
        runs(swim.range_m, least),
    )


def runs(range_m: Array, level: Array) -> tuple[Run, ...]:
    """Return the grades of a level from 10 to 60 yd as runs, near to far.

    Two runs meet where the level, followed as a power of distance, crosses the higher one's limit.

    Examples
    --------
    >>> import numpy as np
    >>> far = np.array([9.0, 10.0, 20.0, 40.0, 60.0])
    >>> [(one.grade, round(one.to_m, 1)) for one in runs(far, 200 / far)]
    [('stands out', 10.0), ('easy', 20.0), ('kept in view', 40.0), ('followed', 54.9)]
    """
    ends = (LADDER_YD[0] * YARD_M, LADDER_YD[-1] * YARD_M)
    inside = range_m[(range_m > ends[0]) & (range_m < ends[1])]
    far = np.log(np.array([ends[0], *inside, ends[1]]))
    logs = np.interp(far, np.log(range_m), np.log(np.maximum(level, FLOOR)))
    names, least = zip(*grades.limits(), strict=True)
    limits = np.log(np.maximum(least, FLOOR))
    each = np.searchsorted(limits, logs + 1e-12, side="right") - 1
    found, start = [], ends[0]
    for i in np.flatnonzero(np.diff(each)):
        limit = limits[max(each[i], each[i + 1])]
        share = (limit - logs[i]) / (logs[i + 1] - logs[i])
        stop = float(np.exp(far[i] + share * (far[i + 1] - far[i])))
        found.append(Run(names[each[i]], start, stop))
        start = stop
    return (*found, Run(names[each[-1]], start, ends[1]))
