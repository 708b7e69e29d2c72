"""The choice for the bench, the next step up, and what to say when nothing passes."""

from dataclasses import dataclass

from tipsight.advice import choose
from tipsight.advice.answer import Block, Change, Step
from tipsight.advice.bench import Shelf, repaint
from tipsight.advice.examine import examine
from tipsight.advice.options import tip_options
from tipsight.advice.swim import Swim
from tipsight.errors import Mistakes
from tipsight.sight import grades

GRADES = (2.5, 5.0, 10.0)
"""Levels of 'seen when stared at', 'kept in view' and 'easy'."""


@dataclass(frozen=True)
class Fit:
    """What to fit, or why there is nothing to fit."""

    change: Change | None
    warnings: tuple[str, ...]


def fitting_words(block: Block) -> str:
    """Return the tip of a block as a maker would ask for it.

    Parameters
    ----------
    block : Block
        A tip looked at.

    Returns
    -------
    str
        Stock, length and paint.
    """
    tip = block.tip
    paint = " over ".join(band.paint for band in tip.bands)
    return f"{tip.stock.diameter_mm:g} mm {tip.stock.kind}, {tip.showing_mm:g} mm showing, {paint}"


def _change(swim: Swim, block: Block) -> Change:
    kind = "repaint" if (block.tip.stock, block.tip.showing_mm) == (swim.case.tip.stock, swim.case.tip.showing_mm) \
        and block.tip.wet_mm == swim.case.tip.wet_mm else "fit"
    return Change(kind, False, f"{kind} {fitting_words(block)}", "cannot be undone",
                  block, tip_options(swim.case, block.tip))


def fit(swim: Swim, shelf: Shelf, waters: tuple[str, ...]) -> Fit:
    """Return what to fit: the tip in hand in new paint if that does, else the least tip that does.

    Parameters
    ----------
    swim : Swim
        The swim worked out once, its judged waters those given here.
    shelf : Shelf
        All that could be fitted.
    waters : tuple of str
        Waters on which the tip must be seen.

    Returns
    -------
    Fit
        The change, or None with which limit stands in the way and what would cure it.
    """
    wanted = swim.case.wanted.level
    again = repaint(swim)
    for candidates in (again, shelf):
        fields = candidates.fields(waters)
        found = next(candidates.passing(fields, wanted), None)
        if found is not None:
            return Fit(_change(swim, found), ())
    word = grades.grade(wanted)
    for level in sorted((g for g in GRADES if g < wanted), reverse=True):
        block = shelf.best_seen(fields)
        if block is not None and block.visibility.level >= level:
            lower = f"'{word}' is out of reach here with what you have: the best is " \
                    f"'{block.visibility.grade}' (level {block.visibility.level:.1f} where {wanted:g} is wanted)"
            return Fit(_change(swim, block), (lower + "; " + cure(swim, block),))
    return Fit(None, _why_nothing(swim, shelf, waters))


def cure(swim: Swim, block: Block) -> str:
    """Return what would bring a tip up to what is wanted, in words."""
    goes = block.visibility.goes_at_m
    nearer = f"come closer than {goes / 0.9144:.0f} yd" if goes is not None else "come closer"
    return f"to mend it: {nearer}, stand higher, or pick a darker or calmer stretch"


def _why_nothing(swim: Swim, shelf: Shelf, waters: tuple[str, ...]) -> tuple[str, ...]:
    """Say which limit stands in the way, by how much, and what would cure it."""
    words = []
    says = {
        "ride": "the water would drag it under (margin {:.1f} where 2 is the least): calmer water or a bolder tip",
        "bite": "it takes {:.2f} g to sink, more than the bites allow: ask for bold bites, or take a float with more shot",
        "strength": "it would have to show more than a tip of its thickness can stand",
        "body": "the body is too slender for it: a thicker body",
        "load": "the float has no shot left to cock it: a bigger float or a lighter tip",
    }
    for limit, sentence in says.items():
        pick = next(choose.brightest(shelf.fields(waters, ignore=limit)), None)
        if pick is None or pick.level < GRADES[0]:
            continue
        try:
            block = examine(swim, shelf.tip(pick))
        except Mistakes:
            continue
        number = {"ride": block.handling.ride_margin, "bite": block.handling.sink_force_g}.get(limit, 0.0)
        words.append(f"nothing passes; {fitting_words(block)} would be seen, but " + sentence.format(number))
    if not words:
        block = shelf.best_seen(shelf.fields(waters))
        if block is None:
            return ("nothing passes: no tip that you have keeps the limits on this float: a bigger float, or calmer water",)
        words.append(
            f"nothing passes: the best tip reaches level {block.visibility.level:.1f} where {GRADES[0]:g} is the least "
            f"to be seen at all; {cure(swim, block)}"
        )
    return tuple(words)


def next_steps(swim: Swim, shelf: Shelf, waters: tuple[str, ...]) -> tuple[Step, ...]:
    """Return the least tip for each grade.

    Parameters
    ----------
    swim : Swim
        The swim worked out once.
    shelf : Shelf
        All that could be fitted.
    waters : tuple of str
        Waters on which the tip must be seen.

    Returns
    -------
    tuple of Step
        From the lowest grade up; a grade out of reach has no block.
    """
    fields, steps = shelf.fields(waters), []
    for level in GRADES:
        block = next(shelf.passing(fields, level), None)
        if block is None:
            steps.append(Step(grades.grade(level), None, "out of reach with what you have"))
        else:
            steps.append(Step(grades.grade(level), block, fitting_words(block), tip_options(swim.case, block.tip)))
    return tuple(steps)
