"""One tip on this float in this swim: how it is seen, how it rides, what it takes."""

from tipsight.advice import limits
from tipsight.advice.answer import Block
from tipsight.advice.handling import handling
from tipsight.advice.limits import Measures, glued_outside_mm
from tipsight.advice.loading import load
from tipsight.advice.sighting import visibility
from tipsight.advice.swim import Swim
from tipsight.errors import Mistakes
from tipsight.inputs.case import Tip
from tipsight.load import balance, budget
from tipsight.load.tips import showing_diameter_mm


def close_look(swim: Swim, tip: Tip) -> Block:
    """Return everything about ``tip`` on this float in this swim.

    Raises
    ------
    Mistakes
        If the float sinks with it.
    """
    if tip not in swim.looks:
        swim.looks[tip] = _look(swim, tip)
    return swim.looks[tip]


def _look(swim: Swim, tip: Tip) -> Block:
    painted_mm, rigged = showing_diameter_mm(tip), swim.rigged(tip)
    sight = visibility(swim, tip)
    handled = handling(swim, tip, painted_mm, rigged, sight.level)
    loaded = load(swim, tip)
    told = Measures(
        level=sight.level,
        ride_margin=handled.ride_margin,
        sink_force_g=handled.sink_force_g,
        pull_g=loaded.pull_g,
        diameter_mm=tip.stock.diameter_mm,
        showing_mm=tip.showing_mm,
        glued_mm=tip.glued_mm,
        outside_mm=glued_outside_mm(tip),
        uprightness=handled.uprightness,
    )
    return Block(tip, painted_mm, rigged, sight, handled, loaded, limits.failures(swim, told))


def is_sound(swim: Swim, tip: Tip) -> bool | None:
    """Return whether a tip keeps every limit but sight and balance, at the cost of a glance.

    None for a tip with which the float sinks or falls over.
    """
    try:
        return swim.sounds[tip]
    except KeyError:
        found = swim.sounds[tip] = _sound(swim, tip)
        return found


def _sound(swim: Swim, tip: Tip) -> bool | None:
    painted_mm, warm = showing_diameter_mm(tip), swim.case.stream.temperature_c
    try:
        pull = budget.pull_g(swim.hull, tip, warm)
    except Mistakes:
        return None
    if balance.uprighting_g_mm(swim.hull, tip, warm) <= 0.0:
        return None
    told = Measures(
        ride_margin=float(swim.ride_margin(painted_mm, tip.showing_mm)[0]),
        sink_force_g=float(budget.sink_force_g(painted_mm, tip.showing_mm, warm)),
        pull_g=pull,
        diameter_mm=tip.stock.diameter_mm,
        showing_mm=tip.showing_mm,
        glued_mm=tip.glued_mm,
        outside_mm=glued_outside_mm(tip),
    )
    return all(fail.as_it_is for fail in limits.failures(swim, told))
