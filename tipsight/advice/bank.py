"""What can be done now, at the bank, with the tip in hand: least trouble first."""

from collections.abc import Iterable
from dataclasses import dataclass, replace

from tipsight.advice.answer import Block, Change
from tipsight.advice.candidates import showing_lengths_mm
from tipsight.advice.examine import examine, quick_levels
from tipsight.advice.limits import quick_fails
from tipsight.advice.options import tip_options
from tipsight.advice.swim import PEN, Swim
from tipsight.inputs.case import Band, Stock, Tip
from tipsight.sight import grades
from tipsight.units import YARD_M

TROUBLE = (
    "as it is",
    "show more",
    "show less",
    "pen",
    "pen and show more",
    "sleeve",
    "insert",
    "pen and insert",
    "move",
)
"""The order of trouble (judgement)."""
PEN_CUTS = (1.0, 1 / 2, 1 / 3, 2 / 3)
"""Shares of the showing part, from the top, that a pen may blacken."""
CLOSE_ENOUGH = 1.03
"""A level within this of the best is as good as the best, and the lesser trouble is taken."""
MUCH_FARTHER = 1.25
"""To come closer with another tip than the one advised, it must be kept in view so much farther."""
NEAREST_YD = 4
"""Nobody trots closer."""
DUSK_DEG = 0.0
"""Below this sun a light stick is offered."""

UNDO = {
    "as it is": "nothing to undo",
    "show more": "can be undone",
    "show less": "can be undone",
    "pen": "ends the paint beneath for the day",
    "pen and show more": "the pen ends the paint beneath for the day",
    "sleeve": "can be undone",
    "insert": "can be undone while nothing is cut",
    "pen and insert": "the pen ends the insert's paint for the day",
    "light stick": "can be undone",
    "move": "can be undone",
}


@dataclass(frozen=True)
class Variant:
    """A tip that could be had at the bank, with the level it would be seen at."""

    kind: str
    tip: Tip
    level: float
    fails: bool


def reset(tip: Tip, showing_mm: float) -> Tip:
    """Return the same tip set to show so much: what comes out of the water was wet before.

    Parameters
    ----------
    tip : Tip
        The tip as it stands.
    showing_mm : float
        Length to show [mm].

    Returns
    -------
    Tip
        The same stick, higher or lower in the water.

    Examples
    --------
    >>> reset(Tip(Stock("quill", 3.0), 20.0, wet_mm=10.0), 25.0).wet_mm
    5.0
    """
    return replace(tip, showing_mm=showing_mm, wet_mm=tip.showing_mm + tip.wet_mm - showing_mm)


def penned(tip: Tip, share: float) -> Tip:
    """Return the tip with its top blackened by a felt pen down to a share of what shows.

    Parameters
    ----------
    tip : Tip
        The tip as it stands.
    share : float
        Part of the showing length, from the top [-].

    Returns
    -------
    Tip
        The same tip, inked.

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


def _lengths(swim: Swim, tip: Tip) -> list[float]:
    outside = tip.showing_mm + tip.wet_mm
    longest = min(outside, swim.longest_showing_mm(tip.stock.diameter_mm))
    grid = showing_lengths_mm(max(longest, 2.0))
    return sorted(float(x) for x in grid if x <= longest + 1e-9)


def variants(swim: Swim) -> list[Variant]:
    """Return every tip that can be had at the bank without a glue pot."""
    tip, box = swim.case.tip, swim.case.box
    found: list[tuple[str, Tip]] = [("as it is", tip)]
    lengths = _lengths(swim, tip)
    more = [length for length in lengths if length > tip.showing_mm]
    found += [("show less", reset(tip, x)) for x in lengths if x < tip.showing_mm]
    found += [("show more", reset(tip, x)) for x in more]
    if box.pen:
        found += [("pen", penned(tip, s)) for s in PEN_CUTS]
        found += [("pen and show more", penned(reset(tip, x), s)) for x in more for s in PEN_CUTS]
    if box.sleeves and not tip.sleeve:
        found += [
            ("sleeve", _sleeved(reset(tip, x), paint))
            for x in (tip.showing_mm, *more)
            for paint in box.paints
        ]
    if tip.pulls_out:
        swapped = [
            _insert(swim, tip, stock, x)
            for stock in box.inserts
            for x in showing_lengths_mm(swim.longest_showing_mm(stock.diameter_mm))
        ]
        found += [("insert", one) for one in swapped]
        if box.pen:
            found += [("pen and insert", penned(one, s)) for one in swapped for s in PEN_CUTS]
    levels = quick_levels(swim, [one for _, one in found])
    fails: dict[Tip, bool] = {}
    told = []
    for (kind, one), level in zip(found, levels, strict=True):
        bare = replace(one, bands=())  # ink weighs nothing
        if bare not in fails:
            fails[bare] = quick_fails(swim, one)
        told.append(Variant(kind, one, level, fails[bare]))
    return told


def _sleeved(tip: Tip, paint: str) -> Tip:
    return replace(
        tip, sleeve=True, seasons=0.0, undercoat=True, bands=(Band(paint, 0.0, tip.showing_mm),)
    )


def _insert(swim: Swim, tip: Tip, stock: Stock, showing_mm: float) -> Tip:
    outside = max(tip.showing_mm + tip.wet_mm, showing_mm + tip.wet_mm)
    return replace(
        tip,
        stock=stock,
        showing_mm=showing_mm,
        wet_mm=outside - showing_mm,
        bands=(Band(tip.bands[0].paint, 0.0, showing_mm),),
    )


def _best(kind: str, among: list[Variant], wanted: float) -> Variant:
    """Return the variant of one kind to offer: the least that does, else the best seen."""
    good = [v for v in among if v.level >= wanted and not v.fails]
    if not good:
        enough = [v for v in among if v.level >= wanted]
        if enough:
            return min(enough, key=lambda v: v.tip.showing_mm)
        sound = [v for v in among if not v.fails] or among
        best = max(v.level for v in sound)
        return min(
            (v for v in sound if v.level * CLOSE_ENOUGH >= best), key=lambda v: v.tip.showing_mm
        )
    if kind == "show less":
        return min(good, key=lambda v: v.tip.showing_mm)
    least = min(v.tip.showing_mm for v in good)
    return max((v for v in good if v.tip.showing_mm == least), key=lambda v: v.level)


def changes(swim: Swim, in_hand: Block) -> tuple[Change, ...]:
    """Return what can be done at the bank, least trouble first.

    Parameters
    ----------
    swim : Swim
        The swim worked out once.
    in_hand : Block
        The tip as it is.

    Returns
    -------
    tuple of Change
        The tip as it is first; the best of each kind; a move only where nothing else is enough.
    """
    wanted = swim.case.wanted.level
    by_kind: dict[str, list[Variant]] = {}
    for variant in variants(swim):
        by_kind.setdefault(variant.kind, []).append(variant)
    found = [Change("as it is", True, "leave it as it is", UNDO["as it is"], in_hand, {})]
    for kind in TROUBLE[1:-1]:
        if kind not in by_kind:
            continue
        best = _best(kind, by_kind[kind], wanted)
        if kind == "show less" and not _worth_less(in_hand, best, wanted):
            continue
        block = examine(swim, best.tip)
        found.append(
            Change(
                kind,
                True,
                _words(kind, block),
                UNDO[kind],
                block,
                tip_options(swim.case, best.tip),
            )
        )
    if swim.case.box.light_stick and swim.case.light.sun_height_deg < DUSK_DEG:
        found.append(_light_stick(swim))
    if not any(c.block.passes for c in found):
        move = _move(swim, found)
        if move is not None:
            found.append(move)
    return tuple(found)


def _worth_less(in_hand: Block, less: Variant, wanted: float) -> bool:
    """Return whether to let a tip down: one too long always, one too stiff or spare while seen."""
    too_long = _fails(in_hand, "strength")
    seen = less.level >= wanted and (in_hand.passes or _fails(in_hand, "bite"))
    return not less.fails and (too_long or seen)


def _fails(block: Block, limit: str) -> bool:
    return any(fail.startswith(limit) for fail in block.fails)


def _words(kind: str, block: Block) -> str:
    tip = block.tip
    shot = f": {block.load.change_words}" if block.load.change_words else ""
    ink = f"{tip.bands[0].to_top_mm:g} mm" if tip.bands else ""
    whole = bool(tip.bands) and tip.bands[0].to_top_mm >= tip.showing_mm
    pen = "pen all that shows black" if whole else f"pen the top {ink} black"
    insert = f"swap in the {tip.stock.diameter_mm:g} mm {tip.stock.kind}"
    return {
        "show more": f"let {tip.showing_mm:g} mm show{shot}",
        "show less": f"let only {tip.showing_mm:g} mm show{shot}",
        "pen": f"{pen}{shot}",
        "pen and show more": f"{pen} and let {tip.showing_mm:g} mm show{shot}",
        "sleeve": f"slip a {tip.bands[0].paint} sleeve over {tip.showing_mm:g} mm of it{shot}",
        "insert": f"{insert}, {tip.showing_mm:g} mm showing{shot}",
        "pen and insert": f"{insert}, {tip.showing_mm:g} mm showing, and {pen}{shot}",
    }[kind]


def _light_stick(swim: Swim) -> Change:
    tip = replace(swim.case.tip, light_stick="3 x 23 mm")
    block = examine(swim, tip)
    return Change(
        "light stick",
        True,
        f"carry a 3 x 23 mm light stick, if your rules allow: {block.load.change_words}; its own "
        "glow is not in the sums",
        UNDO["light stick"],
        block,
        tip_options(swim.case, tip),
    )


def _reach_m(change: Change) -> float:
    return change.block.visibility.goes_at_m or 0.0


def _move(swim: Swim, found: Iterable[Change]) -> Change | None:
    """Offer to come closer, with what is done anyway or with what reaches much farther."""
    sound = [c for c in found if not c.block.fails_but_sight]
    if not sound:
        return None
    best, farthest = lead(sound), max(sound, key=_reach_m)
    if _reach_m(best) * MUCH_FARTHER < _reach_m(farthest):
        best = farthest
    yards = int(_reach_m(best) / YARD_M)
    if yards < NEAREST_YD:
        return None
    for near in range(yards, max(yards - 3, NEAREST_YD - 1), -1):
        moved = swim.at(near * YARD_M)
        block = examine(moved, best.block.tip)
        if block.passes:
            first = "" if best.kind == "as it is" else f"{best.words}, and "
            return Change(
                "move",
                True,
                f"{first}fish it no farther than {near} yd",
                best.undo if first else UNDO["move"],
                block,
                {**best.options, "distance": f"{near} yd"},
            )
    return None


def lead(offered: Iterable[Change]) -> Change:
    """Return what to do now: the least trouble that is enough, or else what is seen best.

    A level that is not seen is no better than another, so that nothing is done in vain on the
    worst water at the cost of a better one.

    Parameters
    ----------
    offered : iterable of Change
        Least trouble first.

    Returns
    -------
    Change
        One of them.
    """
    all_ = list(offered)
    enough = [c for c in all_ if c.block.passes and c.kind != "move"]
    if enough:
        return enough[0]
    still = [c for c in all_ if c.kind not in ("move", "light stick")]
    sound = [c for c in still if not c.block.fails_but_sight] or still
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
