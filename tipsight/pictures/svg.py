"""Drawings to scale: the tip with its bands, the float, and the shot to each band."""

from collections.abc import Sequence

from tipsight.inputs.case import Band, Case, Tip, shown
from tipsight.load import hull, shot, staircase, tips
from tipsight.load.tips import showing_diameter_mm as worn_mm
from tipsight.output import measures, names, shot_words
from tipsight.pictures.svg_parts import BARE, Drawing, line, path, rect, swatches, text
from tipsight.pictures.trade import point_words, seen_against_sunk

__all__ = ["float_", "point_words", "seen_against_sunk", "stairs", "swatches", "tip"]

PX_PER_MM = 4.0
"""Scale of a drawn tip [px/mm]."""
FLOAT_PX_PER_MM = 3.0
"""Scale of a drawn float [px/mm]."""


def _fill(paint: str) -> str:
    return swatches().get(paint, BARE)


def _foot(bands: Sequence[Band]) -> str:
    """Return the colour of what lies under water."""
    return _fill(bands[-1].paint) if bands else BARE


def _bands(
    bands: Sequence[Band], end_mm: float, x: float, top: float, wide_mm: float, k: float
) -> list[str]:
    """Return the paint of a tip as far down as told, about x, its head at top [px]."""
    wide = wide_mm * k
    return [
        rect(
            x - wide / 2,
            top + band.from_top_mm * k,
            wide,
            (band.to_top_mm - band.from_top_mm) * k,
            _fill(band.paint),
        )
        for band in shown(bands, end_mm)
    ]


def _stick(drawn: Tip, x: float, top: float, k: float) -> list[str]:
    """Return a whole tip outside its body; a sleeve ends at the water, the paint goes on."""
    wide = float(tips.painted_diameter_mm(drawn.stock.diameter_mm, drawn.coats)) * k
    wet = rect(
        x - wide / 2, top + drawn.showing_mm * k, wide, drawn.wet_mm * k, _foot(drawn.bands)
    )
    return [*_bands(drawn.bands, drawn.showing_mm, x, top, worn_mm(drawn), k), wet]


def tip(drawn: Tip, bands: Sequence[Band], painted_mm: float, title: str) -> Drawing:
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
    Drawing
        Four pixels to the millimetre.

    Examples
    --------
    >>> from tipsight.inputs.case import Stock
    >>> tip(Tip(Stock("quill", 3.0), 10.0), (Band("black", 0, 10),), 3.1, "In hand").desc
    '3 mm quill, 10 mm showing; from the top down black 0 to 10 mm'
    """
    k, x, top = PX_PER_MM, 44.0, 14.0
    wide, water = painted_mm * k, top + drawn.showing_mm * k
    left, wet, label = x - wide / 2, min(drawn.wet_mm, 15.0) * k, top - 40.0
    parts = _bands(bands, drawn.showing_mm, x, top, painted_mm, k)
    labels, said = [], []
    for band in shown(bands, drawn.showing_mm):
        middle = top + (band.from_top_mm + band.to_top_mm) / 2 * k
        label = max(middle - 4, label + 46)
        where = f"{band.from_top_mm:.3g} to {band.to_top_mm:.3g} mm"
        parts.append(line(x + wide / 2 + 2, middle, 92, label - 6, 1.5))
        labels += [text(96, label, band.paint), text(96, label + 20, where)]
        said.append(f"{band.paint} {where}")
    shoulder = f"M{left - 9:.1f} {water + wet:.1f}h{wide + 18:.1f}l7 14h-{wide + 32:.1f}z"
    parts += [
        rect(left, water, wide, wet, _foot(bands), 'opacity=".45"'),
        path(shoulder, 'stroke="none"', BARE),
        path(f"M2 {water:.1f}q10 -6 20 0t20 0 20 0 20 0", 'stroke-width="2"'),
        line(10, top, 10, top + 10 * k, 3),
    ]
    labels += [text(96, max(water + 6, label + 42), "water"), text(4, top + 10 * k + 20, "10")]
    high = max(water + wet + 26, label + 54)
    desc = (
        f"{names.stock(drawn)}, {drawn.showing_mm:.3g} mm showing; "
        f"from the top down {', '.join(said) or 'bare'}"
    )
    return Drawing((300, high), title, desc, parts, labels)


def float_(case: Case, drawn: Tip, title: str = "The float") -> Drawing:
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
    Drawing
        Three pixels to the millimetre.

    Raises
    ------
    Mistakes
        If the float cannot be built.

    Examples
    --------
    >>> from tipsight.inputs.demo import question
    >>> from tipsight.inputs.settle import settle
    >>> case = settle(question())
    >>> "quill avon" in float_(case, case.tip).desc
    True
    """
    body = hull.hull_of(case.float_, case.weighed_tip, case.stream.temperature_c)
    k, x, top = FLOAT_PX_PER_MM, 120.0, 12.0
    water = top + drawn.showing_mm * k
    root = water + drawn.wet_mm * k
    parts = _stick(drawn, x, top, k)
    z, r = body.profile.z_mm, body.profile.r_mm
    right = [f"{x + b * k:.1f} {root - a * k:.1f}" for a, b in zip(z, r, strict=True)]
    left = [f"{x - b * k:.1f} {root - a * k:.1f}" for a, b in zip(z, r, strict=True)]
    parts.append(path(f"M{'L'.join([*right, *left[::-1]])}z", fill=BARE))
    low = root - float(z[-1]) * k
    waves = f"M40 {water:.1f}q10 -6 20 0t20 0 20 0 20 0 20 0 20 0 20 0 20 0"
    parts += [path(waves, 'stroke-width="2"'), line(20, low - 50 * k, 20, low, 3)]
    labels = [text(208, water + 6, "water"), text(28, low - 25 * k + 6, "50 mm")]
    long_mm, wide_mm = -float(z[-1]), body.body_diameter_mm
    beside = (case.float_.pattern, f"body {wide_mm:.3g} mm", f"{long_mm:.0f} mm long")
    labels += [text(x + 40, root + 22 * n + 40, said) for n, said in enumerate(beside)]
    desc = (
        f"{case.float_.pattern}, {long_mm:.0f} mm below the foot of the tip, body {wide_mm:.3g} mm "
        f"thick; tip {names.stock(drawn)}, {drawn.showing_mm:.3g} mm showing, {drawn.wet_mm:.3g} mm wet"
    )
    return Drawing((330, low + 16), title, desc, parts, labels)


def stairs(case: Case, drawn: Tip, title: str = "Shot to each band") -> Drawing:
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
    Drawing
        The shot by name, most of it at the very top.

    Raises
    ------
    Mistakes
        If the float cannot be built, or sinks.

    Examples
    --------
    >>> from tipsight.inputs.demo import question
    >>> from tipsight.inputs.settle import settle
    >>> case = settle(question())
    >>> "the very top" in stairs(case, case.tip).desc
    True
    """
    warm, box = case.stream.temperature_c, case.box
    body = hull.hull_of(case.float_, case.weighed_tip, warm)
    steps = staircase.staircase(
        body, drawn, box.shot_metal, box.shot or shot.sizes(box.shot_metal), warm
    )
    k, x, top = PX_PER_MM, 30.0, 20.0
    long_mm, side = drawn.showing_mm + drawn.wet_mm, worn_mm(drawn) * k / 2 + 6
    parts = _stick(drawn, x, top, k)
    labels: list[str] = []
    label, said = top - 46.0, []
    for step in reversed(steps):
        y = top + step.showing_mm * k
        label = max(y + 6, label + 50)
        mark, grams = shot_words.mark(step), measures.grams(step.shot_g)
        by_name = shot_words.counted(step.shot)
        parts += [line(x - side, y, x + side, y, 2), line(x + side, y, 70, label - 6, 1)]
        labels += [
            text(76, label, f"{mark}: {grams} of {box.shot_metal}"),
            text(76, label + 21, by_name),
        ]
        said.append(f"{mark}, {step.showing_mm:.3g} mm showing, {grams}, {by_name}")
    high = max(top + long_mm * k, label + 24) + 12
    desc = f"{box.shot_metal} shot: {'; '.join(said)}"
    return Drawing((420, high), title, desc, parts, labels)
