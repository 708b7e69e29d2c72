"""One tip in words: how it rides, what sinks it, which bites it shows, what it takes."""

from tipsight.advice.answer import Block
from tipsight.inputs.case import Case
from tipsight.load import plan, shot
from tipsight.output import things, times, words


def ride_words(block: Block) -> str:
    """Return how a tip rides, and which dips are the water's own.

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
    said = (
        f"{words.rides(handled.ride_margin, handled.upright)} "
        f"(margin {words.margin(handled.ride_margin)}), "
        f"dips {times.dips(handled.ordinary_dip_s, handled.dips_per_min)}"
    )
    if handled.hidden_mm >= 1:
        said += f"; ripples hide {handled.hidden_mm:.0f} mm"
    return said


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
    return (
        f"{plan.in_words(in_air_g, case.box.shot or shot.sizes(metal))} ({words.grams(force_g)})"
    )


def bite_words(case: Case, block: Block) -> str:
    """Return what sinks a tip, the least dip that is seen, and the lightest bite that makes it.

    Parameters
    ----------
    case : Case
        The question, for its shot and its water.
    block : Block
        The tip looked at.

    Returns
    -------
    str
        A piece of a sentence.
    """
    handled = block.handling
    said = f"it takes {force_words(case, handled.sink_force_g)} to sink it; "
    if handled.visible_dip_mm is None:
        return said + "no dip can be told at this distance"
    said += f"least dip seen {handled.visible_dip_mm:.0f} mm: "
    slow = handled.slow_bite_g
    return (
        said
        + (f"a slow draw of {words.grams(slow)}, " if slow is not None else "")
        + f"a pluck of {words.grams(handled.pluck_g)}"
    )


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
    return said + (
        f"; short by {words.grams(loaded.short_by_g)}" if loaded.short_by_g >= 0.005 else ""
    )
