"""The question as a TOML file: read with every mistake told at once, written to be fed back."""

import re
import tomllib
from collections.abc import Mapping
from datetime import date, datetime
from typing import Any

from tipsight.errors import Mistake, Mistakes, nearest
from tipsight.inputs.case import Case
from tipsight.inputs.items import ITEMS, SECTIONS, Item, items_of
from tipsight.inputs.options import as_text
from tipsight.inputs.question import Question, Value, is_not_sure
from tipsight.inputs.spoken import ANGLERS
from tipsight.inputs.values import typed

_STRETCH_KEYS = ("water", "bank", "height", "beyond", "lit", "share")
_PART_KEYS = ("role", "shape", "material", "length", "top", "foot", "bore", "inside")


def read(text: str) -> Question:
    r"""Return the question that a TOML text puts, or raise all that is wrong with the text.

    Sections are as in ``SECTIONS``, keys as in ``ITEMS``; what is told is kept as said.

    >>> read('[place]\ndistance = "40 yd"').distance
    '40 yd'
    """
    return of_tree(parsed(text))


def parsed(text: str) -> dict[str, Any]:
    """Return the tree of a TOML text, or raise where it is none."""
    try:
        return tomllib.loads(text.removeprefix("\ufeff"))
    except tomllib.TOMLDecodeError as error:
        raise Mistakes(
            [Mistake("file", "", _where(text, str(error)), 'distance = "40 yd"')]
        ) from None


def of_tree(tree: Mapping[str, Any]) -> Question:
    """Return the question that sections of items put, or raise all that is wrong with them."""
    mistakes: list[Mistake] = []
    told: dict[str, Value] = {}
    for section, body in tree.items():
        if section not in SECTIONS:
            home = f"; it belongs under [{ITEMS[section].section}]" if section in ITEMS else ""
            hint = home or nearest(section, SECTIONS)
            mistakes.append(Mistake(section, "", f"there is no such section{hint}", "[place]"))
        elif not isinstance(body, dict):
            mistakes.append(
                Mistake(
                    section, "", "this is the name of a section, not of an item", f"[{section}]"
                )
            )
        else:
            for key, value in body.items():
                _item(section, key, value, told, mistakes)
    if mistakes:
        raise Mistakes(mistakes)
    return Question().with_options(**told)


def _where(text: str, message: str) -> str:
    line = re.search(r"at line (\d+)", message)
    number = int(line[1]) if line else len(text.rstrip().splitlines())
    reason = re.sub(r"\s*\(at .*\)$", "", message)
    reason = reason[0].lower() + reason[1:]
    return f"this is not TOML at line {number}: {reason}; text stands in quotes"


def _item(
    section: str, key: str, value: Any, told: dict[str, Value], mistakes: list[Mistake]
) -> None:
    if key not in ITEMS:
        near = nearest(key, [item.key for item in items_of(section)]) or nearest(key, ITEMS)
        mistakes.append(Mistake(key, "", f"there is no such item in [{section}]{near}", ""))
    elif ITEMS[key].section != section:
        home = ITEMS[key].section
        mistakes.append(
            Mistake(key, "", f"it stands under [{home}], not under [{section}]", f"[{home}]")
        )
    else:
        said = _said(ITEMS[key], value)
        if said is None:
            mistakes.append(
                Mistake(key, str(value), ANGLERS.allowed(ITEMS[key]), ITEMS[key].example)
            )
        else:
            told[key] = said


def _said(item: Item, value: Any) -> Value | None:
    """Return a value of the file as it would be typed, None if it is of a kind that cannot be."""
    if isinstance(value, list):
        texts = [_piece(item, piece) for piece in value]
        return tuple(text for text in texts if text) if item.repeats and all(texts) else None
    if isinstance(value, datetime | date):
        return value.isoformat(sep=" ") if isinstance(value, datetime) else value.isoformat()
    if isinstance(value, bool | str):
        return value
    if isinstance(value, int | float):
        return typed(value) if item.repeats else float(value)
    return None


def _piece(item: Item, piece: Any) -> str | None:
    if isinstance(piece, Mapping):
        keys = {"behind": _STRETCH_KEYS, "parts": _PART_KEYS}.get(item.key, ())
        if not piece or not set(piece) <= set(keys):
            return None
        return _stretch(piece) if item.key == "behind" else _part(piece)
    return (
        str(piece)
        if isinstance(piece, str | int | float) and not isinstance(piece, bool)
        else None
    )


def _stretch(table: Mapping[str, Any]) -> str:
    words = [str(table[key]) for key in ("water", "bank") if key in table]
    words += [
        f"{table[key]} {word}"
        for key, word in (("height", "high"), ("beyond", "beyond"))
        if key in table
    ]
    if "lit" in table:
        words.append(
            "sunlit"
            if table["lit"] is True
            else "unlit"
            if table["lit"] is False
            else str(table["lit"])
        )
    if "share" in table:
        share = table["share"]
        words.append(share if isinstance(share, str) else f"{100 * share:.10g}%")
    return ", ".join(words)


def _part(table: Mapping[str, Any]) -> str:
    words = [str(table[key]) for key in ("role", "shape", "material") if key in table]
    sizes = {"length": "long", "top": "top", "foot": "foot", "bore": "bore", "inside": "inside"}
    words += [
        f"{table[key]}{' mm' if not isinstance(table[key], str) else ''} {word}"
        for key, word in sizes.items()
        if key in table
    ]
    return ", ".join(words)


def write(question: Question, case: Case) -> str:
    """Return the whole question as TOML: what was told, and what was taken for the rest.

    Feeding it back puts the same question; so does it with the taken lines
    uncommented, but that bites and sun then count as told.

    >>> from tipsight.inputs.settle import settle
    >>> asked = Question(distance="40 yd")
    >>> print(write(asked, settle(asked)).splitlines()[2])
    # known = "guessed"  # not told, so taken as
    """
    told = question.told()
    taken = {assumed.item: assumed.taken for assumed in case.assumed}
    lines: list[str] = []
    for section in SECTIONS:
        body = [line for item in items_of(section) if (line := _line(item, told, taken))]
        lines += [f"[{section}]", *body, ""]
    return "\n".join(lines)


def _line(item: Item, told: dict[str, Value], taken: dict[str, str]) -> str:
    if item.key in told:
        unsure = is_not_sure(told[item.key]) and item.key in taken
        tail = f"  # taken as {quoted(taken[item.key])}" if unsure else ""
        return f"{item.key} = {_value(item, told[item.key])}{tail}"
    if item.key in taken:
        return f"# {item.key} = {quoted(taken[item.key])}  # not told, so taken as"
    return ""


def _value(item: Item, value: Value) -> str:
    if isinstance(value, tuple):
        return f"[{', '.join(quoted(text) for text in value)}]"
    return quoted(as_text(item, value))


def quoted(text: str) -> str:
    r"""Return ``text`` as a string of TOML.

    >>> print(quoted('1 1/4"'))
    "1 1/4\""
    """
    escaped = text.replace("\\", "\\\\").replace('"', '\\"')
    return '"' + re.sub(r"[\x00-\x1f\x7f]", lambda mark: f"\\u{ord(mark[0]):04x}", escaped) + '"'
