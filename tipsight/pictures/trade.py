"""The drawing of what is seen against what sinks it."""

import math
from collections.abc import Sequence
from xml.sax.saxutils import escape

from tipsight.advice.answer import TradePoint
from tipsight.advice.limits import RIDES, RIDES_WELL
from tipsight.output import measures
from tipsight.pictures.svg_parts import Drawing, line, path, text
from tipsight.sight import grades

_LEFT, _RIGHT, _TOP, _FOOT = 34.0, 330.0, 52.0, 300.0
_FAINTEST = 0.3
"""Levels below this are drawn at it: none of them is seen."""


_SHAPES = {
    "longer": '<circle r="7"{}/>',
    "thicker": '<path d="M0 -9l9 9 -9 9 -9 -9z"{}/>',
    "none": '<path d="M-6 -6l12 12m0 -12l-12 12"{}/>',
}


def _mark(point: TradePoint) -> tuple[str, str]:
    """Return a point's mark: solid rides well, hollow just rides, a cross does not ride.

    The first is its name, the second the drawing of it about the middle, with room to be touched.
    """
    rides, well = point.ride_margin >= RIDES, point.ride_margin >= RIDES_WELL
    shape = point.of if rides else "none"
    name = f"{shape[0]}{well:d}"
    drawn = _SHAPES[shape].format("" if well else ' fill="none"')
    room = '<circle r="16" fill="transparent"/>'
    return name, f'<g id="{name}"><g stroke="currentColor">{drawn}</g>{room}</g>'


def _size(point: TradePoint) -> str:
    return f"{point.diameter_mm:g} mm by {point.showing_mm:.0f} mm"


def _worth(grade: str, point: TradePoint, rides: str) -> str:
    return f"{grade}, sinks at {measures.grams(point.sink_force_g)}, {rides}"


def point_words(point: TradePoint) -> str:
    """Return one point of the drawing in words: what it is, how it is seen, sinks and rides.

    Examples
    --------
    >>> point_words(TradePoint(3.0, 25.0, 4.2, 0.2, 3.4, True, False, "longer"))
    '3 mm by 25 mm: followed, sinks at 0.20 g, rides well'
    """
    worth = _worth(grades.grade(point.level), point, measures.rides(point.ride_margin))
    return f"{_size(point)}: {worth}"


def _told(point: TradePoint) -> str:
    """Return what a point says when it is reached, in two short lines above the drawing."""
    first = f"{_size(point)}, advised: " if point.chosen else f"{_size(point)}: "
    rides = measures.rides(point.ride_margin) if point.ride_margin >= RIDES else "does not ride"
    rest = _worth(grades.grade(point.level), point, rides)
    return f'<text y="18">{escape(first)}<tspan x="0" dy="22">{escape(rest)}</tspan></text>'


def seen_against_sunk(points: Sequence[TradePoint], wanted: float) -> Drawing:
    """Return the drawing of what is seen against what sinks it.

    Parameters
    ----------
    points : sequence of TradePoint
        Lengths and thicknesses of one tip.
    wanted : float
        Level that is wanted [-].

    Returns
    -------
    Drawing
        On a page each point leads to ``#p1`` and so on, its row in a table by the order of
        ``points``, and says what it is when it is reached.

    Examples
    --------
    >>> point = TradePoint(3.0, 25.0, 4.2, 0.2, 3.4, True, True, "longer")
    >>> "3 mm by 25 mm, advised" in seen_against_sunk((point,), 5.0).alone()
    True
    """
    most_g = 1.08 * max((point.sink_force_g for point in points), default=1.0)
    levels = [max(point.level, _FAINTEST) for point in points] + [wanted]
    low, high = math.log(min(levels) / 1.25), math.log(max(levels) * 1.25)

    def up(level: float) -> float:
        return _FOOT - (_FOOT - _TOP) * (math.log(max(level, _FAINTEST)) - low) / (high - low)

    def at(point: TradePoint) -> tuple[float, float]:
        return _LEFT + (_RIGHT - _LEFT) * point.sink_force_g / most_g, up(point.level)

    end = 'text-anchor="end"'
    parts = [
        line(_LEFT, _FOOT, _RIGHT, _FOOT, 2),
        line(_LEFT, _TOP, _LEFT, _FOOT, 2),
    ]
    labels = [
        text(_RIGHT, _FOOT + 44, "what sinks it, in grams", end),
        text(_LEFT, _FOOT + 20, "0"),
        text(_RIGHT, _FOOT + 20, f"{most_g:.2g}", end),
    ]
    for name, level in grades.limits():
        if level > 0 and low < math.log(level) < high:
            y, asked = up(level), level == wanted
            dash = "" if asked else 'stroke-dasharray="3 5"'
            parts.append(line(_LEFT, y, _RIGHT, y, 2 if asked else 1, dash))
            labels.append(text(_LEFT + 6, y - 5, name))
    for of, dash in (("longer", ""), ("thicker", 'stroke-dasharray="7 5"')):
        row = sorted((p for p in points if p.of == of), key=lambda p: p.sink_force_g)
        if row:
            way = "L".join(f"{x:.1f} {y:.1f}" for x, y in map(at, row))
            parts.append(path(f"M{way}", f'stroke-width="1.5" {dash}'.strip()))
    marks, reached = dict(map(_mark, points)), []
    rows = sorted(enumerate(points, 1), key=lambda one: (one[1].of, one[1].sink_force_g))
    for row_number, point in rows:
        x, y = at(point)
        ring = f'<circle cx="{x:.1f}" cy="{y:.1f}" r="13" fill="none" stroke="currentColor"/>'
        mark = f'<use href="#{_mark(point)[0]}" x="{x:.1f}" y="{y:.1f}"/>'
        reached.append((row_number, f"{mark}{ring if point.chosen else ''}{_told(point)}"))
    parts.append(f"<defs>{''.join(marks.values())}</defs>")
    desc = (
        "Each point is one length or thickness of the advised tip; "
        "higher is seen better, farther right is harder to sink"
    )
    return Drawing((340, 352), "Seen against sunk", desc, parts, labels, reached)
