"""What people type for tackle: shot and tip stock."""

import re
from dataclasses import dataclass

from tipsight import tables
from tipsight.inputs.reading import Unread, clean, length_mm, mass_g, number, range_mm
from tipsight.inputs.spelling import nearest

_TERM = re.compile(r"(?:(\d+)\s*(?:x|off|of)?\s*)?(.+)")


@dataclass(frozen=True)
class StockSaid:
    """A tip's stock as said: its kind, its diameter, and the bore if it was told."""

    kind: str
    diameter_mm: float
    bore_mm: float | None = None


def pieces(value: str, commas: bool = True) -> list[str]:
    """Return the pieces of a list typed in one line, parted by ``;``, ``+`` or ``and``.

    Parameters
    ----------
    value : str
        As typed.
    commas : bool
        Whether commas part it too; a comma between figures never does.

    Returns
    -------
    list of str
        The pieces, cleaned, none empty.

    Examples
    --------
    >>> pieces("3AAA+2BB, 1 No 8")
    ['3aaa', '2bb', '1 no 8']
    """
    pattern = r";|\+|&|\band\b|,(?!\d)|(?<!\d)," if commas else r";"
    return [piece.strip() for piece in re.split(pattern, clean(value)) if piece.strip()]


def shot_name(text: str) -> str:
    """Return the name of shot.csv for a size as typed.

    Parameters
    ----------
    text : str
        Such as ``bb``, ``No.4``, ``#4``, ``4 g olivette``.

    Returns
    -------
    str
        The row's name.

    Raises
    ------
    Unread
        If there is no such size.

    Examples
    --------
    >>> shot_name("no.4"), shot_name("swan"), shot_name("olivette 4g")
    ('No 4', 'SSG', '4 g olivette')
    """
    plain = clean(text).rstrip(".")
    names = {row["name"].casefold(): row["name"] for row in tables.rows("shot")}
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
    """Read sizes of shot, each with or without a number of them.

    Parameters
    ----------
    text : str
        Such as ``3AAA+2BB+1 No 8``.

    Returns
    -------
    tuple of (str, int or None)
        Name and count; None where no count was typed.

    Raises
    ------
    Unread
        If a size is not in the table.

    Examples
    --------
    >>> shot_terms("3AAA+2BB+1 No 8")
    (('AAA', 3), ('BB', 2), ('No 8', 1))
    >>> shot_terms("6 No.4"), shot_terms("BB")
    ((('No 4', 6),), (('BB', None),))
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
        raise Unread("")
    return tuple(terms)


def stock_said(text: str) -> StockSaid:
    """Read a piece of tip stock.

    Parameters
    ----------
    text : str
        Such as ``3 mm quill``, ``5/4 mm thin tube`` (outside and bore).

    Returns
    -------
    StockSaid
        Kind, diameter and bore.

    Raises
    ------
    Unread
        If kind or diameter cannot be read.

    Examples
    --------
    >>> stock_said("3 mm quill")
    StockSaid(kind='quill', diameter_mm=3.0, bore_mm=None)
    >>> stock_said("thin tube 5/4")
    StockSaid(kind='thin tube', diameter_mm=5.0, bore_mm=4.0)
    """
    kind, rest = _kind(text)
    bore = re.search(r"(?:,\s*)?([\d.,]+)\s*(?:mm)?\s*bore", rest)
    rest = rest.replace(bore[0], "").strip(" ,") if bore else rest
    if both := re.fullmatch(r"([\d.,]+)\s*(?:mm)?\s*/\s*([\d.,]+)\s*(?:mm)?", rest):
        return StockSaid(kind, _thick(both[1]), number(both[2]))
    return StockSaid(kind, _thick(rest), number(bore[1]) if bore else None)


def _thick(text: str) -> float:
    diameter = length_mm(text)
    if not 0.5 <= diameter <= 14:
        raise Unread("a tip is 0.5 to 14 mm thick")
    return diameter


def stock_sizes(text: str) -> tuple[StockSaid, ...]:
    """Read a kind of tip stock with a range or several of its sizes.

    Parameters
    ----------
    text : str
        Such as ``solid 1.5-8``, ``cane 3, 4 and 5``, ``5/4 mm thin tube``, or a kind alone for
        all the sizes of stock.csv.

    Returns
    -------
    tuple of StockSaid
        Half millimetres to 5 and whole ones above, for a range.

    Raises
    ------
    Unread
        If it cannot be read.

    Examples
    --------
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
        row = next(row for row in tables.rows("stock") if row["name"] == kind)
        return _shelf(kind, float(row["from_mm"]), float(row["to_mm"]))
    if limits := range_mm(rest):
        low, high = limits
        if not 0.5 <= low <= high <= 14:
            raise Unread("the sizes go from 0.5 to 14 mm, the smaller first")
        return _shelf(kind, low, high)
    sizes = pieces(rest)
    if len(sizes) > 1:
        return tuple(StockSaid(kind, _thick(size)) for size in sizes)
    return (stock_said(text),)


def _shelf(kind: str, low: float, high: float) -> tuple[StockSaid, ...]:
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
    raise Unread("")


def _names_kind(text: str) -> bool:
    try:
        _kind(text)
    except Unread:
        return False
    return True
