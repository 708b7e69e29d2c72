"""From what was said for an item to its value: one reader for each kind of item."""

import math
import re
from collections.abc import Callable
from typing import Any

from tipsight.inputs import clock, reading, shelf, tackle
from tipsight.inputs.items import NOT_SURE, NOT_TOLD, Item, choose
from tipsight.inputs.reading import NoUnit, Unread, clean
from tipsight.units import YARD_M

Value = str | float | bool | tuple[str, ...]
"""What may be told for an item: as said, or a number in the item's unit."""


def is_told(value: object) -> bool:
    """Return whether ``value`` says anything; None, blanks and ``not told`` do not.

    >>> is_told("40 yd"), is_told(" "), is_told("not told"), is_told(("not told",))
    (True, False, False, False)
    """
    if isinstance(value, tuple):
        return any(map(is_told, value))
    if value is None:
        return False
    return not (isinstance(value, str) and clean(value) in ("", NOT_TOLD))


def is_not_sure(value: object) -> bool:
    """Return whether ``value`` says that the person is not sure.

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
        raise Unread("say one thing only", says_all=True)
    if isinstance(value, bool) and item.kind != "yes-no":
        raise Unread
    if item.kind in _NUMBERS:
        return _number(item, value)
    if item.kind in ("acuity", "load", "compass") and not isinstance(value, str):
        return item.check(float(value))
    return _READERS[item.kind](item, f"{value}")


def _number(item: Item, value: Value) -> float:
    if not isinstance(value, str):
        number = float(value)  # type: ignore[arg-type]
        whole = item.kind != "whole" or number.is_integer()
        if not math.isfinite(number) or not whole:
            raise Unread(
                "a whole number is wanted" if math.isfinite(number) else "a number is wanted"
            )
        return item.check(number)
    numeric = re.match(r"[-+.,]?\d|force|f\d|bft|beaufort", clean(value))
    if item.words and not numeric:
        return choose(item.words, value).number
    try:
        return item.check(_NUMBERS[item.kind](value))
    except NoUnit:
        raise NoUnit(item.units or item.unit) from None


def _pace(text: str) -> float:
    if seconds := re.fullmatch(
        r"([\d.,/ ]+?)\s*(?:s|sec|secs|seconds)(?: (?:for|to) (?:ten|10) (?:yd|yards))?",
        clean(text),
    ):
        time_s = reading.number(seconds[1])
        if time_s <= 0:
            raise Unread
        return 10 * YARD_M / time_s
    return reading.speed_m_s(text)


def _plain(text: str) -> float:
    number, rest = reading.split_unit(text)
    if rest not in ("", "years", "year", "season", "seasons", "times", "coats", "coat"):
        raise Unread
    return number


def _whole(text: str) -> float:
    number = _plain(text)
    if not number.is_integer():
        raise Unread("a whole number is wanted")
    return number


def _rate(text: str) -> float:
    plain = re.sub(r"^(about|once)\s*", lambda m: "1 " if m[1] == "once" else "", clean(text))
    number, rest = reading.split_unit(plain)
    if not re.fullmatch(r"(times?|x)?\s*((a|per|each|every) (minute|min)|/\s?min(ute)?)?", rest):
        raise Unread
    return number


_NUMBERS: dict[str, Callable[[str], float]] = {
    "length": lambda text: reading.length_m(text),
    "mm": reading.length_mm,
    "speed": reading.speed_m_s,
    "pace": _pace,
    "temperature": reading.temperature_c,
    "angle": clock.angle_deg,
    "number": _plain,
    "whole": _whole,
    "rate": _rate,
    "mass": reading.mass_g,
}


def _yes_no(_: Item, text: str) -> bool:
    plain = clean(text)
    if plain in ("yes", "y", "true", "on", "1"):
        return True
    if plain in ("no", "n", "false", "off", "0"):
        return False
    raise Unread


def _acuity(item: Item, text: str) -> float:
    plain = clean(text)
    if fraction := re.fullmatch(r"(6|20|4|5|3)\s*/\s*([\d.,]+)", plain):
        return item.check(reading.number(fraction[2]) / float(fraction[1]))
    if angle := re.fullmatch(r"([\d.,]+)\s*(?:arcmin|')", plain):
        return item.check(reading.number(angle[1]))
    if log := re.fullmatch(r"(?:logmar\s*)?([-+]?[\d.,]+)\s*(?:logmar)?", plain):
        value = reading.number(log[1])
        if "logmar" in plain:
            return item.check(10.0 ** min(max(value, -3.0), 3.0))
        if value <= 0:
            raise Unread
        return item.check(1 / value)
    return choose(item.words, text).number


def _texts(item: Item, value: Value) -> tuple[str, ...]:
    commas = item.kind in ("names", "shot")
    if isinstance(value, str):
        value = (value,)
    if isinstance(value, tuple) and all(isinstance(text, str) for text in value):
        return tuple(piece for text in value for piece in tackle.pieces(text, commas=commas))
    raise Unread


_READERS: dict[str, Callable[..., Any]] = {
    "word": lambda item, text: choose(item.words, text),
    "yes-no": _yes_no,
    "acuity": _acuity,
    "moment": lambda _, text: clock.moment(text),
    "spot": lambda _, text: clock.spot(text),
    "compass": lambda item, text: item.check(clock.compass_deg(text)),
    "text": lambda _, text: text.strip(),
    "stock": lambda _, text: tackle.stock_said(text),
    "paint": lambda item, text: tackle.blocks_said(text, item.words),
    "load": shelf.load,
    "stocks": shelf.stocks,
    "names": shelf.names,
    "shot": shelf.shot,
    "weighings": shelf.weighings,
    "stretches": lambda _, texts: texts,
    "parts": lambda _, texts: texts,
}
