"""A copy of a box, whole even while others write to it."""

import contextlib
import os
import sqlite3
from contextlib import closing
from pathlib import Path

from tipsight.box import keeping
from tipsight.errors import Mistakes


def copy(path: Path, to: Path) -> None:
    """Copy a box; what was at ``to`` is there until the copy stands whole in its place.

    Parameters
    ----------
    path : Path
        The box.
    to : Path
        The copy; an earlier copy gives way to it, no other file does.

    Raises
    ------
    Mistakes
        If either is no box, both are one file, or the copy cannot be written.
    """
    if to.exists():
        if to.samefile(path):
            raise keeping.refused(to, "this is the box itself; name another file", "copy")
        _check(to)
    part = to.with_name(f".{to.name}.{os.getpid()}.part")
    try:
        with keeping.opened(path) as one:
            _backed_up(one, part, to)
        part.replace(to)
    except (OSError, ValueError) as error:
        if isinstance(error, Mistakes):
            raise
        raise keeping.refused(to, keeping.why_not(error), "copy") from None
    finally:
        with contextlib.suppress(OSError, ValueError):
            part.unlink(missing_ok=True)


def _check(to: Path) -> None:
    """Refuse to put a copy in the place of what is no box; a damaged one may give way."""
    try:
        with closing(sqlite3.connect(f"{to.resolve().as_uri()}?mode=ro", uri=True)) as there:
            mark = there.execute("PRAGMA application_id").fetchone()[0]
    except sqlite3.Error as error:
        raise keeping.wrong(to, error, "copy") from None
    if mark != keeping.MARK:
        raise keeping.refused(to, "this is not a box; name another file", "copy")


def _backed_up(one: sqlite3.Connection, part: Path, to: Path) -> None:
    try:
        keeping.back_up(one, part)
    except sqlite3.Error as error:
        raise keeping.wrong(to, error, "copy") from None
