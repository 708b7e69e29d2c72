"""Tables from CSV files: read by their schema, checked, and laid over the packaged ones."""

import csv
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any

from tipsight.errors import Mistake, Mistakes, nearest
from tipsight.tables.kinds import Fault, NameOf, Number, Row
from tipsight.tables.schemas import SCHEMAS
from tipsight.tables.spectrum_file import points

PACKAGED = Path(__file__).parents[1] / "data"


@dataclass(frozen=True)
class Tables:
    """Own tables, read and found good. It can be pickled, to be used in another process too."""

    folder: str
    texts: tuple[tuple[str, str], ...]
    """Name and content of each."""
    spectra: tuple[tuple[str, str], ...] = ()
    """Likewise of each measured spectrum that a row names."""


def read_folder(folder: Path | str) -> Tables:
    """Return the tables of a folder, all of them checked.

    Parameters
    ----------
    folder : path
        With CSV files named like those in ``tipsight/data``: the same columns, and the rows that
        are to differ or to be added.

    Raises
    ------
    Mistakes
        With all that is wrong: file, line, column and what is allowed there.
    """
    folder = Path(folder)
    if not folder.is_dir():
        raise Mistakes([Mistake("tables", f"{folder}", "there is no such folder", "my-tables")])
    paths = sorted(path for path in folder.iterdir() if path.suffix.lower() == ".csv")
    if not paths:
        raise Mistakes([Mistake("tables", f"{folder}", "there is no table in this folder", "")])
    wrong: list[Mistake] = []
    texts: dict[str, str] = {}
    lines: dict[str, list[tuple[int, Row]]] = {}
    named = _spectra_named(folder)
    paths = [path for path in paths if path.name not in named]
    for path in paths:
        try:
            texts[path.stem] = _text(path)
            lines[path.stem] = list(_rows_of(path.stem, texts[path.stem], f"{path}"))
        except Mistakes as mistakes:
            wrong += mistakes.mistakes
    spectra: dict[str, str] = {}
    for name in sorted(named):
        try:
            spectra[name] = _spectrum_text(folder / name)
        except Mistakes as mistakes:
            wrong += mistakes.mistakes
    own = Tables(f"{folder}", tuple(texts.items()), tuple(spectra.items()))
    if not wrong:  # only whole tables can be held against each other
        wrong = [m for path in paths for m in _faults(own, path, lines[path.stem])]
    if wrong:
        raise Mistakes(wrong)
    return own


def _spectra_named(folder: Path) -> set[str]:
    """Return the files that rows of the folder's own paints name, as far as they can be read."""
    path = folder / "paints.csv"
    try:
        rows = _rows_of(path.stem, path.read_text(encoding="utf-8-sig"), f"{path}")
        return {row["spectrum"] for _, row in rows if row["spectrum"]}
    except (OSError, UnicodeDecodeError, Mistakes):
        return set()


def _spectrum_text(path: Path) -> str:
    try:
        text = path.read_text(encoding="utf-8-sig")
    except (OSError, UnicodeDecodeError):
        why = "a row of paints.csv names this file, and it cannot be read beside it"
        raise Mistakes([Mistake(f"{path}", "", why, "")]) from None
    points(text, f"{path}")
    return text


def _text(path: Path) -> str:
    if path.stem not in SCHEMAS or path.suffix != ".csv":
        meant = nearest(path.stem.lower(), SCHEMAS)
        raise Mistakes(
            [Mistake(f"{path}", "", f"there is no packaged table of this name{meant}", "")]
        )
    if why := SCHEMAS[path.stem].fixed:
        raise Mistakes([Mistake(f"{path}", "", f"this table cannot be replaced: {why}", "")])
    try:
        return path.read_text(encoding="utf-8-sig")
    except UnicodeDecodeError:
        raise Mistakes([Mistake(f"{path}", "", "this is not a text file in UTF-8", "")]) from None
    except OSError as error:
        why = f"this file cannot be read: {error.strerror}"
        raise Mistakes([Mistake(f"{path}", "", why, "")]) from None


def _cells(text: str) -> Iterator[tuple[int, list[str]]]:
    """Yield the cells of each line that is no comment, with its number in the file."""
    numbers: list[int] = []

    def lines() -> Iterator[str]:
        for number, line in enumerate(text.splitlines(keepends=True), 1):
            # A spreadsheet sets a comment that holds a comma in quotes, and an empty row in commas.
            if line.strip(', "\t\r\n') and not line.lstrip('"').startswith("#"):
                numbers.append(number)
                yield line

    for cells in csv.reader(lines()):
        yield numbers[-1], [cell.strip() for cell in cells]


def _rows_of(name: str, text: str, where: str) -> Iterator[tuple[int, Row]]:
    """Yield line number and typed row, and in the end raise all that could not be read."""
    columns, wrong = SCHEMAS[name].columns, []
    lines = _cells(text)
    at, header = next(lines, (1, []))
    for column in header:
        if column not in columns or header.count(column) > 1:
            said = f"the columns are {', '.join(columns)}, each once, with commas between them"
            raise Mistakes([Mistake(f"{where}, line {at}", column, said, "")])
    optional = SCHEMAS[name].optional
    if missing := [column for column in columns if column not in (*header, *optional)]:
        said = f"the columns {', '.join(missing)} are missing"
        raise Mistakes([Mistake(f"{where}, line {at}", "", said, "")])
    for at, cells in lines:
        if len(cells) != len(header):
            said = f"there are {len(cells)} cells and {len(header)} columns; quote a cell with a comma in it"
            wrong.append(Mistake(f"{where}, line {at}", "", said, ""))
            continue
        row: dict[str, Any] = {column: columns[column].read("") for column in optional}
        for column, cell in zip(header, cells, strict=True):
            try:
                row[column] = columns[column].read(cell)
            except ValueError:
                allowed = columns[column].allowed
                wrong.append(Mistake(f"{where}, line {at}, {column}", cell, allowed, ""))
        yield at, row
    if wrong:
        raise Mistakes(wrong)


@cache
def laid_over(name: str, own: Tables | None) -> tuple[Row, ...]:
    """Return the packaged rows of a table with own ones in place of those of their key."""
    path = PACKAGED / f"{name}.csv"
    packaged = _by_key(name, _typed(name, path.read_text(encoding="utf-8")))
    texts = dict(own.texts) if own else {}
    merged = packaged | (_by_key(name, _typed(name, texts[name])) if name in texts else {})
    first = SCHEMAS[name].key[0]
    if isinstance(SCHEMAS[name].columns[first], Number):
        merged = dict(sorted(merged.items()))
    return tuple(row for group in merged.values() for row in group)


def _typed(name: str, text: str) -> list[Row]:
    return [row for _, row in _rows_of(name, text, f"{name}.csv")]


def _by_key(name: str, rows: Sequence[Row]) -> dict[tuple[object, ...], list[Row]]:
    found: dict[tuple[object, ...], list[Row]] = {}
    for row in rows:
        found.setdefault(tuple(row[column] for column in SCHEMAS[name].key), []).append(row)
    return found


def _faults(own: Tables, path: Path, lines: Sequence[tuple[int, Row]]) -> Iterator[Mistake]:
    """Yield what is wrong with own rows beside others."""
    schema, seen = SCHEMAS[path.stem], dict[tuple[object, ...], int]()
    for at, row in lines:
        key = tuple(row[column] for column in schema.key)
        if not schema.grouped and key in seen:
            said = f"this row stands on line {seen[key]} already"
            yield Mistake(f"{path}, line {at}", ", ".join(map(_said, key)), said, "")
        seen.setdefault(key, at)
        if fault := _fault(own, path.stem, row):
            column, allowed = fault
            yield Mistake(f"{path}, line {at}, {column}", _said(row[column]), allowed, "")


def _said(cell: object) -> str:
    return "" if cell is None else f"{cell:g}" if isinstance(cell, float) else f"{cell}"


def _fault(own: Tables, name: str, row: Row) -> Fault | None:
    schema = SCHEMAS[name]
    if schema.closed:
        ours = list(dict.fromkeys(_said(r[schema.closed]) for r in laid_over(name, None)))
        if _said(row[schema.closed]) not in ours:
            return schema.closed, f"say one of {', '.join(ours)}"
    for column, kind in schema.columns.items():
        if isinstance(kind, NameOf):
            names = list(dict.fromkeys(r[kind.column] for r in laid_over(kind.table, own)))
            if row[column] not in names:
                return column, f"say one of {', '.join(names)}"
    if schema.check is None:
        return None
    return schema.check(row, lambda table: laid_over(table, own), lambda t: laid_over(t, None))
