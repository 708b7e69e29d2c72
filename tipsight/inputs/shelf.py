"""What people type for what they have: shot, tip stock, paints, and what ten of a size weigh."""

import re

from tipsight import tables
from tipsight.inputs import quantities, tackle
from tipsight.inputs.items import Item, choose
from tipsight.inputs.quantities import NoUnit, Unread, clean

_MASS = re.compile(r"[-+]?[\d.,/ ]+\s*(g|gm|gms|grams?|mg|oz|ounces?)")

PLACES = {
    "trim under the float": "trim under the float",
    "trim": "trim under the float",
    "bulk": "bulk",
    "dropper": "dropper",
    "spread": "spread",
}
"""Where shot hangs, as typed and as the plan of shot calls it."""
MOST_HUNG = 60
"""Pieces on one line: nobody pinches on more (judgement)."""
MOST_SIZES = 48
"""Pieces of stock in one list, each tried at every length; ``all`` is fewer (judgement)."""


def load(item: Item, text: str) -> float | tuple[tuple[str, int], ...]:
    """Read how much shot a float takes: a mass [g] within the item's limits, or names and counts.

    >>> from tipsight.inputs.items import ITEMS
    >>> load(ITEMS["takes"], "6BB"), load(ITEMS["takes"], "2,4 g")
    ((('BB', 6),), 2.4)
    """
    plain = clean(text)
    if _MASS.fullmatch(plain):
        return item.check(quantities.mass_g(plain))
    if re.fullmatch(r"[-+]?[\d.,/ ]+", plain):
        raise NoUnit("grams or the size of shot")
    return tuple((name, count or 1) for name, count in tackle.shot_terms(plain))


def names(item: Item, texts: tuple[str, ...]) -> tuple[str, ...]:
    """Read names of the item's table; ``all`` is every one that is on a normal shelf.

    >>> from tipsight.inputs.items import ITEMS
    >>> names(ITEMS["paints"], ("Black", "white"))
    ('black', 'white')
    """
    if texts == ("all",):
        rows = tables.rows(item.table)
        return tuple(row["name"] for row in rows if row.get("on_shelf", True))
    return tuple(dict.fromkeys(choose(item.words, text).word for text in texts))


def stocks(item: Item, texts: tuple[str, ...]) -> tuple[tackle.StockSaid, ...]:
    """Read tip stock, kinds with their sizes, ``all`` of a usual bench or ``none``: a piece a size.

    >>> from tipsight.inputs.items import ITEMS
    >>> [stock.diameter_mm for stock in stocks(ITEMS["tips"], ("quill 2-3", "5/4 mm thin tube"))]
    [2.0, 2.5, 3.0, 5.0]
    """
    if texts == ("none",):
        return ()
    if texts == ("all",):
        texts = names(item, ("all",))
    found = dict.fromkeys(stock for text in texts for stock in tackle.stock_sizes(text))
    if len(found) > MOST_SIZES:
        raise Unread(f"these are {len(found)} sizes, and {MOST_SIZES} are the most")
    return tuple(found)


def shot(_: Item, texts: tuple[str, ...]) -> tuple[tuple[str, int | None], ...]:
    """Read sizes of shot, ``all`` or ``none``: names, and counts where they were typed.

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


def hung(_: Item, texts: tuple[str, ...]) -> tuple[tuple[str, int, str], ...]:
    """Read shot that hangs on the line: name, count, and the place where it was told.

    >>> from tipsight.inputs.items import ITEMS
    >>> hung(ITEMS["hangs"], ("bulk SSG, AB", "droppers 2 No 4"))
    (('SSG', 1, 'bulk'), ('AB', 1, 'bulk'), ('No 4', 2, 'dropper'))
    """
    found: dict[tuple[str, str], int] = {}
    for text in texts:
        where, sizes = _place(clean(text))
        for name, count in tackle.shot_terms(sizes):
            found[name, where] = found.get((name, where), 0) + (count or 1)
    if sum(found.values()) > MOST_HUNG:
        raise Unread(f"that is more than {MOST_HUNG} shot")
    return tuple((name, count, where) for (name, where), count in found.items())


def _place(plain: str) -> tuple[str, str]:
    """Return where some shot hangs, empty if that was not told, and the shot."""
    for said, where in PLACES.items():
        if plain.startswith(said):
            return where, plain.removeprefix(said).removeprefix("s ").strip(" :,")
    return "", plain


def weighings(item: Item, texts: tuple[str, ...]) -> dict[str, float]:
    """Read what ten of a size weigh, and return what one does by its name [g].

    >>> from tipsight.inputs.items import ITEMS
    >>> weighings(ITEMS["ten_weigh"], ("No 4 1.9 g",))
    {'No 4': 0.19}
    """
    masses = {}
    for text in texts:
        found = re.fullmatch(r"(.+?)[\s:=,]+([\d.,]+\s*[a-z]*)", clean(text))
        if not found:
            raise Unread
        masses[tackle.shot_name(found[1])] = item.check(quantities.mass_g(found[2])) / 10
    return masses
