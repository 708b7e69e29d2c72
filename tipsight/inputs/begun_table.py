"""A table that was broken off: the rows that are whole, and how far into the file they go."""

import csv
import io
import os
from collections.abc import Sequence
from pathlib import Path

END = "\r\n"


def whole_rows(path: Path, head: Sequence[str]) -> tuple[list[list[str]], int] | None:
    """Return the whole rows of a table and where in the file they end; None for no such table.

    ``head`` is what its first line begins with; none is needed of a file that was broken off within
    that line.
    """
    try:
        text = path.read_bytes().decode("utf-8") if path.exists() else ""
    except UnicodeDecodeError:
        return None
    whole, end, _ = text.rpartition(END)
    first = ",".join(head)
    if not end:
        return ([], 0) if text[: len(first)] == first[: len(text)] else None
    rows = list(csv.reader(io.StringIO(whole + end, newline="")))
    width = len(rows[0]) if rows else 0
    if rows[:1] and rows[0][: len(head)] == list(head) and all(len(r) == width for r in rows):
        return rows, len((whole + end).encode("utf-8"))
    return None


def cut(path: Path, at: int) -> None:
    """Take off what stands behind the whole rows of a table."""
    if path.exists():
        os.truncate(path, at)


def one_line(text: str) -> str:
    r"""Return a name in one line.

    >>> one_line(" the long\n glide ")
    'the long glide'
    """
    return " ".join(text.split())
