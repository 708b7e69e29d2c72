"""From what was said to values: a reader for each kind of item, and what asks a question for all."""

import re
from collections.abc import Callable
from numbers import Real
from typing import Any

from tipsight.errors import Mistake
from tipsight.inputs import clock, legs, quantities, shelf, tackle
from tipsight.inputs.case import Assumed
from tipsight.inputs.items import ITEMS, Item, choose
from tipsight.inputs.quantities import NoUnit, Unread, clean, written
from tipsight.inputs.question import Question, Value, is_not_sure
from tipsight.inputs.spoken import ANGLERS, Spoken
from tipsight.units import YARD_M


def read(item: Item, value: Value) -> Any:
    """Return the value of what was said for ``item``, within its limits.

    Parameters
    ----------
    item : Item
        The item.
    value : str, float, bool or tuple of str
        As said; a number is read as if it were typed.

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
    >>> read(ITEMS["pace"], "12 s"), read(ITEMS["pace"], "slow walk"), read(ITEMS["bore"], 2)
    (0.762, 0.4, 2.0)
    """
    if item.repeats:
        return _READERS[item.kind](item, _texts(item, value))
    if isinstance(value, tuple):
        raise Unread("say one thing only", says_all=True)
    if isinstance(value, bool) and item.kind != "yes-no":
        raise Unread
    reader = _number if item.kind in _NUMBERS else _READERS[item.kind]
    return reader(item, typed(value))


def typed(value: Value) -> str:
    """Return a value as it would be typed."""
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, tuple):
        return "; ".join(map(str, value))
    return written(value) if isinstance(value, Real) else f"{value}"


def _number(item: Item, text: str) -> float:
    numeric = re.match(r"[-+.,]?\d|force|f\d|bft|beaufort|[-+]?(?:nan|inf)\b", clean(text))
    if item.words and not numeric:
        return choose(item.words, text).number
    try:
        return item.check(_NUMBERS[item.kind](text))
    except NoUnit as lacking:
        raise (NoUnit(item.units or item.unit) if item.kind != "mm" else lacking) from None


def _pace(text: str) -> float:
    if seconds := re.fullmatch(
        r"([\d.,/ ]+?)\s*(?:s|sec|secs|seconds)(?: (?:for|to) (?:ten|10) (?:yd|yards))?",
        clean(text),
    ):
        time_s = quantities.number(seconds[1])
        if time_s <= 0:
            raise Unread
        return 10 * YARD_M / time_s
    return quantities.speed_m_s(text)


def _plain(text: str) -> float:
    number, rest = quantities.split_unit(text)
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
    number, rest = quantities.split_unit(plain)
    if not re.fullmatch(r"(times?|x)?\s*((a|per|each|every) (minute|min)|/\s?min(ute)?)?", rest):
        raise Unread
    return number


_NUMBERS: dict[str, Callable[[str], float]] = {
    "length": quantities.length_m,
    "mm": quantities.length_mm,
    "speed": quantities.speed_m_s,
    "pace": _pace,
    "temperature": quantities.temperature_c,
    "angle": clock.angle_deg,
    "number": _plain,
    "whole": _whole,
    "rate": _rate,
    "mass": quantities.mass_g,
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
        return item.check(quantities.number(fraction[2]) / float(fraction[1]))
    if angle := re.fullmatch(r"([\d.,]+)\s*(?:arcmin|')", plain):
        return item.check(quantities.number(angle[1]))
    if log := re.fullmatch(r"(?:logmar\s*)?([-+]?[\d.,]+)\s*(?:logmar)?", plain):
        value = quantities.number(log[1])
        if "logmar" in plain:
            return item.check(10.0 ** min(max(value, -3.0), 3.0))
        if value <= 0:
            raise Unread
        return item.check(1 / value)
    return choose(item.words, text).number


def _texts(item: Item, value: Value) -> tuple[str, ...]:
    texts = value if isinstance(value, tuple) else (value,)
    commas = item.kind in ("names", "shot")
    return tuple(piece for text in texts for piece in tackle.pieces(typed(text), commas=commas))


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
    "hung": shelf.hung,
    "weighings": shelf.weighings,
    "stretches": lambda _, texts: texts,
    "parts": lambda _, texts: texts,
    "legs": lambda _, text: legs.read(text),
}


class Asker:
    """Asks a question for its items, and keeps every mistake and all that had to be taken.

    >>> asker = Asker(Question(depth="7 ft"))
    >>> round(asker.take("depth"), 2), asker.take("bed").word, asker.assumed[0].item
    (2.13, 'gravel', 'bed')
    """

    def __init__(self, question: Question, spoken: Spoken = ANGLERS) -> None:
        self.spoken = spoken
        self._told = question.told()
        self.learnt = question.learnt
        self._asked: set[str] = set()
        self.mistakes: list[Mistake] = []
        self.assumed: list[Assumed] = []

    def knows(self, key: str) -> bool:
        """Return whether the item was told, with something else than "not sure"."""
        return key in self._told and not is_not_sure(self._told[key])

    def said(self, key: str) -> str:
        """Return the item as it was said."""
        return typed(self._told.get(key, ""))

    def wrong(self, key: str, allowed: str, *, said: str | None = None, example: str = "") -> None:
        """Note a mistake."""
        said = self.said(key) if said is None else said
        self.mistakes.append(Mistake(key, said, allowed, example))

    def unread(
        self, key: str, unread: Unread, *, said: str | None = None, example: str = ""
    ) -> None:
        """Note what could not be read, with what the item allows unless that is told already."""
        wrong, allowed = str(unread), self.spoken.allowed(ITEMS[key])
        if unread.says_all:
            allowed = wrong
        elif wrong:
            allowed = f"{wrong}{' ' if wrong.endswith('?') else '; '}{allowed}"
        self.wrong(key, allowed, said=said, example=example or ITEMS[key].example)

    def ask(self, key: str) -> Any:
        """Return the item's value if it was told and can be read, else None."""
        item = ITEMS[key]
        self._asked.add(key)
        if key not in self._told:
            return None
        if is_not_sure(self._told[key]) and item.kind != "stretches":
            if not item.takes_not_sure:
                self.unread(key, Unread("this one has to be known"))
            return None
        try:
            return read(item, self._told[key])
        except Unread as unread:
            self.unread(key, unread)
            return None

    def ask_the_rest(self) -> None:
        """Read what was told but is of no use here, so that its mistakes are told too."""
        for key in self._told:
            if key not in self._asked:
                self.ask(key)

    def take(self, key: str, default: str | None = None, *, quiet: bool = False) -> Any:
        """Return the item's value, or that of what is taken when it was not told.

        That is what was learned, or ``default``, as a person would say it, or the item's own; it is
        not listed where nothing hangs on it (``quiet``).
        """
        value = self.ask(key)
        if value is not None:
            return value
        if lesson := self.learnt.of(key):
            if not quiet and not any(mistake.item == key for mistake in self.mistakes):
                self.assumed.append(Assumed(key, lesson.taken))
            return read(ITEMS[key], lesson.text)
        taken = ITEMS[key].default if default is None else default
        if not quiet and not any(mistake.item == key for mistake in self.mistakes):
            self.assumed.append(Assumed(key, taken))
        return read(ITEMS[key], taken)
