"""What the float takes with one tip: the load, the change from now, and the shot list."""

from tipsight.advice.answer import Load, ShotLine
from tipsight.advice.swim import Swim
from tipsight.inputs.case import Tip
from tipsight.load import budget, change, law, plan


def load(swim: Swim, tip: Tip) -> Load:
    """Return what the float takes with a tip, in shot of the box's metal, never more than that."""
    box, warm = swim.case.box, swim.case.stream.temperature_c
    pull = budget.pull_g(swim.hull, tip, warm)
    planned = plan.plan(pull, box.shot, swim.hull.fixing, warm)
    wanted, now = pull / swim.wet_share, swim.pull_g / swim.wet_share
    return Load(
        shot_metal=box.shot_metal,
        shot_g=wanted,
        pull_g=pull,
        change_g=wanted - now,
        step=change.change(now, wanted, law.usable(box.shot)),
        shot=tuple(ShotLine(name, count, where) for name, count, where in planned.shot),
        short_by_g=planned.left_g / swim.wet_share,
    )
