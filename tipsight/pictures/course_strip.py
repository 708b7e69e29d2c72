"""A day as a drawing: a strip for each tip and water, its grades by pattern, shade and word."""

from collections.abc import Sequence
from itertools import groupby

from tipsight.hours.course import Course
from tipsight.output.course_words import called, clock
from tipsight.pictures.svg_parts import Drawing, line, rect, text
from tipsight.sight import grades

WIDE, HIGH = 22.0, 30.0
"""Of a quarter of an hour, and of a strip [px]."""
LETTER, KEY, LEAST = 9.5, WIDE + 150.0, 540.0
"""About a letter, a grade in the key, and the least that a drawing is wide [px]."""
LEFT, TOP, GAP = 12.0, 70.0, 30.0
LANE, SHADE = "sun lane", "bank's shadow"
_PATTERNS = (
    '<pattern id="day1" width="8" height="8" patternUnits="userSpaceOnUse" '
    'patternTransform="rotate(45)"><path d="M0 0V8" stroke="currentColor" stroke-width="2"/>'
    "</pattern>",
    '<pattern id="day2" width="8" height="8" patternUnits="userSpaceOnUse">'
    '<circle cx="4" cy="4" r="1.8" fill="currentColor"/></pattern>',
)
_FILLS = ("none", "url(#day1)", "url(#day2)", "currentColor", "currentColor", "currentColor")
_SHADES = (1.0, 1.0, 1.0, 0.3, 0.55, 0.85)


def _box(grade: int, x: float, y: float, wide: float) -> str:
    shade = f'fill-opacity="{_SHADES[grade]}" stroke="currentColor" stroke-width="1"'
    return rect(x, y, wide, HIGH, _FILLS[grade], shade)


def _row(course: Course, option: int, water: int, y: float, each: float) -> list[str]:
    words = [word for word, _ in grades.limits()]
    graded = [words.index(grades.grade(q.levels[option][water])) for q in course.quarters]
    parts, at = [], 0
    for grade, run in groupby(graded):
        count = len(list(run))
        parts.append(_box(grade, LEFT + at * each, y, count * each))
        at += count
    return parts


def _marked(course: Course, which: str, said: str, y: float, each: float) -> list[str]:
    """Return a bar where the lane or the shade lies, with what it is."""
    when = [q.moment.when for q in course.quarters]
    parts = []
    for start, end in course.spells(which):
        x, end_x = (LEFT + each * when.index(one) for one in (start, end))
        parts.append(line(x, y, end_x + each, y, 4, 'stroke="currentColor"'))
        parts.append(text(x, y - 6, said))
    return parts


def drawing(courses: Sequence[tuple[str, Course]], quarter_px: float = WIDE) -> Drawing:
    """Return the strips of a day under each sky, named; all over the same hours, each quarter so wide.

    Each strip is one tip on one water, its runs of a grade as one piece; the key is beneath.
    """
    lines: list[str] = [f"<defs>{''.join(_PATTERNS)}</defs>"]
    labels: list[str] = []
    y, named = 30.0, LEAST
    for sky, course in courses:
        wide = LEFT + quarter_px * len(course.quarters)
        labels.append(text(LEFT, y, f"{course.quarters[0].moment.when:%d %B %Y}, {sky}"))
        for which, said in (("lane", LANE), ("shade", SHADE)):
            if course.spells(which):
                y += 34.0
                labels += _marked(course, which, said, y, quarter_px)
        for option in course.worn:
            for at, water in enumerate(course.waters):
                y += GAP
                said = f"{called(course.options[option])}, on {water}"
                named = max(named, LEFT + LETTER * len(said))
                labels.append(text(LEFT, y, said))
                y += 8.0
                labels += _row(course, option, at, y, quarter_px)
                y += HIGH
        for at, quarter in enumerate(course.quarters):
            when = quarter.moment.when
            if when.minute == 0:
                x = LEFT + at * quarter_px
                lines.append(line(x, y, x, y + 8, 2))
                if when.hour % 2 == 0:
                    labels.append(text(x, y + 26, clock(when), 'text-anchor="middle"'))
        y += 66.0
    x, wide = LEFT, max(wide, named) + LEFT
    for grade, (word, _) in enumerate(grades.limits()):
        if x + KEY > wide:
            x, y = LEFT, y + HIGH + 8.0
        labels += [_box(grade, x, y, WIDE), text(x + WIDE + 8, y + 21, word)]
        x += KEY
    desc = "how well each tip is seen by the hour, on each water behind it"
    return Drawing((wide, y + HIGH + 12), "The day", desc, lines, labels)
