"""One tip on this float in this swim: how it is seen, how it rides, what it takes."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from tipsight.advice.answer import Block, Sight, Visibility
from tipsight.advice.handling import handling
from tipsight.advice.limits import fails
from tipsight.advice.shotting import load
from tipsight.advice.swim import Swim, finish_of, painted_mm
from tipsight.advice.waters import STREAKS_DOUBT, Water
from tipsight.inputs.case import Tip
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
    doubts: dict[str, Spread]

    def band(self, here: int, without: str = "") -> tuple[float, float]:
        """Return low and high level at the asked distance, one doubt left out if named."""
        kept = [spread for name, spread in self.doubts.items() if name != without]
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


def _levels(
    swim: Swim,
    water: Water,
    tip: Tip,
    *,
    at: slice,
    hidden: Array,
    gain: float = 1.0,
    kernels: kernel.Kernels | None = None,
) -> tuple[Array, Array]:
    edges, finishes = blocks_of(swim, tip)
    return kernel.level_parts(
        kernels or water.kernels[at],
        diameter_mm=painted_mm(tip),
        edges_mm=detect.cut(edges, hidden[at][:, None]),
        contrast=gain * water.contrast[finishes, at].swapaxes(0, 1),
        eye=swim.eye,
    )


def seen(swim: Swim, water: Water, tip: Tip) -> Seen:
    """Return how ``tip`` is seen against ``water``, at all distances and with each doubt alone."""
    here, case = swim.here, swim.case
    lum, col = _levels(swim, water, tip, at=slice(None), hidden=swim.hidden_mm)
    level = np.hypot(lum, col)
    base = max(float(level[here]), FLOOR)
    at = slice(here, here + 1)

    def log_ratio(lum_col: tuple[Array, Array]) -> float:
        return float(np.log(max(float(np.hypot(*lum_col)[0]), FLOOR) / base))

    logs = np.log(np.maximum(level, FLOOR))
    far, near = (
        float(
            np.interp(
                np.log(swim.range_m[here] * (1 + s * case.place.range_doubt)),
                np.log(swim.range_m),
                logs,
            )
        )
        - np.log(base)
        for s in (1, -1)
    )
    eyes = float(np.log(case.angler.own_eye_doubt))
    doubts = {
        "distance": (far, near),
        "eyes": (-eyes, eyes),
        "streaks": tuple(
            log_ratio(_levels(swim, water, tip, at=at, hidden=swim.hidden_mm, kernels=k))
            for k in (water.at(here, STREAKS_DOUBT), water.at(here, 1 / STREAKS_DOUBT))
        ),
        "water": tuple(
            log_ratio(_levels(swim, water, tip, at=at, hidden=swim.hidden_mm, gain=g))
            for g in (1 / WATER_CONTRAST_DOUBT, WATER_CONTRAST_DOUBT)
        ),
        "ripple": (log_ratio(_levels(swim, water, tip, at=at, hidden=swim.hidden_high_mm)), 0.0),
    }
    share = float(col[here] ** 2 / max(level[here] ** 2, FLOOR))
    return Seen(water.name, level, share, doubts)


def series(swim: Swim, water: Water, tip: Tip) -> Array:
    """Return the level of ``tip`` against ``water`` at all distances."""
    return np.asarray(np.hypot(*_levels(swim, water, tip, at=slice(None), hidden=swim.hidden_mm)))


def quick_level(swim: Swim, tip: Tip) -> float:
    """Return the worst level of ``tip`` over the judged waters at the asked distance."""
    at = slice(swim.here, swim.here + 1)
    return min(
        float(np.hypot(*_levels(swim, swim.waters[name], tip, at=at, hidden=swim.hidden_mm))[0])
        for name in swim.judged
    )


def without_streaks(swim: Swim, tip: Tip) -> float:
    """Return the same with the streaks of the ripple left out."""
    at = slice(swim.here, swim.here + 1)
    return min(
        float(
            np.hypot(
                *_levels(
                    swim,
                    water,
                    tip,
                    at=at,
                    hidden=swim.hidden_mm,
                    kernels=water.at(swim.here, 0.0),
                )
            )[0]
        )
        for water in (swim.waters[name] for name in swim.judged)
    )


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


def examine(swim: Swim, tip: Tip) -> Block:
    """Return everything about ``tip`` on this float in this swim.

    Parameters
    ----------
    swim : Swim
        The swim worked out once.
    tip : Tip
        The tip to be looked at.

    Returns
    -------
    Block
        Sight, handling, load, and the limits that are not met.
    """
    sights = [seen(swim, swim.waters[name], tip) for name in swim.judged]
    sight = visibility(swim, sights)
    handled = handling(swim, tip, sight.level)
    loaded = load(swim, tip)
    return Block(tip, tip.bands, sight, handled, loaded, fails(swim, tip, sight, handled, loaded))
