"""What people type for tackle: sizes of shot, tip stock, and the paint of a tip."""

import re
from dataclasses import dataclass

from tipsight import tables
from tipsight.errors import nearest
from tipsight.inputs.items import Word, choose
from tipsight.inputs.quantities import Unread, clean, length_mm, mass_g, number, range_mm

THINNEST_MM, THICKEST_MM = 0.5, 14.0
MOST_BLOCKS = 8
"""Blocks on one tip: nobody sees more apart, and each costs the sums (judgement)."""
_TERM = re.compile(r"(?:(\d+)\s*(?:x|off|of)?\s*)?(.+)")


@dataclass(frozen=True)
class StockSaid:
    """A tip's stock as said: its kind, its diameter, and the bore if it was told."""

    kind: str
    diameter_mm: float
    bore_mm: float | None = None


@dataclass(frozen=True)
class BlockSaid:
    """A block of paint as said, from the very top; None where it runs on to the foot."""

    paint: str
    from_top_mm: float
    to_top_mm: float | None


def pieces(value: str, commas: bool = True) -> list[str]:
    """Return the pieces of a list typed in one line, cleaned: parted by ``;``, ``+`` or ``and``.

    Commas part it too where ``commas`` says so, but never between figures.

    >>> pieces("3AAA+2BB, 1 No 8")
    ['3aaa', '2bb', '1 no 8']
    """
    pattern = r";|\+|&|\band\b|,(?!\d)|(?<!\d)," if commas else r";"
    return [piece.strip() for piece in re.split(pattern, clean(value)) if piece.strip()]


def shot_name(text: str) -> str:
    """Return the name of shot.csv for a size as typed.

    >>> shot_name("no.4"), shot_name("swan"), shot_name("olivette 4g")
    ('No 4', 'SSG', '4 g olivette')
    """
    plain = clean(text).rstrip(".")
    names: dict[str, str] = {row["name"].casefold(): row["name"] for row in tables.rows("shot")}
    if found := re.fullmatch(r"(?:no|number|num|n|#|size)?[.\s]*(\d+)'?s?", plain):
        plain = f"no {found[1]}"
    elif "olivette" in plain:
        plain = f"{mass_g(re.sub(r'olivettes?', '', plain).strip()):g} g olivette"
    else:
        plain = {"swan": "ssg", "swans": "ssg", "ssgs": "ssg", "swan shot": "ssg"}.get(
            plain, plain
        )
        plain = plain if plain in names else plain.removesuffix("s")
    if plain not in names:
        near = "" if re.search(r"\d", plain) else nearest(plain, names)
        raise Unread(f"there is no shot {text.strip()!r} in the table{near}")
    return names[plain]


def shot_terms(text: str) -> tuple[tuple[str, int | None], ...]:
    """Read sizes of shot: the name of each, and how many of it, None where that was not typed.

    >>> shot_terms("3AAA+2BB+1 No 8"), shot_terms("BB")
    ((('AAA', 3), ('BB', 2), ('No 8', 1)), (('BB', None),))
    """
    terms: list[tuple[str, int | None]] = []
    for piece in pieces(text):
        count, size = _TERM.fullmatch(piece).groups()  # type: ignore[union-attr]
        if re.fullmatch(r"[\d.,/ ]+g\s+olivettes?", piece):
            count, size = None, piece
        if count and re.match(r"[.,\d]|g\b", size):
            times = re.fullmatch(r"\d+\s*x\s*(.+)", piece)
            count, size = (count, times[1]) if times else (None, piece)
        if count == "0":
            raise Unread("none of a size need not be said")
        terms.append((shot_name(size), int(count) if count else None))
    if not terms:
        raise Unread
    return tuple(terms)


def stock_said(text: str) -> StockSaid:
    """Read a piece of tip stock: kind, outside, and perhaps bore.

    >>> stock_said("3 mm quill"), stock_said("thin tube 5/4").bore_mm
    (StockSaid(kind='quill', diameter_mm=3.0, bore_mm=None), 4.0)
    """
    kind, rest = _kind(text)
    bore = re.search(r"(?:,\s*)?([\d.,]+)\s*(?:mm)?\s*bore", rest)
    rest = rest.replace(bore[0], "").strip(" ,") if bore else rest
    if both := re.fullmatch(r"([\d.,]+)\s*(?:mm)?\s*/\s*([\d.,]+)\s*(?:mm)?", rest):
        return StockSaid(kind, _thick(both[1]), number(both[2]))
    return StockSaid(kind, _thick(rest), number(bore[1]) if bore else None)


def _thick(text: str) -> float:
    diameter = length_mm(text)
    if not THINNEST_MM <= diameter <= THICKEST_MM:
        raise Unread("a tip is 0.5 to 14 mm thick")
    return diameter


def stock_sizes(text: str) -> tuple[StockSaid, ...]:
    """Read a kind of tip stock with a range or several of its sizes, or alone for all of stock.csv.

    >>> [piece.diameter_mm for piece in stock_sizes("cane 4-6")]
    [4.0, 4.5, 5.0, 6.0]
    >>> [(piece.kind, piece.diameter_mm) for piece in stock_sizes("solid 2, cane 3")]
    [('solid', 2.0), ('cane', 3.0)]
    """
    parts = pieces(text)
    if len(parts) > 1 and all(map(_names_kind, parts)):
        return tuple(size for part in parts for size in stock_sizes(part))
    kind, rest = _kind(text)
    if not rest:
        row = tables.row("stock", kind, "stock")
        return _shelf(kind, row["from_mm"], row["to_mm"])
    if limits := range_mm(rest):
        low, high = limits
        if not THINNEST_MM <= low <= high <= THICKEST_MM:
            raise Unread("the sizes go from 0.5 to 14 mm, the smaller first")
        return _shelf(kind, low, high)
    sizes = pieces(rest)
    if len(sizes) > 1:
        return tuple(StockSaid(kind, _thick(size)) for size in sizes)
    return (stock_said(text),)


def _shelf(kind: str, low: float, high: float) -> tuple[StockSaid, ...]:
    """Return the sizes of a range as they lie on a shelf: halves to 5 mm, whole ones above."""
    halves = [step / 2 for step in range(1, 29) if step <= 10 or step % 2 == 0]
    sizes = sorted({low, *(size for size in halves if low <= size <= high), high})
    return tuple(StockSaid(kind, size) for size in sizes)


def _kind(text: str) -> tuple[str, str]:
    plain = clean(text)
    kinds = sorted((row["name"] for row in tables.rows("stock")), key=len, reverse=True)
    for kind in kinds:
        if re.search(rf"\b{kind}s?\b", plain):
            rest = re.sub(rf"\b{kind}s?\b", " ", plain, count=1)
            return kind, " ".join(rest.replace("plastic", " ").split()).strip(" ,:")
    if re.search(r"\btubes?\b|\bhollow\b", plain):
        rest = re.sub(r"\btubes?\b|\bhollow\b|\btip\b", " ", plain)
        return "thin tube", " ".join(rest.split()).strip(" ,:")
    raise Unread


def _names_kind(text: str) -> bool:
    try:
        _kind(text)
    except Unread:
        return False
    return True


def blocks_said(text: str, paints: tuple[Word, ...]) -> tuple[BlockSaid, ...]:
    """Read the paint of a tip: one for all of it, or blocks that touch, from the very top downwards.

    >>> blocks_said("black 15 mm, white", (Word("black"), Word("white")))[1]
    BlockSaid(paint='white', from_top_mm=15.0, to_top_mm=None)
    """
    blocks: list[BlockSaid] = []
    top = 0.0
    parts = re.split(r"[;+]|,(?!\d)|\bover\b|\bthen\b", clean(text))
    if len(parts) > MOST_BLOCKS:
        raise Unread(f"these are {len(parts)} blocks, and {MOST_BLOCKS} are the most")
    for index, part in enumerate(parts):
        found = re.fullmatch(r"([^\d]+?)\s*((?:\d|[.,]\d).*)?", part.strip())
        if not found:
            raise Unread
        name = found[1].strip(" ,:")
        paint = choose(paints, name).word
        start, end = top, None
        if found[2] and (limits := range_mm(found[2])):
            start, end = limits
        elif found[2]:
            end = top + length_mm(found[2])
        elif index < len(parts) - 1:
            raise Unread(
                "say how tall each block is but the last, in mm from the top", says_all=True
            )
        if start != top:
            raise Unread(f"blocks must touch: the one above ends at {top:g} mm")
        if end is not None and end <= start:
            raise Unread("a block must have some height")
        blocks.append(BlockSaid(paint, start, end))
        top = end if end is not None else top
    return tuple(blocks)
