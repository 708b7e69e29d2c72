"""What people tell of what they saw: when, how far off, whose eyes, and a fence card's readings."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from datetime import date
from typing import Any, Generic, TypeVar

from tipsight.errors import Mistake, Mistakes
from tipsight.inputs.learnt import NOBODY
from tipsight.inputs.quantities import Unread, length_m, number
from tipsight.units import YARD_M

T = TypeVar("T")
NEAR_M, FAR_M = 3.0, 100.0
MOST_LETTERS = 60
BARS = 6
MISSED = "-"
CARD = "tipsight eyes card --paces 0.85m 17 24 32 16 22 28"


@dataclass(frozen=True)
class Reads(Generic[T]):
    """What a reader makes of a text, None if it will not do; and what may be said instead."""

    read: Callable[[str], T | None]
    allowed: str
    example: str

    def told(self, item: str, text: str) -> T:
        """Return what a text says, or raise Mistakes."""
        found = self.read(text)
        if found is None:
            raise Mistakes([Mistake(item, text, self.allowed, self.example)])
        return found


def today() -> date:
    """Return the day it is here."""
    from datetime import datetime

    return datetime.now().astimezone().date()


def _day(text: str) -> date | None:
    try:
        day = date.fromisoformat(text.strip())
    except ValueError:
        return None
    return day if date(1900, 1, 1) <= day <= today() else None


def _length(near_m: float, far_m: float) -> Callable[[str], float | None]:
    def read(text: str) -> float | None:
        try:
            found = length_m(text)
        except Unread:
            return None
        return found if near_m <= found <= far_m else None

    return read


def _name(text: str) -> str | None:
    plain = " ".join(text.split())
    return plain if 0 < len(plain) <= MOST_LETTERS and plain != NOBODY else None


def _pace(text: str) -> tuple[str, float] | None:
    if text.strip() in ("yard", "yards", "yd"):
        return "yard", YARD_M
    found = _length(0.4, 1.2)(text)
    return None if found is None else ("measured", found)


def _ruler(text: str) -> float | None:
    found = _length(0.05, 0.15)(text)
    return None if found is None else 1000.0 * found


DAY = Reads(_day, "say a day, today or before", "2026-10-03")
FAR = Reads(
    _length(NEAR_M, FAR_M),
    f"say how far, with its unit, {NEAR_M / YARD_M:.1f} to {FAR_M / YARD_M:.0f} yd",
    "34yd",
)
NAME = Reads(_name, f"say a name, {MOST_LETTERS} letters at the most", "me")
PACE = Reads(
    _pace, "say how long one pace is, 0.4 to 1.2 m, or yard if you took it for one", "0.85m"
)
RULER = Reads(_ruler, "say how long the printed ruler is, 50 to 150 mm", "96mm")
SQUARES = Reads(
    _length(NEAR_M, 35.0), "say how far off the squares were two, with its unit, 3 to 35 m", "9m"
)


def in_metres(text: str) -> str:
    """Return a length with the metre behind a bare number.

    >>> in_metres("0,85"), in_metres("yard")
    ('0,85 m', 'yard')
    """
    try:
        number(text)
    except Unread:
        return text
    return f"{text} m"


def card(seen: Sequence[str], paces: tuple[str, float] | None) -> dict[str, Any]:
    """Return a card's reading as it is kept: counts, how long one is, and how that is known.

    Parameters
    ----------
    seen : sequence of str
        Where each of six bars went, and perhaps behind them where each came again; ``-`` for one
        that was missed.
    paces : tuple, optional
        What `PACE` reads; without it each has its unit, and was taped.

    Raises
    ------
    Mistakes
        For each that cannot be read, by "bar 3", or "bar 3 back" where it came again.
    """
    if len(seen) not in (BARS, 2 * BARS):
        why = f"say six numbers, or twelve with the way back; these are {len(seen)}"
        raise Mistakes([Mistake("eyes card", "", why, CARD)])
    step, pace_m = paces or ("tape", 1.0)
    counts: dict[str, list[float]] = {f"{n}": [] for n in range(1, BARS + 1)}
    mistakes = []
    for at, text in enumerate(seen):
        if text == MISSED:
            continue
        try:
            count = number(text) if paces else length_m(text)
        except Unread:
            count = -1.0
        if NEAR_M <= count * pace_m <= FAR_M:
            counts[f"{at % BARS + 1}"].append(count)
            continue
        why = "say how many paces" if paces else "say how far with its unit, or how long a pace is"
        near, most = (NEAR_M / pace_m, FAR_M / pace_m)
        limits = f"{why}; {near:.1f} to {most:.0f}" if paces else f"{why}; 3 to 100 m"
        name = f"bar {at % BARS + 1}{' back' if at >= BARS else ''}"
        mistakes.append(Mistake(name, text, limits, "17" if paces else "17yd"))
    if mistakes:
        raise Mistakes(mistakes)
    if not any(counts.values()):
        raise Mistakes([Mistake("eyes card", "", "not one bar was seen; nothing was kept", CARD)])
    return {"counts": counts, "pace_m": pace_m, "step": step}
