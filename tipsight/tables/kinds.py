"""What may stand in a cell of a table, and how a table as a whole is described."""

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any

Row = Mapping[str, Any]
"""A row by column: text, number, whole number, truth, or None where it is left empty."""
Rows = Callable[[str], tuple[Row, ...]]
"""From a table's name to its rows."""
Fault = tuple[str, str]
"""The column at fault and what is allowed there."""


@dataclass(frozen=True)
class Text:
    """Text, of a form where its form matters."""

    form: str = ".+"
    """A regular expression for the whole of it."""
    allowed: str = "say something"

    def read(self, text: str) -> str:
        """Return ``text``, or raise ValueError."""
        if not re.fullmatch(self.form, text):
            raise ValueError(text)
        return text


@dataclass(frozen=True)
class Number:
    """A number within limits; perhaps a whole one, perhaps left empty (None)."""

    low: float
    high: float
    whole: bool = False
    blank: bool = False

    @property
    def allowed(self) -> str:
        """What may be said."""
        what = "whole number" if self.whole else "number"
        empty = ", or leave it empty" if self.blank else ""
        return f"say a {what} from {self.low:g} to {self.high:g}{empty}"

    def read(self, text: str) -> float | int | None:
        """Return the number, or raise ValueError."""
        if self.blank and not text:
            return None
        value = float(text)
        if not self.low <= value <= self.high or (self.whole and not value.is_integer()):
            raise ValueError(text)
        return int(value) if self.whole else value


@dataclass(frozen=True)
class OneOf:
    """One of a few words."""

    words: tuple[str, ...]

    @property
    def allowed(self) -> str:
        """What may be said."""
        return f"say one of {', '.join(self.words)}"

    def read(self, text: str) -> str:
        """Return ``text``, or raise ValueError."""
        if text not in self.words:
            raise ValueError(text)
        return text


@dataclass(frozen=True)
class YesNo:
    """Yes or no, as a truth."""

    allowed = "say yes or no"

    def read(self, text: str) -> bool:
        """Return whether it is yes, or raise ValueError."""
        return ("no", "yes").index(text) == 1


@dataclass(frozen=True)
class NameOf:
    """What some table has in a column; looked up once all tables are read."""

    table: str
    column: str = "name"
    allowed = "say a name"

    def read(self, text: str) -> str:
        """Return ``text``."""
        return text


Kind = Text | Number | OneOf | YesNo | NameOf


@dataclass(frozen=True)
class Schema:
    """What a table holds."""

    columns: Mapping[str, Kind]
    key: tuple[str, ...] = ("name",)
    """The columns that tell one row from another; rows are in order of a key that is a number."""
    grouped: bool = False
    """Whether several rows share a key, and are replaced together."""
    closed: str = ""
    """A column that takes no value but the packaged ones, by which the sums go."""
    fixed: str = ""
    """Why the table cannot be replaced."""
    optional: tuple[str, ...] = ()
    """Columns that may be left out; a cell is then as if it were empty."""
    check: Callable[[Row, Rows, Rows], Fault | None] | None = None
    """What else is wrong with a row; given all rows, and the packaged ones."""
