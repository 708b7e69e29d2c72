"""How paints show on dark and on bright water, at a usual distance in a usual light."""

from collections.abc import Sequence

from tipsight.advice.swim import BRIGHT, DARK
from tipsight.inputs.case import Finish
from tipsight.inputs.question import Question
from tipsight.inputs.settle import settle
from tipsight.scene.look import Look, look


def looks(names: Sequence[str]) -> dict[str, Look]:
    """Return what the eye gets of fresh paints on each water, as in a question of which nothing is told."""
    case = settle(Question())
    finishes = [Finish(name) for name in names]
    around = case.wind, case.stream, case.angler, finishes
    return {
        water.name: look(case.light, water, *around, [case.place.range_m], case.place.eye_height_m)
        for water in (DARK, BRIGHT)
    }


def contrasts(names: Sequence[str]) -> dict[str, dict[str, float]]:
    """Return the contrast in luminance of each paint on each water [-]."""
    seen = looks(names)
    return {
        name: {
            water: float(on.tips[at, 0, 0] / on.water[0, 0] - 1.0) for water, on in seen.items()
        }
        for at, name in enumerate(names)
    }
