"""What is kept in mind of a float on its water, for all swims that differ in sight alone."""

from dataclasses import replace
from typing import Any

from tipsight import tables
from tipsight.few import Few
from tipsight.inputs.case import Angler, Case, Light, Place
from tipsight.inputs.learnt import Learnt

AFLOAT = ("rigs", "sounds", "shelves")
"""Fields of `swim.Swim` that hang on the float and its water, and on nothing that is seen."""
HELD, SHELVES = 1024, 6
"""Tips whose rig and soundness are held in mind for one float on one water, and shelves."""
FLOATS = 4
"""Floats on their waters that are held in mind."""


def in_common(case: Case) -> tuple[dict[Any, Any], ...]:
    """Return what `AFLOAT` names, the same for questions that differ in sight alone."""
    unseen = replace(
        case,
        place=Place(1.0),
        light=Light(),
        stretches=(),
        angler=Angler(),
        assumed=(),
        other_lights=(),
        trot=(),
        learnt=Learnt(),
    )
    return _afloat(unseen)


@tables.lately(FLOATS)
def _afloat(_case: Case) -> tuple[dict[Any, Any], ...]:
    return Few(HELD), Few(HELD), Few(SHELVES)
