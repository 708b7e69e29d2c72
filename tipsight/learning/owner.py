"""All that one person saw, worked out anew: what his eyes are, what does not fit, what would tell more."""

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass, replace
from datetime import date
from enum import StrEnum
from functools import cached_property, partial
from typing import Any

import numpy as np

from tipsight.box.recorded import Reading
from tipsight.errors import Mistakes
from tipsight.inputs.items import ITEMS
from tipsight.inputs.learnt import ME, Learnt, Lesson
from tipsight.inputs.question import Question
from tipsight.inputs.settle import settle
from tipsight.inputs.values import read
from tipsight.learning import bars, corners, river
from tipsight.learning.bars import Said, Sheet
from tipsight.learning.belief import Belief, believed
from tipsight.learning.corners import Look
from tipsight.learning.worked import Array, Worked, once
from tipsight.nature import OLDEST_YEARS

MODEL = "1"
"""Of the sums of sight; raised when a level moves. It is noted beside a reading and changes nothing."""
DAYS = 365.25
NOTES_MORE, NOTE_SD = 4, 0.41
"""So many notes are proposed, and how well one is known: at 34 yd, the distance counted (`river.note_sd`)."""
WORTH = 0.9
"""What is done in five minutes is named first if it narrows by a tenth or more."""
CARD_SD = 0.13
"""Of a card of six bars by itself, paces measured."""
ENOUGH = bars.LEAST


class Next(StrEnum):
    """What would narrow the range most."""

    CARD = "card"
    BARS = "bars"
    PACES = "paces"
    NOTES = "notes"


@dataclass(frozen=True)
class Note:
    """What one note says beside all the others."""

    number: int
    on: date
    saw: river.Saw
    range_m: float
    sds: float
    """How far it lies from what all say together, in its own standard deviations; 0 if it agrees."""
    read: bool = True
    """Whether its question can still be answered; if not it is left out."""

    @property
    def odd(self) -> bool:
        """Whether it does not fit."""
        return self.sds > bars.ODD_SDS


@dataclass(frozen=True)
class Owner:
    """What is known of one person's eyes."""

    name: str
    age_years: float
    age_told: bool
    mar_arcmin: float
    mar_told: bool
    belief: Belief
    cards: tuple[tuple[Reading, tuple[Said, ...]], ...]
    notes: tuple[Note, ...]
    checked: corners.Eyes | None = None
    says_gone: float | None = None
    """At which level he says "gone", where corners and bar 2 of a card tell."""
    narrower: tuple[tuple[Next, float], ...] = ()
    """What would narrow the range, and to which doubt (x/÷); what is quickly done, then the best."""
    left_out: tuple[int, ...] = ()
    """Numbers of the readings that were dropped."""

    @cached_property
    def bars(self) -> int:
        """How many bars were read."""
        return sum(len(said) for _, said in self.cards)

    @property
    def heard(self) -> int:
        """How many notes count."""
        return sum(note.read for note in self.notes)

    @property
    def enough(self) -> bool:
        """Whether there is enough to say a number."""
        return self.bars + self.heard >= ENOUGH

    @property
    def learnt(self) -> Learnt:
        """What goes with his questions."""
        lessons = []
        if self.age_told:
            lessons.append(Lesson("age", f"{self.age_years:.0f}"))
        if self.mar_told:
            lessons.append(Lesson("sight", f"{self.mar_arcmin:.2g} arcmin"))
        if not self.enough:
            return Learnt(tuple(lessons))
        lessons.append(Lesson("own_eye", f"{self.belief.factor:.2f}", self.bars, self.heard))
        return Learnt(tuple(lessons), self.belief.doubt)


def _lately(readings: Iterable[Reading], key: str) -> tuple[date, Any] | None:
    told = [(one.made_on, one.told[key]) for one in readings if one.told.get(key) is not None]
    return max(told, key=lambda one: one[0]) if told else None


def _age(readings: Sequence[Reading], today: date) -> tuple[float, bool]:
    found = _lately(readings, "age")
    if found is None:
        return float(read(ITEMS["age"], ITEMS["age"].default)), False
    return float(read(ITEMS["age"], found[1])) + (today - found[0]).days / DAYS, True


def _mar(readings: Sequence[Reading]) -> tuple[float, bool]:
    found = _lately(readings, "squares_m")
    if found is not None:
        return float(np.clip(bars.detail_arcmin(found[1]), 0.4, 10.0)), True
    said = _lately(readings, "sight")
    text = ITEMS["sight"].default if said is None else said[1]
    return float(read(ITEMS["sight"], text)), said is not None


def sheet_of(told: dict[str, Any]) -> Sheet:
    """Return a card from its reading: paces counted for each bar, how long one is, the ruler."""
    return Sheet(
        {
            int(n): [count * told["pace_m"] for count in each if count is not None]
            for n, each in told["counts"].items()
        },
        told["step"],
        told["ruler_mm"] / 100.0,
    )


def owner(
    readings: Sequence[Reading],
    today: date,
    *,
    name: str = ME,
    age_years: float | None = None,
    mar_arcmin: float | None = None,
    worked: Worked | None = None,
) -> Owner:
    """Return what is known of a person's eyes from all that he told and did not drop.

    Parameters
    ----------
    readings : sequence of Reading
        Of this person.
    today : date
        Ages of readings go back from it.
    name : str
        Whose they are.
    age_years, mar_arcmin : float, optional
        Told now; in place of what was told with the readings, which are then read anew.
    worked : mutable mapping, optional
        What was worked out of readings before, as `worked.once` keeps it.

    Returns
    -------
    Owner
        Nothing in it was kept: it is worked out whenever it is asked for.
    """
    kept = [one for one in readings if not one.dropped]
    age, age_told = (age_years, True) if age_years is not None else _age(kept, today)
    mar, mar_told = (mar_arcmin, True) if mar_arcmin is not None else _mar(kept)

    def then(on: date) -> float:
        return min(max(age - (today - on).days / DAYS, 8.0), OLDEST_YEARS)

    sheets = [(one, sheet_of(one.told)) for one in kept if one.kind == "card"]
    likely = [bars.likelihood(sheet, then(one.made_on), mar) for one, sheet in sheets]
    cards = tuple((one, bars.said(sheet, then(one.made_on), mar)) for one, sheet in sheets)
    found: list[tuple[Reading, Array | None, float, float]] = []
    for one in (one for one in kept if one.kind == "note"):
        asked = {"sight": f"{mar:.3g} arcmin", **one.told["question"]}
        asked |= {"age": f"{then(one.made_on):.1f}", "own_eye": "1"}
        try:
            case = settle(Question().with_options(**asked))
            far = one.told["range_m"]
            nodes = once(worked, partial(river.nodes, case, far), river.SHAPE, "note", asked, far)
            found.append((one, *river.over(nodes), case.place.range_doubt))
        except Mistakes:  # a paint of a table that is not given now, say
            found.append((one, None, 0.0, 0.0))
    for one, over, steep, doubt in found:
        if over is not None:
            likely.append(river.likelihood(one.told["saw"], over, river.note_sd(steep, doubt)))
    belief = believed(age, likely)
    notes = tuple(
        _note(one, belief, over, river.note_sd(steep, doubt)) for one, over, steep, doubt in found
    )
    looks = [Look(*look) for one in kept if one.kind == "corners" for look in one.told["looks"]]
    checked = corners.after(looks, min(age, OLDEST_YEARS), mar) if looks else None
    goes = [said.range_m for _, each in cards for said in each if said.number == corners.BAR]
    gone = None
    if checked and goes:
        far = float(np.exp(np.mean(np.log(goes))))
        gone = corners.says_gone(checked, far, min(age, OLDEST_YEARS), mar)
    made = Owner(name, age, age_told, mar, mar_told, belief, cards, notes, checked, gone)
    return replace(
        made,
        narrower=_narrower(made, sheets, likely, then, mar),
        left_out=tuple(one.number for one in readings if one.dropped),
    )


def _note(one: Reading, belief: Belief, over: Array | None, sd: float) -> Note:
    saw, far = one.told["saw"], one.told["range_m"]
    if over is None:
        return Note(one.number, one.made_on, saw, far, 0.0, read=False)
    off = float((belief.weight * over).sum()) / sd
    sds = {"went": abs(off), "followed": max(-off, 0.0), "not seen": max(off, 0.0)}[saw]
    return Note(one.number, one.made_on, saw, far, sds)


def _narrower(
    made: Owner,
    sheets: Sequence[tuple[Reading, Sheet]],
    likely: Sequence[Array],
    then: Callable[[date], float],
    mar: float,
) -> tuple[tuple[Next, float], ...]:
    """Return what would narrow the range, by how far it would."""
    sd = made.belief.eyes[1]

    def with_more(other_sd: float) -> float:
        return float(1.0 / np.sqrt(1.0 / sd**2 + 1.0 / other_sd**2))

    tried = {Next.NOTES: with_more(NOTE_SD / np.sqrt(NOTES_MORE))}
    most = max((len(said) for _, said in made.cards), default=0)
    if not made.cards:
        tried[Next.CARD] = with_more(CARD_SD)
    elif most < len(bars.BARS):
        lacking = len(bars.BARS) - most
        tried[Next.BARS] = with_more(float(np.hypot(bars.BAR_SD, bars.READING_SD) / np.sqrt(lacking)))
    if any(sheet.step == "yard" for _, sheet in sheets):
        again = [
            bars.likelihood(replace(sheet, step="measured"), then(one.made_on), mar)
            for one, sheet in sheets
        ]
        tried[Next.PACES] = believed(made.age_years, [*again, *likely[len(sheets) :]]).eyes[1]
    easy = {what for what in (Next.PACES, Next.BARS) if tried.get(what, sd) < WORTH * sd}
    best = sorted(tried.items(), key=lambda one: (one[0] not in easy, one[1]))
    return tuple((what, float(np.exp(narrow))) for what, narrow in best)
