"""One cell of the bank card or of the pocket file: what to do now with this float, worked out anew."""

from dataclasses import dataclass

from tipsight.advice import bank
from tipsight.advice.answer import Change
from tipsight.advice.examine import examine
from tipsight.advice.swim import swim
from tipsight.inputs.question import Question
from tipsight.inputs.settle import settle

YARDS = (10, 15, 20, 25, 30, 35, 40, 45, 50, 55, 60)
WATERS = ("dark", "bright", "broken", "sun lane")
RIPPLES = ("glass", "fur", "ripple", "wavelets")
SKIES = ("dull overcast", "bright overcast", "broken cloud", "hazy", "clear")
_SUNLESS = ("dull overcast", "bright overcast")
_SHORT = {"pen and show more": "pen", "insert": "{} insert", "pen and insert": "{} insert, pen"}


@dataclass(frozen=True)
class Cell:
    """What to do now, short enough for a card."""

    show: str
    """How much to show, and after a comma of which insert, and whether to pen."""
    shot: str
    """Shot on or off."""
    grade: str
    """How well it is then seen."""


def asked(
    question: Question, yards: int, water: str, looks: str | None = None, sky: str | None = None
) -> Question:
    """Return a question put for another distance, water, ripple and sky.

    Parameters
    ----------
    question : Question
        What was told of float, eyes and all else.
    yards : int
        Distance [yd].
    water : str
        Word for the water behind the tip.
    looks, sky : str, optional
        Words for ripple and sky; left out, as they were told.

    Returns
    -------
    Question
        To be answered by `advise`.

    Examples
    --------
    >>> asked(Question(age=60), 30, "dark", "fur").told()
    {'distance': '30 yd', 'looks': 'fur', 'behind': ('dark',), 'age': 60}
    """
    changes: dict[str, str | tuple[str, ...] | None] = {
        "distance": f"{yards} yd",
        "behind": (water,),
    }
    if looks is not None:
        changes["looks"] = looks
    if sky is not None:
        changes["sky"] = sky
        if sky in _SUNLESS:
            changes["sun_out"] = None
    return question.with_options(**changes)


def told(change: Change) -> Cell:
    """Return what to do at the bank as a cell.

    Parameters
    ----------
    change : Change
        What `advise` leads with at the bank.

    Returns
    -------
    Cell
        In few words.
    """
    block = change.block
    show = f"{block.tip.showing_mm:.0f} mm"
    if change.kind not in ("as it is", "show more", "show less"):
        what = _SHORT.get(change.kind, change.kind)
        show += ", " + what.format(f"{block.tip.stock.diameter_mm:g} mm")
    shot = block.load.change_words.replace("take off ", "off ").replace("put on ", "on ")
    shot = shot.replace("leave the ", "")
    return Cell(show, shot or "shot as it is", block.visibility.grade)


def cell(
    question: Question, yards: int, water: str, looks: str | None = None, sky: str | None = None
) -> Cell:
    """Return one cell: the bank's part of `advise`, without what is for the bench.

    Parameters
    ----------
    question : Question
        What was told of float, eyes and all else.
    yards : int
        Distance [yd].
    water : str
        Word for the water behind the tip.
    looks, sky : str, optional
        Words for ripple and sky; left out, as they were told.

    Returns
    -------
    Cell
        Exactly what `advise` leads with at the bank.

    Raises
    ------
    Mistakes
        With what is to be mended in the question.

    Examples
    --------
    >>> cell(Question(paint="white"), 10, "dark").grade
    'stands out'
    """
    case = settle(asked(question, yards, water, looks, sky))
    here = swim(case)
    in_hand = examine(here, case.tip)
    return told(bank.lead(bank.changes(here, in_hand)))
