"""Cautions that the advice really touches."""

from collections.abc import Iterable

from tipsight.advice.answer import Block, Change
from tipsight.advice.facts import Care, CarryLight, Caution
from tipsight.advice.swim import Swim
from tipsight.load.materials import harms
from tipsight.load.shot import is_lead

NEAR_SUN_DEG = 45.0
"""A sun that stands so near to the line of sight, or nearer, is looked into (judgement)."""


def cautions(
    swim: Swim, at_the_bank: Change, bench: Change | None, changes: Iterable[Change]
) -> tuple[Caution, ...]:
    """Return the cautions for what is advised and all else that is offered.

    They come in the order in which a person meets them.
    """
    case = swim.case
    offered = (at_the_bank, *changes)
    blocks: list[Block] = [c.block for c in (at_the_bank, bench) if c is not None]
    named = {line.name for block in blocks for line in block.load.shot}
    lead = any(is_lead(shot.metal) for shot in case.box.shot if shot.name in named)
    lane = any(stretch.sun_ahead for stretch in case.stretches)
    sun = case.light
    ahead = sun.beam and sun.sun_height_deg > 0 and sun.sun_bearing_deg <= NEAR_SUN_DEG
    met = {
        Care.LEAD: lead,
        Care.SUN: lane or ahead,
        Care.WADING: any(c.range_m is not None for c in offered),
        Care.LIGHT_STICK: any(c.does(CarryLight) for c in offered),
        Care.DUSK: sun.sun_height_deg < 0,
    }
    found = [Caution(kind) for kind, is_met in met.items() if is_met]
    return (*found, *(_bench(swim, bench) if bench is not None else ()))


def _bench(swim: Swim, bench: Change) -> list[Caution]:
    new, old, found = bench.block.tip, swim.case.tip, []
    fitted = (new.stock, new.wet_mm, new.glued_mm) != (old.stock, old.wet_mm, old.glued_mm)
    if fitted:
        kind = Care.QUILL if new.stock.kind == "quill" else Care.DUST
        found.append(Caution(kind, new.stock.kind))
    if fitted or new.bands != old.bands:
        found.append(Caution(Care.PAINT))
        spirit = [harms(name, "spirit") for name in swim.hull.materials]
        if any(harm is not None and harm.does == "melts" for harm in spirit):
            found.append(Caution(Care.FOAM))
    return found
