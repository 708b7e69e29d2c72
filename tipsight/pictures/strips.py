"""How well a tip is seen from 10 to 60 yards: a strip of runs, each grade by its own pattern."""

from collections.abc import Sequence

from tipsight.advice.answer import Sight
from tipsight.output import briefly
from tipsight.output.measures import ANGLER, Reader
from tipsight.pictures.svg_parts import Drawing, line, rect, text
from tipsight.sight import grades
from tipsight.units import YARD_M

WIDE, BAR = 354.0, 22.0
ENDS = {"yd": (10, 60), "m": (9, 55)}
"""Where a strip begins and ends, by the reader's unit."""
_PATTERNS = (
    "",
    '<path d="M0 9L9 0" stroke="currentColor" stroke-width="1.6"/>',
    '<circle cx="2.5" cy="2.5" r="1.3" fill="currentColor" stroke="none"/>'
    '<circle cx="7" cy="7" r="1.3" fill="currentColor" stroke="none"/>',
    '<path d="M2 0V9M6.5 0V9" stroke="currentColor" stroke-width="2"/>',
    '<path d="M0 0h9v9H0z" fill="currentColor" stroke="none" opacity=".62"/>',
    '<path d="M0 0h9v9H0z" fill="currentColor" stroke="none"/>',
)
"""From not seen to stands out: bare, sloping lines, dots, upright lines, a tint, solid."""


def patterns() -> str:
    """Return the patterns of the grades, to stand once before the strips that use them."""
    each = "".join(
        f'<pattern id="g{n}" width="9" height="9" patternUnits="userSpaceOnUse">{drawn}</pattern>'
        for n, drawn in enumerate(_PATTERNS)
        if drawn
    )
    return f"<defs>{each}</defs>"


def _fill(grade: str) -> str:
    number = [word for word, _ in grades.limits()].index(grade)
    return f"url(#g{number})" if number else "none"


def across(range_m: float, reader: Reader) -> float:
    """Return where a distance stands along a strip [px]."""
    first, last = ENDS[reader.distances]
    far = range_m / (YARD_M if reader.distances == "yd" else 1.0)
    return min(WIDE, max(0.0, WIDE * (far - first) / (last - first)))


def bar(seen: Sight, range_m: float, y: float, reader: Reader) -> list[str]:
    """Return the pieces of one strip, its grades by pattern and the asked distance marked."""
    parts = []
    for one in seen.runs:
        left, right = across(one.from_m, reader), across(one.to_m, reader)
        parts.append(rect(left, y, right - left, BAR, _fill(one.grade)))
    here = across(range_m, reader)
    return [
        *parts,
        line(here, y - 4, here, y + BAR + 4, 5, 'class="halo"'),
        line(here, y - 4, here, y + BAR + 4, 2.5, 'class="here"'),
    ]


def strip(label: str, seen: Sight, range_m: float, reader: Reader = ANGLER) -> Drawing:
    """Return one strip alone, without its patterns.

    Parameters
    ----------
    label : str
        Whose it is.
    seen : Sight
        With its runs.
    range_m : float
        The asked distance, which is marked [m].
    reader : Reader
        In whose unit it is told.

    Returns
    -------
    Drawing
        Its words are its runs.

    Examples
    --------
    >>> from tipsight import Question, advise
    >>> seen = advise(Question(behind=["dark"])).tip_in_hand.visibility.worst
    >>> strip("As it is", seen, 30.0).size_px
    (354.0, 30.0)
    """
    said = briefly.runs(seen, reader)
    return Drawing((WIDE, BAR + 8), label, said, bar(seen, range_m, 4, reader), ())


def axis(range_m: float, reader: Reader = ANGLER) -> Drawing:
    """Return the yards under the strips, the asked distance in bold and its unit with it."""
    first, last = ENDS[reader.distances]
    here = across(range_m, reader)
    told = reader.far(range_m)
    half = 5.5 * len(told)
    at = min(WIDE - half, max(half, here))
    labels = [text(at, 17, told, 'text-anchor="middle" font-weight="700"')]
    for far in range(10, last + 1, 10):
        x = WIDE * (far - first) / (last - first)
        end = "start" if x < 12 else "end" if x > WIDE - 12 else "middle"
        if abs(x - at) > half + 16:
            labels.append(text(x, 17, f"{far}", f'text-anchor="{end}"'))
    return Drawing((WIDE, 20), "Distance", f"the trot ends at {told}", (), labels)


def swatch(grade: str) -> str:
    """Return the pattern of a grade as a small square that says nothing of its own."""
    return (
        '<svg viewBox="0 0 18 18" aria-hidden="true" stroke="currentColor" fill="none">'
        f"{rect(1, 1, 16, 16, _fill(grade))}</svg>"
    )


def swatch_at(x: float, y: float, grade: str) -> str:
    """Return the pattern of a grade as a small square of a drawing's key."""
    return rect(x, y, 16, 16, _fill(grade))


def shown(sights: Sequence[Sight]) -> tuple[str, ...]:
    """Return the grades that some strips show, the least first."""
    there = {one.grade for seen in sights for one in seen.runs}
    return tuple(word for word, _ in grades.limits() if word in there)


def strips(
    each: Sequence[tuple[str, Sight]], range_m: float, wanted: float, reader: Reader = ANGLER
) -> Drawing:
    """Return strips one under the other with their lines, axis and key, to stand alone.

    Parameters
    ----------
    each : sequence of (str, Sight)
        Whose it is, and how it is seen on one water.
    range_m : float
        The asked distance [m].
    wanted : float
        Level that is wanted [-].
    reader : Reader
        In whose unit it is told.

    Returns
    -------
    Drawing
        354 pixels wide.

    Examples
    --------
    >>> from tipsight import Question, advise
    >>> answer = advise(Question(behind=["dark"]))
    >>> seen = answer.tip_in_hand.visibility.worst
    >>> "goes at" in strips([("As it is", seen)], 36.6, 5.0).alone()
    True
    """
    parts, labels, said = [patterns()], [], []
    y = 0.0
    for label, seen in each:
        told = briefly.reach(label, seen, wanted, reader)
        labels.append(text(0, y + 18, told))
        parts += bar(seen, range_m, y + 28, reader)
        said.append(f"{told}; {briefly.runs(seen, reader)}")
        y += 64
    labels.append(
        f'<g transform="translate(0 {y:.0f})">{"".join(axis(range_m, reader).labels)}</g>'
    )
    y += 32
    for n, grade in enumerate(shown([seen for _, seen in each])):
        left = 180.0 * (n % 2)
        parts.append(swatch_at(left, y, grade))
        labels.append(text(left + 24, y + 15, grade))
        y += 26 * (n % 2)
    desc = ". ".join(said)
    return Drawing((WIDE, y + 28), "Seen by distance", desc, parts, labels)
