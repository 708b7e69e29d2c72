"""One water at the asked distance, with the paints that are to be drawn before it."""

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from tipsight.advice.swim import finish_of
from tipsight.afloat import chop, hidden
from tipsight.inputs.case import Case, Finish, Stretch, Tip
from tipsight.scene import mist
from tipsight.scene.look import Look, look
from tipsight.scene.setting import Setting, setting

Array = NDArray[np.float64]


@dataclass(frozen=True, eq=False)
class Scene:
    """One water at the asked distance, with all that is painted on the tips to be drawn."""

    case: Case
    stretch: Stretch
    finishes: tuple[Finish, ...]
    here: Setting
    look: Look
    sea: chop.Sea
    hidden_mm: float
    """Mean height that crests hide of a tip's foot."""

    @property
    def slope_of_sight(self) -> float:
        """Fall of the line of sight."""
        return self.case.place.eye_height_m / self.case.place.range_m

    @property
    def water(self) -> Array:
        """Channels of the mean water, shape (4,) [cd/m2]."""
        return np.asarray(self.look.water[0])

    @property
    def clear(self) -> float:
        """What the mist lets through."""
        place = self.case.place
        return float(
            mist.transmittance(
                math.hypot(place.range_m, place.eye_height_m), self.case.light.visibility_m
            )
        )


def scene(case: Case, stretch: Stretch, tips: Sequence[Tip]) -> Scene:
    """Return one water at the asked distance, with the same light and paint as in the answer.

    Parameters
    ----------
    case : Case
        The question in numbers.
    stretch : Stretch
        The water behind the tip.
    tips : sequence of Tip
        The tips that are to be drawn before it.

    Raises
    ------
    Mistakes
        For a paint, bank or water colour that is not known.

    Examples
    --------
    >>> from tipsight.inputs.demo import question
    >>> from tipsight.inputs.settle import settle
    >>> case = settle(question())
    >>> scene(case, case.stretches[0], [case.tip]).water.shape
    (4,)
    """
    finishes = tuple(dict.fromkeys(finish_of(tip, b.paint) for tip in tips for b in tip.bands))
    parts = case.light, stretch, case.wind, case.stream, case.angler
    place = case.place
    sea = chop.sea(case.wind, case.stream.temperature_c)
    mean_mm, _ = hidden.hidden_mm(sea, place.range_m, place.eye_height_m)
    seen = look(*parts, finishes, [place.range_m], place.eye_height_m)
    return Scene(case, stretch, finishes, setting(*parts), seen, sea, float(mean_mm))
