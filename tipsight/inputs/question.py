"""The question as a person puts it, and what asks it for the value of each item."""

from dataclasses import dataclass, fields, replace
from typing import Any

from tipsight.errors import Mistake, Mistakes, nearest
from tipsight.inputs.case import Assumed
from tipsight.inputs.items import ITEMS
from tipsight.inputs.kinds import Value, is_not_sure, is_told, read
from tipsight.inputs.reading import Unread


@dataclass(frozen=True)
class Question:
    """What the angler said, item by item.

    Every field is None (not told), text as a person types it, a number in the item's own unit
    (``ITEMS[key].unit``), a truth, or for a list a tuple of texts.

    Examples
    --------
    >>> Question(distance="40 yd", tint="none").told()
    {'distance': '40 yd', 'tint': 'none'}
    """

    distance: Value | None = None
    known: Value | None = None
    eye: Value | None = None

    depth: Value | None = None
    pace: Value | None = None
    looks: Value | None = None
    wind: Value | None = None
    wind_blows: Value | None = None
    sheltered: Value | None = None
    open_water: Value | None = None
    boils: Value | None = None
    goes_under: Value | None = None
    bed: Value | None = None
    colour: Value | None = None
    temperature: Value | None = None
    run: Value | None = None
    line: Value | None = None

    sky: Value | None = None
    sun_out: Value | None = None
    shadow: Value | None = None
    sun_is: Value | None = None
    sun_height: Value | None = None
    sun_bearing: Value | None = None
    when: Value | None = None
    at: Value | None = None
    looking: Value | None = None
    mist: Value | None = None

    behind: Value | None = None

    age: Value | None = None
    sight: Value | None = None
    colour_vision: Value | None = None
    own_eye: Value | None = None
    tint: Value | None = None

    seen: Value | None = None
    bites: Value | None = None

    pattern: Value | None = None
    takes: Value | None = None
    marked_in: Value | None = None
    takes_showing: Value | None = None
    weighed_tip: Value | None = None
    weighed_wet: Value | None = None
    weighed_glued: Value | None = None
    weighed_coats: Value | None = None
    weighs: Value | None = None
    size: Value | None = None
    parts: Value | None = None
    shotting: Value | None = None
    varnish_coats: Value | None = None
    paint_coats: Value | None = None

    diameter: Value | None = None
    stock: Value | None = None
    bore: Value | None = None
    showing: Value | None = None
    wet: Value | None = None
    glued: Value | None = None
    paint: Value | None = None
    seasons: Value | None = None
    finish: Value | None = None
    undercoat: Value | None = None
    tip_coats: Value | None = None
    pulls_out: Value | None = None
    sleeve_on: Value | None = None
    light_stick_on: Value | None = None

    tips: Value | None = None
    inserts: Value | None = None
    paints: Value | None = None
    pen: Value | None = None
    sleeves: Value | None = None
    light_stick: Value | None = None
    shot: Value | None = None
    shot_metal: Value | None = None
    ten_weigh: Value | None = None

    def __post_init__(self) -> None:
        for field in fields(self):
            if isinstance(value := getattr(self, field.name), list):
                object.__setattr__(self, field.name, tuple(value))

    def told(self) -> dict[str, Value]:
        """Return the items that say anything, in the order in which they are asked."""
        items = {field.name: getattr(self, field.name) for field in fields(self)}
        return {key: value for key, value in items.items() if is_told(value)}

    def with_options(self, **changes: Value | None) -> "Question":
        """Return the question with some items told otherwise; None takes one back.

        Raises
        ------
        Mistakes
            If there is no such item.
        """
        check_items(changes)
        return replace(self, **changes)


def check_items(keys: "dict[str, Value | None]") -> None:
    """Refuse keys that are no items of the question, with the nearest spelling.

    Parameters
    ----------
    keys : dict
        Keyed by what should be items.

    Raises
    ------
    Mistakes
        Naming every key that is not an item.

    Examples
    --------
    >>> check_items({"distance": "40 yd"})
    """
    unknown = [key for key in keys if key not in ITEMS]
    if unknown:
        raise Mistakes(
            [
                Mistake(key, "", f"there is no such item{nearest(key, ITEMS)}", "")
                for key in unknown
            ]
        )


class Asker:
    """Asks a question for its items, and keeps every mistake and all that had to be taken.

    Parameters
    ----------
    question : Question
        What was told.

    Examples
    --------
    >>> asker = Asker(Question(depth="7 ft"))
    >>> round(asker.take("depth"), 2), asker.take("bed").word, asker.assumed[0].item
    (2.13, 'gravel', 'bed')
    """

    def __init__(self, question: Question) -> None:
        self._told = question.told()
        self._asked: set[str] = set()
        self.mistakes: list[Mistake] = []
        self.assumed: list[Assumed] = []

    def knows(self, key: str) -> bool:
        """Return whether the item was told, with something else than "not sure"."""
        return key in self._told and not is_not_sure(self._told[key])

    def said(self, key: str) -> str:
        """Return the item as it was said."""
        value = self._told.get(key, "")
        if isinstance(value, bool):
            return "yes" if value else "no"
        return "; ".join(value) if isinstance(value, tuple) else f"{value}"

    def wrong(self, key: str, allowed: str, *, said: str | None = None, example: str = "") -> None:
        """Note a mistake."""
        said = self.said(key) if said is None else said
        self.mistakes.append(Mistake(key, said, allowed, example))

    def unread(
        self, key: str, unread: Unread, *, said: str | None = None, example: str = ""
    ) -> None:
        """Note what could not be read, with what the item allows unless that is told already."""
        wrong, allowed = str(unread), ITEMS[key].allowed
        if wrong and not unread.says_all:
            allowed = f"{wrong}{' ' if wrong.endswith('?') else '; '}{allowed}"
        self.wrong(
            key,
            wrong if unread.says_all else allowed,
            said=said,
            example=example or ITEMS[key].example,
        )

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

        Parameters
        ----------
        key : str
            The item.
        default : str, optional
            What to take, as a person would say it; the item's own default otherwise.
        quiet : bool
            Whether nothing hangs on what is taken, so that it is not listed.
        """
        value = self.ask(key)
        if value is not None:
            return value
        taken = ITEMS[key].default if default is None else default
        if not quiet and not any(mistake.item == key for mistake in self.mistakes):
            self.assumed.append(Assumed(key, taken))
        return read(ITEMS[key], taken)
