"""The limits that a tip must keep, each in one place: for one tip, and for a whole shelf at once."""

import math
from collections.abc import Callable
from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray

from tipsight.advice.facts import Cure, Failure, Limit
from tipsight.advice.swim import Swim
from tipsight.afloat import lean
from tipsight.inputs.case import Tip
from tipsight.inputs.settle_tip import glued_needed_mm

Array = NDArray[np.float64]
Mask = NDArray[np.bool_]

RIDES_WELL, RIDES = 3.0, 2.0  # ride margin; below the second a tip is refused; judgement
LEAST_PULL_G = 0.02  # shot that a float must be left with to cock it; judgement
LEAST_WET_MM = 10.0  # what keeps the body's shoulder down; judgement
ENOUGH = 0.95
"""Of the level that is wanted: so little less is no shortcoming, only just short (judgement)."""
SLACK = 1e-9
"""So much beyond a limit is the rounding of a sum."""


@dataclass(frozen=True)
class Measures:
    """What the limits look at; arrays broadcast. What is left out is not looked at."""

    ride_margin: ArrayLike
    sink_force_g: ArrayLike
    pull_g: ArrayLike
    diameter_mm: ArrayLike
    """Of the stock."""
    showing_mm: ArrayLike
    glued_mm: ArrayLike
    outside_mm: ArrayLike | None = None
    """Of a tip that is glued in, showing and wet."""
    level: ArrayLike | None = None
    uprightness: ArrayLike | None = None


@dataclass(frozen=True)
class Bound:
    """One limit: what is measured, what is allowed, and what would cure it."""

    limit: Limit
    least: bool
    """Whether what is allowed is the least or the most."""
    value: Callable[[Measures], ArrayLike | None]
    allowed: Callable[[Swim, Measures], ArrayLike]
    cures: tuple[Cure, ...]
    grace: float = 1.0
    """Share of what is allowed that will do."""
    in_hand: Callable[[Swim], float] | None = None
    """Of a mere wish: by how much the tip in hand keeps it, below nothing where it does not. The
    float exists, so whatever keeps it no worse may stay."""

    def spare(self, swim: Swim, told: Measures) -> NDArray[np.float64]:
        """Return by how much the limit is kept; without end if what it measures is left out."""
        value = self.value(told)
        if value is None:
            return np.asarray(math.inf)
        spare = np.subtract(value, np.multiply(self.grace, self.allowed(swim, told)))
        return np.asarray(spare if self.least else -spare)

    def least_spare(self, swim: Swim) -> float:
        """Return the spare from which a tip counts as keeping the limit."""
        return -SLACK if self.in_hand is None else min(self.in_hand(swim), 0.0) - SLACK

    def kept(self, swim: Swim, told: Measures) -> Mask:
        """Return where the limit is kept, or broken no more than by the tip in hand."""
        spare = self.spare(swim, told)
        return np.asarray((spare >= -SLACK) | (spare >= self.least_spare(swim)))

    def failures(self, swim: Swim, told: Measures) -> tuple[Failure, ...]:
        """Return the limit with what one tip has and what is allowed, or nothing if it is kept."""
        spare, value = float(self.spare(swim, told)), self.value(told)
        if value is None or spare >= -SLACK:
            return ()
        allowed = float(np.asarray(self.allowed(swim, told)))
        as_it_is = spare >= self.least_spare(swim)
        return (Failure(self.limit, float(np.asarray(value)), allowed, as_it_is),)


def glued_outside_mm(tip: Tip) -> float | None:
    """Return how much of a tip its glue must hold [mm]; None for one that pulls out of a socket."""
    return None if tip.pulls_out else tip.showing_mm + tip.wet_mm


def _glue_to_spare_mm(tip: Tip) -> float:
    outside_mm = glued_outside_mm(tip)
    return 0.0 if outside_mm is None else tip.glued_mm - float(glued_needed_mm(outside_mm))


BOUNDS = (
    Bound(
        Limit.SIGHT,
        True,
        lambda told: told.level,
        lambda swim, told: swim.case.wanted.level,
        (Cure.COME_CLOSER, Cure.STAND_HIGHER, Cure.OTHER_STRETCH),
        grace=ENOUGH,
    ),
    Bound(
        Limit.RIDE,
        True,
        lambda told: told.ride_margin,
        lambda swim, told: RIDES,
        (Cure.EASE_OFF, Cure.SHALLOWER, Cure.MORE_TOP, Cure.NEXT_SIZE, Cure.CALMER_WATER),
    ),
    Bound(
        Limit.BITE,
        False,
        lambda told: told.sink_force_g,
        lambda swim, told: np.multiply(swim.case.wanted.bite_share, told.pull_g),
        (Cure.BOLDER_BITES, Cure.MORE_SHOT),
    ),
    Bound(
        Limit.STRENGTH,
        False,
        lambda told: told.showing_mm,
        lambda swim, told: swim.longest_showing_mm(told.diameter_mm),
        (Cure.THICKER_TIP,),
    ),
    Bound(
        Limit.BODY,
        False,
        lambda told: told.diameter_mm,
        lambda swim, told: swim.thickest_mm,
        (Cure.THICKER_BODY,),
        in_hand=lambda swim: swim.thickest_mm - swim.case.tip.stock.diameter_mm,
    ),
    Bound(
        Limit.ROOM,
        False,
        lambda told: told.glued_mm,
        lambda swim, told: swim.hull.body_length_mm,
        (Cure.LONGER_BODY,),
        in_hand=lambda swim: swim.hull.body_length_mm - swim.case.tip.glued_mm,
    ),
    Bound(
        Limit.GLUE,
        True,
        lambda told: None if told.outside_mm is None else told.glued_mm,
        lambda swim, told: float(glued_needed_mm(float(np.asarray(told.outside_mm)))),
        (Cure.MORE_GLUED,),
        in_hand=lambda swim: _glue_to_spare_mm(swim.case.tip),
    ),
    Bound(
        Limit.LOAD,
        True,
        lambda told: told.pull_g,
        lambda swim, told: LEAST_PULL_G,
        (Cure.BIGGER_FLOAT, Cure.LIGHTER_TIP),
    ),
    Bound(
        Limit.BALANCE,
        True,
        lambda told: told.uprightness,
        lambda swim, told: lean.SAFE,
        (Cure.BIGGER_FLOAT, Cure.LIGHTER_TIP),
        in_hand=lambda swim: swim.uprightness - lean.SAFE if swim.uprightness > 1.0 else 0.0,
    ),
)
"""Every limit, sight first; the order in which failures are told."""
BY_LIMIT = {bound.limit: bound for bound in BOUNDS}


def least_wet_mm(wave_rms_mm: float) -> float:
    """Return the length that must stay wet [mm]: twice the water's own ups and downs, or 10 mm.

    In whole millimetres; ``wave_rms_mm`` is the chop's root mean square against the float [mm].

    Examples
    --------
    >>> least_wet_mm(3.0), least_wet_mm(6.2)
    (10.0, 13.0)
    """
    return max(LEAST_WET_MM, float(math.ceil(2 * wave_rms_mm)))


def least_glued_mm(outside_mm: ArrayLike) -> Array:
    """Return the length to glue in [mm] for so much outside [mm], in whole millimetres.

    Examples
    --------
    >>> least_glued_mm([30.0, 60.0]).tolist()
    [5.0, 8.0]
    """
    return np.ceil(glued_needed_mm(outside_mm) - SLACK)


def kept(swim: Swim, told: Measures) -> dict[Limit, Mask]:
    """Return where each limit is kept, those left out whose measure is not told."""
    return {b.limit: b.kept(swim, told) for b in BOUNDS if b.value(told) is not None}


def failures(swim: Swim, told: Measures) -> tuple[Failure, ...]:
    """Return the limits that one tip does not keep, by how much, and whether that counts."""
    return tuple(failure for bound in BOUNDS for failure in bound.failures(swim, told))
