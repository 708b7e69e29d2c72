"""Which tip and which waters of an answer are drawn."""

from typing import Literal

from tipsight.advice.answer import Answer, Block, Sight
from tipsight.advice.facts import Repaint
from tipsight.advice.sighting import along
from tipsight.advice.swim import BRIGHT, DARK, swim
from tipsight.inputs.case import Light, Stretch
from tipsight.output import names

Place = Literal["bank", "bench"]
Work = Literal["fit", "repaint", "bank"]


def waters(answer: Answer) -> tuple[Stretch, ...]:
    """Return the waters on which the answer judges a tip; dark and bright where it was not known."""
    told = {stretch.name: stretch for stretch in (DARK, BRIGHT, *answer.case.stretches)}
    judged = [seen.name for seen in answer.tip_in_hand.visibility.by_background]
    return tuple(told[name] for name in judged)


def deciding(answer: Answer, water: Stretch) -> tuple[Light, Stretch]:
    """Return the light and the patch of a water in which the tip in hand is worst, as the answer counts."""
    here = swim(answer.case)
    keys = here.waters.of(water.name)
    if len(keys) == 1:
        return here.waters.views[keys[0]]
    tip = answer.tip_in_hand.tip
    levels = [float(along(here, here.waters[key], tip).level[here.here]) for key in keys]
    return here.waters.views[keys[levels.index(min(levels))]]


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
