"""A float told in one line: its pattern, its load, its tip, its paint, how many, where they lie."""

import re
from dataclasses import dataclass, field
from typing import Any

from tipsight.errors import Mistake, Mistakes
from tipsight.inputs import shelf
from tipsight.inputs.entry import OF_FLOAT
from tipsight.inputs.items import ITEMS, choose
from tipsight.inputs.quantities import Unread, clean, length_mm, number, range_mm

EXAMPLE = "quill avon, 6BB, 3 mm quill 20 mm fluorescent orange, twelve of them"
_PARTED = re.compile(r";|,(?!\d)|(?<!\d),")
_MM = r"\d+(?:[.,/]\d+)*(?:\s*(?:mm|in|\"))?"
_KEYS = {key.replace("_", " "): key for key in OF_FLOAT} | {
    **{"shows": "showing", "lies": "lies", "lies in": "lies", "in": "lies", "made": "made"},
    **{"made in": "made", "fished": "fished", "last fished": "fished", "note": "note"},
}
_REST = ("note", "parts")
"""What may have commas in it, and so takes the rest of the line."""
_BEHIND = {"showing": "showing", "wet": "wet", "glued": "glued", "glued in": "glued", "bore": "bore",
           "body": "size", "size": "size", "size body": "size"}  # fmt: skip
"""What stands behind a length, and tells of which item it is."""
_YES = {"pulls out": "pulls_out", "sleeve on": "sleeve_on", "undercoat": "undercoat"}
_FIGURES = {"one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8,
            "nine": 9, "ten": 10, "eleven": 11, "twelve": 12, "fifteen": 15, "twenty": 20}  # fmt: skip
_COUNTS = _FIGURES | {"a pair": 2, "half a dozen": 6, "a dozen": 12, "two dozen": 24}


@dataclass
class InALine:
    """What one line told: items of the question, and what the box asks beside them."""

    told: dict[str, str] = field(default_factory=dict)
    also: dict[str, Any] = field(default_factory=dict)
    """alike, lies, made, fished, note; those that were told."""


def read(text: str) -> InALine:
    """Return what a line tells of a float, or Mistakes with each piece that tells nothing.

    Pieces stand between commas in any order; each is known by what it is, or by its item's name
    before it. A note takes the rest of the line.

    >>> found = read("quill avon, 6BB, 3 mm quill 20 mm fluorescent orange, twelve of them, in tray 3")
    >>> found.told["pattern"], found.told["takes"], found.told["paint"], found.also
    ('quill avon', '6BB', 'fluorescent orange', {'alike': 12, 'lies': 'tray 3'})
    >>> found.told["diameter"], found.told["stock"], found.told["showing"]
    ('3 mm', 'quill', '20 mm')
    """
    line, mistakes = _Line(InALine()), []
    for piece, rest in _pieces(text):
        try:
            line.take(piece, rest)
        except Unread as unread:
            why = str(unread) or "say its pattern, load, tip, paint or how many, or name the item"
            mistakes.append(Mistake("line", piece, why, EXAMPLE))
        if line.ended:
            break
    if mistakes:
        raise Mistakes(mistakes)
    return line.found


def _pieces(text: str) -> list[tuple[str, str]]:
    """Return the pieces of a line, each with all of the line from it on."""
    starts = [0, *(one.end() for one in _PARTED.finditer(text))]
    ends = [*(one.start() for one in _PARTED.finditer(text)), len(text)]
    found = [(text[a:b].strip(), text[a:].strip()) for a, b in zip(starts, ends, strict=True)]
    return [one for one in found if one[0]]


class _Line:
    """Takes the pieces of a line one after the other."""

    def __init__(self, found: InALine) -> None:
        self.found, self.ended, self.going_on = found, False, ""

    def take(self, piece: str, rest: str) -> None:
        """Put down what a piece tells."""
        plain, key = clean(piece), self.going_on
        if (key == "paint" and _is_paint(plain)) or (key == "takes" and _is_load(plain)):
            self.found.told[key] += f", {plain if key == 'paint' else piece}"
            return
        self.going_on = ""
        if not (self._keyed(piece, rest) or self._measured(plain) or self._word(plain)):
            _ = self._pattern(plain) or self._load(piece) or self._tip(plain)

    def _tell(self, key: str, text: Any) -> bool:
        known = self.found.told if key in ITEMS else self.found.also
        if key in known:
            raise Unread(f"{key.replace('_', ' ')} is told twice")
        known[key] = text
        self.going_on = key
        return True

    def _keyed(self, piece: str, rest: str) -> bool:
        named = re.match(r"([^\W\d]+(?:[ _-][^\W\d]+){0,2})\s*[: ]\s*", piece)
        words = re.split(r"[\s_-]+", clean(named[1])) if named else []
        for count in range(len(words), 0, -1):
            key = _KEYS.get(" ".join(words[:count]))
            value = rest if key in _REST else piece
            parts = re.split(r"\s*[:\s_-]\s*", value.strip(), maxsplit=count)
            if key and len(parts) > count and parts[count]:
                self.ended = key in _REST
                return self._tell(key, parts[count].strip())
        return False

    def _measured(self, plain: str) -> bool:
        behind = re.fullmatch(rf"({_MM}(?: x {_MM})?)\s*([a-z ]+)", plain)
        if behind and (key := _BEHIND.get(behind[2].strip())):
            return self._tell(key, behind[1])
        if used := re.fullmatch(r"(.+) seasons?(?: old)?", plain):
            return self._tell("seasons", f"{_count(used[1])}")
        alike = re.fullmatch(r"(.+?) (?:of (?:them|these|those)|off|alike|pieces|floats)", plain)
        times = re.fullmatch(r"(?:x\s*(\d+)|(\d+)\s*x)", plain)
        if alike or times:
            said = alike[1] if alike else (times[1] or times[2] if times else "")
            return self._tell("alike", _count(said))
        return False

    def _word(self, plain: str) -> bool:
        bare = plain.removeprefix("no ")
        if bare in _YES:
            return self._tell(_YES[bare], "yes" if bare == plain else "no")
        return plain in ("gloss", "matt") and self._tell("finish", plain)

    def _pattern(self, plain: str) -> bool:
        if "pattern" in self.found.told or re.search(r"\d\s*(?:mm|g)\b", plain):
            return False
        try:
            words = ITEMS["pattern"].words
            return self._tell("pattern", choose(words, plain.removesuffix(" float")).word)
        except Unread as unread:
            if str(unread) and not re.search(r"\d", plain) and not _is_paint(plain):
                raise
            return False

    def _load(self, piece: str) -> bool:
        return _is_load(piece) and self._tell("takes", piece)

    def _tip(self, plain: str) -> bool:
        """Read ``3 mm quill 20 mm fluorescent orange``, any of it but not nothing."""
        first = re.match(rf"({_MM})\s*", plain)
        stock, left = _stock(plain[first.end() :] if first else plain)
        if first and not stock:
            raise Unread
        if stock and not first and (size := re.match(rf"({_MM})\s*", left)):
            first, left = size, left[size.end() :]
        if stock:
            self._tell("stock", stock)
        if first:
            thick, slash, bore = first[1].partition("/")
            self._tell("diameter", f"{thick} mm" if slash else _in_mm(first[1]))
            if slash:
                self._tell("bore", _in_mm(bore))
        shows = re.match(rf"(?:showing |shows |with )?({_MM})(?!\s*-)\s*(?:showing|out)?\s*", left)
        if shows:
            self._tell("showing", _in_mm(shows[1]))
            left = left[shows.end() :]
        if left and not _is_paint(left):
            raise Unread
        return self._tell("paint", left) if left else True


def _in_mm(text: str) -> str:
    return f"{text} mm" if re.fullmatch(r"[\d.,]+", text) else text


def _count(text: str) -> int:
    if text in _COUNTS:
        return _COUNTS[text]
    found = number(text)
    if not found.is_integer():
        raise Unread("a whole number is wanted")
    return int(found)


def _stock(text: str) -> tuple[str, str]:
    """Return the kind of stock that a text begins with, and what stands behind it."""
    words = text.split()
    for count in range(min(3, len(words)), 0, -1):
        begun = " ".join(words[:count])
        if _is_paint(begun):
            continue
        try:
            return choose(ITEMS["stock"].words, begun).word, " ".join(words[count:])
        except Unread:
            continue
    return "", text


def _is_load(text: str) -> bool:
    try:
        shelf.load(ITEMS["takes"], text)
    except Unread:
        return False
    return True


def _is_paint(text: str) -> bool:
    """Return whether a text is a paint, perhaps with the block that it covers."""
    found = re.fullmatch(r"([^\d]+?)\s*((?:\d|[.,]\d).*)?", text)
    if not found:
        return False
    try:
        choose(ITEMS["paint"].words, found[1].strip(" ,:"))
        if found[2] and range_mm(found[2]) is None:
            length_mm(found[2])
    except Unread:
        return False
    return True
