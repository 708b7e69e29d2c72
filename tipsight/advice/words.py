"""Warnings: where the answer leaves the range in which its sums are known."""

from tipsight.advice.answer import Block
from tipsight.advice.bench import Shelf
from tipsight.advice.limits import LEAST_WET_MM
from tipsight.advice.swim import Swim, painted_mm
from tipsight.sight import detect

COLOUR_CARRIES = 0.5
"""Share of the level's energy from which colour is said to carry it (judgement)."""
YOUNGEST_SEA_M_S = 3.0
"""Below this wind the fetch laws have no data on rivers."""
CROSS_DEG = 45.0


def warnings(swim: Swim, shelf: Shelf, lead: Block) -> tuple[str, ...]:
    """Return what a reader should know before trusting a number.

    Parameters
    ----------
    swim : Swim
        The swim worked out once.
    shelf : Shelf
        All that could be fitted.
    lead : Block
        The tip that the answer leads with.

    Returns
    -------
    tuple of str
        One sentence each, the most telling first.
    """
    found = [*_float(swim, lead), *_sight(swim, lead)]
    if not (swim.case.box.stock or swim.case.box.inserts):
        found.insert(0, "you have no tip stock: you need what is advised for the bench")
    if shelf.left_out:
        found.append(
            f"{shelf.left_out} ways to divide a tip were not tried: a band would be under 5 mm or "
            "too small to tell apart at that distance"
        )
    return tuple(dict.fromkeys(found))


def _float(swim: Swim, lead: Block) -> list[str]:
    case, handled, found = swim.case, lead.handling, []
    if not handled.upright:
        found.append("this tip makes the float top-heavy")
    if handled.lift_g is None:
        found.append("held so hard this float lies flat: run it freer, or take a bigger one")
    elif swim.stream.hold_m_s > 0:
        found.append(
            f"holding back lifts the float by {handled.lift_g:.2f} g: over-shot it by as much, and "
            "do not trust a fine setting"
        )
    if not case.stream.floating_line:
        found.append("a sinking line bows and drags the tip under: grease it, or let more show")
    if lead.tip.wet_mm < LEAST_WET_MM:
        found.append(
            f"with only {lead.tip.wet_mm:g} mm of tip under water the body's shoulder lifts out in "
            "a ripple and the float rides less evenly"
        )
    if handled.ordinary_dip_s is None:
        found.append("this tip hardly ever dips by itself, so no length of dip is given")
    if handled.visible_dip_mm is None:
        found.append("seen so poorly no dip can be told, so no slow bite is given")
    return found


def _sight(swim: Swim, lead: Block) -> list[str]:
    case, found = swim.case, []
    for sight in lead.visibility.by_background:
        if sight.colour_share > COLOUR_CARRIES:
            found.append(
                f"on {sight.name} water it is colour, not brightness, that shows this tip: the less "
                "certain half of the sums"
            )
    seen_at = [sight.goes_at_m for sight in lead.visibility.by_background]
    if None in (*seen_at, lead.visibility.gone_at_m):
        found.append("on some water it is still seen at 100 m, where the sums end")
    wind = case.wind
    if wind.ripple_height_m is None and 0 < wind.speed_m_s < YOUNGEST_SEA_M_S:
        found.append("so light a wind makes cat's-paws, no even ripple: the ride is a rough guess")
    if wind.bearing_deg > CROSS_DEG and swim.sea.height_m > 0.005:
        found.append("waves that run across the line of sight: the doubt of the sight is larger")
    light = min(float(swim.waters[name].adaptation_cd_m2[swim.here]) for name in swim.judged)
    found += detect.outside_domain(
        painted_mm(lead.tip), lead.tip.showing_mm, swim.range_m[swim.here], light
    )
    for name in swim.judged:
        found += [f"{name} water: {words}" for words in swim.waters[name].outside]
    return found
