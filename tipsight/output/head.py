"""The first six lines: what to do now at the bank, and what to fit at the bench."""

from tipsight.advice.answer import Answer, Block, Change
from tipsight.output import things, words
from tipsight.output.layout import hanging
from tipsight.output.notes import why_nothing

MOST = 6
_SHORT = {
    "sight": "",
    "ride": "does not ride this water",
    "bite": "stiffer than the bites allow",
    "strength": "longer than such a tip can stand",
    "balance": "top-heavy",
    "body": "too thick for the body",
    "load": "no shot left to cock it",
}
"""The limits, each by what breaking it means."""


def shortcomings(block: Block, wanted: str) -> str:
    """Return what a tip falls short in, in few words; empty when it passes.

    Parameters
    ----------
    block : Block
        The tip looked at.
    wanted : str
        The grade that is wanted.

    Returns
    -------
    str
        A piece of a sentence.
    """
    found = []
    for fail in block.fails:
        kind = fail.partition(":")[0]
        found.append(_SHORT.get(kind, kind) or f"short of {wanted}")
    return ", ".join(found)


def shot_words(block: Block) -> str:
    """Return the shot to put on or take off, or that it stays.

    Parameters
    ----------
    block : Block
        The tip looked at.

    Returns
    -------
    str
        By name.
    """
    return block.load.change_words or "leave the shot as it is"


def fitting(change: Change) -> str:
    """Return what to fit: stock, length in millimetres and inches, paint and shot.

    Parameters
    ----------
    change : Change
        What is advised for the bench.

    Returns
    -------
    str
        A piece of a sentence.
    """
    tip = change.block.tip
    if change.kind == "as it is":
        return "nothing to fit; the tip you have does"
    if change.kind == "repaint":
        what = (
            f"repaint it {things.paint(change.block.bands, tip.showing_mm)}, "
            f"{tip.showing_mm:g} mm ({words.inches(tip.showing_mm)}) showing"
        )
    else:
        what = (
            f"fit {things.stock(tip)}, {tip.showing_mm:g} mm ({words.inches(tip.showing_mm)}) "
            f"showing, {things.paint(change.block.bands, tip.showing_mm)}"
        )
    return f"{what}: {shot_words(change.block)}"


def _likely(block: Block) -> str:
    seen = block.visibility
    return f" Level {words.level(seen.level)}, likely {words.levels(seen.low, seen.high)}."


def _bank(answer: Answer, wanted: str) -> tuple[str, ...]:
    change, before = answer.at_the_bank, answer.tip_in_hand
    now, then = before.visibility.grade, change.block.visibility.grade
    short = shortcomings(change.block, wanted)
    title = "NOW, AT THE BANK: "
    if change.kind == "as it is":
        shot = change.block.load.shot_g
        said = (
            f"leave it as it is, {words.length(before.tip.showing_mm)} showing, "
            f"{words.grams(shot)} of {change.block.load.shot_metal} shot. "
        )
        said += f"As it is: {now}; {short}." if short else f"As it is: {now}, and that is enough."
    else:
        said = f"{words.with_inches(change.words)}. Now {now}, then {then}"
        said += f": the best to be had, yet {short}." if short else ", and that is enough."
    undo = "" if change.kind == "as it is" else f" ({change.undo[0].upper()}{change.undo[1:]}.)"
    return (title + said, nearer(answer), undo, _likely(change.block))


def nearer(answer: Answer) -> str:
    """Return how near the best of the tips would do, where none does at the asked distance.

    Parameters
    ----------
    answer : Answer
        The whole answer.

    Returns
    -------
    str
        A sentence after a space, or nothing.
    """
    moves = [change for change in answer.changes if change.kind == "move"]
    if not moves:
        return ""
    grade = moves[0].block.visibility.grade
    return f" Or fish it no farther than {moves[0].options['distance']}: {grade}."


def _bench(answer: Answer, wanted: str) -> tuple[str, ...]:
    change = answer.at_the_bench
    title = "OR AT THE BENCH: " if answer.at_the_bank.block.passes else "AT THE BENCH: "
    if change is not None and change.kind == "as it is":
        return (f"{title}{fitting(change)}.",)
    if change is None:
        return (f"{title}{why_nothing(answer).rstrip('.')}.",)
    short = shortcomings(change.block, wanted)
    after = change.block.visibility.grade
    said = f"{title}{fitting(change)}. Now {answer.tip_in_hand.visibility.grade}, then {after}"
    return (
        said + (f": the best to be had, yet {short}." if short else "."),
        _likely(change.block),
    )


def head(answer: Answer, wanted: str) -> tuple[str, ...]:
    """Return the first lines, six at the most.

    Parameters
    ----------
    answer : Answer
        The whole answer.
    wanted : str
        The grade that is wanted.

    Returns
    -------
    tuple of str
        What to do now, then what to fit.
    """
    lines: list[str] = []
    for pieces in (_bank(answer, wanted), _bench(answer, wanted)):
        for count in range(len(pieces), 0, -1):
            found = hanging("".join(pieces[:count]))
            if len(found) <= MOST // 2:
                break
        lines += found
    return tuple(_cut(lines))


def _cut(lines: list[str]) -> list[str]:
    """Return no more than six lines; a sentence that is cut off ends in dots."""
    return (
        lines
        if len(lines) <= MOST
        else [*lines[: MOST - 1], lines[MOST - 1][:75].rstrip() + " ..."]
    )
