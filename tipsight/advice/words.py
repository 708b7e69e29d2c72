"""Warnings: where the answer leaves the range in which its sums are known, and what is less certain."""

from tipsight.advice.answer import Block
from tipsight.advice.bench import Shelf
from tipsight.advice.swim import Swim

COLOUR_CARRIES = 0.5
"""Share of the level's energy from which colour is said to carry it (judgement)."""
YOUNGEST_SEA_M_S = 3.0


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
        One sentence each.
    """
    found = []
    for sight in lead.visibility.by_background:
        if sight.colour_share > COLOUR_CARRIES:
            found.append(f"on {sight.name} water it is the colour, not the brightness, that shows this tip: "
                         "the less certain half of the sums")
    for name in swim.judged:
        found += [f"{name} water: {words}" for words in swim.waters[name].outside]
    wind = swim.case.wind
    if wind.ripple_height_m is None and 0 < wind.speed_m_s < YOUNGEST_SEA_M_S:
        found.append("in so light a wind rivers show cat's-paws, no even ripple: the ride is a rough guess")
    if lead.handling.lift_g is None:
        found.append("held back so hard this float lies flat: run it freer, or take a float with more shot")
    elif swim.stream.hold_m_s > 0:
        found.append(f"holding back lifts the float by {lead.handling.lift_g:.2f} g of shot: over-shot it, and "
                     "do not trust a fine setting")
    if not swim.case.stream.floating_line:
        found.append("a sinking line bows and pulls the tip under by more than any of these forces: grease it, or "
                     "leave more showing")
    if not lead.handling.upright:
        found.append("this tip makes the float top-heavy")
    if any(step.goes_at_m is None for step in lead.visibility.by_background):
        found.append("on some water it is still seen beyond 100 m, farther than the sums look")
    return tuple(dict.fromkeys(found))
