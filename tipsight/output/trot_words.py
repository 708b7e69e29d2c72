"""The whole trot in words and for programs: yard by yard, where it is lost, at what to strike."""

import math
from typing import Any

from tipsight.inputs.case import Leg
from tipsight.output import doing
from tipsight.output.layout import entry, table
from tipsight.output.measures import listed, number
from tipsight.output.sections import short_grade
from tipsight.sight import grades
from tipsight.trot.along import AllAlong, Trot
from tipsight.units import YARD_M

EVERY_YD = 5
"""Yards between the columns of the table."""


def _yards(leg: Leg) -> str:
    return f"{leg.from_m / YARD_M:.0f} to {leg.to_m / YARD_M:.0f} yd"


def leg_name(leg: Leg) -> str:
    """Return a stretch in words: from where to where, and what is told of it.

    >>> leg_name(Leg(0.0, 13.716, (("behind", "dark"), ("looks", "ripple"))))
    '0 to 15 yd (dark, ripple)'
    """
    told = ", ".join(word for _, word in leg.told)
    return f"{_yards(leg)} ({told})" if told else _yards(leg)


def _span(first: int, last: int) -> str:
    return f"at {first} yd" if first == last else f"from {first} to {last} yd"


def seen(one: AllAlong, told: Trot) -> str:
    """Return how one tip does along the trot: worst where, and from where to where it is lost."""
    block = one.blocks[one.worst]
    words = f"worst on {leg_name(told.legs[one.worst])}: {block.visibility.grade} at its far end"
    spans = [_span(first, last) for first, last in one.lost_yards]
    if spans:
        return f"{words}; not followed {listed(spans)}: look harder there, or fish it shorter"
    return f"{words}; followed all along"


def strikes(one: AllAlong) -> str:
    """Return at what to strike, yard by yard."""
    words = []
    for first, last, seconds in one.strikes:
        if seconds is None:
            words.append(f"{_span(first, last)} no dip shows")
        elif seconds <= 0.5:
            words.append(f"{_span(first, last)} at any dip that you see")
        else:
            long = "a second" if seconds == 1.0 else f"{number(round(seconds))} seconds"
            words.append(f"{_span(first, last)} only at what stays down {long}")
    return "; ".join(words)


def text(told: Trot) -> str:
    """Return the whole trot as text."""
    lines = [*entry("TROT", f"{'; '.join(map(leg_name, told.legs))}.")]
    lines += entry("AS IT IS", f"{seen(told.in_hand, told)}.")
    if told.change.actions:
        lines += entry("DO", f"{doing.change(told.change)}: {seen(told.chosen, told)}.")
    lines += entry("" if told.change.actions else "DO", whole(told))
    yards = sorted({yard for yard in told.chosen.least if not yard % EVERY_YD} | {max(told.chosen.least)})
    rows = [("YARDS", *map(str, yards)), ("as it is", *(short_grade(told.in_hand.least[y]) for y in yards))]
    if told.change.actions:
        rows.append(("with that", *(short_grade(told.chosen.least[y]) for y in yards)))
    lines += table(rows, 0, 1)
    lines += entry("STRIKE", f"{strikes(told.chosen)}.")
    lasts_s = sum(told.seconds)
    if math.isinf(lasts_s):
        lines += entry("TIME", "some of it stands still, so none can be told.")
    else:
        took = f"about {lasts_s:.0f} s from cast to end, followed for {told.followed_s:.0f} of them"
        lines += entry("TIME", f"{took}.")
    return "\n".join(lines) + "\n"


def whole(told: Trot) -> str:
    """Return whether what is done does on every stretch, in one sentence."""
    if not told.chosen.passes:
        return "No tip that is advised for one stretch does on all; this is followed on the most of it."
    return "That does on every stretch." if told.change.actions else "Leave it: it does on every stretch."


def form(told: Trot) -> dict[str, Any]:
    """Return the whole trot as plain values."""
    return {
        "legs": [
            {
                "from_m": round(leg.from_m, 3),
                "to_m": round(leg.to_m, 3),
                "told": dict(leg.told),
                "seconds": None if math.isinf(s) else round(s, 2),
            }
            for leg, s in zip(told.legs, told.seconds, strict=True)
        ],
        "as_it_is": _form(told.in_hand),
        "advised": {
            "does": [str(action.do) for action in told.change.actions],
            "options": told.change.options,
            "text": doing.change(told.change),
            **_form(told.chosen),
        },
        "followed_s": None if math.isinf(sum(told.seconds)) else round(told.followed_s, 2),
    }


def _form(one: AllAlong) -> dict[str, Any]:
    return {
        "passes": one.passes,
        "worst_leg": one.worst,
        "level": round(one.level, 3),
        "grade": grades.grade(one.level),
        "by_yard": [{"yard": y, "level": round(level, 3)} for y, level in one.least.items()],
        "not_followed_yd": [list(span) for span in one.lost_yards],
        "strikes": [
            {"from_yd": first, "to_yd": last, "dip_s": seconds}
            for first, last, seconds in one.strikes
        ],
    }
