"""A table of floats taken into a box: which rows are there already, and what is done with them."""

import sqlite3
from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from datetime import date
from typing import Literal

from tipsight.box import floats
from tipsight.box.floats import Kept
from tipsight.inputs.entry import Entry
from tipsight.inputs.entry_table import Row

Twice = Literal["skip", "more", "change", "own"]
"""Of a row that is told of already: leave it out; count it to what is there; tell that anew as the
row does; or put it in as a kind of its own."""


@dataclass(frozen=True)
class Twin:
    """A row that tells of what is there already."""

    row: Row
    kept: Kept | None
    """In the box; None where it is an earlier row."""
    same: bool
    """Its number too, and all else: nothing is to be done."""


@dataclass
class Taken:
    """What became of the rows of a table."""

    put: list[Kept] = field(default_factory=list)
    more: list[Kept] = field(default_factory=list)
    changed: list[Kept] = field(default_factory=list)
    same: int = 0
    """Rows that tell just what is there."""
    skipped: list[Row] = field(default_factory=list)


def twins(found: Sequence[Kept], rows: Sequence[Row]) -> tuple[Twin, ...]:
    """Return the rows that tell of a float in the box, by number or by all that is told, or twice."""
    known, told = _Known(found), []
    for row in rows:
        twin = known.twin(row)
        if twin is not None:
            told.append(twin)
        else:
            known.add(row, None)
    return tuple(told)


def take_in(
    box: sqlite3.Connection, rows: Sequence[Row], on: date, twice: Twice = "skip"
) -> Taken:
    """Take the rows of a table into a box; a row's number is kept where it is free.

    Parameters
    ----------
    box : sqlite3.Connection
        Open for writing.
    rows : sequence of Row
        Those that are right.
    on : date
        Today.
    twice : str
        What is done with ``twins``.

    Returns
    -------
    Taken
        Row by row, in their order.
    """
    every = floats.listed(box, dropped=True)
    known, used = _Known([one for one in every if not one.dropped]), {one.number for one in every}
    taken = Taken()
    for row in rows:
        twin = known.twin(row)
        if twin is not None and twin.same:
            taken.same += 1
        elif twin is not None and twice == "skip":
            taken.skipped.append(row)
        elif twin is not None and twin.kept is not None and twice != "own":
            there = twin.kept.entry
            entry = row.entry
            if twice == "more":
                entry = replace(there, alike=there.alike + row.entry.alike)
            now = floats.change(box, twin.kept.number, entry, on)
            (taken.more if twice == "more" else taken.changed).append(now)
            known.add(row, now)
        else:
            number = None if row.number in used else row.number
            now = floats.put(box, row.entry, on, number)
            used.add(now.number)
            taken.put.append(now)
            known.add(row, now)
    return taken


class _Known:
    """Floats in the box and rows before, by number and by what is told."""

    def __init__(self, found: Sequence[Kept]) -> None:
        self.by_number = {one.number: one for one in found}
        self.by_told: dict[str, tuple[Kept | None, bool]] = {}
        for one in reversed(found):
            self.by_told[_told(one.entry)] = (one, False)

    def twin(self, row: Row) -> Twin | None:
        """Return of what a row tells already, if it does."""
        if row.number is not None and (there := self.by_number.get(row.number)):
            return Twin(row, there, there.entry == row.entry)
        kept, numbered = self.by_told.get(_told(row.entry), (None, row.number is not None))
        if numbered and row.number is not None:  # two rows, each with a number of its own
            return None
        return Twin(row, kept, False) if _told(row.entry) in self.by_told else None

    def add(self, row: Row, kept: Kept | None) -> None:
        """Remember a row that was taken in."""
        self.by_told[_told(row.entry)] = (kept, row.number is not None)


def _told(entry: Entry) -> str:
    return repr((sorted(entry.told.items()), entry.lies))
