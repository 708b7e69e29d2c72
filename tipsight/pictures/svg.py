"""Drawings to scale as SVG text: the tip with its bands, the float, and the shot to each band."""

from collections.abc import Sequence

from tipsight.inputs.case import Band, Case, Tip
from tipsight.load import budget, hull, shot, staircase
from tipsight.output import shot_words, things, words
from tipsight.pictures.svg_parts import BARE, line, path, rect, svg, swatches, text
from tipsight.pictures.trade import point_words, seen_against_sunk

__all__ = ["float_", "point_words", "seen_against_sunk", "shown", "stairs", "swatches", "tip"]

PX_PER_MM = 4.0
"""Scale of a drawn tip [px/mm]."""
FLOAT_PX_PER_MM = 3.0
"""Scale of a drawn float [px/mm]."""


def shown(bands: Sequence[Band], showing_mm: float) -> list[tuple[str, float, float]]:
    """Return each block of paint that shows, with its ends from the very top.

    Parameters
    ----------
    bands : sequence of Band
        From the top down.
    showing_mm : float
        Length out of the water [mm].

    Returns
    -------
    list of (str, float, float)
        Paint, upper end, lower end [mm].

    Examples
    --------
    >>> shown((Band("black", 0, 10), Band("white", 10, 20)), 15.0)
    [('black', 0, 10), ('white', 10, 15.0)]
    """
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
    parts, labels, said = [], [], []
    for paint, start, end in shown(bands, drawn.showing_mm):
        y, tall = top + start * k, (end - start) * k
        label = max(y + tall / 2 - 4, label + 46)
        where = f"{start:.3g} to {end:.3g} mm"
        parts += [
            rect(left, y, wide, tall, swatches().get(paint, BARE)),
            line(x + wide / 2 + 2, y + tall / 2, 92, label - 6, 1.5),
        ]
        labels += [text(96, label, paint), text(96, label + 20, where)]
        said.append(f"{paint} {where}")
    foot = swatches().get(bands[-1].paint, BARE) if bands else BARE
    shoulder = f"M{left - 9:.1f} {water + wet:.1f}h{wide + 18:.1f}l7 14h-{wide + 32:.1f}z"
    parts += [
        rect(left, water, wide, wet, foot, 'opacity=".45"'),
        path(shoulder, 'stroke="none"', BARE),
        path(f"M2 {water:.1f}q10 -6 20 0t20 0 20 0 20 0", 'stroke-width="2"'),
        line(10, top, 10, top + 10 * k, 3),
    ]
    labels += [
        text(96, max(water + 6, label + 42), "water"),
        text(4, top + 10 * k + 20, "10"),
    ]
    high = max(water + wet + 26, label + 54)
    desc = (
        f"{things.stock(drawn)}, {drawn.showing_mm:.3g} mm showing; "
        f"from the top down {', '.join(said) or 'bare'}"
    )
    return svg((300, high), title, desc, parts, labels)


def float_(case: Case, drawn: Tip, title: str = "The float") -> str:
    """Return the outline of a float to scale, its tip on it.

    Parameters
    ----------
    case : Case
        The question in numbers, for the float.
    drawn : Tip
        The tip on it.
    title : str
        Which float it is.

    Returns
    -------
    str
        SVG, three pixels to the millimetre.

    Raises
    ------
    Mistakes
        If the float cannot be built.

    Examples
    --------
    >>> from tipsight.inputs.demo import question
    >>> from tipsight.inputs.settle import settle
    >>> case = settle(question())
    >>> "quill avon" in float_(case, case.tip)
    True
    """
    body = hull.hull_of(case.float_, case.weighed_tip, case.stream.temperature_c)
    k, x, top = FLOAT_PX_PER_MM, 120.0, 12.0
    painted = float(budget.painted_diameter_mm(drawn.stock.diameter_mm, drawn.coats))
    water = top + drawn.showing_mm * k
    root = water + drawn.wet_mm * k
    parts = []
    for paint, start, end in shown(drawn.bands, drawn.showing_mm):
        fill = swatches().get(paint, BARE)
        parts.append(
            rect(x - painted * k / 2, top + start * k, painted * k, (end - start) * k, fill)
        )
    foot = swatches().get(drawn.bands[-1].paint, BARE) if drawn.bands else BARE
    parts.append(rect(x - painted * k / 2, water, painted * k, drawn.wet_mm * k, foot))
    z, r = body.profile.z_mm, body.profile.r_mm
    right = [f"{x + b * k:.1f} {root - a * k:.1f}" for a, b in zip(z, r, strict=True)]
    left = [f"{x - b * k:.1f} {root - a * k:.1f}" for a, b in zip(z, r, strict=True)]
    parts.append(path(f"M{'L'.join([*right, *left[::-1]])}z", fill=BARE))
    low = root - float(z[-1]) * k
    parts += [
        path(
            f"M40 {water:.1f}q10 -6 20 0t20 0 20 0 20 0 20 0 20 0 20 0 20 0",
            'stroke-width="2"',
        ),
        line(20, low - 50 * k, 20, low, 3),
    ]
    labels = [text(208, water + 6, "water"), text(28, low - 25 * k + 6, "50 mm")]
    long_mm, wide_mm = -float(z[-1]), body.body_diameter_mm
    said = (
        f"{case.float_.pattern}, {long_mm:.0f} mm below the foot of the tip, body {wide_mm:.3g} mm "
        f"thick; tip {things.stock(drawn)}, {drawn.showing_mm:.3g} mm showing, {drawn.wet_mm:.3g} mm wet"
    )
    labels += [
        text(x + 40, root + 22 * n + 40, words_)
        for n, words_ in enumerate(
            (case.float_.pattern, f"body {wide_mm:.3g} mm", f"{long_mm:.0f} mm long")
        )
    ]
    return svg((330, low + 16), title, said, parts, labels)


def stairs(case: Case, drawn: Tip, title: str = "Shot to each band") -> str:
    """Return a tip with the shot that brings each of its marks to the surface.

    Parameters
    ----------
    case : Case
        The question in numbers, for float and shot.
    drawn : Tip
        The tip.
    title : str
        What it is.

    Returns
    -------
    str
        SVG; the shot by name, most of it at the very top.

    Raises
    ------
    Mistakes
        If the float cannot be built, or sinks.

    Examples
    --------
    >>> from tipsight.inputs.demo import question
    >>> from tipsight.inputs.settle import settle
    >>> case = settle(question())
    >>> "the very top" in stairs(case, case.tip)
    True
    """
    warm, box = case.stream.temperature_c, case.box
    body = hull.hull_of(case.float_, case.weighed_tip, warm)
    steps = staircase.staircase(
        body, drawn, box.shot_metal, box.shot or shot.sizes(box.shot_metal), warm
    )
    k, x, top = PX_PER_MM, 30.0, 20.0
    painted = float(budget.painted_diameter_mm(drawn.stock.diameter_mm, drawn.coats))
    long_mm = drawn.showing_mm + drawn.wet_mm
    parts = []
    for paint, start, end in shown(drawn.bands, long_mm):
        fill = swatches().get(paint, BARE)
        parts.append(
            rect(x - painted * k / 2, top + start * k, painted * k, (end - start) * k, fill)
        )
    labels: list[str] = []
    label, said = top - 46.0, []
    for step in reversed(steps):
        y = top + step.showing_mm * k
        label = max(y + 6, label + 50)
        parts += [
            line(x - painted * k / 2 - 6, y, x + painted * k / 2 + 6, y, 2),
            line(x + painted * k / 2 + 6, y, 70, label - 6, 1),
        ]
        labels += [
            text(
                76,
                label,
                f"{shot_words.mark(step)}: {words.grams(step.shot_g)} of {box.shot_metal}",
            ),
            text(76, label + 21, shot_words.counted(step.shot)),
        ]
        shows = f"{step.showing_mm:.3g} mm showing"
        by_name = shot_words.counted(step.shot)
        said.append(f"{shot_words.mark(step)}, {shows}, {words.grams(step.shot_g)}, {by_name}")
    high = max(top + long_mm * k, label + 24) + 12
    return svg((420, high), title, f"{box.shot_metal} shot: {'; '.join(said)}", parts, labels)
