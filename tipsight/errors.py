"""What can go wrong with what a person said, in words that a person can use."""

import difflib
from collections.abc import Iterable
from dataclasses import dataclass


class OutOfRange(ValueError):  # noqa: N818 - reads as what happened
    """A number outside the range in which a sum is known to hold.

    Parameters
    ----------
    name : str
        What the number is, in plain words or as the library's parameter.
    value : float
        The number that was given.
    low, high : float
        The range in which it may lie.
    unit : str
        The unit of all three, empty for a pure number.

    Examples
    --------
    >>> str(OutOfRange("range", 0.0, 3.0, 100.0, "m"))
    'range must be 3 to 100 m, got 0 m'
    """

    def __init__(self, name: str, value: float, low: float, high: float, unit: str = "") -> None:
        self.name, self.value, self.low, self.high, self.unit = name, value, low, high, unit
        tail = f" {unit}" if unit else ""
        super().__init__(f"{name} must be {low:g} to {high:g}{tail}, got {value:g}{tail}")


@dataclass(frozen=True)
class Mistake:
    """One thing to mend in a question: which item, what was said, what is allowed, an example."""

    item: str
    said: str
    allowed: str
    example: str

    def __str__(self) -> str:
        said = f"{self.said!r} will not do; " if self.said else ""
        example = f" (for example {self.example})" if self.example else ""
        return f"{self.item}: {said}{self.allowed}{example}"


class Mistakes(ValueError):  # noqa: N818 - it carries several
    """All that is wrong with a question, told at once.

    Parameters
    ----------
    mistakes : iterable of Mistake
        One or more.

    Examples
    --------
    >>> print(Mistakes([Mistake("distance", "40", "say the unit, yards or metres", "40 yd")]))
    distance: '40' will not do; say the unit, yards or metres (for example 40 yd)
    """

    def __init__(self, mistakes: Iterable[Mistake]) -> None:
        self.mistakes = tuple(mistakes)
        super().__init__("\n".join(str(mistake) for mistake in self.mistakes))


def nearest(said: str, words: Iterable[str]) -> str:
    """Return a half sentence that offers the nearest of ``words``, or nothing.

    Parameters
    ----------
    said : str
        What was said.
    words : iterable of str
        What could have been meant.

    Returns
    -------
    str
        Such as ``; did you mean 'distance'?``, or empty.

    Examples
    --------
    >>> nearest("distnace", ["distance", "depth"])
    "; did you mean 'distance'?"
    """
    near = difflib.get_close_matches(said, list(words), n=1, cutoff=0.65)
    return f"; did you mean {near[0]!r}?" if near else ""
