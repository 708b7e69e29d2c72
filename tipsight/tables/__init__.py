"""The tables that a craftsman may correct: CSV files, packaged or in a folder of his own.

`rows`, `row` and `columns` read them; `using` puts own ones in their place.
"""

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from functools import lru_cache, wraps
from pathlib import Path
from typing import TYPE_CHECKING, Any, TypeVar

from tipsight.errors import Mistake, Mistakes
from tipsight.tables.kinds import Number, Row
from tipsight.tables.reading import PACKAGED, Tables, laid_over, read_folder
from tipsight.tables.schemas import SCHEMAS
from tipsight.tables.spectrum_file import points

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

__all__ = [
    "PACKAGED", "Row", "Tables", "columns", "derived", "in_use", "lately", "read_folder", "row", "rows",
    "spectrum", "using",
]  # fmt: skip
F = TypeVar("F", bound=Callable[..., Any])
_own: Tables | None = None


def in_use() -> Tables | None:
    """Return the own tables that now stand in for packaged ones, to be given to a worker."""
    return _own


@contextmanager
def using(own: Tables | Path | str | None) -> Iterator[None]:
    """Let own tables stand in for the packaged ones within a ``with`` block; None lets none.

    They hold in the whole process, so for all its threads; a worker process is given what
    `in_use` returns and uses that.

    Parameters
    ----------
    own : Tables, path or None
        What `read_folder` or `in_use` returned, or a folder to be read.

    Raises
    ------
    Mistakes
        As `read_folder`, if it is a folder.

    Examples
    --------
    >>> with using(None):
    ...     in_use()
    """
    global _own
    before, _own = _own, read_folder(own) if isinstance(own, Path | str) else own
    try:
        yield
    finally:
        _own = before


def lately(most: int | None) -> Callable[[F], F]:
    """Cache what a function last made of the tables and its arguments, ``most`` of them.

    Of each set of own tables by itself; all are kept where ``most`` is None.
    """

    def kept_by(function: F) -> F:
        @lru_cache(maxsize=most)
        def kept(_tables: Tables | None, *args: Any, **named: Any) -> Any:
            return function(*args, **named)

        @wraps(function)
        def asked(*args: Any, **named: Any) -> Any:
            return kept(_own, *args, **named)

        return asked  # type: ignore[return-value]

    return kept_by


def derived(function: F) -> F:
    """Cache what ``function`` makes of the tables, for each set of own tables by itself."""
    return lately(None)(function)


def rows(name: str) -> tuple[Row, ...]:
    """Return the rows of a table, own ones in place of packaged ones of the same key.

    Parameters
    ----------
    name : str
        The file's name without ``.csv``.

    Returns
    -------
    tuple of Mapping
        By column: text, number, truth, or None where a number is left empty; see `SCHEMAS`.

    Examples
    --------
    >>> rows("shot")[0]["name"], rows("shot")[0]["mass_g"]
    ('SSG', 1.6)
    """
    return laid_over(name, _own)


def row(table: str, name: str, says: str) -> Row:
    """Return the row of a table that has a name.

    Parameters
    ----------
    table : str
        The file's name without ``.csv``; it has a column ``name``.
    name : str
        The name wanted.
    says : str
        What such a row is, for the error.

    Raises
    ------
    Mistakes
        If no row has that name.

    Examples
    --------
    >>> row("banks", "reed", "bank")["self_shade"]
    0.4
    """
    for one in rows(table):
        if one["name"] == name:
            return one
    names = [one["name"] for one in rows(table)]
    raise Mistakes([Mistake(says, name, "say one of " + ", ".join(names), names[0])])


@derived
def spectrum(name: str) -> "tuple[NDArray[np.float64], NDArray[np.float64]]":
    """Return wavelengths [nm] and reflectance [-] of a measured spectrum that an own row names."""
    import numpy as np

    text = dict(_own.spectra)[name] if _own else ""
    nm, share = np.array(points(text, name)).T
    return nm, share


@derived
def columns(name: str) -> dict[str, "NDArray[np.float64]"]:
    """Return the columns of a table that hold numbers, as read-only arrays of one value a row.

    Examples
    --------
    >>> sorted(columns("general_sky"))[:3]
    ['a', 'b', 'c']
    """
    import numpy as np

    numbers = [key for key, kind in SCHEMAS[name].columns.items() if isinstance(kind, Number)]
    arrays = {key: np.array([row[key] for row in rows(name)], dtype=float) for key in numbers}
    for array in arrays.values():
        array.setflags(write=False)
    return arrays
