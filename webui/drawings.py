"""Drawings as SVG text: a tip to scale, and what is seen against what sinks it."""

import math
from collections.abc import Iterable, Sequence
from xml.sax.saxutils import escape, quoteattr

from tipsight import tables
from tipsight.advice.answer import TradePoint
from tipsight.inputs.case import Band, Tip
from tipsight.output import things, words
from tipsight.sight import grades

PX_PER_MM = 4.0
"""Scale of a drawn tip [px/mm]."""
BARE = "#b8a888"
"""Screen colour of an unpainted stick."""
_INK = 'stroke="currentColor"'
_LEFT, _RIGHT, _TOP, _FOOT = 34.0, 330.0, 52.0, 300.0
_FAINTEST = 0.3
"""Levels below this are drawn at it: none of them is seen."""


@tables.derived
def swatches() -> dict[str, str]:
    """Return the screen colour of each paint; on a screen only, as paint differs.

    Returns
    -------
    dict of str
        Colours as ``#rrggbb`` by paint.

    Examples
    --------
    >>> swatches()["black"].startswith("#")
    True
    """
    return {row["name"]: row["swatch"] for row in tables.rows("paints")}


def _svg(
    size: tuple[float, float], title: str, desc: str, parts: Iterable[str], role: str = "img"
) -> str:
    wide, high = (f"{length:.0f}" for length in size)
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {wide} {high}" width="{wide}" '
        f'height="{high}" role="{role}" aria-label={quoteattr(f"{title}. {desc}")} '
        f'font-size="18" fill="currentColor"><title>{escape(title)}</title>'
        f"<desc>{escape(desc)}</desc>{''.join(parts)}</svg>"
    )


def _rect(x: float, y: float, wide: float, high: float, fill: str, more: str = "") -> str:
    at = f'x="{x:.1f}" y="{y:.1f}" width="{wide:.1f}" height="{high:.1f}"'
    return f'<rect {at} fill="{fill}" {more}/>'


def _path(d: str, more: str = "", fill: str = "none") -> str:
    return f'<path d="{d}" fill="{fill}" {more}/>'


def _line(x1: float, y1: float, x2: float, y2: float, width: float, more: str = "") -> str:
    d = f"M{x1:.1f} {y1:.1f}L{x2:.1f} {y2:.1f}"
    return _path(d, f'{_INK} stroke-width="{width}" {more}')


def _text(x: float, y: float, said: str, more: str = "") -> str:
    return f'<text x="{x:.1f}" y="{y:.1f}" {more}>{escape(said)}</text>'


def _shown(bands: Sequence[Band], showing_mm: float) -> list[tuple[str, float, float]]:
    ends = [*(min(band.to_top_mm, showing_mm) for band in bands[:-1]), showing_mm]
    named = [(band.paint, band.from_top_mm, end) for band, end in zip(bands, ends, strict=False)]
    return [one for one in named if one[1] < one[2]]


def tip(drawn: Tip, bands: Sequence[Band], painted_mm: float, title: str) -> str:
    """Return a tip to scale, each band named.

    Parameters
    ----------
    drawn : Tip
        The tip on its float.
    bands : sequence of Band
        Its paint from the top down.
    painted_mm : float
        Its diameter with the paint [mm].
    title : str
        Which tip it is.

    Returns
    -------
    str
        SVG, four pixels to the millimetre.

    Examples
    --------
    >>> from tipsight.inputs.case import Stock
    >>> drawing = tip(Tip(Stock("quill", 3.0), 10.0), (Band("black", 0, 10),), 3.1, "In hand")
    >>> "black 0 to 10 mm" in drawing
    True
    """
    k, x, top = PX_PER_MM, 44.0, 14.0
    wide, water = painted_mm * k, top + drawn.showing_mm * k
    left, wet, label = x - wide / 2, min(drawn.wet_mm, 15.0) * k, top - 40.0
    parts, said = [], []
    for paint, start, end in _shown(bands, drawn.showing_mm):
        y, tall = top + start * k, (end - start) * k
        label = max(y + tall / 2 - 4, label + 46)
        where = f"{start:.3g} to {end:.3g} mm"
        parts += [
            _rect(left, y, wide, tall, swatches().get(paint, BARE), _INK),
            _line(x + wide / 2 + 2, y + tall / 2, 92, label - 6, 1.5),
            _text(96, label, paint),
            _text(96, label + 20, where),
        ]
        said.append(f"{paint} {where}")
    foot = swatches().get(bands[-1].paint, BARE) if bands else BARE
    shoulder = f"M{left - 9:.1f} {water + wet:.1f}h{wide + 18:.1f}l7 14h-{wide + 32:.1f}z"
    parts += [
        _rect(left, water, wide, wet, foot, f'opacity="0.45" {_INK}'),
        _path(shoulder, fill=BARE),
        _path(f"M2 {water:.1f}q10 -6 20 0t20 0 20 0 20 0", f'{_INK} stroke-width="2"'),
        _text(96, max(water + 6, label + 42), "water"),
        _line(10, top, 10, top + 10 * k, 3),
        _text(4, top + 10 * k + 20, "10"),
    ]
    high = max(water + wet + 26, label + 54)
    desc = (
        f"{things.stock(drawn)}, {drawn.showing_mm:.3g} mm showing; "
        f"from the top down {', '.join(said) or 'bare'}"
    )
    return _svg((300, high), title, desc, parts)


def _mark(x: float, y: float, point: TradePoint) -> str:
    """Return a point's mark: solid rides well, hollow just rides, a cross does not ride."""
    ink = f'{_INK} stroke-width="3"'
    if point.ride_margin < words.JUST:
        return _path(f"M{x - 6:.1f} {y - 6:.1f}l12 12m0 -12l-12 12", ink)
    fill = "currentColor" if point.ride_margin >= words.WELL else "none"
    if point.of == "thicker":
        return _path(f"M{x:.1f} {y - 9:.1f}l9 9 -9 9 -9 -9z", ink, fill)
    return f'<circle cx="{x:.1f}" cy="{y:.1f}" r="7" fill="{fill}" {ink}/>'


def point_words(point: TradePoint) -> str:
    """Return one point of the drawing in words.

    Parameters
    ----------
    point : TradePoint
        One length or thickness.

    Returns
    -------
    str
        What it is, how it is seen, what sinks it, how it rides.

    Examples
    --------
    >>> point_words(TradePoint(3.0, 25.0, 4.2, 0.2, 3.4, True, False, "longer"))
    '3 mm by 25 mm: seen when stared at, sinks at 0.20 g, rides well'
    """
    return (
        f"{point.diameter_mm:g} mm by {point.showing_mm:.0f} mm: {grades.grade(point.level)}, "
        f"sinks at {words.grams(point.sink_force_g)}, {words.rides(point.ride_margin)}"
    )


def _told(said: str) -> str:
    """Return what a point says when it is reached, above the drawing."""
    hidden = 'class="tell" visibility="hidden"'
    first, _, rest = said.partition(": ")
    rest = rest.replace("seen when stared at", "stared at").replace(
        "does not ride this water", "no"
    )
    return _text(0, 18, first, hidden) + _text(0, 40, rest, hidden)


def seen_against_sunk(points: Sequence[TradePoint], wanted: float) -> str:
    """Return the drawing of what is seen against what sinks it.

    Parameters
    ----------
    points : sequence of TradePoint
        Lengths and thicknesses of one tip.
    wanted : float
        Level that is wanted [-].

    Returns
    -------
    str
        SVG; each point can be reached by keyboard and then says what it is.

    Examples
    --------
    >>> point = TradePoint(3.0, 25.0, 4.2, 0.2, 3.4, True, True, "longer")
    >>> "rides well, advised" in seen_against_sunk((point,), 5.0)
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
        _line(_LEFT, _FOOT, _RIGHT, _FOOT, 2),
        _line(_LEFT, _TOP, _LEFT, _FOOT, 2),
        _text(_RIGHT, _FOOT + 44, "what sinks it, in grams", end),
        _text(_LEFT, _FOOT + 20, "0"),
        _text(_RIGHT, _FOOT + 20, f"{most_g:.2g}", end),
    ]
    for name, level in grades.limits():
        if level > 0 and low < math.log(level) < high:
            y, asked = up(level), level == wanted
            dash = "" if asked else 'stroke-dasharray="3 5"'
            parts.append(_line(_LEFT, y, _RIGHT, y, 2 if asked else 1, dash))
            parts.append(_text(_RIGHT, y - 5, name, end))
    for of, dash in (("longer", ""), ("thicker", 'stroke-dasharray="7 5"')):
        row = sorted((p for p in points if p.of == of), key=lambda p: p.sink_force_g)
        if row:
            path = "L".join(f"{x:.1f} {y:.1f}" for x, y in map(at, row))
            parts.append(_path(f"M{path}", f'{_INK} stroke-width="1.5" {dash}'))
    for point in sorted(points, key=lambda one: (one.of, one.sink_force_g)):
        x, y = at(point)
        said = point_words(point)
        ring = f'<circle cx="{x:.1f}" cy="{y:.1f}" r="13" fill="none" {_INK} stroke-width="3"/>'
        label = quoteattr(f"{said}, advised" if point.chosen else said)
        parts.append(
            f'<g tabindex="0" role="img" aria-label={label} class="pt">{_mark(x, y, point)}'
            f'{ring if point.chosen else ""}<circle cx="{x:.1f}" cy="{y:.1f}" r="16" '
            f'fill="transparent"/>{_told(said)}</g>'
        )
    desc = (
        "Each point is one length or thickness of the advised tip; "
        "higher is seen better, farther right is harder to sink"
    )
    return _svg((340, 352), "Seen against sunk", desc, parts, role="group")
