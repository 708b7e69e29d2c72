"""Floats as a table (CSV) that any spreadsheet opens: a column for each item, a row for each kind."""

import csv
import io
import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from tipsight.errors import Mistake, Mistakes, nearest
from tipsight.inputs.entry import MOST_ALIKE, OF_FLOAT, Entry, checked
from tipsight.inputs.items import matchable
from tipsight.inputs.quantities import Unread, number

BESIDE = ("number", "alike", "lies", "made", "fished", "note")
"""Columns beside the question's items."""
ALWAYS = ("pattern", "takes", "size", "diameter", "stock", "showing", "paint", "seasons")
"""Columns that stand there even where nobody tells them, so that an empty table can be filled."""
COLUMNS = (*BESIDE, *OF_FLOAT)
HIGHEST = 999_999_999
MOST_ROWS = 20_000
_FORMULA = re.compile(r"'*[=+\-@]")
"""What a spreadsheet would take for a formula; such a cell goes out with an apostrophe before it."""
_GUARDED = re.compile(r"'+[=+\-@]")


@dataclass(frozen=True)
class Row:
    """One row that is right."""

    at: int
    """Its row in the spreadsheet; the names stand in row 1."""
    number: int | None
    entry: Entry


@dataclass(frozen=True)
class Table:
    """What a text has: the rows that are right, and all that is wrong, by row and column."""

    rows: tuple[Row, ...]
    mistakes: tuple[Mistake, ...]


def write(floats: Iterable[tuple[int, Entry]]) -> str:
    r"""Return floats, each with its number, as a table.

    >>> write([(7, Entry({"pattern": "quill avon", "takes": "6BB"}, 2, note="=x"))]).splitlines()
    ... # doctest: +NORMALIZE_WHITESPACE
    ['number,alike,lies,made,fished,note,pattern,takes,size,diameter,stock,showing,paint,seasons',
     "7,2,,,,'=x,quill avon,6BB,,,,,,"]
    """
    told = [
        {**entry.told, "number": f"{n}", **{key: f"{getattr(entry, key)}" for key in BESIDE[1:]}}
        for n, entry in floats
    ]
    used = {key for one in told for key in one} | {*BESIDE, *ALWAYS}
    columns = [key for key in COLUMNS if key in used]
    text = io.StringIO(newline="")
    out = csv.writer(text)
    out.writerow(columns)
    out.writerows([_out(one.get(key, "")) for key in columns] for one in told)
    return text.getvalue()


def read(data: bytes) -> Table:
    r"""Return what a table has.

    Parameters
    ----------
    data : bytes
        In UTF-8 or UTF-16 with its mark; cells parted by commas, semicolons or tabs.

    Returns
    -------
    Table
        With the mistakes of all rows.

    Raises
    ------
    Mistakes
        If it is no table of floats, or with a column of no use.

    Examples
    --------
    >>> read(b"pattern;takes;alike\nquill avon;6BB;12\n").rows[0].entry.alike
    12
    """
    records = _records(_text(data))
    if not records:
        raise Mistakes([Mistake("row 1", "", "name the columns here", "pattern,takes,paint")])
    keys, of_columns = _columns(records[0])
    if len(records) - 1 > MOST_ROWS:
        why = f"these are {len(records) - 1} rows, and {MOST_ROWS} are the most"
        raise Mistakes([Mistake("file", "", why, "")])
    rows, mistakes = list[Row](), list[Mistake]()
    numbers: dict[int, int] = {}
    for at, record in enumerate(records[1:], 2):
        cells = [_in(cell) for cell in record]
        if not any(cells):
            continue
        try:
            row = _row(at, keys, cells)
            if row.number is not None and (first := numbers.setdefault(row.number, at)) != at:
                why = f"row {first} has this number too; leave it out for another float"
                raise Mistakes([Mistake("number", f"{row.number}", why, "")])
            rows.append(row)
        except Mistakes as wrong:
            mistakes += [_in_row(at, mistake) for mistake in wrong.mistakes]
    if of_columns:  # no row is right without the column that it stands in
        raise Mistakes([*of_columns, *mistakes])
    return Table(tuple(rows), tuple(mistakes))


def _text(data: bytes) -> str:
    marks = {b"\xff\xfe": "utf-16", b"\xfe\xff": "utf-16"}
    try:
        text = data.decode(marks.get(data[:2], "utf-8-sig"))
    except UnicodeDecodeError:
        why = "this is not text in UTF-8; save the table as CSV in UTF-8"
        raise Mistakes([Mistake("file", "", why, "")]) from None
    if "\0" in text:
        why = "this is no table; save it from the spreadsheet as CSV"
        raise Mistakes([Mistake("file", "", why, "")])
    return text


def _records(text: str) -> list[list[str]]:
    """Return the rows, parted by what parts the names of the columns."""
    first = text[: text.find("\n")] if "\n" in text else text
    mark = max(",;\t", key=first.count)
    try:
        return list(csv.reader(io.StringIO(text, newline=""), delimiter=mark, strict=True))
    except csv.Error:
        why = "a cell that begins with a quotation mark does not end with one"
        raise Mistakes([Mistake("file", "", why, "")]) from None


def _columns(names: Sequence[str]) -> tuple[list[str], list[Mistake]]:
    """Return the key of each column, empty where it has no name, and what is wrong with names."""
    known = {matchable(key): key for key in COLUMNS}
    known |= {"how many": "alike", "lies in": "lies", "last fished": "fished"}
    keys: list[str] = []
    mistakes = []
    for name in names:
        plain = matchable(_in(name))
        key = known.get(plain, "")
        if plain and not key:
            why = f"there is no such column{nearest(plain, known)}"
            mistakes.append(Mistake("row 1", name, why, "pattern"))
        if key and key in keys:
            mistakes.append(Mistake("row 1", name, "two columns have this name", ""))
        keys.append(key)
    if not any(keys):
        raise Mistakes([Mistake("row 1", "", "name the columns here", "pattern,takes,paint")])
    return keys, mistakes


def _row(at: int, keys: Sequence[str], cells: Sequence[str]) -> Row:
    told = {key: cell for key, cell in zip(keys, cells, strict=False) if key and cell}
    mistakes = []
    if any(cells[len(keys) :]):
        mistakes.append(Mistake("columns", "", "there are more cells than columns", ""))
    beside = {key: told.pop(key, "") for key in BESIDE}
    counts: dict[str, int | None] = {}
    for key, most in (("number", HIGHEST), ("alike", MOST_ALIKE)):
        said = beside.pop(key)
        counts[key] = _whole(said, most) if said else None
        if said and counts[key] is None:
            mistakes.append(Mistake(key, said, f"say a whole number, 1 to {most}", "12"))
    try:
        entry = checked(Entry(told, counts["alike"] or 1, **beside))
    except Mistakes as wrong:
        raise Mistakes([*mistakes, *wrong.mistakes]) from None
    if mistakes:
        raise Mistakes(mistakes)
    return Row(at, counts["number"], entry)


def _whole(text: str, most: int) -> int | None:
    try:
        found = number(text)
    except Unread:
        return None
    return int(found) if found.is_integer() and 1 <= found <= most else None


def _in_row(at: int, mistake: Mistake) -> Mistake:
    return Mistake(f"row {at}, {mistake.item}", mistake.said, mistake.allowed, mistake.example)


def _out(text: str) -> str:
    return f"'{text}" if _FORMULA.match(text) else text


def _in(cell: str) -> str:
    plain = cell.strip()
    return plain[1:] if _GUARDED.match(plain) else plain
