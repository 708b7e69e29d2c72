"""What can be done now, by the water, with the tip in hand: least trouble first."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace

from tipsight.advice.answer import Block, Change
from tipsight.advice.candidates import showing_lengths_mm
from tipsight.advice.close_look import close_look, is_sound
from tipsight.advice.facts import (
    Action,
    CarryLight,
    ComeCloser,
    Insert,
    Limit,
    OtherStretch,
    Pen,
    Show,
    Sleeve,
    StandHigher,
    Undo,
)
from tipsight.advice.retelling import shot_options, tip_options
from tipsight.advice.sighting import quick_levels
from tipsight.advice.swim import BRIGHT, DARK, PEN, Swim, family_of
from tipsight.inputs.case import Assumed, Band, LightStick, Stock, Tip, shown
from tipsight.inputs.items import words_of
from tipsight.sight import grades
from tipsight.units import YARD_M

TROUBLE: tuple[tuple[str, ...], ...] = (
    ("show more",),
    ("show less",),
    ("pen",),
    ("pen", "show more"),
    ("sleeve",),
    ("insert",),
    ("pen", "insert"),
)
"""What may be done, in the order of trouble (judgement); coming closer stands after all of it."""
PEN_CUTS = (1.0, 1 / 2, 1 / 3, 2 / 3)  # shares of what shows, from the top, that a pen may blacken
CLOSE_ENOUGH = 1.03
"""A level within this of the best is as good as the best, and the lesser trouble is taken."""
GAIN = 1.05
"""So many times as well seen, on some water, is worth doing something (judgement)."""
MUCH_FARTHER = 1.25
"""To come closer with another tip than the one advised, it must be kept in view so much farther."""
NEAREST_YD = 4  # nobody trots closer
PACED = Assumed("known", "paced")  # taken where the distance was told in paces
DUSK_DEG = 0.0  # below this sun a light stick is offered
LIGHT_STICK: LightStick = "3 x 23 mm"  # the one that is offered


@dataclass(frozen=True)
class Variant:
    """A tip that could be had by the water, with what makes it and the level it is seen at."""

    actions: tuple[Action, ...]
    tip: Tip
    level: float = 0.0
    sound: bool = True


def reset(tip: Tip, showing_mm: float) -> Tip:
    """Return the same tip set to show so much [mm]: what comes out of the water was wet before.

    Examples
    --------
    >>> reset(Tip(Stock("quill", 3.0), 20.0, wet_mm=10.0), 25.0).wet_mm
    5.0
    """
    return replace(tip, showing_mm=showing_mm, wet_mm=tip.showing_mm + tip.wet_mm - showing_mm)


def penned(tip: Tip, share: float) -> Tip:
    """Return the tip with its top blackened by a felt pen down to a share of what shows.

    Examples
    --------
    >>> old = Tip(Stock("quill", 3.0), 20.0, bands=(Band("white", 0, 20),))
    >>> [(band.paint, band.to_top_mm) for band in penned(old, 0.5).bands]
    [('felt pen', 10.0), ('white', 20)]
    """
    ink = float(round(share * tip.showing_mm))
    under = [
        Band(band.paint, max(band.from_top_mm, ink), max(band.to_top_mm, tip.showing_mm))
        if band is tip.bands[-1]
        else Band(band.paint, max(band.from_top_mm, ink), band.to_top_mm)
        for band in tip.bands
    ]
    return replace(
        tip, bands=(Band(PEN, 0.0, ink), *(b for b in under if b.to_top_mm > b.from_top_mm))
    )


def _inked(one: Variant, first: bool) -> list[Variant]:
    """Return a variant with each share of it inked as well, before or after what makes it."""
    found = []
    for share in PEN_CUTS:
        tip = penned(one.tip, share)
        ink = tip.bands[0].to_top_mm
        under = [b for b in shown(one.tip.bands, one.tip.showing_mm) if b.from_top_mm < ink]
        if all(family_of(band.paint) == "dark" for band in under):
            continue  # black on black gains nothing
        pen = Pen(ink, ink >= tip.showing_mm)
        found.append(Variant((pen, *one.actions) if first else (*one.actions, pen), tip))
    return found


def _lengths(swim: Swim, tip: Tip) -> list[float]:
    outside = tip.showing_mm + tip.wet_mm
    longest = min(outside, float(swim.longest_showing_mm(tip.stock.diameter_mm)))
    grid = showing_lengths_mm(max(longest, 2.0))
    return sorted(float(x) for x in grid if x <= longest + 1e-9)


def _makings(swim: Swim) -> list[Variant]:
    """Return every tip that can be had by the water without a glue pot, as yet unlooked at."""
    tip, box = swim.case.tip, swim.case.box
    as_it_is = Variant((), tip)
    lengths = _lengths(swim, tip)
    less = [Variant((Show(x, False),), reset(tip, x)) for x in lengths if x < tip.showing_mm]
    more = [Variant((Show(x, True),), reset(tip, x)) for x in lengths if x > tip.showing_mm]
    found = [*less, *more]
    if box.pen:
        found += [pen for one in (as_it_is, *more) for pen in _inked(one, first=True)]
    if box.sleeves and not tip.sleeve:
        found += [_sleeved(one.tip, paint) for one in (as_it_is, *more) for paint in box.paints]
    if tip.pulls_out:
        swapped = [
            _inserted(tip, stock, float(x))
            for stock in box.inserts
            for x in showing_lengths_mm(float(swim.longest_showing_mm(stock.diameter_mm)))
        ]
        found += swapped
        if box.pen:
            found += [pen for one in swapped for pen in _inked(one, first=False)]
    return found


def makeable(swim: Swim) -> list[Variant]:
    """Return every tip that can be had by the water, and whether it is sound; levels unlooked at.

    Those with which the float would sink or fall over are left out.
    """
    sound: dict[Tip, bool | None] = {}
    found = []
    for one in _makings(swim):
        bare = replace(one.tip, bands=())  # ink weighs nothing
        if bare not in sound:
            sound[bare] = is_sound(swim, bare)
        keeps = sound[bare]
        if keeps is not None:
            found.append(replace(one, sound=keeps))
    return found


def variants(swim: Swim) -> list[Variant]:
    """Return every tip that can be had by the water, with its level and whether it is sound."""
    found = makeable(swim)
    levels = quick_levels(swim, [one.tip for one in found])
    return [replace(one, level=level) for one, level in zip(found, levels, strict=True)]


def _sleeved(tip: Tip, paint: str) -> Variant:
    bands = (Band(paint, 0.0, tip.showing_mm),)
    worn = replace(tip, sleeve=True, seasons=0.0, undercoat=True, bands=bands)
    return Variant((Sleeve(paint, tip.showing_mm),), worn)


def _inserted(tip: Tip, stock: Stock, showing_mm: float) -> Variant:
    outside = max(tip.showing_mm + tip.wet_mm, showing_mm + tip.wet_mm)
    new = replace(
        tip,
        stock=stock,
        showing_mm=showing_mm,
        wet_mm=outside - showing_mm,
        bands=(Band(tip.bands[0].paint, 0.0, showing_mm),),
    )
    return Variant((Insert(stock, showing_mm),), new)


def kind_of(actions: tuple[Action, ...]) -> tuple[str, ...]:
    """Return which row of `TROUBLE` some actions belong to."""
    names = [
        ("show more" if one.more else "show less") if isinstance(one, Show) else str(one.do)
        for one in actions
    ]
    return tuple(sorted(names, key=lambda name: name != "pen"))


def best_of(among: list[Variant], wanted: float) -> Variant:
    """Return the variant of one kind to offer: the least that does, else the best seen."""
    enough = [v for v in among if v.level >= wanted]
    good = [v for v in enough if v.sound]
    if good:
        if kind_of(good[0].actions) == ("show less",):
            return min(good, key=lambda v: v.tip.showing_mm)
        least = min(v.tip.showing_mm for v in good)
        return max((v for v in good if v.tip.showing_mm == least), key=lambda v: v.level)
    if not enough:
        sound = [v for v in among if v.sound] or among
        best = max(v.level for v in sound)
        enough = [v for v in sound if v.level * CLOSE_ENOUGH >= best]
    return min(enough, key=lambda v: v.tip.showing_mm)


def best_level(swim: Swim) -> float:
    """Return the best level of all sound tips that can be had by the water, at a glance."""
    had = [Variant((), swim.case.tip, quick_levels(swim, [swim.case.tip])[0])]
    return max((one.level for one in (*had, *variants(swim)) if one.sound), default=0.0)


def undo_of(actions: tuple[Action, ...]) -> Undo:
    """Return whether what some actions do can be undone, the worst of them deciding."""
    if not actions:
        return Undo.NOTHING
    if any(isinstance(one, Pen) for one in actions):
        return Undo.PAINT_LOST
    return Undo.UNTIL_CUT if any(isinstance(one, Insert) for one in actions) else Undo.EASY


def changes(swim: Swim, in_hand: Block, *, moves: bool = True) -> tuple[Change, ...]:
    """Return what can be done by the water, least trouble first.

    The tip as it is comes first, then the best of each kind; to come closer only where nothing
    else is enough, and not without ``moves``: `lead` looks at none of them.
    """
    wanted = swim.case.wanted.level
    by_kind: dict[tuple[str, ...], list[Variant]] = {}
    for variant in variants(swim):
        by_kind.setdefault(kind_of(variant.actions), []).append(variant)
    found = [Change((), True, Undo.NOTHING, in_hand)]
    for kind in TROUBLE:
        if kind not in by_kind:
            continue
        best = best_of(by_kind[kind], wanted)
        if kind == ("show less",) and not _worth_less(in_hand, best, wanted):
            continue
        change = made(swim, best.actions, best.tip)
        if _gains(in_hand, change.block):
            found.append(change)
    if swim.case.box.light_stick and swim.case.light.sun_height_deg < DUSK_DEG:
        lit = replace(swim.case.tip, light_stick=LIGHT_STICK)
        found.append(made(swim, (CarryLight(LIGHT_STICK),), lit))
    if moves and not any(c.block.passes for c in found):
        found += [one for one in (_move(swim, found), *_elsewhere(swim, found)) if one is not None]
    return tuple(found)


def made(swim: Swim, actions: tuple[Action, ...], tip: Tip) -> Change:
    """Return what some actions make of a tip, looked at closely; Mistakes if the float sinks."""
    block = close_look(swim, tip)
    options = {**tip_options(swim.case, tip), **shot_options(block)}
    return Change(actions, True, undo_of(actions), block, options)


def _gains(before: Block, after: Block) -> bool:
    """Return whether anything is gained: better seen on some water, a limit kept, a finer tip."""
    mended = {f.limit for f in before.fails} - {f.limit for f in after.fails}
    waters = zip(before.visibility.by_background, after.visibility.by_background, strict=True)
    least = grades.limits()[1][1]
    better = any(new.level >= max(GAIN * old.level, least) for old, new in waters)
    finer = after.handling.sink_force_g < before.handling.sink_force_g / GAIN
    return better or bool(mended) or (after.passes and finer)


def _worth_less(in_hand: Block, less: Variant, wanted: float) -> bool:
    """Return whether to let a tip down: one too long always, one too stiff or spare while seen."""
    seen = less.level >= wanted and (in_hand.passes or in_hand.breaks(Limit.BITE))
    return less.sound and (in_hand.breaks(Limit.STRENGTH) or seen)


def _reach_m(change: Change) -> float:
    return change.block.visibility.goes_at_m or 0.0


def _move(swim: Swim, found: Iterable[Change]) -> Change | None:
    """Offer to come closer, with what is done anyway or with what reaches much farther."""
    sound = [c for c in found if c.block.sound]
    if not sound:
        return None
    best, farthest = lead(sound), max(sound, key=_reach_m)
    if _reach_m(best) * MUCH_FARTHER < _reach_m(farthest):
        best = farthest
    yards = int(_reach_m(best) / YARD_M)
    if yards < NEAREST_YD:
        return None
    # the distance is cut to whole yards, and a tip that only just holds may want one or two fewer
    for near in range(yards, max(yards - 3, NEAREST_YD - 1), -1):
        block = close_look(swim.at(near * YARD_M), best.block.tip)
        if block.passes:
            actions = (*best.actions, ComeCloser(near * YARD_M))
            options = {**best.options, "distance": f"{near} yd"}
            if PACED in swim.case.assumed:  # in yards it would no longer count as paced
                options["known"] = PACED.taken
            return Change(actions, True, undo_of(actions), block, options)
    return None


def _elsewhere(swim: Swim, found: Sequence[Change]) -> list[Change]:
    """Offer to stand higher or to fish another stretch, where that lifts the grade by itself."""
    best = lead(found)
    seen, offered = best.block.visibility, []
    case, tip = swim.case, best.block.tip
    names = {stretch.name for stretch in case.stretches}
    for other in (DARK, BRIGHT):
        if other.name not in names and not any(s.might_be for s in case.stretches):
            block = close_look(swim.on(other.name), tip)
            if block.passes and block.visibility.level > GAIN * seen.level:
                options = {**best.options, "behind": other.name}
                actions = (*best.actions, OtherStretch(other.name))
                offered.append(Change(actions, True, undo_of(actions), block, options))
    top = max(words_of("eye"), key=lambda word: word.number)
    if case.place.eye_height_m < top.number and best.block.sound:
        block = close_look(swim.from_height(top.number), tip)
        if block.visibility.grade != seen.grade and block.visibility.level > GAIN * seen.level:
            options = {**best.options, "eye": top.word}
            actions = (*best.actions, StandHigher(top.number))
            offered.append(Change(actions, True, undo_of(actions), block, options))
    return offered


def lead(offered: Iterable[Change]) -> Change:
    """Return what to do now: the least trouble that is enough, or else what is seen best.

    A level that is not seen is no better than another, so that nothing is done in vain on the
    worst water at the cost of a better one. ``offered`` has the least trouble first.
    """
    here = [c for c in offered if c.stays]
    enough = [c for c in here if c.block.passes]
    if enough:
        return enough[0]
    still = [c for c in here if not c.does(CarryLight)]
    broken = {fail.limit for fail in still[0].block.fails}  # by the tip as it is
    no_worse = [c for c in still if {fail.limit for fail in c.block.fails} <= broken]
    sound = [c for c in still if c.block.sound] or no_worse
    seen = [_seen(c) for c in sound]
    best = max(seen)
    return next(
        c
        for c, levels in zip(sound, seen, strict=True)
        if all(level * CLOSE_ENOUGH >= top for level, top in zip(levels, best, strict=True))
    )


def _seen(change: Change) -> list[float]:
    """Return its levels, the worst water first, those that are not seen all alike."""
    least = grades.limits()[1][1]
    return sorted(max(water.level, least) for water in change.block.visibility.by_background)
