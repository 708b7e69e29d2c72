"""Floats as they were told: how many alike, where they lie, and all that was ever said of each."""

import json
import sqlite3
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from hashlib import blake2b
from typing import Any, Literal

from tipsight.box.keeping import Damaged
from tipsight.errors import Mistake, Mistakes
from tipsight.inputs.entry import Entry, checked, plain_told
from tipsight.inputs.question import Question, Value

Act = Literal["put", "change", "drop", "back"]
_WRITTEN = (
    "SELECT held, id, act, made_on, told, alike, lies, made, fished, note, seal FROM held_state"
)


@dataclass(frozen=True)
class Kept:
    """A float in the box, or one that was dropped."""

    number: int
    entry: Entry
    mark: int
    """Of this state; another one follows with each change, so that a stale change is found."""
    act: Act
    """What last happened to it, on ``on``."""
    on: date

    @property
    def dropped(self) -> bool:
        """Whether it is out of the box."""
        return self.act == "drop"

    def question_fields(self) -> dict[str, Value]:
        """Return its items as they go into a question."""
        return dict(self.entry.told)

    def question(self) -> Question:
        """Return a question that tells of this float and of nothing else."""
        return Question().with_options(**self.question_fields())


class Stale(Mistakes):
    """Somebody changed the float meanwhile; both are here, neither is lost."""

    def __init__(self, there: Kept, yours: Entry | None) -> None:
        self.there, self.yours = there, yours
        why = "it was changed meanwhile; look at it and say again what you want"
        super().__init__(
            [Mistake(f"float {there.number}", "", why, f"tipsight box show {there.number}")]
        )


def listed(box: sqlite3.Connection, *, dropped: bool = False) -> tuple[Kept, ...]:
    """Return the floats in the box, each as it is now, by number.

    Parameters
    ----------
    box : sqlite3.Connection
        As `tipsight.box.keeping.opened` gives it.
    dropped : bool
        Whether those are wanted too that were dropped.

    Returns
    -------
    tuple of Kept
        ``question()`` of each tells of it, and ``entry.alike`` how many there are.

    Raises
    ------
    keeping.Damaged
        If a byte is not as it was written; ``opened`` makes a line of it.

    Examples
    --------
    >>> from pathlib import Path
    >>> from tempfile import TemporaryDirectory
    >>> from tipsight.box.keeping import opened
    >>> with TemporaryDirectory() as folder, opened(Path(folder) / "my.box", "write") as box:
    ...     one = Entry({"pattern": "quill avon", "takes": "6BB"}, alike=12)
    ...     _ = put(box, one, date(2026, 10, 3))
    ...     [(kept.number, kept.entry.alike, kept.question().takes) for kept in listed(box)]
    [(1, 12, '6BB')]
    """
    last = " WHERE id IN (SELECT max(id) FROM held_state GROUP BY held) ORDER BY held"
    found = tuple(map(_kept, box.execute(_WRITTEN + last)))
    if [one.number for one in found] != [
        n for (n,) in box.execute("SELECT id FROM held ORDER BY id")
    ]:
        raise Damaged
    return tuple(one for one in found if dropped or not one.dropped)


def one(box: sqlite3.Connection, number: int) -> Kept:
    """Return a float as it is now, dropped or not; Mistakes if there is none of that number."""
    return history(box, number)[-1]


def history(box: sqlite3.Connection, number: int) -> tuple[Kept, ...]:
    """Return all that a float has been, the first first; Mistakes if there is none of that number."""
    rows = box.execute(f"{_WRITTEN} WHERE held = ? ORDER BY id", (number,))
    if found := tuple(map(_kept, rows)):
        return found
    raise Mistakes([Mistake(f"float {number}", "", "there is no such float", "tipsight box list")])


def put(box: sqlite3.Connection, entry: Entry, on: date, number: int | None = None) -> Kept:
    """Put floats in; under ``number`` where that is told and free. Mistakes with all that is wrong."""
    entry = checked(entry)
    row = (number, on.isoformat())
    given = box.execute("INSERT INTO held (id, since) VALUES (?, ?)", row).lastrowid
    return _written(box, int(given or 0), "put", entry, on)


def change(
    box: sqlite3.Connection, number: int, entry: Entry, on: date, *, was: int | None = None
) -> Kept:
    """Tell a float otherwise; what it was stays in its history.

    Parameters
    ----------
    box : sqlite3.Connection
        Open for writing.
    number : int
        The float.
    entry : Entry
        All that is told of it now.
    on : date
        Today.
    was : int, optional
        The mark of what the change was made from.

    Returns
    -------
    Kept
        As it is now.

    Raises
    ------
    Stale
        If it has another mark by now; with both.
    Mistakes
        If there is no such float, it was dropped, or something is wrong with what is told.
    """
    there = _there(box, number, was, entry, dropped=False)
    entry = checked(entry)
    return there if entry == there.entry else _written(box, number, "change", entry, on)


def drop(box: sqlite3.Connection, number: int, on: date, *, was: int | None = None) -> Kept:
    """Take a float out of the box; `back` brings it in again. Raises as `change` does."""
    there = _there(box, number, was, None, dropped=False)
    return _written(box, number, "drop", there.entry, on)


def back(box: sqlite3.Connection, number: int, on: date, *, was: int | None = None) -> Kept:
    """Bring a dropped float in again as it was. Raises as `change` does."""
    there = _there(box, number, was, None, dropped=True)
    return _written(box, number, "back", there.entry, on)


def told_like(found: Sequence[Kept], entry: Entry) -> tuple[Kept, ...]:
    """Return those of some floats that are told just as ``entry`` and lie where it does."""
    same = (plain_told(entry.told), entry.lies)
    return tuple(one for one in found if (one.entry.told, one.entry.lies) == same)


def _there(
    box: sqlite3.Connection, number: int, was: int | None, yours: Entry | None, *, dropped: bool
) -> Kept:
    found = one(box, number)
    if was is not None and was != found.mark:
        raise Stale(found, yours)
    if found.dropped != dropped:
        why = "it is in the box" if dropped else "it was dropped; bring it back first"
        example = f"tipsight box {'drop' if dropped else 'back'} {number}"
        raise Mistakes([Mistake(f"float {number}", "", why, example)])
    return found


def _written(box: sqlite3.Connection, number: int, act: Act, entry: Entry, on: date) -> Kept:
    (mark,) = box.execute("SELECT coalesce(max(id), 0) + 1 FROM held_state").fetchone()
    told = json.dumps(entry.told, ensure_ascii=False)
    rest = (entry.alike, entry.lies, entry.made, entry.fished, entry.note)
    row = (number, mark, act, on.isoformat(), told, *rest)
    box.execute(
        "INSERT INTO held_state (held, id, act, made_on, told, alike, lies, made, fished, note, seal)"
        " VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
        (*row, _seal(row)),
    )
    return Kept(number, entry, mark, act, on)


def _seal(row: tuple[Any, ...]) -> str:
    """Return by what a state is known to be as it was written: SQLite itself has no such sum."""
    return blake2b(json.dumps(row).encode(), digest_size=8).hexdigest()


def _kept(row: tuple[Any, ...]) -> Kept:
    *row_told, seal = row
    if seal != _seal(tuple(row_told)):
        raise Damaged
    number, mark, act, on, told, *rest = row_told
    entry = Entry(json.loads(told), *rest)
    return Kept(number, entry, mark, act, date.fromisoformat(on))
