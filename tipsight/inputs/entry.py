"""Floats as they are told to a box: items of the question, how many alike, where they lie, a note."""

import unicodedata
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace
from datetime import date
from typing import Any

from tipsight.errors import Mistake, Mistakes, nearest
from tipsight.inputs.items import ITEMS
from tipsight.inputs.options import as_text
from tipsight.inputs.question import Question, Value, is_not_sure, is_told
from tipsight.inputs.settle_float import settle_box, settle_float
from tipsight.inputs.values import Asker

OF_FLOAT = tuple(key for key, item in ITEMS.items() if item.section in ("float", "tip"))
"""The items of the question that tell of a float and its tip."""
MOST_ALIKE = 9999
MOST_LETTERS, MOST_NOTED = 200, 4000
"""Of a place or an item, and of a note (judgement)."""


@dataclass(frozen=True)
class Entry:
    """What is told of floats that are alike: each item as it was said, nothing worked out."""

    told: Mapping[str, str] = field(hash=False)
    """By the keys of the question's items of float and tip."""
    alike: int = 1
    lies: str = ""
    """Where: a tray, a tube."""
    made: str = ""
    """A year, a month or a day: 2019, 2019-03, 2019-03-24."""
    fished: str = ""
    """When last; as for ``made``."""
    note: str = ""


def checked(entry: Entry) -> Entry:
    """Return an entry in plain form, or Mistakes with all that is wrong, by item.

    Examples
    --------
    >>> checked(Entry({"takes": " 6BB ", "pattern": "quill avon", "paint": ""})).told
    {'pattern': 'quill avon', 'takes': '6BB'}
    >>> checked(Entry({"pattern": "quill avon"}))
    Traceback (most recent call last):
    ...
    tipsight.errors.Mistakes: takes: say what shot it takes, its size, or its parts (for example 6BB)
    """
    mistakes = [
        Mistake(key, "", f"a float has no such item{nearest(key, OF_FLOAT)}", "")
        for key in entry.told
        if key not in OF_FLOAT
    ]
    told = plain_told(entry.told)
    mistakes += list(_of_told(told))
    words = {"lies": _plain(entry.lies), "note": _plain(entry.note, lines=True)}
    for key, text in (*told.items(), *words.items()):
        most = MOST_NOTED if key == "note" else MOST_LETTERS
        if len(text) > most and key != "parts":
            mistakes.append(Mistake(key, f"{text[:20]}...", f"{most} letters are the most", ""))
        elif any(unicodedata.category(c) in ("Cc", "Cs") and c not in "\n\t" for c in text):
            mistakes.append(Mistake(key, "", "a letter in it is no letter", ""))
    if not 1 <= entry.alike <= MOST_ALIKE:
        why = f"say how many, 1 to {MOST_ALIKE}"
        mistakes.append(Mistake("alike", f"{entry.alike}", why, "12"))
    days = {"made": _plain(entry.made), "fished": _plain(entry.fished)}
    for key, day in days.items():
        if day and not _is_day(day):
            why = "say a year, a month or a day"
            mistakes.append(Mistake(key, day, why, "2019, 2019-03 or 2019-03-24"))
    if mistakes:
        raise Mistakes(dict.fromkeys(mistakes))
    return Entry(told, int(entry.alike), **words, **days)


def plain_told(told: Mapping[str, Value | None]) -> dict[str, str]:
    """Return told items as texts, those that say something, in the order in which they are asked."""
    texts = {
        key: _plain("; ".join(value) if isinstance(value, tuple) else as_text(ITEMS[key], value))
        for key, value in told.items()
        if key in OF_FLOAT and is_told(value)
    }
    return {key: texts[key] for key in OF_FLOAT if key in texts}


def _of_told(told: dict[str, str]) -> Iterable[Mistake]:
    known = {key for key, text in told.items() if not is_not_sure(text)}
    if not known & {"pattern"}:
        yield Mistake("pattern", "", "say which pattern it is", ITEMS["pattern"].example)
        return
    if not known & {"takes", "size", "parts"}:
        yield Mistake("takes", "", "say what shot it takes, its size, or its parts", "6BB")
    question: dict[str, Any] = dict(told)
    asker = Asker(Question(**question))
    try:
        settle_float(asker, settle_box(asker))
    except Mistakes as wrong:
        yield from wrong.mistakes
    asker.ask_the_rest()
    yield from asker.mistakes


def sought_words(text: str) -> tuple[str, ...]:
    """Return the words that a float's line must have all to be found.

    >>> sought_words(" Tray  AVON")
    ('tray', 'avon')
    """
    return tuple(text.casefold().split())


def _plain(text: str, *, lines: bool = False) -> str:
    if lines:
        return text.replace("\r\n", "\n").replace("\r", "\n").strip()
    return " ".join(text.split())


def _is_day(text: str) -> bool:
    parts = text.split("-")
    if [len(part) for part in parts] != [4, 2, 2][: len(parts)] or not text.isascii():
        return False
    try:
        return date.fromisoformat("-".join([*parts, "01", "01"][:3])).year >= 1900
    except ValueError:
        return False


def with_told(entry: Entry, told: Mapping[str, Value | None], **also: Any) -> Entry:
    """Return an entry with some items told otherwise; one that says nothing takes the item back.

    >>> with_told(Entry({"pattern": "quill avon", "paint": "red"}), {"paint": "not told"}, alike=2)
    Entry(told={'pattern': 'quill avon'}, alike=2, lies='', made='', fished='', note='')
    """
    return replace(entry, told=plain_told({**entry.told, **told}), **also)
