"""A trot that changes along its length: its stretches, each from so far to so far."""

import re
from itertools import pairwise

from tipsight.inputs.case import Leg
from tipsight.inputs.items import ITEMS, choose
from tipsight.inputs.quantities import Unread, clean, length_m, number
from tipsight.units import YARD_M

MOST = 6
"""Different waters in one question: each is worked out at every distance (judgement)."""
TELLS = ("behind", "looks", "pace", "boils")
"""The items that a stretch may tell of; the rest of the question holds on all of it."""
EXAMPLE = "0-15 dark, 15-30 bright, 30-40 broken boily"
_PARTED = re.compile(r";|,(?!\d)|,(?=\d[\d.]*\s*(?:yd|yards|m|metres)?\s*(?:-|to|\u2013))")
_SPAN = re.compile(
    r"([\d.]+)\s*(yd|yards|m|metres)?\s*(?:-|to|\u2013)\s*([\d.]+)\s*(yd|yards|m|metres)?\b\s*(.*)"
)
_SMALL = ("with", "and", "water", "on", "of", "a", "in")
NEAR_M = 0.05
"""Two ends that lie nearer together are one: what is told in yards and in metres meets so."""


def read(text: str) -> tuple[Leg, ...]:
    """Return the stretches of a trot as they were told, from the near end to the far.

    Distances are yards where no unit is said; what is said of a stretch is known by its words.

    Raises
    ------
    Unread
        If a stretch cannot be read, they leave a gap or overlap, or there are more than six.

    Examples
    --------
    >>> [(leg.to_m / YARD_M, leg.told) for leg in read("0-15 dark trees, 15-30 bright, ripple")]
    Traceback (most recent call last):
    ...
    tipsight.inputs.quantities.Unread: 'ripple': say from where to where, such as 15-30 bright
    >>> [leg.told for leg in read("0-15 dark trees, 15-30 bright ripple")]
    [(('behind', 'dark'),), (('behind', 'bright'), ('looks', 'ripple'))]
    """
    legs = tuple(_leg(piece) for piece in _PARTED.split(text) if piece.strip())
    if len(legs) > MOST:
        raise Unread(f"{len(legs)} stretches; {MOST} are the most")
    for near, far in pairwise(legs):
        if abs(near.to_m - far.from_m) > NEAR_M:
            gap = "overlap" if far.from_m < near.to_m else "leave a gap"
            ends = f"{near.to_m / YARD_M:.3g} and {far.from_m / YARD_M:.3g} yd"
            raise Unread(f"two stretches {gap} between {ends}")
    return legs


def _leg(piece: str) -> Leg:
    span = _SPAN.fullmatch(clean(piece))
    if not span:
        raise Unread(f"'{piece.strip()}': say from where to where, such as 15-30 bright")
    unit = span[4] or span[2] or "yd"
    from_m, to_m = (_far(text, said or unit) for text, said in ((span[1], span[2]), (span[3], span[4])))
    if not from_m < to_m:
        raise Unread(f"'{piece.strip()}': it ends where it begins, or before")
    told = _told(span[5], piece)
    return Leg(from_m, to_m, tuple((item, told[item]) for item in TELLS if item in told))


def _far(text: str, unit: str) -> float:
    return length_m(f"{text} {unit}") if number(text) else 0.0


def _told(words: str, piece: str) -> dict[str, str]:
    """Return what the words of a stretch tell, by item; the longest run that means something first."""
    left = [word for word in words.split() if word not in _SMALL]
    found: dict[str, str] = {}
    while left:
        for count in range(min(3, len(left)), 0, -1):
            if meant := _meant(" ".join(left[:count])):
                break
        else:
            raise Unread(f"'{left[0]}' in '{piece.strip()}' says nothing of the water")
        item, word = meant
        if found.setdefault(item, word) != word:
            raise Unread(f"'{piece.strip()}': it is told twice, {found[item]} and {word}")
        left = left[count:]
    return found


def _meant(words: str) -> tuple[str, str] | None:
    for item in TELLS:
        try:
            word = choose(ITEMS[item].words, words).word
        except Unread:
            continue
        if word != "not sure":
            return item, word
    return None
