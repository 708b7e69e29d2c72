"""The drawings of a whole answer by name, and what each shows in words."""

import re
from html import escape, unescape

from tipsight.advice.answer import Answer
from tipsight.advice.swim import painted_mm
from tipsight.errors import Mistake, Mistakes
from tipsight.pictures import svg
from tipsight.pictures.subject import made

NAMES = ("tip", "float", "shot", "sunk")


_REACHED = (
    "<style>a text{fill:none}a:hover text,a:focus text{fill:currentColor}a{outline:none}</style>"
)
"""Words of a point show when it is reached."""


def alone(said: str) -> str:
    """Return a drawing of a page as one that stands alone.

    Parameters
    ----------
    said : str
        SVG as a page holds it.

    Returns
    -------
    str
        SVG with its size, its letters, and in words what it shows; its points lead nowhere.

    Examples
    --------
    >>> alone('<svg viewBox="0 0 9 8" role="img" aria-label="A tip. 3 mm"></svg>').endswith(
    ...     "<title>A tip</title><desc>3 mm</desc></svg>"
    ... )
    True
    """
    head, end, rest = said.partition(">")
    found = re.search(r'viewBox="0 0 (\d+) (\d+)".*aria-label=(["\'])(.*?)\3', head)
    if not end or found is None:
        return said
    wide, high, _, label = found.groups()
    title, _, desc = (escape(part, quote=False) for part in unescape(label).partition(". "))
    size = f'xmlns="http://www.w3.org/2000/svg" width="{wide}" height="{high}"'
    letters = 'font-size="18" font-family="sans-serif"'
    points = re.sub(r'<a href="#p\d+">', '<a tabindex="0">', rest)
    style = _REACHED if points != rest else ""
    head = head.replace("<svg", f"<svg {size}", 1)
    return f"{head} {letters}><title>{title}</title><desc>{desc}</desc>{style}{points}"


def drawing(answer: Answer, name: str) -> str:
    """Return one drawing of an answer.

    Parameters
    ----------
    answer : Answer
        The answer; its tip for the bench is drawn, or else the one for the bank.
    name : str
        ``tip``, ``float``, ``shot`` (to each band) or ``sunk`` (what is seen against what
        sinks it).

    Returns
    -------
    str
        SVG that stands alone.

    Raises
    ------
    Mistakes
        For any other name.

    Examples
    --------
    >>> from tipsight import Question, advise
    >>> drawing(advise(Question(behind=["dark"])), "float").startswith("<svg")
    True
    """
    return alone(_drawn(answer, name))


def _drawn(answer: Answer, name: str) -> str:
    tip = made(answer)[1].tip
    if name == "tip":
        return svg.tip(tip, tip.bands, painted_mm(tip), "The tip")
    if name == "float":
        return svg.float_(answer.case, tip)
    if name == "shot":
        return svg.stairs(answer.case, tip)
    if name == "sunk":
        return svg.seen_against_sunk(answer.trade_off, answer.case.wanted.level)
    raise Mistakes([Mistake("svg", name, f"say {', '.join(NAMES)}", "tip")])


def words_of(said: str) -> str:
    """Return what a drawing shows, in the words that it holds.

    Parameters
    ----------
    said : str
        SVG from `drawing`.

    Returns
    -------
    str
        One sentence.

    Examples
    --------
    >>> words_of("<svg><title>A tip</title><desc>3 mm &amp; red</desc></svg>")
    'A tip: 3 mm & red'
    """
    found = re.search(r"<title>(.*?)</title><desc>(.*?)</desc>", said, re.DOTALL)
    return unescape(f"{found[1]}: {found[2]}") if found else ""
