"""How a tip is seen: its level on each water over distance, and what each doubt does to it."""

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray

from tipsight.advice.answer import Sight, Visibility
from tipsight.advice.facts import Doubt
from tipsight.advice.swim import Swim, finish_of
from tipsight.advice.waters import STREAKS_DOUBT, Water
from tipsight.inputs.case import Tip
from tipsight.load.tips import showing_diameter_mm
from tipsight.sight import detect, grades, kernel, reach

Array = NDArray[np.float64]

WATER_CONTRAST_DOUBT = 1.2
"""The contrast with the water is known to a fifth (judgement)."""
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


def _levels(swim: Swim, water: Water, tip: Tip) -> tuple[Array, Array]:
    """Return the level by luminance and by colour at all distances."""
    edges, finishes = blocks_of(swim, tip)
    return kernel.level_parts(
        water.kernels,
        diameter_mm=showing_diameter_mm(tip),
        edges_mm=detect.cut(edges, swim.hidden_mm[:, None]),
        contrast=water.contrast[finishes].swapaxes(0, 1),
        eye=swim.eye,
    )


def _here(
    swim: Swim,
    water: Water,
    tip: Tip,
    hidden_mm: ArrayLike = math.nan,
    gain: ArrayLike = 1.0,
    streaks: float = 1.0,
) -> Array:
    """Return the level at the asked distance for several hidden heights and contrasts at once."""
    edges, finishes = blocks_of(swim, tip)
    told = np.asarray(hidden_mm, dtype=float)
    hidden = np.where(np.isnan(told), swim.hidden_mm[swim.here], told)
    hidden, gains = np.broadcast_arrays(hidden, np.asarray(gain, dtype=float))
    parts = kernel.level_parts(
        water.at(swim.here, streaks),
        diameter_mm=showing_diameter_mm(tip),
        edges_mm=detect.cut(edges, hidden[..., None, None]),
        contrast=gains[..., None, None, None] * water.contrast[finishes, swim.here],
        eye=swim.eye,
    )
    return np.hypot(*parts)[..., 0]


def seen(swim: Swim, water: Water, tip: Tip) -> Seen:
    """Return how ``tip`` is seen against ``water``, at all distances and with each doubt alone."""
    here, place = swim.here, swim.case.place
    lum, col = _levels(swim, water, tip)
    level = np.hypot(lum, col)
    base = np.log(max(float(level[here]), FLOOR))
    moved = swim.range_m[here] * (1 + place.range_doubt * np.array([1.0, -1.0]))
    logs = np.log(np.maximum(level, FLOOR))
    far, near = np.interp(np.log(moved), np.log(swim.range_m), logs) - base
    eyes = float(np.log(swim.case.angler.own_eye_doubt))
    streaks = [_here(swim, water, tip, streaks=s) for s in (STREAKS_DOUBT, 1 / STREAKS_DOUBT)]
    doubtful = _here(
        swim,
        water,
        tip,
        [swim.hidden_mm[here], swim.hidden_mm[here], swim.hidden_high_mm[here]],
        [1 / WATER_CONTRAST_DOUBT, WATER_CONTRAST_DOUBT, 1.0],
    )
    ratios = np.log(np.maximum([*streaks, *doubtful], FLOOR)) - base
    strong, weak, pale, sharp, hidden = (float(x) for x in ratios)
    doubts = {
        Doubt.DISTANCE: (float(far), float(near)),
        Doubt.EYES: (-eyes, eyes),
        Doubt.STREAKS: (strong, weak),
        Doubt.WATER: (pale, sharp),
        Doubt.RIPPLE: (hidden, 0.0),
    }
    share = float(col[here] ** 2 / max(level[here] ** 2, FLOOR))
    return Seen(water.name, level, share, doubts)


def series(swim: Swim, water: Water, tip: Tip) -> Array:
    """Return the level of ``tip`` against ``water`` at all distances."""
    return np.asarray(np.hypot(*_levels(swim, water, tip)))


def quick_level(swim: Swim, tip: Tip) -> float:
    """Return the worst level of ``tip`` over the judged waters at the asked distance."""
    return quick_levels(swim, [tip])[0]


def quick_levels(swim: Swim, tips: Sequence[Tip]) -> list[float]:
    """Return the same for many tips, those with as many bands worked out together."""
    split = [blocks_of(swim, tip) for tip in tips]
    hidden = swim.hidden_mm[swim.here]
    levels = np.zeros(len(tips))
    for bands in {len(finishes) for _, finishes in split}:
        which = [i for i, (_, finishes) in enumerate(split) if len(finishes) == bands]
        edges = detect.cut(np.stack([split[i][0] for i in which]), hidden)[:, None, :]
        finishes = np.array([split[i][1] for i in which])
        width = np.array([[showing_diameter_mm(tips[i])] for i in which])
        levels[which] = np.min(
            [
                np.hypot(
                    *kernel.level_parts(
                        water.at(swim.here),
                        diameter_mm=width,
                        edges_mm=edges,
                        contrast=water.contrast[finishes, swim.here][:, None],
                        eye=swim.eye,
                    )
                )[:, 0]
                for water in (swim.waters[name] for name in swim.judged)
            ],
            axis=0,
        )
    return [float(level) for level in levels]


def without_streaks(swim: Swim, tip: Tip) -> float:
    """Return the worst level of ``tip`` with the streaks of the ripple left out."""
    return min(float(_here(swim, swim.waters[name], tip, streaks=0.0)) for name in swim.judged)


def visibility(swim: Swim, sights: list[Seen]) -> Visibility:
    """Return the worst of the waters, and each of them.

    Where the angler does not know the water, the range spans all that it might be.
    """
    here, wanted = swim.here, swim.case.wanted.level
    each = []
    for one in sights:
        low, high = one.band(here)
        each.append(
            Sight(
                one.water,
                float(one.level[here]),
                low,
                high,
                grades.grade(float(one.level[here])),
                reach.goes_at(swim.range_m, one.level, wanted),
                reach.goes_at(swim.range_m, one.level, 1.0),
                one.colour_share,
            )
        )
    worst = np.min([one.level for one in sights], axis=0)
    level = float(worst[here])
    highs = [one.high for one in each]
    return Visibility(
        level,
        min(one.low for one in each),
        max(highs) if swim.unsure else min(highs),
        grades.grade(level),
        reach.goes_at(swim.range_m, worst, wanted),
        reach.goes_at(swim.range_m, worst, 1.0),
        tuple(each),
    )
