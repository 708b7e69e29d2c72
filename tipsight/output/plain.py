"""Text for a terminal that prints nothing but plain letters."""

import re

_PLAIN = {
    "¼": " 1/4",
    "½": " 1/2",
    "¾": " 3/4",
    "×": "x",
    "–": "-",
    "—": "-",
    "−": "-",
    "°": " deg",
}


def plain(text: str) -> str:
    """Return ``text`` for a terminal that prints nothing but plain letters.

    Parameters
    ----------
    text : str
        Any text of ours.

    Returns
    -------
    str
        In ASCII, fractions spelled out.

    Examples
    --------
    >>> plain("31 mm, 1¼ in; ½ s")
    '31 mm, 1 1/4 in; 1/2 s'
    """
    for mark, spelled in _PLAIN.items():
        text = text.replace(mark, spelled)
    text = re.sub(r"(?<=[ (]) +(?=\d/\d)", "", text)
    return text.encode("ascii", "replace").decode("ascii")
