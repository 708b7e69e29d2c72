"""What is read of one tip: how it rides, what sinks it, which bites it shows, what it takes."""

from dataclasses import dataclass

from tipsight.advice.answer import Block, Step
from tipsight.advice.limits import RIDES
from tipsight.inputs.case import Case
from tipsight.load import change, law, shot
from tipsight.load.line import NEAR_MM
from tipsight.output import measures, names, shot_words
from tipsight.output.measures import grams

MANY_SHOT = 16  # more of one size than this nobody pinches on a line; judgement


def ride(block: Block) -> str:
    """Return how a tip rides, and which dips are the water's own."""
    handled = block.handling
    how = measures.rides(handled.ride_margin, handled.upright)
    if not handled.upright:
        return how
    sound = handled.ride_margin >= RIDES
    dips = measures.dips(handled.ordinary_dip_s, handled.dips_per_min, sound)
    return f"{how} (margin {measures.margins(handled)}); {dips}"


@dataclass(frozen=True)
class Force:
    """A force in water, said in shot by name and in grams."""

    shot: str
    grams: str
    many: bool
    """Whether it is more than one shot."""

    @property
    def words(self) -> str:
        """Both."""
        return f"{self.shot} ({self.grams})"


def force(case: Case, force_g: float) -> Force:
    """Return a force in the shot of the box, or of the table where the box has none."""
    metal, water_c = case.box.shot_metal, case.stream.temperature_c
    in_air_g = force_g / float(shot.wet_share(metal, water_c))
    near = change.nearest(in_air_g, law.usable(case.box.shot or shot.sizes(metal)))
    many = sum(count for _, count in near.shot) > 1
    return Force(shot_words.near(near), grams(force_g), many)


def sinks(case: Case, block: Block) -> str:
    """Return what sinks a tip."""
    told = force(case, block.handling.sink_force_g)
    return f"{told.words} {'bury' if told.many else 'buries'} it"


def shows(case: Case, block: Block) -> str:
    """Return the lightest bites that a person would see, said in shot."""
    handled = block.handling
    if handled.visible_dip_mm is None:
        return "seen too poorly to show a bite that does not bury it"
    quick = force(case, handled.pluck_g).shot
    slow = None if handled.slow_bite_g is None else force(case, handled.slow_bite_g).shot
    if slow is None or (handled.slow_bite_g or 0.0) >= handled.sink_force_g:
        return f"a quick pull of {quick} shows; a slow one that shows buries it"
    return f"a slow pull of {slow} or a quick one of {quick} shows"


def small_dip(block: Block) -> str:
    """Return the least dip that is seen."""
    dip = block.handling.visible_dip_mm
    return "no dip can be seen" if dip is None else f"the least dip seen is {dip:.0f} mm"


def bites(case: Case, block: Block) -> str:
    """Return what sinks a tip and which bites it shows."""
    return f"{sinks(case, block)}; {shows(case, block)}"


def takes(block: Block) -> str:
    """Return how much shot a tip takes, and of which metal."""
    return f"{grams(block.load.shot_g)} of {block.load.shot_metal}"


def hangs(block: Block) -> str:
    """Return which shot goes where, and what no shot makes up."""
    loaded = block.load
    said = names.shot_list(loaded.shot)
    if max((line.count for line in loaded.shot), default=0) > MANY_SHOT:
        said += "; too many to pinch on: have larger ones, of a metal that your rules allow"
    return said + high(block)


def high(block: Block) -> str:
    """Return how much more of the tip shows where no shot that he has comes nearer."""
    high_mm = block.load.high_mm
    if high_mm is None:
        shows = f"{grams(block.load.short_by_g)} short, so that its body shows"
    elif high_mm > NEAR_MM:
        shows = f"{high_mm:.0f} mm more than that shows"
    else:
        return ""
    return f"; {shows}: no shot you have comes nearer"


def step(case: Case, told: Step) -> str:
    """Return the least tip for a grade, and its price where it is beyond what people make."""
    if told.in_hand:
        return "the tip in hand, as it is"
    if told.block is None:
        return "out of reach with what you have"
    said = names.fitting(told.block.tip)
    if not told.unusual:
        return said
    sinks = force(case, told.block.handling.sink_force_g).shot
    return f"{said}, and {sinks} to sink it: beyond the usual"


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
