"""Which of one's floats for one swim: each as it is, or with the least that can be done at the bank."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace

from tipsight.advice.answer import Change
from tipsight.advice.limits import ENOUGH
from tipsight.advice.on_the_spot import TROUBLE, Variant, best_of, kind_of, made, makeable
from tipsight.advice.sighting import quick_levels
from tipsight.advice.swim import Swim, finish_of
from tipsight.errors import Mistakes
from tipsight.inputs.case import Case, Tip
from tipsight.inputs.question import Question
from tipsight.inputs.settle import settle
from tipsight.load import budget
from tipsight.load.tips import showing_diameter_mm
from tipsight.season.served import bodied, kinds_of, settled, sound_by, told_of_shelf
from tipsight.season.swims import Fished
from tipsight.sight import grades

Progress = Callable[[int, int], None]

MOST_LOOKED_AT = 20
"""Kinds of float that are looked at closely."""


@dataclass(frozen=True)
class Ranked:
    """One float, as it is or as it would be at the bank."""

    float_: int
    """Its place among those that were asked about."""
    trouble: int | None
    """0 as it is, else the row of `on_the_spot.TROUBLE` from 1; None where nothing is enough."""
    level: float
    """At which its tip is seen on the worst of the waters; nothing where it cannot be fished."""
    sink_force_g: float
    change: Change | None = None
    """What is done and what comes of it; None where it was not looked at closely."""


@dataclass(frozen=True)
class Ranking:
    """All floats for one swim, the best first."""

    case: Case
    """The swim, with the float that its question tells of."""
    floats: tuple[Ranked, ...]

    @property
    def as_they_are(self) -> int:
        """How many pass untouched."""
        return sum(one.trouble == 0 for one in self.floats)

    @property
    def with_something_done(self) -> int:
        """How many pass with something done at the bank."""
        return sum(bool(one.trouble) for one in self.floats)


def rank(
    question: Question,
    floats: Sequence[Question],
    *,
    most: int = MOST_LOOKED_AT,
    progress: Progress | None = None,
) -> Ranking:
    """Return floats for a swim: those that pass first, then by least trouble, sight and bites.

    Parameters
    ----------
    question : Question
        The swim, and what one has at the bank (pen, sleeves, inserts, shot).
    floats : sequence of Question
        What is told of float and tip is taken of each; those that are alike are looked at once.
    most : int
        How many kinds are looked at closely.
    progress : callable, optional
        Told how many kinds are done, and of how many.

    Returns
    -------
    Ranking
        With the change of each that was looked at: what to do, shot on or off, how it is seen.

    Raises
    ------
    Mistakes
        With all that is wrong with the question, or with floats, by their place.

    Examples
    --------
    >>> pool = Question(distance="12 yd", behind="dark")
    >>> found = rank(pool, [Question(paint="black"), Question(paint="white")])
    >>> [one.float_ for one in found.floats], found.as_they_are
    ([1, 0], 1)
    """
    fished = Fished("", 1.0, question)
    case = settle(question)
    base = replace(case, box=replace(case.box, stock=()))  # nothing is fitted at the bank
    different, places, which = kinds_of(floats)
    bodies: list[Swim | None] = []
    for n, known in enumerate(settled(different, places, told_of_shelf(fished))):
        bodies.append(bodied(base, known))
        if progress:
            progress(n + 1, len(different))
    kinds = _at_best([one for one in bodies if one is not None])
    ranked = [
        Ranked(n, None, 0.0, float("inf")) if bodies[k] is None else _as(n, kinds[id(bodies[k])])
        for n, k in enumerate(which)
    ]
    ranked.sort(key=_order)
    return Ranking(case, tuple(_looked_at(ranked, bodies, which, kinds, most)))


_Best = tuple[int | None, Variant, float]
"""How much trouble, the tip, and what sinks it [gf]."""


def _as(n: int, best: _Best) -> Ranked:
    trouble, variant, force_g = best
    return Ranked(n, trouble, variant.level, force_g)


def _order(one: Ranked) -> tuple[bool, int, int, float, float, int]:
    """Return what floats are sorted by; of one grade the one that is sunk more easily is better."""
    grade = sum(one.level >= least for _, least in grades.limits())
    trouble = one.trouble or 0
    return one.trouble is None, trouble, -grade, one.sink_force_g, -one.level, one.float_


def _at_best(bodies: Sequence[Swim]) -> dict[int, _Best]:
    """Return the best of each float: as it is, or the least trouble that is enough."""
    if not bodies:
        return {}
    tips = [one.case.tip for one in bodies]
    found: dict[int, _Best] = {}
    short: list[Swim] = []
    for one, level in zip(bodies, _levels(bodies[0], tips), strict=True):
        sound = sound_by(one) == 0.0
        as_it_is = Variant((), one.case.tip, level, sound)
        passes = sound and level >= ENOUGH * one.case.wanted.level
        found[id(one)] = (0 if passes else None, as_it_is, _force_g(one, one.case.tip))
        if not passes:
            short.append(one)
    more = [(one, variant) for one in short for variant in makeable(one)]
    levels = _levels(bodies[0], [variant.tip for _, variant in more]) if more else []
    had: dict[int, list[Variant]] = {}
    for (one, variant), level in zip(more, levels, strict=True):
        had.setdefault(id(one), []).append(replace(variant, level=level))
    for one in short:
        found[id(one)] = _helped(one, found[id(one)], had.get(id(one), []))
    return found


def _helped(here: Swim, as_it_is: _Best, had: Sequence[Variant]) -> _Best:
    """Return the least trouble that is enough, or what is seen best of all that is sound."""
    wanted = here.case.wanted.level
    by_kind: dict[tuple[str, ...], list[Variant]] = {}
    for variant in had:
        by_kind.setdefault(kind_of(variant.actions), []).append(variant)
    best = as_it_is[1]
    for n, kind in enumerate(TROUBLE, 1):
        if kind not in by_kind:
            continue
        one = best_of(by_kind[kind], wanted)
        if one.sound and one.level >= ENOUGH * wanted:
            return n, one, _force_g(here, one.tip)
        if (one.sound, one.level) > (best.sound, best.level):
            best = one
    return None, best, _force_g(here, best.tip)


def _force_g(here: Swim, tip: Tip) -> float:
    warm = here.case.stream.temperature_c
    return float(budget.sink_force_g(showing_diameter_mm(tip), tip.showing_mm, warm))


def _lit(here: Swim, tips: Sequence[Tip]) -> Swim:
    """Return a swim on waters that are lit for all paints of some tips, whoever's they are."""
    worn = dict.fromkeys(finish_of(tip, band.paint) for tip in tips for band in tip.bands)
    return here.wearing(tuple(worn))


def _levels(here: Swim, tips: Sequence[Tip]) -> list[float]:
    """Return the level of each tip; it hangs on no float, so tips that look alike are seen once."""
    alike = {tip: replace(tip, wet_mm=0.0, glued_mm=0.0, pulls_out=False) for tip in tips}
    seen = list(dict.fromkeys(alike.values()))
    level = dict(zip(seen, quick_levels(_lit(here, seen), seen), strict=True))
    return [level[alike[tip]] for tip in tips]


def _looked_at(
    ranked: Sequence[Ranked],
    bodies: Sequence[Swim | None],
    which: Sequence[int],
    kinds: dict[int, _Best],
    most: int,
) -> list[Ranked]:
    """Return floats with the first of them looked at closely, and what that takes from them taken."""
    first = list(dict.fromkeys(which[one.float_] for one in ranked))[:most]
    known = {k: body for k in first if (body := bodies[k]) is not None}
    if not known:
        return list(ranked)
    tips = [kinds[id(body)][1].tip for body in known.values()]
    lit = _lit(next(iter(known.values())), tips)
    changes: dict[int, Change] = {}
    for k, body in known.items():
        best = kinds[id(body)][1]
        try:
            changes[k] = made(body.beside(lit), best.actions, best.tip)
        except Mistakes:
            continue
    found = []
    for one in ranked:
        change = changes.get(which[one.float_])
        trouble = one.trouble if change is None or change.block.passes else None
        found.append(replace(one, change=change, trouble=trouble))
    return sorted(found, key=_order)
