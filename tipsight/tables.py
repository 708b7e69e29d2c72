"""The tables that a craftsman may correct: CSV files, in the package or in a folder of his own."""

import csv
from collections.abc import Callable
from functools import cache
from pathlib import Path
from typing import Any, TypeVar

import numpy as np
from numpy.typing import NDArray

from tipsight.errors import Mistake, Mistakes

PACKAGED = Path(__file__).parent / "data"
F = TypeVar("F", bound=Callable[..., Any])
_own: list[Path] = []
_caches: list[Callable[[], None]] = []


def derived(function: F) -> F:
    """Cache what ``function`` makes of the tables until other tables are put in their place."""
    cached = cache(function)
    _caches.append(cached.cache_clear)
    return cached  # type: ignore[return-value]


def use_folder(folder: Path | str | None) -> None:
    """Let tables in ``folder`` stand in for the packaged ones of the same name; None ends it.

    Parameters
    ----------
    folder : path or None
        A folder with CSV files named like those in ``tipsight/data``.

    Raises
    ------
    Mistakes
        If there is no such folder.

    Examples
    --------
    >>> use_folder(None)
    """
    _own.clear()
    for clear in _caches:
        clear()
    if folder is None:
        return
    if not Path(folder).is_dir():
        raise Mistakes(
            [Mistake("tables", str(folder), "there is no such folder", "--tables my-tables")]
        )
    _own.append(Path(folder))


@derived
def rows(name: str) -> tuple[dict[str, str], ...]:
    """Return the rows of table ``name`` as dictionaries of text, comment lines left out.

    Parameters
    ----------
    name : str
        The file's name without ``.csv``.

    Returns
    -------
    tuple of dict
        One dictionary a row, keyed by the header line.

    Examples
    --------
    >>> rows("shot")[0]["name"]
    'SSG'
    """
    path = next(p for folder in (*_own, PACKAGED) if (p := folder / f"{name}.csv").exists())
    with path.open(encoding="utf-8", newline="") as file:
        lines = [line for line in file if line.strip() and not line.startswith("#")]
    return tuple(
        {k.strip(): (v or "").strip() for k, v in row.items()} for row in csv.DictReader(lines)
    )


def row(table: str, name: str, says: str) -> dict[str, str]:
    """Return the row of a table that has a name.

    Parameters
    ----------
    table : str
        The file's name without ``.csv``; its first column is ``name``.
    name : str
        The name wanted.
    says : str
        What such a row is, for the error.

    Returns
    -------
    dict of str
        The row.

    Raises
    ------
    Mistakes
        If no row has that name.

    Examples
    --------
    >>> row("banks", "reed", "bank")["name"]
    'reed'
    """
    for one in rows(table):
        if one["name"] == name:
            return one
    names = [one["name"] for one in rows(table)]
    raise Mistakes([Mistake(says, name, "say one of " + ", ".join(names), names[0])])


@derived
def columns(name: str) -> dict[str, NDArray[np.float64]]:
    """Return the columns of an all-number table as arrays.

    Parameters
    ----------
    name : str
        The file's name without ``.csv``.

    Returns
    -------
    dict of numpy.ndarray
        One read-only array a column.

    Examples
    --------
    >>> sorted(columns("general_sky"))[:3]
    ['a', 'b', 'c']
    """
    table = rows(name)
    arrays = {
        key: np.array([float(row[key]) for row in table]) for key in table[0] if key != "source"
    }
    for array in arrays.values():
        array.setflags(write=False)
    return arrays
