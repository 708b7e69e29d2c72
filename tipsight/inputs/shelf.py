"""What people type for what they have: shot, tip stock, paints, and what ten of a size weigh."""

import re

from tipsight import tables
from tipsight.inputs import reading, tackle
from tipsight.inputs.items import Item
from tipsight.inputs.reading import Unread, clean
from tipsight.inputs.spelling import choose

_MASS = re.compile(r"[-+]?[\d.,/ ]+\s*(g|gm|gms|grams?|mg|oz|ounces?)")


def load(item: Item, text: str) -> float | tuple[tuple[str, int], ...]:
    """Read how much shot a float takes.

    Parameters
    ----------
    item : Item
        With the limits in grams.
    text : str
        Such as ``6BB`` or ``2.4 g``.

    Returns
    -------
    float or tuple of (str, int)
        A mass [g], or names and counts.

    Raises
    ------
    Unread
        If it cannot be read.

    Examples
    --------
    >>> from tipsight.inputs.items import ITEMS
    >>> load(ITEMS["takes"], "6BB"), load(ITEMS["takes"], "2,4 g")
    ((('BB', 6),), 2.4)
    """
    plain = clean(text)
    if _MASS.fullmatch(plain):
        return item.check(reading.mass_g(plain))
    if re.fullmatch(r"[-+]?[\d.,/ ]+", plain):
        raise Unread("say the unit, grams or the size of shot")
    return tuple((name, count or 1) for name, count in tackle.shot_terms(plain))


def names(item: Item, texts: tuple[str, ...]) -> tuple[str, ...]:
    """Read names of the item's table; ``all`` is every one that is on a normal shelf.

    Parameters
    ----------
    item : Item
        With its table.
    texts : tuple of str
        As typed.

    Returns
    -------
    tuple of str
        Names as the table has them.

    Raises
    ------
    Unread
        If a name is not in the table.

    Examples
    --------
    >>> from tipsight.inputs.items import ITEMS
    >>> names(ITEMS["paints"], ("Black", "white"))
    ('black', 'white')
    """
    if texts == ("all",):
        rows = tables.rows(item.table)
        return tuple(row["name"] for row in rows if row.get("on_shelf", "yes") == "yes")
    return tuple(dict.fromkeys(choose(item.words, text).word for text in texts))


def stocks(item: Item, texts: tuple[str, ...]) -> tuple[tackle.StockSaid, ...]:
    """Read tip stock: kinds with their sizes, ``all`` or ``none``.

    Parameters
    ----------
    item : Item
        With its table.
    texts : tuple of str
        As typed.

    Returns
    -------
    tuple of StockSaid
        One for each size.

    Raises
    ------
    Unread
        If one cannot be read.

    Examples
    --------
    >>> from tipsight.inputs.items import ITEMS
    >>> [stock.diameter_mm for stock in stocks(ITEMS["tips"], ("quill 2-3", "5/4 mm thin tube"))]
    [2.0, 2.5, 3.0, 5.0]
    """
    if texts == ("none",):
        return ()
    if texts == ("all",):
        texts = tuple(word.word for word in item.words)
    return tuple(dict.fromkeys(stock for text in texts for stock in tackle.stock_sizes(text)))


def shot(_: Item, texts: tuple[str, ...]) -> tuple[tuple[str, int | None], ...]:
    """Read sizes of shot with or without how many there are, ``all`` or ``none``.

    Parameters
    ----------
    _ : Item
        The item.
    texts : tuple of str
        As typed.

    Returns
    -------
    tuple of (str, int or None)
        Names, and counts where they were typed.

    Raises
    ------
    Unread
        If a size is not in the table, or is told twice.

    Examples
    --------
    >>> from tipsight.inputs.items import ITEMS
    >>> shot(ITEMS["shot"], ("BB", "20 No 4"))
    (('BB', None), ('No 4', 20))
    """
    if texts == ("all",):
        return tuple((row["name"], None) for row in tables.rows("shot") if row["group"] == "shot")
    if texts == ("none",):
        return ()
    terms = [term for text in texts for term in tackle.shot_terms(text)]
    if len({name for name, _count in terms}) < len(terms):
        raise Unread("each size need be said only once")
    return tuple(terms)


def weighings(item: Item, texts: tuple[str, ...]) -> dict[str, float]:
    """Read what ten of a size weigh.

    Parameters
    ----------
    item : Item
        With the limits in grams for the ten.
    texts : tuple of str
        Such as ``No 4 1.9 g``.

    Returns
    -------
    dict
        Mass of one by its name. [g]

    Raises
    ------
    Unread
        If one cannot be read.

    Examples
    --------
    >>> from tipsight.inputs.items import ITEMS
    >>> weighings(ITEMS["ten_weigh"], ("No 4 1.9 g",))
    {'No 4': 0.19}
    """
    masses = {}
    for text in texts:
        found = re.fullmatch(r"(.+?)[\s:=,]+([\d.,]+\s*[a-z]*)", clean(text))
        if not found:
            raise Unread("")
        masses[tackle.shot_name(found[1])] = item.check(reading.mass_g(found[2])) / 10
    return masses
