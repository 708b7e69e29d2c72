"""Why: what decides, in three to five lines, and what would turn the answer."""

from dataclasses import replace

import numpy as np

from tipsight.advice.answer import Block, Change, Doubt, Reason
from tipsight.advice.bench import Shelf
from tipsight.advice.examine import examine, seen, without_streaks
from tipsight.advice.fit import fit, fitting_words
from tipsight.advice.swim import BRIGHT, DARK, Swim, finish_of, painted_mm
from tipsight.inputs.case import Tip
from tipsight.sight.energy import MM_PER_ARCMIN_M
from tipsight.units import YARD_M

SAYS = {
    "distance": "how far it really is: pace it out, or count the line off the reel",
    "eyes": "your own eyes against others of your age: try a painted stick at known paces",
    "streaks": "how much the streaks of the ripple hide a thin tip: nobody has measured it",
    "water": "how bright the water behind the tip is: look from where your eye will be",
    "ripple": "how much of the foot the nearer ripples hide",
    "behind": "what the water behind the tip mirrors: look along the trot before you fish",
}
"""Each doubt in words, and what would settle it."""
NOTICED = 0.1
"""Share of the level that the streaks must take to be worth a line."""


def doubts(swim: Swim, tip: Tip) -> tuple[Doubt, ...]:
    """Return the doubts about how a tip is seen, the one whose removal helps most first.

    Parameters
    ----------
    swim : Swim
        The swim worked out once.
    tip : Tip
        The tip that is advised.

    Returns
    -------
    tuple of Doubt
        Each with how many times wider it makes the range of the level.
    """
    here = swim.here
    sights = [seen(swim, swim.waters[name], tip) for name in swim.judged]
    worst = min(sights, key=lambda one: one.level[here])
    if worst.level[here] <= 0:
        return ()
    low, high = worst.band(here)
    found = []
    for name in worst.doubts:
        less_low, less_high = worst.band(here, without=name)
        found.append(Doubt(name, SAYS[name], float((high / low) / (less_high / less_low))))
    if swim.unsure:
        levels = [max(float(one.level[here]), 1e-6) for one in sights]
        found.append(Doubt("behind", SAYS["behind"], max(levels) / min(levels)))
    return tuple(sorted(found, key=lambda doubt: -doubt.spread))


def _size(swim: Swim, block: Block) -> Reason:
    tip, metres = block.tip, swim.range_m[swim.here]
    tall, wide = (x / (MM_PER_ARCMIN_M * metres) for x in (tip.showing_mm, painted_mm(tip)))
    what = "it counts by its area, not its shape" if wide < 1 else "you can see its shape"
    return Reason(
        f"At {metres / YARD_M:.0f} yd {tip.showing_mm:g} mm of {tip.stock.diameter_mm:g} mm spans "
        f"{tall:.1f} by {wide:.1f} arc minutes: {what}."
    )


def _paint(swim: Swim, block: Block) -> list[Reason]:
    lines = []
    for name in swim.judged:
        water, tip = swim.waters[name], block.tip
        states = [swim.finishes.index(finish_of(tip, band.paint)) for band in tip.bands]
        shares = [float(c) for c in water.contrast[states, swim.here, 0]]
        best = int(np.argmax(np.abs(shares)))
        paint, contrast = tip.bands[best].paint, shares[best]
        lines.append(Reason(f"{_on(name)} {paint} is {beside(contrast)} what lies behind it."))
    return lines


def _on(name: str) -> str:
    """Return where a tip is seen, by the name of the water behind it."""
    if name.startswith("sun lane"):
        return f"In the {name}"
    if ", " in name:
        return f"Where the water mirrors {name.replace(' deg', ' deg high')},"
    return f"On the {name} water"


def beside(contrast: float) -> str:
    """Return how bright a paint is beside the water.

    Parameters
    ----------
    contrast : float
        Luminance of the paint over that of the water, less 1 [-].

    Returns
    -------
    str
        A piece of a sentence.

    Examples
    --------
    >>> beside(-0.93), beside(0.4), beside(0.98), beside(5.3)
    ('93% darker than', '40% brighter than', 'twice as bright as', '6.3 times as bright as')
    >>> beside(-0.997), beside(0.002)
    ('all but black against', 'just as bright as')
    """
    if contrast < -0.985:
        return "all but black against"
    if abs(contrast) < 0.005:
        return "just as bright as"
    if contrast < 0.95:
        return f"{abs(contrast):.0%} {'darker' if contrast < 0 else 'brighter'} than"
    times = f"{1 + contrast:.2g}"
    return "twice as bright as" if times == "2" else f"{times} times as bright as"


def _ripple(swim: Swim, block: Block) -> list[Reason]:
    hidden = block.handling.hidden_mm
    cost = 1 - block.visibility.level / max(without_streaks(swim, block.tip), 1e-9)
    words = []
    if hidden >= 1:
        words.append(f"nearer ripples hide about {hidden:.0f} mm of its foot")
    if cost >= NOTICED:
        words.append(f"the streaks of the water take {cost:.0%} of what calm water would give")
    if not words:
        return []
    said = "; ".join(words)
    return [Reason(said[0].upper() + said[1:] + ".")]


def _other_water(swim: Swim, shelf: Shelf, bench: Change) -> list[Reason]:
    """Say how the answer turns when the water behind the tip is the other kind."""
    if len(swim.judged) > 1:
        return []
    tip = bench.block.tip
    first = swim.finishes.index(finish_of(tip, tip.bands[0].paint))
    other = DARK if swim.waters[swim.judged[0]].contrast[first, swim.here, 0] < 0 else BRIGHT
    there = swim.on(other.name)
    in_hand = examine(there, swim.case.tip)
    turned = fit(replace(shelf, swim=there), in_hand).change
    return _turned(f"On {other.name} water", bench, turned, {"behind": other.name})


def _turned(
    when: str, bench: Change, turned: Change | None, options: dict[str, str]
) -> list[Reason]:
    if turned is None or turned.block.tip.bands == bench.block.tip.bands:
        return []
    words = f"{when} the choice would turn to {fitting_words(turned.block)}."
    return [Reason(words, options, turned.block)]


def _normal_colour(here: Swim, shelf: Shelf, old: Block, bench: Change) -> list[Reason]:
    """Say how the answer turns for eyes that see colours as most do."""
    angler = here.case.angler
    if angler.colour_vision == "normal":
        return []
    case = replace(here.case, angler=replace(angler, colour_vision="normal"))
    usual = here.lit(case, case.stretches)
    new = examine(usual, here.case.tip)
    turned = fit(replace(shelf, swim=usual), new).change
    options = {"colour_vision": "normal"}
    when = f"You told {angler.colour_vision} eyes: with normal ones"
    found = _turned(when, bench, turned, options)
    mine, theirs = (max(one.visibility.level, 1e-6) for one in (old, new))
    if not found and abs(np.log(theirs / mine)) > np.log(1 + NOTICED):
        words = f"{when} the tip in hand would be at level {theirs:.1f}, not {mine:.1f}."
        found = [Reason(words, options, new)]
    return found


def reasons(
    swim: Swim, shelf: Shelf, in_hand: Block, lead: Block, bench: Change | None
) -> tuple[Reason, ...]:
    """Return why, in three to five lines.

    Parameters
    ----------
    swim : Swim
        The swim worked out once.
    shelf : Shelf
        All that could be fitted.
    in_hand : Block
        The tip in hand.
    lead : Block
        The tip that the answer leads with.
    bench : Change or None
        What is to be fitted.

    Returns
    -------
    tuple of Reason
        What decides first; what would turn the answer last.
    """
    shown = bench.block if bench is not None else lead
    turns = (
        [*_normal_colour(swim, shelf, in_hand, bench), *_other_water(swim, shelf, bench)]
        if bench
        else []
    )
    return (_size(swim, shown), *_paint(swim, shown)[:2], *_ripple(swim, shown), *turns)[:5]
