"""Cautions that the advice really touches, each with what brings it up."""

from collections.abc import Iterable

from tipsight.advice.answer import Block, Caution, Change
from tipsight.advice.swim import Swim
from tipsight.load.materials import harms
from tipsight.load.shot import is_lead

LOCAL = "check your local rules"


def cautions(
    swim: Swim, at_the_bank: Change, bench: Change | None, changes: Iterable[Change]
) -> tuple[Caution, ...]:
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
    kinds = {change.kind for change in (at_the_bank, *changes)}
    named = {line.name for block in blocks for line in block.load.shot}
    if any(is_lead(shot.metal) for shot in case.box.shot if shot.name in named):
        found.append(
            Caution(
                f"Lead: most sizes are banned on many waters, {LOCAL}; wash hands, never bite it "
                "shut, keep it from children.",
                "lead in the shot list",
            )
        )
    lane = any(stretch.sun_ahead for stretch in case.stretches)
    ahead = case.light.sun_bearing_deg <= 45 and case.light.sun_height_deg > 0
    if lane or (case.light.beam and ahead):
        found.append(
            Caution(
                "Never stare into the sun or its lane, dark glasses or not; look away often.",
                "sun near the line of sight",
            )
        )
    if "move" in kinds:
        found.append(
            Caution("Do not wade or climb only to see better; the river decides.", "coming closer")
        )
    if "light stick" in kinds:
        found.append(
            Caution(f"Light stick: {LOCAL}; never cut one open.", "a light stick is offered")
        )
    if case.light.sun_height_deg < 0:
        found.append(Caution("Do not wade alone in the dusk.", "the sun is down"))
    if bench is not None:
        found += _bench(swim, bench)
    return tuple(found)


def _bench(swim: Swim, bench: Change) -> list[Caution]:
    new, old, found = bench.block.tip, swim.case.tip, []
    fitted = (new.stock, new.wet_mm, new.glued_mm) != (old.stock, old.wet_mm, old.glued_mm)
    if fitted and new.stock.kind == "quill":
        found.append(
            Caution(
                f"Quills: only from domestic birds or a known lawful source, {LOCAL} on wild feathers.",
                "a quill tip",
            )
        )
    elif fitted:
        found.append(Caution("Dust: wear a mask, or sand wet.", f"a {new.stock.kind} tip to cut"))
    if fitted or new.bands != old.bands:
        found.append(
            Caution("Paint and glue: open the window, no flame, read the label.", "a tip to paint")
        )
        spirit = [harms(name, "spirit") for name in swim.hull.materials]
        if any(harm is not None and harm.does == "melts" for harm in spirit):
            found.append(
                Caution(
                    "Spirit, cellulose and spray paints melt foam: water-based only, or seal it first.",
                    "a foam body",
                )
            )
    return found
