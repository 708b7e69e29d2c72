"""A day on one swim in words: what to have on when, what the sun does, and a strip for each tip."""

import math
from collections.abc import Sequence
from datetime import datetime

from tipsight.advice.answer import Change
from tipsight.hours.course import Course, Spell
from tipsight.inputs.clock import POINTS
from tipsight.output import doing, names
from tipsight.output.layout import WIDTH, entry, hanging
from tipsight.output.measures import ANGLER, Reader, listed
from tipsight.sight import grades

SIGNS = " .:+#@"
"""A quarter of an hour in each grade, from not seen up."""
SUNRISE_DEG = -0.833
"""True height of the sun's centre as its upper edge comes up: refraction and half its disc."""
STRIP_LABEL = 22


def clock(when: datetime) -> str:
    """Return a time of day.

    Examples
    --------
    >>> clock(datetime(2026, 10, 15, 7, 30))
    '07:30'
    """
    return f"{when:%H:%M}"


def compass(bearing_deg: float) -> str:
    """Return the nearest of the sixteen points of the compass.

    Examples
    --------
    >>> compass(225.0), compass(355.0)
    ('SW', 'N')
    """
    return POINTS[round(bearing_deg / 22.5) % len(POINTS)].upper()


def called(change: Change) -> str:
    """Return what a tip is called in the strips."""
    if not change.actions:
        return "as it is"
    tip = change.block.tip
    where = "at the bank" if change.at_the_bank else "at the bench"
    paint = names.paint(tip.bands, tip.showing_mm)
    return f"{where}: {names.stick(tip.stock)}, {tip.showing_mm:g} mm, {paint}"


def _graded(spell: Spell) -> str:
    low, high = grades.grade(spell.low), grades.grade(spell.high)
    return low if low == high else f"{low} to {high}"


def _when(spell: Spell, course: Course) -> str:
    first, last = (course.quarters[at].moment.when for at in (0, -1))
    if spell.start == first and spell.end == last:
        return "all day"
    if spell.start == first:
        return f"until {clock(spell.end)}"
    if spell.end == last:
        return f"from {clock(spell.start)}"
    return _from_to([(spell.start, spell.end)])


def _order(change: Change, reader: Reader) -> str:
    return doing.change(change, reader) if change.actions else "leave it as it is"


def spells(course: Course, told: Sequence[Spell], reader: Reader = ANGLER) -> tuple[str, ...]:
    """Return what to have on when, one clause for each spell."""
    said, worn = [], None
    for one in told:
        if one.option is None:
            said.append(f"{_when(one, course)} nothing is seen")
            continue
        change = course.options[one.option]
        what = "the same again" if one.option == worn else _order(change, reader)
        worn = one.option
        said.append(f"{_when(one, course)} {what}: {_graded(one)}")
    return tuple(said)


def _from_to(found: Sequence[tuple[datetime, datetime]]) -> str:
    return listed(
        [
            f"at {clock(start)}" if start == end else f"from {clock(start)} to {clock(end)}"
            for start, end in found
        ]
    )


def _ends(course: Course, bench: bool) -> str:
    kept = grades.grade(course.case.wanted.level)
    levels = {kept: course.case.wanted.level, "followed": grades.followed()}
    found = {word: course.last(level, bench=bench) for word, level in levels.items()}
    return listed([f"{word} at {clock(when)}" for word, when in found.items() if when])


def last(course: Course) -> tuple[str, ...]:
    """Return until when a tip is seen, by the water and from the bench."""
    bank, bench = _ends(course, bench=False), _ends(course, bench=True)
    said = [f"last {bank}"] if bank else ["by the water none is followed"]
    if bench != bank:
        said.append(f"with what is fitted at the bench {bench}")
    if course.case.box.light_stick:
        said.append("then only a light stick, where allowed; its own glow is not in the sums")
    return tuple(said)


def _sun(course: Course) -> str:
    up = [q.moment.when for q in course.quarters if q.moment.sun_height_deg > SUNRISE_DEG]
    if not up:
        return "the sun does not come up"
    whole = len(up) == len(course.quarters)
    return (
        "the sun is up all the while" if whole else f"the sun is up {_from_to([(up[0], up[-1])])}"
    )


def strips(course: Course) -> tuple[str, ...]:
    """Return a line of signs for each tip on each water, under the hours."""
    each = max(1, math.ceil(len(course.quarters) / (WIDTH - STRIP_LABEL)))
    groups = [course.quarters[at : at + each] for at in range(0, len(course.quarters), each)]
    ruler = [" "] * (len(groups) + 2)
    free = 0
    for column, group in enumerate(groups):
        when = group[0].moment.when
        if when.minute < 15 * each and column >= free and when.hour % (2 * each) == 0:
            for at, sign in enumerate(f"{when.hour}"):
                ruler[column + at] = sign
            free = column + 4
    lines = [" " * STRIP_LABEL + "".join(ruler).rstrip()]
    words = [word for word, _ in grades.limits()]
    for option in course.worn:
        lines.append(called(course.options[option]))
        for at, water in enumerate(course.waters):
            levels = [min(q.levels[option][at] for q in group) for group in groups]
            row = "".join(SIGNS[words.index(grades.grade(level))] for level in levels)
            lines.append(f"{f'  on {water}'[: STRIP_LABEL - 1]:<{STRIP_LABEL}}{row}".rstrip())
    signs = [f"{sign} {word}" for sign, word in zip(SIGNS, words, strict=True) if sign.strip()]
    return (*lines, *hanging(f"{', '.join(signs)}; blank is {words[0]}"))


def text(courses: Sequence[tuple[str, Course]], reader: Reader = ANGLER) -> str:
    """Return the day under each sky, named as it was told or taken, as lines of text."""
    lines: list[str] = []
    for sky, course in courses:
        lines += [*_one(sky, course, reader), ""]
    lines += entry(
        "DOUBT",
        "this is what the light does under such a sky; what the weather does nobody can promise",
    )
    return "\n".join(lines) + "\n"


def _one(sky: str, course: Course, reader: Reader) -> list[str]:
    lines = [line for label, words in said(sky, course, reader) for line in entry(label.upper(), words)]
    return [*lines, "", *strips(course)]


def said(sky: str, course: Course, reader: Reader) -> tuple[tuple[str, str], ...]:
    """Return the day under one sky in words, each with its label."""
    first = course.quarters[0].moment
    looks = compass(course.looking_deg)
    place = reader.far(course.case.place.range_m)
    day = f"{first.when:%A} {first.when.day} {first.when:%B %Y}"
    told = f"{day}, {sky}, {place} off, looking {looks}; {_sun(course)}"
    found = [("The day", told)]
    found.append(("At the bank", "; ".join(spells(course, course.at_the_bank, reader))))
    if course.at_the_bench != course.at_the_bank:
        found.append(("At the bench", "; ".join(spells(course, course.at_the_bench, reader))))
    if lane := course.spells("lane"):
        words = (
            f"{_from_to(lane)} the sun's glitter lies behind the tip and nothing in it can be "
            "depended on: wait, or fish another stretch. Never look into the sun, nor into its "
            "glitter for long"
        )
        found.append(("Sun lane", words))
    if shade := course.spells("shade"):
        found.append(("Shade", f"the bank's shadow lies on the float {_from_to(shade)}"))
    found.append(("Light", "; ".join(last(course))))
    return tuple(found)
