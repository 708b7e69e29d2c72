"""The choice for the bench, the next step up, and what stands in the way where nothing passes."""

from dataclasses import dataclass

from tipsight.advice import choose
from tipsight.advice.answer import Block, Change, Nearly, Step
from tipsight.advice.bench import Shelf, repaint
from tipsight.advice.facts import Action, Fit, Limit, Note, Repaint, Undo, Warn
from tipsight.advice.limits import BY_LIMIT, ENOUGH
from tipsight.advice.retelling import shot_options, tip_options
from tipsight.advice.swim import Swim
from tipsight.sight import grades

TWICE = 2.0
"""A repaint that is seen so many times as well is worth it though the tip does (judgement)."""


@dataclass(frozen=True)
class Fitted:
    """What to fit, None where nothing can be fitted, and what stands in the way of more."""

    change: Change | None
    in_the_way: tuple[Warn | Nearly, ...] = ()


def _change(shelf: Shelf, block: Block, need: float) -> Change:
    now, new = shelf.swim.case.tip, block.tip
    same = (new.stock, new.showing_mm, new.wet_mm) == (now.stock, now.showing_mm, now.wet_mm)
    action: Action = (
        Repaint(new.showing_mm, new.bands) if same else Fit(new.stock, new.showing_mm, new.bands)
    )
    options = {**tip_options(shelf.swim.case, new), **shot_options(block)}
    either = shelf.either(new, ENOUGH * min(need, block.visibility.level))
    return Change((action,), False, Undo.NEVER, block, options, either)


def _left(block: Block) -> Change:
    return Change((), False, Undo.NOTHING, block)


def fit(shelf: Shelf, in_hand: Block, spot: Block, floor: float = 0.0) -> Fitted:
    """Return what to fit: the tip in hand if it does, else that in new paint, else the least tip.

    ``spot`` is the tip that is advised by the water; nothing is fitted that is seen worse, nor worse
    than the level ``floor``. Where nothing keeps every limit it is the best compromise.
    """
    swim = shelf.swim
    wish = swim.case.wanted.level
    again, fields = repaint(swim), shelf.fields()
    painted = again.fields()
    had = max(floor, spot.visibility.level if spot.sound else 0.0)
    floor = min(had, wish)
    if in_hand.passes:
        twice = next(again.passing(painted, TWICE * in_hand.visibility.level), None)
        return Fitted(_left(in_hand) if twice is None else _change(again, twice, wish))
    need = max(choose.asked(wish, max(choose.best(fields), choose.best(painted))), floor)
    if need > 0:
        for candidates, seen, least in ((again, painted, ENOUGH * need), (shelf, fields, need)):
            found = next(candidates.passing(seen, max(least, floor)), None)
            if found is not None:
                return Fitted(_change(candidates, found, need), _short(swim, found))
    if in_hand.sound and spot.tip == in_hand.tip:
        return Fitted(_left(in_hand), (_told(in_hand, Note.NONE_BETTER, wish),))
    if spot.sound:
        return Fitted(_left(spot), (_told(spot, Note.NONE_BETTER, wish),))
    nearly = _nearly(shelf)
    outside = next(shelf.passing(shelf.fields(usual=False), 0.0), None)
    compromise = outside or (nearly[0].block if nearly else _anything(shelf))
    told = nearly or (Warn(Note.NOTHING_FITS),)
    return Fitted(None if compromise is None else _change(shelf, compromise, wish), told)


def _short(swim: Swim, block: Block) -> tuple[Warn, ...]:
    if block.passes:
        return ()
    return (_told(block, Note.OUT_OF_REACH, swim.case.wanted.level),)


def _told(best: Block, kind: Note, wanted: float) -> Warn:
    seen = best.visibility
    numbers: dict[str, float] = {"level": seen.level, "wanted": wanted}
    if seen.goes_at_m is not None:
        numbers["goes_at_m"] = seen.goes_at_m
    return Warn(kind, numbers)


def _nearly(shelf: Shelf) -> tuple[Nearly, ...]:
    """Return, for each limit, the least tip that would be followed if that one gave way."""
    found, followed = [], grades.wanted()[0]
    for limit in shelf.limits:
        picks = choose.ranked(shelf.nearest(limit, followed), followed, ceiling=1)
        for block in shelf.looked_at(picks):
            for failure in block.fails:
                if failure.limit is limit:
                    found.append(Nearly(block, failure, BY_LIMIT[limit].cures))
    return tuple(found)


def _anything(shelf: Shelf) -> Block | None:
    """Return the best seen of all that can be fitted at all, whatever it breaks."""
    everything = shelf.fields(*shelf.limits, usual=False)
    return next(shelf.looked_at(choose.brightest(everything)), None)


def next_steps(shelf: Shelf, in_hand: Block) -> tuple[Step, ...]:
    """Return the least tip for each grade, from the lowest up, and its price.

    One of the pattern's usual range if any does; else one beyond it; else one that takes more to
    sink than the bites allow, which its block tells. A grade out of reach has no block.
    """
    usual, any_size = shelf.fields(), shelf.fields(usual=False)
    stiff = shelf.fields(Limit.BITE, usual=False)
    steps = []
    for level in grades.wanted():
        word = grades.grade(level)
        if in_hand.visibility.level >= level and in_hand.sound:
            steps.append(Step(word, in_hand, in_hand=True))
            continue
        block = next(shelf.passing(usual, level), None)
        beyond = block is None
        block = block or next(shelf.passing(any_size, level), None)
        block = block or next(shelf.looked_at(choose.ranked(stiff, level, ceiling=1)), None)
        if block is None:
            steps.append(Step(word, None))
        else:
            options = {**tip_options(shelf.swim.case, block.tip), **shot_options(block)}
            steps.append(Step(word, block, unusual=beyond, options=options))
    return tuple(steps)
