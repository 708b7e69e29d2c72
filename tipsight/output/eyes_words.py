"""What is said of one's own eyes on the page: what a reading is, what it did, what is odd."""

from collections.abc import Sequence

from tipsight.box.recorded import Reading
from tipsight.learning.bars import Said
from tipsight.learning.owner import Note, Owner
from tipsight.output.learnt_words import NARROWS, SAW, counted, narrowed, sentence_of
from tipsight.output.measures import Reader, listed, sentence


def known(owner: Owner) -> str:
    """Return the one sentence on somebody's eyes."""
    return sentence(sentence_of(owner))


def of_reading(one: Reading, reader: Reader) -> str:
    """Return what was told, in short."""
    day = f"{one.made_on:%d.%m.%Y}"
    if one.kind == "note":
        return f"{day}, {SAW[one.told['saw']]} {reader.far(one.told['range_m'])}"
    if one.kind == "corners":
        return f"{day}, check with a helper, {counted(len(one.told['looks']), 'look')}"
    read = [each for each in one.told["counts"].values() if each]
    back = any(len(each) > 1 for each in read)
    return f"{day}, fence card, {counted(len(read), 'bar')}{', out and back' if back else ''}"


def did(before: Owner, after: Owner) -> str:
    """Return what one reading did to what is known of the eyes."""
    if not after.enough:
        return known(after)

    low, high = after.belief.ends
    now = f"{after.belief.factor:.2f} times the usual ({low:.2f} to {high:.2f})"
    if not before.enough:
        return f"With that there is enough to say of your eyes: {now}."
    was = f"{before.belief.factor:.2f}"
    if was == f"{after.belief.factor:.2f}":
        return f"Your eyes stay at {now}."
    return f"Your eyes, {was} before, are now {now}."


def odd(each: Sequence[Said]) -> str:
    """Return which bars lie far from the rest, nothing where none does."""
    found = [f"bar {one.number}" for one in each if one.odd]
    if not found:
        return ""
    return f"{listed(found).capitalize()} lies far from the rest and counts for little: miscounted?"


def misfit(note: Note) -> str:
    """Return what is wrong with a note, nothing where it fits."""
    if not note.read:
        return "Its question cannot be answered now, so it is left out."
    return "It does not fit the rest: another day's water, or a slip?" if note.odd else ""


def narrower(owner: Owner) -> str:
    """Return what would narrow the range most."""
    if not owner.narrower:
        return ""
    what, doubt = owner.narrower[0]
    return f"Narrowed most by {NARROWS[what]}: then about {narrowed(owner.belief.factor, doubt)}."
