"""What to do, in words: each action, what is done to the shot, and whether it can be undone."""

from collections.abc import Sequence

from tipsight.advice.answer import Block, Change
from tipsight.advice.facts import (
    Action,
    CarryLight,
    ComeCloser,
    Fit,
    Insert,
    OtherStretch,
    Pen,
    Repaint,
    Show,
    Sleeve,
    StandHigher,
    Undo,
)
from tipsight.output import names, shot_words
from tipsight.output.measures import ANGLER, Reader, grams, listed

MOVES = (ComeCloser, StandHigher, OtherStretch)
"""What moves the angler and leaves the float alone."""
_UNDO = {
    Undo.NOTHING: "nothing to undo",
    Undo.EASY: "can be undone",
    Undo.PAINT_LOST: "the pen ends the paint beneath for the day",
    Undo.UNTIL_CUT: "can be undone while nothing is cut",
    Undo.NEVER: "cannot be undone",
}


def undo(change: Change) -> str:
    """Return whether a change can be undone."""
    return _UNDO[change.undo]


def shot(block: Block) -> str:
    """Return the shot to put on or take off, or that it stays."""
    return shot_words.change(block.load.step, [one.name for one in block.load.shot])


def action(one: Action, reader: Reader = ANGLER) -> str:
    """Return one action as an order, without the shot that goes with it.

    Examples
    --------
    >>> action(Show(30.0, more=True)), action(Pen(10.0, whole=False), Reader("m", inches=False))
    ('let 30 mm (1¼ in) show', 'pen the top 10 mm black')
    >>> action(ComeCloser(17.4)), action(ComeCloser(17.4), Reader("m"))
    ('come in to 19 yd', 'come in to 17 m')
    """
    match one:
        case Show(showing_mm=long, more=more):
            return f"let {'' if more else 'only '}{reader.showing(long)} show"
        case Pen(whole=True):
            return "pen all that shows black"
        case Pen(ink_mm=long):
            return f"pen the top {reader.showing(long)} black"
        case Sleeve(paint=paint, over_mm=long):
            return f"slip a {paint} sleeve over {long:g} mm of it"
        case Insert(stock=stock, showing_mm=long):
            return f"swap in the {names.stick(stock)}, {reader.showing(long)} showing"
        case CarryLight(size=size):
            return f"carry a {size} light stick, if your rules allow"
        case ComeCloser(range_m=far):
            return f"come in to {reader.far(far, whole=False)}"
        case StandHigher(eye_height_m=high):
            return f"stand with your eye {reader.high(high)} above the water"
        case OtherStretch(water=water):
            return f"fish a stretch with {water} water behind the tip"
        case Repaint(showing_mm=long, bands=bands):
            return f"repaint it {names.paint(bands, long)}, {reader.showing(long)} showing"
        case Fit(stock=stock, showing_mm=long, bands=bands):
            paint = names.paint(bands, long)
            return f"fit {names.stick_with_bore(stock)}, {reader.showing(long)} showing, {paint}"


def change(told: Change, reader: Reader = ANGLER) -> str:
    """Return what a change does, with its shot, as one order."""
    if not told.actions:
        return "leave it as it is" if told.at_the_bank else "nothing to fit; the tip you have does"
    still = [one for one in told.actions if not isinstance(one, MOVES)]
    said = _together([action(one, reader) for one in still], still)
    if said and (told.block.load.step.on or told.block.load.step.off or not told.at_the_bank):
        said += f": {shot(told.block)}"
    if told.does(CarryLight):
        said += "; its own glow is not in the sums"
    closer = [action(one, reader) for one in told.actions if isinstance(one, MOVES)]
    if told.either:
        will = "either" if len(told.either) == 1 else "any"
        said += f" (or {listed(list(told.either), 'or')}: {will} will do)"
    return ", and ".join(filter(None, (said, *closer)))


def _together(said: list[str], actions: Sequence[Action]) -> str:
    inserts = any(isinstance(one, Insert) for one in actions)
    return (", and " if inserts else " and ").join(said)


def left_alone(block: Block, reader: Reader = ANGLER) -> str:
    """Return that the tip in hand stays, with its length and shot."""
    load = block.load
    showing = reader.showing(round(block.tip.showing_mm))
    return f"leave it as it is, {showing} showing, {grams(load.shot_g)} of {load.shot_metal} shot"
