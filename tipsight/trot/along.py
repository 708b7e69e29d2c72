"""A tip along the whole trot, yard by yard, and the tip that does on every stretch of it."""

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import TypeVar

import numpy as np
from numpy.typing import NDArray

from tipsight.advice.advise import advise_case
from tipsight.advice.answer import Answer, Block, Change, Run
from tipsight.advice.close_look import close_look
from tipsight.advice.limits import ENOUGH
from tipsight.advice.sighting import along as level_along
from tipsight.advice.sighting import seen
from tipsight.advice.swim import Swim, swim
from tipsight.errors import Mistakes
from tipsight.inputs.case import Leg, Tip
from tipsight.inputs.question import Question
from tipsight.inputs.settle import settle
from tipsight.sight import grades, notice
from tipsight.units import YARD_M

Array = NDArray[np.float64]

NEAREST_YD = 4
"""Nearer than this nobody looks for a tip."""
SELDOM_PER_MIN = 0.5
"""The water's own dips that come less often than this are not waited out (judgement)."""


STEPS_S = 0.5, 1.0, 2.0, 3.0, 5.0, 10.0
"""Lengths of a dip that a person tells apart by counting (judgement)."""
T = TypeVar("T")


def runs(each: Iterable[tuple[int, T]]) -> tuple[tuple[int, int, T], ...]:
    """Return from which yard to which the same holds.

    >>> runs([(4, "a"), (5, "a"), (6, "b"), (8, "b")])
    ((4, 5, 'a'), (6, 6, 'b'), (8, 8, 'b'))
    """
    found: list[tuple[int, int, T]] = []
    for yard, what in sorted(each, key=lambda one: one[0]):
        if found and found[-1][1] == yard - 1 and found[-1][2] == what:
            found[-1] = (found[-1][0], yard, what)
        else:
            found.append((yard, yard, what))
    return tuple(found)


@dataclass(frozen=True)
class Yards:
    """One tip on one stretch, at each whole yard of it."""

    yards: NDArray[np.intp]
    level: Array
    """On the worst of the waters that the stretch may be."""
    notice_s: Array
    """How long the tip must be gone to be missed there [s]; nan where it is not followed."""
    own_dip_s: float
    """What nearly all of the water's own dips stay below [s]; 0 where they are too seldom to count."""

    @cached_property
    def strike_s(self) -> Array:
        """How long a dip must last to be noticed and to be no dip of the water's own [s]."""
        return np.maximum(self.notice_s, self.own_dip_s)


@dataclass(frozen=True)
class AllAlong:
    """One tip on every stretch of the trot."""

    tip: Tip
    blocks: tuple[Block, ...]
    """Looked at closely at the far end of each stretch."""
    on: tuple[Yards, ...]

    @property
    def passes(self) -> bool:
        """Whether it does on all stretches."""
        return all(block.passes for block in self.blocks)

    @property
    def worst(self) -> int:
        """On which stretch it is seen worst; of equal ones the farthest."""
        levels = [block.visibility.level for block in self.blocks]
        return len(levels) - 1 - int(np.argmin(levels[::-1]))

    @property
    def level(self) -> float:
        """The level that counts: the least of all stretches."""
        return self.blocks[self.worst].visibility.level

    @property
    def lost_yards(self) -> tuple[tuple[int, int], ...]:
        """From which yard to which it is not followed."""
        least = self.least
        lost = (yard for yard, level in least.items() if level < grades.followed())
        return tuple((first, last) for first, last, _ in runs((yard, True) for yard in lost))

    @property
    def by_grade(self) -> tuple[Run, ...]:
        """Its grades along the trot, near to far, each reaching to where the next begins."""
        each = runs((yard, grades.grade(level)) for yard, level in self.least.items())
        return tuple(
            Run(grade, (first - 0.5) * YARD_M, (last + 0.5) * YARD_M) for first, last, grade in each
        )

    @property
    def followed_yards(self) -> int:
        """At how many yards it is followed."""
        return sum(level >= grades.followed() for level in self.least.values())

    @property
    def least(self) -> dict[int, float]:
        """The level at each yard; where two stretches meet, that of the worse."""
        found: dict[int, float] = {}
        for one in self.on:
            for yard, level in zip(one.yards.tolist(), one.level.tolist(), strict=True):
                found[yard] = min(level, found.get(yard, level))
        return found

    @property
    def strikes(self) -> tuple[tuple[int, int, float | None], ...]:
        """From which yard to which a dip must last how long to be struck at [s].

        One of `STEPS_S`, so much as it needs at the most; None where no dip shows.
        """
        found: dict[int, float | None] = {}
        for one in self.on:
            for yard, needed in zip(one.yards.tolist(), one.strike_s.tolist(), strict=True):
                step = next((s for s in STEPS_S if s >= needed), None)
                worse = None if step is None or found.get(yard, 0.0) is None else step
                found[yard] = worse if worse is None else max(worse, found.get(yard) or 0.0)
        return runs(found.items())


@dataclass(frozen=True)
class Trot:
    """A trot, its stretches, and what to watch along it."""

    legs: tuple[Leg, ...]
    answers: tuple[Answer, ...]
    """What would be advised for each stretch by itself, at its far end."""
    in_hand: AllAlong
    change: Change
    """What to do for the whole trot, by the far end's shot; as it is where the tip in hand does."""
    chosen: AllAlong
    seconds: tuple[float, ...]
    """From end to end of each stretch, at its own pace [s]."""

    @property
    def followed_s(self) -> float:
        """How much of that the chosen tip is followed [s]."""
        followed, total = grades.followed(), 0.0
        for one, seconds in zip(self.chosen.on, self.seconds, strict=True):
            if one.yards.size:
                total += seconds * float((one.level >= followed).mean())
        return total


def along(question: Question) -> Trot:
    """Return a tip along a trot whose water changes, and the tip that does on all of it.

    The choice is that of the stretch on which least is seen, where it does on all others as well:
    nothing lighter does there, and so nothing lighter does on the whole. Where it does not, the one
    among all tips that are advised for single stretches is taken that is followed on the most of it.

    Parameters
    ----------
    question : Question
        With its ``trot``; without one the trot is one stretch, as the question tells it.

    Returns
    -------
    Trot
        Its stretches, and the tip in hand and the chosen one yard by yard.

    Raises
    ------
    Mistakes
        With all that is wrong with the question.

    Examples
    --------
    >>> found = along(Question(distance="30 yd", trot="0-20 dark, 20-30 bright", paint="black"))
    >>> len(found.legs), found.in_hand.worst
    (2, 0)
    """
    case = settle(question)
    legs = case.trot or (Leg(0.0, case.place.range_m, ()),)
    parts = [_part(question, leg, case.place.range_m, len(legs)) for leg in legs]
    cases = [settle(part) for part in parts]
    swims = [swim(one) for one in cases]
    answers = tuple(
        advise_case(one, dict(part.told())) for one, part in zip(cases, parts, strict=True)
    )
    in_hand = _on_all(legs, swims, case.tip)
    offered = [(change, found) for change in _offered(answers) if (found := _try(legs, swims, change))]
    change, chosen = _choice(offered)
    seconds = tuple(
        (leg.to_m - leg.from_m) / one.stream.pace_m_s if one.stream.pace_m_s else math.inf
        for leg, one in zip(legs, cases, strict=True)
    )
    return Trot(legs, answers, in_hand, change, chosen, seconds)


def _part(question: Question, leg: Leg, range_m: float, count: int) -> Question:
    """Return the question of one stretch by itself, fished to its far end."""
    told: dict[str, str | None] = {"trot": None, **dict(leg.told)}
    if count > 1 and leg.to_m < range_m:
        told["distance"] = f"{leg.to_m:.10g} m"
    return question.with_options(**told)


def _offered(answers: Sequence[Answer]) -> list[Change]:
    """Return what is advised on single stretches, the least trouble first, each tip once."""
    here = [answer.at_the_bank for answer in answers]
    bench = [answer.at_the_bench for answer in answers if answer.at_the_bench is not None]
    found: dict[Tip, Change] = {}
    for change in (*(one for one in here if one.stays), *bench):
        found.setdefault(change.block.tip, change)
    return list(found.values())


def _try(legs: Sequence[Leg], swims: Sequence[Swim], change: Change) -> AllAlong | None:
    try:
        return _on_all(legs, swims, change.block.tip)
    except Mistakes:  # it sinks the float
        return None


def _on_all(legs: Sequence[Leg], swims: Sequence[Swim], tip: Tip) -> AllAlong:
    blocks = tuple(close_look(one, tip) for one in swims)
    each = zip(legs, swims, blocks, strict=True)
    return AllAlong(tip, blocks, tuple(_yards(leg, one, block) for leg, one, block in each))


def _yards(leg: Leg, here: Swim, block: Block) -> Yards:
    first = max(math.ceil(leg.from_m / YARD_M - 1e-6), NEAREST_YD)
    yards = np.arange(first, math.floor(leg.to_m / YARD_M + 1e-6) + 1)
    waters = [here.waters[key] for key in here.judged]
    levels = np.array([level_along(here, water, block.tip).level for water in waters])
    least = np.log(np.maximum(levels.min(axis=0), 1e-6))
    level = np.exp(np.interp(np.log(yards * YARD_M), np.log(here.range_m), least))
    worst = waters[int(np.argmin(levels[:, here.here]))]
    slope = seen(here, worst, block.tip).streaks_slope
    handled = block.handling
    often = handled.dips_per_min >= SELDOM_PER_MIN
    own = handled.ordinary_dip_s or 0.0
    return Yards(yards, level, notice.notice_s(level, slope, yards * YARD_M), own if often else 0.0)


def _choice(offered: Sequence[tuple[Change, AllAlong]]) -> tuple[Change, AllAlong]:
    """Return the least trouble that does on all stretches; else what is followed on the most of it.

    Where nothing is followed all along, the worst stretch decides nothing: it is lost with any tip.
    """
    for change, found in offered:
        if found.passes:
            return change, found
    sound = [one for one in offered if all(block.sound for block in one[1].blocks)] or list(offered)
    most = max(found.followed_yards for _, found in sound)
    good = [one for one in sound if one[1].followed_yards == most]
    best = max(found.level for _, found in good)
    return next(one for one in good if one[1].level >= ENOUGH * best)
