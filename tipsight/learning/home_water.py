"""What is known of one named water's boils from all counts told of it, worked out anew."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from itertools import groupby

import numpy as np
from numpy.typing import NDArray

from tipsight.advice.swim import Swim, swim
from tipsight.box.recorded import Reading
from tipsight.errors import Mistakes
from tipsight.inputs.case import Case
from tipsight.inputs.learnt import Lesson
from tipsight.inputs.question import Question
from tipsight.inputs.settle import settle
from tipsight.learning import boiling
from tipsight.learning.boiling import Boils, Curve
from tipsight.learning.worked import Worked, once
from tipsight.load.tips import showing_diameter_mm

Array = NDArray[np.float64]


@dataclass(frozen=True)
class HomeWater:
    """A named water."""

    name: str
    boils: Boils
    counts: int
    """How many readings count."""
    visits: int
    unread: tuple[int, ...] = ()
    """Numbers of readings whose question can no longer be answered."""
    unexplained: tuple[int, ...] = ()
    """Numbers of readings that no boils explain."""

    @property
    def lesson(self) -> Lesson:
        """What goes with questions of this water."""
        return Lesson("boils", f"{min(max(self.boils.factor, 0.0), 6.0):.2f}", counts=self.counts)


def curve_of(case: Case) -> Curve:
    """Return what the tip in hand does on the water of a question for each boil factor."""
    here: Swim = swim(case)
    tip = case.tip
    return boiling.curve(here.rig, here.sea, here.stream, tip.showing_mm, showing_diameter_mm(tip))


def likelihood(reading: Reading, worked: Worked | None = None) -> tuple[Array, float]:
    """Return how likely a reading is for each boil factor, and the factor of the word in its question."""
    told = dict(reading.told)
    case = settle(Question().with_options(**told.pop("question")))
    found = once(worked, lambda: _likelihood(told, curve_of(case)), boiling.F.shape, reading.told)
    return found, case.stream.boil_factor


def _likelihood(told: dict[str, float], on: Curve) -> Array:
    if told.get("dips") is not None:
        return boiling.dips(told["dips"], told["minutes"], on)
    if told.get("lowest_mm") is not None:
        return boiling.lowest(told["lowest_mm"], on)
    return boiling.under(told["seconds"], told["per_min"], on)


def home_water(
    name: str, readings: Sequence[Reading], today: date, worked: Worked | None = None
) -> HomeWater:
    """Return what is known of a water from what was told of it and not dropped.

    Parameters
    ----------
    name : str
        Of the water.
    readings : sequence of Reading
        Of it.
    today : date
        What was read today counts in full; earlier visits are as far from today as visits are.
    worked : mutable mapping, optional
        What was worked out of readings before, as `worked.once` keeps it.

    Returns
    -------
    HomeWater
        Its boils, drifting between visits; worked out whenever it is asked for.
    """
    kept = sorted((r for r in readings if not r.dropped), key=lambda one: one.made_on)
    before: list[list[Array]] = []
    now: list[Array] = []
    words, unread, odd, counts, visits = [], [], [], 0, 0
    for on, group in groupby(kept, key=lambda one: one.made_on):
        each = []
        for one in group:
            try:
                likely, word = likelihood(one, worked)
            except Mistakes:
                unread.append(one.number)
                continue
            words.append(word)
            if boiling.explained(likely):
                each.append(likely)
            else:
                odd.append(one.number)
        if not each:
            continue
        counts, visits = counts + len(each), visits + 1
        if on == today:
            now = each
        else:
            before.append(each)
    word = float(np.clip(words[-1], 0.5, 6.0)) if words else 1.0
    found = boiling.boils(word, before, now)
    return HomeWater(name, found, counts, visits, tuple(unread), tuple(odd))
