"""The drawings of a whole answer by name."""

from tipsight.advice.answer import Answer
from tipsight.errors import Mistake, Mistakes
from tipsight.load.tips import showing_diameter_mm
from tipsight.pictures import strips, subject, svg
from tipsight.pictures.subject import made
from tipsight.pictures.svg_parts import Drawing

NAMES = ("tip", "float", "shot", "sunk", "distance")


def drawing(answer: Answer, name: str) -> Drawing:
    """Return one drawing of an answer.

    Parameters
    ----------
    answer : Answer
        The answer; its tip for the bench is drawn, or else the one for the bank.
    name : str
        ``tip``, ``float``, ``shot`` (to each band), ``sunk`` (what is seen against what
        sinks it) or ``distance`` (the grades from 10 to 60 yd).

    Returns
    -------
    Drawing
        For a page, or to stand alone.

    Raises
    ------
    Mistakes
        For any other name.

    Examples
    --------
    >>> from tipsight import Question, advise
    >>> drawing(advise(Question(behind=["dark"])), "float").alone().startswith("<svg")
    True
    """
    tip = made(answer)[1].tip
    if name == "tip":
        return svg.tip(tip, tip.bands, showing_diameter_mm(tip), "The tip")
    if name == "float":
        return svg.float_(answer.case, tip)
    if name == "shot":
        return svg.stairs(answer.case, tip)
    if name == "sunk":
        return svg.seen_against_sunk(
            answer.trade_off, answer.case.wanted.level, answer.tip_in_hand
        )
    if name == "distance":
        case = answer.case
        each = subject.compared(answer)
        return strips.strips(each, case.place.range_m, case.wanted.level)
    raise Mistakes([Mistake("svg", name, f"say {', '.join(NAMES)}", "tip")])
