"""A season's answers as one flat table, that goes on where it was broken off."""

import csv
import hashlib
import io
import json
from collections.abc import Iterable, Iterator, Sequence
from concurrent.futures import Executor
from pathlib import Path

from tipsight import tables
from tipsight.advice.advise import sweep
from tipsight.errors import Mistake, Mistakes
from tipsight.inputs import begun_table
from tipsight.season.swims import Fished

KEYS = ("swim", "often", "asked")
"""What stands before the answer in each row: the swim, how often it is fished, and a mark of all
that was asked, by which a table that is taken up again is known to be of the same season."""
MARK = 2
Cell = float | str | bool | None


def mark(fished: Fished) -> str:
    """Return a short mark of a swim and of the own tables that are in use."""
    own = tables.in_use()
    mine = [own.texts, own.spectra] if own else []
    said = json.dumps([fished.name, fished.often, fished.question.told(), mine], sort_keys=True)
    return hashlib.sha256(said.encode()).hexdigest()[:12]


def rows(swims: Sequence[Fished], executor: Executor | None = None) -> Iterator[dict[str, Cell]]:
    """Yield one flat row for each swim, in their order, as they come.

    Parameters
    ----------
    swims : sequence of Fished
        With the float that each tells of, or the usual one.
    executor : concurrent.futures.Executor, optional
        Answers them side by side.

    Yields
    ------
    dict
        Swim, how often, the mark of what was asked, and what `Answer.row` has.
    """
    answers = sweep((one.question for one in swims), executor)
    for fished, answer in zip(swims, answers, strict=True):
        head: tuple[Cell, ...] = (fished.name, fished.often, mark(fished))
        yield {**dict(zip(KEYS, head, strict=True)), **answer.row()}


def line(values: Iterable[object]) -> str:
    r"""Return one line of the table, what is undefined left empty.

    Examples
    --------
    >>> line(["glide, far", 2.5, None, True])
    '"glide, far",2.5,,yes\r\n'
    """
    out = io.StringIO()
    yes_no = {True: "yes", False: "no"}
    csv.writer(out).writerow(
        ["" if v is None else yes_no[v] if isinstance(v, bool) else v for v in values]
    )
    return out.getvalue()


def begun(path: Path, swims: Sequence[Fished]) -> int:
    """Return how many swims a table has already, and cut off a row that was not ended.

    Raises
    ------
    Mistakes
        If it is no table of this season.
    """
    found = begun_table.whole_rows(path, KEYS)
    marks = [row[MARK] for row in found[0][1:]] if found else []
    if found is None or marks != [mark(one) for one in swims[: len(marks)]]:
        why = "this table is of another season or other tables of your own; name a new file"
        raise Mistakes([Mistake("--out", str(path), why, "-o season.csv")])
    begun_table.cut(path, found[1])
    return len(marks)


def write(
    path: Path, swims: Sequence[Fished], executor: Executor | None = None
) -> Iterator[tuple[int, int]]:
    """Write the table row by row, and yield how many swims are done and of how many.

    Parameters
    ----------
    path : Path
        A new file, or a table of the same season that was broken off.
    swims : sequence of Fished
        The season.
    executor : concurrent.futures.Executor, optional
        Answers them side by side.

    Yields
    ------
    tuple of int
        Swims done, and all of them; each row is in the file before it is told.

    Raises
    ------
    Mistakes
        If the file is no table of this season.
    """
    done = begun(path, swims)
    yield done, len(swims)
    with path.open("a", encoding="utf-8", newline="") as out:
        for n, row in enumerate(rows(swims[done:], executor), done + 1):
            if not out.tell():
                out.write(line(row))
            out.write(line(row.values()))
            out.flush()
            yield n, len(swims)
