"""The stretches of a trot in a question: where they end, and what the last of them tells of the far end."""

from dataclasses import replace

from tipsight.inputs.case import Leg
from tipsight.inputs.legs import NEAR_M, read
from tipsight.inputs.quantities import Unread
from tipsight.inputs.question import Question, Value
from tipsight.inputs.values import Asker, typed
from tipsight.units import YARD_M

ENDS_SHARE = 0.02
"""Of the trot: so much off it its last stretch may end, as yards and metres are rounded (judgement)."""


def settle_trot(asker: Asker, range_m: float) -> tuple[Leg, ...]:
    """Return the stretches of a trot that is so long [m]; none where it is one water all along."""
    legs: tuple[Leg, ...] = asker.ask("trot") or ()
    if not legs:
        return ()
    end_m = legs[-1].to_m
    if abs(end_m - range_m) > max(NEAR_M, ENDS_SHARE * range_m):
        ends = f"{end_m / YARD_M:.3g} yd, and the trot at {range_m / YARD_M:.3g}"
        asker.wrong("trot", f"its last stretch ends at {ends}; let them meet")
    return (*legs[:-1], replace(legs[-1], to_m=range_m))


def at_far_end(question: Question) -> Question:
    """Return a question with what the last stretch of its trot tells, where it does not tell that itself."""
    try:
        legs = read(typed(question.trot)) if question.trot else ()
    except Unread:
        return question  # told again, and refused, where the question is read
    told = question.told()
    last: dict[str, Value | None] = {k: v for k, v in (legs[-1].told if legs else ()) if k not in told}
    return question.with_options(**last) if last else question
