"""Why: what decides, in three to five facts, what would turn the answer, and what is unsure."""

from dataclasses import replace

import numpy as np

from tipsight.advice.answer import (
    Block,
    Change,
    PaintShows,
    Reason,
    Size,
    Turns,
    Unsure,
    WaterHides,
)
from tipsight.advice.bench import Shelf
from tipsight.advice.close_look import close_look
from tipsight.advice.facts import Doubt
from tipsight.advice.fit import fit
from tipsight.advice.on_the_spot import best_level
from tipsight.advice.sighting import seen, streaks_share
from tipsight.advice.swim import BRIGHT, DARK, Swim, finish_of
from tipsight.inputs.case import Tip
from tipsight.sight.energy import MM_PER_ARCMIN_M

NOTICED = 0.1
"""Share of the level that the streaks must take, or normal eyes gain, to be worth a line."""
HIDES_MM = 1.0  # less than this of the foot is not worth a word; judgement
MOST_REASONS = 5


def doubts(swim: Swim, tip: Tip) -> tuple[Unsure, ...]:
    """Return the doubts about how a tip is seen, the one whose removal helps most first."""
    here = swim.here
    sights = [seen(swim, swim.waters[name], tip) for name in swim.judged]
    worst = min(sights, key=lambda one: one.level[here])
    if worst.level[here] <= 0:
        return ()
    low, high = worst.band(here)
    found = []
    for doubt in worst.doubts:
        less_low, less_high = worst.band(here, without=doubt)
        found.append(Unsure(doubt, float((high / low) / (less_high / less_low))))
    if swim.unsure:
        levels = [max(float(one.level[here]), 1e-6) for one in sights]
        found.append(Unsure(Doubt.BEHIND, max(levels) / min(levels)))
    # of such as differ by less than a hundredth the first named stays first
    return tuple(sorted(found, key=lambda doubt: -round(doubt.spread, 2)))


def _size(swim: Swim, block: Block) -> Size:
    tip, metres = block.tip, float(swim.range_m[swim.here])
    tall, wide = (x / (MM_PER_ARCMIN_M * metres) for x in (tip.showing_mm, block.painted_mm))
    return Size(metres, tip.showing_mm, tip.stock.diameter_mm, tall, wide)


def _paint(swim: Swim, block: Block) -> list[PaintShows]:
    found: dict[str, PaintShows] = {}
    for key in swim.judged:
        water, tip = swim.waters[key], block.tip
        states = [swim.finishes.index(finish_of(tip, band.paint)) for band in tip.bands]
        shares = [float(c) for c in water.contrast[states, swim.here, 0]]
        best = int(np.argmax(np.abs(shares)))
        told = PaintShows(water.name, tip.bands[best].paint, shares[best])
        weaker = (
            abs(told.contrast) < abs(found[told.water].contrast) if told.water in found else True
        )
        if weaker:  # of the lights and patches of one stretch, the one that shows it least
            found[told.water] = told
    return list(found.values())


def _ripple(swim: Swim, block: Block) -> list[WaterHides]:
    hidden = block.handling.hidden_mm
    cost = streaks_share(swim, block.tip)
    return [WaterHides(hidden, cost)] if hidden >= HIDES_MM or cost >= NOTICED else []


def _other_water(swim: Swim, shelf: Shelf, bench: Change) -> list[Turns]:
    """Tell how the answer turns when the water behind the tip is the other kind."""
    names = {swim.waters[key].name for key in swim.judged}
    if len(names) > 1:
        return []
    tip = bench.block.tip
    first = swim.finishes.index(finish_of(tip, tip.bands[0].paint))
    other = DARK if swim.waters[swim.judged[0]].contrast[first, swim.here, 0] < 0 else BRIGHT
    there = swim.on(other.name)
    hand = close_look(there, swim.case.tip)
    turned = fit(replace(shelf, swim=there), hand, hand, best_level(there)).change
    if turned is None or turned.block.tip.bands == bench.block.tip.bands:
        return []
    return [Turns({"behind": other.name}, turned.block, water=other.name)]


def _normal_colour(here: Swim, shelf: Shelf, old: Block, bench: Change) -> list[Turns]:
    """Tell how the answer turns for eyes that see colours as most do."""
    angler = here.case.angler
    if angler.colour_vision == "normal":
        return []
    case = replace(here.case, angler=replace(angler, colour_vision="normal"))
    usual = here.lit(case)
    new = close_look(usual, here.case.tip)
    turned = fit(replace(shelf, swim=usual), new, new, best_level(usual)).change
    told = Turns({"colour_vision": "normal"}, new, colour_vision=angler.colour_vision)
    if turned is not None and turned.block.tip.bands != bench.block.tip.bands:
        return [replace(told, block=turned.block)]
    mine, theirs = (max(one.visibility.level, 1e-6) for one in (old, new))
    if abs(np.log(theirs / mine)) > np.log(1 + NOTICED):
        return [replace(told, level=mine)]
    return []


def reasons(
    swim: Swim, shelf: Shelf, in_hand: Block, lead: Block, bench: Change | None
) -> tuple[Reason, ...]:
    """Return why, what decides first, what would turn the answer last.

    ``lead`` is the tip that the answer leads with where there is nothing to fit.
    """
    shown = bench.block if bench is not None else lead
    turns = (
        [*_normal_colour(swim, shelf, in_hand, bench), *_other_water(swim, shelf, bench)]
        if bench
        else []
    )
    found: tuple[Reason, ...] = (
        _size(swim, shown),
        *_paint(swim, shown)[:2],
        *_ripple(swim, shown),
        *turns,
    )
    return found[:MOST_REASONS]
