"""The limits that a tip must keep, for one tip in words and for a whole shelf as masks."""

import math
from dataclasses import replace

from tipsight.advice.answer import Handling, Load, Visibility
from tipsight.advice.swim import Swim, painted_mm
from tipsight.afloat import heave
from tipsight.errors import Mistakes
from tipsight.inputs.case import Tip
from tipsight.inputs.settle_tip import glued_needed_mm
from tipsight.load import budget
from tipsight.sight import grades

RIDES, REFUSED = 3.0, 2.0
"""Ride margin that rides well, and below which a tip is refused (judgement)."""
LEAST_WET_MM = 10.0
"""What keeps the body's shoulder down (judgement)."""


def least_wet_mm(wave_rms_mm: float) -> float:
    """Return the length that must stay wet [mm]: twice the water's own ups and downs, or 10 mm.

    Parameters
    ----------
    wave_rms_mm : float
        Root mean square of the chop against the float [mm].

    Returns
    -------
    float
        In whole millimetres [mm].

    Examples
    --------
    >>> least_wet_mm(3.0), least_wet_mm(6.2)
    (10.0, 13.0)
    """
    return max(LEAST_WET_MM, float(math.ceil(2 * wave_rms_mm)))


def least_glued_mm(outside_mm: float) -> float:
    """Return the length to glue in for so much outside [mm], in whole millimetres.

    Parameters
    ----------
    outside_mm : float
        Showing and wet part together [mm].

    Returns
    -------
    float
        Length in the body [mm].

    Examples
    --------
    >>> least_glued_mm(30.0), least_glued_mm(60.0)
    (5.0, 8.0)
    """
    return float(math.ceil(glued_needed_mm(outside_mm) - 1e-9))


def tenths(value: float) -> float:
    """Return a number to the tenth below, so that none is said to reach what it falls short of.

    Parameters
    ----------
    value : float
        A level or a margin [-].

    Returns
    -------
    float
        Tenths.

    Examples
    --------
    >>> tenths(4.97), tenths(5.0)
    (4.9, 5.0)
    """
    return math.floor(10 * value + 1e-6) / 10


def fails(
    swim: Swim, tip: Tip, sight: Visibility, handled: Handling, loaded: Load
) -> tuple[str, ...]:
    """Return which limits a tip does not keep, and by how much, in words."""
    wanted, words = swim.case.wanted, []
    if sight.level < wanted.level:
        words.append(
            f"sight: {sight.grade} (level {tenths(sight.level):.1f}) where {grades.grade(wanted.level)} "
            f"({wanted.level:g}) is wanted"
        )
    if handled.ride_margin < REFUSED:
        words.append(
            f"ride: margin {tenths(handled.ride_margin):.1f} where {REFUSED:g} is the least"
        )
    bite_limit = wanted.bite_share * loaded.pull_g
    if handled.sink_force_g > bite_limit + 1e-9:
        words.append(
            f"bite: {handled.sink_force_g:.2f} g to sink it where {bite_limit:.2f} g is the most"
        )
    longest = swim.longest_showing_mm(tip.stock.diameter_mm)
    if tip.showing_mm > longest + 1e-9:
        words.append(
            f"strength: {tip.showing_mm:.0f} mm showing where {longest:.0f} mm is the most"
        )
    if not handled.upright:
        words.append("balance: top-heavy, it leans or falls over")
    return tuple(words)


def quick_fails(swim: Swim, tip: Tip) -> bool:
    """Return whether a tip breaks any limit but sight, without all of its numbers."""
    painted, warm = painted_mm(tip), swim.case.stream.temperature_c
    stiff = float(heave.stiffness_g_per_mm(painted, warm))
    force, old = stiff * tip.showing_mm, swim.case.tip
    if (
        float(swim.ride_margin(painted, tip.showing_mm)[0]) < REFUSED
        or tip.showing_mm > swim.longest_showing_mm(tip.stock.diameter_mm) + 1e-9
    ):
        return True
    if replace(tip, showing_mm=old.showing_mm, wet_mm=old.wet_mm, bands=old.bands) == old:
        pull = swim.pull_g - stiff * (tip.showing_mm - old.showing_mm)  # the same stick, set anew
    else:
        try:
            pull = budget.pull_g(swim.hull, tip, warm)
        except Mistakes:
            return True
    return bool(force > swim.case.wanted.bite_share * pull + 1e-12)
