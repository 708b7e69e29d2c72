"""Drawings as SVG text: a tip to scale, what is seen against what sinks it, and the kinds of water."""

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


@tables.derived
def swatches() -> dict[str, str]:
    """Return the screen colour of each paint; on a screen only, as paint differs.

    Returns
    -------
    dict of str
        Colours as ``#rrggbb`` by paint.

    Examples
    --------
    >>> swatches()["black"]
    '#2a2a2a'
    """
    return {row["name"]: row["swatch"] for row in tables.rows("paints")}


def _svg(width: float, height: float, title: str, desc: str, parts: Iterable[str], role: str = "img") -> str:
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {width:.0f} {height:.0f}" width="{width:.0f}" '
        f'height="{height:.0f}" role="{role}" aria-label={quoteattr(f"{title}. {desc}")} font-size="18" '
        f'fill="currentColor"><title>{escape(title)}</title><desc>{escape(desc)}</desc>{"".join(parts)}</svg>'
    )


def _rect(x: float, y: float, wide: float, high: float, fill: str, more: str = "") -> str:
    return f'<rect x="{x:.1f}" y="{y:.1f}" width="{wide:.1f}" height="{high:.1f}" fill="{fill}"{more}/>'


def _line(x1: float, y1: float, x2: float, y2: float, more: str = "") -> str:
    return f'<path d="M{x1:.1f} {y1:.1f}L{x2:.1f} {y2:.1f}" stroke="currentColor"{more}/>'


def _text(x: float, y: float, said: str, more: str = "") -> str:
    return f'<text x="{x:.1f}" y="{y:.1f}"{more}>{escape(said)}</text>'


def _shown(bands: Sequence[Band], showing_mm: float) -> list[tuple[str, float, float]]:
    ends = [min(band.to_top_mm, showing_mm) for band in bands]
    if ends:
        ends[-1] = showing_mm
    return [(b.paint, b.from_top_mm, end) for b, end in zip(bands, ends, strict=True) if b.from_top_mm < end]


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
    >>> "black 0 to 10 mm" in tip(Tip(Stock("quill", 3.0), 10.0), (Band("black", 0, 10),), 3.1, "Tip in hand")
    True
    """
    k, x, top = PX_PER_MM, 44.0, 14.0
    wide, water = painted_mm * k, top + drawn.showing_mm * k
    wet = min(drawn.wet_mm, 15.0) * k
    height = max(water + wet + 26, top + 46.0 * (len(bands) + 1))
    edge = ' stroke="currentColor"'
    parts, below = [], top - 40.0
    said = []
    for paint, start, end in _shown(bands, drawn.showing_mm):
        y = top + start * k
        parts.append(_rect(x - wide / 2, y, wide, (end - start) * k, swatches().get(paint, BARE), edge))
        label = max(y + (end - start) * k / 2 - 4, below + 46)
        parts.append(_line(x + wide / 2 + 2, y + (end - start) * k / 2, 92, label - 6, ' stroke-width="1.5"'))
        parts += [_text(96, label, paint), _text(96, label + 20, f"{start:.3g} to {end:.3g} mm")]
        said.append(f"{paint} {start:.3g} to {end:.3g} mm")
        below = label
    foot = swatches().get(bands[-1].paint, BARE) if bands else BARE
    parts.append(_rect(x - wide / 2, water, wide, wet, foot, f' opacity="0.45"{edge}'))
    parts.append(f'<path d="M{x - wide / 2 - 9:.1f} {water + wet:.1f}h{wide + 18:.1f}l7 14h-{wide + 32:.1f}z" fill="{BARE}"/>')
    parts.append(f'<path d="M2 {water:.1f}q10 -6 20 0t20 0 20 0 20 0" fill="none" stroke="currentColor" stroke-width="2"/>')
    parts.append(_text(96, max(water + 6, below + 42), "water"))
    parts.append(_line(10, top, 10, top + 10 * k, ' stroke-width="3"'))
    parts.append(_text(4, top + 10 * k + 18, "10", ' font-size="16"'))
    desc = f"{things.stock(drawn)}, {drawn.showing_mm:.3g} mm showing; from the top down {', '.join(said) or 'bare'}"
    return _svg(300, height, title, desc, parts)


def _mark(x: float, y: float, point: TradePoint) -> str:
    """Return a point's mark: solid rides well, hollow just rides, a cross does not ride."""
    thicker = point.of == "thicker"
    if point.ride_margin < words.JUST:
        return f'<path d="M{x - 6:.1f} {y - 6:.1f}l12 12m0 -12l-12 12" stroke="currentColor" stroke-width="3"/>'
    fill = "currentColor" if point.ride_margin >= words.WELL else "none"
    more = f'fill="{fill}" stroke="currentColor" stroke-width="3"'
    if thicker:
        return f'<path d="M{x:.1f} {y - 9:.1f}l9 9 -9 9 -9 -9z" {more}/>'
    return f'<circle cx="{x:.1f}" cy="{y:.1f}" r="7" {more}/>'


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
    >>> "rides well" in seen_against_sunk((TradePoint(3, 25, 4.2, 0.2, 3.4, True, True, "longer"),), 5.0)
    True
    """
    left, right, top, foot = 34.0, 330.0, 52.0, 300.0
    most_g = 1.08 * max([point.sink_force_g for point in points], default=1.0)
    levels = [max(point.level, 0.3) for point in points] + [wanted]
    low, high = math.log(min(levels) / 1.25), math.log(max(levels) * 1.25)

    def at(point: TradePoint) -> tuple[float, float]:
        x = left + (right - left) * point.sink_force_g / most_g
        return x, foot - (foot - top) * (math.log(max(point.level, 0.3)) - low) / (high - low)

    parts = [_line(left, foot, right, foot, ' stroke-width="2"'), _line(left, top, left, foot, ' stroke-width="2"')]
    parts.append(_text(right, foot + 44, "what sinks it, in grams", ' text-anchor="end"'))
    parts.append(_text(left, foot + 20, "0"))
    parts.append(_text(right, foot + 20, f"{most_g:.2g}", ' text-anchor="end"'))
    lines = [2.5, 5.0, 10.0]
    for level in lines:
        if low < math.log(level) < high:
            y = foot - (foot - top) * (math.log(level) - low) / (high - low)
            strong = ' stroke-width="2"' if level == wanted else ' stroke-width="1" stroke-dasharray="3 5"'
            parts.append(_line(left, y, right, y, strong))
            parts.append(_text(right, y - 5, grades.grade(level), ' text-anchor="end" font-size="16"'))
    for of, dash in (("longer", ""), ("thicker", ' stroke-dasharray="7 5"')):
        row = sorted((point for point in points if point.of == of), key=lambda point: point.sink_force_g)
        path = "L".join(f"{x:.1f} {y:.1f}" for x, y in map(at, row))
        if row:
            parts.append(f'<path d="M{path}" fill="none" stroke="currentColor" stroke-width="1.5"{dash}/>')
    for point in sorted(points, key=lambda one: (one.of, one.sink_force_g)):
        x, y = at(point)
        said = point_words(point)
        ring = f'<circle cx="{x:.1f}" cy="{y:.1f}" r="13" fill="none" stroke="currentColor" stroke-width="3"/>'
        first, _, rest = said.partition(": ")
        told = _text(0, 18, first + ":", ' class="tell" visibility="hidden"') + _text(
            0, 40, rest.replace("seen when stared at", "stared at"), ' class="tell" visibility="hidden" font-size="16"')
        parts.append(
            f'<g tabindex="0" role="img" aria-label={quoteattr(said + (", advised" if point.chosen else ""))} class="pt">'
            f'{_mark(x, y, point)}{ring if point.chosen else ""}<circle cx="{x:.1f}" cy="{y:.1f}" r="14" fill="transparent"/>'
            f"{told}</g>"
        )
    desc = "Each point is one length or thickness of the advised tip; higher is seen better, farther right is harder to sink"
    return _svg(340, 352, "Seen against sunk", desc, parts, role="group")


_WATERS = {
    "dark": _rect(0, 0, 72, 18, "#1d2b1f") + _rect(0, 18, 72, 22, "#26352c"),
    "bright": _rect(0, 0, 72, 18, "#dfe8ee") + _rect(0, 18, 72, 22, "#c9d6df"),
    "broken": _rect(0, 0, 72, 18, "#dfe8ee") + "".join(
        f'<path d="M{6 + 15 * n} 18l6 -{9 + 3 * (n % 3)} 7 {9 + 3 * (n % 3)}z" fill="#1d2b1f"/>' for n in range(5)
    ) + _rect(0, 18, 72, 22, "#c9d6df") + "".join(
        _rect(2 + 11 * (n % 6), 20 + 4 * (n // 2), 9, 2.5, "#1d2b1f") for n in range(10)),
    "sun lane": '<circle cx="36" cy="9" r="6" fill="#ffd23c"/>' + _rect(0, 18, 72, 22, "#6f8797") + "".join(
        _rect(36 - 3 - 1.5 * n, 19 + 3.5 * n, 6 + 3 * n, 2, "#fff3c4") for n in range(6)),
    "not sure": _rect(0, 0, 36, 18, "#1d2b1f") + _rect(36, 0, 36, 18, "#dfe8ee")
    + _rect(0, 18, 36, 22, "#26352c") + _rect(36, 18, 36, 22, "#c9d6df"),
}


def water(name: str) -> str:
    """Return a small drawing of what the water behind the tip may look like.

    Parameters
    ----------
    name : str
        A word for the water behind the tip.

    Returns
    -------
    str
        SVG that stands beside its word, so that it says nothing of its own; empty for other words.

    Examples
    --------
    >>> water("dark").startswith("<svg")
    True
    """
    drawn = _WATERS.get(name, "")
    tip_ = '<path d="M35 16h2v12h-2z" fill="#ff5a1f" stroke="#111"/>'
    return f'<svg viewBox="0 0 72 40" width="72" height="40" aria-hidden="true">{drawn}{tip_}</svg>' if drawn else ""
