"""One cell of the bank card or of the pocket file: what to do now with this float, worked out anew."""

from collections.abc import Sequence
from dataclasses import dataclass

from tipsight.advice import on_the_spot
from tipsight.advice.answer import Change
from tipsight.advice.close_look import close_look
from tipsight.advice.facts import CarryLight, Insert, Pen, Sleeve
from tipsight.advice.swim import swim
from tipsight.inputs.question import Question
from tipsight.inputs.settle import settle
from tipsight.load.change import Counted
from tipsight.output import shot_words
from tipsight.units import YARD_M

YARDS = (10, 15, 20, 25, 30, 35, 40, 45, 50, 55, 60)
WATERS = ("dark", "bright", "broken", "sun lane")
RIPPLES = ("glass", "fur", "ripple", "wavelets")
SKIES = ("dull overcast", "bright overcast", "broken cloud", "hazy", "clear")
SUNLESS = ("dull overcast", "bright overcast")


@dataclass(frozen=True)
class Cell:
    """What to do now with the tip in hand, and what comes of it."""

    showing_mm: float
    grade: str
    """How well it is then seen."""
    pen: bool = False
    sleeve: bool = False
    light_stick: bool = False
    insert_mm: float | None = None
    """Diameter of the insert to be put in; None to leave the tip where it is."""
    on: Counted = ()
    off: Counted = ()
    """Shot to put on and take off, by name and number."""

    @property
    def length(self) -> str:
        """How much to show, in words."""
        return f"{self.showing_mm:.0f} mm"

    @property
    def aids(self) -> tuple[str, ...]:
        """What else to do to the tip, in words."""
        insert = "" if self.insert_mm is None else f"{self.insert_mm:g} mm insert"
        named = {"sleeve": self.sleeve, "light stick": self.light_stick, insert: bool(insert)}
        return tuple(name for name, done in {**named, "pen": self.pen}.items() if done)

    @property
    def show(self) -> str:
        """How much to show and what to do to the tip, in words."""
        return ", ".join((self.length, *self.aids))

    @property
    def shot(self) -> str:
        """Shot off and on, in words."""
        named = [("off", self.off), ("on", self.on)]
        said = [f"{verb} {shot_words.counted(counted)}" for verb, counted in named if counted]
        return " and ".join(said) or "shot as it is"


def asked(
    question: Question, yards: int, water: str, looks: str | None = None, sky: str | None = None
) -> Question:
    """Return a question put for another distance, water, ripple and sky, the last two if told.

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
        if sky in SUNLESS:
            changes["sun_out"] = None
    return question.with_options(**changes)


def told(change: Change) -> Cell:
    """Return what `advise` leads with at the bank as a cell."""
    block = change.block
    return Cell(
        block.tip.showing_mm,
        block.visibility.grade,
        pen=change.does(Pen),
        sleeve=change.does(Sleeve),
        light_stick=change.does(CarryLight),
        insert_mm=block.tip.stock.diameter_mm if change.does(Insert) else None,
        on=block.load.step.on,
        off=block.load.step.off,
    )


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

    Raises
    ------
    Mistakes
        With what is to be mended in the question.

    Examples
    --------
    >>> cell(Question(paint="white"), 10, "dark").grade
    'stands out'
    """
    return column(question, [yards], water, looks, sky)[yards]


def column(
    question: Question,
    yards: Sequence[int],
    water: str,
    looks: str | None = None,
    sky: str | None = None,
) -> dict[int, Cell]:
    """Return a cell for each of several distances [yd]: one water is lit once for all of them.

    As `cell` for the rest.
    """
    case = settle(asked(question, yards[0], water, looks, sky))
    here = swim(case, [yard * YARD_M for yard in yards[1:]])
    found = {}
    for yard in yards:
        there = here.at(yard * YARD_M)
        in_hand = close_look(there, case.tip)
        found[yard] = told(on_the_spot.lead(on_the_spot.changes(there, in_hand, moves=False)))
    return found
