"""Why: what decides, in three to five lines, and what would turn the answer."""

from dataclasses import replace

import numpy as np

from tipsight.advice.answer import Block, Change, Doubt, Reason
from tipsight.advice.bench import Shelf
from tipsight.advice.candidates import MM_PER_ARCMIN_M
from tipsight.advice.examine import seen, without_streaks
from tipsight.advice.fit import fit, fitting_words
from tipsight.advice.swim import BRIGHT, DARK, Swim, finish_of, painted_mm
from tipsight.inputs.case import Tip

SAYS = {
    "distance": "how far it really is: pace it out or count the line off the reel",
    "eyes": "your own eyes against those of your age: a painted stick at a known distance tells",
    "streaks": "how much the streaks of the ripple hide a thin tip: no one has measured it on rivers",
    "water": "how bright the water behind the tip is: look from where your eye will be",
    "ripple": "how much of the foot the nearer ripples hide",
}
"""Each doubt in words, and what would settle it."""


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
    low, high = worst.band(here)
    found = []
    for name in worst.doubts:
        less_low, less_high = worst.band(here, without=name)
        found.append(Doubt(name, SAYS[name], float((high / low) / (less_high / less_low))))
    if swim.unsure:
        levels = [float(one.level[here]) for one in sights]
        spread = max(levels) / max(min(levels), 1e-6)
        found.append(Doubt("behind", "what the water behind the tip mirrors: look along the trot before you fish",
                           float(spread)))
    return tuple(sorted(found, key=lambda doubt: -doubt.spread))


def _size(swim: Swim, block: Block) -> Reason:
    tip, metres = block.tip, swim.range_m[swim.here]
    tall, wide = (x / (MM_PER_ARCMIN_M * metres) for x in (tip.showing_mm, painted_mm(tip)))
    what = "it is seen by its area, not its shape" if wide < 1 else "you can see its shape"
    return Reason(
        f"At {metres / 0.9144:.0f} yd, {tip.showing_mm:g} mm of {tip.stock.diameter_mm:g} mm spans {tall:.1f} by "
        f"{wide:.2f} arc minutes: {what}."
    )


def _paint(swim: Swim, block: Block) -> list[Reason]:
    lines = []
    for name in swim.judged:
        water, tip = swim.waters[name], block.tip
        shares = [float(water.contrast[swim.finishes.index(finish_of(tip, b.paint)), swim.here, 0]) for b in tip.bands]
        best = int(np.argmax(np.abs(shares)))
        paint, contrast = tip.bands[best].paint, shares[best]
        side = f"darker than the water by {-contrast:.0%}" if contrast < 0 else (
            f"brighter than the water by {contrast:.0%}" if contrast < 2 else
            f"{1 + contrast:.0f} times as bright as the water")
        lines.append(Reason(f"On {name} water {paint} shows best: {side}."))
    return lines


def _ripple(swim: Swim, block: Block) -> list[Reason]:
    lines, hidden = [], block.handling.hidden_mm
    cost = 1 - block.visibility.level / max(without_streaks(swim, block.tip), 1e-9)
    if hidden >= 1 or cost >= 0.1:
        lines.append(Reason(
            f"The nearer ripples hide about {hidden:.0f} mm of the foot, and the streaks of the water take "
            f"{max(cost, 0):.0%} of what a calm surface would give."
        ))
    return lines


def _flip(swim: Swim, shelf: Shelf, bench: Change | None) -> list[Reason]:
    """Say how the answer turns when the water behind the tip is the other kind."""
    if bench is None or swim.unsure:
        return []
    worst = min(bench.block.visibility.by_background, key=lambda one: one.level).name
    first = swim.waters[worst].contrast[swim.finishes.index(
        finish_of(bench.block.tip, bench.block.tip.bands[0].paint)), swim.here, 0]
    other = DARK if first < 0 else BRIGHT
    turned = fit(replace(swim, judged=(other.name,)), shelf, (other.name,)).change
    if turned is None or turned.block.tip.bands == bench.block.tip.bands:
        return []
    return [Reason(
        f"Were the water behind it {other.name}, the choice would turn to {fitting_words(turned.block)}.",
        {"behind": other.name}, turned.block,
    )]


def reasons(swim: Swim, shelf: Shelf, lead: Block, bench: Change | None) -> tuple[Reason, ...]:
    """Return why, in three to five lines.

    Parameters
    ----------
    swim : Swim
        The swim worked out once.
    shelf : Shelf
        All that could be fitted.
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
    return (_size(swim, shown), *_paint(swim, shown)[:2], *_ripple(swim, shown), *_flip(swim, shelf, bench))
