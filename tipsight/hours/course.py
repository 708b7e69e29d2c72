"""How the tips of one swim are seen as the light changes, and which to have on when."""

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass, replace
from datetime import datetime

import numpy as np
from numpy.typing import NDArray

from tipsight.advice.advise import advise
from tipsight.advice.answer import Change
from tipsight.advice.choose import asked
from tipsight.advice.facts import CarryLight, Undo
from tipsight.advice.limits import ENOUGH
from tipsight.advice.sighting import quick_levels
from tipsight.advice.swim import Swim, swim
from tipsight.hours.moments import QUARTER, Moment
from tipsight.inputs.case import Case, Tip
from tipsight.inputs.question import Question
from tipsight.inputs.settle import settle
from tipsight.scene.setting import in_shade
from tipsight.sight import grades

Array = NDArray[np.float64]

KEY_DUSK_DEG = -6.0
"""Until the sun stands so low, as civil twilight ends, is asked what tip to have on (judgement)."""
NEAR_LANE_DEG = 30.0
"""Nearer to the line of sight, the sun may lay its lane there: what to have on is asked (judgement)."""
MOST_OPTIONS = 8


@dataclass(frozen=True)
class Quarter:
    """The light of one quarter of an hour, and how well each tip is then seen."""

    moment: Moment
    bearing_deg: float
    """Of the sun from the line of sight: 0 ahead, 180 behind."""
    lane: bool
    """Whether on some water the sun's sparkles hide more than all the ripple's streaks do."""
    shade: bool
    """Whether the bank's shadow lies on the float."""
    levels: tuple[tuple[float, ...], ...]
    """Of each tip on each water behind it [-]."""

    @property
    def worst(self) -> tuple[float, ...]:
        """The level of each tip on the water that shows it least."""
        return tuple(min(each) for each in self.levels)


@dataclass(frozen=True)
class Spell:
    """A time with one tip on, and the worst and best level in it; no tip: nothing is then seen."""

    option: int | None
    start: datetime
    end: datetime
    low: float
    high: float


@dataclass(frozen=True)
class Course:
    """One day on one swim under one sky."""

    case: Case
    """At the first of its moments."""
    looking_deg: float
    """From north through east."""
    options: tuple[Change, ...]
    """Tips that may be on: the one in hand first, then what can be done by the water, then fitted."""
    waters: tuple[str, ...]
    quarters: tuple[Quarter, ...]
    at_the_bank: tuple[Spell, ...]
    """With what can be done by the water."""
    at_the_bench: tuple[Spell, ...]
    """With all tips, some of which have to be made before."""

    @property
    def worn(self) -> tuple[int, ...]:
        """The tips that are ever on, by number, and the one in hand."""
        every = {one.option for one in (*self.at_the_bank, *self.at_the_bench)}
        return tuple(sorted({0} | {one for one in every if one is not None}))

    def spells(self, which: str) -> tuple[tuple[datetime, datetime], ...]:
        """Return when the ``lane`` or the ``shade`` lies there, each from when to when."""
        found: list[tuple[datetime, datetime]] = []
        for one in self.quarters:
            if not getattr(one, which):
                continue
            if found and one.moment.when - found[-1][1] <= QUARTER:
                found[-1] = (found[-1][0], one.moment.when)
            else:
                found.append((one.moment.when, one.moment.when))
        return tuple(found)

    def last(self, level: float, *, bench: bool) -> datetime | None:
        """Return when what is on then last reaches a level, None if it never does."""
        found = None
        for spell in self.at_the_bench if bench else self.at_the_bank:
            for one in self.quarters:
                on = spell.option is not None and spell.start <= one.moment.when <= spell.end
                if on and one.worst[spell.option or 0] >= level:
                    found = one.moment.when
        return found


def _allowed(options: Sequence[Change], *, bench: bool) -> list[int]:
    return [n for n, one in enumerate(options) if one.at_the_bank or bench]


def _at(
    question: Question, moment: Moment, place: tuple[float, float], looking_deg: float
) -> Question:
    """Return the question as it stands at a moment, asked as a person would ask it."""
    at = f"{place[0]:.5f}, {place[1]:.5f}"
    when = f"{moment.when:%Y-%m-%d %H:%M %z}"
    plain = replace(question, sun_height=None, shadow=None, sun_is=None, sun_bearing=None)
    return replace(plain, when=f"{when[:-2]}:{when[-2:]}", at=at, looking=f"{looking_deg:g}")


def _bearing_deg(moment: Moment, looking_deg: float) -> float:
    return abs((moment.sun_azimuth_deg - looking_deg + 180.0) % 360.0 - 180.0)


def _keys(moments: Sequence[Moment], looking_deg: float) -> list[Moment]:
    """Return the few moments at which is asked what to have on: early, midway, late, into the sun."""
    day = [one for one in moments if one.sun_height_deg > KEY_DUSK_DEG] or list(moments)
    found = [day[0], day[len(day) // 2], day[-1]]
    up = [one for one in day if one.sun_height_deg > 0.0]
    if up:
        nearest = min(up, key=lambda one: _bearing_deg(one, looking_deg))
        if _bearing_deg(nearest, looking_deg) <= NEAR_LANE_DEG:
            found.append(nearest)
    return list(dict.fromkeys(found))


def _options(answers: Iterable[tuple[Change, ...]]) -> tuple[Change, ...]:
    """Return each tip once, those by the water before those of the bench, the tip in hand first."""
    every = [change for changes in answers for change in changes]
    by_tip: dict[Tip, Change] = {}
    for change in sorted(every, key=lambda one: (not one.at_the_bank, len(one.actions))):
        by_tip.setdefault(change.block.tip, change)
    return tuple(by_tip.values())[:MOST_OPTIONS]


def plan(worst: Array, wish: float) -> list[int | None]:
    """Return which tip to have on at each moment, with as few changes as there can be.

    Parameters
    ----------
    worst : numpy.ndarray
        Level of each tip at each moment, shape (moments, tips) [-].
    wish : float
        Level that is wanted [-].

    Returns
    -------
    list of int or None
        None where none is seen. At each moment the tip gives 0.95 of what `choose.asked` asks
        there; the one that does so longest is kept on, of equals the first. That makes the fewest
        changes, as no other choice lasts longer.

    Examples
    --------
    >>> plan(np.array([[6.0, 5.5], [3.0, 5.2], [0.2, 0.9]]), 5.0)
    [1, 1, None]
    """
    best = worst.max(axis=1, initial=0.0)
    need = np.array([ENOUGH * asked(wish, float(level)) for level in best])
    seen = best >= grades.limits()[1][1]
    enough = worst >= need[:, None]
    found: list[int | None] = []
    while len(found) < len(worst):
        now = len(found)
        if not seen[now]:
            found.append(None)
            continue
        lasts = [_run(enough[now:, option] & seen[now:]) for option in range(worst.shape[1])]
        option = int(np.argmax(lasts))
        found += [option] * lasts[option]
    return found


def _run(true: NDArray[np.bool_]) -> int:
    """Return how many are true from the first on."""
    return int(true.size if true.all() else np.argmin(true))


def _spells(quarters: Sequence[Quarter], which: Sequence[int], wish: float) -> tuple[Spell, ...]:
    worst = np.array([[one.worst[option] for option in which] for one in quarters])
    found: list[Spell] = []
    for one, pick, levels in zip(quarters, plan(worst, wish), worst, strict=True):
        option = None if pick is None else which[pick]
        level = float(levels.max() if pick is None else levels[pick])
        when = one.moment.when
        if found and found[-1].option == option:
            last = found[-1]
            found[-1] = replace(
                last, end=when, low=min(last.low, level), high=max(last.high, level)
            )
        else:
            found.append(Spell(option, when, when, level, level))
    return tuple(found)


def _waters(here: Swim) -> tuple[str, ...]:
    """Return the stretches that are judged, each once whatever it may be."""
    return tuple(dict.fromkeys(here.waters[key].name for key in here.judged))


def _quarter(here: Swim, moment: Moment, bearing_deg: float, tips: Sequence[Change]) -> Quarter:
    case = here.case
    levels = [quick_levels(here.on(name), [one.block.tip for one in tips]) for name in _waters(here)]
    streaks = [here.waters[key].clutter[here.here] for key in here.judged]
    lit = case.light.beam and case.light.sun_height_deg > 0.0
    return Quarter(
        moment,
        bearing_deg,
        lane=any(one.is_sparkling for one in streaks),
        shade=lit and all(in_shade(case.light, stretch) for stretch in case.stretches),
        levels=tuple(zip(*levels, strict=True)),
    )


def course(
    question: Question,
    moments: Sequence[Moment],
    place: tuple[float, float],
    looking_deg: float,
    tell: Callable[[int, int], None] = lambda done, of: None,
) -> Course:
    """Return a day on one swim: the light, how each tip is seen in it, which to have on when.

    At each moment the question is the same as if it were put then: same sky, other sun. What to
    have on is asked early, midway, late and when the sun stands nearest to the line of sight; all
    tips so found are followed through the day.

    Parameters
    ----------
    question : Question
        The swim and the float; what it says of the sun is left aside.
    moments : sequence of Moment
        One at the least (else `ValueError`), from `moments.moments`.
    place : tuple of float
        Latitude and longitude [deg].
    looking_deg : float
        Where he looks, from north through east [deg].
    tell : callable, optional
        Is told how many of how many moments are done.

    Raises
    ------
    Mistakes
        With everything in the question that is to be mended.
    """
    if not moments:
        raise ValueError("a course needs a moment with light")
    each = []
    for key in _keys(moments, looking_deg):
        answer = advise(_at(question, key, place, looking_deg))
        hand = Change((), True, Undo.NOTHING, answer.tip_in_hand)
        bench = (answer.at_the_bench,) if answer.at_the_bench else ()
        offered = [one for one in (hand, answer.at_the_bank, *bench) if one.stays]
        each.append(tuple(one for one in offered if not one.does(CarryLight)))
    options = _options(each)
    quarters, first = [], None
    for done, moment in enumerate(moments, 1):
        here = swim(settle(_at(question, moment, place, looking_deg)))
        first = first or here
        quarters.append(_quarter(here, moment, _bearing_deg(moment, looking_deg), options))
        tell(done, len(moments))
    assert first is not None  # noqa: S101 - there is a moment
    wish = first.case.wanted.level
    bank, bench_ = (_allowed(options, bench=one) for one in (False, True))
    return Course(
        first.case,
        looking_deg,
        options,
        _waters(first),
        tuple(quarters),
        _spells(quarters, bank, wish),
        _spells(quarters, bench_, wish),
    )
