"""The parts of a float that is built: of a pattern's size, or as listed."""

import re
from typing import Any

from tipsight import tables
from tipsight.inputs.case import Part
from tipsight.inputs.items import choose, names_of
from tipsight.inputs.quantities import Unread, clean, length_mm

ROLES = ("body", "shoulder", "stem", "keel")
SHAPES = ("cylinder", "cone", "ellipsoid", "dome")
EXAMPLE = "body, ellipsoid, balsa, 45 mm long, 14 mm thick"
_SIZES = {
    "length_mm": "long",
    "top_mm": "top|at the top|thick|wide|across",
    "foot_mm": "foot|at the foot",
    "bore_mm": "bore",
    "inside_mm": "inside",
}


def sizes_of(pattern: str) -> tuple[str, ...]:
    """Return the sizes in which pattern_parts.csv draws a pattern, smallest first.

    >>> "12 mm" in sizes_of("quill avon")
    True
    """
    sizes = {row["size"] for row in tables.rows("pattern_parts") if row["pattern"] == pattern}
    return tuple(sorted(sizes, key=lambda size: float(size.removesuffix(" mm"))))


def choose_size(pattern: str, text: str) -> str:
    """Return the size of the pattern that ``text`` means, as pattern_parts.csv names it.

    >>> choose_size("quill avon", "12")
    '12 mm'
    """
    sizes = sizes_of(pattern)
    plain = clean(text)
    for size in sizes:
        if plain in (size.casefold(), size.casefold().removesuffix(" mm"), size.replace(" ", "")):
            return size
        try:
            if length_mm(plain) == length_mm(size):
                return size
        except Unread:
            continue
    raise Unread(f"{pattern} is drawn in {', '.join(sizes)}")


def parts_of(pattern: str, size: str) -> tuple[Part, ...]:
    """Return the parts of a pattern at one of its sizes, from the top downwards.

    >>> parts_of("straight balsa", "8 mm")[0].top_mm
    8.0
    """
    return tuple(
        Part(
            role=row["role"],
            shape=row["shape"],
            material=row["material"],
            **{key: row[key] for key in _SIZES},
        )
        for row in tables.rows("pattern_parts")
        if row["pattern"] == pattern and row["size"] == size
    )


def part_said(text: str) -> Part:
    """Read one part of a float; what is long and thick is told in mm unless it says otherwise.

    A cone or dome may add ``4 mm foot``, a tube ``2 mm bore``, a stem ``20 mm inside``.

    >>> part_said("body, ellipsoid, balsa, 45 mm long, 14 mm thick").foot_mm
    14.0
    """
    found: dict[str, Any] = {}
    for piece in (piece.strip() for piece in re.split(r",(?!\d)|:", clean(text))):
        if size := re.fullmatch(
            rf"([\d.,].*?)\s*({'|'.join(_SIZES.values())})",
            piece,
        ):
            key = next(key for key, words in _SIZES.items() if size[2] in words.split("|"))
            found[key] = length_mm(size[1])
        elif piece in ROLES:
            found["role"] = piece
        elif piece in SHAPES:
            found["shape"] = piece
        else:
            found["material"] = _material(piece)
    lacking = [
        key for key in ("role", "shape", "material", "length_mm", "top_mm") if key not in found
    ]
    if lacking:
        words = {
            "role": "what it is (" + ", ".join(ROLES) + ")",
            "shape": "its shape (" + ", ".join(SHAPES) + ")",
            "material": "its material",
            "length_mm": "how long",
            "top_mm": "how thick",
        }
        raise Unread("say " + " and ".join(words[key] for key in lacking))
    pointed = found["shape"] in ("cone", "dome")
    found.setdefault("foot_mm", 0.0 if pointed else found["top_mm"])
    _check(found)
    return Part(**found)


def _check(found: dict[str, Any]) -> None:
    widest = max(found["top_mm"], found["foot_mm"])
    if not 1 <= found["length_mm"] <= 600:
        raise Unread("a part is 1 to 600 mm long")
    if not 0.3 <= widest <= 60 or min(found["top_mm"], found["foot_mm"]) < 0:
        raise Unread("a part is 0.3 to 60 mm thick")
    if found.get("bore_mm", 0.0) >= widest:
        raise Unread("the bore must be narrower than the part")
    if not 0 <= found.get("inside_mm", 0.0) <= 600:
        raise Unread("a part runs 0 to 600 mm inside the one above it")


def _material(text: str) -> str:
    words = names_of("materials")
    try:
        return choose(words, text).word
    except Unread as unread:
        hint = f"{unread} " if str(unread) else ""
        names = ", ".join(word.word for word in words)
        reason = f"{text!r} is no part, shape or material; {hint}the materials are {names}"
        raise Unread(reason) from None
