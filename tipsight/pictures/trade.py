"""The drawing of what is seen against what sinks it."""

import math
from collections.abc import Callable, Sequence
from xml.sax.saxutils import escape

from tipsight.advice.answer import Block, TradePoint
from tipsight.advice.limits import RIDES, RIDES_WELL
from tipsight.output import measures, sections
from tipsight.pictures.svg_parts import Drawing, line, path, rect, text
from tipsight.sight import grades

_LEFT, _RIGHT, _TOP, _FOOT = 40.0, 262.0, 78.0, 310.0
_MIDDLE, _END = 'text-anchor="middle"', 'text-anchor="end"'
IN_HAND = "in hand"
"""The row of the one point that is no length or thickness of the advised tip."""
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
    shape = ("longer" if point.of == IN_HAND else point.of) if rides else "none"
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
    which = ", advised" if point.chosen else ", in hand" if point.of == IN_HAND else ""
    first = f"{_size(point)}{which}: "
    rides = measures.rides(point.ride_margin) if point.ride_margin >= RIDES else "does not ride"
    rest = _worth(grades.grade(point.level), point, rides)
    return f'<text y="18">{escape(first)}<tspan x="0" dy="22">{escape(rest)}</tspan></text>'


def marked(points: Sequence[TradePoint], in_hand: Block | None = None) -> tuple[TradePoint, ...]:
    """Return the points that are marked: the advised tip once, though it stands in both rows.

    The tip in hand is the last.

    Examples
    --------
    >>> tip = (3.0, 25.0, 4.2, 0.2, 3.4, True, True)
    >>> len(marked((TradePoint(*tip, "longer"), TradePoint(*tip, "thicker"))))
    1
    """
    first = next((one for one in points if one.chosen), None)
    once = tuple(one for one in points if not one.chosen or one is first)
    return once if in_hand is None else (*once, _of(in_hand))


def _ticks(most: float) -> tuple[float, ...]:
    """Return the round grams at which the lower axis is marked, three to six of them.

    Examples
    --------
    >>> _ticks(1.3), _ticks(0.21)
    ((0.0, 0.25, 0.5, 0.75, 1.0, 1.25), (0.0, 0.05, 0.1, 0.15, 0.2))
    """
    ten = 10.0 ** math.floor(math.log10(most))
    step = next(s * ten for s in (0.1, 0.2, 0.25, 0.5, 1.0, 2.0) if most / (s * ten) < 5.5)
    return tuple(round(n * step, 6) for n in range(int(most / step) + 1))


def seen_against_sunk(
    points: Sequence[TradePoint], wanted: float, in_hand: Block | None = None
) -> Drawing:
    """Return the drawing of what is seen against what sinks it.

    Parameters
    ----------
    points : sequence of TradePoint
        Lengths and thicknesses of one tip.
    wanted : float
        Level that is wanted [-].
    in_hand : Block, optional
        The tip in hand, which is marked among them.

    Returns
    -------
    Drawing
        On a page each point leads to ``#p1`` and so on, its row in a table by the order of the
        `marked` points, and says what it is when it is reached.

    Examples
    --------
    >>> point = TradePoint(3.0, 25.0, 4.2, 0.2, 3.4, True, True, "longer")
    >>> "3 mm by 25 mm, advised" in seen_against_sunk((point,), 5.0).alone()
    True
    """
    told = marked(points, in_hand)
    every = [*points, *told]
    most_g = 1.08 * max((point.sink_force_g for point in every), default=1.0)
    levels = [max(point.level, _FAINTEST) for point in every] + [wanted]
    low, high = math.log(min(levels) / 1.25), math.log(max(levels) * 1.25)

    def up(level: float) -> float:
        return _FOOT - (_FOOT - _TOP) * (math.log(max(level, _FAINTEST)) - low) / (high - low)

    def across(force_g: float) -> float:
        return _LEFT + (_RIGHT - _LEFT) * force_g / most_g

    def at(point: TradePoint) -> tuple[float, float]:
        return across(point.sink_force_g), up(point.level)

    parts, labels = _bands(low, high, wanted, up)
    for force_g in _ticks(most_g):
        x = across(force_g)
        parts.append(line(x, _FOOT, x, _FOOT + 5, 1.5))
        labels.append(text(x, _FOOT + 22, f"{force_g:g}", _MIDDLE))
    parts += [line(_LEFT, _FOOT, _RIGHT, _FOOT, 2), line(_LEFT, _TOP, _LEFT, _FOOT, 2)]
    labels += [
        text(_LEFT, _FOOT + 46, "what sinks it, in grams"),
        text(0, _TOP - 12, "level: how well it is seen"),
    ]
    for of, dash in (("longer", ""), ("thicker", 'stroke-dasharray="7 5"')):
        row = sorted((p for p in points if p.of == of), key=lambda p: p.sink_force_g)
        if row:
            way = "L".join(f"{x:.1f} {y:.1f}" for x, y in map(at, row))
            parts.append(path(f"M{way}", f'stroke-width="1.5" {dash}'.strip()))
    marks, reached = dict(map(_mark, told)), []
    rows = sorted(enumerate(told, 1), key=lambda one: (one[1].of, one[1].sink_force_g))
    for row_number, point in rows:
        x, y = at(point)
        mark = f'<use href="#{_mark(point)[0]}" x="{x:.1f}" y="{y:.1f}"/>'
        ring = _ring(point, x, y)
        reached.append((row_number, f"{mark}{ring}{_told(point)}"))
    parts.append(f"<defs>{''.join(marks.values())}</defs>")
    labels += _key(any(one.chosen for one in told), in_hand is not None)
    desc = (
        "Each point is one length or thickness of the advised tip; "
        "higher is seen better, farther right is harder to sink"
    )
    return Drawing((354, _FOOT + 86), "Seen against sunk", desc, parts, labels, reached)


def _of(block: Block) -> TradePoint:
    """Return the tip in hand as a point."""
    return TradePoint(
        block.tip.stock.diameter_mm,
        block.tip.showing_mm,
        block.visibility.level,
        block.handling.sink_force_g,
        block.handling.ride_margin,
        block.passes,
        False,
        IN_HAND,
    )


def _ring(point: TradePoint, x: float, y: float) -> str:
    if point.chosen:
        return f'<circle cx="{x:.1f}" cy="{y:.1f}" r="13" fill="none" stroke="currentColor"/>'
    if point.of == IN_HAND:
        return (
            f'<path d="M{x - 12:.1f} {y - 12:.1f}h24v24h-24z" fill="none" stroke="currentColor"/>'
        )
    return ""


def _key(advised: bool, mine: bool) -> list[str]:
    """Return what the ring and the square stand for, under the axis where no point comes."""
    y = _FOOT + 72
    pen = 'fill="none" stroke="currentColor" stroke-width="3"/>'
    ring = f'<circle cx="{_LEFT + 10}" cy="{y - 6}" r="9" {pen}'
    square = f'<path d="M{_LEFT + 140} {y - 15}h18v18h-18z" {pen}'
    return [
        *((ring, text(_LEFT + 26, y, "advised")) if advised else ()),
        *((square, text(_LEFT + 166, y, "in hand")) if mine else ()),
    ]


def _bands(
    low: float, high: float, wanted: float, up: Callable[[float], float]
) -> tuple[list[str], list[str]]:
    """Return the grades as bands behind the points, their names beside them, their limits as ticks."""
    parts, labels = [], []
    named = grades.limits()
    label = _FOOT + 20.0
    for n, (name, level) in enumerate(named):
        top = named[n + 1][1] if n + 1 < len(named) else math.inf
        if (level > 0 and math.log(level) >= high) or math.log(top) <= low:
            continue
        foot = _FOOT if level == 0 or math.log(level) <= low else up(level)
        head = _TOP if math.log(top) >= high else up(top)
        tint = f'stroke="none" opacity="{0.03 + 0.035 * n:.3f}"'
        parts.append(rect(_LEFT, head, _RIGHT - _LEFT, foot - head, "currentColor", tint))
        label = min(label - 19, (foot + head) / 2 + 6)
        labels.append(text(_RIGHT + 8, label, sections.SHORT.get(name, name)))
        if foot < _FOOT:
            asked = level == wanted
            dash = "" if asked else 'stroke-dasharray="3 5"'
            parts.append(line(_LEFT - 5, foot, _RIGHT, foot, 2 if asked else 1, dash))
            labels.append(text(_LEFT - 8, foot + 6, f"{level:g}", _END))
    return parts, labels
