"""The questions as the page asks them: which in which order, and by which kind of field."""

from dataclasses import dataclass

from tipsight.errors import Mistake
from tipsight.inputs import parts
from tipsight.inputs.items import ITEMS, SECTIONS, Item, Word, choose, items_of
from tipsight.inputs.quantities import Unread
from tipsight.pictures.strips import ENDS
from tipsight.units import YARD_M
from webui.asking import Asked
from webui.reader_units import Units

ORDER = ("place", "light", "behind", "water", "eyes", "wanted", "float", "tip", "have")
"""The order in which a person thinks of them."""
TAPPED = ("sky", "sun_out", "sun_is", "seen", "bites")
"""Choices that are changed so often that each word is a tap."""
TAPS_YD, TAPS_M = (15, 20, 25, 30, 40, 50, 60), (15, 20, 25, 30, 35, 45, 55)
"""Distances that are one tap."""


@dataclass(frozen=True)
class Field:
    """One question as a field of the page."""

    item: Item
    look: str
    """How it is answered: radios, choose, taps (text with words beside it), lines, or text."""
    value: str
    words: tuple[Word, ...]
    hint: str
    unit: str
    mistakes: tuple[str, ...] = ()

    @property
    def described_by(self) -> str:
        """The ids of what describes the field, in the order in which they stand."""
        ids = [self.item.key] if self.hint else []
        return " ".join([*ids, f"{self.item.key}-m"] if self.mistakes else ids)


@dataclass(frozen=True)
class Part:
    """A section of the questions."""

    key: str
    title: str
    fields: tuple[Field, ...]
    folded: tuple[Field, ...]
    told: str
    """What was told in it, in short."""
    open: bool
    """Whether it must be seen: something in it is to be mended."""
    open_folded: bool
    """Whether what is folded in it must be seen."""


@dataclass(frozen=True)
class Quick:
    """A row of taps on the first screen."""

    key: str
    label: str
    question: str
    taps: tuple[tuple[str, str, bool], ...]
    """Word, the short of it, and whether it was told."""
    field: Field | None = None
    """Where it is typed, if that is not among the other questions."""
    ends: tuple[int, int] = (0, 0)
    """Between which it is dragged."""
    at: int = 0


QUICK = {
    "distance": ("Far", ()),
    "sky": ("Sky", ("dull overcast", "bright overcast", "broken cloud", "clear")),
    "behind": ("Behind", ("dark", "bright", "broken", "sun lane")),
    "looks": ("Surface", ("glass", "fur", "ripple", "wavelets")),
}
"""The rows of the first screen: label, and the words that are one tap; the others stand below."""


def quick(asked: Asked, mistakes: tuple[Mistake, ...], range_m: float) -> tuple[Quick, ...]:
    """Return the rows of taps of the first screen; ``range_m`` is the asked distance [m]."""
    found = []
    for key, (label, offered) in QUICK.items():
        item = ITEMS[key]
        field = _field(asked, item, mistakes)
        words = [word.word for word in field.words] if key == "distance" else list(offered)
        value = field.value
        if key == "sky":
            value = _word(item, value) or ""
        taps = tuple((word, word.split()[0], word == value) for word in words)
        if key != "distance":
            found.append(Quick(key, label, item.question, taps))
            continue
        far = range_m / (YARD_M if asked.units.far == "yd" else 1.0)
        ends = ENDS[asked.units.far]
        found.append(Quick(key, label, item.question, taps, field, ends, round(far)))
    return tuple(found)


def spaced(key: str) -> str:
    """Return an item's own name as it is said.

    >>> spaced("sun_height")
    'sun height'
    """
    return key.replace("_", " ")


def said_of(mistake: Mistake) -> str:
    """Return a mistake as one sentence, without the name of its item.

    >>> said_of(Mistake("distance", "40", "say the unit", "40 yd"))
    "'40' will not do; say the unit (for example 40 yd)"
    """
    words = str(mistake).removeprefix(f"{mistake.item}: ")
    return words[:1].upper() + words[1:]


def in_order(mistakes: tuple[Mistake, ...]) -> tuple[Mistake, ...]:
    """Return mistakes in the order in which their fields stand on the page, of no field last."""
    asked = [one.key for key in ORDER for one in sorted(items_of(key), key=lambda i: i.folded)]
    order = ["distance", *(key for key in asked if key != "distance")]
    return tuple(
        sorted(mistakes, key=lambda m: order.index(m.item) if m.item in order else len(order))
    )


def _word(item: Item, value: str) -> str | None:
    """Return the word that a choice has been given, None if it is none of them."""
    if not value:
        return ""
    try:
        return choose(item.words, value).word
    except Unread:
        return None


def _look(item: Item, value: str, word: str | None) -> str:
    if item.kind in ("word", "yes-no"):
        if word is None:
            return "text"
        return "radios" if item.key in TAPPED else "choose"
    if item.key == "parts" or "\n" in value:
        return "lines"
    if item.kind == "paint" or item.key == "distance":
        return "taps"
    return "taps" if item.words and item.table == "words" and not item.folded else "text"


def _words(item: Item, look: str, units: Units) -> tuple[Word, ...]:
    if item.key == "distance":
        far = TAPS_YD if units.far == "yd" else TAPS_M
        return tuple(Word(f"{x} {units.far}") for x in far)
    if item.kind == "paint":
        return tuple(word for word in item.words if word.word != "felt pen")
    return item.words if look != "text" else ()


def _hint(item: Item, look: str, units: Units) -> str:
    said = [item.hint]
    allowed = units.allowed(item)
    if look in ("text", "lines") and allowed.lower() not in item.hint.lower():
        said.append(allowed[0].upper() + allowed[1:])
    elif units.of(item) or (item.limits and look == "taps"):
        said.append(f"{units.limits(item)} may be typed")
    if item.default and look not in ("choose", "radios"):
        said.append(f"Not told: {units.taken(item, item.default)}")
    return ". ".join(words for words in said if words)


def _field(asked: Asked, item: Item, mistakes: tuple[Mistake, ...] = ()) -> Field:
    """Return one question as a field."""
    value = "; ".join(asked.typed.get(item.key, ()))
    word = _word(item, value) if item.kind in ("word", "yes-no") else None
    look = _look(item, value, word)
    if look in ("choose", "radios"):
        value = word or ""
    hint = _hint(item, look, asked.units)
    if item.key == "size":
        sizes = parts.sizes_of("".join(asked.typed.get("pattern", ())) or ITEMS["pattern"].default)
        hint = f"{item.hint}. {', '.join(sizes)}" if sizes else item.hint
    wrong = tuple(said_of(one) for one in mistakes if one.item == item.key)
    return Field(
        item, look, value, _words(item, look, asked.units), hint, asked.units.bare(item), wrong
    )


def fields(asked: Asked, mistakes: tuple[Mistake, ...] = ()) -> tuple[Part, ...]:
    """Return the questions in the order in which they are asked, with what was typed and is wrong."""
    found = []
    for key in ORDER:
        all_ = [_field(asked, one, mistakes) for one in items_of(key)]
        first = tuple(one for one in all_ if not one.item.folded)
        folded = tuple(one for one in all_ if one.item.folded)
        told = "; ".join(
            one.value.replace("\n", "; ")
            for one in all_
            if one.value and one.item.key != "distance"
        )
        found.append(
            Part(
                key,
                SECTIONS[key],
                first,
                folded,
                told if len(told) < 60 else f"{told[:57]}...",
                any(one.mistakes for one in all_),
                any(one.mistakes for one in folded),
            )
        )
    return tuple(found)
