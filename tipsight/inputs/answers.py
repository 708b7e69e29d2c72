"""From what was said for an item to its value: one reader for each kind of item."""

import difflib
import math
import re
from collections.abc import Callable
from datetime import UTC, datetime, timedelta, timezone
from typing import Any
from zoneinfo import ZoneInfo

from tipsight import tables
from tipsight.inputs import reading, tackle
from tipsight.inputs.items import NOT_SURE, NOT_TOLD, Item, Word
from tipsight.inputs.reading import Unread, clean

Value = str | float | bool | tuple[str, ...]
"""What may be told for an item: as said, or a number in the item's unit."""

_POINTS = "n nne ne ene e ese se sse s ssw sw wsw w wnw nw nnw".split()
_COMPASS_WORDS = {"north": "n", "south": "s", "east": "e", "west": "w"}


def is_told(value: object) -> bool:
    """Return whether ``value`` says anything; None, blanks and ``not told`` do not.

    Parameters
    ----------
    value : object
        What was given for an item.

    Returns
    -------
    bool
        Whether it was told.

    Examples
    --------
    >>> is_told("40 yd"), is_told(" "), is_told("not told"), is_told(())
    (True, False, False, False)
    """
    if value is None or value == ():
        return False
    return not (isinstance(value, str) and clean(value) in ("", NOT_TOLD))


def is_not_sure(value: object) -> bool:
    """Return whether ``value`` says that the person is not sure.

    Parameters
    ----------
    value : object
        What was given for an item.

    Returns
    -------
    bool
        Whether it says so.

    Examples
    --------
    >>> is_not_sure("Not sure"), is_not_sure("dark")
    (True, False)
    """
    return isinstance(value, str) and clean(value) in NOT_SURE


def read(item: Item, value: Value) -> Any:
    """Return the value of what was said for ``item``, within its limits.

    Parameters
    ----------
    item : Item
        The item.
    value : str, float, bool or tuple of str
        As said; a number is in the item's unit.

    Returns
    -------
    object
        A number in the item's unit, a ``Word``, a truth, or what the kind of item holds.

    Raises
    ------
    Unread
        If it cannot be read; its text is what to say, or empty for what the item allows.

    Examples
    --------
    >>> from tipsight.inputs.items import ITEMS
    >>> read(ITEMS["pace"], "12 s"), read(ITEMS["pace"], "slow walk")
    (0.762, 0.4)
    """
    if item.repeats:
        return _READERS[item.kind](item, _texts(item, value))
    if isinstance(value, tuple):
        raise Unread("say one thing only")
    if isinstance(value, bool) and item.kind != "yes-no":
        raise Unread("")
    if item.kind in _NUMBERS:
        return _number(item, value)
    text = str(value) if isinstance(value, bool) else f"{value}"
    return _READERS[item.kind](item, text)


def choose(words: tuple[Word, ...], text: str) -> Word:
    """Return the word that ``text`` means, or say which it may have meant.

    Parameters
    ----------
    words : tuple of Word
        Those that may be said.
    text : str
        As typed.

    Returns
    -------
    Word
        The one meant.

    Raises
    ------
    Unread
        If none fits, with the nearest spelling where there is one.

    Examples
    --------
    >>> choose((Word("red-weak"), Word("red-blind")), "Red weak").word
    'red-weak'
    """
    plain = _bare(text)
    names = {_bare(word.word): word for word in words}
    if plain in names:
        return names[plain]
    begun = [word for name, word in names.items() if len(plain) > 2 and name.startswith(plain)]
    if len(begun) == 1:
        return begun[0]
    if near := difflib.get_close_matches(plain, names, n=1, cutoff=0.6):
        raise Unread(f"did you mean {names[near[0]].word!r}?")
    raise Unread("")


def _bare(text: str) -> str:
    return clean(text).replace("-", " ").replace("_", " ")


def _texts(item: Item, value: Value) -> tuple[str, ...]:
    if isinstance(value, str):
        return tuple(tackle.pieces(value, commas=item.kind in ("names", "shot")))
    if isinstance(value, tuple) and all(isinstance(text, str) for text in value):
        return tuple(piece for text in value for piece in tackle.pieces(text, commas=item.kind == "shot"))
    raise Unread("")


def _within(item: Item, value: float) -> float:
    if item.low is not None and item.high is not None and not item.low <= value <= item.high:
        raise Unread("")
    return value


def _number(item: Item, value: Value) -> float:
    if not isinstance(value, str):
        number = float(value)  # type: ignore[arg-type]
        whole = item.kind != "whole" or number.is_integer()
        if not math.isfinite(number) or not whole:
            raise Unread("a whole number is wanted" if math.isfinite(number) else "a number is wanted")
        return _within(item, number)
    numeric = re.match(r"[-+.,]?\d|force|f\d|bft|beaufort", clean(value))
    if item.words and not numeric:
        return choose(item.words, value).number
    try:
        return _within(item, _NUMBERS[item.kind](value))
    except Unread as unread:
        if str(unread) == "say the unit":
            raise Unread(f"say the unit, {item.units}") from None
        raise


def _pace(text: str) -> float:
    if seconds := re.fullmatch(r"([\d.,/ ]+?)\s*(?:s|sec|secs|seconds)(?: (?:for|to) (?:ten|10) (?:yd|yards))?",
                               clean(text)):
        time_s = reading.number(seconds[1])
        if time_s <= 0:
            raise Unread("")
        return 10 * reading.YARD_M / time_s
    return reading.speed_m_s(text)


def _plain(text: str) -> float:
    number, rest = reading.split_unit(text)
    if rest not in ("", "years", "year", "season", "seasons", "times", "coats", "coat"):
        raise Unread("")
    return number


def _whole(text: str) -> float:
    number = _plain(text)
    if not number.is_integer():
        raise Unread("a whole number is wanted")
    return number


def _angle(text: str) -> float:
    number, rest = reading.split_unit(text)
    if rest not in ("", "°", "deg", "degree", "degrees"):
        raise Unread("")
    return number


def _rate(text: str) -> float:
    plain = re.sub(r"^(about|once)\s*", lambda m: "1 " if m[1] == "once" else "", clean(text))
    number, rest = reading.split_unit(plain)
    if not re.fullmatch(r"(times?|x)?\s*((a|per|each|every) (minute|min)|/\s?min(ute)?)?", rest):
        raise Unread("")
    return number


_NUMBERS: dict[str, Callable[[str], float]] = {
    "length": lambda text: reading.length_m(text),
    "mm": reading.length_mm,
    "speed": reading.speed_m_s,
    "pace": _pace,
    "temperature": reading.temperature_c,
    "angle": _angle,
    "number": _plain,
    "whole": _whole,
    "rate": _rate,
    "mass": reading.mass_g,
}


def _word(item: Item, text: str) -> Word:
    return choose(item.words, text)


def _yes_no(_: Item, text: str) -> bool:
    plain = clean(text)
    if plain in ("yes", "y", "true", "on", "1"):
        return True
    if plain in ("no", "n", "false", "off", "0"):
        return False
    raise Unread("")


def _acuity(item: Item, text: str) -> float:
    plain = clean(text)
    if fraction := re.fullmatch(r"(6|20|4|5|3)\s*/\s*([\d.,]+)", plain):
        return _within(item, reading.number(fraction[2]) / float(fraction[1]))
    if log := re.fullmatch(r"(?:logmar\s*)?([-+]?[\d.,]+)\s*(?:logmar)?", plain):
        value = reading.number(log[1])
        if "logmar" in plain:
            return _within(item, 10.0 ** min(max(value, -3.0), 3.0))
        if value <= 0:
            raise Unread("")
        return _within(item, 1 / value)
    return choose(item.words, text).number


def _moment(_: Item, text: str) -> datetime:
    found = re.fullmatch(
        r"(\d{4}-\d{2}-\d{2})[t ]+(\d{1,2})[:.](\d{2})(?::\d{2}(?:\.\d+)?)?\s*(.*)", clean(text)
    )
    if not found:
        raise Unread("")
    try:
        naive = datetime.fromisoformat(f"{found[1]} {int(found[2]):02d}:{found[3]}")
    except ValueError:
        raise Unread("there is no such day or time") from None
    zone = found[4]
    if not zone:
        raise Unread("say the zone: UTC, +01:00, Europe/London, or local for this computer's clock")
    if zone == "local":
        return naive.astimezone()
    if zone in ("utc", "z", "gmt"):
        return naive.replace(tzinfo=UTC)
    if zone == "bst":
        return naive.replace(tzinfo=timezone(timedelta(hours=1)))
    if offset := re.fullmatch(r"(?:utc|gmt)?\s*([-+])(\d{1,2}):?(\d{2})?", zone):
        shift = timedelta(hours=int(offset[2]), minutes=int(offset[3] or 0))
        if shift <= timedelta(hours=14):
            return naive.replace(tzinfo=timezone(-shift if offset[1] == "-" else shift))
    try:
        return naive.replace(tzinfo=ZoneInfo(text.split()[-1]))
    except (KeyError, ValueError, OSError):
        raise Unread("that zone is not known; say UTC, an offset such as +01:00, or local") from None


def _spot(_: Item, text: str) -> tuple[float, float]:
    found = re.fullmatch(
        r"([-+]?\d+(?:\.\d+)?)\s*°?\s*([ns]?)[\s,;]+([-+]?\d+(?:\.\d+)?)\s*°?\s*([ew]?)", clean(text)
    )
    if not found:
        raise Unread("")
    north = float(found[1]) * (-1 if found[2] == "s" else 1)
    east = float(found[3]) * (-1 if found[4] == "w" else 1)
    if abs(north) > 90 or abs(east) > 180:
        raise Unread("latitude goes to 90 degrees and longitude to 180")
    return north, east


def _compass(item: Item, text: str) -> float:
    plain = "".join(_COMPASS_WORDS.get(part, part) for part in _bare(text).split())
    if plain in _POINTS:
        return 22.5 * _POINTS.index(plain)
    return _within(item, _angle(text))


def _load(item: Item, text: str) -> float | tuple[tuple[str, int], ...]:
    plain = clean(text)
    if "olivette" not in plain and re.fullmatch(r"[\d.,/ ]+\s*(g|gm|gms|grams?|mg|oz|ounces?)", plain):
        return _within(item, reading.mass_g(plain))
    if re.fullmatch(r"[-+]?[\d.,/ ]+", plain):
        raise Unread("say the unit, grams or the size of shot")
    return tuple((name, count or 1) for name, count in tackle.shot_terms(plain))


def _names(item: Item, texts: tuple[str, ...]) -> tuple[str, ...]:
    if texts == ("all",):
        return tuple(
            row["name"] for row in tables.rows(item.table) if row.get("on_shelf", "yes") == "yes"
        )
    return tuple(choose(item.words, text).word for text in texts)


def _stocks(item: Item, texts: tuple[str, ...]) -> tuple[tackle.StockSaid, ...]:
    if texts == ("none",):
        return ()
    if texts == ("all",):
        texts = tuple(word.word for word in item.words)
    return tuple(stock for text in texts for stock in tackle.stock_sizes(text))


def _shot(_: Item, texts: tuple[str, ...]) -> tuple[tuple[str, int | None], ...]:
    if texts == ("all",):
        rows = tables.rows("shot")
        return tuple((row["name"], None) for row in rows if row.get("group", "shot") == "shot")
    if texts == ("none",):
        return ()
    return tuple(term for text in texts for term in tackle.shot_terms(text))


def _weighings(item: Item, texts: tuple[str, ...]) -> dict[str, float]:
    masses = {}
    for text in texts:
        found = re.fullmatch(r"(.+?)[\s:=,]+([\d.,]+\s*[a-z]+)", text)
        if not found:
            raise Unread("")
        masses[tackle.shot_name(found[1])] = _within(item, reading.mass_g(found[2])) / 10
    return masses


def _paint(item: Item, text: str) -> tuple[tackle.BlockSaid, ...]:
    return tackle.blocks_said(text, {word.word.casefold(): word.word for word in item.words})


_READERS: dict[str, Callable[..., Any]] = {
    "word": _word,
    "yes-no": _yes_no,
    "acuity": _acuity,
    "moment": _moment,
    "spot": _spot,
    "compass": _compass,
    "load": _load,
    "text": lambda _, text: text.strip(),
    "stock": lambda _, text: tackle.stock_said(text),
    "paint": _paint,
    "stocks": _stocks,
    "names": _names,
    "shot": _shot,
    "weighings": _weighings,
    "stretches": lambda _, texts: texts,
    "parts": lambda _, texts: texts,
}
