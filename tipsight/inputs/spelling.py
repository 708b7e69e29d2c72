"""The nearest spelling of a word that was not found."""

import difflib
import re
from collections.abc import Iterable

from tipsight import tables
from tipsight.inputs.items import Word
from tipsight.inputs.reading import Unread, clean


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


@tables.derived
def _also() -> dict[str, tuple[str, ...]]:
    """Return what other words than ours may mean."""
    found: dict[str, tuple[str, ...]] = {}
    for row in tables.rows("also"):
        said, meant = bare(row["said"]), bare(row["meant"])
        found[said] = tuple(dict.fromkeys((*found.get(said, ()), meant)))
    return found


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
    >>> choose((Word("seen when stared at"), Word("easy")), "stared").word
    'seen when stared at'
    """
    plain = bare(text)
    names = {bare(word.word): word for word in words}
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
    raise Unread("")


def bare(text: str) -> str:
    """Return ``text`` plainer than plain, its hyphens as spaces.

    Parameters
    ----------
    text : str
        As typed.

    Returns
    -------
    str
        For comparing.

    Examples
    --------
    >>> bare("Red-weak")
    'red weak'
    """
    return clean(text).replace("-", " ").replace("_", " ")
