"""What is read of one tip: how it rides, what sinks it, which bites it shows, what it takes."""

from dataclasses import dataclass

from tipsight.advice.answer import Block
from tipsight.advice.limits import RIDES
from tipsight.inputs.case import Case
from tipsight.load import change, law, shot
from tipsight.output import measures, names, shot_words
from tipsight.output.measures import grams

MANY_SHOT = 16  # more of one size than this nobody pinches on a line; judgement
SHORT_G = 0.015  # less than this is not worth a word: the lightest shot weighs 0.01 g; judgement


def ride(block: Block) -> str:
    """Return how a tip rides, and which dips are the water's own."""
    handled = block.handling
    how = measures.rides(handled.ride_margin, handled.upright)
    if not handled.upright:
        return how
    sound = handled.ride_margin >= RIDES
    dips = measures.dips(handled.ordinary_dip_s, handled.dips_per_min, sound)
    return f"{how} (margin {measures.margin(handled.ride_margin)}), dips {dips}"


@dataclass(frozen=True)
class Force:
    """A force in water, said in shot by name and in grams."""

    words: str
    many: bool
    """Whether it is more than one shot."""


def force(case: Case, force_g: float) -> Force:
    """Return a force in the shot of the box, or of the table where the box has none."""
    metal, water_c = case.box.shot_metal, case.stream.temperature_c
    in_air_g = force_g / float(shot.wet_share(metal, water_c))
    near = change.nearest(in_air_g, law.usable(case.box.shot or shot.sizes(metal)))
    many = sum(count for _, count in near.shot) > 1
    return Force(f"{shot_words.near(near)} ({grams(force_g)})", many)


def sinks(case: Case, block: Block) -> str:
    """Return what sinks a tip."""
    told = force(case, block.handling.sink_force_g)
    return f"{told.words} {'sink' if told.many else 'sinks'} it"


def shows(block: Block, terse: bool = False) -> str:
    """Return the least dip that is seen, and the lightest bite that makes it."""
    handled = block.handling
    if handled.visible_dip_mm is None:
        return "no dip can be seen"
    slow, pluck = handled.slow_bite_g, grams(handled.pluck_g)
    dip = f"{handled.visible_dip_mm:.0f} mm"
    if slow is None:
        draw = ""
    elif slow >= handled.sink_force_g:
        draw = "a draw that shows sinks it, "
    else:
        draw = f"{'' if terse else 'slow '}draw {grams(slow)}, "
    if terse:
        return f"dip {dip}, {draw}pluck {pluck}"
    return f"least dip seen {dip}: {draw}pluck {pluck}"


def bites(case: Case, block: Block, terse: bool = False) -> str:
    """Return what sinks a tip and which bites it shows."""
    return f"{sinks(case, block)}; {shows(block, terse)}"


def takes(block: Block) -> str:
    """Return how much shot a tip takes, and of which metal."""
    return f"{grams(block.load.shot_g)} of {block.load.shot_metal}"


def hangs(block: Block) -> str:
    """Return which shot goes where, and what no shot makes up."""
    loaded = block.load
    said = names.shot_list(loaded.shot)
    if max((line.count for line in loaded.shot), default=0) > MANY_SHOT:
        said += "; too many to pinch on: have larger ones, of a metal that your rules allow"
    return said + (
        f"; short by {grams(loaded.short_by_g)}" if loaded.short_by_g >= SHORT_G else ""
    )


def load(block: Block) -> str:
    """Return the shot for a tip, and where it goes."""
    return f"{takes(block)}: {hangs(block)}"


def stands(block: Block) -> str:
    """Return how a float stands in the wind and when it is held back."""
    handled = block.handling
    if not handled.upright:
        return "falls over"
    if handled.lean_deg is None or handled.lift_g is None:
        return "held back so, it lies flat"
    said = f"upright, leaning {handled.lean_deg:.0f} deg"
    if handled.lift_g < 0.005:
        return said
    return f"{said}; holding back lifts it by {grams(handled.lift_g)}"
