"""Which tip and which waters of an answer are drawn."""

from collections.abc import Sequence
from typing import Literal

from tipsight import tables
from tipsight.advice.answer import Answer, Block, Sight
from tipsight.advice.facts import Repaint
from tipsight.advice.sighting import along
from tipsight.advice.swim import BRIGHT, DARK, finish_of, swim
from tipsight.inputs.case import Case, Light, Stretch, Tip
from tipsight.output import names

Place = Literal["bank", "bench"]
Work = Literal["fit", "repaint", "bank"]
View = tuple[Light, Stretch]
KEPT = 24
"""Tips on waters kept in mind: what is drawn is also told of."""


def waters(answer: Answer) -> tuple[Stretch, ...]:
    """Return the waters on which the answer judges a tip; dark and bright where it was not known."""
    told = {stretch.name: stretch for stretch in (DARK, BRIGHT, *answer.case.stretches)}
    judged = [seen.name for seen in answer.tip_in_hand.visibility.by_background]
    return tuple(told[name] for name in judged)


def deciding(answer: Answer, water: Stretch, tip: Tip) -> View:
    """Return the light and the patch of a water in which a tip is worst, as the answer counts it."""
    views, levels = _seen(answer.case, water, (tip,))
    return views[levels[0].index(min(levels[0]))]


def in_common(answer: Answer, water: Stretch, tips: Sequence[Tip]) -> View:
    """Return the light and the patch in which no tip is seen much better than the answer counts it."""
    views, levels = _seen(answer.case, water, tuple(tips))
    over = [max(one[n] / max(min(one), 1e-9) for one in levels) for n in range(len(views))]
    return views[over.index(min(over))]


@tables.lately(KEPT)
def _seen(
    case: Case, water: Stretch, tips: tuple[Tip, ...]
) -> tuple[list[View], list[list[float]]]:
    """Return all that a water may be, and the level of each tip on each."""
    here = swim(case)
    keys = here.waters.of(water.name)
    views = [here.waters.views[key] for key in keys]
    if len(keys) == 1:
        return views, [[1.0]] * len(tips)
    finishes = dict.fromkeys(finish_of(tip, band.paint) for tip in tips for band in tip.bands)
    lit = here.wearing(tuple(finishes))
    each = [[float(along(lit, lit.waters[key], tip).level[lit.here]) for key in keys] for tip in tips]
    return views, each


def advised(answer: Answer) -> tuple[Place, Block]:
    """Return where the advice is carried out, at the bank if that is enough, and the tip of it."""
    bank, bench = answer.at_the_bank, answer.at_the_bench
    if bank.block.passes or bench is None:
        return "bank", bank.block
    return "bench", bench.block


def made(answer: Answer) -> tuple[Work, Block]:
    """Return the work that a tip takes, at the bench if there is any for it, and that tip."""
    bench = answer.at_the_bench
    if bench is None or not bench.actions:
        return "bank", answer.at_the_bank.block
    return ("repaint" if bench.does(Repaint) else "fit"), bench.block


def beside(answer: Answer) -> tuple[tuple[str, Block], ...]:
    """Return the tip in hand and, where another is advised, that one, each with its label."""
    place, block = advised(answer)
    if block is answer.tip_in_hand or block.tip == answer.tip_in_hand.tip:
        return (("As it is", answer.tip_in_hand),)
    return (("As it is", answer.tip_in_hand), (f"At the {place}", block))


def compared(answer: Answer) -> tuple[tuple[str, Sight], ...]:
    """Return what strips are drawn of: both tips on one water, or the advised one on each of more."""
    tips = beside(answer)
    sights = tips[-1][1].visibility.by_background
    if len(sights) == 1:
        return tuple((label, block.visibility.by_background[0]) for label, block in tips)
    called = (names.short_water(names.stretch(answer.case, one.name)) for one in sights)
    return tuple((f"On {name}", one) for name, one in zip(called, sights, strict=True))
