"""The items of the question: words, limits and defaults, for page, command, file and errors."""

import difflib
import re
from dataclasses import dataclass

from tipsight import tables
from tipsight.inputs.quantities import Unread, clean

SECTIONS = {
    "place": "Where you stand",
    "water": "The water",
    "light": "The light",
    "behind": "The water behind the tip",
    "eyes": "Your eyes",
    "wanted": "What you want of the tip",
    "float": "The float",
    "tip": "The tip in hand",
    "have": "What you have",
}
"""The sections of the question in the order in which they are asked, with their titles."""

NOT_SURE = ("not sure", "don't know", "do not know", "unsure")
NOT_TOLD = "not told"


@dataclass(frozen=True)
class Word:
    """A word that may be said for an item, the number it stands for, and what it means."""

    word: str
    value: str = ""
    unit: str = ""
    says: str = ""

    @property
    def number(self) -> float:
        """The number that the word stands for, in its unit."""
        return float(self.value)


@tables.derived
def words_of(item: str) -> tuple[Word, ...]:
    """Return the words of words.csv for one item.

    Parameters
    ----------
    item : str
        The item's key.

    Returns
    -------
    tuple of Word
        In the order of the table.

    Examples
    --------
    >>> [word.word for word in words_of("eye")]
    ['sat', 'stood', 'bank top']
    """
    return tuple(
        Word(row["word"], row["value"], row["unit"], row["says"])
        for row in tables.rows("words")
        if row["item"] == item
    )


@tables.derived
def names_of(table: str) -> tuple[Word, ...]:
    """Return the names of another table as words, with what that table says of them.

    Parameters
    ----------
    table : str
        The table's name without ``.csv``.

    Returns
    -------
    tuple of Word
        One a row.

    Examples
    --------
    >>> [word.word for word in names_of("tints")][0]
    'none'
    """
    rows = tables.rows(table)
    return tuple(Word(row["name"], says=row.get("says", "")) for row in rows)


@dataclass(frozen=True)
class Item:
    """One item of the question."""

    key: str
    section: str
    kind: str
    """How its value is read: length, mm, speed, pace, temperature, angle, number, whole, rate,
    mass, word, yes-no, or one of the kinds that only one or two items have."""
    unit: str
    """The unit of its limits and of its value."""
    units: str
    """The units a person may choose from, in words."""
    low: float | None
    high: float | None
    table: str
    default: str
    """As said; empty where what is taken hangs on other items."""
    takes_not_sure: bool
    folded: bool
    """Most people leave it alone."""
    example: str
    question: str
    hint: str

    @property
    def words(self) -> tuple[Word, ...]:
        """The words that may be said for it."""
        if self.kind == "yes-no":
            return (Word("yes"), Word("no"))
        if self.table in ("", "sizes"):
            return ()
        return words_of(self.key) if self.table == "words" else names_of(self.table)

    @property
    def option(self) -> str:
        """Its option on the command line."""
        return "--" + self.key.replace("_", "-")

    @property
    def repeats(self) -> bool:
        """Whether it is a list, so that its option may be given several times."""
        return self.kind in ("stretches", "parts", "stocks", "names", "shot", "hung", "weighings")

    @property
    def limits(self) -> str:
        """Its limits in words, empty where it has none."""
        if self.low is None or self.high is None:
            return ""
        unit = f" {self.unit}" if self.unit else ""
        return f"{self.low:g} to {self.high:g}{unit}"

    def check(self, value: float) -> float:
        """Return ``value`` if it is within the item's limits, which ``allows`` tells."""
        if self.low is None or self.high is None or self.low <= value <= self.high:
            return value
        raise Unread

    def allows(self, limits: str) -> str:
        """Return what may be said, in words, with its limits as they are told to the reader."""
        names = [word.word for word in self.words if not word.word.endswith(" olivette")]
        words = _listed(names)
        choices = f", in {self.units}" if self.units else ""
        numbers = {
            "acuity": f"{self.units}, from 6/2.4 to 6/60",
            "moment": "a date, a time and its zone",
            "spot": "latitude and longitude in degrees",
            "compass": f"a compass point or {limits}",
            "load": f"shot by name or a weight, {limits}",
            "paint": "paints, with the block of each from the top in mm",
            "stocks": "kinds of stock with their sizes in mm, all, or none",
            "stock": "a diameter and a kind of stock",
            "names": "names, or all",
            "shot": "sizes, all, or none",
            "hung": "sizes, with how many of each",
            "weighings": f"a size and the weight of ten, {limits}",
            "parts": "what it is, its shape, its material and its sizes",
            "stretches": "a bank: its height and how far it stands beyond the float",
            "text": "a size of the pattern",
            "legs": "stretches from the near end to the far, such as 0-15 dark, 15-30 bright, in yards",
        }.get(self.kind, f"{limits}{choices}" if limits else "")
        if self.kind in ("stocks", "stock", "names", "shot", "hung", "paint"):
            return f"say {numbers}: {words}"
        if self.kind == "weighings":
            return f"say {numbers}"
        return "say " + ", or ".join(part for part in (words, numbers) if part)


def _listed(words: list[str]) -> str:
    return " or ".join([", ".join(words[:-1]), words[-1]] if len(words) > 1 else words)


def _item(row: tables.Row) -> Item:
    told = {key: value for key, value in row.items() if key not in ("not_sure", "source")}
    return Item(takes_not_sure=row["not_sure"], **told)


ITEMS: dict[str, Item] = {row["key"]: _item(row) for row in tables.rows("items")}
"""Every item of the question by its key, in the order in which they are asked."""


def items_of(section: str) -> tuple[Item, ...]:
    """Return the items of one section.

    Parameters
    ----------
    section : str
        A key of ``SECTIONS``.

    Returns
    -------
    tuple of Item
        In the order in which they are asked.

    Examples
    --------
    >>> [item.key for item in items_of("wanted")]
    ['seen', 'bites']
    """
    return tuple(item for item in ITEMS.values() if item.section == section)


@tables.derived
def _also() -> dict[str, tuple[str, ...]]:
    """Return what words of also.csv may mean, in words of ours."""
    found: dict[str, tuple[str, ...]] = {}
    for row in tables.rows("also"):
        said, meant = matchable(row["said"]), matchable(row["meant"])
        found[said] = tuple(dict.fromkeys((*found.get(said, ()), meant)))
    return found


def matchable(text: str) -> str:
    """Return ``text`` cleaned and its hyphens as spaces, for comparing words."""
    return clean(text).replace("-", " ").replace("_", " ")


def choose(words: tuple[Word, ...], text: str) -> Word:
    """Return the word that ``text`` means: itself, another word for it, its beginning or a part.

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
    >>> choose((Word("kept in view"), Word("easy")), "kept").word
    'kept in view'
    """
    plain = matchable(text)
    names = {matchable(word.word): word for word in words}
    if plain in names:
        return names[plain]
    meant = [names[word] for word in _also().get(plain, ()) if word in names]
    if len(meant) == 1:
        return meant[0]
    begun = [word for name, word in names.items() if len(plain) > 2 and name.startswith(plain)]
    if len(begun) == 1:
        return begun[0]
    holds = re.compile(rf"\b{re.escape(plain)}\b")
    held = begun or [word for name, word in names.items() if len(plain) > 2 and holds.search(name)]
    if len(held) == 1:
        return held[0]
    if held:
        *some, last = [repr(word.word) for word in held]
        raise Unread(f"did you mean {', '.join(some)} or {last}?")
    if near := difflib.get_close_matches(plain, names, n=1, cutoff=0.65):
        raise Unread(f"did you mean {names[near[0]].word!r}?")
    raise Unread
