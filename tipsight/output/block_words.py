"""One tip in words: how it rides, what sinks it, which bites it shows, what it takes."""

import re

from tipsight.advice.answer import Block
from tipsight.inputs.case import Case
from tipsight.load import change, law, shot
from tipsight.output import shot_words, things, times, words

_MANY = re.compile(r"(?!an? )(?!less )|.* and ")
"""Shot that is more than one."""
MANY_SHOT = 16
"""More of one size than this nobody pinches on a line (judgement)."""
SHORT_G = 0.015
"""Less than this is not worth a word: the lightest shot weighs 0.01 g (judgement)."""


def ride_words(block: Block) -> str:
    """Return how a tip rides, and which dips are the water's own.

    Parameters
    ----------
    block : Block
        The tip looked at.
    terse : bool
        Whether few words must do.

    Returns
    -------
    str
        A piece of a sentence.
    """
    handled = block.handling
    how = words.rides(handled.ride_margin, handled.upright)
    if not handled.upright:
        return how
    sound = handled.ride_margin >= words.JUST
    dips = times.dips(handled.ordinary_dip_s, handled.dips_per_min, sound)
    return f"{how} (margin {words.margin(handled.ride_margin)}), dips {dips}"


def force_words(case: Case, force_g: float) -> str:
    """Return a force in water, said in shot by name and in grams.

    Parameters
    ----------
    case : Case
        The question, for its shot and its water.
    force_g : float
        Force [g].

    Returns
    -------
    str
        A piece of a sentence.
    """
    metal, water_c = case.box.shot_metal, case.stream.temperature_c
    in_air_g = force_g / float(shot.wet_share(metal, water_c))
    named = law.usable(case.box.shot or shot.sizes(metal))
    return f"{shot_words.near(change.nearest(in_air_g, named))} ({words.grams(force_g)})"


def bite_words(case: Case, block: Block, terse: bool = False) -> str:
    """Return what sinks a tip, the least dip that is seen, and the lightest bite that makes it.

    Parameters
    ----------
    case : Case
        The question, for its shot and its water.
    block : Block
        The tip looked at.
    terse : bool
        Whether few words must do.

    Returns
    -------
    str
        A piece of a sentence.
    """
    handled = block.handling
    force = force_words(case, handled.sink_force_g)
    said = f"{force} {'sink' if _MANY.match(force) else 'sinks'} it; "
    if handled.visible_dip_mm is None:
        return said + "no dip can be seen"
    slow, pluck = handled.slow_bite_g, words.grams(handled.pluck_g)
    dip = f"{handled.visible_dip_mm:.0f} mm"
    if slow is None:
        draw = ""
    elif slow >= handled.sink_force_g:
        draw = "a draw that shows sinks it, "
    else:
        draw = f"{'' if terse else 'slow '}draw {words.grams(slow)}, "
    if terse:
        return f"{said}dip {dip}, {draw}pluck {pluck}"
    return f"{said}least dip seen {dip}: {draw}pluck {pluck}"


def load_words(block: Block) -> str:
    """Return the shot for a tip, and where it goes.

    Parameters
    ----------
    block : Block
        The tip looked at.

    Returns
    -------
    str
        A piece of a sentence.
    """
    loaded = block.load
    said = f"{words.grams(loaded.shot_g)} of {loaded.shot_metal}: {things.shot_list(loaded.shot)}"
    if max((line.count for line in loaded.shot), default=0) > MANY_SHOT:
        said += "; too many to pinch on: have larger ones, of a metal that your rules allow"
    return said + (
        f"; short by {words.grams(loaded.short_by_g)}" if loaded.short_by_g >= SHORT_G else ""
    )


def stand_words(block: Block) -> str:
    """Return how a float stands in the wind and when it is held back.

    Parameters
    ----------
    block : Block
        The tip looked at.

    Returns
    -------
    str
        A piece of a sentence.
    """
    handled = block.handling
    if not handled.upright:
        return "falls over"
    if handled.lean_deg is None or handled.lift_g is None:
        return "held back so, it lies flat"
    said = f"upright, leaning {handled.lean_deg:.0f} deg"
    if handled.lift_g < 0.005:
        return said
    return f"{said}; holding back lifts it by {words.grams(handled.lift_g)}"
