"""The nearest spelling of a word that was not found."""

import difflib
from collections.abc import Iterable


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
    near = difflib.get_close_matches(said, list(words), n=1, cutoff=0.6)
    return f"; did you mean {near[0]!r}?" if near else ""
