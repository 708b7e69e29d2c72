"""A day on one swim as plain values, for programs."""

from typing import Any

from tipsight.advice import as_values
from tipsight.hours.course import Course, Spell
from tipsight.output.json_form import number

Told = dict[str, Any]


def _spell(one: Spell) -> Told:
    return {
        "option": one.option,
        "from": one.start.isoformat(),
        "to": one.end.isoformat(),
        "low": number(one.low),
        "high": number(one.high),
    }


def course_form(sky: str, course: Course) -> Told:
    """Return one day under one sky: its tips, what to have on when, and each quarter of an hour."""
    return {
        "sky": sky,
        "looking_deg": number(course.looking_deg),
        "waters": list(course.waters),
        "options": [
            {
                "at_the_bank": one.at_the_bank,
                "kind": one.kind,
                "tip": as_values.plain(one.block.tip),
                "options": dict(one.options),
            }
            for one in course.options
        ],
        "at_the_bank": [_spell(one) for one in course.at_the_bank],
        "at_the_bench": [_spell(one) for one in course.at_the_bench],
        "quarters": [
            {
                "when": one.moment.when.isoformat(),
                "sun_height_deg": number(one.moment.sun_height_deg),
                "sun_bearing_deg": number(one.bearing_deg),
                "lane": one.lane,
                "shade": one.shade,
                "levels": [[number(level) for level in each] for each in one.levels],
            }
            for one in course.quarters
        ],
    }
