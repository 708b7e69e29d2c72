"""What is said of one's own eyes and waters."""

import math
from collections.abc import Mapping, Sequence

from tipsight.box.recorded import Reading
from tipsight.inputs.learnt import ME
from tipsight.inputs.question import Value
from tipsight.inputs.values import typed
from tipsight.learning import corners
from tipsight.learning.bars import Said
from tipsight.learning.belief import RANGE_SDS
from tipsight.learning.home_water import HomeWater
from tipsight.learning.owner import Next, Note, Owner
from tipsight.output.layout import entry, hanging
from tipsight.output.measures import ANGLER, listed

_KNOWN_BY = ("distance", "behind", "showing", "paint")
PICTURE, HALF = 41, 2.0
"""Letters of the small picture, and how many times less and more its ends are."""
NOT_TEST = "this is no eye test, for driving or for health; for that see an optician"
HONEST = (
    "the day's own water stays in doubt by a fifth, and how strong the streaks of the ripple are is "
    "not learned from ordinary notes"
)


def counted(count: int, name: str) -> str:
    """Return a count of things.

    >>> counted(1, "bar"), counted(6, "bar")
    ('1 bar', '6 bars')
    """
    return f"{count} {name}{'' if count == 1 else 's'}"


def _sources(owner: Owner) -> str:
    said = [counted(n, what) for n, what in ((owner.bars, "bar"), (owner.heard, "note")) if n]
    return listed(said)


def sentence_of(owner: Owner) -> str:
    """Return the one sentence on somebody's eyes."""
    who = "your eyes" if owner.name == ME else f"the eyes of {owner.name}"
    if not owner.bars + owner.heard:
        return f"{who}: nothing is known of them yet, so they count as usual at your age"
    if not owner.enough:
        return (
            f"{who}: not enough yet to say, from {_sources(owner)}; three bars or notes are the least; "
            "until then they count as usual at your age"
        )
    low, high = owner.belief.ends
    return (
        f"{who}: {owner.belief.factor:.2f} times what is usual at your age ({low:.2f} to {high:.2f}), "
        f"from {_sources(owner)}; how readily you say 'gone' is in it"
    )


def kept(number: int, last: Mapping[str, Value] | None = None) -> str:
    """Return that a reading was kept, and by what the question asked last is known if it is of that one.

    >>> print(kept(2, {"distance": "34yd", "depth": "7 ft", "behind": ("bright",)}), end="")
    Kept as reading 2, of the question asked last: distance 34yd, behind bright.
    """
    said = f"Kept as reading {number}"
    if last is not None:
        known = [f"{key} {typed(last[key])}" for key in _KNOWN_BY if key in last]
        said += f", of the question asked last: {', '.join(known) or 'nothing told in it'}"
    return "\n".join(hanging(f"{said}.")) + "\n"


def _at(factor: float) -> int:
    share = (math.log(factor) / math.log(HALF) + 1.0) / 2.0
    return round(min(max(share, 0.0), 1.0) * (PICTURE - 1))


def picture(said: Said, all_together: float) -> str:
    """Return where one bar says the eyes are, and where all say so, from half to twice.

    >>> picture(Said(1, 15.0, 0.0, 0.25, odd=False), 2.0)
    '[--------------------o-------------------|]'
    """
    drawn = ["-"] * PICTURE
    drawn[_at(all_together)] = "|"
    drawn[_at(math.exp(said.y))] = "o"
    return f"[{''.join(drawn)}]"


def _bar_lines(reading: Reading, each: tuple[Said, ...], factor: float) -> list[str]:
    lines = list(
        entry(
            f"CARD {reading.number}",
            f"of {reading.made_on:%d.%m.%Y}: what each bar says by itself (o), half to twice the usual, "
            "and what all say together (|)",
        )
    )
    for one in each:
        odd = "  odd" if one.odd else ""
        far = f"{ANGLER.far(one.range_m)}"
        lines.append(f"  bar {one.number} {far:>6} {picture(one, factor)} {math.exp(one.y):.2f}{odd}")
    odd_ones = [f"bar {one.number}" for one in each if one.odd]
    if odd_ones:
        lines += entry(
            "ODD", f"{listed(odd_ones)} lies far from the rest and counts for little: miscounted?"
        )
    return lines


SAW = {"went": "went at", "followed": "followed to", "not seen": "not seen at"}


def _note_line(note: Note) -> str:
    far = ANGLER.far(note.range_m)
    fits = "fits"
    if note.odd:
        fits = f"does not fit the rest; 'tipsight eyes drop {note.number}' leaves it out"
    if not note.read:
        fits = "its question cannot be answered now (a table is lacking?), so it is left out"
    return f"{note.number}: {note.on:%d.%m.%Y}, {SAW[note.saw]} {far}: {fits}"


def narrowed(factor: float, doubt: float) -> str:
    """Return the range of a factor that is so well known."""
    wide = math.exp(RANGE_SDS * math.log(doubt))
    return f"{factor / wide:.2f} to {factor * wide:.2f}"


NARROWS = {
    Next.CARD: "a fence card (tipsight card fence)",
    Next.BARS: "the bars that are lacking",
    Next.PACES: "ten of your paces along a tape, then the card told again with their length",
    Next.NOTES: "four more notes of where the tip went",
}


def eyes(owner: Owner) -> str:
    """Return all that is known of somebody's eyes, as text."""
    said = sentence_of(owner)
    lines = list(entry("EYES", f"{said[:1].upper()}{said[1:]}."))
    age = f"{owner.age_years:.0f}" + ("" if owner.age_told else ", which was not told")
    detail = f"{owner.mar_arcmin:.2g}"
    sharp = f"smallest detail {detail} arc minute{'' if detail == '1' else 's'}"
    sharp += "" if owner.mar_told else ", which was not told"
    lines += entry("TAKEN", f"age {age}; sharpness apart: {sharp}.")
    for reading, each in owner.cards:
        lines += _bar_lines(reading, each, owner.belief.factor)
    for note in owner.notes:
        lines += entry("NOTE", f"{_note_line(note)}.")
    if owner.checked is not None:
        seen, times = math.exp(owner.checked.mean), math.exp(owner.checked.sd)
        lines += entry(
            "CORNERS",
            f"with no say-so in it: {seen:.2f} ({narrowed(seen, times)}) by this one bar, so "
            f"{narrowed(seen, math.exp(owner.checked.whole_sd))} for all else; a check, not counted above.",
        )
    gone = owner.says_gone
    if gone is not None and not corners.SAYS[0] <= gone <= corners.SAYS[1]:
        how = "long before it is out of sight" if gone > corners.SAYS[1] else "later than most"
        lines += entry("SAY-SO", f"you say 'gone' {how}; the number above has it in already.")
    if owner.left_out:
        lines += entry(
            "LEFT OUT",
            f"{listed([f'{n}' for n in owner.left_out])}; 'tipsight eyes back NUMBER' brings it in again.",
        )
    if owner.narrower:
        what, doubt = owner.narrower[0]
        lines += entry(
            "NARROWER",
            f"most by {NARROWS[what]}: then about {narrowed(owner.belief.factor, doubt)}.",
        )
    lines += entry("HONESTLY", f"{HONEST}; {NOT_TEST}.")
    return "\n".join(lines) + "\n"


def water(found: HomeWater, readings: Sequence[Reading]) -> str:
    """Return what is known of a water, as text."""
    low, high = found.boils.ends
    lines = list(
        entry(
            "WATER",
            f"{found.name} boils {found.boils.factor:.1f} times an even glide ({low:.1f} to {high:.1f}), "
            f"from {counted(found.counts, 'count')} on {counted(found.visits, 'visit')}.",
        )
    )
    if found.boils.two:
        one, other = sorted(found.boils.two)
        lines += entry(
            "TWO WAYS",
            f"the counts fit {one:.1f} times and {other:.1f} times alike: count once with more tip showing.",
        )
    for number in found.unread:
        lines += entry("NOTE", f"reading {number} cannot be answered now, so it is left out.")
    for number in found.unexplained:
        lines += entry(
            "NOTE",
            f"no boils explain reading {number}, so it is left out; look at how it was told, or drop it.",
        )
    numbers = [f"{one.number}" + (" (left out)" if one.dropped else "") for one in readings]
    lines += entry("READINGS", f"{', '.join(numbers)}; tipsight eyes drop NUMBER leaves one out.")
    lines += entry(
        "USE IT", f"tipsight advise mine.toml --water '{found.name}'. Mind the edge while you count."
    )
    return "\n".join(lines) + "\n"



