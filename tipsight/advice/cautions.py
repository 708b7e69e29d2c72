"""Cautions that the advice really touches, each with what brings it up, and none that it does not."""

from collections.abc import Iterable

from tipsight.advice.answer import Block, Caution, Change
from tipsight.advice.swim import Swim
from tipsight.load.materials import paint_warning
from tipsight.load.shot import is_lead

LOCAL = "check your local rules"


def cautions(swim: Swim, at_the_bank: Change, bench: Change | None, changes: Iterable[Change]) -> tuple[Caution, ...]:
    """Return the cautions for this advice.

    Parameters
    ----------
    swim : Swim
        The swim worked out once.
    at_the_bank, bench : Change or None
        What is advised.
    changes : iterable of Change
        All that is offered.

    Returns
    -------
    tuple of Caution
        In the order in which a person meets them.
    """
    case, found = swim.case, []
    blocks: list[Block] = [c.block for c in (at_the_bank, bench) if c is not None]
    kinds = {c.kind for c in (at_the_bank, *changes)}
    metals = {shot.metal for shot in case.box.shot if any(
        line.name == shot.name for block in blocks for line in block.load.shot)}
    if any(is_lead(metal) for metal in metals):
        found.append(Caution(
            f"Lead shot is banned in most sizes on many waters: {LOCAL}; wash your hands, never bite "
            "it shut, keep it from children.", "the shot list has lead"))
    lane = any(s.sun_ahead for s in case.stretches)
    ahead = case.light.beam and case.light.sun_bearing_deg <= 45 and case.light.sun_height_deg > 0
    if lane or ahead:
        found.append(Caution(
            "Do not stare into the sun or its lane on the water, with or without dark glasses; "
            "look away often.", "the sun stands near the line of sight"))
    if "move" in kinds:
        found.append(Caution(
            "Do not wade or go out on a steep bank only to see better; the river decides.",
            "coming closer is offered"))
    if "light stick" in kinds:
        found.append(Caution(f"A light stick is not allowed everywhere: {LOCAL}. Do not cut it open.",
                             "a light stick is offered"))
    if case.light.sun_height_deg < 0:
        found.append(Caution("Do not wade alone in the dusk.", "the sun is down"))
    if bench is not None:
        found += _bench(swim, bench)
    return tuple(found)


def _bench(swim: Swim, bench: Change) -> list[Caution]:
    case, new, found = swim.case, bench.block.tip, []
    fitted = (new.stock, new.wet_mm, new.glued_mm) != (case.tip.stock, case.tip.wet_mm, case.tip.glued_mm)
    foam = [m for m in swim.hull.materials if "melts" in paint_warning(m, "spirit")]
    if fitted and new.stock.kind in ("cane", "balsa", "solid", "thin tube", "thick tube"):
        found.append(Caution("Cutting and sanding makes dust: wear a mask, or sand wet.",
                             f"a {new.stock.kind} tip is cut to length"))
    if fitted and new.stock.kind == "quill":
        found.append(Caution(
            f"Take quills only from domestic birds or a known lawful source: {LOCAL} on wild feathers.",
            "a quill tip is advised"))
    if fitted or new.bands != case.tip.bands:
        found.append(Caution("Paint and glue with the window open and no flame; follow the label.",
                             "the tip is painted"))
        if foam:
            found.append(Caution(
                "Spirit, cellulose and spray paints melt foam: water-based paint only, or seal it "
                "first and try a scrap.", "the body is foam"))
    return found
