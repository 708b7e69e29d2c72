"""Goes through what was told and collects every mistake, and every item that had to be taken."""

from typing import Any

from tipsight.errors import Mistake
from tipsight.inputs.answers import is_not_sure, read
from tipsight.inputs.case import Assumed
from tipsight.inputs.items import ITEMS
from tipsight.inputs.question import Question
from tipsight.inputs.reading import Unread


def joined(reason: str, allowed: str) -> str:
    """Return what is wrong and what is allowed as one line.

    Parameters
    ----------
    reason : str
        What is wrong; a reason that says what to say stands alone.
    allowed : str
        What may be said.

    Returns
    -------
    str
        One line.

    Examples
    --------
    >>> joined("did you mean 'dark'?", "say dark or bright")
    "did you mean 'dark'? say dark or bright"
    """
    if not reason:
        return allowed
    if reason.startswith("say "):
        return reason
    return f"{reason}{' ' if reason.endswith('?') else '; '}{allowed}"


class Teller:
    """One question being settled.

    Parameters
    ----------
    question : Question
        What was told.

    Examples
    --------
    >>> teller = Teller(Question(depth="7 ft"))
    >>> round(teller.take("depth"), 2), teller.take("bed").word, teller.assumed[0].item
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

    def ask(self, key: str) -> Any:
        """Return the item's value if it was told and can be read, else None."""
        item = ITEMS[key]
        self._asked.add(key)
        if key not in self._told:
            return None
        if is_not_sure(self._told[key]) and item.kind != "stretches":
            if not item.takes_not_sure:
                self.wrong(key, f"this one has to be known; {item.allowed}", example=item.example)
            return None
        try:
            return read(item, self._told[key])
        except Unread as unread:
            self.wrong(key, joined(f"{unread}", item.allowed), example=item.example)
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
