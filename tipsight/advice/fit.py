"""The choice for the bench, the next step up, and what to say when nothing passes."""

from dataclasses import dataclass

from tipsight.advice import choose
from tipsight.advice.answer import Block, Change, Step
from tipsight.advice.bench import Shelf, repaint
from tipsight.advice.examine import examine
from tipsight.advice.limits import tenths
from tipsight.advice.options import tip_options
from tipsight.advice.swim import Swim
from tipsight.errors import Mistakes
from tipsight.sight import grades
from tipsight.units import YARD_M

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
    kind = (
        "repaint"
        if (block.tip.stock, block.tip.showing_mm)
        == (swim.case.tip.stock, swim.case.tip.showing_mm)
        and block.tip.wet_mm == swim.case.tip.wet_mm
        else "fit"
    )
    return Change(
        kind,
        False,
        f"{kind} {fitting_words(block)}",
        "cannot be undone",
        block,
        tip_options(swim.case, block.tip),
    )


def fit(shelf: Shelf, in_hand: Block) -> Fit:
    """Return what to fit: the tip in hand in new paint if that does, else the least tip that does.

    Parameters
    ----------
    shelf : Shelf
        All that could be fitted in a swim, and judged on its waters.
    in_hand : Block
        The tip in hand, looked at in that swim.

    Returns
    -------
    Fit
        The change, or None with which limit stands in the way and what would cure it.
    """
    swim = shelf.swim
    wanted = swim.case.wanted.level
    if in_hand.passes:
        return Fit(Change("as it is", False, "nothing to fit", "nothing to undo", in_hand), ())
    again = repaint(swim)
    for candidates in (again, shelf):
        fields = candidates.fields()
        found = next(candidates.passing(fields, wanted), None)
        if found is not None:
            return Fit(_change(swim, found), ())
    word = grades.grade(wanted)
    for level in sorted((g for g in GRADES if g < wanted), reverse=True):
        best = shelf.best_seen(fields)
        if best is not None and best.visibility.level >= level:
            if not in_hand.fails_but_sight and in_hand.visibility.level >= best.visibility.level:
                said = f"nothing passes: none is seen better than the tip in hand; {cure(in_hand)}"
                return Fit(None, (said,))
            said = (
                f"'{word}' is out of reach here with what you have: the best is "
                f"'{best.visibility.grade}', level {tenths(best.visibility.level):.1f} where {wanted:g} is "
                f"wanted; {cure(best)}"
            )
            return Fit(_change(swim, best), (said,))
    return Fit(None, _why_nothing(shelf))


def cure(block: Block) -> str:
    """Return what would bring a tip up to what is wanted.

    Parameters
    ----------
    block : Block
        The best tip to be had.

    Returns
    -------
    str
        A piece of a sentence.
    """
    goes = block.visibility.goes_at_m
    nearer = "come closer" if goes is None else f"fish it no farther than {goes / YARD_M:.0f} yd"
    return f"{nearer}, stand higher, or pick a darker or calmer stretch"


def _why_nothing(shelf: Shelf) -> tuple[str, ...]:
    """Say which limit stands in the way, by how much, and what would cure it."""
    found = []
    for limit in shelf.limits:
        pick = next(choose.ranked(shelf.nearest(limit, GRADES[0]), GRADES[0]), None)
        if pick is None:
            continue
        try:
            block = examine(shelf.swim, shelf.tip(pick))
        except Mistakes:
            continue
        found.append(
            f"nothing passes: {fitting_words(block)} could be seen, but {_breaks(shelf.swim, limit, block)}"
        )
    best = shelf.best_seen(shelf.fields())
    if best is not None:
        found.append(
            f"nothing passes: the best that keeps the limits, {fitting_words(best)}, reaches level "
            f"{tenths(best.visibility.level):.1f} where {GRADES[0]:g} is the least to be seen; {cure(best)}"
        )
    elif not found:
        found.append(
            "nothing passes: no tip that you have keeps the limits on this float; take a float "
            "with more shot, or look for calmer water"
        )
    return tuple(found)


def _breaks(swim: Swim, limit: str, block: Block) -> str:
    """Return which limit a tip breaks, by how much, and the cure."""
    handled, loaded, wanted = block.handling, block.load, swim.case.wanted
    most = wanted.bite_share * loaded.pull_g
    longest = swim.longest_showing_mm(block.tip.stock.diameter_mm)
    return {
        "ride": f"its ride margin is {tenths(handled.ride_margin):.1f} where 2 is the least; look "
        "for calmer water",
        "bite": f"it takes {handled.sink_force_g:.2f} g to sink where {most:.2f} g is the most for "
        "such bites; allow for bolder bites, or take a float with more shot",
        "strength": f"it would show {block.tip.showing_mm:g} mm where {longest:.0f} mm is the most "
        "that it can stand; take a thicker tip",
        "body": f"it is too thick for a body of {swim.hull.body_diameter_mm:.0f} mm; take a thicker body",
        "load": f"it leaves {loaded.pull_g:.2f} g for shot; take a bigger float or a lighter tip",
    }[limit]


def next_steps(shelf: Shelf, in_hand: Block) -> tuple[Step, ...]:
    """Return the least tip for each grade, from the shelf or else the one in hand.

    Parameters
    ----------
    shelf : Shelf
        All that could be fitted in a swim, and judged on its waters.
    in_hand : Block
        The tip in hand, looked at in that swim.

    Returns
    -------
    tuple of Step
        From the lowest grade up; a grade out of reach has no block.
    """
    fields, steps = shelf.fields(), []
    for level in GRADES:
        block = next(shelf.passing(fields, level), None)
        if block is None and in_hand.visibility.level >= level and not in_hand.fails_but_sight:
            steps.append(Step(grades.grade(level), in_hand, "the tip in hand, as it is"))
        elif block is None:
            steps.append(Step(grades.grade(level), None, "out of reach with what you have"))
        else:
            steps.append(
                Step(
                    grades.grade(level),
                    block,
                    fitting_words(block),
                    tip_options(shelf.swim.case, block.tip),
                )
            )
    return tuple(steps)
