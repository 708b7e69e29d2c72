"""The one file in which things are kept: where it is, how it is opened, and what can be wrong with it."""

import errno
import os
import sqlite3
from collections.abc import Iterator
from contextlib import closing, contextmanager
from itertools import chain, count
from pathlib import Path
from typing import Literal

from tipsight.errors import Mistake, Mistakes

PLACE = "TIPSIGHT_BOX"
"""Names the file where no --box does."""
FILE = "box.sqlite"
MARK = 0x74697073
"""By which a box is told from other databases (``application_id``)."""
DAMAGED = "this box is damaged; put the last copy of it in its place"
FULL = "the disk is full; nothing was changed"
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
    (
        """
        CREATE TABLE held (
            id INTEGER PRIMARY KEY CHECK (id > 0),
            since TEXT NOT NULL CHECK (date(since) IS NOT NULL)
        )
        """,
        """
        CREATE TABLE held_state (
            id INTEGER PRIMARY KEY,
            held INTEGER NOT NULL REFERENCES held (id),
            act TEXT NOT NULL CHECK (act IN ('put', 'change', 'drop', 'back')),
            made_on TEXT NOT NULL CHECK (date(made_on) IS NOT NULL),
            told TEXT NOT NULL CHECK (json_valid(told) AND json_type(told) = 'object'),
            alike INTEGER NOT NULL CHECK (typeof(alike) = 'integer' AND alike BETWEEN 1 AND 9999),
            lies TEXT NOT NULL,
            made TEXT NOT NULL,
            fished TEXT NOT NULL,
            note TEXT NOT NULL,
            seal TEXT NOT NULL CHECK (length(seal) = 16)
        )
        """,
        "CREATE TRIGGER held_state_stays BEFORE UPDATE ON held_state BEGIN"
        " SELECT RAISE(ABORT, 'a state is never altered'); END",
        "CREATE TRIGGER held_state_lasts BEFORE DELETE ON held_state BEGIN"
        " SELECT RAISE(ABORT, 'a state is never taken out'); END",
    ),
    (
        """
        CREATE TABLE worked_out (
            hangs_on TEXT NOT NULL UNIQUE,
            sums TEXT NOT NULL,
            numbers BLOB NOT NULL
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


def wrong(path: Path, error: sqlite3.Error, what: str = "--box") -> Mistakes:
    """Return what SQLite found wrong, in one line."""
    code = getattr(error, "sqlite_errorcode", 0) & 0xFF
    reasons = {
        sqlite3.SQLITE_NOTADB: "this is not a box; name another file",
        sqlite3.SQLITE_CORRUPT: DAMAGED,
        sqlite3.SQLITE_READONLY: "nothing may be written there; name another file",
        sqlite3.SQLITE_PERM: "nothing may be written there; name another file",
        sqlite3.SQLITE_FULL: FULL,
        sqlite3.SQLITE_BUSY: "another program is writing to it; try again",
        sqlite3.SQLITE_CANTOPEN: "it cannot be opened there",
    }
    why = reasons.get(code, "it could not be read or written; nothing was changed")
    return refused(path, why, what)


def refused(path: Path, why: str, what: str = "--box") -> Mistakes:
    """Return what is wrong with a box, or with ``what`` else is named, in one line."""
    example = f"{what} my.box" if what == "--box" else "my.box"
    return Mistakes([Mistake(what, str(path), why, example)])


def why_not(error: Exception) -> str:
    """Return why a copy could not be written."""
    full = getattr(error, "errno", 0) in (errno.ENOSPC, errno.EDQUOT)
    return FULL if full else "it cannot be copied there"


class Damaged(ValueError):  # noqa: N818 - reads as what happened
    """What was read is not what was written."""


def _letters(stored: bytes) -> str:
    """Return text; SQLite itself only says in words what it could not read."""
    try:
        return stored.decode("utf-8")
    except UnicodeDecodeError:
        raise Damaged from None


def _schema(one: sqlite3.Connection, path: Path) -> int:
    """Return the schema of a file, 0 of an empty one; Mistakes for what is no box or a newer one."""
    ours = not one.in_transaction
    if ours:
        one.execute("BEGIN")  # all three of one moment, as another may just be making the box
    try:
        empty = one.execute("SELECT count(*) FROM sqlite_master").fetchone()[0] == 0
        mark = one.execute("PRAGMA application_id").fetchone()[0]
        schema = int(one.execute("PRAGMA user_version").fetchone()[0])
    finally:
        if ours and one.in_transaction:
            one.execute("ROLLBACK")
    if mark != MARK and not (empty and mark == 0 and schema == 0):
        raise refused(path, "this is not a box; name another file")
    if schema > len(MIGRATIONS):
        raise refused(path, "a newer tipsight made this box; use that one")
    return schema


def _check(one: sqlite3.Connection) -> None:
    """Look all pages over, as nothing may be built on a damaged one."""
    if one.execute("PRAGMA quick_check(1)").fetchone()[0] != "ok":
        raise Damaged


def _grow(one: sqlite3.Connection, schema: int) -> None:
    for statement in chain.from_iterable(MIGRATIONS[schema:]):
        one.execute(statement)
    one.execute(f"PRAGMA application_id = {MARK}")
    one.execute(f"PRAGMA user_version = {len(MIGRATIONS)}")


def _migrate(one: sqlite3.Connection, path: Path) -> None:
    """Take a box to the schema of today; what it was stays beside it."""
    one.execute("BEGIN IMMEDIATE")
    schema = _schema(one, path)  # again: another program may have done it meanwhile
    if 0 < schema < len(MIGRATIONS):
        names = (f"{path.name}.schema{schema}{f'-{n}' if n else ''}" for n in count())
        copy = next(one for one in map(path.with_name, names) if not one.exists())
        begun = copy.with_name(f"{copy.name}.part")
        try:
            # by a reader of its own: while we write, SQLite copies nothing from our connection; and
            # were the file opened and closed as a file, POSIX would take our lock from us
            reader = sqlite3.connect(f"{path.resolve().as_uri()}?mode=ro", WAIT_S, uri=True)
            with closing(reader):
                back_up(reader, begun)
            begun.replace(copy)
        finally:
            begun.unlink(missing_ok=True)
    if schema < len(MIGRATIONS):
        _grow(one, schema)
    one.execute("COMMIT")


def back_up(one: sqlite3.Connection, to: Path) -> None:
    """Write what a connection reads into a new file, down to the disk."""
    with closing(sqlite3.connect(to, isolation_level=None)) as new:
        new.execute("PRAGMA synchronous = FULL")
        one.backup(new)


def _in_memory(old: sqlite3.Connection, schema: int) -> sqlite3.Connection:
    """Return an older box as one of today, for reading; its file stays as it is."""
    new = sqlite3.connect(":memory:", isolation_level=None)
    new.text_factory = _letters
    old.backup(new)
    _grow(new, schema)
    return new


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
    try:
        uri = _uri(path, how)
        with closing(_connected(uri, path, how)) as one:
            try:
                yield one
                if one.in_transaction:
                    one.execute("COMMIT")
            except BaseException:
                if one.in_transaction:
                    one.execute("ROLLBACK")
                raise
    except sqlite3.Error as error:
        raise wrong(path, error) from None
    except Damaged:
        raise refused(path, DAMAGED) from None


def _uri(path: Path, how: str) -> str:
    try:
        if how == "write":
            path.parent.mkdir(parents=True, exist_ok=True)
        return f"{path.resolve().as_uri()}?mode={'rwc' if how == 'write' else 'ro'}"
    except (OSError, ValueError):
        raise refused(path, "it cannot be opened there") from None


def _connected(uri: str, path: Path, how: str) -> sqlite3.Connection:
    """Return a connection to a whole box of today, with a transaction begun where it is to be written."""
    one = sqlite3.connect(uri, WAIT_S, uri=True, isolation_level=None)
    try:
        one.text_factory = _letters
        one.execute("PRAGMA foreign_keys = ON")
        if how == "write":
            one.execute("PRAGMA synchronous = FULL")
        schema = _schema_of_whole(one, path, how)
        if how == "write":
            if schema < len(MIGRATIONS):
                _migrate(one, path)
            one.execute("BEGIN IMMEDIATE")
        elif schema < len(MIGRATIONS):
            with closing(one):
                return _in_memory(one, schema)
    except OSError as error:
        one.close()
        raise refused(path, why_not(error)) from None
    except BaseException:
        one.close()
        raise
    return one


def _mend(path: Path) -> None:
    """Take back a change that was broken off, of which the journal is still there."""
    try:
        one = sqlite3.connect(f"{path.resolve().as_uri()}?mode=rw", WAIT_S, uri=True)
        with closing(one):
            one.execute("SELECT count(*) FROM sqlite_master")
    except sqlite3.OperationalError:
        why = "a change was broken off; copy it and its journal to where you may write"
        raise refused(path, why) from None


def _schema_of_whole(one: sqlite3.Connection, path: Path, how: str) -> int:
    """Return the schema, once what a broken-off change left behind is put right."""
    try:
        schema = _schema(one, path)
    except sqlite3.OperationalError as error:
        left = getattr(error, "sqlite_errorcode", 0) & 0xFF == sqlite3.SQLITE_READONLY
        if how == "write" or not left:
            raise
        _mend(path)
        schema = _schema(one, path)
    _check(one)
    return schema
