"""The first six lines: what to do now at the bank, and what to fit at the bench."""

from dataclasses import replace

from tipsight.advice.answer import Answer, Block, Change
from tipsight.output import things, words
from tipsight.output.layout import WIDTH, hanging
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
    return " and ".join([", ".join(found[:-1]), found[-1]] if len(found) > 1 else found)


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


def left_alone(block: Block) -> str:
    """Return that the tip in hand stays, with its length and shot.

    Parameters
    ----------
    block : Block
        The tip in hand.

    Returns
    -------
    str
        A sentence without its end.
    """
    load = block.load
    showing = f"leave it as it is, {block.tip.showing_mm:.0f} mm showing"
    return f"{words.with_inches(showing)}, {words.grams(load.shot_g)} of {load.shot_metal} shot"


def _likely(block: Block) -> str:
    waters = block.visibility.by_background
    worst = min(waters, key=lambda one: one.level)
    where = f" on {worst.name} water, the worst" if len(waters) > 1 else ""
    likely = words.levels(worst.low, worst.high)
    return f" Level {words.level(worst.level)}, likely {likely}{where}."


def _bank(answer: Answer, wanted: str) -> tuple[str, ...]:
    change, before = answer.at_the_bank, answer.tip_in_hand
    now = before.visibility.grade
    short = shortcomings(change.block, wanted)
    title = "NOW, AT THE BANK: "
    if change.kind == "as it is":
        said = f"{left_alone(before)}. "
        said += f"As it is: {now}; {short}." if short else f"As it is: {now}, and that is enough."
    elif (
        short
        and now == change.block.visibility.grade
        and not _gained(before, change.block)
        and (moved := move(answer))
        and moved.block.tip == change.block.tip
    ):
        asked = f"{answer.case.place.range_m / words.YARD_M:.0f} yd"
        stick = next((one for one in answer.changes if one.kind == "light stick"), None)
        said = (
            f"{words.with_inches(moved.words)}: {moved.block.visibility.grade} there. At {asked} "
        )
        if stick is None:
            said += f"nothing that can be done now lifts it: it stays {now}."
        else:
            said += f"only a light stick shows, if your rules allow: {shot_words(stick.block)}."
        return (title + said, _undo(moved))
    else:
        said = f"{words.with_inches(change.words)}. {turns(before, change.block)}"
        if not short:
            said += ", and that is enough."
        else:  # what stays as it was on the worst water is short enough said
            said += "." if _gained(before, change.block) else f": the best to be had, yet {short}."
    return (
        title + said,
        _stick(answer),
        nearer(answer),
        _undo(change),
        _likely(change.block),
    )


def turns(before: Block, after: Block) -> str:
    """Return the grade now and then, with what else is amiss now, or what one water gains.

    Parameters
    ----------
    before, after : Block
        The tip in hand, and what is advised, before the same waters.

    Returns
    -------
    str
        A sentence without its end.
    """
    now, then = before.visibility.grade, after.visibility.grade
    amiss = shortcomings(replace(before, fails=before.fails_but_sight), "")
    if amiss and after.passes:
        return f"Now {now}, but {amiss}; then {then}"
    if now != then:
        return f"Now {now}, then {then}"
    gained = _gained(before, after)
    return "; ".join([f"It stays {now}" + " on the worst water" * bool(gained), *gained])


def _gained(before: Block, after: Block) -> list[str]:
    """Return what single waters gain where the worst stays as it was."""
    if before.visibility.grade != after.visibility.grade:
        return []
    waters = zip(before.visibility.by_background, after.visibility.by_background, strict=True)
    return [
        f"on {new.name} water now {old.grade}, then {new.grade}"
        for old, new in waters
        if new.grade != old.grade and new.level > old.level
    ]


def _stick(answer: Answer) -> str:
    """Return the light stick that is offered where no paint is enough."""
    stick = next((one for one in answer.changes if one.kind == "light stick"), None)
    if stick is None or answer.at_the_bank.block.passes:
        return ""
    return f" Or a light stick, where allowed: {shot_words(stick.block)}."


def _undo(change: Change) -> str:
    return "" if change.kind == "as it is" else f" ({change.undo[0].upper()}{change.undo[1:]}.)"


def move(answer: Answer) -> Change | None:
    """Return the change that comes closer, if there is one.

    Parameters
    ----------
    answer : Answer
        The whole answer.

    Returns
    -------
    Change or None
        With the best of the tips that can be had at the bank.
    """
    return next((change for change in answer.changes if change.kind == "move"), None)


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
    moved = move(answer)
    if moved is None:
        return ""
    there = f"fish it no farther than {moved.options['distance']}"
    if moved.block.tip != answer.at_the_bank.block.tip:
        there = words.with_inches(moved.words)
    return f" Or {there}: {moved.block.visibility.grade}."


def _bench(answer: Answer, wanted: str) -> tuple[str, ...]:
    change = answer.at_the_bench
    title = "OR AT THE BENCH: " if answer.at_the_bank.block.passes else "AT THE BENCH: "
    if change is not None and change.kind == "as it is":
        return (f"{title}{fitting(change)}.",)
    if change is None:
        return (f"{title}{why_nothing(answer).rstrip('.')}.",)
    short = shortcomings(change.block, wanted)
    said = f"{title}{fitting(change)}. {turns(answer.tip_in_hand, change.block)}"
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
        said = pieces[0]
        for more in pieces[1:]:
            if len(hanging(said + more)) <= MOST // 2:
                said += more
        lines += hanging(said)
    return tuple(_cut(lines))


def _cut(lines: list[str]) -> list[str]:
    """Return no more than six lines; a sentence that is cut off ends in dots."""
    return (
        lines
        if len(lines) <= MOST
        else [
            *lines[: MOST - 1],
            lines[MOST - 1][: WIDTH - 4].rsplit(" ", 1)[0].rstrip(",;") + " ...",
        ]
    )
