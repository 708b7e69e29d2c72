"""Readings as they were told: kept for good, dropped and brought back, never worked out and never altered."""

import json
import sqlite3
from dataclasses import dataclass
from datetime import date
from typing import Any, Literal

from tipsight.errors import Mistake, Mistakes

Kind = Literal["card", "corners", "note", "dips"]


@dataclass(frozen=True)
class Reading:
    """One thing that somebody saw and told."""

    kind: Kind
    whose: str
    """A person; of dips the water."""
    made_on: date
    model: str
    """Which sums there were then; the reading does not hang on them."""
    told: dict[str, Any]
    number: int = 0
    """By which it is dropped and brought back; given by the box."""
    dropped: bool = False


def add(box: sqlite3.Connection, reading: Reading) -> int:
    """Keep a reading; return its number."""
    found = box.execute(
        "INSERT INTO reading (kind, whose, made_on, model, told) VALUES (?, ?, ?, ?, ?)",
        (
            reading.kind,
            reading.whose,
            reading.made_on.isoformat(),
            reading.model,
            json.dumps(reading.told, ensure_ascii=False, allow_nan=False),
        ),
    )
    return int(found.lastrowid or 0)


def listed(box: sqlite3.Connection, *, whose: str | None = None) -> tuple[Reading, ...]:
    """Return all readings, dropped ones too, or those of one person or water, as they were told."""
    rows = box.execute(
        "SELECT r.kind, r.whose, r.made_on, r.model, r.told, r.id, coalesce((SELECT a.act = 'drop'"
        " FROM reading_act a WHERE a.reading = r.id ORDER BY a.id DESC LIMIT 1), 0)"
        " FROM reading r WHERE ? IS NULL OR r.whose = ? ORDER BY r.id",
        (whose, whose),
    )
    return tuple(
        Reading(kind, name, date.fromisoformat(on), model, json.loads(told), number, bool(gone))
        for kind, name, on, model, told, number, gone in rows
    )


def act(box: sqlite3.Connection, number: int, what: Literal["drop", "back"], on: date) -> Reading:
    """Drop a reading, or bring it back; return it. Mistakes if there is none of that number."""
    found = next((one for one in listed(box) if one.number == number), None)
    if found is None or found.dropped == (what == "drop"):
        why = (
            "there is no such reading to bring back"
            if what == "back"
            else "there is no such reading"
        )
        raise Mistakes([Mistake("reading", f"{number}", why, "tipsight eyes")])
    box.execute(
        "INSERT INTO reading_act (reading, act, made_on) VALUES (?, ?, ?)",
        (number, what, on.isoformat()),
    )
    return found


def keep_asked(box: sqlite3.Connection, told: dict[str, Any]) -> None:
    """Keep what was asked last, as it was told."""
    box.execute(
        "INSERT INTO asked_last (only, told) VALUES (1, ?) "
        "ON CONFLICT (only) DO UPDATE SET told = excluded.told",
        (json.dumps(told, ensure_ascii=False),),
    )


def asked_last(box: sqlite3.Connection) -> dict[str, Any] | None:
    """Return what was asked last; None if nothing was."""
    found = box.execute("SELECT told FROM asked_last").fetchone()
    return None if found is None else dict(json.loads(found[0]))
