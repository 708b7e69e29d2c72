"""The one file in which things are kept: where it is, how it is opened, and what can be wrong with it."""

import os
import shutil
import sqlite3
from collections.abc import Iterator
from contextlib import closing, contextmanager
from itertools import chain
from pathlib import Path
from typing import Literal

from tipsight.errors import Mistake, Mistakes

PLACE = "TIPSIGHT_BOX"
"""Names the file where no --box does."""
FILE = "box.sqlite"
MARK = 0x74697073
"""By which a box is told from other databases (``application_id``)."""
WAIT_S = 10.0
"""So long one who writes waits for another."""
MIGRATIONS: tuple[tuple[str, ...], ...] = (
    (
        """
        CREATE TABLE reading (
            id INTEGER PRIMARY KEY,
            kind TEXT NOT NULL CHECK (kind IN ('card', 'corners', 'note', 'dips')),
            whose TEXT NOT NULL CHECK (whose <> ''),
            made_on TEXT NOT NULL CHECK (date(made_on) IS NOT NULL),
            model TEXT NOT NULL,
            told TEXT NOT NULL CHECK (json_valid(told))
        )
        """,
        """
        CREATE TABLE reading_act (
            id INTEGER PRIMARY KEY,
            reading INTEGER NOT NULL REFERENCES reading (id),
            act TEXT NOT NULL CHECK (act IN ('drop', 'back')),
            made_on TEXT NOT NULL
        )
        """,
        """
        CREATE TABLE asked_last (
            only INTEGER PRIMARY KEY CHECK (only = 1),
            told TEXT NOT NULL CHECK (json_valid(told))
        )
        """,
    ),
)
"""From each schema to the next; never altered once they are out, only added to."""


def place(told: str | None = None) -> Path:
    """Return where the box is: as told, by the environment, or this person's usual place for data."""
    if told is not None:
        return Path(told)
    if named := os.environ.get(PLACE):
        return Path(named)
    from platformdirs import user_data_path

    return user_data_path("tipsight", appauthor=False) / FILE


def _wrong(path: Path, error: sqlite3.Error) -> Mistakes:
    code = getattr(error, "sqlite_errorcode", 0) & 0xFF
    reasons = {
        sqlite3.SQLITE_NOTADB: "this is not a box; name another file",
        sqlite3.SQLITE_CORRUPT: "this box is damaged; put the last copy of it in its place",
        sqlite3.SQLITE_READONLY: "nothing may be written there; name another file",
        sqlite3.SQLITE_PERM: "nothing may be written there; name another file",
        sqlite3.SQLITE_FULL: "the disk is full; nothing was changed",
        sqlite3.SQLITE_BUSY: "another program is writing to it; try again",
        sqlite3.SQLITE_CANTOPEN: "it cannot be opened there",
    }
    why = reasons.get(code, "it could not be read or written; nothing was changed")
    return Mistakes([Mistake("--box", str(path), why, "--box my.box")])


def _refused(path: Path, why: str) -> Mistakes:
    return Mistakes([Mistake("--box", str(path), why, "--box my.box")])


def _schema(one: sqlite3.Connection, path: Path) -> int:
    """Return the schema of a file, 0 of an empty one; Mistakes for what is no box or a newer one."""
    mark = one.execute("PRAGMA application_id").fetchone()[0]
    schema = int(one.execute("PRAGMA user_version").fetchone()[0])
    empty = one.execute("SELECT count(*) FROM sqlite_master").fetchone()[0] == 0
    if mark != MARK and not (empty and mark == 0 and schema == 0):
        raise _refused(path, "this is not a box; name another file")
    if schema > len(MIGRATIONS):
        raise _refused(path, "a newer tipsight made this box; use that one")
    return schema


def _migrate(one: sqlite3.Connection, path: Path, schema: int) -> None:
    if schema:
        shutil.copy2(path, path.with_name(f"{path.name}.schema{schema}"))
    one.execute("BEGIN IMMEDIATE")
    for statement in chain.from_iterable(MIGRATIONS[schema:]):
        one.execute(statement)
    one.execute(f"PRAGMA application_id = {MARK}")
    one.execute(f"PRAGMA user_version = {len(MIGRATIONS)}")
    one.execute("COMMIT")


@contextmanager
def opened(path: Path, how: Literal["read", "write"] = "read") -> Iterator[sqlite3.Connection]:
    """Open a box; what is written within the block is kept whole, or, if it fails, not at all.

    Parameters
    ----------
    path : Path
        The file; made with its folders where it is to be written and is not there.
    how : str
        ``read`` alters nothing, and works in a folder that may only be read.

    Yields
    ------
    sqlite3.Connection
        With a rollback journal, full sync, foreign keys and patience.

    Raises
    ------
    Mistakes
        If it is no box, a newer or a damaged one, or cannot be written.
    """
    if how == "write":
        try:
            path.parent.mkdir(parents=True, exist_ok=True)
        except OSError:
            raise _refused(path, "it cannot be opened there") from None
    try:
        uri = f"{path.resolve().as_uri()}?mode={'rwc' if how == 'write' else 'ro'}"
        with closing(sqlite3.connect(uri, WAIT_S, uri=True, isolation_level=None)) as one:
            one.execute("PRAGMA foreign_keys = ON")
            schema = _schema(one, path)
            if how == "write":
                one.execute("PRAGMA synchronous = FULL")
                if schema < len(MIGRATIONS):
                    _migrate(one, path, schema)
                one.execute("BEGIN IMMEDIATE")
            elif schema < len(MIGRATIONS):
                raise _refused(path, "an older tipsight made this box; write to it once")
            try:
                yield one
            except BaseException:
                if one.in_transaction:
                    one.execute("ROLLBACK")
                raise
            if one.in_transaction:
                one.execute("COMMIT")
    except (sqlite3.Error, ValueError) as error:
        if isinstance(error, Mistakes):
            raise
        if isinstance(error, sqlite3.Error):
            raise _wrong(path, error) from None
        raise _refused(path, "it cannot be opened there") from None
