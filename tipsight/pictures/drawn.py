"""The drawings of a whole answer by name, and what each shows in words."""

import re
from html import unescape

from tipsight.advice.answer import Answer
from tipsight.advice.swim import painted_mm
from tipsight.errors import Mistake, Mistakes
from tipsight.pictures import svg
from tipsight.pictures.subject import made

NAMES = ("tip", "float", "shot", "sunk")


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
