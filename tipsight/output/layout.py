"""Lines of text: wrapping, tables, and fitting sections into so many lines."""

import re
import textwrap
from collections.abc import Sequence
from dataclasses import dataclass

WIDTH = 80
LABEL = 13


@dataclass(frozen=True)
class Section:
    """A part of the text in several forms, the fullest first and the shortest last."""

    name: str
    forms: tuple[tuple[str, ...], ...]


def entry(label: str, words: str) -> tuple[str, ...]:
    """Return ``words`` wrapped behind a label.

    Parameters
    ----------
    label : str
        Stands before the first line.
    words : str
        What is said.

    Returns
    -------
    tuple of str
        Lines of 80 columns at the most.

    Examples
    --------
    >>> entry("DOUBT", "how far it is")
    ('DOUBT        how far it is',)
    """
    return _wrapped(words, f"{label:<{LABEL}}", " " * LABEL)


def _wrapped(words: str, first: str, rest: str) -> tuple[str, ...]:
    held = re.sub(
        r"(?<=[\d¼½¾]) (?=(?:mm|yd|m|g|in|s|C)\b)|(?<=\bNo) (?=\d)", "\xa0", words.strip()
    )
    lines = textwrap.wrap(
        held,
        WIDTH,
        initial_indent=first,
        subsequent_indent=rest,
        break_on_hyphens=False,
    )
    return tuple(line.replace("\xa0", " ") for line in lines)


def hanging(words: str, first: str = "") -> tuple[str, ...]:
    """Return ``words`` wrapped with all lines but the first set in, or all as far as blanks tell.

    Parameters
    ----------
    words : str
        What is said.
    first : str
        Stands before the first line; blanks stand before every line.

    Returns
    -------
    tuple of str
        Lines of 80 columns at the most.

    Examples
    --------
    >>> hanging("one " * 21)[1]
    '  one'
    """
    return _wrapped(words, first, first if first.isspace() else "  ")


def table(rows: Sequence[Sequence[str]], indent: int = 2, gap: int = 2) -> tuple[str, ...]:
    """Return rows in columns, each as wide as its widest cell.

    Parameters
    ----------
    rows : sequence of sequence of str
        All of the same number of cells.
    indent : int
        How far the table is set in.
    gap : int
        Spaces between two columns.

    Returns
    -------
    tuple of str
        One line a row.

    Examples
    --------
    >>> table([("a", "bb"), ("ccc", "d")])
    ('  a    bb', '  ccc  d')
    """
    widths = [max(len(row[i]) for row in rows) for i in range(len(rows[0]))] if rows else []
    return tuple(
        (
            " " * indent
            + (" " * gap).join(cell.ljust(width) for cell, width in zip(row, widths, strict=True))
        ).rstrip()
        for row in rows
    )


def fitted(sections: Sequence[Section], most: int, order: Sequence[str]) -> tuple[str, ...]:
    """Return the lines of all sections, tightened in turn until they fit.

    Parameters
    ----------
    sections : sequence of Section
        In the order in which they are read.
    most : int
        The most lines there may be.
    order : sequence of str
        Names of sections, in the order in which each gives up its fullest form.

    Returns
    -------
    tuple of str
        No more than ``most`` lines unless every section named has reached its shortest form.

    Examples
    --------
    >>> fitted((Section("a", (("1", "2"), ("1",))), Section("b", (("3",),))), 2, ("a",))
    ('1', '3')
    """
    form = {section.name: 0 for section in sections}
    steps = {section.name: len(section.forms) - 1 for section in sections}

    def lines() -> tuple[str, ...]:
        return tuple(line for section in sections for line in section.forms[form[section.name]])

    for name in order:
        if len(lines()) <= most:
            break
        if form.get(name, 0) < steps.get(name, 0):
            form[name] += 1
    return lines()
