"""The swim worked out once: the waters over distance, the ripple, the ride and the bare float."""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from functools import cached_property

import numpy as np
from numpy.typing import ArrayLike, NDArray

from tipsight.advice.waters import Water, waters
from tipsight.afloat import chop, hidden, ride
from tipsight.inputs.case import Case, Finish, Stretch, Tip, WeighedFloat
from tipsight.load import budget, hull, patterns, shot
from tipsight.scene import paint
from tipsight.sight import eye

Array = NDArray[np.float64]

YARD_M = 0.9144
NEAREST_M, FARTHEST_M = 3.0, 100.0
LADDER_YD = (10, 20, 30, 40, 50, 60)
RANGE_M = np.unique(np.concatenate([
    [NEAREST_M], YARD_M * np.arange(4.0, 61.0), YARD_M * np.arange(64.0, 109.0, 4.0), [FARTHEST_M],
]))
"""Whole yards to 60, then every fourth: where the level is worked out [m]."""
PEN = "felt pen"
DARK = Stretch("dark", bank_height_deg=25.0)
BRIGHT = Stretch("bright", bank_height_deg=0.5)
LEAST_PULL_G = 0.02
"""A float must be left with this much shot to cock it (judgement)."""


def finish_of(tip: Tip, name: str) -> Finish:
    """Return the state of one paint on ``tip``; pen ink is always fresh and needs no white."""
    if name == PEN:
        return Finish(PEN, gloss=tip.gloss)
    return Finish(name, tip.seasons, tip.undercoat, tip.gloss)


@dataclass(frozen=True)
class Swim:
    """What all tips share in one question."""

    case: Case
    range_m: Array
    """Rising, the asked distance among them."""
    here: int
    """Where in ``range_m`` the asked distance stands."""
    finishes: tuple[Finish, ...]
    fresh: tuple[int, ...]
    """Which finishes are the shelf's, newly painted."""
    eye: eye.Eye
    sea: chop.Sea
    hidden_mm: Array
    hidden_high_mm: Array
    hull: hull.Hull
    pattern: patterns.Pattern
    pull_g: float
    """Of the float with the tip in hand."""
    waters: dict[str, Water]
    judged: tuple[str, ...]
    """Names of the waters on which the tip must be seen."""
    unsure: bool
    """Whether the waters are what it might be, not what the trot crosses."""
    diameters_mm: Array
    """Painted diameters whose ride was worked out, rising."""
    ride: ride.Ride
    warnings: tuple[str, ...]

    @cached_property
    def wet_share(self) -> float:
        """Part of its weight that the shot pulls under water."""
        return float(shot.wet_share(self.case.box.shot_metal, self.case.stream.temperature_c))

    @property
    def thickest_mm(self) -> float:
        """Thickest stock that the body takes."""
        return self.pattern.max_body_share * self.hull.body_diameter_mm

    def longest_showing_mm(self, diameter_mm: float) -> float:
        """Return the most that a tip of a diameter can stand [mm]."""
        return min(self.pattern.max_showing_mm, self.pattern.max_showing_diameters * diameter_mm)

    def at(self, range_m: float) -> "Swim":
        """Return the same swim with the tip watched at the nearest of the worked distances."""
        return replace(self, here=int(np.argmin(np.abs(self.range_m - range_m))))

    def on(self, *names: str) -> "Swim":
        """Return the same swim with the tip judged on the waters named."""
        return replace(self, judged=names, unsure=False)
