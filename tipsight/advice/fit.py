"""The choice for the bench, the next step up, and what stands in the way where nothing passes."""

from dataclasses import dataclass

from tipsight.advice import choose
from tipsight.advice.answer import Block, Change, Nearly, Step
from tipsight.advice.bench import Shelf, repaint
from tipsight.advice.facts import Action, Fit, Note, Repaint, Undo, Warn
from tipsight.advice.limits import BY_LIMIT
from tipsight.advice.retelling import tip_options
from tipsight.advice.swim import Swim
from tipsight.sight import grades


@dataclass(frozen=True)
class Fitted:
    """What to fit, None where nothing can be fitted, and what stands in the way of more."""

    change: Change | None
    in_the_way: tuple[Warn | Nearly, ...] = ()


def _change(swim: Swim, block: Block) -> Change:
    now, new = swim.case.tip, block.tip
    same = (new.stock, new.showing_mm, new.wet_mm) == (now.stock, now.showing_mm, now.wet_mm)
    action: Action = (
        Repaint(new.showing_mm, new.bands) if same else Fit(new.stock, new.showing_mm, new.bands)
    )
    return Change((action,), False, Undo.NEVER, block, tip_options(swim.case, new))


def _left(block: Block) -> Change:
    return Change((), False, Undo.NOTHING, block)


def fit(shelf: Shelf, in_hand: Block) -> Fitted:
    """Return what to fit: the tip in hand in new paint if that does, else the least tip that does.

    Where nothing does it is the best compromise: the best seen of what keeps all limits but
    sight, or else what breaks one limit; never one seen worse than a sound tip in hand.
    """
    swim = shelf.swim
    wanted = swim.case.wanted.level
    if in_hand.passes:
        return Fitted(_left(in_hand))
    for candidates in (repaint(swim), shelf):
        found = next(candidates.passing(candidates.fields(), wanted), None)
        if found is not None:
            return Fitted(_change(swim, found))
    best = shelf.best_seen(shelf.fields())
    followed = grades.wanted()[0]
    if best is not None and best.visibility.level >= followed:
        if in_hand.sound and in_hand.visibility.level >= best.visibility.level:
            return Fitted(_left(in_hand), (_short(in_hand, Note.NONE_BETTER, wanted),))
        return Fitted(_change(swim, best), (_short(best, Note.OUT_OF_REACH, wanted),))
    nearly = _nearly(shelf)
    kept = () if best is None else (_short(best, Note.BEST_KEPT, followed),)
    told = (*nearly, *kept) or (Warn(Note.NOTHING_FITS),)
    if in_hand.sound and (best is None or in_hand.visibility.level >= best.visibility.level):
        return Fitted(_left(in_hand), told)
    compromise = best or (nearly[0].block if nearly else _anything(shelf))
    return Fitted(None if compromise is None else _change(swim, compromise), told)


def _short(best: Block, kind: Note, wanted: float) -> Warn:
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
    return next(shelf.looked_at(choose.brightest(shelf.fields(*shelf.limits))), None)


def next_steps(shelf: Shelf, in_hand: Block) -> tuple[Step, ...]:
    """Return the least tip for each grade, from the shelf or else the one in hand.

    From the lowest grade up; a grade out of reach has no block.
    """
    fields, steps = shelf.fields(), []
    for level in grades.wanted():
        word = grades.grade(level)
        block = next(shelf.passing(fields, level), None)
        if block is not None:
            steps.append(Step(word, block, options=tip_options(shelf.swim.case, block.tip)))
        elif in_hand.visibility.level >= level and in_hand.sound:
            steps.append(Step(word, in_hand, in_hand=True))
        else:
            steps.append(Step(word, None))
    return tuple(steps)
