"""What the float takes with one tip: the load, the fewest shot to touch, and what then hangs."""

import math

from tipsight.advice.answer import Load, ShotLine
from tipsight.advice.swim import Swim
from tipsight.afloat import heave
from tipsight.inputs.case import Tip
from tipsight.load import budget, law, line
from tipsight.load.tips import showing_diameter_mm


def load(swim: Swim, tip: Tip) -> Load:
    """Return what the float takes with a tip, and what to do to the shot that hangs now.

    Shot that was told is taken for what sets the tip in hand as it was told: only the difference
    counts then, so that a float that was weighed a little wrong still comes out right.
    """
    box, warm, share = swim.case.box, swim.case.stream.temperature_c, swim.wet_share
    pull = budget.pull_g(swim.hull, tip, warm)
    wanted, now = pull / share, swim.pull_g / share
    told_g = line.mass_g(swim.hung)
    stiffness = float(heave.stiffness_g_per_mm(showing_diameter_mm(tip), warm))
    if math.isclose(wanted, now, abs_tol=1e-9):
        to_g = told_g if box.hanging else wanted
        step, then = line.ShotChange((), (), 0.0, to_g - told_g), swim.hung
    else:
        to_g = max(told_g + wanted - now, 0.0) if box.hanging else wanted
        near_g = line.NEAR_MM * stiffness / share
        step, then = line.touch(swim.hung, to_g, near_g, law.usable(box.shot))
    high_mm = step.left_g * share / stiffness
    return Load(
        shot_metal=box.shot_metal,
        shot_g=wanted,
        pull_g=pull,
        change_g=wanted - now,
        step=step,
        shot=tuple(ShotLine(one.name, one.count, one.where) for one in then),
        short_by_g=step.left_g,
        high_mm=high_mm if high_mm <= max(tip.wet_mm, line.NEAR_MM) else None,
    )
