"""Which float serves which swim: passes as it is, or with what can be done at the bank."""

from collections.abc import Callable, Iterable, Iterator, Sequence
from concurrent.futures import Executor
from dataclasses import dataclass, replace
from functools import partial
from typing import Any, TypeVar

import numpy as np
from numpy.typing import ArrayLike, NDArray

from tipsight import tables
from tipsight.advice import limits, on_the_spot
from tipsight.advice.close_look import close_look
from tipsight.advice.facts import Failure, Limit
from tipsight.advice.limits import Measures, glued_outside_mm
from tipsight.advice.sighting import quick_levels
from tipsight.advice.swim import Swim, finish_of, swim
from tipsight.afloat import lean
from tipsight.errors import Mistake, Mistakes
from tipsight.inputs.case import BuiltFloat, Case, Tip, WeighedFloat
from tipsight.inputs.items import ITEMS
from tipsight.inputs.question import Question
from tipsight.inputs.settle import settle
from tipsight.load import budget, usual
from tipsight.load.tips import showing_diameter_mm
from tipsight.season.swims import Fished, told_of_float

Mask = NDArray[np.bool_]
Array = NDArray[np.float64]
T = TypeVar("T")
Progress = Callable[[int, int], None]

Known = tuple[WeighedFloat | BuiltFloat, Tip, Tip]
"""A float in numbers, with the tip that it was weighed with and the tip that it has."""
Alone = tuple[Known, ...]
TOGETHER = 16
"""Floats that one worker takes at a time; fewer than the bodies that `hull` keeps in mind."""
_NOT_LOOKED_AT = dict.fromkeys(
    ("ride_margin", "sink_force_g", "pull_g", "diameter_mm", "showing_mm", "glued_mm"), np.nan
)
SHELF = "have"
"""The section that tells what the angler has."""
SINKS = np.inf
"""How far a float is from serving with which the sums end: it sinks, or its tip finds no room."""
MOST_SHARE = 1.0 + 1e-9
"""Of the shot that is usual at the most: a float that takes more is heavy for its swim."""


@dataclass(frozen=True)
class Served:
    """Who serves what, floats by swims."""

    passes: Mask
    """As it is, shape (F, S)."""
    with_bank: Mask
    """As it is or with what can be done at the bank; as ``passes`` where that was not asked."""
    short_by: Array
    """How far from passing as it is: the sum of the shares by which limits are missed, each 1 at
    the most; nothing where it passes, without end where it cannot be fished at all."""
    level: Array
    """At which its tip is seen as it is on the worst of the waters, wherever it would sink, too."""
    shot_share: Array
    """The shot that it takes, as a share of the most that is usual there; not a number if it sinks."""


def served(
    floats: Sequence[Question],
    swims: Sequence[Fished],
    *,
    with_bank: bool = False,
    executor: Executor | None = None,
    progress: Progress | None = None,
) -> Served:
    """Return which float serves which swim.

    Parameters
    ----------
    floats : sequence of Question
        What is told of float and tip is taken of each; those that are alike are looked at once.
    swims : sequence of Fished
        The season.
    with_bank : bool
        Whether to look at what can be done at the bank, where a float does not pass as it is.
    executor : concurrent.futures.Executor, optional
        Looks at the swims side by side; own tables go with them.
    progress : callable, optional
        Told how many swims are done, and of how many.

    Returns
    -------
    Served
        Arrays of floats by swims.

    Raises
    ------
    Mistakes
        With all floats that are told wrongly, by their place.

    Examples
    --------
    >>> dark = Fished("pool", 1.0, Question(distance="12 yd", behind="dark"))
    >>> served([Question(paint="white"), Question(paint="black")], [dark]).passes.tolist()
    [[True], [False]]
    """
    different, kinds, which = kinds_of(floats)
    alone = [settled(different, kinds, told_of_shelf(one)) for one in swims]
    own, starts = tables.in_use(), range(0, len(kinds), TOGETHER)
    parts = [[one[n : n + TOGETHER] for one in alone] for n in starts]
    steps = len(parts) + (2 if with_bank else 1) * len(swims)
    spread = map if executor is None else executor.map
    counted = _Counted(progress, steps)
    # floats outside and swims inside, as a float is worked out but once; what is seen of all floats
    # hangs on the swim alone
    sound = counted(spread(partial(_unsound_by, own, list(swims)), parts))
    seen = counted(spread(partial(_unseen_by, own), list(swims), alone))
    short, level, share = np.zeros((3, len(kinds), len(swims)))
    if kinds and swims:
        short, share = np.moveaxis(np.concatenate(list(sound)), -1, 0)
        unseen, level = np.moveaxis(np.stack(list(seen), axis=1), -1, 0)
        short = short + unseen
    bank = short == 0.0
    if with_bank:
        more = spread(partial(_helped, own, different), list(swims), list(short.T))
        for s, helped in enumerate(counted(more)):
            bank[:, s] = helped
    return Served((short == 0.0)[which], bank[which], short[which], level[which], share[which])


def kinds_of(floats: Sequence[Question]) -> tuple[tuple[Question, ...], tuple[int, ...], list[int]]:
    """Return floats that differ, the place of the first of each, and which of them each float is."""
    told = [told_of_float(one) for one in floats]
    names = [repr(sorted(one.items())) for one in told]
    first = {name: n for n, name in reversed(list(enumerate(names)))}
    places = sorted(first.values())
    order = {n: at for at, n in enumerate(places)}
    different = tuple(Question().with_options(**told[n]) for n in places)
    return different, tuple(places), [order[first[name]] for name in names]


class _Counted:
    """Tells how many steps of several rounds of work are done."""

    def __init__(self, progress: Progress | None, steps: int) -> None:
        self.progress, self.steps, self.done = progress, steps, 0

    def __call__(self, work: Iterable[T]) -> Iterator[T]:
        for one in work:
            self.done += 1
            if self.progress:
                self.progress(self.done, self.steps)
            yield one


def told_of_shelf(fished: Fished) -> tuple[tuple[str, Any], ...]:
    """Return what a swim tells of what the angler has, on which a float's load may hang."""
    told = fished.question.told()
    return tuple((key, value) for key, value in told.items() if ITEMS[key].section == SHELF)


@tables.lately(1)
def settled(
    floats: tuple[Question, ...], places: tuple[int, ...], shelf: tuple[tuple[str, Any], ...]
) -> Alone:
    """Return floats in numbers, each with the tip that it was weighed with and its tip now."""
    found, mistakes = [], []
    for n, one in zip(places, floats, strict=True):
        try:
            case = settle(one.with_options(**dict(shelf)))
            found.append((case.float_, case.weighed_tip, case.tip))
        except Mistakes as wrong:
            mistakes += [(n, each) for each in wrong.mistakes]
    if mistakes:
        raise Mistakes(
            Mistake(f"float {n + 1}: {m.item}", m.said, m.allowed, m.example) for n, m in mistakes
        )
    return tuple(found)


def _helped(
    own: tables.Tables | None, floats: tuple[Question, ...], fished: Fished, short: Array
) -> Mask:
    """Return which floats serve one swim with what can be done at the bank."""
    with tables.using(own):
        passes = short == 0.0
        for n in np.flatnonzero(~passes & np.isfinite(short)):
            passes[n] = at_the_bank(fished.with_float(floats[n]))
        return np.asarray(passes)


def at_the_bank(question: Question) -> bool:
    """Return whether something can be done at the bank, without moving, so that the float passes."""
    try:
        here = swim(settle(question))
        in_hand = close_look(here, here.case.tip)
    except Mistakes:
        return False
    offered = on_the_spot.changes(here, in_hand, moves=False)
    return any(one.stays and one.block.passes for one in offered)


def _base(fished: Fished) -> Case:
    """Return a swim in numbers, without the stock and the paints that nothing is asked about."""
    case = settle(fished.question)
    return replace(case, box=replace(case.box, stock=(), inserts=(), paints=(), sleeves=False))


def bodied(base: Case, one: Known) -> Swim | None:
    """Return a swim with a float in it, its waters as yet unlit; None for one that sinks."""
    float_, weighed_tip, tip = one
    try:
        return swim(replace(base, float_=float_, weighed_tip=weighed_tip, tip=tip))
    except Mistakes:
        return None


def _unsound_by(
    own: tables.Tables | None, swims: Sequence[Fished], alone: Sequence[Alone]
) -> Array:
    """Return how far a few floats miss all limits but sight, and the share of usual shot (F, S, 2)."""
    with tables.using(own):
        bases = [_base(one) for one in swims]
        return np.array(
            [
                [_sound_and_share(bodied(base, alone[s][n])) for s, base in enumerate(bases)]
                for n in range(len(alone[0]))
            ]
        )


def _sound_and_share(here: Swim | None) -> tuple[float, float]:
    told = measured(here, here.case.tip) if here else None
    if here is None or told is None:
        return SINKS, np.nan
    return _sound_by(here, told), float(shot_share(here, told.pull_g))


def sound_by(here: Swim | None) -> float:
    """Return how far a float as it is misses all limits but sight; nothing if it keeps them."""
    return _sound_and_share(here)[0]


def _sound_by(here: Swim, told: Measures) -> float:
    return sum(map(_missed_by, limits.failures(here, told)), 0.0)


def shot_share(here: Swim, pull_g: ArrayLike) -> Array:
    """Return the shot in air that a pull stands for, as a share of the most that is usual here."""
    stream = here.case.stream
    most_g = usual.most_shot_g(stream.depth_m, stream.pace_m_s)
    return np.asarray(np.asarray(pull_g) / here.wet_share / most_g)


def _missed_by(fail: Failure) -> float:
    if fail.as_it_is:
        return 0.0
    return min(abs(fail.value - fail.allowed) / max(abs(fail.allowed), 1e-9), 1.0)


def _unseen_by(own: tables.Tables | None, fished: Fished, alone: Alone) -> Array:
    """Return how far each tip is from being seen well enough in one swim, and its level (F, 2)."""
    with tables.using(own):
        base = _base(fished)
        here = next((found for one in alone if (found := bodied(base, one))), None)
        if here is None:
            return np.zeros((len(alone), 2))
        tips = [tip for *_, tip in alone]
        finishes = dict.fromkeys(finish_of(tip, band.paint) for tip in tips for band in tip.bands)
        levels = quick_levels(here.wearing(tuple(finishes)), tips)
        sight = limits.BY_LIMIT[Limit.SIGHT]
        told = (Measures(level=level, **_NOT_LOOKED_AT) for level in levels)
        unseen = [sum(map(_missed_by, sight.failures(here, one))) for one in told]
        return np.column_stack([unseen, levels])


def measured(here: Swim, tip: Tip) -> Measures | None:
    """Return what all limits but sight look at of the tip in hand; None if the float sinks."""
    painted_mm, temperature_c = showing_diameter_mm(tip), here.case.stream.temperature_c
    try:
        pull_g = budget.pull_g(here.hull, tip, temperature_c)
        rigged = here.rig if tip == here.case.weighed_tip else here.rigged(tip)
    except Mistakes:
        return None
    here.rigs[tip] = rigged
    return Measures(
        ride_margin=float(here.ride_margin(painted_mm, tip.showing_mm)[0]),
        sink_force_g=float(budget.sink_force_g(painted_mm, tip.showing_mm, temperature_c)),
        pull_g=pull_g,
        diameter_mm=tip.stock.diameter_mm,
        showing_mm=tip.showing_mm,
        glued_mm=tip.glued_mm,
        outside_mm=glued_outside_mm(tip),
        uprightness=float(lean.uprightness(rigged, painted_mm, temperature_c)),
    )
